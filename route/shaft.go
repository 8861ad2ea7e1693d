package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

const up = network.Up

type bayKey struct{ wall, bay int }

// A shaft is a stud bay that some box opens into, with the places where its
// top and bottom plates may be bored.
type shaft struct {
	key     bayKey
	heights []measure.Length // of boxes, above the floor
	holes   []shaftHole
	drops   []int           // whose boxes open into it
	stops   []Block         // why there are no holes, if there are none
	laid    map[[2]int]bool // of the ways up and down
	// through says that no box opens into it: both ends are bored from their
	// spaces, or there; offLines that it is one for a hole that is there alone.
	through, offLines bool
}

// A shaftHole is one stretch of plate that may be bored, with its middle.
type shaftHole struct {
	cavity *cavity // that it opens into
	sole   bool    // it is in the bottom plate
	free   span
	along  measure.Length
	at     geom.Point
	blocks []Block
	// there is the hole that exists at this place, nil if it is to be bored;
	// beside says why not, if a fixed part forbids it.
	there  *plan.Fixed
	beside []Block
}

// shaftOf returns the shaft of a bay after noting that a box opens into it at
// height h.
func (b *builder) shaftOf(key bayKey, h measure.Length) *shaft {
	s := b.shafts[key]
	if s == nil {
		s = &shaft{key: key, laid: map[[2]int]bool{}}
		holes, stop := b.plateHoles(key)
		soles, below := b.soleHoles(key)
		s.holes = append(b.fixHoles(key, false, holes), b.fixHoles(key, true, soles)...)
		s.stops = append([]Block{stop}, below...)
		b.shafts[key] = s
		for i := range s.holes {
			h := &s.holes[i]
			h.cavity.ports = append(h.cavity.ports, port{at: h.at})
		}
	}
	if !slices.Contains(s.heights, h) {
		s.heights = append(s.heights, h)
		slices.Sort(s.heights)
	}
	return s
}

// raise adds the arcs of every shaft: up the bay from the lowest box, through
// fire blocks, and through the plate into the attic.
func (b *builder) raise() {
	for _, key := range b.sortedShafts() {
		s := b.shafts[key]
		if s.through {
			b.raiseThrough(s)
			continue
		}
		for i := range s.holes {
			if h := &s.holes[i]; h.sole {
				b.lowerAt(s, h)
			} else {
				b.raiseAt(s, h)
			}
		}
	}
}

func (b *builder) sortedShafts() []bayKey {
	keys := make([]bayKey, 0, len(b.shafts))
	for k := range b.shafts {
		keys = append(keys, k)
	}
	slices.SortFunc(keys, func(a, c bayKey) int {
		if a.wall != c.wall {
			return a.wall - c.wall
		}
		return a.bay - c.bay
	})
	return keys
}

// inBay is the node inside the bay under hole h at a height above the floor.
func (b *builder) inBay(key bayKey, h *shaftHole, height measure.Length) int {
	kind := BayNode
	if bay := &b.bays[key.wall][key.bay]; height == bay.Top || height == bay.Bottom {
		kind = PlateNode
	}
	z := b.floorOf(key.wall) + height
	return b.node(kind, geom.Point3{X: h.at.X, Y: h.at.Y, Z: z}, key.wall, noOwner)
}

func (b *builder) raiseAt(s *shaft, h *shaftHole) {
	w, bay := &b.house.Walls[s.key.wall], &b.bays[s.key.wall][s.key.bay]
	stops := append(slices.Clone(s.heights), bay.Top)
	for _, fb := range w.FireBlocks {
		if t := PlateThickness / 2; s.heights[0] < fb-t && fb+t < bay.Top {
			stops = append(stops, fb-t, fb+t)
		}
	}
	b.fish(s, h, stops)
	b.throughPlate(s, h)
}

// fish adds the arcs up and down a bay between heights.
func (b *builder) fish(s *shaft, h *shaftHole, stops []measure.Length) {
	w := &b.house.Walls[s.key.wall]
	slices.Sort(stops)
	stops = slices.Compact(stops)
	for i := 1; i < len(stops); i++ {
		lo, hi := stops[i-1], stops[i]
		a := Arc{
			Kind: FishArc, From: b.inBay(s.key, h, lo), To: b.inBay(s.key, h, hi), Heading: up,
			Length: hi - lo, Hole: -1, Charges: b.cable(hi - lo),
		}
		if s.laid[[2]int{a.From, a.To}] {
			continue
		}
		s.laid[[2]int{a.From, a.To}] = true
		for _, fb := range w.FireBlocks {
			if lo <= fb && fb <= hi {
				b.throughFireBlock(&a, s, h, fb)
			}
		}
		b.add(a)
	}
}

