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
			limits, prices := map[string]int64{}, map[string]int64{}
			units, hour := measure.Imperial, int64(plainHour)
			if len(args) == 1 {
				job, err := load(args[0], cmd.ErrOrStderr())
				if err != nil {
					return err
				}
				for id, o := range job.Limits {
					limits[id] = o.Value
				}
				for id, o := range job.Prices {
					prices[id] = o.Value
				}
				units, hour = job.House.Units, job.Rates.Hour
			}
			return report.Rules(cmd.OutOrStdout(), rule.NewBook(limits), price.NewTable(prices, hour), units)
		},
	}
}
