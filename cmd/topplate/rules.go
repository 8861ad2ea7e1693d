package main

import (
	"github.com/spf13/cobra"

	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/render/report"
)

// plainHour is the rate that the prices are printed with when there is no job:
// thousandths of a currency's unit.
const plainHour = 60_000

func rulesCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "rules [JOB.toml]",
		Short: "Print the limits, rules and prices with their sources, with a job's own values if one is given",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			book, prices, units := rule.NewBook(nil), price.NewTable(nil, plainHour), measure.Imperial
			if len(args) == 1 {
				job, err := load(args[0], cmd.ErrOrStderr())
				if err != nil {
					return err
				}
				book, prices, units = job.Book(), job.PriceTable(), job.House.Units
			}
			return report.Rules(cmd.OutOrStdout(), book, prices, units)
		},
	}
}
