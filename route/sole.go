package route

import (
	"fmt"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// soleHoles finds where the bottom plate under a bay may be bored, down into
// the space below its floor. On a slab there are none, and nothing more to say;
// else stops says why there are none.
func (b *builder) soleHoles(key bayKey) (out []shaftHole, stops []Block) {
	bay := &b.bays[key.wall][key.bay]
	if b.underBay(key) == nil || bay.Bottom > PlateThickness || b.narrow(bay) {
		return nil, nil
	}
	_, clear, stop := b.stretches(key, true)
	for _, s := range clear {
		out = append(out, b.shaftHole(key, true, s, nil))
	}
	if len(out) == 0 {
		stops = append(stops, stop)
	}
	return out, stops
}

// soleStretches finds where the middle of a hole in the bottom plate under a bay
// may be: free of studs and of the joists below, and clear of power that comes up
// into the bay, too. There is a space under it.
func (b *builder) soleStretches(key bayKey) (free, clear spans, stop Block) {
	w, bay := &b.house.Walls[key.wall], &b.bays[key.wall][key.bay]
	c := b.underBay(key)
	p := w.PointAt(span{bay.Start, bay.End}.mid())
	stop = Block{Rule: rule.HoleToMemberRule, Pos: c.space.Pos, At: geom.Point3{X: p.X, Y: p.Y, Z: b.floorOf(key.wall)}}
	if b.narrow(bay) {
		stop.Pos, stop.Found = w.Pos, b.narrowText(w, bay)
		return nil, nil, stop
	}
	half := b.holeSize(w)/2 + b.book.Length(rule.HoleToMember)
	cuts, over := c.onPlate(w, span{bay.Start, bay.End}, half)
	if over {
		stop.Found = fmt.Sprintf("a joist lies along under the bottom plate of wall %s", w.ID)
		return nil, nil, stop
	}
	stop.Found = fmt.Sprintf("studs, joists and power leave no room for a hole in the bottom plate of wall %s under this bay", w.ID)
	free = spans{span{bay.Start, bay.End}.inset(half)}.nonEmpty().without(cuts...)
	return free, free.without(b.feeds(w, bay, true, b.holeSize(w)/2)...), stop
}

// lowerAt adds the arcs from the boxes down the bay and through the bottom
// plate at h.
func (b *builder) lowerAt(s *shaft, h *shaftHole) {
	w, bay := &b.house.Walls[s.key.wall], &b.bays[s.key.wall][s.key.bay]
	stops := append(slices.Clone(s.heights), bay.Bottom)
	for _, fb := range w.FireBlocks {
		if t := PlateThickness / 2; bay.Bottom < fb-t && fb+t < s.heights[len(s.heights)-1] {
			stops = append(stops, fb-t, fb+t)
		}
	}
	b.fish(s, h, stops)
	b.throughBottom(s, h)
	if c := h.cavity; c.zoneOf(h.at) > Arm {
		c.shoot(h.at, c.low(h.at), rodFrom{wall: s.key.wall, along: h.along, drops: s.drops})
	}
}

// throughBottom adds the arc through the bottom plate at h.
func (b *builder) throughBottom(s *shaft, h *shaftHole) {
	if h.there != nil {
		b.throughExisting(s, h)
	} else {
		b.throughSole(s, h)
	}
}

// throughFloor is how far it is through the bottom plate and the floor at h.
func (b *builder) throughFloor(s *shaft, h *shaftHole) measure.Length {
	return b.bays[s.key.wall][s.key.bay].Bottom + b.floorOf(s.key.wall) - h.cavity.base
}

// throughSole adds the arc through the bottom plate and the floor at h: bored
// from below where a hand gets there, from the box otherwise.
func (b *builder) throughSole(s *shaft, h *shaftHole) {
	w, bay, c := &b.house.Walls[s.key.wall], &b.bays[s.key.wall][s.key.bay], h.cavity
	floor, l := b.floorOf(s.key.wall), b.throughFloor(s, h)
	below := c.handy(h.at)
	need := s.lowest() + c.space.Subfloor
	a := Arc{
		Kind: SoleArc, From: b.inBay(s.key, h, bay.Bottom), To: c.low(h.at), Heading: up.Reverse(), Length: l, Charges: b.cable(l),
		Blocks: slices.Concat(h.blocks, h.beside),
	}
	a.Hole = c.hole(HolePlace{
		Kind: SoleArc, At: geom.Point3{X: h.at.X, Y: h.at.Y, Z: floor}, Wall: s.key.wall, Along: h.along, Room: -1,
		Free: h.free.width() + b.holeSize(w), MemberWidth: w.StudDepth, FromSpace: below, Reach: need,
	})
	if below {
		a.Charges = append(a.Charges, b.once(price.BoreSoleFromSpace, 1))
	} else {
		a.Charges = append(a.Charges, b.once(price.BoreSoleFromBox, 1))
		a.Blocks = append(a.Blocks, b.soleBitBlocks(need, s, h)...)
	}
	a.Capacity = b.capacity(w, h.free.width()+b.holeSize(w))
	c.add(a)
}

// soleBitBlocks forbids a hole down through the floor that no bit reaches.
func (b *builder) soleBitBlocks(need measure.Length, s *shaft, h *shaftHole) []Block {
	blocks := b.bitBlocks(need, s, h, "the floor under the bottom plate")
	for i := range blocks {
		blocks[i].At.Z = b.floorOf(s.key.wall)
	}
	return blocks
}
