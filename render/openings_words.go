package render

import (
	"fmt"
	"strconv"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// plainLength says how far something is, for people without a tape in their
// hands: to half an inch, and in inches alone up to a yard; or to a centimetre.
func plainLength(u measure.System, l measure.Length) string {
	const centimetre = 10 * measure.Millimetre
	if u == measure.Metric {
		n := (l + centimetre/2) / centimetre
		if n < 100 {
			return fmt.Sprintf("%d cm", n)
		}
		return fmt.Sprintf("%d.%02d m", n/100, n%100)
	}
	n := (2*l + measure.Inch/2) / measure.Inch // halves of an inch
	if n >= 2*36 {
		return spaced(u.Format(n * measure.Inch / 2))
	}
	if n%2 == 0 {
		return fmt.Sprintf("%d in", n/2)
	}
	return strings.TrimPrefix(fmt.Sprintf("%d-1/2 in", n/2), "0-")
}

// spaced puts a space before the units of an exact length.
func spaced(s string) string {
	return strings.NewReplacer("ft ", " ft ", "ft", " ft", "in", " in").Replace(s)
}

// winds are the names of the eight directions, from true north clockwise.
var winds = [...]string{"north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"}

// wind names a direction of the house by the compass, to the nearest of eight.
func wind(h *plan.House, d plan.Heading) string {
	bearing := h.North + [...]int{plan.East: 90, plan.North: 0, plan.West: 270, plan.South: 180}[d]
	return winds[(2*bearing+45)/90%8]
}

// opposite is the direction the other way.
func opposite(d plan.Heading) plan.Heading { return (d + 2) % 4 }

// A view of a wall's face, as somebody sees it who stands before it: where the
// straight face begins and ends along the wall, and what is in it.
type face struct {
	house  *plan.House
	wall   *plan.Wall
	side   plan.Side
	lo, hi measure.Length
}

// faceAt finds the face about a point along a wall, from the outlines of the
// room or of the house that it is a part of.
func faceAt(h *plan.House, w *plan.Wall, side plan.Side, along measure.Length, outlines []geom.Polygon) face {
	f := face{house: h, wall: w, side: side, hi: w.Length()}
	p := w.FacePoint(along, side)
	for _, outline := range outlines {
		for i, a := range outline {
			b := outline[(i+1)%len(outline)]
			if (geom.Rect{Min: a, Max: b}).Canon().Contains(p) && (a.X == b.X) == w.AlongY() {
				f.lo, f.hi = min(w.Along(a), w.Along(b)), max(w.Along(a), w.Along(b))
				return f
			}
		}
	}
	return f
}

// hand names the side of who faces the wall, towards the wall's end or towards
// its start. Who stands on the left of a wall has its end at the left hand.
func (f face) hand(towardsEnd bool) string {
	if towardsEnd == (f.side == plan.Left) {
		return "left"
	}
	return "right"
}

// near says where a point along the face is, from the nearest thing that one
// can see: a window, a door, or a corner.
func (f face) near(along, height measure.Length) string {
	u := f.house.Units
	best, words := along-f.lo, "from the "+f.hand(false)+" corner"
	if d := f.hi - along; d < best {
		best, words = d, "from the "+f.hand(true)+" corner"
	}
	for i := range f.wall.Openings {
		o := &f.wall.Openings[i]
		if o.End <= f.lo || f.hi <= o.Start {
			continue
		}
		name := f.openingName(o)
		switch {
		case o.Start < along && along < o.End && height < o.Sill:
			return "under " + name
		case o.Start < along && along < o.End:
			return "above " + name
		case along <= o.Start && o.Start-along <= best:
			best, words = o.Start-along, f.hand(false)+" of "+name
		case along >= o.End && along-o.End <= best:
			best, words = along-o.End, f.hand(true)+" of "+name
		}
	}
	return plainLength(u, best) + " " + words
}

var plainOpenings = [...]string{plan.Door: "door", plan.Window: "window", plan.Passage: "open doorway", plan.GarageDoor: "garage door"}

// openingName names an opening, the nearest of its kind if the face has more.
func (f face) openingName(o *plan.Opening) string {
	n := 0
	for i := range f.wall.Openings {
		other := &f.wall.Openings[i]
		if other.Kind == o.Kind && other.End > f.lo && f.hi > other.Start {
			n++
		}
	}
	if n > 1 {
		return "the nearest " + plainOpenings[o.Kind]
	}
	return "the " + plainOpenings[o.Kind]
}

// roomOutlines are the outlines of what a room's walls face.
func roomOutlines(h *plan.House, room int) []geom.Polygon {
	if room < 0 {
		return nil
	}
	return append([]geom.Polygon{h.Rooms[room].Outline}, h.Rooms[room].Holes...)
}

// onWall says where a place on the wall of a room is.
func onWall(h *plan.House, s plan.Spot) string {
	w := &h.Walls[s.Wall]
	f := faceAt(h, w, s.Side, s.At, roomOutlines(h, s.Room))
	return fmt.Sprintf("on the %s wall, %s, %s above the floor",
		wind(h, opposite(w.Faces(s.Side))), f.near(s.At, s.Height), plainLength(h.Units, s.Height))
}

// underEdge says where a place outside, up under the roof's edge, is.
func underEdge(h *plan.House, wall int, along measure.Length, inWall bool) string {
	w := &h.Walls[wall]
	f := faceAt(h, w, w.Out, along, []geom.Polygon{h.Levels[w.Level].OutsideOf})
	side, where := wind(h, w.Faces(w.Out)), f.near(along, h.Levels[w.Level].Ceiling)
	if inWall {
		return fmt.Sprintf("high in the %s wall, under the roof's edge, %s", side, where)
	}
	return fmt.Sprintf("under the roof's edge on the %s side, %s", side, where)
}

// inCeiling says where a place in the ceiling of a room is, from the nearer
// wall each way.
func inCeiling(h *plan.House, room int, p geom.Point) string {
	var parts []string
	for _, d := range [2]plan.Heading{plan.East, plan.North} {
		ahead, okAhead := toWall(roomOutlines(h, room), p, d)
		behind, okBehind := toWall(roomOutlines(h, room), p, opposite(d))
		if okBehind && (!okAhead || behind < ahead) {
			ahead, okAhead, d = behind, true, opposite(d)
		}
		if okAhead {
			parts = append(parts, fmt.Sprintf("%s from the %s wall", plainLength(h.Units, ahead), wind(h, d)))
		}
	}
	return "in the ceiling, " + strings.Join(parts, " and ")
}

// toWall is how far it is from a point to the next outline in a direction.
func toWall(outlines []geom.Polygon, p geom.Point, d plan.Heading) (best measure.Length, ok bool) {
	for _, outline := range outlines {
		for i, a := range outline {
			b := outline[(i+1)%len(outline)]
			if (a.X == b.X) == d.AlongY() {
				continue
			}
			across, at, lo, hi := p.X, a.Y-p.Y, min(a.X, b.X), max(a.X, b.X)
			if !d.AlongY() {
				across, at, lo, hi = p.Y, a.X-p.X, min(a.Y, b.Y), max(a.Y, b.Y)
			}
			if !d.Rising() {
				at = -at
			}
			if lo <= across && across <= hi && at >= 0 && (!ok || at < best) {
				best, ok = at, true
			}
		}
	}
	return best, ok
}

// counted is a number with its noun.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// listed joins words as people do: "a", "a and b", "a, b and c".
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
