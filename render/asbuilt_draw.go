package render

import (
	"fmt"

	"topplate/plan/record"
	"topplate/render/font"
	"topplate/render/sheet"
)

// Pens of the drawing as built. They differ in dash and weight, and the
// meanings are those of its own legend.
const (
	penRun     = sheet.PenCable     // continuous, 0.7 mm, blue
	penLeft    = sheet.PenCableLeft // dashed, 0.35 mm, blue
	penSilent  = sheet.PenWallBelow // short dashes far apart, 0.25 mm, grey
	penDrilled = sheet.PenHole      // continuous, 0.5 mm
	penUndone  = sheet.PenHoleThere // dashed, 0.25 mm, grey
	penPlanned = sheet.PenThin
)

// plannedRadius is that of the ring at a hole's planned place, which stands out
// around the hole.
const plannedRadius = 3 * holeRadius / 2

// draw draws the floor with what was done.
func (b *built) draw(d *drawing) {
	d.drawStairs()
	d.drawRoof(false)
	d.drawWalls()
	d.scaleBar(true)
	b.ways(d)
	d.drawCloset()
	b.drawPlanned(d)
	b.drawDrilled(d)
	b.conduits(d)
	b.drops(d)
	d.nameRooms()
}

// ways draws every bundle, those that were run over the others. How many cables
// it has, and what was not run, is said once where the same cables go on.
func (b *built) ways(d *drawing) {
	said := map[string]bool{}
	g := d.sheet.Group("ways", "routes", "Cables as built")
	for _, pen := range []sheet.Pen{penSilent, penLeft, penRun} {
		for i := range b.res.Bundles {
			x := &b.res.Bundles[i]
			points, t := flatten(x.Points), b.tally(x.Drops)
			if len(points) < 2 || t.pen() != pen || !d.scope.hasBundle(b.res, x) {
				continue
			}
			id := fmt.Sprintf("bundle-%d", i+1)
			at := d.view.Points(points)
			g.Group(id, "bundle", bundleTitle(b.res, x)+": "+t.words()).Polyline(pen, at...)
			drops := fmt.Sprint(x.Drops)
			if words := t.beside(); words != "" && longest(at) >= shortestCounted && !said[drops] {
				said[drops] = true
				d.ask(ask{
					id: id, along: at, priority: 5, leader: true,
					block: font.Block{{Lettering: sheet.LetterCableTag, Words: words}},
				})
			}
		}
	}
}

// beside is what stands beside a bundle: how many cables, if there is more than
// one, how many of them were run, and why none was. Where none has an entry the
// drops say so.
func (t tally) beside() string {
	all := t.run + t.deferred + t.notRun + t.silent
	switch {
	case t.run == 0 && t.deferred+t.notRun > 0:
		return t.words()
	case t.run == 0 || all == 1:
		return ""
	case t.run < all:
		return fmt.Sprintf("%d of %d×", t.run, all)
	}
	return fmt.Sprintf("%d×", all)
}

// drawPlanned draws where holes were planned: a thin ring, and a faint hole
// with its number where there is no entry.
func (b *built) drawPlanned(d *drawing) {
	g := d.sheet.Group("planned", "holes", "Holes as planned")
	for i := range b.Plan.Holes {
		h := &b.Plan.Holes[i]
		p, ok := b.planned(h)
		if !ok || b.levelOf(h.ID, h.Wall) != d.scope.level {
			continue
		}
		at := d.view.Point(p)
		if _, ok := b.holes[h.ID]; ok {
			g.Group(sheet.ID("planned", h.ID), "hole", fmt.Sprintf("Hole %s as planned", h.ID)).Circle(penPlanned, at, plannedRadius)
			continue
		}
		g.Group(sheet.ID("hole", h.ID), "hole", fmt.Sprintf("Hole %s, without an entry", h.ID)).Circle(penUndone, at, holeRadius)
		d.ask(ask{
			id: "hole-" + h.ID, at: at, symbol: around(at, holeRadius), priority: 20, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmallTag, Words: h.ID}, {Lettering: sheet.LetterSmall, Words: "no entry"}},
			short: font.Block{{Lettering: sheet.LetterSmallTag, Words: h.ID}},
		})
	}
}

// drawDrilled draws holes where they were drilled, with a line from where they
// were planned if that is apart, and lists those without a place in this house.
func (b *built) drawDrilled(d *drawing) {
	g := d.sheet.Group("holes", "holes", "Holes as drilled")
	for i := range b.now {
		e := &b.now[i]
		if e.Kind != record.HoleKind {
			continue
		}
		p, ok := b.drilled(e)
		if !ok || b.levelOf(e.ID, e.Hole.Wall) != d.scope.level {
			continue
		}
		at, apart := d.view.Point(p), b.apart(e)
		size := b.Plan.Units.Format(e.Hole.Diameter)
		hg := g.Group(sheet.ID("hole", e.ID), "hole", fmt.Sprintf("Hole %s as drilled, %s (entry %d)", e.ID, size, e.Number))
		if pl, ok := b.Plan.Hole(e.ID); ok && apart != "" {
			if from, ok := b.planned(pl); ok {
				hg.Line(penPlanned, d.view.Point(from), at)
			}
		}
		hg.Circle(penDrilled, at, holeRadius)
		hg.Line(sheet.PenThin, sheet.Pt(at.X-holeRadius/2, at.Y), sheet.Pt(at.X+holeRadius/2, at.Y))
		hg.Line(sheet.PenThin, sheet.Pt(at.X, at.Y-holeRadius/2), sheet.Pt(at.X, at.Y+holeRadius/2))
		block := font.Block{{Lettering: sheet.LetterSmallTag, Words: e.ID}, {Lettering: sheet.LetterSmall, Words: join(size, apart)}}
		d.ask(ask{
			id: "hole-" + e.ID, at: at, symbol: around(at, plannedRadius), priority: 20, leader: true,
			block: block, short: block[:1],
		})
	}
}

// conduits draws a square for every conduit that cables are planned through.
func (b *built) conduits(d *drawing) {
	g := d.sheet.Group("conduits", "reused", "Conduits that are there")
	for i := range b.res.Reused {
		u := &b.res.Reused[i]
		if !u.Conduit || !d.scope.hasReuse(b.res.Job.House, u) {
			continue
		}
		at := d.view.Point(flat(u.At))
		box := around(at, holeRadius)
		g.Group(sheet.ID("reused", u.ID), "reused", u.ID+", there already").Rect(penDrilled, box)
		d.ask(ask{
			id: "reused-" + u.ID, at: at, symbol: box, priority: 20, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmallTag, Words: u.ID}},
		})
	}
}

// drops draws the drops with what became of their cables.
func (b *built) drops(d *drawing) {
	g := d.sheet.Group("drops", "drops", "Drops")
	for i := range b.res.Routes {
		r := &b.res.Routes[i]
		if !d.scope.hasDrop(b.res, r) {
			continue
		}
		drop := &b.res.Job.Drops[r.Drop]
		at := d.view.Point(d.dropPlace(r))
		words := b.tally([]int{r.Drop}).words()
		d.drawDropSymbol(g.Group(sheet.ID("drop", drop.Tag), "drop", fmt.Sprintf("Drop %s, %s: %s", drop.Tag, drop.Kind, words)), drop, at)
		block := font.Block{{Lettering: sheet.LetterTag, Words: drop.Tag}, {Lettering: sheet.LetterSmall, Words: words}}
		d.ask(ask{
			id: "drop-" + drop.Tag, at: at, symbol: around(at, symbol), priority: 30, leader: true,
			block: block, short: block[:1],
		})
	}
}
