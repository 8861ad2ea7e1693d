package fix

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
	"topplate/route"
	"topplate/route/tape"
)

func sample(t testing.TB, name string) *route.Result {
	t.Helper()
	job, list := plan.LoadJob("../../samples/"+name+"/job.toml", source.ReadFile)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatalf("%s does not load", name)
	}
	return solved(t, job)
}

// Every hole of both samples is found from below, and those that a hand gets to
// from above, too; the two tapes and the side lead back to it.
func TestSamples(t *testing.T) {
	for name, want := range map[string]int{"corner-house": 9, "long-roof": 7} {
		res := sample(t, name)
		holes := Holes(res)
		if len(holes) != want {
			t.Errorf("%s: %d holes, want %d", name, len(holes), want)
		}
		for i := range holes {
			h := &holes[i]
			checkHole(t, name, res, h)
			if h.Below.Text == "" || h.Member == "" {
				t.Errorf("%s: %s has no words", name, h.ID)
			}
			for _, b := range h.Bores {
				if b.Bit.Index < 0 || !b.Own {
					t.Errorf("%s: %s: no bit for %+v", name, h.ID, b)
				}
			}
		}
	}
}

// The samples' files say where some places were wished, from faces of the
// rooms; what was not moved comes back as it was written.
func TestSamplesAsWished(t *testing.T) {
	corner, long := Holes(sample(t, "corner-house")), Holes(sample(t, "long-roof"))
	for _, tt := range []struct {
		h    *Hole
		want string
	}{
		{find(t, corner, route.CeilingArc, "Hall"), "3ft 6in from wall hall-east"},
		{find(t, corner, route.CeilingArc, "Living"), "6ft 6in from wall spine"},
		{find(t, long, route.CeilingArc, "Laundry"), "850 mm from wall study-east, 400 mm from wall hall-south"},
		{find(t, long, route.CeilingArc, "Living"), "2.600 m from wall living-west, 4.200 m from wall south"},
		{find(t, long, route.SoffitArc, "deck-vents"), "4.400 m from the left corner, 225 mm out"},
		{find(t, long, route.GableArc, "west"), "outside, facing wall west: 2.600 m from the left corner"},
		{find(t, corner, route.SoffitArc, "porch"), "8in out from its face"},
	} {
		if !strings.Contains(tt.h.Below.Text, tt.want) {
			t.Errorf("%q, want %q", tt.h.Below.Text, tt.want)
		}
	}
}

// From attic to attic in the split level, by hand: the higher attic's plates are 8 ft
// 1/2 in over the bedrooms' floor, and its joists 5-1/2 in deep, so that the hole is 2-3/4 in
// over them; the lower attic's are 4 ft 4 in lower: 52 + 2-3/4 - 5-1/2 is 49-1/4 in over
// its joists.
func TestFromAtticToAttic(t *testing.T) {
	res := sample(t, "split-level")
	h := find(t, Holes(res), route.PassArc, "u-parting")
	bedrooms := res.Job.House.Levels[h.Level]
	if h.At.Z-bedrooms.Floor != in(96*8+4+22) || h.Below.Room >= 0 || !strings.Contains(h.Below.Text, "from no room") {
		t.Errorf("%v over the floor, %+v", h.At.Z-bedrooms.Floor, h.Below)
	}
	for _, tt := range []struct {
		a           *Above
		space, want string
	}{{&h.Above, "high-attic", "2-3/4in over their undersides"}, {h.Far, "low-attic", "its middle 4ft 1-1/4in over the joists' tops"}} {
		if res.Job.House.Spaces[tt.a.Space].ID != tt.space || !strings.Contains(tt.a.Height, tt.want) || !tt.a.Reached || tt.a.Method == ByNothing || tt.a.Hatch < 0 {
			t.Errorf("in %s: %+v", tt.space, tt.a)
		}
	}
}

// checkHole holds a hole against its house, by other means than it was made.
func checkHole(t *testing.T, name string, res *route.Result, h *Hole) {
	t.Helper()
	fail := func(format string, a ...any) {
		t.Helper()
		t.Errorf(name+": "+h.ID+" in "+h.Member+": "+format, a...)
	}
	checkBelow(fail, res.Job.House, h)
	checkBores(fail, res, h)
	checkAbove(fail, res, h)
	if h.Above.Fix != nil && h.Above.Fix.Best != nil {
		checkTapes(fail, res.Job.House, h)
	}
	if h.Above.Faces != nil {
		checkFaces(fail, res.Job.House, h)
	}
}

type failer func(format string, a ...any)

