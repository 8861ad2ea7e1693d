package plan

import (
	"topplate/plan/price"
	"topplate/plan/rule"
)

// Book is the limits that hold for the job: the defaults and the user's own.
func (j *Job) Book() rule.Book { return rule.NewBook(numbers(j.Limits)) }

// PriceTable is what the work costs in the job: the defaults and the user's
// own, at his rate.
func (j *Job) PriceTable() price.Table { return price.NewTable(numbers(j.Prices), j.Rates.Hour) }

// numbers takes the numbers out of overrides.
func numbers(o map[string]Override) map[string]int64 {
	out := make(map[string]int64, len(o))
	for id, v := range o {
		out[id] = v.Value
	}
	return out
}
