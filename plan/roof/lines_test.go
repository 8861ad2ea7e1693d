package roof

import (
	"cmp"
	"slices"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"

	gocmp "github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func line(kind LineKind, x1, y1, z1, x2, y2, z2 measure.Length) Line {
	return Line{kind, geom.Point3{X: x1, Y: y1, Z: z1}, geom.Point3{X: x2, Y: y2, Z: z2}}
}

// Straight skeletons computed with CGAL (Straight_skeleton_2): the L has the
// interior nodes (2,2) (8,2) (2,8) at height 2; the T has (16,20) and (16,6)
// at 4, (16,5), (5,5) and (25,5) at 5. The node (16,5) lies between two pieces
// of the north wall of the bar, whose planes are one, so no line ends there.
func TestLinesOfPublishedSkeletons(t *testing.T) {
	tests := []struct {
		name    string
		outline geom.Polygon
		want    []Line
	}{
		{"L", ell, []Line{
			line(Ridge, 2, 2, 2, 2, 8, 2),
			line(Ridge, 2, 2, 2, 8, 2, 2),
			line(Hip, 0, 0, 0, 2, 2, 2),
			line(Hip, 0, 10, 0, 2, 8, 2),
			line(Hip, 2, 8, 2, 4, 10, 0),
			line(Hip, 8, 2, 2, 10, 0, 0),
			line(Hip, 8, 2, 2, 10, 4, 0),
			line(Valley, 2, 2, 2, 4, 4, 0),
			line(Eave, 0, 0, 0, 0, 10, 0),
			line(Eave, 0, 0, 0, 10, 0, 0),
			line(Eave, 0, 10, 0, 4, 10, 0),
			line(Eave, 4, 4, 0, 4, 10, 0),
			line(Eave, 4, 4, 0, 10, 4, 0),
			line(Eave, 10, 0, 0, 10, 4, 0),
		}},
		{"T", tee, []Line{
			line(Ridge, 5, 5, 5, 25, 5, 5),
			line(Ridge, 16, 6, 4, 16, 20, 4),
			line(Hip, 0, 0, 0, 5, 5, 5),
			line(Hip, 0, 10, 0, 5, 5, 5),
			line(Hip, 12, 24, 0, 16, 20, 4),
			line(Hip, 16, 20, 4, 20, 24, 0),
			line(Hip, 25, 5, 5, 30, 0, 0),
			line(Hip, 25, 5, 5, 30, 10, 0),
			line(Valley, 12, 10, 0, 16, 6, 4),
			line(Valley, 16, 6, 4, 20, 10, 0),
			line(Eave, 0, 0, 0, 0, 10, 0),
			line(Eave, 0, 0, 0, 30, 0, 0),
			line(Eave, 0, 10, 0, 12, 10, 0),
			line(Eave, 12, 10, 0, 12, 24, 0),
			line(Eave, 12, 24, 0, 20, 24, 0),
			line(Eave, 20, 10, 0, 20, 24, 0),
			line(Eave, 20, 10, 0, 30, 10, 0),
			line(Eave, 30, 0, 0, 30, 10, 0),
		}},
	}
	for _, tt := range tests {
		got := mustNew(t, Spec{Outline: tt.outline, Pitch: level}).Lines()
		if diff := gocmp.Diff(tt.want, got); diff != "" {
			t.Errorf("%s (-want +got)\n%s", tt.name, diff)
		}
	}
}