// checkBelow finds the nearest corner by the outlines of the room or of the
// house, which come from the walls as areas, not one by one.
func checkBelow(fail failer, house *plan.House, h *Hole) {
	b := &h.Below
	for _, d := range b.From {
		if d.Length < 0 {
			fail("a distance of %v", d.Length)
		}
	}
	outlines := []geom.Polygon{house.Levels[h.Level].OutsideOf}
	if b.Room >= 0 {
		outlines = append([]geom.Polygon{house.Rooms[b.Room].Outline}, house.Rooms[b.Room].Holes...)
	}
	if h.Wall < 0 {
		if len(b.From) != 2 {
			fail("found by %d distances", len(b.From))
			return
		}
		for axis := range 2 {
			if got, want := b.From[axis].Length, nearestFace(outlines, flat(h.At), axis == 0); got != want {
				fail("%v from a wall, want %v", got, want)
			}
		}
		return
	}
	w := &house.Walls[h.Wall]
	if b.Room < 0 && h.Kind != route.SoffitArc && h.Kind != route.GableArc {
		return // no outline is known
	}
	face := w.FacePoint(w.Along(flat(h.At)), b.Side)
	for _, o := range outlines {
		for i, p := range o {
			q := o[(i+1)%len(o)]
			if d := geom.Dist(p, face) + geom.Dist(face, q) - geom.Dist(p, q); d != 0 {
				continue
			}
			if got, want := b.From[0].Length, min(geom.Dist(p, face), geom.Dist(face, q)); got != want {
				fail("%v from the corner, want %v", got, want)
			}
			if geom.Dist(b.From[0].At, face) != b.From[0].Length || b.From[0].At != p && b.From[0].At != q {
				fail("the corner is said to be at %v, not %v or %v", b.From[0].At, p, q)
			}
			return
		}
	}
	fail("%v is on no outline", face)
}

// nearestFace is the distance to the nearest edge across one axis.
func nearestFace(outlines []geom.Polygon, at geom.Point, alongX bool) measure.Length {
	best := measure.Length(math.MaxInt64)
	for _, o := range outlines {
		for i, p := range o {
			q := o[(i+1)%len(o)]
			if !alongX {
				p, q = geom.Point{X: p.Y, Y: p.X}, geom.Point{X: q.Y, Y: q.X}
			}
			a := at
			if !alongX {
				a = geom.Point{X: at.Y, Y: at.X}
			}
			if p.X == q.X && min(p.Y, q.Y) <= a.Y && a.Y <= max(p.Y, q.Y) {
				best = min(best, max(p.X-a.X, a.X-p.X))
			}
		}
	}
	return best
}

// checkBores holds the bores against the rules, the bits and each other.
func checkBores(fail failer, res *route.Result, h *Hole) {
	cables := 0
	for i := range h.Bores {
		b := &h.Bores[i]
		cables += b.Cables
		if b.Diameter < b.Bundle || b.Diameter > h.Allowed.Largest {
			fail("a hole of %v for a bundle of %v, %v allowed", b.Diameter, b.Bundle, h.Allowed.Largest)
		}
		if i > 0 && b.Offset-h.Bores[i-1].Offset != (b.Diameter+h.Bores[i-1].Diameter)/2+measure.Inch/4 {
			fail("bores %v apart", b.Offset-h.Bores[i-1].Offset)
		}
		if b.Bit.Index < 0 {
			continue
		}
		bit := res.Job.Tools.Bits[b.Bit.Index]
		reach := bit.Reach
		if b.Bit.Extended {
			reach += res.Job.Tools.Extension
		}
		if bit.Diameter != b.Diameter || reach != b.Bit.Reach || reach < b.Bit.Need || bit.Flexible != b.Bit.Flexible ||
			b.Bit.Way == FromBox && !bit.Flexible || b.Bit.Extended && (!bit.Flexible || bit.Reach >= b.Bit.Need) {
			fail("bit %+v is %+v", b.Bit, bit)
		}
	}
	if cables != h.Cables && h.largest() > 0 {
		fail("%d of %d cables", cables, h.Cables)
	}
	if h.Opens >= 0 && h.Kind != route.SoffitArc {
		fail("opens")
	}
}

// checkAbove holds the way and the joists against the house.
func checkAbove(fail failer, res *route.Result, h *Hole) {
	a := &h.Above
	if a.Clear < 0 || a.Error < 0 || a.Buried < 0 || a.Tolerance.Along < 0 || a.Tolerance.Across < 0 {
		fail("negative: %+v", a)
	}
	byHand := h.Space >= 0 && res.Graph.Reaches[h.Space].ZoneOver(flat(h.At)) <= route.Arm && h.Kind != route.SoffitArc && h.Kind != route.StudArc
	if a.Reached != byHand || a.Reached == (a.Why != "") || len(a.Text) == 0 {
		fail("reached %v, want %v: %q", a.Reached, byHand, a.Text)
	}
	if !a.Reached {
		return
	}
	space := res.Job.House.Spaces[h.Space]
	if a.Room < 0 {
		checkWay(fail, res.Job.House, h)
	} else if space.Kind != plan.FloorSpace || !res.Job.House.Rooms[a.Room].Open || len(a.Way) > 0 || a.Hatch >= 0 {
		fail("worked on from room %d, by hatch %d", a.Room, a.Hatch)
	}
	j := a.Joists
	if j == nil {
		return
	}
	u, v := j.Mark.At.X-h.At.X, j.Mark.At.Y-h.At.Y
	if !space.AlongY {
		u, v = v, u
	}
	spacing := space.Spacing
	across := j.Offset
	if j.Joists > 0 {
		across += j.Start + measure.Length(j.Joists-1)*spacing
	}
	if p := stepTo(stepTo(j.Mark.At, j.Heading, across), j.AlongHeading, j.Along); p != flat(h.At) {
		fail("the count leads to %v", p)
	}
	if across != max(u, -u) || j.Along != max(v, -v) || j.Offset < 0 || j.Joists > 1 && j.Start > spacing {
		fail("joists %+v for %v across and %v along", j, u, v)
	}
}

