package render_test

import (
	"math"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/render"
	"topplate/render/sheet"
	"topplate/route"
	"topplate/route/fix"
	"topplate/route/tape"
	"topplate/route/work"
)

// group is the group of a sheet with an id, at any depth.
func group(groups []*sheet.Group, id string) *sheet.Group {
	for _, g := range groups {
		if g.ID == id {
			return g
		}
		var inner []*sheet.Group
		for _, item := range g.Items {
			if c, ok := item.(*sheet.Group); ok {
				inner = append(inner, c)
			}
		}
		if found := group(inner, id); found != nil {
			return found
		}
	}
	return nil
}

// marksOf are the marks that a hole is taped from, as package fix tells.
func marksOf(a *fix.Above) []tape.Mark {
	switch {
	case !a.Reached:
	case a.Method == fix.ByTapes:
		return a.Fix.Best.Marks[:]
	case a.Method == fix.ByJoists:
		return []tape.Mark{a.Fix.Joist.Mark}
	case a.Method == fix.ByBearing:
		return []tape.Mark{a.Fix.Single.Mark}
	}
	return nil
}

// checkArcs measures the arcs on the sheets: each is about its mark, as far
// away as the hole is, by Pythagoras, to the nearest mark of a tape, and the
// hole is on it. It returns how many there are.
func checkArcs(t *testing.T, w *work.Work, sheets []*sheet.Sheet) (arcs int) {
	t.Helper()
	step := measure.Graduation
	if w.Job.House.Units == measure.Metric {
		step = measure.Millimetre
	}
	for i := range w.Fixes {
		for _, space := range spacesOf(&w.Fixes[i]) {
			h, in := w.Fixes[i].In(space)
			if !in {
				t.Errorf("hole %s is not found from space %d", h.ID, space)
			}
			arcs += checkHoleArcs(t, w.Job.House, &h, sheets, step)
		}
	}
	return arcs
}

// spacesOf are the spaces that a hole is found from.
func spacesOf(h *fix.Hole) []int {
	if h.Far == nil {
		return []int{h.Space}
	}
	return []int{h.Space, h.Far.Space}
}

// isFixesOf reports whether a sheet is of the holes that are found from a space:
// it is called by the space's kind, and by its id if the house has more of that
// kind.
func isFixesOf(h *plan.House, space int, s *sheet.Sheet) bool {
	kind := func(s *plan.Space) string {
		switch {
		case s.Kind == plan.AtticSpace:
			return "attic"
		case s.Kind == plan.CrawlSpace:
			return "crawl-space"
		case s.Above < 0:
			return "flat-roof"
		}
		return "joist-bays"
	}
	own, same := kind(h.Spaces[space]), 0
	for _, other := range h.Spaces {
		if kind(other) == own {
			same++
		}
	}
	if same > 1 && h.Spaces[space].ID != own {
		own = sheet.ID(own, h.Spaces[space].ID)
	}
	return tileNumber.ReplaceAllString(s.ID, "") == own+"-fixes"
}

// checkHoleArcs measures the arcs of a hole on the sheets of the space that it is
// found from.
func checkHoleArcs(t *testing.T, house *plan.House, h *fix.Hole, sheets []*sheet.Sheet, step measure.Length) (arcs int) {
	t.Helper()
	hole := geom.Point{X: h.At.X, Y: h.At.Y}
	marks := marksOf(&h.Above)
	shown := false
	for _, s := range sheets {
		g := group(s.Groups, sheet.ID("fix", h.ID))
		if g == nil || h.Space >= 0 && !isFixesOf(house, h.Space, s) {
			continue
		}
		var found []sheet.Arc
		for _, item := range g.Items {
			if a, ok := item.(sheet.Arc); ok {
				found = append(found, a)
			}
		}
		if len(found) == 0 {
			// Here are only joists that are counted for it.
			continue
		}
		shown = true
		if len(found) != len(marks) {
			t.Errorf("%s: hole %s has %d arcs, want %d", s.ID, h.ID, len(found), len(marks))
			continue
		}
		for j, a := range found {
			arcs++
			checkArc(t, s, a, marks[j].At, hole, step)
		}
	}
	if !shown && len(marks) > 0 {
		t.Errorf("hole %s has no arcs on any sheet", h.ID)
	}
	return arcs
}

func checkArc(t *testing.T, s *sheet.Sheet, a sheet.Arc, mark, hole geom.Point, step measure.Length) {
	t.Helper()
	den := float64(s.View.Scale.Den) * 1000 // nanometres for a micrometre of paper
	real := math.Hypot(float64(hole.X-mark.X), float64(hole.Y-mark.Y))
	if a.Centre != s.View.Point(mark) {
		t.Errorf("%s: an arc is about %v, the mark is at %v", s.ID, a.Centre, s.View.Point(mark))
	}
	if off := math.Abs(float64(a.Radius)*den - real); off > float64(step)/2+den {
		t.Errorf("%s: a radius is %.0f nm off", s.ID, off)
	}
	// The middle is to within 1/64 of a degree where the hole is.
	at, middle := s.View.Point(hole), a.Middle()
	d := math.Hypot(float64(at.X-middle.X), float64(at.Y-middle.Y))
	if most := float64(a.Radius)*math.Pi/180/64*1.1 + float64(step)/den + 3; d > most {
		t.Errorf("%s: an arc passes %.0f µm from its hole, want at most %.0f", s.ID, d, most)
	}
	if a.Sweep <= 0 || a.Sweep > 120*sheet.Degree {
		t.Errorf("%s: an arc sweeps %d", s.ID, a.Sweep)
	}
}