// throughFireBlock makes arc a one that is bored through the block at height
// fb, with a long bit from the plate above or from a box below.
func (b *builder) throughFireBlock(a *Arc, s *shaft, h *shaftHole, fb measure.Length) {
	bay := &b.bays[s.key.wall][s.key.bay]
	above := bay.Top + b.plates(s) - fb + PlateThickness/2
	below := fb + PlateThickness/2 - s.heights[0]
	a.Kind = BlockArc
	a.Charges = append(a.Charges, b.once(price.BoreBlock, 1))
	a.Hole = h.cavity.hole(HolePlace{
		Kind: BlockArc, At: geom.Point3{X: h.at.X, Y: h.at.Y, Z: b.floorOf(s.key.wall) + fb}, Wall: s.key.wall,
		Along: h.along, Room: -1, Free: h.free.width(), MemberWidth: b.house.Walls[s.key.wall].StudDepth, Reach: min(above, below),
	})
	a.Blocks = append(a.Blocks, b.bitBlocks(min(above, below), s, h, "the fire block")...)
}

func (b *builder) plates(s *shaft) measure.Length {
	return measure.Length(b.house.Walls[s.key.wall].TopPlates) * PlateThickness
}

// bitReach is how deep the longest flexible bit goes with its extension.
func (b *builder) bitReach() measure.Length {
	var best measure.Length
	for _, bit := range b.job.Tools.Bits {
		if bit.Flexible {
			best = max(best, bit.Reach)
		}
	}
	return best + b.job.Tools.Extension
}

// bitBlocks forbids a hole that no bit reaches.
func (b *builder) bitBlocks(need measure.Length, s *shaft, h *shaftHole, what string) []Block {
	if need <= b.bitReach() {
		return nil
	}
	return []Block{{
		Rule: rule.BitReach, Pos: b.house.Walls[s.key.wall].Pos,
		At:     geom.Point3{X: h.at.X, Y: h.at.Y, Z: b.plateTop(s.key.wall)},
		Found:  fmt.Sprintf("%s is %s away from where a bit goes in; the longest bit reaches %s", what, b.text(need), b.text(b.bitReach())),
		Change: fmt.Sprintf("bring a flexible bit or extension that reaches %s", b.text(need)),
		Price:  b.prices.Each(price.ChangeLongerBit),
	}}
}

// highest and lowest are the heights of the boxes nearest to the plates.
func (s *shaft) highest() measure.Length {
	if len(s.heights) == 0 {
		return 0
	}
	return s.heights[len(s.heights)-1]
}

func (s *shaft) lowest() measure.Length {
	if len(s.heights) == 0 {
		return 0
	}
	return s.heights[0]
}

// throughPlate adds the arc through the top plate at h.
func (b *builder) throughPlate(s *shaft, h *shaftHole) {
	if h.there != nil {
		b.throughExisting(s, h)
	} else {
		b.throughBored(s, h)
	}
	if c := h.cavity; c.zoneOf(h.at) > Arm {
		c.shoot(h.at, c.low(h.at), rodFrom{wall: s.key.wall, along: h.along, drops: s.drops})
	}
}

// throughBored adds the arc through a hole that is bored at h.
func (b *builder) throughBored(s *shaft, h *shaftHole) {
	w, bay, c := &b.house.Walls[s.key.wall], &b.bays[s.key.wall][s.key.bay], h.cavity
	thick := b.plates(s)
	above := c.handy(h.at)
	need := bay.Top + thick - s.highest()
	a := Arc{
		Kind: PlateArc, From: b.inBay(s.key, h, bay.Top), To: c.low(h.at), Heading: up, Length: thick,
		Charges: b.cable(thick), Blocks: slices.Concat(h.blocks, h.beside),
	}
	a.Hole = c.hole(HolePlace{
		Kind: PlateArc, At: geom.Point3{X: h.at.X, Y: h.at.Y, Z: b.plateTop(s.key.wall)}, Wall: s.key.wall, Along: h.along, Room: -1,
		Free: h.free.width() + b.holeSize(w), MemberWidth: w.StudDepth, FromSpace: above, Reach: need,
	})
	switch {
	case above:
		a.Charges = append(a.Charges, b.once(price.BoreFromAbove, 1))
		if c.decked(h.at) {
			a.Charges = append(a.Charges, b.once(price.LiftBoard, 1))
		}
	default:
		a.Charges = append(a.Charges, b.once(price.BoreFromBelow, 1))
		a.Blocks = append(a.Blocks, b.bitBlocks(need, s, h, "the top of the plate")...)
	}
	a.Capacity = b.capacity(w, h.free.width()+b.holeSize(w))
	c.add(a)
}
