package bundle

import (
	"math"
	"slices"

	"topplate/plan/measure"
)

// mostPlaced bounds the cables that are placed one by one. More of them are
// taken to be as thick as the thickest.
const mostPlaced = 40

// Enclosing is the diameter of a circle that encloses cables of the given
// diameters, in any order. It is the smaller of two circles that surely do: the
// one around as many cables of the largest diameter, and the one around an
// arrangement that is worked out here. It may be larger than the smallest there
// is, but no less: the arrangement is held against overlaps, and the circle is
// rounded up. One and two cables, and equal ones, are exact as in Diameter.
//
// It takes time O(k·n⁴) for n cables of k diameters, up to 40 of them: some
// milliseconds for a dozen. A diameter that is not above zero takes up nothing.
func Enclosing(diameters []measure.Length) measure.Length {
	d := slices.DeleteFunc(slices.Clone(diameters), func(l measure.Length) bool { return l <= 0 })
	slices.Sort(d)
	slices.Reverse(d)
	if len(d) == 0 {
		return 0
	}
	best := Diameter(len(d), d[0])
	if len(d) == 2 {
		return d[0] + d[1]
	}
	if d[0] == d[len(d)-1] || len(d) > mostPlaced {
		return best
	}
	for i, first := range d {
		if i > 0 && d[i-1] == first {
			continue
		}
		// The cable that all others lie about comes first; a thin one in the
		// middle often serves best.
		rest := slices.Delete(slices.Clone(d), i, i+1)
		for range 2 {
			best = min(best, arrange(first, rest).squeezed())
			slices.Reverse(rest)
		}
	}
	return best
}

// A disc is a placed cable. Lengths are nanometres.
type disc struct{ x, y, r float64 }

// An arrangement is cables where they lie.
type arrangement []disc

// arrange places cables one after the other, each against two that lie
// already, as near to the middle as it can.
func arrange(first measure.Length, rest []measure.Length) arrangement {
	a := arrangement{{0, 0, float64(first) / 2}}
	for _, d := range rest {
		a = append(a, a.nestle(float64(d)/2))
	}
	return a
}

// nestle is the place for one more cable: of all that touch two others and
// overlap none, the one that reaches least far out from the middle.
func (a arrangement) nestle(r float64) disc {
	if len(a) == 1 {
		return disc{a[0].r + r, 0, r}
	}
	x, y := a.middle()
	best, least := disc{}, math.Inf(1)
	for i := range a {
		for j := range a[:i] {
			for _, side := range [2]float64{1, -1} {
				c, ok := against(a[i], a[j], r, side)
				if out := math.Hypot(c.x-x, c.y-y) + r; ok && out < least-1 && a.free(c) {
					best, least = c, out
				}
			}
		}
	}
	return best
}

// against is the disc of radius r that touches p and q, on one side of the
// line between them. ok is false if they are too far apart.
func against(p, q disc, r, side float64) (disc, bool) {
	dx, dy := q.x-p.x, q.y-p.y
	d := math.Hypot(dx, dy)
	rp, rq := p.r+r, q.r+r
	if d == 0 || d > rp+rq || d < math.Abs(rp-rq) {
		return disc{}, false
	}
	along := (float64((rp-rq)*(rp+rq))/d + d) / 2
	off := side * math.Sqrt(max(0, float64((rp-along)*(rp+along))))
	return disc{
		x: p.x + (float64(along*dx)-float64(off*dy))/d,
		y: p.y + (float64(along*dy)+float64(off*dx))/d,
		r: r,
	}, true
}

// touching is by how much, of the sum of their radii, discs may seem to overlap
// that only touch.
const touching = 1e-9

// free reports whether c overlaps nothing.
func (a arrangement) free(c disc) bool {
	for _, b := range a {
		if math.Hypot(b.x-c.x, b.y-c.y) < float64((b.r+c.r)*(1-touching)) {
			return false
		}
	}
	return true
}

// middle is the centre of a small circle around all: the function that is made
// small is convex, so steps that only ever shorten it end near its least.
func (a arrangement) middle() (x, y float64) {
	for _, b := range a {
		x, y = x+b.x/float64(len(a)), y+b.y/float64(len(a))
	}
	least := a.reach(x, y)
	for step := least; step > 100; {
		moved := false
		for _, to := range [...][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
			u, v := x+float64(step*to[0]), y+float64(step*to[1])
			if out := a.reach(u, v); out < least {
				x, y, least, moved = u, v, out, true
			}
		}
		if !moved {
			step /= 2
		}
	}
	return x, y
}

// reach is the radius of the circle about a point that encloses all.
func (a arrangement) reach(x, y float64) float64 {
	out := 0.0
	for _, b := range a {
		out = max(out, math.Hypot(b.x-x, b.y-y)+b.r)
	}
	return out
}

// enclosing is the diameter of a circle around the arrangement. Whatever
// overlap there is, it is drawn apart until there is none, so that the circle
// is right however the discs came to lie; what rounding may have taken off is
// added.
func (a arrangement) enclosing() measure.Length {
	x, y := a.middle()
	apart := 1.0
	for i, p := range a {
		for _, q := range a[:i] {
			d := math.Hypot(p.x-q.x, p.y-q.y)
			if d == 0 {
				return math.MaxInt64
			}
			apart = max(apart, (p.r+q.r)/d)
		}
	}
	out := 0.0
	for _, b := range a {
		out = max(out, float64(math.Hypot(b.x-x, b.y-y)*apart)+b.r)
	}
	return measure.Length(math.Ceil(float64(2 * out * (1 + touching))))
}

// How an arrangement is squeezed: by so much at a time, so often, and with so
// many pushes each. More of either gains less than a thousandth.
const (
	tighter = 0.995
	squeeze = 40
	pushes  = 25
)

// squeezed is the smallest circle that was seen around the arrangement while a
// ring about it was drawn tighter and the cables pushed each other aside. It
// changes the arrangement.
func (a arrangement) squeezed() measure.Length {
	best := a.enclosing()
	x, y := a.middle()
	for i := range a {
		a[i].x, a[i].y = a[i].x-x, a[i].y-y
	}
	ring := a.reach(0, 0)
	for range squeeze {
		ring *= tighter
		for range pushes {
			a.push(ring)
		}
		best = min(best, a.enclosing())
	}
	return best
}

// push moves every two discs that overlap apart by what they overlap, and
// those that stick out of a ring about the origin back into it.
func (a arrangement) push(ring float64) {
	for i := range a {
		p := &a[i]
		for j := range a[:i] {
			q := &a[j]
			dx, dy := p.x-q.x, p.y-q.y
			d := math.Hypot(dx, dy)
			if over := p.r + q.r - d; over > 0 && d > 0 {
				dx, dy = float64(dx/d*over)/2, float64(dy/d*over)/2
				p.x, p.y, q.x, q.y = p.x+dx, p.y+dy, q.x-dx, q.y-dy
			}
		}
		if out := math.Hypot(p.x, p.y); out+p.r > ring && out > 0 {
			back := max(0, ring-p.r) / out
			p.x, p.y = float64(p.x*back), float64(p.y*back)
		}
	}
}
