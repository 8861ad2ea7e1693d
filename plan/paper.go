package plan

import (
	"topplate/plan/measure"
	"topplate/plan/source"
)

// A Paper is a size of paper that sheets are drawn on.
type Paper uint8

// Sizes of paper: A and B of ASME Y14.1, A4 and A3 of ISO 216.
const (
	Letter Paper = iota
	Tabloid
	A4
	A3
)

var paperNames = [...]string{"letter", "tabloid", "a4", "a3"}

func (p Paper) String() string { return paperNames[p] }

// paperOf is what a house's sheets are drawn on where the job says nothing: the
// largest that an office printer takes (common practice, no source).
var paperOf = [...]Paper{measure.Imperial: Tabloid, measure.Metric: A3}

// paper reads [sheets].
func (l *jobLoader) paper(root *source.Table) {
	t, ok := root.Table("sheets", source.Optional)
	if !ok {
		return
	}
	word, ok := t.Choice("paper", source.Optional, paperNames[:]...)
	for i, name := range paperNames {
		if ok && word == name {
			l.job.Paper = Paper(i)
		}
	}
}
