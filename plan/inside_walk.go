package plan

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
	"topplate/plan/survey"
)

// readShape reads the inside dimensions of a room: its width and its depth, or
// the walk round its walls.
func (l *houseLoader) readShape(in *inside) {
	t := in.t
	if t.Has("walk") {
		for _, key := range []string{"width", "depth"} {
			if t.Has(key) {
				t.Errorf(key, "found %s together with walk; want the walk round the room alone, or width and depth", key)
			}
		}
		legs := l.readLegs(t, "walk")
		in.sized = legs != nil && l.closeWalk(in, legs)
		return
	}
	if !t.Has("width") && !t.Has("depth") {
		t.Errorf("width", "found neither width and depth nor a walk; want the size of the room from face to face, or walk = %q round its walls",
			t.Example("E 12ft, N 8ft, W 12ft, S 8ft", "E 3.6m, N 2.4m, W 3.6m, S 2.4m"))
		return
	}
	width, okX := length(t, "width", source.Required, insideSizes)
	depth, okY := length(t, "depth", source.Required, insideSizes)
	if in.sized = okX && okY; in.sized {
		in.takeShape(geom.Polygon{{}, {X: width}, {X: width, Y: depth}, {Y: depth}})
	}
}

// closeWalk finds the outline that a walk goes round, and spreads what it misses
// its start by.
func (l *houseLoader) closeWalk(in *inside, legs []survey.Leg) bool {
	h, t := l.house, in.t
	if len(legs) < 4 || len(legs) > mostWalkLegs {
		t.Errorf("walk", "found a walk of %s; want 4 to %d, round one room", counted(len(legs), "leg"), mostWalkLegs)
		return false
	}
	traverse := survey.Close(legs, true, h.Closes)
	mis := traverse.Misclosure
	if !traverse.Closes {
		t.Errorf("walk", "found a walk that ends %s of its start, %s off; want at most %s (closing in [house]): go round all walls of the room, back to the corner where it starts",
			h.offText(mis.DX, mis.DY), h.text(mis.Linear), h.text(h.Closes))
		return false
	}
	p := geom.Polygon(traverse.Points[:len(legs)])
	if i, j, ok := crossedLegs(p); ok {
		l.list.Errorf(t.ValuePosAt("walk", legs[j].Offset), t.Path("walk"), "found leg %d, %s, which %s leg %d, %s; want a walk round the room that crosses and touches itself nowhere",
			j+1, l.legText(legs[j]), crossingWord(i, j, len(p)), i+1, l.legText(legs[i]))
		return false
	}
	b := p.Bounds()
	if !insideSizes.Contains(b.Width()) || !insideSizes.Contains(b.Height()) {
		t.Errorf("walk", "found a room of %s by %s; want %s each way: %s", h.text(b.Width()), h.text(b.Height()), insideSizes.text(h.Units), insideSizes.why)
		return false
	}
	if mis.Linear != 0 {
		t.Warnf("walk", "the walk ends %s of its start, %s in %s (1:%d), which is spread over its legs",
			h.offText(mis.DX, mis.DY), h.text(mis.Linear), h.text(mis.Perimeter), mis.Ratio())
	}
	in.takeShape(p)
	in.legs = legs
	return true
}

// legText writes a leg as a walk has it.
func (l *houseLoader) legText(leg survey.Leg) string {
	return leg.Bearing.String() + " " + l.house.text(leg.Length)
}

// crossedLegs finds the first leg of a closed walk that turns back on the leg
// before or touches another one than its neighbours, and that other leg before it.
// It takes time O(n²).
func crossedLegs(p geom.Polygon) (i, j int, ok bool) {
	n := len(p)
	end := func(k int) geom.Point { return p[(k+1)%n] }
	for j := range n {
		if p[j] == end(j) {
			return (j + n - 1) % n, j, true
		}
		for i := range j {
			switch {
			case j-i == 1 || j-i == n-1:
				if headingOf(p[i], end(i)) == headingOf(p[j], end(j)).Opposite() {
					return i, j, true
				}
			case geom.SegmentsTouch(p[i], end(i), p[j], end(j)):
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// crossingWord says how legs i and j of n are in each other's way.
func crossingWord(i, j, n int) string {
	if j-i == 1 || j-i == n-1 {
		return "turns back on"
	}
	return "crosses or touches"
}

// takeShape takes the outline of a room that is not placed yet, from where it
// starts.
func (in *inside) takeShape(p geom.Polygon) {
	b := p.Bounds()
	in.shape = moved(geom.Unite(geom.AreaOf(p)).Outlines[0], geom.Point{}.Sub(b.Min))
	in.walked = moved(p, geom.Point{}.Sub(b.Min))
	in.corner, in.size = p[0].Sub(b.Min), b.Max.Sub(b.Min)
}

// moved is an outline moved by a step.
func moved(p geom.Polygon, by geom.Point) geom.Polygon {
	out := make(geom.Polygon, len(p))
	for i, at := range p {
		out[i] = at.Add(by)
	}
	return out
}

// put places a room with the south-west corner of its bounds at a point.
func (in *inside) put(at geom.Point) {
	in.outline = moved(in.shape, at)
	in.bounds = geom.Rect{Min: at, Max: at.Add(in.size)}
	in.parts = geom.AreaOf(in.outline).Rects()
	in.state = insidePlaced
}

// middle is a point well within a room: the middle of the largest of its parts.
func (in *inside) middle() geom.Point {
	best, most := 0, 0.0
	for i, r := range in.parts {
		if size := float64(r.Width()) * float64(r.Height()); size > most {
			best, most = i, size
		}
	}
	r := in.parts[best]
	return geom.Point{X: middle(r.Min.X, r.Max.X), Y: middle(r.Min.Y, r.Max.Y)}
}

// An insideFace is a straight piece of the outline of a room: its line, how far
// it goes along it, and the direction in which one looks from the room at it.
type insideFace struct {
	at    measure.Length
	along extent
	looks Heading
}

// faces are the faces of a placed room.
func (in *inside) faces() []insideFace {
	out := make([]insideFace, len(in.outline))
	for i, a := range in.outline {
		out[i] = faceBetween(a, in.outline[(i+1)%len(in.outline)])
	}
	return out
}

// faceBetween is the face from a to b of an outline against the clock.
func faceBetween(a, b geom.Point) insideFace {
	h := headingOf(a, b)
	f := insideFace{at: a.Y, along: ordered(a.X, b.X), looks: h.Turn(Right)}
	if h.AlongY() {
		f.at, f.along = a.X, ordered(a.Y, b.Y)
	}
	return f
}

// checkCorners reports more corners of rooms than are read.
func (l *houseLoader) checkCorners() bool {
	all := 0
	for i := range l.insides {
		in := &l.insides[i]
		if all += len(in.shape); all > mostRoomCorners {
			in.t.Errorf("walk", "found more than %d corners of rooms in all; no house has that many", mostRoomCorners)
			return false
		}
	}
	return true
}
