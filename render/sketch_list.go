package render

import (
	"fmt"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// sketchLists are all numbers of a sketch, in lists, written as the file of the
// house may have them.
func sketchLists(res *route.Result) []*listing {
	s := sketchLister{res.Job.House}
	var out []*listing
	for _, l := range []*listing{
		s.framing(), s.runs(), s.checks(), s.walls(), s.openings(), s.devices(), s.conduits(), s.rooms(), s.walks(),
		s.areas(), s.stretches(), s.marks(), s.power(),
	} {
		if len(l.portions[0].rows) > 0 {
			out = append(out, l)
		}
	}
	return out
}

// A sketchLister writes the lists of a house.
type sketchLister struct{ house *plan.House }

func (s sketchLister) text(l measure.Length) string { return s.house.Units.Format(l) }

// numbers makes a list of which the first column names things. Cells of a
// column whose head ends in a full stop may be broken over lines.
func numbers(id, title, heads string, rows [][]string) *listing {
	l := &listing{id: "list-" + id, title: title, portions: []portion{{rows: rows}}}
	for i, head := range strings.Split(heads, "|") {
		c := column{head: strings.TrimSuffix(head, "."), lettering: small, whole: !strings.HasSuffix(head, ".")}
		if i == 0 {
			c.lettering = smallTag
		}
		l.columns = append(l.columns, c)
	}
	return l
}

func (s sketchLister) framing() *listing {
	rows := storeyRows(s.house, s.text)
	for i := range s.house.Spaces {
		if len(s.house.Spaces) > 1 {
			rows = append(rows, []string{spaceTitle(s.house, i), ""})
		}
		rows = append(rows, spaceRows(s.house, i, s.text)...)
	}
	rows = append(
		rows,
		[]string{"a taped length may be off by", s.text(s.house.SketchError)},
		[]string{"a run may miss its start by", s.text(s.house.Closes)},
	)
	return numbers("framing", "Storey, roof and framing", "what|is.", rows)
}

func (s sketchLister) runs() *listing {
	var rows [][]string
	for i := range s.house.Traverses {
		t := &s.house.Traverses[i]
		rows = append(rows, append([]string{t.ID, s.text(t.Perimeter)}, missed(t, s.text)...))
	}
	l := numbers("runs", "How the runs of walls close", "run|walked|misses its start by|or one in.", rows)
	if s.house.Adjusted {
		l.intro = append(l.intro, "The walls are drawn as least squares over all that was taped puts them.")
	}
	return l
}

func (s sketchLister) checks() *listing {
	var rows [][]string
	for i := range s.house.Checks {
		c := &s.house.Checks[i]
		rows = append(rows, []string{c.ID, s.text(c.Length), s.text(c.Drawn), longer(c.Length-c.Drawn, s.text), verdict(c)})
	}
	return numbers("checks", "Checks", "check|taped|drawn|taped is|verdict.", rows)
}

var headingLetters = [...]string{plan.East: "E", plan.North: "N", plan.West: "W", plan.South: "S"}

func (s sketchLister) walls() *listing {
	var rows [][]string
	for i := range s.house.Walls {
		w := &s.house.Walls[i]
		closing := signed(w.Length()-w.Taped, s.text)
		if closing == s.text(0) {
			closing = ""
		}
		var kind []string
		if len(s.house.Levels) > 1 {
			kind = append(kind, levelName(s.house, w.Level))
		}
		for _, k := range []struct {
			is   bool
			word string
		}{{w.Masonry, "masonry"}, {w.Exterior, "exterior"}, {w.Bearing, "bearing"}, {w.Insulated, "insulated"}, {w.TopPlates == 1, "single plate"}} {
			if k.is {
				kind = append(kind, k.word)
			}
		}
		if w.Cladding.ID != "" {
			kind = append(kind, "clad with "+w.Cladding.ID)
		}
		for _, b := range w.FireBlocks {
			kind = append(kind, "blocks at "+s.text(b))
		}
		taped := s.text(w.Taped)
		if w.Made {
			taped = ""
		}
		rows = append(rows, []string{
			w.ID, headingLetters[w.Heading()], taped, closing, s.text(w.Length()), s.placeOf(w.A),
			s.text(w.StudDepth), s.text(w.Spacing), s.text(w.Boards[plan.Left]) + ", " + s.text(w.Boards[plan.Right]), strings.Join(kind, ", "),
		})
	}
	return numbers("walls", "Walls", "wall|runs|taped|closing|drawn|starts at|studs|on centre|board left, right|kind.", rows)
}

var openingKinds = [...]string{plan.Door: "door", plan.Window: "window", plan.Passage: "passage", plan.GarageDoor: "garage door"}

func (s sketchLister) openings() *listing {
	var rows [][]string
	for i := range s.house.Walls {
		w := &s.house.Walls[i]
		for j := range w.Openings {
			o := &w.Openings[j]
			hung := ""
			if o.Kind == plan.Door {
				hung = "start, opens " + o.Swing.String()
				if o.HingeEnd {
					hung = "end, opens " + o.Swing.String()
				}
			}
			rows = append(rows, []string{o.ID, openingKinds[o.Kind], w.ID, s.text(o.Start), s.text(o.End - o.Start), s.text(o.Sill), s.text(o.Head), hung})
		}
	}
	return numbers("openings", "Openings", "opening|kind|wall|at|width|sill|head|hinge at.", rows)
}

func (s sketchLister) devices() *listing {
	var rows [][]string
	for i := range s.house.Walls {
		w := &s.house.Walls[i]
		for j := range w.Devices {
			dev := &w.Devices[j]
			var cable []string
			if dev.Up {
				cable = append(cable, "up")
			}
			if dev.Down {
				cable = append(cable, "down")
			}
			rows = append(rows, []string{dev.ID, dev.Kind, w.ID, dev.Side.String(), s.text(dev.At), s.text(dev.Height), strings.Join(cable, ", ")})
		}
	}
	return numbers("devices", "Power devices", "device|kind|wall|side|at|height|cable runs.", rows)
}

func (s sketchLister) conduits() *listing {
	var rows [][]string
	for i := range s.house.Conduits {
		c := &s.house.Conduits[i]
		rows = append(rows, []string{
			c.ID, s.house.Walls[c.Wall].ID, c.Side.String(), s.text(c.At), s.text(c.Height), s.text(c.Inside),
			fmt.Sprint(len(c.Holds)), join(join(c.Kind, c.Trade), downWord(c)),
		})
	}
	return numbers("conduits", "Conduits", "conduit|wall|side|at|height|inside|holds|kind.", rows)
}

// downWord says that a conduit goes down, and not up.
func downWord(c *plan.Conduit) string {
	if c.Down {
		return "down"
	}
	return ""
}

func (s sketchLister) rooms() *listing {
	var rows [][]string
	for i := range s.house.Rooms {
		r := &s.house.Rooms[i]
		name := r.Name
		if len(s.house.Levels) > 1 {
			name = join(name, levelName(s.house, r.Level))
		}
		if r.Open {
			name = join(name, "open ceiling")
		}
		rows = append(rows, []string{r.ID, name, insideSize(r, s.text), s.house.Units.FormatArea(roomArea(r))})
	}
	return numbers("rooms", "Rooms, between finished faces", "room|name|west to east × south to north|area.", rows)
}

// walks are the outlines of rooms that are no rectangles, leg by leg along their
// finished faces, as a tape goes round.
func (s sketchLister) walks() *listing {
	var rows [][]string
	for i := range s.house.Rooms {
		r := &s.house.Rooms[i]
		if len(r.Outline) == 4 {
			continue
		}
		var legs []string
		for k, a := range r.Outline {
			b := r.Outline[(k+1)%len(r.Outline)]
			way := plan.East
			switch {
			case b.Y > a.Y:
				way = plan.North
			case b.X < a.X:
				way = plan.West
			case b.Y < a.Y:
				way = plan.South
			}
			legs = append(legs, headingLetters[way]+"\u00a0"+s.text(geom.Dist(a, b)))
		}
		rows = append(rows, []string{r.ID, s.placeOf(r.Outline[0]), strings.Join(legs, ", ")})
	}
	return numbers("walks", "Round the rooms that are no rectangles", "room|from the corner at|along its finished faces.", rows)
}

func (s sketchLister) placeOf(p geom.Point) string { return eastNorth(p.X, p.Y, s.text) }

func (s sketchLister) area(id, kind string, r geom.Rect, rest ...string) []string {
	row := append([]string{id, kind, s.placeOf(r.Min), s.text(r.Width()) + " × " + s.text(r.Height())}, rest...)
	return append(row, make([]string, 6-len(row))...)
}

func (s sketchLister) areas() *listing {
	var rows [][]string
	for i := range s.house.Hatches {
		rows = append(rows, s.area(s.house.Hatches[i].ID, s.inSpace("hatch", s.house.Hatches[i].Space), s.house.Hatches[i].Area))
	}
	for i := range s.house.Obstacles {
		o := &s.house.Obstacles[i]
		kind := s.inSpace(o.Kind, o.Space)
		if o.Hot {
			kind += ", hot"
		}
		rows = append(rows, s.area(o.ID, kind, o.Area, s.text(o.Bottom)+" to "+s.text(o.Top), s.text(o.Clearance)))
	}
	for k, space := range s.house.Spaces {
		for i, r := range space.Decking {
			rows = append(rows, s.area(fmt.Sprint(i+1), s.inSpace("decking", k), r))
		}
	}
	for i := range s.house.Chases {
		c := &s.house.Chases[i]
		kind := "chase, " + levelName(s.house, c.From)
		if c.To != c.From {
			kind += " to " + levelName(s.house, c.To)
		}
		rows = append(rows, s.area(c.ID, kind, c.Area))
	}
	title := "In the attic"
	if len(s.house.Spaces) > 1 {
		title = "In attics, floors and crawl spaces"
	}
	return numbers("areas", title, "name|kind|south-west corner|size|height|keep clear.", rows)
}

// inSpace adds to what a thing is the space that it is in, where the house has
// several.
func (s sketchLister) inSpace(what string, space int) string {
	if len(s.house.Spaces) > 1 {
		return what + ", " + spaceWords(s.house, space)
	}
	return what
}

func (s sketchLister) stretches() *listing {
	var rows [][]string
	for i := range s.house.Soffits {
		o := &s.house.Soffits[i]
		rows = append(rows, []string{o.ID, "soffit opening", s.house.Walls[o.Wall].ID, s.text(o.Start), s.text(o.End)})
	}
	for i := range s.house.Baffles {
		o := &s.house.Baffles[i]
		rows = append(rows, []string{o.ID, "baffle", s.house.Walls[o.Wall].ID, s.text(o.Start), s.text(o.End)})
	}
	return numbers("stretches", "Along the eaves", "name|kind|wall|from|to.", rows)
}

func (s sketchLister) marks() *listing {
	var rows [][]string
	for i := range s.house.Marks {
		m := &s.house.Marks[i]
		seen := "below"
		switch {
		case m.Above && m.Below:
			seen = "above and below"
		case m.Above:
			seen = "above"
		}
		rows = append(rows, []string{m.ID, s.inSpace(m.Kind, m.Space), s.placeOf(m.At), seen})
	}
	return numbers("marks", "Marks", "mark|kind|place|seen from.", rows)
}

func (s sketchLister) power() *listing {
	var rows [][]string
	for i := range s.house.PowerRuns {
		run := &s.house.PowerRuns[i]
		var path []string
		for _, p := range run.Path {
			path = append(path, s.placeOf(p))
		}
		rows = append(rows, []string{s.inSpace(run.ID, run.Space), fmt.Sprint(run.Circuits), strings.Join(path, "; ")})
	}
	title := "Power cables in the attic"
	if len(s.house.Spaces) > 1 {
		title = "Power cables in attics, floors and crawl spaces"
	}
	return numbers("power", title, "run|circuits|corners.", rows)
}
