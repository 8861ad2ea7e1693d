package plan

import (
	"math"
	"strings"

	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/plan/source"
)

// tools reads [tools].
func (l *jobLoader) tools(root *source.Table) {
	tools := &l.job.Tools
	t, ok := root.Table("tools", source.Optional)
	if !ok {
		return
	}
	tools.Pos = t.Pos()
	tools.Rods = lengthOr(t, "rods", rodLengths, tools.Rods)
	tools.ArmReach = lengthOr(t, "arm", armReaches, tools.ArmReach)
	tools.Extension = lengthOr(t, "extension", extensions, tools.Extension)
	if !t.Has("bits") {
		return
	}
	tools.Bits = nil
	for _, b := range tables(t, "bits", source.Optional, mostOthers) {
		size, okSize := length(b, "size", source.Required, bitSizes)
		reach, okReach := length(b, "reach", source.Required, bitReaches)
		bit := Bit{Pos: b.Pos(), Diameter: size, Reach: reach, Flexible: boolOr(b, "flexible", false)}
		if okSize && okReach {
			tools.Bits = append(tools.Bits, bit)
		}
	}
}

// allow reads [allow].
func (l *jobLoader) allow(root *source.Table) {
	if t, ok := root.Table("allow", source.Optional); ok {
		l.job.Allow.Patching = boolOr(t, "patching", false)
		l.job.Allow.Raceway = boolOr(t, "raceway", false)
		l.job.Allow.Outside = boolOr(t, "outside", false)
	}
}

// defaultRates are used by a job without [rates] (common practice, no source).
var defaultRates = Rates{Currency: "USD", Hour: 95_000}

// mostHour bounds the rate of an hour.
const mostHour = 100_000

// rates reads [rates]. The first file that has the table names the currency
// that its hour is paid in.
func (l *jobLoader) rates(root *source.Table) {
	t, ok := root.Table("rates", source.Optional)
	if !ok {
		return
	}
	named := len(l.job.Origins["rates.currency"]) > 0
	code, ok := t.Text("currency", source.Need(!named))
	if ok && (len(code) != 3 || strings.Trim(code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "") {
		t.Errorf("currency", `found %.40q; want three capital letters, such as "USD"`, code)
	}
	if ok {
		l.job.Rates.Currency = code
	}
	if hour, ok := t.Number("hour", source.Required, 0, mostHour); ok {
		l.job.Rates.Hour = thousandths(hour)
	}
}

func thousandths(x float64) int64 { return int64(math.Round(x * 1000)) }

// Bounds and the default of the allowance for waste.
const (
	mostWaste    = 50
	defaultWaste = 5
)

// slack reads [slack].
func (l *jobLoader) slack(root *source.Table) {
	s := &l.job.Slack
	t, ok := root.Table("slack", source.Optional)
	if !ok {
		return
	}
	s.Closet = lengthOr(t, "closet", loops, s.Closet)
	s.Outlet = lengthOr(t, "outlet", loops, s.Outlet)
	s.Trim = lengthOr(t, "trim", trims, s.Trim)
	s.Percent = intOr(t, "percent", 0, mostWaste, s.Percent)
	s.Round = lengthOr(t, "round", roundings, s.Round)
}

// limits reads [limits] and holds each value against what a user may set.
func (l *jobLoader) limits(root *source.Table) {
	t, ok := root.Table("limits", source.Optional)
	if !ok {
		return
	}
	for _, id := range t.Keys() {
		limit, known := rule.LookupLimit(rule.LimitID(id))
		if !known {
			t.Has(id)
			l.list.Errorf(t.KeyPos(id), t.Path(id), "found %.40q, which is no limit of a rule; %s", id, suggest(id, "limit", rule.LimitIDs()))
			continue
		}
		if v, ok := readLimit(t, id, limit); ok {
			l.job.Limits[id] = Override{Pos: t.ValuePos(id), Value: v}
		}
	}
}

// readLimit reads the value of a limit in its unit.
func readLimit(t *source.Table, id string, limit rule.Limit) (int64, bool) {
	if limit.Unit == rule.Nanometres {
		r := measure.Range{Min: measure.Length(limit.Min), Max: measure.Length(limit.Max)}
		v, ok := length(t, id, source.Required, bound{r, "the range of this limit"})
		return int64(v), ok
	}
	v, ok := t.Int(id, source.Required, int(limit.Min), int(limit.Max))
	return int64(v), ok
}

// applyClearances gives obstacles the job's own limits where the house file
// does not give the clearance itself.
func (l *jobLoader) applyClearances() {
	if l.house == nil {
		return
	}
	for i := range l.house.Obstacles {
		if o := &l.house.Obstacles[i]; o.ByRule {
			o.Clearance = clearanceBy(l.book, o.Kind)
		}
	}
}

// prices reads [prices].
func (l *jobLoader) prices(root *source.Table) {
	t, ok := root.Table("prices", source.Optional)
	if !ok {
		return
	}
	for _, id := range t.Keys() {
		term, known := price.Lookup(price.ID(id))
		if !known || term.Unit == price.Elsewhere {
			t.Has(id)
			l.list.Errorf(t.KeyPos(id), t.Path(id), "found %.40q, which is no cost term; %s", id, suggest(id, "cost term", ownTerms()))
			continue
		}
		if v, ok := t.Number(id, source.Required, 0, float64(term.Max())/1000); ok {
			l.job.Prices[id] = Override{Pos: t.ValuePos(id), Value: thousandths(v)}
		}
	}
}

// ownTerms are the ids of the terms that a user may set.
func ownTerms() []string {
	var ids []string
	for _, term := range price.Terms {
		if term.Unit != price.Elsewhere {
			ids = append(ids, string(term.ID))
		}
	}
	return ids
}
