package main

import (
	"github.com/spf13/cobra"

	"topplate/render/report"
)

func originsCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "origins JOB.toml",
		Short: "Print each setting of a job with the file and line that it is from, or that it is built in",
		Long: `origins prints each setting of a job with its value and where that is from: the
job file, a file that it includes, or what is built in. A job includes files of
yours by their paths from its folder, such as

  include = ["../my/defaults.toml", "../my/prices.toml"]

They have tables such as [limits], [prices], [rates], [tools] or [[cable]], and
are read in this order; the job itself is read last, and a later value wins.`,
		Args: oneFile("a job file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			job, err := load(args[0], cmd.ErrOrStderr())
			if err != nil {
				return err
			}
			return report.Origins(cmd.OutOrStdout(), job)
		},
	}
}
