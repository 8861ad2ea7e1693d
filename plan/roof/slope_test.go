package roof

import (
	"slices"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"

	"pgregory.net/rapid"
)

var (
	toEast, toWest   = geom.Point{X: 1}, geom.Point{X: -1}
	toNorth, toSouth = geom.Point{Y: 1}, geom.Point{Y: -1}
)

var (
	// The box from another first vertex.
	turnedBox = geom.Polygon{{X: 40, Y: 0}, {X: 40, Y: 24}, {X: 0, Y: 24}, {X: 0, Y: 0}}
	// The split L, twice as large, from where its west gable begins.
	splitEll2 = geom.Polygon{
		{X: 0, Y: 8},
		{X: 0, Y: 0},
		{X: 20, Y: 0},
		{X: 20, Y: 8},
		{X: 8, Y: 8},
		{X: 8, Y: 20},
		{X: 0, Y: 20},
	}
)

func TestSlopeByHand(t *testing.T) {
	tests := []struct {
		name    string
		outline geom.Polygon
		gables  []int
		x, y    measure.Length
		want    Slope
	}{
		{"south plane", box, nil, 20, 3, Slope{toNorth, 0, 0}},
		{"east plane", box, nil, 38, 11, Slope{toWest, 40, 1}},
		{"north plane", box, nil, 20, 23, Slope{toSouth, 24, 2}},
		{"west plane", box, nil, 1, 12, Slope{toEast, 0, 3}},
		{"hip: the longer edge", box, nil, 3, 3, Slope{toNorth, 0, 0}},
		{"hip: the longer edge, not the first", turnedBox, nil, 37, 3, Slope{toNorth, 0, 3}},
		{"ridge: the first of equal edges", box, nil, 20, 12, Slope{toNorth, 0, 0}},
		{"end of the ridge", box, nil, 12, 12, Slope{toNorth, 0, 0}},
		{"eave overhang", box, nil, 20, -1, Slope{toNorth, 0, 0}},
		{"corner of the overhang", box, nil, 42, 25, Slope{toWest, 40, 1}},
		{"gable", box, []int{1, 3}, 1, 3, Slope{toNorth, 0, 0}},
		{"rake overhang", box, []int{1, 3}, 41, 23, Slope{toSouth, 24, 2}},
		{"shed", box, []int{1, 2, 3}, 20, 24, Slope{toNorth, 0, 0}},
		// The bar's north plane comes down on two edges, west and east of the
		// stem.
		{"T, west of the stem", tee, nil, 14, 9, Slope{toEast, 12, 5}},
		{"T, over the west edge", tee, nil, 10, 8, Slope{toSouth, 10, 6}},
		{"T, over the east edge", tee, nil, 25, 8, Slope{toSouth, 10, 2}},
		{"T, nearer to the west edge", tee, nil, 14, 7, Slope{toSouth, 10, 6}},
		{"T, nearer to the east edge", tee, nil, 18, 7, Slope{toSouth, 10, 2}},
		{"T, ridge below the stem: square across first", tee, nil, 16, 5, Slope{toNorth, 0, 0}},
		{"T, valley: the longer edge", tee, nil, 14, 8, Slope{toEast, 12, 5}},
		// The wing's west plane comes down on the rest of the west wall, though
		// the gable is nearer.
		{"an eave before a gable", splitEll2, []int{0, 2, 5}, 3, 7, Slope{toEast, 0, 6}},
		// The stem's hip on the bar's south eave.
		{"wide stem, its hip", wideTee, nil, 15, 6, Slope{toNorth, 0, 0}},
		{"wide stem, under its ridge", wideTee, nil, 14, 9, Slope{toEast, 8, 5}},
		{"cross gable, west side", frontGable, []int{1}, 17, 1, Slope{toEast, 14, -1}},
		{"cross gable, its ridge", frontGable, []int{1}, 20, 1, Slope{toEast, 14, -1}},
		{"behind the cross gable", frontGable, []int{1}, 18, 6, Slope{toNorth, 0, 0}},
		{"beside the cross gable", frontGable, []int{1}, 10, 3, Slope{toNorth, 0, 0}},
		// Its planes come down on no edge, so it is the last choice.
		{"valley of the cross gable", frontGable, []int{1}, 15, 1, Slope{toNorth, 0, 0}},
	}
	for _, tt := range tests {
		r := mustNew(t, Spec{Outline: tt.outline, Gable: gablesAt(len(tt.outline), tt.gables...), Pitch: level, Overhang: 2})
		got, ok := r.Slope(geom.Point{X: tt.x, Y: tt.y})
		if got != tt.want || !ok {
			t.Errorf("%s: Slope(%d, %d) = %v, %v; want %v", tt.name, tt.x, tt.y, got, ok, tt.want)
		}
		if _, ok := r.Slope(geom.Point{X: -3, Y: 3}); ok {
			t.Errorf("%s: there is a slope beyond the overhang", tt.name)
		}
	}
}

