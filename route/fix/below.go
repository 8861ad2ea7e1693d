package fix

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// A Below says how a place is found from the room that one works in, without
// climbing into a space: from below a ceiling or a top plate, from over a bottom
// plate, or from outside of the house.
type Below struct {
	Room int // -1 outside, or where no room is named
	// Wall is faced from Side of it, -1 for a ceiling.
	Wall int
	Side plan.Side
	// From is one distance along the wall from the nearest corner; for a
	// ceiling two, from two walls at right angles; for a soffit the one along
	// the wall, and the one out from its face.
	From []Distance
	// Height is that of the middle of the place above the floor.
	Height measure.Length
	// Opening is what a bit goes in through, nil if there is none. Aside is how
	// far the place is to the right of its middle as one faces the wall,
	// negative to the left.
	Opening *Opening
	Aside   measure.Length
	Text    string
}

// A Distance is taped from something that can be touched.
type Distance struct {
	Of DistanceOf
	// Wall is the one whose corner or face it is.
	Wall int
	// At is where the tape's end is held, in plan.
	At     geom.Point
	Length measure.Length // never negative
}

// A DistanceOf says what a distance is taped from.
type DistanceOf uint8

// What distances are taped from.
const (
	LeftCorner  DistanceOf = iota // of the face, as one faces it
	RightCorner                   // of the face, as one faces it
	WallFace                      // square to a finished face
)

var distanceNames = [...]string{"left corner", "right corner", "face"}

func (d DistanceOf) String() string { return distanceNames[d] }

// below finds a place from below.
func (f *fixer) below(h *Hole, open *Opening) Below {
	if h.Wall < 0 {
		return f.belowCeiling(h)
	}
	if h.Kind == route.PassArc {
		return f.belowPass(h)
	}
	w := &f.house.Walls[h.Wall]
	b := Below{Room: -1, Wall: h.Wall, Height: h.At.Z - f.floor(h.Level), Opening: open}
	along := w.Along(flat(h.At))
	switch {
	case h.Kind == route.SoffitArc || h.Kind == route.GableArc:
		b.Side = w.Out
	case open != nil:
		b.Side, b.Room = open.Side, open.Room
		b.Aside = along - open.At
		if b.Side == plan.Left {
			b.Aside = -b.Aside
		}
	default:
		b.Side = f.roomSide(w, along)
		b.Room = f.house.RoomBeside(w, along, b.Side)
	}
	b.From = append(b.From, f.nearestCorner(h.Wall, b.Side, along))
	if h.Kind == route.SoffitArc {
		face := w.FacePoint(along, b.Side)
		b.From = append(b.From, Distance{Of: WallFace, Wall: h.Wall, At: face, Length: geom.Dist(face, flat(h.At))})
	}
	b.Text = f.belowText(h, &b)
	return b
}

// roomSide is a side of a wall that has a room there.
func (f *fixer) roomSide(w *plan.Wall, along measure.Length) plan.Side {
	if f.house.RoomBeside(w, along, plan.Left) >= 0 {
		return plan.Left
	}
	return plan.Right
}

// nearestCorner is the distance from the nearer corner of the face, the left
// one where both are as near. Who faces the left side of a wall has its end on
// his left.
func (f *fixer) nearestCorner(wall int, side plan.Side, along measure.Length) Distance {
	start, end := f.corners(wall, side, along)
	left, right := start, end
	if side == plan.Left {
		left, right = end, start
	}
	dl, dr := max(left.along-along, along-left.along), max(right.along-along, along-right.along)
	if dl <= dr {
		return Distance{Of: LeftCorner, Wall: wall, At: left.at, Length: dl}
	}
	return Distance{Of: RightCorner, Wall: wall, At: right.at, Length: dr}
}

// belowCeiling finds a place in a ceiling from the nearer walls on both axes.
func (f *fixer) belowCeiling(h *Hole) Below {
	b := Below{Room: h.Room, Wall: -1, Height: h.At.Z - f.floor(h.Level), From: f.squareFaces(h.Level, flat(h.At))}
	b.Text = f.belowText(h, &b)
	return b
}

// squareFaces are the distances from the nearer walls of a level on both axes.
func (f *fixer) squareFaces(level int, at geom.Point) []Distance {
	var out []Distance
	for _, pair := range [2][2]plan.Heading{{plan.West, plan.East}, {plan.South, plan.North}} {
		p, ok := f.towards(level, at, pair[0])
		q, okToo := f.towards(level, at, pair[1])
		if !ok || okToo && q.distance < p.distance {
			p, ok = q, okToo
		}
		if ok {
			out = append(out, Distance{Of: WallFace, Wall: p.wall, At: p.at, Length: p.distance})
		}
	}
	return out
}

// belowText puts it in a sentence.
func (f *fixer) belowText(h *Hole, b *Below) string {
	if b.Wall < 0 {
		text := "in the ceiling" + f.inRoom(b.Room)
		switch h.Kind {
		case route.FloorArc:
			text = "in the floor" + f.inRoom(b.Room)
		case route.JoistArc:
			text = "in a joist over the ceiling" + f.inRoom(b.Room)
		}
		for i, d := range b.From {
			text += [...]string{": ", ", "}[i] + f.text(d.Length) + " from wall " + f.house.Walls[d.Wall].ID
		}
		return text
	}
	where := "outside"
	if b.Room >= 0 {
		where = "in " + f.house.Rooms[b.Room].Name
	} else if h.Kind != route.SoffitArc && h.Kind != route.GableArc {
		where = "inside"
	}
	text := fmt.Sprintf("%s, facing wall %s: %s from the %s", where, f.house.Walls[b.Wall].ID, f.text(b.From[0].Length), b.From[0].Of)
	if len(b.From) > 1 {
		text += fmt.Sprintf(", %s out from its face", f.text(b.From[1].Length))
	}
	if h.Kind == route.SoleArc {
		text += " along the baseboard, in the bottom plate behind it"
	} else {
		text += fmt.Sprintf(", %s above the floor", f.text(b.Height))
		if where == "outside" && len(f.house.Levels) > 1 {
			text += " of level " + f.house.Levels[h.Level].ID
		}
	}
	if o := b.Opening; o != nil {
		text += ", " + f.asideText(b.Aside, h.At.Z-o.z) + f.openingName(o)
	}
	return text
}

// asideText is the way from an opening to a place that is so far to the right of
// its middle and over it.
func (f *fixer) asideText(aside, over measure.Length) string {
	switch {
	case aside == 0 && over == 0:
		return "straight behind "
	case aside == 0 && over < 0:
		return "straight under "
	case aside == 0:
		return "straight over "
	case aside < 0:
		return f.text(-aside) + " left of "
	}
	return f.text(aside) + " right of "
}
