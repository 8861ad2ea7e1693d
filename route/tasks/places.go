package tasks

import (
	"topplate/plan"
)

// Keys of the places that every house has.
const (
	attic   = "attic"
	closet  = "closet"
	outside = "outside"
)

// openCloset is the task that opens the closet's wall or ceiling.
const openCloset = "open-closet"

// placeOf is the place where a drop is worked on from below.
func (s *site) placeOf(d *plan.Drop) string {
	room := s.roomOf(d)
	switch {
	case room < 0:
		return outside
	case room == s.job.Closet.Room:
		return closet
	}
	return "room " + s.job.House.Rooms[room].ID
}

// roomOf is the room of a drop, -1 outside.
func (s *site) roomOf(d *plan.Drop) int {
	if d.Kind == plan.SoffitSpot {
		return -1
	}
	return d.Room
}

// outdoors reports whether a way ends outside.
func (l *lot) outdoors(w *way) bool { return l.placeOf(w.drop) == outside }

// places lists all places of the job by key.
func (s *site) places() map[string]*Place {
	h := s.job.House
	out := map[string]*Place{
		attic:   {Key: attic, Title: "Attic", Kind: Attic, Room: -1},
		outside: {Key: outside, Title: "Outside", Kind: Outside, Room: -1},
	}
	for i := range h.Rooms {
		key := "room " + h.Rooms[i].ID
		out[key] = &Place{Key: key, Title: h.Rooms[i].Name, Kind: Room, Room: i}
	}
	c := &s.job.Closet
	title := c.Name
	if name := h.Rooms[c.Room].Name; name != title {
		title += " (" + name + ")"
	}
	out[closet] = &Place{Key: closet, Title: title, Kind: Closet, Room: c.Room}
	return out
}
