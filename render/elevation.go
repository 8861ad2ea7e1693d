package render

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/sheet"
	"topplate/route"
)

// An elevation is one wall without its board, as seen from one room. Distances
// across it are counted from the room's left-hand corner, heights from the
// floor.
type elevation struct {
	res  *route.Result
	wall *plan.Wall
	bays []route.Bay
	side plan.Side
	room int
	// left and right are the room's corners, along the wall.
	left, right measure.Length
	// first and last bound the stretch that is drawn, across from the left
	// corner; part is its number, 0 if the whole wall is drawn.
	first, last measure.Length
	part        int
}

// beyondCorner is how much of the framing is shown beyond a room's corners:
// the studs that make the corner. Common practice, no source.
const beyondCorner = 8 * measure.Inch

// across is how far from the left-hand corner a distance along the wall is.
func (e *elevation) across(along measure.Length) measure.Length {
	if e.side == plan.Left {
		return e.left - along
	}
	return along - e.left
}

// width is the distance between the room's corners.
func (e *elevation) width() measure.Length { return e.across(e.right) }

// level is the storey of the wall.
func (e *elevation) level() *plan.Level { return &e.res.Job.House.Levels[e.wall.Level] }

// shows reports whether a distance across is in the stretch that is drawn.
func (e *elevation) shows(u measure.Length) bool { return e.first <= u && u <= e.last }

// inRoom reports whether a distance across is between the room's corners. What
// is beyond is seen, but measured from the next room.
func (e *elevation) inRoom(u measure.Length) bool { return 0 <= u && u <= e.width() }

// title names the elevation.
func (e *elevation) title() string {
	t := fmt.Sprintf("Wall %s from %s", e.wall.ID, e.roomName())
	if h := e.res.Job.House; len(h.Levels) > 1 {
		t += ", " + levelName(h, e.wall.Level)
	}
	if e.part > 0 {
		t += fmt.Sprintf(", part %d", e.part)
	}
	return t
}

// roomName is the name of the room, or its id if it has none.
func (e *elevation) roomName() string {
	r := &e.res.Job.House.Rooms[e.room]
	if r.Name != "" {
		return r.Name
	}
	return r.ID
}

// id is unique among the elevations of a job: an underscore that sheet.ID
// writes is always one of a pair.
func (e *elevation) id() string {
	id := sheet.ID("wall", e.wall.ID) + "_" + sheet.ID("from", e.res.Job.House.Rooms[e.room].ID)
	if e.part > 0 {
		id += fmt.Sprintf("_part%d", e.part)
	}
	return id
}

// elevations lists the walls that boxes or the closet's panel open, each from
// the room it is opened from: the closet's first, then in the order of the
// drops' tags; and those that are bored through without any box. A wall longer than widest is shown in parts around its boxes.
func elevations(res *route.Result, widest measure.Length) []*elevation {
	var out []*elevation
	bored := false // either side shows a hole
	add := func(s plan.Spot) {
		same := func(e *elevation) bool {
			return e.wall == &res.Job.House.Walls[s.Wall] && (e.side == s.Side || bored) && e.inRoom(e.across(s.At))
		}
		if s.Wall >= 0 && s.Room >= 0 && !slices.ContainsFunc(out, same) {
			out = append(out, newElevation(res, s))
		}
	}
	if c := &res.Job.Closet; !c.Ceiling {
		add(c.Spot)
	}
	for i := range res.Routes {
		if d := &res.Job.Drops[res.Routes[i].Drop]; d.Kind == plan.WallPlate {
			add(d.Spot)
		}
	}
	bored = true
	for i := range res.Holes {
		if p := &res.Graph.Holes[res.Holes[i].Place]; inFrame(p.Kind) {
			if s, ok := spotOf(res.Job.House, p); ok {
				add(s)
			}
		}
	}
	var parts []*elevation
	for _, e := range out {
		parts = append(parts, e.parts(widest)...)
	}
	return parts
}

// inFrame reports whether a hole of a kind is in the frame of a wall.
func inFrame(k route.ArcKind) bool {
	return k == route.PlateArc || k == route.BlockArc || k == route.StudArc || k == route.SoleArc
}

// spotOf is a place in a room before a hole in the frame of a wall; ok is false
// if there is a room on neither side.
func spotOf(h *plan.House, p *route.HolePlace) (s plan.Spot, ok bool) {
	w := &h.Walls[p.Wall]
	for _, side := range [2]plan.Side{plan.Left, plan.Right} {
		if room := h.RoomBeside(w, p.Along, side); room >= 0 {
			return plan.Spot{Wall: p.Wall, At: p.Along, Side: side, Room: room}, true
		}
	}
	return s, false
}

