package route

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A cavity is a framing space while its part of the graph is built: an attic, a
// floor or a crawl space, with the lattice that cable is laid on in it.
type cavity struct {
	*builder
	space *plan.Space
	index int
	ax    axes
	js    joists
	base  measure.Length // height of its floor: the top of the plates below

	keepOuts []keepOut
	ports    []port
	trunks   int // ports of the closet, which come first
	lat      *lattice
	reach    *Reach
}

func newCavity(b *builder, index int) *cavity {
	s := b.house.Spaces[index]
	ax := axes{s.AlongY}
	return &cavity{
		builder: b, space: s, index: index, ax: ax, js: joistsOf(b.house, s), base: s.Base,
		keepOuts: keepOutsOf(b.house, index),
	}
}

// over is the cavity over the ceiling of a level at p, nil if there is none;
// under is the one below its floor.
func (b *builder) over(level int, p geom.Point) *cavity {
	return b.cavityAt(b.house.SpaceOver(level, p))
}

func (b *builder) under(level int, p geom.Point) *cavity {
	return b.cavityAt(b.house.SpaceUnder(level, p))
}

func (b *builder) cavityAt(space int) *cavity {
	if space < 0 {
		return nil
	}
	return b.cavities[space]
}

// floorOf is the height of the finished floor that a wall stands on.
func (b *builder) floorOf(wall int) measure.Length {
	return b.house.Levels[b.house.Walls[wall].Level].Floor
}

// add takes an arc of the cavity into the graph.
func (b *cavity) add(a Arc) {
	a.Space = b.index
	b.fixTrunks(&a)
	b.take(a)
}

// hole adds a hole place that opens into the cavity.
func (b *cavity) hole(h HolePlace) int {
	h.Space = b.index
	return b.builder.hole(h)
}

// clearance is how much room there is for a body at p: over the joists in an
// attic, under them in a crawl space and in a room whose ceiling is open, none
// in a floor that is closed.
func (b *cavity) clearance(p geom.Point) measure.Length { return clearance(b.house, b.space, p) }

// clearance is the room for a body in a space at p; it may be negative where
// a roof comes down on the joists.
func clearance(h *plan.House, s *plan.Space, p geom.Point) measure.Length {
	switch {
	case s.Kind == plan.CrawlSpace:
		return s.Clear
	case s.Kind == plan.AtticSpace:
		return h.UnderRafter(s, p) - s.Depth
	case h.OpenBelow(s, p):
		return s.Base - h.Levels[s.Below].Floor
	case h.BesideOpen(s, p):
		return s.Depth
	}
	return 0
}

// lifted is how far cable that crosses joists lies over the cavity's floor: on
// the joists in an attic, below them elsewhere, where the floor is their
// undersides.
func (b *cavity) lifted() measure.Length {
	if b.space.Kind == plan.AtticSpace {
		return b.js.depth
	}
	return 0
}

// handy reports whether a plate at p is bored from the cavity: a hand gets there,
// and a drill has room.
func (b *cavity) handy(p geom.Point) bool {
	room := b.clearance(p)
	if b.space.Kind == plan.AtticSpace {
		room += b.js.depth
	}
	return b.zoneOf(p) <= Arm && room >= b.book.Length(rule.DrillRoom)
}

// acrossAt is the height over the cavity's floor at which cable crosses the
// joists, for what is in its way: just below their undersides where they are open
// from below.
func (b *cavity) acrossAt() measure.Length {
	if b.space.Kind == plan.AtticSpace {
		return b.js.depth
	}
	return -1
}

// layLattice lays the lattice of the cavity and finds where a hand reaches.
func (b *cavity) layLattice() {
	l := b.lines()
	b.reach = b.reachOf(l.us, l.vs)
	if l.pastRods(b.reach) {
		b.reach = b.reachOf(l.us, l.vs)
	}
	b.lay(b.reach)
}

// joinPorts adds what joins the ports to the lattice.
func (b *cavity) joinPorts() {
	for i := range b.ports {
		if b.ports[i].join != nil {
			b.ports[i].join()
		}
	}
	b.shootInFloor()
}
