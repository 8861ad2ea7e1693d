package render

import (
	"bytes"
	"fmt"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/rule"
	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/render/svg"
	"topplate/route"
	"topplate/route/compare"
)

// CompareName is the file of the sheet that compares two plans.
const CompareName = "compare.svg"

// Pens of the sheet that compares two plans: they differ in dash and weight, and
// the meanings are those of this sheet's own legend.
const (
	penOnlyA = sheet.PenPatch // dashed, 0.5 mm, black
	penOnlyB = sheet.PenCable // continuous, 0.7 mm, blue
	penBoth  = sheet.PenRule  // continuous, 0.25 mm, black
)

var penOnly = [2]sheet.Pen{penOnlyA, penOnlyB}

// penHoleOnly are for holes in one plan only: a ring is too small for long
// dashes.
var penHoleOnly = [2]sheet.Pen{sheet.PenHoleThere, sheet.PenHole}

// changedRing is the radius of the ring around a drop that is not the same.
const changedRing = 5 * symbol / 2

// CompareFolder makes the files of a folder that compares two plans: the sheet
// and the manifest.
func CompareFolder(d *compare.Difference) ([]File, error) {
	var b bytes.Buffer
	if err := svg.Write(&b, CompareSheet(d), svg.Options{}); err != nil {
		return nil, fmt.Errorf("making %s: %w", CompareName, err)
	}
	files := []File{{CompareName, b.Bytes()}}
	m := ManifestOf(d.Plans[0].Job, files)
	m.Inputs = append(m.Inputs, ManifestOf(d.Plans[1].Job, nil).Inputs...)
	last, err := m.File()
	return append(files, last), err
}

// CompareSheet draws both plans side by side at one scale, with what is in one
// of them only drawn apart, and their figures in tables below.
func CompareSheet(diff *compare.Difference) *sheet.Sheet {
	a, b := diff.Plans[0], diff.Plans[1]
	res := *b.Result
	res.Cautions = allCautions(a.Result, b.Result)
	desc := fmt.Sprintf("The plans %s and %s side by side, with what changed between them.", a.Job.Name, b.Job.Name)
	d := &drawing{page: newPageAs(&res, "compare", "What changed from A to B", desc, "A and B")}
	foot := d.compareTables(diff)
	real := unionOf(roofBounds(a.Job.House), roofBounds(b.Job.House))
	boxes := d.compareBoxes(real, foot)
	fits := true
	for side, box := range boxes {
		d.view, fits = sheet.FitView(res.Job.House.Units, real, box)
		if !fits {
			break
		}
		d.comparedPlan(diff, side, box)
	}
	if fits {
		d.scaleBar(true)
		d.compareLegend(diff)
	} else {
		d.paragraph(sheet.LetterSmall, "The houses are too large to be drawn together on one sheet.")
	}
	d.changes(diff)
	d.listUnplaced()
	d.cautions()
	return d.sheet
}

// allCautions are those of either plan.
func allCautions(a, b *route.Result) (out []rule.ID) {
	out = slices.Clone(b.Cautions)
	for _, id := range a.Cautions {
		if !slices.Contains(out, id) {
			out = append(out, id)
		}
	}
	return out
}

// compareBoxes divides the drawing area above foot between the two plans,
// beside or above each other, whichever gives the larger scale.
func (d *drawing) compareBoxes(real geom.Rect, foot sheet.Paper) []sheet.Box {
	u := d.res.Job.House.Units
	divide := func(across, down sheet.Paper) []sheet.Box {
		w, t := d.area.Width()/across, (foot-d.area.Min.Y)/down
		var out []sheet.Box
		for i := range sheet.Paper(2) {
			b := sheet.Bx(d.area.Min.X+w*(i%across), d.area.Min.Y+t*(i/across), w, t).Inset(sketchRoom)
			b.Min.Y += sketchName
			out = append(out, b)
		}
		return out
	}
	beside, above := divide(2, 1), divide(1, 2)
	one, _ := sheet.FitView(u, real, beside[0])
	two, _ := sheet.FitView(u, real, above[0])
	if two.Scale.Den < one.Scale.Den {
		return above
	}
	return beside
}

