package render

import (
	"fmt"

	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route/estimate"
	"topplate/route/work"
)

// Estimate draws the page for the homeowner: what the work is expected to cost,
// in plain words, with the allowance in it, and where to sign and date it. It
// is always one sheet: letters get smaller where there is much to say, and at
// the last what does not fit is left to schedule.txt.
func Estimate(w *work.Work) *sheet.Sheet {
	c := newClip(w.Result, "estimate", "Estimate", "1 of 1")
	c.describe([]string{"what the work is expected to cost"})
	foot := signStrips(c.room.Width())
	cautions := cautionStrips(w.Result, c.room.Width(), 0)
	room := c.room.Height() - heightOf(foot) - heightOf(cautions)
	var strips []strip
	for _, l := range []sheet.Lettering{sheet.LetterNote, sheet.LetterSmall} {
		if strips = estimateStrips(w, l, c.room.Width()); heightOf(strips) <= room {
			break
		}
	}
	more := paragraphStrips(sheet.LetterSmall, "The rest of this page is in schedule.txt.", c.room.Width())
	if heightOf(strips) > room {
		for heightOf(strips)+heightOf(more) > room {
			strips = strips[:len(strips)-1]
		}
		strips = append(strips, more...)
	}
	ink(c.sheet.Group("estimate-rows", "list", "Estimate"), c.room.Min, strips)
	ink(c.sheet.Group("signatures", "signatures", "Place to sign"), sheet.Pt(c.room.Min.X, c.room.Max.Y-heightOf(foot)-heightOf(cautions)), foot)
	c.drawCautions(cautions)
	return c.sheet
}

// estimateStrips are the page from the top to where it is signed.
func estimateStrips(w *work.Work, l sheet.Lettering, width sheet.Paper) []strip {
	e := w.Estimate
	out := []strip{wordStrip(sheet.LetterTitle, "Estimate"), gapStrip(sheet.MM)}
	say := func(words string) { out = append(out, paragraphStrips(l, glued(words), width)...) }
	say(w.Job.Name)
	say(join(w.Job.House.Name, w.Job.House.Place))
	out = append(out, gapStrip(sheet.MM))
	say(fmt.Sprintf("This is what the work is expected to cost: %s, with an allowance of %d %% in it. It is an estimate from a sketch of the house, made before anything was opened.",
		e.Money(e.Total), e.Percent))
	out = append(out, gapStrip(2*sheet.MM))
	out = append(out, amountStrips(e, l, width)...)
	out = append(out, gapStrip(3*sheet.MM))
	for _, n := range e.Notes {
		say(n)
		out = append(out, gapStrip(sheet.MM/2))
	}
	return out
}

// amountStrips is the table of amounts, sums in bold under a line.
func amountStrips(e *estimate.Estimate, l sheet.Lettering, width sheet.Paper) []strip {
	bold := map[sheet.Lettering]sheet.Lettering{sheet.LetterNote: sheet.LetterTag, sheet.LetterSmall: sheet.LetterSmallTag}[l]
	columns := []column{
		{head: "what", lettering: bold},
		{head: "time", lettering: bold, align: sheet.End, whole: true},
		{head: "amount", lettering: bold, align: sheet.End, whole: true},
	}
	var cells [][]string
	for _, r := range e.Rows() {
		cells = append(cells, []string{r.Text, glued(r.Time), glued(r.Amount)})
	}
	fitColumns(columns, cells, width)
	plain := make([]column, len(columns))
	for i, c := range columns {
		c.lettering = l
		plain[i] = c
	}
	out := []strip{headRow(columns).strip(), ruleStrip(width)}
	for i, r := range e.Rows() {
		if i == len(cells)-1 {
			out = append(out, ruleStrip(width))
		}
		if r.Sum {
			out = append(out, newRow(columns, cells[i]).strip(), gapStrip(sheet.MM))
			continue
		}
		out = append(out, newRow(plain, cells[i]).strip())
	}
	return out
}

func gapStrip(height sheet.Paper) strip {
	return strip{height: height, draw: func(*sheet.Group, sheet.Point) {}}
}

// signStrips are the lines for date, name and signature of both sides.
func signStrips(width sheet.Paper) []strip {
	const height = 13 * sheet.MM
	out := []strip{wordStrip(sheet.LetterNote, "Seen by both, with the date. Work that turns out different is agreed before it is done.")}
	for _, who := range []string{"Homeowner", "Installer"} {
		out = append(out, strip{height: height, draw: func(g *sheet.Group, at sheet.Point) {
			base := at.Y + height - 3*sheet.MM
			x := at.X
			for _, f := range []struct {
				name string
				part sheet.Paper
			}{{who, 45}, {"signature", 35}, {"date", 20}} {
				w := width * f.part / 100
				g.Text(sheet.LetterNote, sheet.Pt(x, base), sheet.Start, f.name)
				from := x + font.Width(sheet.LetterNote, f.name) + 2*sheet.MM
				g.Line(sheet.PenRule, sheet.Pt(from, base+sheet.MM/2), sheet.Pt(x+w-3*sheet.MM, base+sheet.MM/2))
				x += w
			}
		}})
	}
	return append(out, gapStrip(3*sheet.MM))
}
