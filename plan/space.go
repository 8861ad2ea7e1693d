package plan

import (
	"slices"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A SpaceKind says which hollow between joists a space is.
type SpaceKind uint8

// Kinds of framing space.
const (
	// AtticSpace is over the ceiling of a level, under a roof.
	AtticSpace SpaceKind = iota
	// FloorSpace is between a ceiling and the floor over it, or the deck of a
	// flat roof: no hand gets in but where a room below has an open ceiling.
	FloorSpace
	// CrawlSpace is under the joists of the lowest floor, over the ground.
	CrawlSpace
)

var spaceKindNames = [...]string{"attic", "floor", "crawl space"}

func (k SpaceKind) String() string { return spaceKindNames[k] }

// A Space is a framing space: joists side by side, all in one direction, and
// the room over or under them in which cable is laid. An attic and a floor are
// worked on from over their ceiling or from the rooms below it; cable lies on
// the ceiling, or on what the joists' undersides are fastened to. Heights that
// have no other name are over the house's zero.
type Space struct {
	ID   string
	Pos  diag.Pos
	Kind SpaceKind
	// Below is the level whose ceiling the space lies on, -1 for a crawl space.
	// Above is the level whose floor it carries, -1 under a roof.
	Below, Above int
	// Outlines run along the outer faces of the wall plates around the space,
	// counter-clockwise; Holes are what is cut out of it by a storey that stands
	// in it, clockwise or not.
	Outlines, Holes []geom.Polygon
	// Base is the height of the joists' undersides, which is that of the top of
	// the plates below.
	Base measure.Length

	// AlongY is true if the joists run along Y (house north and south).
	AlongY  bool
	Joist   JoistKind
	Spacing measure.Length // on centre
	First   measure.Length // centre of one joist, on the axis across the joists
	Width   measure.Length // thickness of a joist
	Depth   measure.Length
	// Insulation is its depth above the ceiling board.
	Insulation measure.Length
	Decking    []geom.Rect
	// Subfloor is the thickness of the boards over the joists, of a floor.
	Subfloor measure.Length
	// Clear is the height between the ground and the joists, of a crawl space.
	Clear measure.Length

	// Roof is the index of the roof over an attic, -1 if none; Lift is how far
	// the space's Base is over the plates that the roof stands on.
	Roof int
	Lift measure.Length
}

// Contains reports whether p lies in the space, its edges included.
func (s *Space) Contains(p geom.Point) bool {
	in := func(o geom.Polygon) bool { return o.Contains(p) }
	if !slices.ContainsFunc(s.Outlines, in) {
		return false
	}
	return !slices.ContainsFunc(s.Holes, func(o geom.Polygon) bool {
		depth, ok := o.Depth(p)
		return ok && depth > 0
	})
}

// Bounds is the smallest rectangle around the space.
func (s *Space) Bounds() geom.Rect {
	out := s.Outlines[0].Bounds()
	for _, o := range s.Outlines[1:] {
		b := o.Bounds()
		out.Min = geom.Point{X: min(out.Min.X, b.Min.X), Y: min(out.Min.Y, b.Min.Y)}
		out.Max = geom.Point{X: max(out.Max.X, b.Max.X), Y: max(out.Max.Y, b.Max.Y)}
	}
	return out
}

// Edges are all outlines and holes.
func (s *Space) Edges() []geom.Polygon { return slices.Concat(s.Outlines, s.Holes) }

// Top is the height of the upper side of a floor or a crawl space: the finished
// floor over it.
func (s *Space) Top() measure.Length { return s.Base + s.Depth + s.Subfloor }

// UnderRafter is the height over s.Base of what bounds the space from above at
// p: the underside of rafters or top chords, or of the subfloor.
func (h *House) UnderRafter(s *Space, p geom.Point) measure.Length {
	if s.Roof < 0 {
		return s.Depth
	}
	return h.Roofs[s.Roof].Surface.UnderRafter(p) - s.Lift
}

// UnderSheathing is as UnderRafter, between the rafters.
func (h *House) UnderSheathing(s *Space, p geom.Point) measure.Length {
	if s.Roof < 0 {
		return s.Depth
	}
	return h.Roofs[s.Roof].Surface.UnderSheathing(p) - s.Lift
}

// SpaceOver is the space on the ceiling of a level over p, -1 if there is none.
func (h *House) SpaceOver(level int, p geom.Point) int {
	return slices.IndexFunc(h.Spaces, func(s *Space) bool { return s.Below == level && s.Contains(p) })
}

// SpaceUnder is the space under the floor of a level below p, -1 if there is
// none: the floor lies on the ground there.
func (h *House) SpaceUnder(level int, p geom.Point) int {
	return slices.IndexFunc(h.Spaces, func(s *Space) bool { return s.Above == level && s.Contains(p) })
}

// OpenBelow reports whether the joists of a space can be got at from below at
// p: in a crawl space, and where the room there has no ceiling board.
func (h *House) OpenBelow(s *Space, p geom.Point) bool {
	if s.Kind == CrawlSpace {
		return true
	}
	if s.Kind == AtticSpace {
		return false
	}
	r := h.RoomOn(s.Below, p)
	return r >= 0 && h.Rooms[r].Open
}

// BesideOpen reports whether p is over a wall of a floor's lower level that has a
// room with an open ceiling on one side: a hand reaches over its plate.
func (h *House) BesideOpen(s *Space, p geom.Point) bool {
	if s.Kind != FloorSpace || s.Below < 0 {
		return false
	}
	for i := range h.Walls {
		w := &h.Walls[i]
		if w.Level != s.Below || !w.Body.Contains(p) {
			continue
		}
		for _, side := range [2]Side{Left, Right} {
			if r := h.RoomBeside(w, w.Along(p), side); r >= 0 && h.Rooms[r].Open {
				return true
			}
		}
	}
	return false
}

// A Chase is a hollow that goes straight up through one or more floors, such as
// one beside a chimney or over stacked closets.
type Chase struct {
	ID   string
	Pos  diag.Pos
	Area geom.Rect // inside
	// From and To are its lowest and its highest level; at the top it opens into
	// the space over To, at the bottom into the space under From if Down.
	From, To int
	Down     bool
	// Rooms are those from which a hand gets into it, by index.
	Rooms []int
	// Holds are the diameters of the cables that are in it already.
	Holds []measure.Length
	Hot   bool // a flue is in it
}