// comparedPlan draws one plan in its part of the paper.
func (d *drawing) comparedPlan(diff *compare.Difference, side int, box sheet.Box) {
	name := string(rune('A' + side))
	id := sheet.ID("plan", string(rune('a'+side)))
	w := diff.Plans[side]
	title := name + ": " + w.Job.Name
	area := sheet.Box{Min: box.Min.Sub(sheet.Pt(sketchRoom, sketchRoom)), Max: box.Max.Add(sheet.Pt(sketchRoom, sketchRoom))}
	s := &drawing{page: &page{res: w.Result, sheet: &sheet.Sheet{}, area: area}, view: d.view, scope: levelScope(0)}
	s.drawWallsBelow()
	s.drawRoof(false)
	s.drawHatches()
	s.changedThings(diff, side)
	s.comparedWays(diff, side)
	s.drawCloset()
	s.comparedHoles(diff, side)
	s.drawReused()
	s.changedDrops(diff, side)
	s.drawDrops(false)
	s.placeLabels()
	for _, b := range s.unplaced {
		b.words = name + ": " + b.words
		d.unplaced = append(d.unplaced, b)
	}
	g := d.sheet.Group(id, "plan", title)
	at := sheet.Pt(area.Min.X+sketchRoom, area.Min.Y)
	g.Text(sheet.LetterHeading, at, sheet.Start, font.Fit(sheet.LetterHeading, title, area.Width()-sketchRoom))
	below := at.Add(sheet.Pt(0, font.LineHeight(sheet.LetterNote)+sheet.MM))
	g.Text(sheet.LetterNote, below, sheet.Start, font.Fit(sheet.LetterNote, report.PlanDetails(w), area.Width()-sketchRoom))
	for _, part := range s.sheet.Groups {
		g.Add(withPrefix(id, part))
	}
}

// comparedWays draws where cable goes: what both plans share thin, what only
// this one has with its own pen.
func (d *drawing) comparedWays(diff *compare.Difference, side int) {
	g := d.sheet.Group("ways", "routes", "Where cable goes")
	both := g.Group("ways-both", "both", "In both plans")
	for _, s := range diff.Ways.Both {
		both.Line(penBoth, d.view.Point(s.From), d.view.Point(s.To))
	}
	only := g.Group("ways-only", "only", "Only in plan "+string(rune('A'+side)))
	for _, s := range diff.Ways.Only[side] {
		only.Line(penOnly[side], d.view.Point(s.From), d.view.Point(s.To))
	}
}

// comparedHoles draws the holes; those that are not the same have their number
// in this plan.
func (d *drawing) comparedHoles(diff *compare.Difference, side int) {
	g := d.sheet.Group("holes", "holes", "Holes")
	for i := range d.res.Holes {
		h := &d.res.Holes[i]
		place := &d.res.Graph.Holes[h.Place]
		at := d.view.Point(flat(place.At))
		x, differs := diff.HoleOf(side, i)
		pen, radius, state := sheet.PenThin, holeRadius, "the same in both plans"
		switch {
		case x.How != compare.Changed:
			pen, state = penHoleOnly[side], "only in this plan"
		case differs:
			radius, state = 3*holeRadius/2, x.How.String()
		}
		hg := g.Group(sheet.ID("hole", h.ID), "hole", fmt.Sprintf("Hole %s through the %s, %s", h.ID, place.Kind, state))
		hg.Circle(pen, at, radius)
		if radius != holeRadius {
			hg.Circle(sheet.PenThin, at, holeRadius)
		}
		hg.Line(sheet.PenThin, sheet.Pt(at.X-holeRadius/2, at.Y), sheet.Pt(at.X+holeRadius/2, at.Y))
		hg.Line(sheet.PenThin, sheet.Pt(at.X, at.Y-holeRadius/2), sheet.Pt(at.X, at.Y+holeRadius/2))
		if differs {
			d.ask(ask{
				id: "hole-" + h.ID, at: at, symbol: around(at, radius), priority: 20, leader: true,
				block: font.Block{{Lettering: sheet.LetterSmallTag, Words: h.ID}},
			})
		}
	}
}

// changedDrops draws a ring around every drop that is not the same, or goes
// another way to its place.
func (d *drawing) changedDrops(diff *compare.Difference, side int) {
	g := d.sheet.Group("changed-drops", "drops", "Drops that are not the same")
	for i := range diff.Drops {
		x := &diff.Drops[i]
		if x.In[side] < 0 {
			continue
		}
		pen := sheet.PenMedium
		if x.How != compare.Changed {
			pen = penOnly[side]
		}
		at := d.view.Point(d.dropPlace(&d.res.Routes[x.In[side]]))
		g.Circle(pen, at, changedRing)
		d.take(around(at, changedRing))
	}
}

// changedThings draws a rectangle around everything of the house that is not
// the same, for the plan that it is in.
func (d *drawing) changedThings(diff *compare.Difference, side int) {
	g := d.sheet.Group("changed-things", "house", "What of the house is not the same")
	for i := range diff.House {
		t := &diff.House[i]
		if !t.Placed[side] || t.Kind == "room" {
			continue
		}
		b := d.view.Box(t.Area[side])
		pen := sheet.PenAbove
		if t.How != compare.Changed {
			pen = penOnly[side]
		}
		tg := g.Group(sheet.ID("thing", fmt.Sprint(i+1)), "thing", t.Kind+" "+t.ID+" "+t.How.String())
		tg.Rect(pen, b)
		d.ask(ask{
			id: fmt.Sprintf("thing-%d", i+1), at: b.Centre(), symbol: b, leader: true, priority: 5,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: join2(t.Kind, t.ID)}},
		})
	}
}
