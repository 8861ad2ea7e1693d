package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"topplate/render"
	"topplate/render/report"
	"topplate/route/compare"
	"topplate/route/work"
)

func compareCommand() *cobra.Command {
	var wait patience
	var asJSON bool
	var out string
	c := &cobra.Command{
		Use:   "compare A.toml B.toml [-o DIR]",
		Short: "Print what changed between two plans of jobs on one house",
		Long: `Print what changed from the plan of job A to the plan of job B: drops, routes,
holes, cable and cost, and what of the house differs if the two jobs are on two
versions of it. With -o the folder gets a sheet with both plans.`,
		Example: "  topplate compare first/job.toml second/job.toml -o changes",
		Args:    twoJobs,
		RunE: func(cmd *cobra.Command, args []string) error {
			var plans [2]*work.Work
			for i, path := range args {
				var err error
				if plans[i], err = solve(path, &wait, cmd.ErrOrStderr()); err != nil {
					return err
				}
			}
			d := compare.Of(plans[0], plans[1])
			if out != "" {
				if err := writeComparison(out, d); err != nil {
					return err
				}
				fmt.Fprintf(cmd.ErrOrStderr(), "wrote %s\n", render.CompareName)
			}
			print := report.Compare
			if asJSON {
				print = report.CompareJSON
			}
			if err := print(cmd.OutOrStdout(), d); err != nil {
				return err
			}
			if plans[0].Stops() || plans[1].Stops() {
				return errStops
			}
			return nil
		},
	}
	wait.flag(c)
	c.Flags().BoolVar(&asJSON, "json", false, "print what changed as JSON")
	c.Flags().StringVarP(&out, "out", "o", "", "folder to write the sheet to; made if it is not there")
	return c
}

// twoJobs accepts exactly two arguments and says what is missing.
func twoJobs(cmd *cobra.Command, args []string) error {
	if len(args) != 2 {
		return fmt.Errorf("compare needs two job files, got %d: %s", len(args), cmd.UseLine())
	}
	return nil
}

// writeComparison writes the sheet into a folder of its own.
func writeComparison(dir string, d *compare.Difference) error {
	if err := apartFromJob(dir, func(name string) bool { return name == render.CompareName }); err != nil {
		return err
	}
	files, err := render.CompareFolder(d)
	if err != nil {
		return err
	}
	return writeFolder(dir, files)
}
