package label

import (
	"math"

	"topplate/render/sheet"
)

// A way is a leader that is drawn, from the box of a text to the thing.
type way struct{ from, to sheet.Point }

func (w way) bounds() sheet.Box { return sheet.Bounds(w.from, w.to) }

func (p *Placement) way() way { return way{p.Leader[0], p.Leader[1]} }

// A leading sends texts away on leaders. It works on the placements in out,
// and its grids have those that are placed, by their requests.
type leading struct {
	*scene
	choices [][]candidate
	out     []Placement
	texts   *grid
	ways    *grid
	maxLead sheet.Paper
}

func newLeading(y *layout, out []Placement) *leading {
	l := &leading{
		scene: y.scene, choices: y.choices, out: out,
		texts: newGrid(y.Frame), ways: newGrid(y.Frame), maxLead: y.MaxLeader,
	}
	if l.maxLead <= 0 {
		l.maxLead = DefaultMaxLeader
	}
	for i, p := range out {
		if p.Placed {
			l.texts.add(int32(i), p.Box)
		}
	}
	return l
}

// set places request i, which is not placed.
func (l *leading) set(i int, p Placement) {
	l.out[i] = p
	l.texts.add(int32(i), p.Box)
	if p.Leader != nil {
		l.ways.addLine(int32(i), p.Leader[0], p.Leader[1])
	}
}

// take takes the place of request i, which is placed, away and returns it.
func (l *leading) take(i int) Placement {
	p := l.out[i]
	l.texts.remove(int32(i), p.Box)
	if p.Leader != nil {
		l.ways.remove(int32(i), p.way().bounds())
	}
	l.out[i] = Placement{ID: p.ID}
	return p
}

// Rings of places at growing distance. Each line that a leader crosses makes
// it as bad as a longer one; common practice, no source.
const (
	ringStep     = 1500 * sheet.Micrometre
	crossingCost = 2000 * sheet.Micrometre
	bearings     = 32
)

// send places request i, which is not placed, on a leader: on the nearest ring
// where there is room, or a little further out if it then crosses fewer lines.
func (l *leading) send(i int) bool {
	r := &l.Requests[i]
	if r.Width <= 0 || r.Height <= 0 {
		return false
	}
	anchor := r.target()
	least := sheet.Paper(math.MaxInt64)
	var best Placement
	for distance := 2 * l.clear; distance <= min(l.maxLead, least); distance += ringStep {
		for _, size := range r.sizes() {
			for b := range bearings {
				c := size.at(ring(anchor, size.box, distance, b), 0)
				w, crossed, ok := l.try(r, c.box, anchor)
				if cost := distance + sheet.Paper(crossed)*crossingCost; ok && cost < least {
					least, best = cost, c.placement(r.ID)
					best.Leader = []sheet.Point{w.from, w.to}
				}
			}
		}
	}
	if best.Placed {
		l.set(i, best)
	}
	return best.Placed
}

// target is the point that a leader of r goes to.
func (r *Request) target() sheet.Point {
	if len(r.Along) >= 2 {
		s := longest(r.Along)[0]
		return sheet.Bounds(s.a, s.b).Centre()
	}
	return r.Anchor
}

// ring returns the middle of a box whose nearest point is about at a distance
// from the anchor, in one of the directions. The directions start upwards and
// swing to both sides by turns, so that of equal places the upper is taken.
func ring(anchor sheet.Point, b sheet.Box, distance sheet.Paper, bearing int) sheet.Point {
	turn := sheet.FullTurn / bearings * sheet.Angle((bearing+1)/2)
	if bearing%2 == 0 {
		turn = -turn
	}
	const far = 1 << 20
	way := sheet.Polar(sheet.Point{}, far, sheet.QuarterTurn+turn)
	return sheet.Pt(
		anchor.X+way.X*(distance+b.Width()/2)/far,
		anchor.Y+way.Y*(distance+b.Height()/2)/far)
}

// try reports whether a text of r may stand in box with a leader to the anchor,
// and how many lines the leader crosses. A text on a leader covers no point of
// another request: that could not be led to any more.
func (l *leading) try(r *Request, box sheet.Box, anchor sheet.Point) (w way, crossed int, ok bool) {
	if !l.free(r, box) || !l.clearOfTexts(box) || !l.clearOfWays(box) || l.foreign(r, box) > 0 {
		return way{}, 0, false
	}
	for _, from := range attachments(box, anchor) {
		w = way{from, shorten(from, anchor, r.Symbol)}
		if !box.Struck(w.from, w.to) && l.passes(r, w) {
			return w, l.crossings(w), true
		}
	}
	return way{}, 0, false
}

// attachments lists the middles of the sides of a box, those that look towards
// the anchor first and the ends of the text before its top and bottom.
func attachments(b sheet.Box, anchor sheet.Point) []sheet.Point {
	c := b.Centre()
	left, right := sheet.Pt(b.Min.X, c.Y), sheet.Pt(b.Max.X, c.Y)
	top, bottom := sheet.Pt(c.X, b.Min.Y), sheet.Pt(c.X, b.Max.Y)
	if anchor.X > c.X {
		left, right = right, left
	}
	if anchor.Y > c.Y {
		top, bottom = bottom, top
	}
	if b.Min.X <= anchor.X && anchor.X <= b.Max.X {
		return []sheet.Point{top}
	}
	return []sheet.Point{left, top}
}

// shorten returns the point where the way from a point to the anchor meets the
// symbol around the anchor, or the anchor if there is no symbol.
func shorten(from, anchor sheet.Point, symbol sheet.Box) sheet.Point {
	if !symbol.Has(anchor) || symbol.Has(from) {
		return anchor
	}
	d := from.Sub(anchor)
	part := func(room, all sheet.Paper) float64 {
		if all == 0 {
			return 1
		}
		return min(1, float64(room)/float64(all))
	}
	x, y := symbol.Max.X-anchor.X, symbol.Max.Y-anchor.Y
	if d.X < 0 {
		x = symbol.Min.X - anchor.X
	}
	if d.Y < 0 {
		y = symbol.Min.Y - anchor.Y
	}
	t := min(part(x, d.X), part(y, d.Y))
	return anchor.Add(sheet.Pt(sheet.Paper(math.Round(t*float64(d.X))), sheet.Paper(math.Round(t*float64(d.Y)))))
}