// Over the middle of a facet one plane alone is the surface.
func TestSlopeIsThePlaneOfTheSurface(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		r, o := mustNew(t, spec), newOracle(spec)
		grid := spec.Outline.Bounds().Outset(2 * unit)
		for range 20 {
			corner := geom.Point{
				X: grid.Min.X + unit/2*measure.Length(rapid.IntRange(0, int(grid.Width()*2/unit)).Draw(t, "x")),
				Y: grid.Min.Y + unit/2*measure.Length(rapid.IntRange(0, int(grid.Height()*2/unit)).Draw(t, "y")),
			}
			p := rapid.SampledFrom(slices.Collect(centres(corner))).Draw(t, "centre")
			want, ok := o.at(p, 0, every)
			if !ok {
				want, ok = o.at(p, spec.Overhang, every)
			}
			got, roofed := r.Slope(p)
			if roofed != ok || ok && (got.Up != want.side.up() || got.Foot != want.foot) {
				t.Fatalf("Slope(%v) = %v, %v; want %v, %v", p, got, roofed, want, ok)
			}
			if ok && got.Edge >= 0 {
				if e := edge(spec.Outline, got.Edge); want.side.of(e) != got.Foot || want.side.opposite().of(e) != got.Foot {
					t.Fatalf("Slope(%v) = %v, but that edge is %v", p, got, e)
				}
			}
		}
	})
}

// Where planes meet, the one named is the surface on some side of the point.
func TestSlopeIsOneOfThePlanesThatMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		r, o := mustNew(t, spec), newOracle(spec)
		for range 20 {
			p := drawPoint(t, spec)
			p = geom.Point{X: p.X / 6 * 6, Y: p.Y / 6 * 6}
			got, ok := r.Slope(p)
			if ok && !slices.Contains(o.around(p), plane{sideOf(got.Up), got.Foot}) {
				t.Fatalf("Slope(%v) = %v, but the planes there are %v", p, got, o.around(p))
			}
		}
	})
}

// around lists the planes over the facets that have the point as a corner.
func (o *oracle) around(p geom.Point) (met []plane) {
	step := geom.Point{X: 2, Y: 1}
	for g := range geom.Symmetries {
		q := p.Add(g.Apply(step))
		found, ok := o.at(q, 0, every)
		if !ok {
			found, ok = o.at(q, o.overhang, every)
		}
		if ok {
			met = append(met, found.plane)
		}
	}
	return met
}

func sideOf(up geom.Point) side {
	i := slices.IndexFunc(sides[:], func(s side) bool { return s.up() == up })
	return sides[i]
}

func centres(corner geom.Point) func(func(geom.Point) bool) {
	return func(yield func(geom.Point) bool) {
		for _, f := range facets(corner) {
			if !yield(f.centre) {
				return
			}
		}
	}
}

// On every edge that is not a gable, rafters run square to it.
func TestSlopeAtTheEaves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		spec.Gable = nil
		r := mustNew(t, spec)
		for i, a := range spec.Outline {
			b := spec.Outline[(i+1)%len(spec.Outline)]
			middle := geom.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
			got, ok := r.Slope(middle)
			if !ok || got.Edge != i || (got.Up.X == 0) == (a.X == b.X) {
				t.Fatalf("Slope in the middle of edge %d = %v, %v", i, got, ok)
			}
		}
	})
}

// The answer turns along with a house, also where planes meet.
func TestSlopeUnderTurns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := randomSpec(t)
		spec.Gable = nil
		r := mustNew(t, spec)
		p := drawPoint(t, spec)
		p = geom.Point{X: p.X / 6 * 6, Y: p.Y / 6 * 6} // more often on a line
		want, ok := r.Slope(p)
		for g := range geom.Symmetries {
			if g.Mirrors() {
				continue
			}
			if got, roofed := mustNew(t, moved(spec, g)).Slope(g.Apply(p)); roofed != ok || got.Edge != want.Edge || got.Up != g.Apply(want.Up) {
				t.Fatalf("symmetry %d: Slope = %v, %v; want %v, %v turned", g, got, roofed, want, ok)
			}
		}
	})
}

func BenchmarkSlope(b *testing.B) {
	r := benchmarkRoof(b)
	p := geom.Point{X: 5 * ft, Y: 3 * ft}
	for b.Loop() {
		if _, ok := r.Slope(p); !ok {
			b.Fatal("no slope")
		}
	}
}
