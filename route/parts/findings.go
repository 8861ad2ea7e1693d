package parts

import (
	"fmt"
	"slices"

	"topplate/plan/diag"
	"topplate/plan/rule"
	"topplate/route"
)

// Ids of what is found here.
const (
	UnknownPart rule.ID = "part-not-known"
	NoPrice     rule.ID = "part-without-price"
)

// Rules are the rules of this package, for whoever prints all of them.
var Rules = []rule.Rule{
	{
		ID: UnknownPart, Title: "No such part", Severity: rule.Caution,
		Source: practice,
		Text:   "Parts at hand go by the names of the list of parts. One of another name is not taken off what is to buy.",
		Change: "the name as the list of parts has it",
	},
	{
		ID: NoPrice, Title: "Part without a price", Severity: rule.Note,
		Source: practice,
		Text:   "The part is counted, and left out of every sum of money.",
		Change: "a price for it",
	},
}

// findings reports names that are no part's, and parts without a price.
func (l *lister) findings(lines []Line) []route.Finding {
	names := rising(l.known)
	var out []route.Finding
	unknown := func(pos diag.Pos, name, found string) {
		f := route.Finding{Rule: UnknownPart, Severity: rule.Caution, Pos: pos, Where: name, Found: found, Change: "a name from the list of parts"}
		if _, ok := l.job.Cable(name); ok {
			f.Change = "a [[spool]] of it, with what is left on it"
		} else if near, ok := diag.Nearest(name, names); ok {
			f.Change = fmt.Sprintf("%q, which is the nearest name", near)
		}
		out = append(out, f)
	}
	// A part may be named that is made up for this job, such as a wide bracket.
	made := func(id string) bool {
		return slices.ContainsFunc(lines, func(x Line) bool { return x.ID == id && x.Group != Cable })
	}
	for _, h := range l.job.Have {
		if _, ok := l.known[h.Part]; !ok && !made(h.Part) {
			unknown(h.Pos, h.Part, fmt.Sprintf("%d of %q are at hand, which is no part", h.Count, h.Part))
		}
	}
	for _, id := range rising(l.given.Prices) {
		if _, ok := l.known[id]; !ok && !made(id) {
			unknown(l.given.Prices[id].Pos, id, fmt.Sprintf("there is a price for %q, which is no part", id))
		}
	}
	for i := range lines {
		if x := &lines[i]; !x.Priced {
			out = append(out, route.Finding{
				Rule: NoPrice, Severity: rule.Note, Pos: diag.Pos{File: l.job.File}, Where: x.ID,
				Found:  fmt.Sprintf("%d are needed, and no price is known: they are in no sum", x.Need),
				Change: "a price for " + x.ID,
			})
		}
	}
	return out
}
