package route

import (
	"cmp"
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A Hole is a place that is bored for the routes, with all that goes through
// it. Count is more than one where one hole would be too large: then so many
// are bored side by side, none larger than Bit.
type Hole struct {
	ID     string // H1, H2, … from north to south, then west to east
	Place  int    // index in Graph.Holes
	Drops  []int
	Cables int
	Bundle measure.Length // of the largest, its cables taken to be as thick as its thickest
	Bit    measure.Length // the largest; 0 if none of the job's bits will do
	Count  int
	Width  measure.Length // of all of them side by side
	// Bores are the holes one by one, with cables as thick as they are.
	Bores []Bore
	// Largest is the largest hole that the rules and the bits allow here.
	Largest measure.Length
	Shield  bool // a steel plate is wanted over it
}

// holesOf lists the holes that the routes use.
func holesOf(g *Graph, book rule.Book, routes []Route) []Hole {
	byPlace := map[int]*Hole{}
	for _, r := range routes {
		for _, a := range r.Arcs {
			place := g.Arcs[a].Hole
			if place < 0 {
				continue
			}
			h := byPlace[place]
			if h == nil {
				h = &Hole{Place: place}
				byPlace[place] = h
			}
			h.Drops = append(h.Drops, r.Drop)
			h.Cables += g.Job.Drops[r.Drop].Count
		}
	}
	out := make([]Hole, 0, len(byPlace))
	for _, h := range byPlace {
		g.sizeHole(book, h)
		out = append(out, *h)
	}
	slices.SortFunc(out, func(a, c Hole) int {
		p, q := g.Holes[a.Place].At, g.Holes[c.Place].At
		return cmp.Or(cmp.Compare(q.Y, p.Y), cmp.Compare(p.X, q.X), cmp.Compare(p.Z, q.Z), cmp.Compare(a.Place, c.Place))
	})
	for i := range out {
		out[i].ID = fmt.Sprintf("H%d", i+1)
	}
	return out
}

// InMasonry reports whether a hole wants a bit for masonry: through a wall of masonry,
// where nothing else is bored, or through a hard cladding as well.
func (p *HolePlace) InMasonry(h *plan.House) (wants, through bool) {
	if p.Kind != WallArc && p.Kind != GableArc && p.Kind != PassArc {
		return false, false
	}
	w := &h.Walls[p.Wall]
	return w.Masonry || p.Kind != PassArc && w.HardToBore(), w.Masonry
}

// UnderWall reports whether a hole between two spaces is in the edge of a closed floor,
// under the wall that stands on it.
func (p *HolePlace) UnderWall(h *plan.House) bool {
	return p.Kind == PassArc && h.Spaces[p.Beyond].Above == h.Walls[p.Wall].Level && p.At.Z < h.Levels[h.Walls[p.Wall].Level].Floor
}

// sizeHole finds the bit for a hole, or the two or more that are bored where
// one would be too large.
func (g *Graph) sizeHole(book rule.Book, h *Hole) {
	place := &g.Holes[h.Place]
	h.Largest = g.largestHole(book, place)
	cables := diameters(g.Job, h.Drops)
	bores, width, ok := Bores(g.Job.Tools.Bits, book, h.Largest, cables)
	h.Count, h.Width, h.Bores = len(bores), width, bores
	h.Bundle = newFitting(g.Job.Tools.Bits, book, h.Largest, cables).bundle
	for _, b := range bores {
		if ok {
			h.Bit = max(h.Bit, b.Bit)
		}
	}
	if place.Kind == PlateArc || place.Kind == SoleArc || place.Kind == BlockArc || place.Kind == StudArc {
		h.Shield = (place.MemberWidth-h.Bit)/2 < book.Length(rule.PlateShield)
	}
}

// largestHole is what the rules allow in the member of a hole place; in board
// it is the free room between the framing.
func (g *Graph) largestHole(book rule.Book, p *HolePlace) measure.Length {
	share, edge := rule.PlateBore, rule.PlateEdge
	switch {
	case p.MemberWidth == 0:
		return p.Free
	case p.Kind == JoistArc:
		return min(p.MemberWidth/measure.Length(book.Value(rule.JoistBore)), p.MemberWidth-2*book.Length(rule.JoistEdge))
	case p.Kind == StudArc && g.Job.House.Walls[p.Wall].Bearing:
		share, edge = rule.StudBoreBearing, rule.StudEdge
	case p.Kind == StudArc:
		share, edge = rule.StudBore, rule.StudEdge
	}
	return min(p.MemberWidth*measure.Length(book.Value(share))/100, p.MemberWidth-2*book.Length(edge))
}
