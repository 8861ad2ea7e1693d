package conduit

import (
	"slices"

	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A Size is one kind of pipe in one trade size.
type Size struct {
	Kind  string // as the trade calls it: EMT, ENT, PVC-40
	Title string
	// Trade is the trade size, in inches as people write it. It is a name:
	// no diameter of the pipe is as large.
	Trade string
	// Inside is the nominal inside diameter.
	Inside measure.Length
	Source rule.Source
}

// The document that all sizes and shares are from.
const nec = "NFPA 70 (National Electrical Code)"

// Sources of the sizes.
var (
	tubing = rule.Source{Document: nec, Clause: "Chapter 9, Table 4", AsQuotedBy: "copies of the table on the web", Status: rule.AsQuoted}
	// A table of least average diameters has 0.780, 1.004 and 1.335 in.
	plastic = rule.Source{
		Document: nec, Clause: "Chapter 9, Table 4",
		AsQuotedBy: "public tables of its areas, which agree with the diameters remembered", Status: rule.AsQuoted,
	}
)

// thousandths is a length in thousandths of an inch.
func thousandths(n measure.Length) measure.Length { return n * measure.Inch / 1000 }

// Sizes is the whole table, kind by kind, thinnest first.
var Sizes = []Size{
	{"EMT", "Electrical metallic tubing", "1/2", thousandths(622), tubing},
	{"EMT", "Electrical metallic tubing", "3/4", thousandths(824), tubing},
	{"EMT", "Electrical metallic tubing", "1", thousandths(1049), tubing},
	{"EMT", "Electrical metallic tubing", "1-1/4", thousandths(1380), tubing},
	{"ENT", "Electrical nonmetallic tubing", "1/2", thousandths(560), tubing},
	{"ENT", "Electrical nonmetallic tubing", "3/4", thousandths(760), tubing},
	{"ENT", "Electrical nonmetallic tubing", "1", thousandths(1000), tubing},
	{"ENT", "Electrical nonmetallic tubing", "1-1/4", thousandths(1340), tubing},
	{"PVC-40", "Rigid PVC conduit, schedule 40", "1/2", thousandths(602), plastic},
	{"PVC-40", "Rigid PVC conduit, schedule 40", "3/4", thousandths(804), plastic},
	{"PVC-40", "Rigid PVC conduit, schedule 40", "1", thousandths(1029), plastic},
	{"PVC-40", "Rigid PVC conduit, schedule 40", "1-1/4", thousandths(1360), plastic},
}

// Lookup returns the size of this kind and trade size.
func Lookup(kind, trade string) (Size, bool) {
	i := slices.IndexFunc(Sizes, func(s Size) bool { return s.Kind == kind && s.Trade == trade })
	if i < 0 {
		return Size{}, false
	}
	return Sizes[i], true
}

// Kinds lists the kinds, in the order of the table.
func Kinds() []string { return distinct(func(s Size) string { return s.Kind }) }

// Trades lists the trade sizes, thinnest first.
func Trades() []string { return distinct(func(s Size) string { return s.Trade }) }

// distinct lists what of returns, each once, in the order of the table.
func distinct(of func(Size) string) []string {
	var out []string
	for _, s := range Sizes {
		if word := of(s); !slices.Contains(out, word) {
			out = append(out, word)
		}
	}
	return out
}