// Worked out by hand on squared paper, the overhang one unit.
func TestLinesOfGables(t *testing.T) {
	tests := []struct {
		name    string
		outline geom.Polygon
		gables  []int
		want    []Line
	}{
		{"L, both wings gabled", ell, []int{1, 4}, []Line{
			line(Ridge, 2, 2, 2, 2, 11, 2),
			line(Ridge, 2, 2, 2, 11, 2, 2),
			line(Hip, -1, -1, -1, 2, 2, 2),
			line(Valley, 2, 2, 2, 5, 5, -1),
			line(Eave, -1, -1, -1, -1, 11, -1),
			line(Eave, -1, -1, -1, 11, -1, -1),
			line(Eave, 5, 5, -1, 5, 11, -1),
			line(Eave, 5, 5, -1, 11, 5, -1),
			line(Rake, -1, 11, -1, 2, 11, 2),
			line(Rake, 2, 11, 2, 5, 11, -1),
			line(Rake, 11, -1, -1, 11, 2, 2),
			line(Rake, 11, 2, 2, 11, 5, -1),
		}},
		{"shed", box, []int{1, 2, 3}, []Line{
			line(Eave, -1, -1, -1, 41, -1, -1),
			line(Rake, -1, -1, -1, -1, 25, 25),
			line(Rake, -1, 25, 25, 41, 25, 25),
			line(Rake, 41, -1, -1, 41, 25, 25),
		}},
		{"front gable", frontGable, []int{1}, []Line{
			line(Ridge, 12, 12, 12, 28, 12, 12),
			line(Ridge, 20, -1, 6, 20, 6, 6),
			line(Hip, -1, -1, -1, 12, 12, 12),
			line(Hip, -1, 25, -1, 12, 12, 12),
			line(Hip, 28, 12, 12, 41, -1, -1),
			line(Hip, 28, 12, 12, 41, 25, -1),
			line(Valley, 13, -1, -1, 20, 6, 6),
			line(Valley, 20, 6, 6, 27, -1, -1),
			line(Eave, -1, -1, -1, -1, 25, -1),
			line(Eave, -1, -1, -1, 13, -1, -1),
			line(Eave, -1, 25, -1, 41, 25, -1),
			line(Eave, 27, -1, -1, 41, -1, -1),
			line(Eave, 41, -1, -1, 41, 25, -1),
			line(Rake, 13, -1, -1, 20, -1, 6),
			line(Rake, 20, -1, 6, 27, -1, -1),
		}},
	}
	for _, tt := range tests {
		r := mustNew(t, Spec{Outline: tt.outline, Gable: gablesAt(len(tt.outline), tt.gables...), Pitch: level, Overhang: 1})
		if diff := gocmp.Diff(tt.want, r.Lines()); diff != "" {
			t.Errorf("%s (-want +got)\n%s", tt.name, diff)
		}
	}
}

// A house 25 nm deep has its ridge 12-1/2 nm from the eave.
func TestLinesRoundHalves(t *testing.T) {
	r := mustNew(t, Spec{Outline: geom.Polygon{{}, {X: 100}, {X: 100, Y: 25}, {Y: 25}}, Pitch: Pitch{1, 5}})
	if got, want := r.Lines()[0], line(Ridge, 13, 13, 3, 88, 13, 3); got != want {
		t.Errorf("the ridge is %v, want %v", got, want)
	}
	if got := r.RidgeHeight(); got != 3 {
		t.Errorf("RidgeHeight() = %d, want 2.5 rounded up", got)
	}
}

// The hips of a roof 1 nm wide meet at half a nanometre, which is rounded to
// its north-east corner: nothing is left of the hip from there.
func TestLinesShorterThanANanometre(t *testing.T) {
	r := mustNew(t, Spec{Outline: geom.Polygon{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}, Pitch: level})
	want := []Line{line(Hip, 0, 0, 0, 1, 1, 1), line(Hip, 0, 1, 0, 1, 1, 1), line(Hip, 1, 0, 0, 1, 1, 1)}
	if diff := gocmp.Diff(want, r.Lines()[:3]); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if got := r.Lines()[3].Kind; got != Eave {
		t.Errorf("there is one more %v", got)
	}
}

