package main

import (
	"github.com/spf13/cobra"

	"topplate/plan"
	"topplate/render/report"
)

func rulesCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "rules [JOB.toml]",
		Short: "Print the limits, rules and prices with their sources, with a job's own values if one is given",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			var job *plan.Job
			if len(args) == 1 {
				var err error
				if job, err = load(args[0], cmd.ErrOrStderr()); err != nil {
					return err
				}
			}
			return report.Rules(cmd.OutOrStdout(), job)
		},
	}
}
