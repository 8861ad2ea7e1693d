package record

import (
	"slices"

	"topplate/plan/measure"
)

// An Earlier is the record of a job that was done before.
type Earlier struct {
	Name    string // short, put before the ids of its holes
	File    string // of the record, as messages call it
	Entries []Entry
}

// A Left is what earlier jobs left for the next one. Each thing has the file
// and the line of the entry that it is from.
type Left struct {
	Holes  []LeftHole  // in the order of the records
	Spools []LeftSpool // with something on them, in the order of their last entries
	Ports  []UsedPort
}

// An Origin is where a thing was recorded.
type Origin struct {
	File   string
	Line   int
	Number int // of the entry
}

// A LeftHole is a hole that is there, with the cables in it.
type LeftHole struct {
	Origin
	ID string // as first-H4
	Bore
	Cables int
}

// A LeftSpool is a spool with what is left on it.
type LeftSpool struct {
	Origin
	ID string
	Spool
}

// A UsedPort is a port at the panel that a cable has.
type UsedPort struct {
	Origin
	Cable string // as first-D1.2
	Port  int    // 0 if the record doesn't say which
}

// Existing works out what is there after jobs that were done one after the
// other. Of entries about one thing the last holds: of two holes in one place,
// and of two spools of one name. Cables that a later entry says are not run are
// not in their holes.
func Existing(jobs []Earlier) Left {
	var l Left
	for i := range jobs {
		now := Current(jobs[i].Entries)
		for k := range now {
			e := &now[k]
			from := Origin{jobs[i].File, e.Line, e.Number}
			switch e.Kind {
			case CableKind:
				if e.Cable.State == Run {
					l.Ports = append(l.Ports, UsedPort{from, jobs[i].Name + "-" + e.ID, e.Cable.Port})
				}
			case HoleKind:
				l.hole(LeftHole{from, jobs[i].Name + "-" + e.ID, e.Hole.Bore, inHole(now, &e.Hole)})
			case SpoolKind:
				l.Spools = slices.DeleteFunc(l.Spools, func(s LeftSpool) bool { return s.ID == e.ID })
				if e.Spool.Left > 0 {
					l.Spools = append(l.Spools, LeftSpool{from, e.ID, e.Spool})
				}
			}
		}
	}
	return l
}

// inHole counts the cables in a hole.
func inHole(now []Entry, h *Hole) int {
	n := h.There
	for _, id := range h.Cables {
		if !leftOut(now, id) {
			n++
		}
	}
	return n
}

// hole takes up a hole, in the place of those that it overlaps. One that was
// there keeps its name.
func (l *Left) hole(h LeftHole) {
	same := func(o LeftHole) bool { return o.overlaps(&h.Bore) }
	if i := slices.IndexFunc(l.Holes, same); i >= 0 {
		h.ID = l.Holes[i].ID
	}
	l.Holes = append(slices.DeleteFunc(l.Holes, same), h)
}

// overlaps reports whether two holes can't both be there: through the same, in one
// place of a wall or of the house. Of two heights that are not both known the
// places along the wall decide.
func (b *Bore) overlaps(o *Bore) bool {
	apart := func(x, y measure.Length) bool { return 2*max(x-y, y-x) >= b.Diameter+o.Diameter }
	both := b.Pointed && o.Pointed
	switch {
	case b.Through != o.Through || b.Wall != o.Wall:
		return false
	case both && apart(b.Point[2], o.Point[2]):
		return false
	case b.Wall != "":
		return !apart(b.At, o.At)
	}
	return both && !apart(b.Point[0], o.Point[0]) && !apart(b.Point[1], o.Point[1])
}
