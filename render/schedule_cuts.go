package render

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan/measure"
	"topplate/render/sheet"
	"topplate/route/cut"
	"topplate/route/work"
)

// cutListing lists the cuts of many cables: those of a drop that come one after
// the other in one row. What is to be done with each row is said once.
func cutListing(w *work.Work, l *listing) {
	u := w.Job.House.Units
	l.intro = []string{
		"Pull the first of each row and measure it; check the way if it takes more than planned. Stop at the planned length, or where the row says: the rest of the spool is for its equals and for what later rows need. Then cut its equals to it. Behind the boxes are the running numbers of the spool, and the marks to expect.",
	}
	l.columns = []column{
		{head: "spool", lettering: tag, whole: true},
		{head: "pieces", lettering: note, whole: true},
		{head: "running number, mark", lettering: note, each: true},
		{head: "planned", lettering: tag, whole: true},
		{head: "later need", lettering: note, whole: true},
		{head: "measured", kind: toFill, width: shortWrite},
	}
	l.portions = nil
	for i := range w.Cuts.Cables {
		c := &w.Cuts.Cables[i]
		p := portion{name: c.ID}
		for j := range c.Spools {
			s := &c.Spools[j]
			for rest := s.Cuts; len(rest) > 0; {
				n := 1
				for n < len(rest) && rest[n].Drop == rest[0].Drop && rest[n].Length == rest[0].Length {
					n++
				}
				row := []string{s.ID, rest[0].Piece, "", u.Format(rest[0].Length), "", ""}
				if n > 1 {
					row[1] += fmt.Sprintf(" to %d", rest[n-1].Number)
				}
				if k := slices.IndexFunc(s.Checks, func(k cut.Check) bool { return k.First == rest[0].Piece }); k >= 0 {
					row[4] = stopWords(&s.Checks[k], u)
				}
				p.rows, p.each = append(p.rows, row), append(p.each, cutTicks(rest[:n], u))
				rest = rest[n:]
			}
		}
		if len(p.rows) > 0 {
			l.portions = append(l.portions, p)
		}
	}
}

// shortWrite is the width of a place to write in a list of many columns.
const shortWrite = 20 * sheet.MM

// stopWords are what later cables need, and where to stop if that is not the
// planned length.
func stopWords(c *cut.Check, u measure.System) string {
	var out []string
	if c.Rest > 0 {
		out = append(out, u.Format(c.Rest))
	}
	if c.StopFirst != c.Planned {
		out = append(out, "stop at", u.Format(c.StopFirst))
		if c.StopMark.Known {
			out[len(out)-1] += ", " + c.StopMark.String()
		}
	}
	return strings.Join(out, "\n")
}

func cutTicks(cuts []cut.Cut, u measure.System) []ticks {
	var out []ticks
	for i := range cuts {
		c := &cuts[i]
		words := u.Format(c.Used)
		if m := c.Mark.String(); m != "" {
			words += ", " + m
		}
		out = append(out, ticks{1, words})
	}
	return out
}
