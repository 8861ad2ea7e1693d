package parts

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/bundle"
)

// kindOf is what a hole goes through.
func (l *lister) kindOf(h *route.Hole) route.ArcKind { return l.res.Graph.Holes[h.Place].Kind }

// holesOf counts the holes of some kinds, several side by side each.
func (l *lister) holesOf(s scope, kinds ...route.ArcKind) int64 {
	n := 0
	for _, h := range s.holes {
		if slices.Contains(kinds, l.kindOf(h)) {
			n += max(1, h.Count)
		}
	}
	return int64(n)
}

// sealing counts what closes holes and guards cables in them.
func (l *lister) sealing(w wants, s scope) {
	floors := l.holesOf(s, route.SoleArc, route.FloorArc)
	where := "in plates and blocks"
	if floors > 0 {
		where = "in plates, blocks and floors"
	}
	l.tubes(w, "fire-sealant", sealOfPlate, l.holesOf(s, route.PlateArc, route.BlockArc)+floors+s.reused+l.storeys(s), where)
	inside, where := l.throughInside(s), "in ceilings"
	if inside > 0 {
		where = "in ceilings and inner walls"
	}
	l.tubes(w, "air-sealant", sealOfCeiling, l.holesOf(s, route.CeilingArc)+s.inBoard+inside, where)
	shields, straps := notes{}, notes{}
	for _, h := range s.holes {
		if h.Shield && h.Bit > 0 {
			n := int64(h.Count) * shieldsToHole.Value
			shields.add(l.of("shield-plate"), n, fmt.Sprintf("%s: %s x %d faces", h.ID, counted(int64(h.Count), "hole"), shieldsToHole.Value))
		}
		if l.wantsStrap(h) {
			straps.add(l.of("plate-strap"), 1, fmt.Sprintf("%s: %s bored", h.ID, l.job.House.Units.Format(h.Bit)))
		}
	}
	shields.into(w)
	straps.into(w)
}

// storeys counts the floors that cables pass in chases, each of which is closed
// again.
func (l *lister) storeys(s scope) int64 {
	passed := map[[2]int]bool{}
	for _, r := range s.routes {
		for i, a := range r.Arcs {
			if l.res.Graph.Arcs[a].Chase != nil {
				passed[[2]int{min(r.Nodes[i], r.Nodes[i+1]), max(r.Nodes[i], r.Nodes[i+1])}] = true
			}
		}
	}
	return int64(len(passed))
}

// throughInside counts holes through inner walls from face to face, and between
// spaces that lie side by side.
func (l *lister) throughInside(s scope) int64 {
	return l.holesOf(s, route.WallArc, route.PassArc) - l.throughOuter(s)
}

// throughOuter counts those of them that go through outer walls.
func (l *lister) throughOuter(s scope) int64 {
	n := 0
	for _, h := range s.holes {
		if p := &l.res.Graph.Holes[h.Place]; p.Kind == route.WallArc && l.job.House.Walls[p.Wall].Exterior {
			n += max(1, h.Count)
		}
	}
	return int64(n)
}

// tubes counts tubes of sealant for holes.
func (l *lister) tubes(w wants, id string, each Habit, holes int64, where string) {
	ml := holes * each.Value
	w.add(l.of(id), up(ml, tube.Value), fmt.Sprintf("%s %s x %d ml = %d ml, %d ml to a tube", counted(holes, "hole"), where, each.Value, ml, tube.Value))
}

// wantsStrap reports whether a plate of an outer or bearing wall is bored by
// more than the published share of its width, which a job may allow.
func (l *lister) wantsStrap(h *route.Hole) bool {
	p := &l.res.Graph.Holes[h.Place]
	if p.Kind != route.PlateArc && p.Kind != route.SoleArc || p.Wall < 0 {
		return false
	}
	wall := &l.job.House.Walls[p.Wall]
	share, _ := rule.LookupLimit(rule.PlateBore)
	return (wall.Exterior || wall.Bearing) && 100*int64(h.Bit) > share.Value*int64(p.MemberWidth)
}

// bits counts the drill bits to buy: for holes that none of the job's makes.
func (l *lister) bits(w wants, s scope) {
	ns := map[string]*note{}
	for _, h := range s.holes {
		if h.Bit > 0 {
			continue
		}
		size, ok := l.tradeBit(h)
		if !ok {
			continue // the hole is too small for one cable: route reports it
		}
		p := bitPart(size, !l.res.Graph.Holes[h.Place].FromSpace)
		if ns[p.ID] == nil {
			ns[p.ID] = &note{part: p}
		}
		ns[p.ID].why = append(ns[p.ID].why, h.ID)
	}
	for _, n := range ns {
		w.add(n.part, 1, "no bit of the job fits "+strings.Join(n.why, ", "))
	}
}

// masonryBits counts the bits for masonry: one of each size that holes through it want.
func (l *lister) masonryBits(w wants, s scope) {
	ns := map[string]*note{}
	for _, h := range s.holes {
		hard, _ := l.res.Graph.Holes[h.Place].InMasonry(l.job.House)
		size, ok := l.sizeFor(h)
		if !hard || !ok {
			continue
		}
		part := masonryPart(size)
		if ns[part.ID] == nil {
			ns[part.ID] = &note{part: part}
		}
		ns[part.ID].why = append(ns[part.ID].why, h.ID)
	}
	for _, n := range ns {
		w.add(n.part, 1, "through masonry or a hard cladding at "+strings.Join(n.why, ", "))
	}
}

// sizeFor is the smallest size sold that is no smaller than the hole.
func (l *lister) sizeFor(h *route.Hole) (bitSize, bool) {
	if h.Bit == 0 {
		return l.tradeBit(h)
	}
	for _, b := range l.bitSizes() {
		if b.diameter >= h.Bit {
			return b, true
		}
	}
	return bitSize{}, false
}

func (l *lister) bitSizes() []bitSize {
	if l.job.House.Units == measure.Metric {
		return metricBits
	}
	return inchBits
}

// tradeBit is the smallest size sold that lets all cables of a hole through at
// once; if that would be too large for the wood, the largest that it allows, if
// that takes one cable.
func (l *lister) tradeBit(h *route.Hole) (bitSize, bool) {
	var thickest measure.Length
	for _, d := range h.Drops {
		thickest = max(thickest, l.job.Drops[d].Cable.Diameter)
	}
	over := l.book.Length(rule.HoleOverBundle)
	var best bitSize
	for _, b := range l.bitSizes() {
		if b.diameter > h.Largest {
			break
		}
		best = b
		if b.diameter >= bundle.Diameter(h.Cables, thickest)+over {
			break
		}
	}
	return best, best.diameter >= thickest+over
}