// A lower roof whose gable overhang ends right under a ridge leaves the ridge
// whole. No simple outline seems to give such blocks.
func TestRidgeOverTheEndOfAnotherRoof(t *testing.T) {
	r := &Roof{spec: Spec{Pitch: level, Overhang: 2}}
	for _, area := range []geom.Rect{{Max: geom.Point{X: 24, Y: 100}}, {Min: geom.Point{Y: 20}, Max: geom.Point{X: 10, Y: 60}}} {
		r.blocks = append(r.blocks, block{area: area, feet: area})
	}
	r.blocks[1].open[east] = true
	want := []Line{line(Ridge, 12, 12, 12, 12, 88, 12)}
	if diff := gocmp.Diff(want, r.creases(plane{west, 0}, plane{east, 24})); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// A bit is a short piece of a line in plan, its lesser end first.
type bit struct{ a, b geom.Point }

func newBit(a, b geom.Point) bit {
	if cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) > 0 {
		a, b = b, a
	}
	return bit{a, b}
}

// bits cuts a line into pieces of half a unit along the axes and of a quarter
// aslant.
func (l Line) bits(t *rapid.T, found map[bit]LineKind) {
	at, to := geom.Point{X: l.A.X, Y: l.A.Y}, geom.Point{X: l.B.X, Y: l.B.Y}
	d := to.Sub(at)
	length := max(d.X, d.Y, -d.Y)
	step := measure.Length(unit / 2)
	if d.X != 0 && d.Y != 0 {
		step = unit / 4
	}
	for ; at != to; length -= step {
		if length <= 0 {
			t.Fatalf("%v is not on the grid", l)
		}
		next := at.Add(geom.Point{X: d.X / max(d.X, d.Y, -d.Y) * step, Y: d.Y / max(d.X, d.Y, -d.Y) * step})
		b := newBit(at, next)
		if kind, twice := found[b]; twice {
			t.Fatalf("%v lies on a %v", l, kind)
		}
		found[b] = l.Kind
		at = next
	}
}

// A facet is a triangle of half a cell over which the surface is one plane:
// all lines of a roof on the grid run along its sides.
type facet struct{ centre, a, b geom.Point }

// facets yields the four triangles of the half cell at p.
func facets(p geom.Point) [4]facet {
	at := func(x, y measure.Length) geom.Point { return p.Add(geom.Point{X: x, Y: y}) }
	return [4]facet{
		{at(3, 1), at(0, 0), at(6, 0)},
		{at(5, 3), at(6, 0), at(6, 6)},
		{at(3, 5), at(6, 6), at(0, 6)},
		{at(1, 3), at(0, 6), at(0, 0)},
	}
}

// expected finds the lines of the roof by comparing the planes over every two
// facets that share a side.
func (o *oracle) expected(around geom.Rect) map[bit]LineKind {
	beside := map[bit][]geom.Point{}
	for x := around.Min.X; x < around.Max.X; x += unit / 2 {
		for y := around.Min.Y; y < around.Max.Y; y += unit / 2 {
			p := geom.Point{X: x, Y: y}
			middle := p.Add(geom.Point{X: 3, Y: 3})
			for _, f := range facets(p) {
				for _, side := range []bit{newBit(f.a, f.b), newBit(f.a, middle), newBit(f.b, middle)} {
					beside[side] = append(beside[side], f.centre)
				}
			}
		}
	}
	found := map[bit]LineKind{}
	for side, centres := range beside {
		if len(centres) == 2 {
			if kind, ok := o.between(side, centres[0], centres[1]); ok {
				found[side] = kind
			}
		}
	}
	return found
}

// between says which line, if any, runs between two points.
func (o *oracle) between(side bit, a, b geom.Point) (kind LineKind, ok bool) {
	f, roofA := o.at(a, o.overhang, every)
	g, roofB := o.at(b, o.overhang, every)
	switch {
	case !roofA && !roofB || roofA && roofB && f.plane == g.plane:
		return 0, false
	case roofA && roofB && (f.at(side.a) != g.at(side.a) || f.at(side.b) != g.at(side.b)):
		return Rake, true
	case !roofA:
		f = g
		fallthrough
	case !roofB:
		if f.at(side.a) == -o.overhang && f.at(side.b) == -o.overhang {
			return Eave, true
		}
		return Rake, true
	case f.at(b) < g.height:
		return Valley, true
	case f.side.alongX() == g.side.alongX():
		return Ridge, true
	}
	return Hip, true
}

