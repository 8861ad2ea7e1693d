package plan

import (
	"cmp"
	"slices"

	"topplate/plan/diag"
	"topplate/plan/source"
)

// A Stock is how many of a part are at hand. Whether there is such a part is
// for the catalogue of parts to say.
type Stock struct {
	Part  string
	Pos   diag.Pos // of the name
	Count int
}

// Bounds of the parts at hand.
const (
	mostParts     = 500 // kinds
	mostOfOnePart = 100_000
)

// have reads [have]. The parts are sorted by name, whatever the file's order.
func (l *jobLoader) have(root *source.Table) {
	t, ok := root.Table("have", source.Optional)
	if !ok {
		return
	}
	if n := len(t.Keys()); n > mostParts {
		root.Errorf("have", "found %s; at most %d are read", counted(n, "part"), mostParts)
		askAllKeys(t)
		return
	}
	for _, part := range t.Keys() {
		if n, ok := t.Int(part, source.Required, 0, mostOfOnePart); ok {
			l.job.Have = append(l.job.Have, Stock{Part: part, Pos: t.KeyPos(part), Count: n})
		}
	}
	slices.SortFunc(l.job.Have, func(a, b Stock) int { return cmp.Compare(a.Part, b.Part) })
}

// mostPartPrice bounds the price of one part, in the currency's unit.
const mostPartPrice = 100_000

// partPrices reads [parts]: the user's own price of one of each.
func (l *jobLoader) partPrices(root *source.Table) {
	t, ok := root.Table("parts", source.Optional)
	if !ok {
		return
	}
	if n := len(t.Keys()); n > mostParts {
		root.Errorf("parts", "found %s; at most %d are read", counted(n, "part"), mostParts)
		askAllKeys(t)
		return
	}
	for _, part := range t.Keys() {
		if v, ok := t.Number(part, source.Required, 0, mostPartPrice); ok {
			l.job.PartPrices[part] = Override{Pos: t.KeyPos(part), Value: thousandths(v)}
		}
	}
}

// Bounds and the default of the allowance on an estimate, in per cent (common
// practice, no source).
const (
	mostAllowance    = 100
	defaultAllowance = 10
)

// estimate reads [estimate].
func (l *jobLoader) estimate(root *source.Table) {
	if t, ok := root.Table("estimate", source.Optional); ok {
		l.job.Allowance = intOr(t, "allowance", 0, mostAllowance, l.job.Allowance)
	}
}
