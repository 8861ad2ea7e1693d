package fix

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// aboveText puts how a place is found in its space in sentences.
func (s *site) aboveText(h *Hole, a *Above) []string {
	over := "over"
	switch {
	case s.closed(flat(h.At)):
		over = "between"
	case s.fromBelow():
		over = "under"
	}
	out := []string{s.thereText(h, a), fmt.Sprintf("%s, %s clear %s the joists", a.Zone, s.text(a.Clear), over)}
	out = append(out, s.fixText(a)...)
	if a.Method != ByFaces && len(a.Faces) > 0 {
		out = append(out, s.facesText(a.Faces))
	}
	if a.Joists != nil {
		out = append(out, s.joistText(a.Joists))
	}
	if a.Plate != "" {
		out = append(out, "look for "+a.Plate)
	}
	switch {
	case a.Decked:
		out = append(out, "lift a board of the decking")
	case a.Buried > 0 && s.fromBelow():
		out = append(out, fmt.Sprintf("over %s of insulation between the joists", s.text(a.Buried)))
	case a.Buried > 0:
		out = append(out, fmt.Sprintf("under %s of insulation", s.text(a.Buried)))
	}
	if h.Kind == route.CeilingArc {
		out = append(out, "bored from the room; up here the cable goes down")
	}
	if a.Probe != nil {
		out = append(out, a.Probe.Text)
	}
	return append(out, s.mind(h)...)
}

// thereText says where one works, and how one gets there.
func (s *site) thereText(h *Hole, a *Above) string {
	var parts []string
	if where := s.where(flat(h.At)); where != "" {
		parts = append(parts, where)
	}
	switch {
	case a.Hatch >= 0:
		parts = append(parts, s.wayText(a.Hatch, a.Way))
	case s.space.Kind != plan.FloorSpace:
		parts = append(parts, "from the hatch, round what is in the way")
	}
	return strings.Join(parts, ", ")
}

// fixText says what to tape.
func (s *site) fixText(a *Above) []string {
	if a.Fix == nil {
		return nil
	}
	var out []string
	switch a.Method {
	case AtMark:
		out = append(out, "at "+s.markName(*a.Fix.At))
	case ByTapes:
		p := a.Fix.Best
		out = append(out, fmt.Sprintf("%s from %s and %s from %s, on the %s of the way from the first to the second",
			s.text(p.Distance[0].Shown), s.markName(p.Marks[0]), s.text(p.Distance[1].Shown), s.markName(p.Marks[1]), p.Side))
		if c := a.Fix.Check; c != nil {
			out = append(out, fmt.Sprintf("check: %s from %s", s.text(c.Distance.Shown), s.markName(c.Mark)))
		}
	case ByJoists:
		j := a.Fix.Joist
		out = append(out, fmt.Sprintf("%s from %s", s.text(j.Distance.Shown), s.markName(j.Mark)))
	case ByBearing:
		v := a.Fix.Single
		out = append(out, fmt.Sprintf("%s from %s, %s", s.text(v.Distance.Shown), s.markName(v.Mark), s.offsetText(v.East, v.North)))
	case ByFaces:
		out = append(out, s.facesText(a.Faces))
	default:
		return []string{a.Fix.Verdict.String()}
	}
	return append(out, fmt.Sprintf("within %s, 95 tries in 100", s.text(a.Error)))
}

// facesText is the way from the faces of walls.
func (f *fixer) facesText(faces []Distance) string {
	parts := make([]string, len(faces))
	for i, d := range faces {
		parts[i] = f.text(d.Length) + " from the face of wall " + f.house.Walls[d.Wall].ID
	}
	return strings.Join(parts, " and ") + ", square to it"
}

// offsetText is a way east and north, in words.
func (f *fixer) offsetText(east, north measure.Length) string {
	x, y := "east", "north"
	if east < 0 {
		x, east = "west", -east
	}
	if north < 0 {
		y, north = "south", -north
	}
	return fmt.Sprintf("%s %s and %s %s of it", f.text(east), x, f.text(north), y)
}

// closedText says that nothing is found from a space that no hand gets into.
func (s *site) closedText(h *Hole) string {
	between := "closed between the ceiling and the floor over it"
	if s.underRoof() {
		between = "closed between the ceiling and the roof"
	}
	switch h.Kind {
	case route.CeilingArc:
		return between + ": bored from the room, and reached with rods"
	case route.FloorArc:
		return "the floor is closed from below: bored down from the room over it, in the channel beside the wall"
	case route.SoleArc:
		return "the floor is closed from below: bored down from the box, and reached with rods"
	}
	if h.Below.Opening == nil {
		return between + ": bored up through the bay, and reached with rods; it is not found from above"
	}
	return between + ": bored from the box, and reached with rods; it is not found from above"
}

