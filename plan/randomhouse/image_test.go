package randomhouse

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// An image holds a loaded job against the one it is the image of.
type image struct {
	t      *testing.T
	sym    geom.Symmetry
	of, is *plan.Job
}

// TestImages loads sketches as they are and in a symmetry: whatever is read
// from the image must be, to the nanometre, what the symmetry makes of the
// same thing in the sketch.
func TestImages(t *testing.T) {
	for seed := range uint64(120) {
		levels := seed%2 == 1
		plain := Generate(seed, Options{Levels: levels})
		of := load(t, plain)
		sym := geom.Symmetry(1 + seed%7)
		moved := Generate(seed, Options{Levels: levels, Symmetry: sym})
		if d := cmp.Diff(plain.Model, moved.Model, cmp.AllowUnexported(Wall{}, stretch{})); d != "" {
			t.Fatalf("seed %d: another model in symmetry %d:\n%s", seed, sym, d)
		}
		im := image{t, sym, of, load(t, moved)}
		for i := range of.House.Walls {
			im.wall(&of.House.Walls[i], &im.is.House.Walls[i])
		}
		im.places()
		im.attic()
		if t.Failed() {
			t.Fatalf("seed %d, symmetry %d", seed, sym)
		}
	}
}

func (im image) same(what string, want, got any) {
	im.t.Helper()
	if d := cmp.Diff(want, got); d != "" {
		im.t.Errorf("%s:\n%s", what, d)
	}
}

func (im image) side(s plan.Side) plan.Side {
	if im.sym.Mirrors() {
		return s.Opposite()
	}
	return s
}

// wall compares two walls, which keep their starts, so that distances along
// them stay.
func (im image) wall(p, q *plan.Wall) {
	s := im.sym
	im.same("wall "+p.ID,
		[]any{p.ID, s.Rect(p.Body), s.Rect(p.Frame), s.Apply(p.A), s.Apply(p.B), p.Gable},
		[]any{q.ID, q.Body, q.Frame, q.A, q.B, q.Gable})
	if p.Exterior {
		im.same("outside of "+p.ID, im.side(p.Out), q.Out)
	}
	for k, o := range p.Openings {
		r := q.Openings[k]
		im.same("opening "+o.ID, []any{o.Start, o.End, o.Sill, o.Head, o.HingeEnd}, []any{r.Start, r.End, r.Sill, r.Head, r.HingeEnd})
		if o.Kind == plan.Door {
			im.same("swing of "+o.ID, im.side(o.Swing), r.Swing)
		}
	}
	for k, d := range p.Devices {
		e := q.Devices[k]
		im.same("device "+d.ID, []any{d.At, d.Height, im.side(d.Side)}, []any{e.At, e.Height, e.Side})
	}
}

// places compares the rooms, the closet and the drops.
func (im image) places() {
	s := im.sym
	for i, r := range im.of.House.Rooms {
		im.same("room "+r.ID, s.Rect(r.Bounds), im.is.House.Rooms[i].Bounds)
	}
	c, d := &im.of.Closet, &im.is.Closet
	im.same("closet", []any{s.Apply(c.Point), c.Spot.Wall, c.Spot.At, c.Room}, []any{d.Point, d.Spot.Wall, d.Spot.At, d.Room})
	for i, d := range im.of.Drops {
		e := im.is.Drops[i]
		im.same("drop "+d.Tag,
			[]any{s.Apply(d.Point), d.Spot.Wall, d.Spot.At, d.Spot.Height, d.Room, d.Eave},
			[]any{e.Point, e.Spot.Wall, e.Spot.At, e.Spot.Height, e.Room, e.Eave})
		if d.Kind == plan.WallPlate {
			im.same("side of "+d.Tag, im.side(d.Spot.Side), e.Spot.Side)
		}
	}
}