// checkWay walks the way back from the hole: it ends in the hatch that it is
// said to begin at.
func checkWay(fail failer, house *plan.House, h *Hole) {
	p := flat(h.At)
	for i := len(h.Above.Way) - 1; i >= 0; i-- {
		s := h.Above.Way[i]
		if s.Length <= 0 || s.Zone > route.Arm {
			fail("step %+v", s)
		}
		p = stepTo(p, opposite(s.Heading), s.Length)
		if !house.Spaces[h.Space].Contains(p) {
			fail("the way leaves the space at %v", p)
		}
	}
	if h.Above.Hatch < 0 || house.Hatches[h.Above.Hatch].Space != h.Space || !house.Hatches[h.Above.Hatch].Area.Contains(p) {
		fail("the way begins at %v, not in hatch %d", p, h.Above.Hatch)
	}
}

// checkTapes crosses the arcs again, and looks along each tape.
func checkTapes(fail failer, house *plan.House, h *Hole) {
	p := h.Above.Fix.Best
	want := flat(h.At)
	cross := func(a, b measure.Length) (geom.Point, bool) {
		left, right, ok := tape.Cross(p.Marks[0].At, p.Marks[1].At, a, b)
		if p.Side == tape.Right {
			left = right
		}
		return left, ok
	}
	sin := math.Sin(p.Cut * math.Pi / 180)
	if got, ok := cross(p.Distance[0].Exact, p.Distance[1].Exact); ok && sin > 0.01 && geom.Dist(got, want) > measure.Micrometre {
		fail("the arcs cross %v away", geom.Dist(got, want))
	}
	// Rounded to the tape's marks, each arc is off by half of one at most, and
	// the crossing by so much over the sine of the cut.
	if got, ok := cross(p.Distance[0].Shown, p.Distance[1].Shown); !p.Weak && (!ok || geom.Dist(got, want).Millimetres() > 25.4/16/sin) {
		fail("as shown the arcs cross %v away, cut %v", geom.Dist(got, want), p.Cut)
	}
	for _, m := range p.Marks {
		for i := range 50 {
			q := geom.Point{X: m.At.X + (want.X-m.At.X)*measure.Length(i)/50, Y: m.At.Y + (want.Y-m.At.Y)*measure.Length(i)/50}
			if space := house.Spaces[h.Space]; !space.Contains(q) {
				fail("the tape from %s leaves the space at %v", m.ID, q)
			}
			if room := h.Above.Room; room >= 0 && house.RoomOn(house.Rooms[room].Level, q) != room {
				fail("the tape from %s leaves the room at %v", m.ID, q)
			}
			for _, o := range house.Obstacles {
				if o.Space != h.Space || h.Above.Room >= 0 || house.Spaces[h.Space].Kind == plan.CrawlSpace {
					continue
				}
				if d := house.Spaces[h.Space].Depth; o.Area.ContainsInside(q) && o.Bottom <= d && d < o.Top {
					fail("the tape from %s goes through %s", m.ID, o.ID)
				}
			}
		}
	}
}

// checkFaces holds distances from walls against the outlines of the room.
func checkFaces(fail failer, house *plan.House, h *Hole) {
	r := &house.Rooms[h.Above.Room]
	outlines := append([]geom.Polygon{r.Outline}, r.Holes...)
	for axis, d := range h.Above.Faces {
		if want := nearestFace(outlines, flat(h.At), axis == 0); d.Length != want || geom.Dist(d.At, flat(h.At)) != d.Length || house.Walls[d.Wall].Level != r.Level {
			fail("%v from the face of wall %s, want %v", d.Length, house.Walls[d.Wall].ID, want)
		}
	}
	if len(h.Above.Faces) != 2 {
		fail("%d faces", len(h.Above.Faces))
	}
}

// Nobody is sent over the tank of the long roof, which stands on the straight
// line from the hatch to H4: there is a way round it.
func TestWayRoundTheTank(t *testing.T) {
	f := newFixer(sample(t, "long-roof"))
	for s := range f.site(0).ways.cost {
		at := f.site(0).ways.at(s)
		on := slices.ContainsFunc(f.house.Obstacles, func(o plan.Obstacle) bool { return o.Area.Contains(at) })
		if f.site(0).ways.cost[s] >= overPrice && !on {
			t.Fatalf("the way to %v leads over an obstacle", at)
		}
	}
	if way := Holes(f.res)[3].Above.Way; len(way) < 3 {
		t.Errorf("the way to H4 is straight: %v", way)
	}
}
