package main

import (
	"github.com/spf13/cobra"

	"topplate/render/report"
)

func schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of what route --json and results.json hold",
		Args:  cobra.NoArgs,
		RunE:  func(cmd *cobra.Command, _ []string) error { return report.JSONSchema(cmd.OutOrStdout()) },
	}
}
