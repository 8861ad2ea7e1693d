package compare

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/work"
)

// A Drop is one that is not the same in both plans.
type Drop struct {
	Tag string
	How How
	In  [2]int // index in Result.Routes, -1 where it is not
	// Moved is how far the place of its box or hole is from where it was, Wished
	// how far the wished place is. Both are straight distances in space; Moved
	// is 0 if there is no allowed route in one of the plans.
	Moved, Wished measure.Length
	Values        []Value
}

// A Route is one of a drop that is in both plans, with another way or length.
type Route struct {
	Tag string
	In  [2]int // index in Result.Routes
	// Other is true if it goes another way. Only are then the legs that are in
	// one of the routes and not in the other, from the closet on.
	Other bool
	Only  [2][]int
	Cut   [2]measure.Length // one cable, as it is cut
	Bends [2]int
}

// tags are those of the routes of a plan.
func tags(w *work.Work) []string {
	var out []string
	for i := range w.Routes {
		out = append(out, w.Job.Drops[w.Routes[i].Drop].Tag)
	}
	return out
}

// drops compares the drops by their tags.
func (d *Difference) drops() {
	a, b := d.Plans[0], d.Plans[1]
	for _, in := range pairs(tags(a), tags(b), compareTags) {
		x := Drop{How: howOf(in), In: in}
		if x.How != Changed {
			side := 0
			if x.How == Added {
				side = 1
			}
			w := d.Plans[side]
			x.Tag = w.Job.Drops[w.Routes[in[side]].Drop].Tag
			d.Drops = append(d.Drops, x)
			continue
		}
		r, s := &a.Routes[in[0]], &b.Routes[in[1]]
		p, q := &a.Job.Drops[r.Drop], &b.Job.Drops[s.Drop]
		x.Tag = p.Tag
		x.Wished = apart(wished(a.Job.House, p), wished(b.Job.House, q))
		if r.Blocked == nil && s.Blocked == nil {
			x.Moved = apart(r.Place, s.Place)
		}
		x.Values = differing(describeDrop(a.Job.House, p, r), describeDrop(b.Job.House, q, s))
		if x.Moved != 0 || x.Wished != 0 || len(x.Values) > 0 {
			d.Drops = append(d.Drops, x)
		}
	}
}

// wished is the place that a drop was wished at, on the face of its wall.
func wished(h *plan.House, d *plan.Drop) geom.Point3 {
	if d.Kind != plan.WallPlate {
		return geom.Point3{X: d.Point.X, Y: d.Point.Y}
	}
	w := &h.Walls[d.Spot.Wall]
	p := w.FacePoint(d.Spot.At, d.Spot.Side)
	return geom.Point3{X: p.X, Y: p.Y, Z: h.Levels[w.Level].Floor + d.Spot.Height}
}

// describeDrop lists what a drop is, besides where.
func describeDrop(h *plan.House, d *plan.Drop, r *route.Route) []property {
	text := func(what, s string) property { return property{what, s, s} }
	wall, room, class, watts, way := "", "outside", "", "", "routed"
	switch {
	case d.Kind == plan.WallPlate:
		wall = h.Walls[d.Spot.Wall].ID
	case d.Kind == plan.SoffitSpot && d.Eave >= 0:
		wall = h.Walls[d.Eave].ID
	}
	if d.Room >= 0 {
		room = h.Rooms[d.Room].ID
	}
	if d.Class != plan.NoClass {
		class = fmt.Sprint(d.Class)
	}
	if d.Watts > 0 {
		watts = fmt.Sprint(float64(d.Watts) / 1000)
	}
	if r.Blocked != nil {
		way = "no allowed route"
	}
	return []property{
		text("kind", d.Kind.String()),
		text("room", room),
		text("wall", wall),
		text("cable", d.Cable.ID),
		text("cables", fmt.Sprint(d.Count)),
		text("end", d.End.String()),
		text("connector", d.Connector.ID),
		text("exposure", d.Exposure.String()),
		text("class", class),
		text("watts", watts),
		{"may move", d.Shift, h.Units.Format(d.Shift)},
		text("note", d.Note),
		text("for later", yesNo(d.Later)),
		text("route", way),
	}
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// routes compares the routes of the drops that are in both plans and have one
// in both.
func (d *Difference) routes() {
	a, b := d.Plans[0], d.Plans[1]
	for _, in := range pairs(tags(a), tags(b), compareTags) {
		if howOf(in) != Changed {
			continue
		}
		r, s := &a.Routes[in[0]], &b.Routes[in[1]]
		if r.Blocked != nil || s.Blocked != nil {
			continue
		}
		x := Route{
			Tag: a.Job.Drops[r.Drop].Tag, In: in, Other: !slices.Equal(r.Points, s.Points),
			Cut: [2]measure.Length{r.Lengths.Cut, s.Lengths.Cut}, Bends: [2]int{r.Bends, s.Bends},
		}
		if x.Other {
			x.Only = [2][]int{legsOnlyIn(r, s), legsOnlyIn(s, r)}
		}
		if x.Other || x.Cut[0] != x.Cut[1] {
			d.Routes = append(d.Routes, x)
		}
	}
}

// legsOnlyIn lists the legs of r that s has not.
func legsOnlyIn(r, s *route.Route) []int {
	var out []int
	for i := range r.Legs {
		l := &r.Legs[i]
		if !slices.ContainsFunc(s.Legs, func(o route.Leg) bool { return o.Kind == l.Kind && o.From == l.From && o.To == l.To }) {
			out = append(out, i)
		}
	}
	return out
}
