package label

import (
	"cmp"
	"math"
	"slices"

	"topplate/render/sheet"
)

// A candidate is a place for a text that is free of obstacles. The lower its
// cost the better.
type candidate struct {
	box    sheet.Box
	turned bool
	cost   int
	way    *way // the leader; nil if the text stands beside its thing
}

// Costs of a candidate. Only their order matters; common practice, no source.
const (
	costRank    = 10  // each place better than this one
	costForeign = 45  // each foreign anchor close by
	costSoft    = 15  // each cell in which a soft line strikes the text
	costTurned  = 25  // reading upwards
	costMax     = 400 // of all together
)

// candidates returns the free places of r, the best first.
func (s *scene) candidates(r *Request) []candidate {
	if r.Width <= 0 || r.Height <= 0 {
		return nil
	}
	var all []candidate
	switch {
	case len(r.Along) >= 2:
		all = s.alongPolyline(r)
	case r.Within != (sheet.Box{}):
		all = s.withinArea(r)
	default:
		all = s.atPoint(r)
	}
	kept := all[:0]
	for _, c := range all {
		if s.free(r, c.box) {
			c.cost += costForeign*s.foreign(r, c.box) + costSoft*s.strikes(r, c.box, true)
			c.cost = min(c.cost, costMax)
			kept = append(kept, c)
		}
	}
	slices.SortStableFunc(kept, func(a, b candidate) int { return cmp.Compare(a.cost, b.cost) })
	return kept
}

// sizes lists the ways a text may stand.
func (r *Request) sizes() []candidate {
	upright := []candidate{{box: sheet.Bx(0, 0, r.Width, r.Height)}}
	if r.Turn {
		upright = append(upright, candidate{box: sheet.Bx(0, 0, r.Height, r.Width), turned: true, cost: costTurned})
	}
	return upright
}

// at returns c with its middle at p and more cost.
func (c candidate) at(p sheet.Point, cost int) candidate {
	c.box = sheet.BoxAround(p, c.box.Width(), c.box.Height())
	c.cost += cost
	return c
}

// ink is the symbol of r, or its anchor if there is none.
func (r *Request) ink() sheet.Box {
	if r.Symbol == (sheet.Box{}) {
		return sheet.Box{Min: r.Anchor, Max: r.Anchor}
	}
	return r.Symbol
}

// atPoint lists places around a point, clear of its symbol.
func (s *scene) atPoint(r *Request) []candidate {
	sides := r.Sides
	if len(sides) == 0 {
		sides = preferred
	}
	var all []candidate
	for _, size := range r.sizes() {
		for rank, side := range sides {
			all = append(all, size.at(s.beside(r, size.box, side, 0), rank*costRank))
		}
		if len(r.Sides) > 0 {
			continue
		}
		for i, shift := range []sheet.Paper{1, -1} {
			for rank, side := range []Side{Above, Below, Right, Left} {
				all = append(all, size.at(s.beside(r, size.box, side, shift), (len(sides)+i+rank)*costRank))
			}
		}
	}
	return all
}

// beside returns the middle of a box of the size of b on a side of the symbol
// of r. shift moves it a quarter of its size along that side.
func (s *scene) beside(r *Request, b sheet.Box, side Side, shift sheet.Paper) sheet.Point {
	w, h := b.Width(), b.Height()
	ink := r.ink()
	left, right := ink.Min.X-s.clear-(w+1)/2, ink.Max.X+s.clear+(w+1)/2
	above, below := ink.Min.Y-s.clear-(h+1)/2, ink.Max.Y+s.clear+(h+1)/2
	switch side {
	case Above:
		return sheet.Pt(r.Anchor.X+shift*w/4, above)
	case Below:
		return sheet.Pt(r.Anchor.X+shift*w/4, below)
	case Right:
		return sheet.Pt(right, r.Anchor.Y+shift*h/4)
	case Left:
		return sheet.Pt(left, r.Anchor.Y+shift*h/4)
	case AboveRight:
		return sheet.Pt(right, above)
	case AboveLeft:
		return sheet.Pt(left, above)
	case BelowRight:
		return sheet.Pt(right, below)
	}
	return sheet.Pt(left, below)
}

