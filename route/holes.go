package route

import (
	"cmp"
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route/bundle"
)

// A Hole is a place that is bored for the routes, with all that goes through
// it. Count is more than one where one hole would be too large: then so many
// are bored side by side, each of Bit.
type Hole struct {
	ID     string // H1, H2, … from north to south, then west to east
	Place  int    // index in Graph.Holes
	Drops  []int
	Cables int
	Bundle measure.Length // diameter of what goes through one of the holes
	Bit    measure.Length
	Count  int
	// Largest is the largest hole that the rules and the bits allow here.
	Largest measure.Length
	Shield  bool // a steel plate is wanted over it
}

// A fit is how a number of cables goes through a member.
type fit struct {
	count  int
	bundle measure.Length
	bit    measure.Length
}

// fitThrough finds the fewest equal holes, each no larger than largest, that
// take n cables of diameter d, and the smallest bit for them. ok is false if
// even single cables do not fit or the holes do not go side by side in free.
func fitThrough(bits []plan.Bit, n int, d, over, largest, free, gap measure.Length) (f fit, ok bool) {
	for count := 1; count <= n; count++ {
		f = fit{count: count, bundle: bundle.Diameter((n+count-1)/count, d)}
		f.bit, ok = smallestBit(bits, f.bundle+over, largest)
		if ok {
			width := measure.Length(count)*f.bit + measure.Length(count-1)*gap
			return f, width <= free
		}
	}
	return f, false
}

// smallestBit is the smallest bit between need and most.
func smallestBit(bits []plan.Bit, need, most measure.Length) (best measure.Length, ok bool) {
	for _, b := range bits {
		if need <= b.Diameter && b.Diameter <= most && (!ok || b.Diameter < best) {
			best, ok = b.Diameter, true
		}
	}
	return best, ok
}

// capacity is the largest number of the job's cables that go through the
// plate of w in the free stretch.
func (b *builder) capacity(w *plan.Wall, free measure.Length) int {
	d, gap := thickest(b.job), b.book.Length(rule.HoleToMember)
	n := 0
	for n < 500 {
		if _, ok := fitThrough(b.job.Tools.Bits, n+1, d, b.book.Length(rule.HoleOverBundle), b.holeSize(w), free, gap); !ok {
			return n
		}
		n++
	}
	return n
}

func thickest(job *plan.Job) measure.Length {
	var d measure.Length
	for i := range job.Drops {
		d = max(d, job.Drops[i].Cable.Diameter)
	}
	return d
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

// sizeHole finds the bit for a hole, or the two or more that are bored where
// one would be too large.
func (g *Graph) sizeHole(book rule.Book, h *Hole) {
	var d measure.Length
	for _, i := range h.Drops {
		d = max(d, g.Job.Drops[i].Cable.Diameter)
	}
	place := &g.Holes[h.Place]
	h.Largest = g.largestHole(book, place)
	f, _ := fitThrough(g.Job.Tools.Bits, h.Cables, d, book.Length(rule.HoleOverBundle), h.Largest, place.Free, book.Length(rule.HoleToMember))
	h.Count, h.Bundle, h.Bit = f.count, f.bundle, f.bit
	if place.Kind == PlateArc || place.Kind == BlockArc || place.Kind == StudArc {
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
	case p.Kind == StudArc && g.Job.House.Walls[p.Wall].Bearing:
		share, edge = rule.StudBoreBearing, rule.StudEdge
	case p.Kind == StudArc:
		share, edge = rule.StudBore, rule.StudEdge
	}
	return min(p.MemberWidth*measure.Length(book.Value(share))/100, p.MemberWidth-2*book.Length(edge))
}
