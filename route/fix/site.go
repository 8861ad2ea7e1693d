package fix

import (
	"math"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// A site is a framing space as somebody who works in it knows it: what can be
// taped from, what is in a tape's way, and the ways from its hatches.
type site struct {
	*fixer
	space     *plan.Space
	index     int
	reach     *route.Reach
	obstacles []geom.Rect // of a tape
	marks     []sight
	ways      *ways
}

// site is that of a space, nil for none. It is made when it is first asked for.
func (f *fixer) site(space int) *site {
	if space < 0 || space >= len(f.house.Spaces) {
		return nil
	}
	if s := f.sites[space]; s != nil {
		return s
	}
	s := &site{fixer: f, space: f.house.Spaces[space], index: space, reach: f.res.Graph.Reaches[space]}
	f.sites[space] = s
	s.obstacles = s.inTheWay()
	s.marks = s.findMarks()
	s.ways = s.waysFromHatches()
	return s
}

// closed reports whether no hand gets in at p, since the space lies between a
// ceiling and a floor or a flat roof.
func (s *site) closed(p geom.Point) bool {
	return s.space.Kind == plan.FloorSpace && !s.house.OpenBelow(s.space, p)
}

// fromBelow reports whether one works under the joists, and not on them.
func (s *site) fromBelow() bool { return s.space.Kind != plan.AtticSpace }

// clear is the room for a body at p: over the joists in an attic, under them
// elsewhere, between them over the wall of a room whose ceiling is open, zero or
// more.
func (s *site) clear(p geom.Point) measure.Length {
	switch {
	case s.space.Kind == plan.CrawlSpace:
		return s.space.Clear
	case s.space.Kind == plan.AtticSpace:
		return max(0, s.house.UnderRafter(s.space, p)-s.space.Depth)
	case s.house.BesideOpen(s.space, p):
		return s.space.Depth
	case s.closed(p):
		return 0
	}
	return s.space.Base - s.house.Levels[s.space.Below].Floor
}

// under is the room over the top of the plates at p, not below zero: that for a
// bit and its drill.
func (s *site) under(p geom.Point) measure.Length {
	return max(0, s.house.UnderRafter(s.space, p))
}

// underRoof reports whether what is over the space is a roof.
func (s *site) underRoof() bool { return s.space.Kind != plan.CrawlSpace && s.space.Above < 0 }

// byHand is the way of a bit by hand from the space.
func (s *site) byHand() Way {
	return [...]Way{plan.AtticSpace: FromAttic, plan.FloorSpace: FromUnder, plan.CrawlSpace: FromCrawl}[s.space.Kind]
}

// room is the room under an open ceiling from which one gets to p, -1 if there
// is none: the one below it, or, over a wall, the nearest.
func (s *site) room(p geom.Point) int {
	best, least := -1, measure.Length(0)
	if s.space.Kind != plan.FloorSpace {
		return best
	}
	for i := range s.house.Rooms {
		r := &s.house.Rooms[i]
		if r.Level != s.space.Below || !r.Open {
			continue
		}
		if s.house.RoomOn(r.Level, p) == i {
			return i
		}
		if d := toOutline(r.Outline, p); best < 0 || d < least {
			best, least = i, d
		}
	}
	return best
}

// toOutline is how far p is from an outline along the axes.
func toOutline(outline geom.Polygon, p geom.Point) measure.Length {
	least := measure.Length(math.MaxInt64)
	for i, a := range outline {
		e := geom.Rect{Min: a, Max: outline[(i+1)%len(outline)]}.Canon()
		least = min(least, max(0, e.Min.X-p.X, p.X-e.Max.X)+max(0, e.Min.Y-p.Y, p.Y-e.Max.Y))
	}
	return least
}

// where says from where one works at p, "in the crawl space" or "in Cellar,
// under the open joists"; in the only attic of a house nothing.
func (s *site) where(p geom.Point) string {
	switch {
	case s.space.Kind == plan.CrawlSpace:
		return "in the " + s.spaceName()
	case s.space.Kind == plan.FloorSpace:
		if room := s.room(p); room >= 0 {
			under := ", under the open joists"
			if s.closed(p) {
				under = ", reaching in between the joists over its wall"
			}
			return "in " + s.house.Rooms[room].Name + under
		}
		return "under the open joists"
	case len(s.house.Spaces) > 1:
		return "in the " + s.spaceName()
	}
	return ""
}

// spaceName is how a text calls the space: "attic", or "crawl space crawl" if
// there is more than one of its kind.
func (s *site) spaceName() string {
	n := 0
	for _, other := range s.house.Spaces {
		if other.Kind == s.space.Kind {
			n++
		}
	}
	if n > 1 {
		return s.space.Kind.String() + " " + s.space.ID
	}
	return s.space.Kind.String()
}

// spaceOf is the space that a hole is looked for in, -1 if none is known: the
// one that it opens into, or, of a fire block or a stud, the one that its bay
// is opened to.
func (f *fixer) spaceOf(p *route.HolePlace) int {
	if p.Kind != route.BlockArc && p.Kind != route.StudArc {
		return p.Space
	}
	if p.Kind == route.BlockArc {
		if sole := f.boredAt(route.SoleArc, p); sole != nil && f.boredAt(route.PlateArc, p) == nil {
			return sole.Space
		}
	}
	return f.house.SpaceOver(f.house.Walls[p.Wall].Level, flat(p.At))
}

// boredAt is the place of another kind over or under p in its bay, if a hole is
// bored there, or nil.
func (f *fixer) boredAt(kind route.ArcKind, p *route.HolePlace) *route.HolePlace {
	for i := range f.res.Holes {
		q := &f.res.Graph.Holes[f.res.Holes[i].Place]
		if q.Kind == kind && q.Wall == p.Wall && f.bay(q) == f.bay(p) {
			return q
		}
	}
	return nil
}

// bay is the index of the bay of its wall that a place is in, -1 if none.
func (f *fixer) bay(p *route.HolePlace) int {
	return slices.IndexFunc(f.res.Graph.Bays[p.Wall], func(b route.Bay) bool { return b.Start <= p.Along && p.Along <= b.End })
}

// levelOf is the level from whose rooms a hole is bored.
func (f *fixer) levelOf(p *route.HolePlace) int {
	switch {
	case p.Wall >= 0:
		return f.house.Walls[p.Wall].Level
	case p.Room >= 0:
		return f.house.Rooms[p.Room].Level
	}
	return max(0, f.house.Spaces[p.Space].Below)
}

// floor is the height of the finished floor of a level.
func (f *fixer) floor(level int) measure.Length { return f.house.Levels[level].Floor }

// plateTop is the height of the top of a wall's plates.
func (f *fixer) plateTop(wall int) measure.Length {
	v := &f.house.Levels[f.house.Walls[wall].Level]
	return v.Floor + v.PlateTop
}
