package report

import (
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"

	"topplate/route"
)

// ChoicesSchema names the shape of what ChoicesJSON writes.
const ChoicesSchema = "topplate-choices/1"

// PlanName is what the i-th plan of several is called: plan A, plan B, …
func PlanName(i int) string { return "plan " + string(rune('A'+i)) }

// BestAt says what no other of the plans is better at.
func BestAt(c *route.Choice) string {
	if len(c.Best) == 0 {
		return "between the others"
	}
	names := make([]string, len(c.Best))
	for i, b := range c.Best {
		names[i] = b.String()
	}
	return strings.Join(names, ", ")
}

// ChoicesTable is the plans side by side, one row for each figure: its name,
// and its value in each plan.
func ChoicesTable(plans []route.Choice) [][]string {
	rows := [][]string{{""}, {"best at"}, {"cost"}, {"openings in finished surfaces"}, {"crawled or at arm's length"}, {"holes bored"}, {"cable to cut"}}
	for i := range plans {
		c := &plans[i]
		u := c.Result.Job.House.Units
		for j, cell := range []string{
			PlanName(i), BestAt(c), money(c.Result, c.Cost), fmt.Sprint(c.Openings), u.Format(c.Crawled), fmt.Sprint(c.Bored), u.Format(c.Cable),
		} {
			rows[j] = append(rows[j], cell)
		}
	}
	return rows
}

// OnePlan is said where there is nothing to choose.
const OnePlan = "One plan is the best in all three: cost, openings in finished surfaces, and crawling."

// Choices writes the plans side by side as text.
func Choices(w io.Writer, plans []route.Choice) error {
	p := &printer{w: w}
	p.printf("Plans to choose from: %s\n", plans[0].Result.Job.Name)
	p.table(ChoicesTable(plans))
	if len(plans) == 1 {
		p.printf("  %s\n", OnePlan)
	}
	p.printf("\nWhere they are opened and bored\n")
	for i := range plans {
		p.printf("  %s: %s\n", PlanName(i), strings.Join(openedAndBored(plans[i].Result), "; "))
	}
	return p.err
}

// openedAndBored lists the holes of a plan.
func openedAndBored(res *route.Result) []string {
	var out []string
	for i := range res.Holes {
		place := &res.Graph.Holes[res.Holes[i].Place]
		where := HoleWhere(res, place)
		if n := res.Holes[i].Count; n > 1 {
			where = fmt.Sprintf("%s, %d holes", where, n)
		}
		out = append(out, fmt.Sprintf("%s, %s", place.Kind, where))
	}
	return out
}

type jsonChoices struct {
	Schema   string            `json:"schema"`
	Units    map[string]string `json:"units"`
	Job      string            `json:"job"`
	Currency string            `json:"currency"`
	Plans    []jsonChoice      `json:"plans"`
}

type jsonChoice struct {
	Name       string   `json:"name"`
	Best       []string `json:"best"`
	Cost       int64    `json:"cost"`
	LowerBound int64    `json:"lower_bound"`
	Openings   int      `json:"openings"`
	Crawled    float64  `json:"crawled"`
	Bored      int      `json:"bored"`
	Cable      float64  `json:"cable"`
	Drops      []drop   `json:"drops"`
	Holes      []hole   `json:"holes"`
}

// ChoicesJSON writes the plans with their figures, routes and holes. Lengths
// are in millimetres, money in millionths of the currency's unit.
func ChoicesJSON(w io.Writer, plans []route.Choice) error {
	job := plans[0].Result.Job
	out := jsonChoices{
		Schema: ChoicesSchema, Job: job.Name, Currency: job.Rates.Currency,
		Units: map[string]string{"length": "mm", "money": "millionths of the currency's unit"},
	}
	for i := range plans {
		c := &plans[i]
		res := c.Result
		x := jsonChoice{
			Name: PlanName(i), Best: []string{}, Cost: c.Cost, LowerBound: res.Cost.LowerBound, Openings: c.Openings,
			Crawled: c.Crawled.Millimetres(), Bored: c.Bored, Cable: c.Cable.Millimetres(), Drops: []drop{}, Holes: []hole{},
		}
		for _, b := range c.Best {
			x.Best = append(x.Best, b.String())
		}
		for j := range res.Routes {
			x.Drops = append(x.Drops, dropOf(res, &res.Routes[j]))
		}
		for j := range res.Holes {
			x.Holes = append(x.Holes, boredHole(res, &res.Holes[j]))
		}
		out.Plans = append(out.Plans, x)
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	if err := enc.Encode(out); err != nil {
		return fmt.Errorf("writing plans: %w", err)
	}
	return nil
}

// Shown says which of the plans res is, or that the job's weights chose
// another.
func Shown(plans []route.Choice, res *route.Result) string {
	f := route.FiguresOf(res)
	i := slices.IndexFunc(plans, func(c route.Choice) bool { return c.Figures == f })
	if i < 0 {
		return fmt.Sprintf("The other sheets show the plan of the job's weights, for %s.", money(res, f.Cost))
	}
	return fmt.Sprintf("The other sheets show %s.", PlanName(i))
}