// at is the height of the plane over any point.
func (p plane) at(q geom.Point) measure.Length {
	foot := geom.Point{X: p.foot, Y: p.foot}
	return p.side.distance(geom.Rect{Min: foot, Max: foot}, q)
}

// Every line that the definition of the surface has is drawn, once, as what it
// is, and nothing else is.
func TestLinesAreTheFoldsOfTheSurface(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		got := map[bit]LineKind{}
		for _, l := range mustNew(t, spec).Lines() {
			l.bits(t, got)
		}
		want := newOracle(spec).expected(spec.Outline.Bounds().Outset(2 * unit))
		if diff := gocmp.Diff(want, got, gocmp.AllowUnexported(bit{})); diff != "" {
			t.Fatalf("%v, gables %v (-want +got)\n%s", spec.Outline, spec.Gable, diff)
		}
	})
}

// A line is as high as the surface from just past one end to just before the
// other (an end may be under a rake), and none could be longer.
func TestLinesLieOnTheSurface(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		o := newOracle(spec)
		lines := mustNew(t, spec).Lines()
		for _, l := range lines {
			d := l.heading()
			for _, p := range []geom.Point3{
				{X: l.A.X + d.X, Y: l.A.Y + d.Y, Z: l.A.Z + d.Z},
				{X: l.B.X - d.X, Y: l.B.Y - d.Y, Z: l.B.Z - d.Z},
			} {
				if found, _ := o.at(geom.Point{X: p.X, Y: p.Y}, spec.Overhang, every); found.height != p.Z {
					t.Fatalf("%v: at %v the surface is %d", l, p, found.height)
				}
			}
			for _, m := range lines {
				if l.Kind == m.Kind && l.Kind < Eave && l.B == m.A && d == m.heading() {
					t.Fatalf("%v and %v are one line", l, m)
				}
			}
		}
	})
}

// heading is the step to the next whole point of a line, at a pitch of 1.
func (l Line) heading() geom.Point3 {
	step := func(a, b measure.Length) measure.Length { return measure.Length(cmp.Compare(b, a)) }
	return geom.Point3{X: step(l.A.X, l.B.X), Y: step(l.A.Y, l.B.Y), Z: step(l.A.Z, l.B.Z)}
}

func TestLinesUnderSymmetries(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		lines := mustNew(t, spec).Lines()
		for g := range geom.Symmetries {
			want := make([]Line, len(lines))
			for i, l := range lines {
				want[i] = l.moved(g)
			}
			slices.SortFunc(want, func(a, b Line) int {
				return cmp.Or(cmp.Compare(a.Kind, b.Kind), compare(a.A, b.A), compare(a.B, b.B))
			})
			if diff := gocmp.Diff(want, mustNew(t, moved(spec, g)).Lines()); diff != "" {
				t.Fatalf("symmetry %d (-want +got)\n%s", g, diff)
			}
		}
	})
}

func (l Line) moved(g geom.Symmetry) Line {
	move := func(p geom.Point3) geom.Point3 {
		q := g.Apply(geom.Point{X: p.X, Y: p.Y})
		return geom.Point3{X: q.X, Y: q.Y, Z: p.Z}
	}
	l.A, l.B = move(l.A), move(l.B)
	if compare(l.A, l.B) > 0 {
		l.A, l.B = l.B, l.A
	}
	return l
}

func TestLineKindNames(t *testing.T) {
	var names []string
	for k := Ridge; k <= Rake; k++ {
		names = append(names, k.String())
	}
	if diff := gocmp.Diff([]string{"ridge", "hip", "valley", "eave", "rake"}, names); diff != "" {
		t.Error(diff)
	}
}

func BenchmarkLines(b *testing.B) {
	r := benchmarkRoof(b)
	for b.Loop() {
		if len(r.Lines()) == 0 {
			b.Fatal("no lines")
		}
	}
}
