package tape

import (
	"math"
	"math/rand/v2"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// Joists at 16 in on centre, the first at 8 in, running north.
func TestCountJoists(t *testing.T) {
	j := Joists{AlongY: true, First: 8 * measure.Inch, Spacing: 16 * measure.Inch}
	in := func(n int64) measure.Length { return measure.Length(n) * measure.Inch }
	for _, tt := range []struct {
		from, to int64
		want     Count
	}{
		{10, 20, Count{0, 1, 0, in(10)}},
		{10, 24, Count{1, 1, in(14), 0}},
		{10, 30, Count{1, 1, in(14), in(6)}},
		{10, 60, Count{3, 1, in(14), in(4)}},
		{8, 30, Count{1, 1, in(16), in(6)}},
		{30, 10, Count{1, -1, in(6), in(14)}},
		{30, 8, Count{2, -1, in(6), 0}},
		{24, 10, Count{0, -1, 0, in(14)}},
		{-30, 30, Count{4, 1, in(6), in(6)}},
		{12, 12, Count{}},
	} {
		got, err := j.Count(geom.Point{X: in(tt.from), Y: in(99)}, geom.Point{X: in(tt.to), Y: -in(7)})
		if err != nil || got != tt.want {
			t.Errorf("from %d to %d in: %+v %v, want %+v", tt.from, tt.to, got, err, tt.want)
		}
	}
}

// Counting by walking: every centre line between is met once.
func TestCountAgainstWalking(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	for range 3000 {
		j := Joists{AlongY: rng.IntN(2) == 0, First: measure.Length(rng.IntN(200) - 100), Spacing: measure.Length(1 + rng.IntN(30))}
		from, to := measure.Length(rng.IntN(400)-200), measure.Length(rng.IntN(400)-200)
		at := func(l measure.Length) geom.Point {
			if j.AlongY {
				return geom.Point{X: l, Y: measure.Length(rng.IntN(9))}
			}
			return geom.Point{X: measure.Length(rng.IntN(9)), Y: l}
		}
		got, err := j.Count(at(from), at(to))
		if err != nil {
			t.Fatal(err)
		}
		met, last, start := int64(0), from, measure.Length(0)
		step := measure.Length(1)
		if to < from {
			step = -1
		}
		for x := from; x != to; {
			x += step
			if (x-j.First)%j.Spacing == 0 {
				if met++; met == 1 {
					start = (x - from) * step
				}
				last = x
			}
		}
		if got.Joists != met || got.Offset != (to-last)*step || got.Start != start {
			t.Fatalf("%+v from %d to %d: %+v, walking met %d, start %d, offset %d", j, from, to, got, met, start, (to-last)*step)
		}
	}
}

func TestCountRefuses(t *testing.T) {
	good := Joists{Spacing: 1}
	for _, tt := range []struct {
		j    Joists
		a, b geom.Point
	}{
		{Joists{}, geom.Point{}, geom.Point{}},
		{Joists{Spacing: -1}, geom.Point{}, geom.Point{}},
		{good, geom.Point{Y: math.MaxInt64}, geom.Point{}},
		{good, geom.Point{}, geom.Point{Y: math.MinInt64}},
	} {
		if c, err := tt.j.Count(tt.a, tt.b); err == nil {
			t.Errorf("%+v gives %+v", tt, c)
		}
	}
}

// Along a joist the tape is best where it runs along it, and useless where it
// runs square across.
func TestJoistFix(t *testing.T) {
	r := Request{
		Want: metres(4, 4), Tape: Tape{Constant: 5 * mm},
		Marks:  []Mark{mark("across", 0, 4), mark("near", 4.3, 1), mark("slant", 0, 0)},
		Joists: &Joists{AlongY: true, First: 0, Spacing: 400 * mm, Sigma: 5 * mm},
	}
	f := find(t, r).Joist
	if f.Mark.ID != "near" || f.Way != 1 || f.Along != 3*measure.Metre || f.Count.Joists != 1 || f.Count.Way != -1 || f.Weak {
		t.Errorf("%+v", f)
	}
	if want := math.Atan2(3, 0.3) * 180 / math.Pi; math.Abs(f.Cut-want) > 0.01 {
		t.Errorf("cut %v, want %v", f.Cut, want)
	}
	r.Marks = r.Marks[:1]
	if a := find(t, r); a.Joist != nil || a.Single == nil || a.Verdict != OneMark {
		t.Errorf("%+v", a)
	}
	// The same house turned on its diagonal has the same fix.
	r.Marks, r.Joists.AlongY = []Mark{mark("across", 4, 0), mark("near", 1, 4.3), mark("slant", 0, 0)}, false
	g := find(t, r).Joist
	if g.Mark.ID != "near" || g.Way != f.Way || g.Along != f.Along || g.Count != f.Count || g.Cut != f.Cut || g.Error.Major != f.Error.Major {
		t.Errorf("%+v, want as %+v", g, f)
	}
}

func TestSingle(t *testing.T) {
	r := Request{
		Want: metres(1, 4), Tape: Tape{Constant: 5 * mm}, Angle: 2,
		Marks:  []Mark{mark("A", 4, 0), mark("far", 30, 30)},
		Joists: &Joists{AlongY: true, First: 0, Spacing: 400 * mm},
	}
	s := find(t, r).Single
	if s.Mark.ID != "A" || s.Distance.Exact != 5*measure.Metre || s.East != -3*measure.Metre || s.North != 4*measure.Metre ||
		s.Bearing != 323.13 || s.ToJoists != 36.87 || s.Count.Joists != 7 || s.Count.Way != -1 {
		t.Errorf("%+v", s)
	}
	// 2° at 5 m across the tape, the tape's 5 mm along it.
	if !near(s.Error.Major, 5000*2*math.Pi/180, 0.01) || s.Error.Minor != 5*mm {
		t.Errorf("error %+v", s.Error)
	}
	r.Joists.AlongY = false
	if s := find(t, r).Single; s.ToJoists != 53.13 {
		t.Errorf("to joists that run east: %v", s.ToJoists)
	}
}