// inLine is the wall on the other side of a closed floor that stands in one line
// with the wall of a hole, over it or under it, -1 if there is none.
func (s *site) inLine(h *Hole) int {
	level := s.space.Above
	if h.Kind == route.SoleArc {
		level = s.space.Below
	}
	if h.Wall < 0 || level < 0 || s.space.Kind != plan.FloorSpace {
		return -1
	}
	for i := range s.house.Walls {
		w := &s.house.Walls[i]
		if w.Level == level && w.AlongY() == s.house.Walls[h.Wall].AlongY() && w.Frame.Contains(flat(h.At)) {
			return i
		}
	}
	return -1
}

// inLineText says where the place is along a wall that stands in line with it.
func (s *site) inLineText(a *Above, h *Hole) []string {
	if a.InLine < 0 {
		return nil
	}
	w := &s.house.Walls[a.InLine]
	along := w.Along(flat(h.At))
	side := s.roomSide(w, along)
	corner := s.nearestCorner(a.InLine, side, along)
	stands := "over"
	if h.Kind == route.SoleArc {
		stands = "under"
	}
	where := ""
	if room := s.house.RoomBeside(w, along, side); room >= 0 {
		where = ", in " + s.house.Rooms[room].Name
	}
	return []string{fmt.Sprintf("wall %s stands %s it in line: the place is %s from the %s of its face%s", w.ID, stands, s.text(corner.Length), corner.Of, where)}
}

// mind says what to mind where a hole goes through a plate into a floor, or down
// through one. All of it is common practice, no source.
func (s *site) mind(h *Hole) []string {
	if h.Wall < 0 {
		return nil
	}
	w := &s.house.Walls[h.Wall]
	var out []string
	switch {
	case h.Kind == route.SoleArc:
		if w.Exterior {
			out = append(out, fmt.Sprintf("under an outer wall the rim joist lies below the outer part of the plate, about %s of its %s: keep to the inner half",
				s.text(s.space.Width), s.text(w.StudDepth)))
		}
		if s.inLine(h) >= 0 {
			out = append(out, "stop as soon as the bit is through the floor: there is a wall under it")
		}
		out = append(out, "look under the floor before boring, or ask what runs there: pipes, ducts and cables")
	case h.Kind == route.PlateArc && s.space.Kind == plan.FloorSpace:
		what := "the floor"
		if s.underRoof() {
			what = "the roof's deck"
		}
		out = append(out, fmt.Sprintf("stop as soon as the bit is through the plate: pipes, ducts and cables run over it, and %s is %s above it", what, s.text(s.space.Depth)))
	default:
		return nil
	}
	return append(out, s.knownNear(flat(h.At))...)
}

// knownNear names what the sketch has in the space near a place.
func (s *site) knownNear(p geom.Point) []string {
	near := length(LookRound)
	var names []string
	for i := range s.house.Obstacles {
		if o := &s.house.Obstacles[i]; o.Space == s.index && geom.SegmentRectCloserThan(p, p, o.Area, near) {
			names = append(names, o.Kind+" "+o.ID)
		}
	}
	for i := range s.house.PowerRuns {
		if r := &s.house.PowerRuns[i]; r.Space == s.index && passes(r.Path, p, near) {
			names = append(names, "power "+r.ID)
		}
	}
	for i := range s.house.Marks {
		if m := &s.house.Marks[i]; m.Space == s.index && m.Kind == "pipe" && geom.Dist(m.At, p) < near {
			names = append(names, "pipe "+m.ID)
		}
	}
	if len(names) == 0 {
		return nil
	}
	slices.Sort(names)
	return []string{fmt.Sprintf("in the sketch nearer than %s: %s", s.text(near), strings.Join(names, ", "))}
}

// passes reports whether a path comes nearer to p than near.
func passes(path []geom.Point, p geom.Point, near measure.Length) bool {
	for i := 1; i < len(path); i++ {
		if geom.SegmentRectCloserThan(path[i-1], path[i], geom.Rect{Min: p, Max: p}, near) {
			return true
		}
	}
	return false
}
