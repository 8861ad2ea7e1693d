package tasks

import (
	"cmp"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// Keys of the places that every house has.
const (
	closet  = "closet"
	outside = "outside"
)

// openCloset is the task that opens the closet's wall or ceiling.
const openCloset = "open-closet"

// placeOf is the place where a drop is worked on.
func (s *site) placeOf(d *plan.Drop) string {
	if d.Kind == plan.SoffitSpot {
		return outside
	}
	return s.roomKey(d.Room)
}

// roomKey is the place of a room.
func (s *site) roomKey(room int) string {
	switch {
	case room < 0:
		return outside
	case room == s.job.Closet.Room:
		return closet
	}
	return "room " + s.job.House.Rooms[room].ID
}

// outdoors reports whether a way ends outside.
func (s *site) outdoors(w *way) bool { return s.placeOf(w.drop) == outside }

// placeAt is where one works at a node where a hand gets at the cable: where it
// is laid along an arc, or else in the framing space of the node.
func (s *site) placeAt(node, arc int) string {
	if laidByHand(s.graph.Arcs[arc].Kind) {
		return s.placeOfArc(arc)
	}
	n := &s.graph.Nodes[node]
	return s.handPlace(n.Space, flat(n.At))
}

// roomAt is the room that a point is in or on the face of, outside if it is in
// none.
func (s *site) roomAt(p geom.Point3) string {
	h := s.job.House
	for i := range h.Levels {
		if l := &h.Levels[i]; l.Floor <= p.Z && p.Z <= l.Floor+l.PlateTop {
			if r := h.RoomOn(i, flat(p)); r >= 0 {
				return s.roomKey(r)
			}
		}
	}
	return outside
}

// handPlace is where one works on a framing space at p: in an attic or a crawl
// space itself, and in the room below a floor whose joists are open, or in the
// nearest such room.
func (s *site) handPlace(space int, p geom.Point) string {
	h := s.job.House
	sp := h.Spaces[space]
	if sp.Kind != plan.FloorSpace {
		return spaceKey(h, space)
	}
	best := -1
	for i := range h.Rooms {
		if r := &h.Rooms[i]; r.Level == sp.Below && r.Open && (best < 0 || nearer(p, r, &h.Rooms[best])) {
			best = i
		}
	}
	return s.roomKey(best)
}

// nearer reports whether p is nearer to room a than to room b.
func nearer(p geom.Point, a, b *plan.Room) bool {
	return cmp.Or(cmp.Compare(off(p, a.Bounds), off(p, b.Bounds)), strings.Compare(a.ID, b.ID)) < 0
}

// off is how far p is from a rectangle, square.
func off(p geom.Point, r geom.Rect) measure.Length {
	return max(0, r.Min.X-p.X, p.X-r.Max.X) + max(0, r.Min.Y-p.Y, p.Y-r.Max.Y)
}

func flat(p geom.Point3) geom.Point { return geom.Point{X: p.X, Y: p.Y} }

// spaceKey is the key of an attic or a crawl space: what it is, and its id
// where the house has several of the kind.
func spaceKey(h *plan.House, space int) string {
	sp := h.Spaces[space]
	n := 0
	for _, o := range h.Spaces {
		if o.Kind == sp.Kind {
			n++
		}
	}
	if n == 1 || sp.ID == sp.Kind.String() {
		return sp.Kind.String()
	}
	return sp.Kind.String() + " " + sp.ID
}

// places lists all places of the job by key.
func (s *site) places() map[string]*Place {
	h := s.job.House
	out := map[string]*Place{
		outside: {Key: outside, Title: "Outside", Kind: Outside, Room: -1, Level: s.street()},
	}
	for i, sp := range h.Spaces {
		if sp.Kind == plan.FloorSpace {
			continue
		}
		key, kind := spaceKey(h, i), Attic
		if sp.Kind == plan.CrawlSpace {
			kind = Crawl
		}
		out[key] = &Place{Key: key, Title: strings.ToUpper(key[:1]) + key[1:], Kind: kind, Room: -1, Level: s.wayInto(i)}
	}
	for i := range h.Rooms {
		key := "room " + h.Rooms[i].ID
		out[key] = &Place{Key: key, Title: h.Rooms[i].Name, Kind: Room, Room: i, Level: h.Rooms[i].Level}
	}
	c := &s.job.Closet
	title := c.Name
	if name := h.Rooms[c.Room].Name; name != title {
		title += " (" + name + ")"
	}
	out[closet] = &Place{Key: closet, Title: title, Kind: Closet, Room: c.Room, Level: h.Rooms[c.Room].Level}
	return out
}

// overhead reports whether a place is a room from which work is done on open
// joists.
func (s *site) overhead(place string) bool {
	for i := range s.job.House.Rooms {
		if s.job.House.Rooms[i].Open && s.roomKey(i) == place {
			return true
		}
	}
	return false
}

// withLadder adds a step ladder to what is carried to a place for work on open
// joists.
func (s *site) withLadder(place string, carry []Item) []Item {
	if !s.overhead(place) {
		return carry
	}
	return append(slices.Clip(carry), tools("step ladder")...)
}

// wallOf is the wall that a way's box is in, -1 if it is in none.
func wallOf(w *way) int {
	if w.drop.Kind == plan.WallPlate {
		return w.drop.Spot.Wall
	}
	return -1
}

// inWall reports whether a kind of hole is in the framing of a wall, where it is
// bored through an opening in that wall or from a framing space.
func inWall(k route.ArcKind) bool {
	switch k {
	case route.PlateArc, route.SoleArc, route.BlockArc, route.StudArc, route.WallArc:
		return true
	default:
		return false
	}
}