func TestArcsMeetAtTheHoles(t *testing.T) {
	arcs := 0
	for _, job := range append(samples(t), "testdata/one-room/job.toml", "testdata/long-building/job.toml") {
		w := fixed(solveFile(t, job))
		arcs += checkArcs(t, w, render.Sheets(w))
	}
	for seed := range uint64(12) {
		w := fixed(solve(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{Drops: 6}).Read))
		if arcs += checkArcs(t, w, render.Sheets(w)); t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
	if arcs < 60 {
		t.Errorf("only %d arcs", arcs)
	}
}

// The ways are drawn from a hatch, and as long together as somebody would crawl
// who goes each stretch once: no more than the ways one by one, no less than
// the longest.
func TestWaysStartAtTheHatch(t *testing.T) {
	for _, job := range samples(t) {
		w := fixed(solveFile(t, job))
		for _, s := range render.Sheets(w) {
			if s.ID != "attic-fixes" {
				continue
			}
			var drawn, sum, longest measure.Length
			inHatch := false
			lines := group(s.Groups, "ways").Items
			for i, item := range lines {
				for _, other := range lines[:i] {
					if along(item.(sheet.Line), other.(sheet.Line)) {
						t.Errorf("%s: a way is drawn twice: %v, %v", job, item, other)
					}
				}
			}
			for _, item := range lines {
				l := item.(sheet.Line)
				d := l.B.Sub(l.A)
				drawn += s.View.Scale.Real(max(d.X, -d.X) + max(d.Y, -d.Y))
				for i := range w.Job.House.Hatches {
					b := s.View.Box(w.Job.House.Hatches[i].Area).Inset(-2)
					inHatch = inHatch || b.Has(l.A) || b.Has(l.B)
				}
			}
			for i := range w.Fixes {
				var one measure.Length
				for _, step := range w.Fixes[i].Above.Way {
					if step.Zone <= route.Crawl {
						one += step.Length
					}
				}
				sum, longest = sum+one, max(longest, one)
			}
			const rounding = measure.Millimetre * 10
			if !inHatch || drawn > sum+rounding || drawn < longest-rounding || longest == 0 {
				t.Errorf("%s: %d drawn, %d one by one, the longest %d; in the hatch: %v", job, drawn, sum, longest, inHatch)
			}
		}
	}
}

// along reports whether two lines along an axis share more than a point.
func along(a, b sheet.Line) bool {
	p, q := sheet.Bounds(a.A, a.B), sheet.Bounds(b.A, b.B)
	x, y := min(p.Max.X, q.Max.X)-max(p.Min.X, q.Min.X), min(p.Max.Y, q.Max.Y)-max(p.Min.Y, q.Min.Y)
	return x == 0 && y > 0 && p.Width() == 0 && q.Width() == 0 || y == 0 && x > 0 && p.Height() == 0 && q.Height() == 0
}

// A joist that is counted has a tick: as many as package fix counts.
func TestTicksAreCounted(t *testing.T) {
	counted := 0
	for seed := range uint64(12) {
		w := fixed(solve(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{Drops: 6}).Read))
		for _, s := range render.Sheets(w) {
			for i := range w.Fixes {
				h := &w.Fixes[i]
				if s.ID != "attic-fixes" || h.Above.Method != fix.ByJoists {
					continue
				}
				ticks := 0
				for _, item := range group(s.Groups, sheet.ID("fix", h.ID)).Items {
					if l, ok := item.(sheet.Line); ok && l.Pen == sheet.PenTick {
						ticks++
					}
				}
				if ticks != h.Above.Joists.Joists {
					t.Errorf("seed %d: hole %s has %d ticks for %d joists", seed, h.ID, ticks, h.Above.Joists.Joists)
				}
				counted += ticks
			}
		}
	}
	if counted < 20 {
		t.Errorf("only %d ticks", counted)
	}
}

// Every hole is told of in the column, with the error to expect from above, as
// far as there is room.
func TestFixesTell(t *testing.T) {
	for _, job := range samples(t) {
		w := fixed(solveFile(t, job))
		var all string
		for _, s := range render.Sheets(w) {
			if strings.Contains(s.ID, "-fixes") {
				all += strings.Join(checkTexts(t, w.Result, s), " ") + " "
			}
		}
		if strings.Contains(all, "schedule.txt") {
			continue // there is no room for all, which is said
		}
		for i := range w.Fixes {
			a := &w.Fixes[i].Above
			if want := "± " + w.Job.House.Units.FormatSheet(a.Error); a.Error > 0 && !strings.Contains(all, want) {
				t.Errorf("%s: hole %s: no %q", job, w.Fixes[i].ID, want)
			}
			for _, m := range marksOf(a) {
				if !strings.Contains(all, "from "+m.ID) {
					t.Errorf("%s: hole %s: mark %s is not named", job, w.Fixes[i].ID, m.ID)
				}
			}
		}
	}
}
