package compare

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
)

// id is the id of a space or a roof, empty if it is the only one of both houses.
func (l *list) id(id string) string {
	if !l.several {
		return ""
	}
	return id
}

var joistNames = map[plan.JoistKind]string{plan.Sawn: "sawn", plan.Truss: "truss", plan.IJoist: "i-joist"}

// space is a framing space: what is said of its joists, and where it lies.
func (l *list) space(s *plan.Space) {
	run := "east"
	if s.AlongY {
		run = "north"
	}
	properties := []property{
		said("joists run", run), said("joists", joistNames[s.Joist]), l.length("spacing", s.Spacing), l.length("first joist", s.First),
		l.length("width", s.Width), l.length("depth", s.Depth), l.length("insulation", s.Insulation), said("decking", l.decking(s)),
	}
	if l.several {
		properties = append(properties,
			said("over", l.level(s.Below)), said("under", l.level(s.Above)), l.length("base", s.Base), l.length("subfloor", s.Subfloor), l.length("height", s.Clear),
			said("outline", l.edges(s)))
	}
	l.add(thing{kind: s.Kind.String(), rank: 7, id: l.id(s.ID), properties: properties})
}

// level is the id of a level, empty if it is none.
func (l *list) level(i int) string {
	if i < 0 {
		return ""
	}
	return l.h.Levels[i].ID
}

// edges tell the outlines of a space by their corners, from the least on.
func (l *list) edges(s *plan.Space) string {
	var out []string
	for _, e := range s.Edges() {
		var corners []string
		for _, p := range fromLeast(e) {
			corners = append(corners, l.point(p))
		}
		out = append(out, strings.Join(corners, ", "))
	}
	slices.Sort(out)
	return strings.Join(out, "; ")
}

func (l *list) roof(r *plan.Roof) {
	properties := []property{
		{"pitch", r.Pitch, fmt.Sprintf("%d/%d", r.Pitch.Rise, r.Pitch.Run)},
		{"framing", r.Framing, fmt.Sprintf("%s deep", l.h.Units.Format(r.Framing.Depth))},
		said("gables", l.gables(r)), l.length("overhang", r.Overhang), l.length("spacing", r.Spacing),
		l.length("first rafter east", r.FirstX), l.length("first rafter north", r.FirstY), l.length("width", r.Width),
	}
	if l.several {
		properties = append(properties, said("level", l.level(r.Level)))
	}
	l.add(thing{kind: "roof", rank: 8, id: l.id(r.ID), properties: properties})
}

// decking tells the boards by their places, whatever their order in the file.
func (l *list) decking(s *plan.Space) string {
	var out []string
	for _, r := range s.Decking {
		out = append(out, l.point(r.Min)+" to "+l.point(r.Max))
	}
	slices.Sort(out)
	return strings.Join(out, "; ")
}

// gables are those of a roof: on the level that it stands on.
func (l *list) gables(r *plan.Roof) string {
	var out []string
	for i := range l.h.Walls {
		if l.h.Walls[i].Gable && (!l.several || l.h.Walls[i].Level == r.Level) {
			out = append(out, l.h.Walls[i].ID)
		}
	}
	slices.SortFunc(out, compareTags)
	return strings.Join(out, " ")
}

// in is the space that something is in, if there are several.
func (l *list) in(space int, properties ...property) []property {
	if !l.several {
		return properties
	}
	return append(properties, said("space", l.h.Spaces[space].ID))
}

// inSpaces is what is in the ceilings and the framing spaces.
func (l *list) inSpaces() {
	h := l.h
	for i := range h.Hatches {
		x := &h.Hatches[i]
		l.add(thing{
			kind: "hatch", rank: 6, id: x.ID, place: corners(x.Area), least: true, area: x.Area, placed: true,
			properties: l.in(x.Space, said("room", l.room(x.Room)), l.length("width", x.Area.Width()), l.length("depth", x.Area.Height())),
		})
	}
	for i := range h.Obstacles {
		x := &h.Obstacles[i]
		l.add(thing{
			kind: "obstacle", rank: 9, id: x.ID, place: corners(x.Area), least: true, area: x.Area, placed: true,
			properties: l.in(x.Space,
				said("kind", x.Kind), l.length("width", x.Area.Width()), l.length("depth", x.Area.Height()), l.length("bottom", x.Bottom),
				l.length("top", x.Top), yes("hot", x.Hot), l.length("clearance", x.Clearance),
			),
		})
	}
	for i := range h.PowerRuns {
		x := &h.PowerRuns[i]
		l.add(thing{
			kind: "power cable", rank: 12, id: x.ID, place: x.Path, area: bounds(x.Path), placed: true,
			properties: l.in(x.Space, number("corners and ends", len(x.Path)), number("circuits", x.Circuits)),
		})
	}
	for i := range h.Marks {
		x := &h.Marks[i]
		l.add(thing{
			kind: "mark", rank: 13, id: x.ID, place: []geom.Point{x.At}, area: around(x.At), placed: true,
			properties: l.in(x.Space, said("kind", x.Kind), yes("seen from above", x.Above), yes("seen from below", x.Below)),
		})
	}
}

// room is the id of a room, or outside.
func (l *list) room(i int) string {
	if i < 0 {
		return "outside"
	}
	return l.h.Rooms[i].ID
}

// chases are what goes from storey to storey.
func (l *list) chases() {
	h := l.h
	for i := range h.Chases {
		x := &h.Chases[i]
		var holds, rooms []string
		for _, c := range x.Holds {
			holds = append(holds, h.Units.Format(c))
		}
		for _, r := range x.Rooms {
			rooms = append(rooms, l.room(r))
		}
		slices.Sort(holds)
		slices.SortFunc(rooms, compareTags)
		l.add(thing{
			kind: "chase", rank: 15, id: x.ID, place: corners(x.Area), least: true, area: x.Area, placed: true,
			properties: []property{
				l.length("width", x.Area.Width()), l.length("depth", x.Area.Height()), said("from", l.level(x.From)), said("to", l.level(x.To)),
				yes("down", x.Down), said("rooms", strings.Join(rooms, " ")), said("holds", strings.Join(holds, ", ")), yes("hot", x.Hot),
			},
		})
	}
}
