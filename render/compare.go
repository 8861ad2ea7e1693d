package render

import (
	"bytes"
	"fmt"
	"slices"

	"topplate/plan"
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
	levels := comparedLevels(diff)
	most := max(len(levels[0]), len(levels[1]))
	boxes := d.cells(2, most, real, foot)
	fits := true
	for side := range levels {
		for k, level := range levels[side] {
			if d.view, fits = sheet.FitView(res.Job.House.Units, real, boxes[side][k]); fits {
				d.comparedPlan(diff, side, level, boxes[side][k])
			}
		}
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

// comparedLevels are the levels of both plans that are drawn, from the lowest
// up: those that an installer comes to in one of them, by the ids of levels.
func comparedLevels(diff *compare.Difference) (levels [2][]int) {
	come := map[string]bool{}
	for _, w := range diff.Plans {
		for level := range w.Job.House.Levels {
			if passed(w.Result, level) {
				come[w.Job.House.Levels[level].ID] = true
			}
		}
	}
	for side, w := range diff.Plans {
		h := w.Job.House
		levels[side] = slices.DeleteFunc(byHeight(h), func(level int) bool { return len(h.Levels) > 1 && !come[h.Levels[level].ID] })
	}
	return levels
}

// comparedPlan draws a level of one plan in its part of the paper.
func (d *drawing) comparedPlan(diff *compare.Difference, side, level int, box sheet.Box) {
	name := string(rune('A' + side))
	w := diff.Plans[side]
	id := cellID(w.Job.House, string(rune('a'+side)), level)
	title := cellTitle(w.Job.House, name+": "+w.Job.Name, level)
	area := sheet.Box{Min: box.Min.Sub(sheet.Pt(sketchRoom, sketchRoom)), Max: box.Max.Add(sheet.Pt(sketchRoom, sketchRoom))}
	s := &drawing{page: &page{res: w.Result, sheet: &sheet.Sheet{}, area: area}, view: d.view, scope: levelScope(level), plainHatches: true}
	at := sheet.Pt(area.Min.X+sketchRoom, area.Min.Y)
	below := at.Add(sheet.Pt(0, font.LineHeight(sheet.LetterNote)+sheet.MM))
	if len(w.Job.House.Levels) > 1 {
		// Cells are narrow, and their labels come near the words over them.
		s.area.Min.Y = below.Y
	}
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
	g.Text(sheet.LetterHeading, at, sheet.Start, font.Fit(sheet.LetterHeading, title, area.Width()-sketchRoom))
	g.Text(sheet.LetterNote, below, sheet.Start, font.Fit(sheet.LetterNote, report.PlanDetails(w), area.Width()-sketchRoom))
	for _, part := range s.sheet.Groups {
		g.Add(withPrefix(id, part))
	}
}

// comparedWays draws where cable goes: what both plans share thin, what only
// this one has with its own pen.
func (d *drawing) comparedWays(diff *compare.Difference, side int) {
	ways := diff.Ways
	if h := d.res.Job.House; len(h.Levels) > 1 {
		id := h.Levels[d.scope.level].ID
		ways = compare.WaysOf(diff.Plans[0].Result, diff.Plans[1].Result, func(res *route.Result, p, q geom.Point3) bool {
			middle := geom.Point3{X: (p.X + q.X) / 2, Y: (p.Y + q.Y) / 2, Z: (p.Z + q.Z) / 2}
			return res.Job.House.Levels[levelAt(res.Job.House, middle)].ID == id
		})
	}
	g := d.sheet.Group("ways", "routes", "Where cable goes")
	both := g.Group("ways-both", "both", "In both plans")
	for _, s := range ways.Both {
		both.Line(penBoth, d.view.Point(s.From), d.view.Point(s.To))
	}
	only := g.Group("ways-only", "only", "Only in plan "+string(rune('A'+side)))
	for _, s := range ways.Only[side] {
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
		if !d.scope.hasHole(d.res.Job.House, place) {
			continue
		}
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
		if x.In[side] < 0 || !d.scope.hasDrop(d.res, &d.res.Routes[x.In[side]]) {
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
		if !t.Placed[side] || t.Kind == "room" || !d.scope.hasThing(d.res.Job.House, t.Kind, t.ID) {
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

// hasThing reports whether a thing of the house, by the kind that a comparison
// calls it, is on the level; what is not found is on all.
func (s scope) hasThing(h *plan.House, kind, id string) bool {
	inWall := func(w *plan.Wall) bool {
		return kind == "wall" && w.ID == id ||
			kind == "opening" && slices.ContainsFunc(w.Openings, func(o plan.Opening) bool { return o.ID == id }) ||
			kind == "device" && slices.ContainsFunc(w.Devices, func(o plan.Device) bool { return o.ID == id })
	}
	for i := range h.Walls {
		if inWall(&h.Walls[i]) {
			return h.Walls[i].Level == s.level
		}
	}
	space := -1
	for i := range h.Hatches {
		if kind == "hatch" && h.Hatches[i].ID == id {
			space = h.Hatches[i].Space
		}
	}
	for i := range h.Obstacles {
		if kind == "obstacle" && h.Obstacles[i].ID == id {
			space = h.Obstacles[i].Space
		}
	}
	for i := range h.PowerRuns {
		if kind == "power cable" && h.PowerRuns[i].ID == id {
			space = h.PowerRuns[i].Space
		}
	}
	for i := range h.Marks {
		if kind == "mark" && h.Marks[i].ID == id {
			space = h.Marks[i].Space
		}
	}
	return space < 0 || levelOfSpace(h, space) == s.level
}
