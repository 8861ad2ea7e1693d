package main

import (
	_ "embed"
	"fmt"

	"github.com/spf13/cobra"
)

//go:embed notices.txt
var notices string

func noticesCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "notices",
		Short: "Print the licences of the work of others in this program",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			_, err := fmt.Fprint(cmd.OutOrStdout(), notices)
			return err
		},
	}
}
