package tape

import (
	"encoding/binary"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// ids names the marks of an answer.
func ids(a *Answer) string {
	text := a.Verdict.String()
	for _, p := range []*Pair{a.Best, a.RunnerUp} {
		if p != nil {
			text += fmt.Sprint(" ", p.Marks[0].ID, p.Marks[1].ID)
		}
	}
	if a.Check != nil {
		text += " check " + a.Check.Mark.ID
	}
	if a.Joist != nil {
		text += " joist " + a.Joist.Mark.ID
	}
	if a.Single != nil {
		text += " single " + a.Single.Mark.ID
	}
	for _, u := range a.Unused {
		text += " " + u.Mark.ID + " " + u.Why.String()
	}
	return text
}

// same reports whether two lengths are one micrometre apart or less.
func same(a, b measure.Length) bool { return max(a-b, b-a) <= measure.Micrometre }

func random(rng *rand.Rand) Request {
	r := request()
	r.Want = metres(7*rng.Float64(), 7*rng.Float64())
	r.Obstacles = []geom.Rect{{Min: metres(2, 1), Max: metres(3+2*rng.Float64(), 1.6)}, {Min: metres(1, 5), Max: metres(1.4, 6.5)}}
	r.Tape.Longest = 7 * measure.Metre
	for i := range 4 {
		r.Marks = append(r.Marks, mark(fmt.Sprint("m", i), 7*rng.Float64(), 7*rng.Float64()))
	}
	return r
}

// move lays a request on its mirror image or turns it, and shifts it.
func move(r Request, s geom.Symmetry, by geom.Point) Request {
	at := func(p geom.Point) geom.Point { return s.Apply(p).Add(by) }
	marks := make([]Mark, len(r.Marks))
	for i, m := range r.Marks {
		m.At = at(m.At)
		marks[i] = m
	}
	obstacles := make([]geom.Rect, len(r.Obstacles))
	for i, o := range r.Obstacles {
		o = s.Rect(o)
		obstacles[i] = geom.Rect{Min: o.Min.Add(by), Max: o.Max.Add(by)}
	}
	j := *r.Joists
	// One joist goes through the point whose both coordinates are First.
	through := at(geom.Point{X: j.First, Y: j.First})
	axis := s.Apply(geom.Point{X: 1})
	if axis.X == 0 {
		j.AlongY = !j.AlongY
	}
	j.First = j.across(through)
	r.Want, r.Marks, r.Obstacles, r.Joists = at(r.Want), marks, obstacles, &j
	return r
}

// The eight ways to lay a house down, and anywhere: the same marks, distances
// and errors, the side changing in a mirror.
func TestMovedHouse(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 8))
	pairs := 0
	for range 40 {
		r := random(rng)
		a := find(t, r)
		for s := range geom.Symmetries {
			b := find(t, move(r, s, metres(rng.Float64()*100, -rng.Float64()*100)))
			if ids(a) != ids(b) {
				t.Fatalf("symmetry %d: %s, want %s", s, ids(b), ids(a))
			}
			if a.Joist != nil && (a.Joist.Along != b.Joist.Along || a.Joist.Count.Joists != b.Joist.Count.Joists ||
				a.Joist.Count.Offset != b.Joist.Count.Offset || !same(a.Joist.Error.Major, b.Joist.Error.Major)) {
				t.Errorf("symmetry %d: joist %+v, want %+v", s, b.Joist, a.Joist)
			}
			if a.Best == nil {
				continue
			}
			pairs++
			side := a.Best.Side
			if s.Mirrors() {
				side = -side
			}
			p, q := a.Best, b.Best
			if q.Side != side || p.Distance != q.Distance || p.Cut != q.Cut || p.Weak != q.Weak || !same(p.Offset, q.Offset) ||
				!same(p.Error.Major, q.Error.Major) || !same(p.Error.Minor, q.Error.Minor) || !same(p.Error.Within95, q.Error.Within95) {
				t.Errorf("symmetry %d: %+v, want %+v with side %v", s, q, p, side)
			}
		}
	}
	if pairs < 200 {
		t.Errorf("only %d pairs were compared", pairs)
	}
}

// Turned by any angle the errors stay and the axis turns along.
func TestTurnedHouse(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	for range 100 {
		r := request()
		r.Joists, r.Want = nil, metres(1+5*rng.Float64(), 1+5*rng.Float64())
		turn := rng.Float64() * 360
		sin, cos := math.Sincos(turn * math.Pi / 180)
		at := func(p geom.Point) geom.Point {
			x, y := float64(p.X), float64(p.Y)
			return geom.Point{X: measure.Length(math.Round(x*cos - y*sin)), Y: measure.Length(math.Round(x*sin + y*cos))}
		}
		moved := r
		moved.Want, moved.Marks = at(r.Want), nil
		for _, m := range r.Marks {
			m.At = at(m.At)
			moved.Marks = append(moved.Marks, m)
		}
		p, q := find(t, r).Best, find(t, moved).Best
		if p.Side != q.Side || p.Marks[0].ID != q.Marks[0].ID || !same(p.Error.Major, q.Error.Major) ||
			math.Abs(math.Remainder(q.Error.Axis-p.Error.Axis-turn, 180)) > 0.05 {
			t.Errorf("turned by %v: %+v, want %+v", turn, q, p)
		}
	}
}