// newElevation is the elevation of the wall and side of a spot.
func newElevation(res *route.Result, s plan.Spot) *elevation {
	h := res.Job.House
	e := &elevation{res: res, wall: &h.Walls[s.Wall], bays: res.Graph.Bays[s.Wall], side: s.Side, room: s.Room}
	lo, hi := corners(&h.Rooms[s.Room], e.wall, s)
	e.left, e.right = lo, hi
	if s.Side == plan.Left {
		e.left, e.right = hi, lo
	}
	f := e.frame()
	e.first, e.last = max(f[0], -beyondCorner), min(f[1], e.width()+beyondCorner)
	return e
}

// frame is where the wall's frame begins and ends, across.
func (e *elevation) frame() [2]measure.Length {
	a, b := e.across(e.wall.Along(e.wall.Frame.Min)), e.across(e.wall.Along(e.wall.Frame.Max))
	return [2]measure.Length{min(a, b), max(a, b)}
}

// corners are the room's inside corners on both sides of a spot, along the
// wall that it is on; the wall's own ends if the outline does not tell.
func corners(r *plan.Room, w *plan.Wall, s plan.Spot) (lo, hi measure.Length) {
	at := w.FacePoint(s.At, s.Side)
	for _, ring := range append([]geom.Polygon{r.Outline}, r.Holes...) {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			onFace := a.Y == at.Y && b.Y == at.Y
			if w.AlongY() {
				onFace = a.X == at.X && b.X == at.X
			}
			p, q := w.Along(a), w.Along(b)
			if onFace && min(p, q) <= s.At && s.At <= max(p, q) {
				return min(p, q), max(p, q)
			}
		}
	}
	p, q := w.Along(w.Body.Min), w.Along(w.Body.Max)
	return min(p, q), max(p, q)
}

// parts is the elevation itself, or, if it is wider than widest, stretches of
// it that have all its boxes in them.
func (e *elevation) parts(widest measure.Length) []*elevation {
	if e.last-e.first <= widest {
		return []*elevation{e}
	}
	var us []measure.Length
	for _, b := range e.boxes() {
		us = append(us, b.across)
	}
	if len(us) == 0 {
		for _, h := range e.holes() {
			us = append(us, h.across)
		}
	}
	slices.Sort(us)
	var out []*elevation
	for _, u := range us {
		if n := len(out); n > 0 && u+measure.Foot <= out[n-1].last {
			continue
		}
		p := *e
		p.first = max(e.first, u-widest/3)
		p.last = min(e.last, p.first+widest)
		p.part = len(out) + 1
		out = append(out, &p)
	}
	return out
}

// A wallBox is an opening for a box or the panel.
type wallBox struct {
	name          string
	drop          *plan.Drop // nil for the panel
	blocked       bool
	across        measure.Length // of its middle
	height        measure.Length // of its middle
	width, tall   measure.Length // of the opening
	fromOtherSide bool
}

// boxes lists the openings in the wall, those of the other side too, in the
// order of their tags.
func (e *elevation) boxes() []wallBox {
	var out []wallBox
	job := e.res.Job
	add := func(s plan.Spot, b wallBox) {
		if s.Wall < 0 || &job.House.Walls[s.Wall] != e.wall {
			return
		}
		b.fromOtherSide = s.Side != e.side
		if e.shows(b.across) && (b.fromOtherSide || e.inRoom(b.across)) {
			out = append(out, b)
		}
	}
	book := job.Book()
	if c := &job.Closet; !c.Ceiling {
		name := c.Name
		if name == "" {
			name = "Closet"
		}
		add(c.Spot, wallBox{name: name, across: e.across(c.Spot.At), height: c.Spot.Height, width: c.Width, tall: c.Width})
	}
	for i := range e.res.Routes {
		r := &e.res.Routes[i]
		d := &job.Drops[r.Drop]
		if d.Kind != plan.WallPlate {
			continue
		}
		b := wallBox{name: d.Tag, drop: d, blocked: r.Blocked != nil, height: d.Spot.Height}
		b.across = e.across(d.Spot.At)
		if !b.blocked {
			b.across = e.across(e.wall.Along(flat(r.Place)))
		}
		b.width, b.tall = boxSize(book, d.Count)
		add(d.Spot, b)
	}
	return out
}

// A wallHole is a hole to bore in the wall.
type wallHole struct {
	hole           *route.Hole
	kind           route.ArcKind
	across, height measure.Length
}

// holes lists the holes in the plates, blocks and studs of the stretch.
func (e *elevation) holes() []wallHole {
	var out []wallHole
	for i := range e.res.Holes {
		h := &e.res.Holes[i]
		p := &e.res.Graph.Holes[h.Place]
		if !inFrame(p.Kind) || &e.res.Job.House.Walls[p.Wall] != e.wall {
			continue
		}
		w := wallHole{h, p.Kind, e.across(p.Along), p.At.Z - e.level().Floor}
		if p.Kind == route.PlateArc {
			// The graph has it at the top of the plates; it is seen half way.
			w.height -= measure.Length(e.wall.TopPlates) * route.PlateThickness / 2
		}
		if p.Kind == route.SoleArc {
			w.height += route.PlateThickness / 2
		}
		if e.shows(w.across) {
			out = append(out, w)
		}
	}
	return out
}