// areaSteps is how many places are tried in an area each way from the middle
// along each axis.
const areaSteps = 6

// withinArea lists places on a lattice over an area, the nearer to the anchor
// the better.
func (s *scene) withinArea(r *Request) []candidate {
	var all []candidate
	for _, size := range r.sizes() {
		w, h := size.box.Width(), size.box.Height()
		middles := r.Within
		middles.Min = middles.Min.Add(sheet.Pt((w+1)/2, (h+1)/2))
		middles.Max = middles.Max.Sub(sheet.Pt((w+1)/2, (h+1)/2))
		if middles.Width() < 0 || middles.Height() < 0 {
			continue
		}
		best := sheet.Pt(
			max(middles.Min.X, min(middles.Max.X, r.Anchor.X)),
			max(middles.Min.Y, min(middles.Max.Y, r.Anchor.Y)))
		for i := -areaSteps; i <= areaSteps; i++ {
			for j := -areaSteps; j <= areaSteps; j++ {
				p := sheet.Pt(between(middles.Min.X, best.X, middles.Max.X, i), between(middles.Min.Y, best.Y, middles.Max.Y, j))
				all = append(all, size.at(p, (max(i, -i)+max(j, -j))*costRank))
			}
		}
	}
	return all
}

// between is best for step 0, and goes to one of the ends in areaSteps.
func between(lo, best, hi sheet.Paper, step int) sheet.Paper {
	if step < 0 {
		return best + (best-lo)*sheet.Paper(step)/areaSteps
	}
	return best + (hi-best)*sheet.Paper(step)/areaSteps
}

// alongSides is how many sides of a polyline are tried, the longest first.
const alongSides = 8

// eighths are where along a side a text may stand, best first.
var eighths = []sheet.Paper{4, 3, 5, 2, 6, 1, 7}

// alongPolyline lists places beside the sides of a polyline.
func (s *scene) alongPolyline(r *Request) []candidate {
	sides := longest(r.Along)
	var all []candidate
	for _, size := range r.sizes() {
		for i, side := range sides {
			for j, n := range eighths {
				p := side.a.Add(sheet.Pt((side.b.X-side.a.X)*n/8, (side.b.Y-side.a.Y)*n/8))
				off := side.offset(size.box, s.clear)
				rank := i + j
				all = append(all, size.at(p.Sub(off), rank*costRank), size.at(p.Add(off), rank*costRank+costRank/2))
			}
		}
	}
	return all
}

// A side is one straight part of a polyline.
type side struct{ a, b sheet.Point }

// squared is the square of the length, exact for lengths on paper.
func (s side) squared() float64 {
	x, y := int64(s.b.X-s.a.X), int64(s.b.Y-s.a.Y)
	return float64(x*x + y*y)
}

// length is correctly rounded, and so the same on every machine, which
// math.Hypot does not promise.
func (s side) length() float64 { return math.Sqrt(s.squared()) }

func longest(line []sheet.Point) []side {
	var sides []side
	for i := 1; i < len(line); i++ {
		sides = append(sides, side{line[i-1], line[i]})
	}
	slices.SortStableFunc(sides, func(a, b side) int { return cmp.Compare(b.length(), a.length()) })
	return sides[:min(len(sides), alongSides)]
}

// offset is the way from a point of the side to the middle of a box that
// stands on its lower or right hand, clear of it. The distance across is the
// clear one and half of what the box measures that way.
func (s side) offset(b sheet.Box, clear sheet.Paper) sheet.Point {
	length := s.length()
	if length == 0 {
		return sheet.Pt(0, clear+(b.Height()+1)/2)
	}
	nx, ny := -float64(s.b.Y-s.a.Y)/length, float64(s.b.X-s.a.X)/length
	if ny < 0 || ny == 0 && nx < 0 {
		nx, ny = -nx, -ny
	}
	half := float64(math.Abs(nx)*float64(b.Width()+1)) + float64(math.Abs(ny)*float64(b.Height()+1))
	away := half/2 + float64(clear)
	return sheet.Pt(sheet.Paper(math.Ceil(nx*away)), sheet.Paper(math.Ceil(ny*away)))
}