// The order of marks in the request doesn't show, nor does Find change it.
func TestOrderOfMarks(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 50 {
		r := random(rng)
		a := find(t, r)
		rng.Shuffle(len(r.Marks), func(i, j int) { r.Marks[i], r.Marks[j] = r.Marks[j], r.Marks[i] })
		before := append([]Mark(nil), r.Marks...)
		if b := find(t, r); !reflect.DeepEqual(a, b) {
			t.Fatalf("%s, want %s", ids(b), ids(a))
		}
		if !reflect.DeepEqual(before, r.Marks) {
			t.Fatal("the request was changed")
		}
	}
}

// One more mark never makes the best pair worse, and a worse tape never
// better.
func TestMoreMarksAndWorseTapes(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 6))
	for range 40 {
		r := random(rng)
		last := measure.Length(math.MaxInt64)
		for n := 2; n <= len(r.Marks); n++ {
			some := r
			some.Marks = r.Marks[:n]
			a := find(t, some)
			if a.Best == nil {
				continue
			}
			if a.Best.Error.Major > last {
				t.Fatalf("with %d marks %v, with one less %v", n, a.Best.Error.Major, last)
			}
			last = a.Best.Error.Major
			some.Tape.Constant += 2 * mm
			if b := find(t, some); b.Best.Error.Major < last || b.Best.Error.Within95 < a.Best.Error.Within95 {
				t.Fatalf("a worse tape: %v, before %v", b.Best.Error, a.Best.Error)
			}
		}
	}
}

// Two marks of one name and place, and equal pairs, have a settled order.
func TestTies(t *testing.T) {
	r := Request{Want: metres(0, 0), Tape: Tape{Constant: mm}, Marks: []Mark{mark("D", 0, -3), mark("C", -3, 0), mark("B", 0, 3), mark("A", 3, 0)}}
	a := find(t, r)
	if got := a.Best.Marks[0].ID + a.Best.Marks[1].ID + a.RunnerUp.Marks[0].ID + a.RunnerUp.Marks[1].ID; got != "ABAD" {
		t.Errorf("ties went to %s", got)
	}
}

// A thousand marks take no more than a moment: 500 000 pairs.
func TestManyMarks(t *testing.T) {
	rng := rand.New(rand.NewPCG(10, 10))
	r := Request{Want: metres(20, 20), Tape: Tape{Constant: mm}}
	for i := range MaxMarks {
		r.Marks = append(r.Marks, mark(fmt.Sprint(i), 40*rng.Float64(), 40*rng.Float64()))
	}
	if a := find(t, r); a.Best.Cut < 85 || a.Best.Cut > 95 {
		t.Errorf("of 500 000 pairs the best cuts at %v", a.Best.Cut)
	}
}

// Whatever comes in, an answer comes out that is whole, or an error.
func FuzzFind(f *testing.F) {
	f.Add([]byte{}, 0.0, 0.0, 0.0, 0.0)
	f.Add([]byte("0123456789abcdef0123456789abcdef"), 1.0, math.NaN(), 0.5, 30.0)
	f.Add(make([]byte, 96), 900.0, 0.01, 1.0, 90.0)
	f.Add([]byte("\x00\x01\x02\x03\x04\x05\x06\x07\xff\xff\xff\xff\xff\xff\xff\x7f"), -1.0, math.Inf(1), 1e300, 1e-300)
	f.Fuzz(func(t *testing.T, data []byte, ppm, sag, angle, least float64) {
		next := func() measure.Length {
			if len(data) < 8 {
				data = append(data, make([]byte, 8)...)[:0]
				return 0
			}
			v := int64(binary.LittleEndian.Uint64(data))
			data = data[8:]
			if v%3 == 0 {
				return measure.Length(v)
			}
			return measure.Length(v % int64(20*measure.Metre))
		}
		r := Request{
			Want: geom.Point{X: next(), Y: next()}, Sketch: next(), Angle: angle, LeastCut: least,
			Tape:   Tape{Constant: next(), PPM: ppm, Rise: next(), Sag: sag, Step: next(), Longest: next()},
			Joists: &Joists{First: next(), Spacing: next(), Sigma: next()},
		}
		for len(data) >= 8 && len(r.Marks) < 20 {
			r.Marks = append(r.Marks, Mark{At: geom.Point{X: next(), Y: next()}, Place: next(), Size: next()})
			r.Obstacles = append(r.Obstacles, geom.Rect{Min: geom.Point{X: next()}, Max: geom.Point{Y: next()}})
		}
		a, err := Find(r)
		if err != nil {
			return
		}
		if a.Best != nil {
			checkPair(t, a.Best)
			if a.RunnerUp != nil && a.RunnerUp.Error.Major < a.Best.Error.Major {
				t.Errorf("the runner-up is better: %+v %+v", a.RunnerUp, a.Best)
			}
		}
	})
}

func checkPair(t *testing.T, p *Pair) {
	t.Helper()
	e := p.Error
	// Rounding to the micrometre may take one from each.
	if e.Minor < 0 || e.Major < e.Minor || e.Radial < e.Major-measure.Micrometre || e.Within95 < e.Major || !(e.Axis >= 0 && e.Axis < 180) {
		t.Errorf("error %+v", e)
	}
	if !(p.Cut >= 0 && p.Cut <= 180) || p.Offset < 0 || p.Side != Left && p.Side != Right {
		t.Errorf("pair %+v", p)
	}
}
