package label

import (
	"cmp"
	"math"
	"slices"

	"topplate/render/sheet"
)

// A way is a leader, from the box of a text to the thing.
type way struct{ from, to sheet.Point }

func (w way) bounds() sheet.Box { return sheet.Bounds(w.from, w.to) }

// crosses reports whether two leaders have a point in common. Leaders to one
// thing have its point in common and do not cross for that.
func (w way) crosses(v way) bool {
	if w.to == v.to && sheet.Turn(w.from, w.to, v.from) != 0 {
		return false
	}
	return meet(w.from, w.to, v.from, v.to)
}

// Places on leaders lie on rings around the thing. The rings are a step apart
// near to it and a share of their size further out. Common practice, no source.
const (
	bearings  = 32
	ringStep  = 1500 * sheet.Micrometre
	ringShare = 5 // a fifth
)

// Costs of a place on a leader: more than of any beside the thing, more for
// each tenth of a millimetre of distance, for each line that the leader
// crosses, and for each that it runs along, where it could not be seen.
const (
	costLeader   = 2 * costMax
	costCrossing = 20
	costHugging  = 300
	costUnit     = 100 * sheet.Micrometre
)

// ledCandidates returns the free places of r on a leader, the best first.
func (s *scene) ledCandidates(r *Request) []candidate {
	if r.Width <= 0 || r.Height <= 0 {
		return nil
	}
	var all []candidate
	target := r.target()
	for distance := 2 * s.clear; distance <= s.maxLeader; distance += max(ringStep, distance/ringShare) {
		for _, size := range r.sizes() {
			for b := range bearings {
				c := size.at(ring(target, size.box, distance, b), costLeader+int(distance/costUnit))
				if s.led(r, &c) {
					all = append(all, c)
				}
			}
		}
	}
	slices.SortStableFunc(all, func(a, b candidate) int { return cmp.Compare(a.cost, b.cost) })
	return all
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
// from the target, in one of the directions. The directions start upwards and
// swing to both sides by turns, so that of equal places the upper is taken.
func ring(target sheet.Point, b sheet.Box, distance sheet.Paper, bearing int) sheet.Point {
	turn := sheet.FullTurn / bearings * sheet.Angle((bearing+1)/2)
	if bearing%2 == 0 {
		turn = -turn
	}
	const far = 1 << 20 // so far that the rounding of the direction does not matter
	way := sheet.Polar(sheet.Point{}, far, sheet.QuarterTurn+turn)
	return sheet.Pt(
		target.X+way.X*(distance+b.Width()/2)/far,
		target.Y+way.Y*(distance+b.Height()/2)/far)
}

// led reports whether a text of r may stand in the box of c on a leader, and
// gives c the leader and its cost. A text on a leader covers no point of another
// request: that could not be led to any more. That of an area stands in no other: it
// would be taken for the name of that one.
func (s *scene) led(r *Request, c *candidate) bool {
	if !s.free(r, c.box) || s.foreign(r, c.box) > 0 || s.inOtherArea(r, c.box) {
		return false
	}
	target := r.target()
	for _, from := range attachments(c.box, target) {
		w := way{from, shorten(from, target, r.Symbol)}
		if !c.box.Struck(w.from, w.to) && s.passes(r, w) {
			c.way = &w
			c.cost += s.lineCost(w) + costSoft*s.strikes(r, c.box, true)
			return true
		}
	}
	return false
}

// inOtherArea reports whether a box reaches into the area of another request than r,
// which is for an area too.
func (s *scene) inOtherArea(r *Request, b sheet.Box) bool {
	if !r.area() {
		return false
	}
	for i := range s.Requests {
		if o := &s.Requests[i]; o != r && o.area() && b.Overlaps(o.Within) && !r.Within.Overlaps(o.Within) {
			return true
		}
	}
	return false
}

// area reports whether a request is for an area.
func (r *Request) area() bool { return len(r.Along) < 2 && r.Within != (sheet.Box{}) }

// attachments lists the middles of the sides of a box that look towards the
// target, the ends of the text before its top and bottom.
func attachments(b sheet.Box, target sheet.Point) []sheet.Point {
	c := b.Centre()
	end, edge := sheet.Pt(b.Min.X, c.Y), sheet.Pt(c.X, b.Min.Y)
	if target.X > c.X {
		end.X = b.Max.X
	}
	if target.Y > c.Y {
		edge.Y = b.Max.Y
	}
	if b.Min.X <= target.X && target.X <= b.Max.X {
		return []sheet.Point{edge}
	}
	return []sheet.Point{end, edge}
}

// shorten returns the point where the way from a point to the target meets the
// symbol around the target, or the target if there is no symbol.
func shorten(from, target sheet.Point, symbol sheet.Box) sheet.Point {
	if !symbol.Has(target) || symbol.Has(from) {
		return target
	}
	d := from.Sub(target)
	x, y := symbol.Max.X-target.X, symbol.Max.Y-target.Y
	if d.X < 0 {
		x = symbol.Min.X - target.X
	}
	if d.Y < 0 {
		y = symbol.Min.Y - target.Y
	}
	t := min(share(x, d.X), share(y, d.Y))
	return target.Add(sheet.Pt(sheet.Paper(math.Round(t*float64(d.X))), sheet.Paper(math.Round(t*float64(d.Y)))))
}

// share is part/whole, at most 1, and 1 if whole is zero.
func share(part, whole sheet.Paper) float64 {
	if whole == 0 {
		return 1
	}
	return min(1, float64(part)/float64(whole))
}
