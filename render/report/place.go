package report

import (
	"topplate/plan"
	"topplate/route"
	"topplate/route/tasks"
)

// several reports whether a house has more than one level or framing space, so
// that what lies in them is told with their names.
func several(h *plan.House) bool { return len(h.Levels) > 1 || len(h.Spaces) > 1 }

// InSpace says in words where something in a framing space is: "in the attic",
// "in the floor over ground", "in crawl space west". An attic or a crawl space is
// named if the house has several. It is empty for -1.
func InSpace(h *plan.House, space int) string {
	if space < 0 {
		return ""
	}
	s := h.Spaces[space]
	if s.Kind == plan.FloorSpace {
		return "in the floor over " + h.Levels[s.Below].ID
	}
	same := 0
	for _, o := range h.Spaces {
		if o.Kind == s.Kind {
			same++
		}
	}
	name := s.Kind.String()
	if same == 1 || s.ID == name {
		return "in the " + name
	}
	return "in " + name + " " + s.ID
}

// holeLevel is the level of the wall or the room that a hole is in, -1 if it is
// in neither.
func holeLevel(res *route.Result, p *route.HolePlace) int {
	h := res.Job.House
	switch {
	case p.Wall >= 0:
		return h.Walls[p.Wall].Level
	case p.Room >= 0:
		return h.Rooms[p.Room].Level
	default:
		return -1
	}
}

// levelID is the id of a level, empty for -1.
func levelID(h *plan.House, level int) string {
	if level < 0 {
		return ""
	}
	return h.Levels[level].ID
}

// placeLevel is the level of a room that is worked in, empty in a house of one
// level.
func placeLevel(h *plan.House, p *tasks.Place) string {
	if !several(h) || p.Room < 0 {
		return ""
	}
	return levelID(h, p.Level)
}

// withColumn puts a column behind another one, if the house has several levels
// or spaces: name heads it, and cell gives it for each row.
func withColumn(t *Table, h *plan.House, after int, name string, cells []string) {
	if several(h) {
		addColumn(t, after, name, cells)
	}
}

// addColumn puts a column behind another. Rows that end before it stay as they
// are.
func addColumn(t *Table, after int, name string, cells []string) {
	t.Head = inserted(t.Head, after, name)
	for i := range t.Rows {
		if after < len(t.Rows[i]) {
			t.Rows[i] = inserted(t.Rows[i], after, cells[i])
		}
	}
}

func inserted(row []string, after int, cell string) []string {
	out := append([]string{}, row[:after+1]...)
	return append(append(out, cell), row[after+1:]...)
}