// attic compares what is over the ceilings, and the roof at some points of
// it.
func (im image) attic() {
	s, p, q := im.sym, im.of.House, im.is.House
	im.same("hatch", s.Rect(p.Hatches[0].Area), q.Hatches[0].Area)
	for i := range p.Obstacles {
		im.same("obstacle", s.Rect(p.Obstacles[i].Area), q.Obstacles[i].Area)
	}
	for i := range p.PowerRuns {
		for k, at := range p.PowerRuns[i].Path {
			im.same("power run", s.Apply(at), q.PowerRuns[i].Path[k])
		}
	}
	for i, sp := range p.Spaces {
		im.same("space "+sp.ID, []any{s.Rect(sp.Bounds()), sp.Kind, sp.Base, len(sp.Outlines)}, []any{q.Spaces[i].Bounds(), q.Spaces[i].Kind, q.Spaces[i].Base, len(q.Spaces[i].Outlines)})
	}
	for i, r := range p.Roofs {
		o, t := r.Outline.Bounds(), q.Roofs[i]
		at := o.Min.Add(geom.Point{X: 3 * measure.Foot, Y: 2 * measure.Foot})
		im.same("roof "+r.ID, []any{s.Rect(o), r.Surface.UnderRafter(at), r.Surface.RidgeHeight()},
			[]any{t.Outline.Bounds(), t.Surface.UnderRafter(s.Apply(at)), t.Surface.RidgeHeight()})
	}
	im.same("first rafters", s.Apply(geom.Point{X: p.Roof.FirstX, Y: p.Roof.FirstY}), geom.Point{X: q.Roof.FirstX, Y: q.Roof.FirstY})
	for _, corner := range p.PlateLine {
		at := corner.Add(geom.Point{X: 3 * measure.Foot, Y: 2 * measure.Foot})
		im.same("roof", p.Roof.Surface.UnderRafter(at), q.Roof.Surface.UnderRafter(s.Apply(at)))
	}
}

// TestShuffle loads the same sketches with their tables in another order.
func TestShuffle(t *testing.T) {
	changed := 0
	for seed := range uint64(60) {
		levels := seed%2 == 1
		plain, mixed := Generate(seed, Options{Levels: levels}), Generate(seed, Options{Levels: levels, Shuffle: seed + 1})
		if plain.House != mixed.House {
			changed++
		}
		if d := cmp.Diff(things(load(t, plain)), things(load(t, mixed))); d != "" {
			t.Fatalf("seed %d:\n%s", seed, d)
		}
	}
	if changed < 50 {
		t.Errorf("only %d of 60 files came in another order", changed)
	}
}

// things are places of a job by their names.
func things(j *plan.Job) map[string]any {
	out := map[string]any{}
	for _, w := range j.House.Walls {
		out["wall "+w.ID] = []any{w.Body, w.Frame, w.A, w.B, len(w.Openings), len(w.Devices)}
	}
	for _, r := range j.House.Rooms {
		out["room "+r.ID] = r.Bounds
	}
	for _, s := range j.House.Spaces {
		out["space "+s.ID] = []any{s.Kind, s.Outlines, s.Holes, s.Base, s.Lift}
	}
	for _, d := range j.Drops {
		out["drop "+d.Tag] = []any{d.Point, d.Spot.At, d.Spot.Height, d.Count}
	}
	return out
}

// TestPromises holds many models against what Options and the package say.
func TestPromises(t *testing.T) {
	for seed := range uint64(300) {
		sk := Generate(seed, Options{Drops: 10})
		if again := Generate(seed, Options{Drops: 10}); again.House != sk.House || again.Job != sk.Job {
			t.Fatalf("seed %d: other bytes the second time", seed)
		}
		if n := len(sk.Model.Drops); n != 10 {
			t.Errorf("seed %d: %d drops; want 10", seed, n)
		}
		for i := range sk.Model.Rooms {
			if !sk.Model.hasDoor(i) {
				t.Errorf("seed %d: room %s has no door", seed, sk.Model.Rooms[i].ID)
			}
		}
	}
	one, ten := Generate(1, Options{}).Model.Outline.SquareMetres(), Generate(1, Options{Area: 10}).Model.Outline.SquareMetres()
	if ten < 8*one || ten > 12*one {
		t.Errorf("ten times %.0f m² is %.0f m²", one, ten)
	}
}

// hasDoor reports whether one can walk into a room.
func (m *Model) hasDoor(room int) bool {
	r := &m.Rooms[room]
	for _, o := range m.Openings {
		mid := m.Walls[o.Wall].PointAt(o.At + o.Width/2)
		for k, a := range r.Outline {
			b := r.Outline[(k+1)%len(r.Outline)]
			if o.Kind != "window" && r.Walls[k] == o.Wall && (geom.Rect{Min: a, Max: b}).Canon().Contains(mid) {
				return true
			}
		}
	}
	return false
}
