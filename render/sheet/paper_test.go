package sheet

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func TestBox(t *testing.T) {
	b := Bx(10, 20, 30, 40)
	for _, c := range []struct {
		name string
		got  any
		want any
	}{
		{"width", b.Width(), Paper(30)},
		{"height", b.Height(), Paper(40)},
		{"centre", b.Centre(), Pt(25, 40)},
		{"inset", b.Inset(5), Bx(15, 25, 20, 30)},
		{"union", b.Union(Bx(0, 50, 5, 100)), Box{Pt(0, 20), Pt(40, 150)}},
		{"bounds", Bounds(Pt(4, 5), Pt(-1, 9), Pt(2, 2)), Box{Pt(-1, 2), Pt(4, 9)}},
		{"bounds of nothing", Bounds(), Box{}},
		{"around, even", BoxAround(Pt(10, 10), 4, 6), Bx(8, 7, 4, 6)},
		{"around, odd", BoxAround(Pt(10, 10), 5, 1), Bx(7, 9, 5, 1)},
		{"has its corner", b.Has(Pt(40, 60)), true},
		{"has not beyond", b.Has(Pt(41, 60)), false},
		{"contains itself", b.Contains(b), true},
		{"touching is no overlap", b.Overlaps(Bx(40, 20, 5, 5)), false},
		{"overlap by one", b.Overlaps(Bx(39, 59, 5, 5)), true},
		{"struck across", b.Struck(Pt(0, 0), Pt(100, 100)), true},
		{"touched at a corner", b.Struck(Pt(0, 30), Pt(20, 10)), false},
		{"along an edge", b.Struck(Pt(10, 0), Pt(10, 100)), false},
		{"a point inside", b.Struck(Pt(20, 30), Pt(20, 30)), true},
		{"no inside", Bx(0, 0, 10, 0).Struck(Pt(5, -5), Pt(5, 5)), false},
	} {
		if c.got != c.want {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
}

func TestTurnIsClockwiseOnTheSheet(t *testing.T) {
	if got := Turn(Pt(0, 0), Pt(10, 0), Pt(10, 5)); got != 50 {
		t.Errorf("right turn is %d, want 50", got)
	}
	if got := Turn(Pt(0, 0), Pt(MaxCoordinate, MaxCoordinate), Pt(-MaxCoordinate, MaxCoordinate)); got != 2*int64(MaxCoordinate)*int64(MaxCoordinate) {
		t.Errorf("largest turn is %d", got)
	}
}

func TestPolarIsExactAtQuarters(t *testing.T) {
	c := Pt(100, 200)
	for _, q := range []struct {
		angle Angle
		want  Point
	}{
		{0, Pt(107, 200)},
		{QuarterTurn, Pt(100, 193)},
		{HalfTurn, Pt(93, 200)},
		{-QuarterTurn, Pt(100, 207)},
		{FullTurn + QuarterTurn, Pt(100, 193)},
		{-5 * FullTurn, Pt(107, 200)},
	} {
		if got := Polar(c, 7, q.angle); got != q.want {
			t.Errorf("direction %d: %v, want %v", q.angle/Degree, got, q.want)
		}
	}
}

// Sine and cosine against those of the standard library, at every 64th of a
// degree.
func TestSinCos(t *testing.T) {
	for a := Angle(0); a < FullTurn; a++ {
		sin, cos := a.sinCos()
		wantSin, wantCos := math.Sincos(float64(a) * math.Pi / float64(HalfTurn))
		if math.Abs(float64(sin)-wantSin*unit) > 4 || math.Abs(float64(cos)-wantCos*unit) > 4 {
			t.Fatalf("at %d/64°: %d, %d; want %.1f, %.1f", a, sin, cos, wantSin*unit, wantCos*unit)
		}
	}
}

// The size of a 64th of a degree comes from the first 50 digits of pi.
func TestRadian(t *testing.T) {
	pi, _ := new(big.Float).SetPrec(200).SetString("3.14159265358979323846264338327950288419716939937510")
	want, _ := new(big.Float).Add(new(big.Float).Quo(new(big.Float).Mul(pi, big.NewFloat(1<<60)), big.NewFloat(11520)), big.NewFloat(0.5)).Int64()
	if radian64 != want {
		t.Errorf("radian64 is %d, want %d", radian64, want)
	}
}

func TestDivRound(t *testing.T) {
	for _, c := range []struct{ n, d, want int64 }{
		{0, 7, 0}, {3, 2, 2}, {-3, 2, -2}, {1, 3, 0}, {-2, 3, -1}, {5, 10, 1}, {-5, 10, -1}, {4, 9, 0},
	} {
		if got := divRound(c.n, c.d); got != c.want {
			t.Errorf("%d/%d is %d, want %d", c.n, c.d, got, c.want)
		}
	}
}

func TestMulDiv(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Int64Range(-1<<62, 1<<62).Draw(t, "a")
		c := rapid.Int64Range(1, 1<<62).Draw(t, "c")
		b := rapid.Int64Range(-c, c).Draw(t, "b")
		if rapid.Bool().Draw(t, "negative") {
			c, b = -c, -b
		}
		exact := new(big.Rat).Mul(big.NewRat(a, 1), big.NewRat(b, c))
		off := new(big.Rat).Sub(big.NewRat(mulDiv(a, b, c), 1), exact)
		if off.Abs(off).Cmp(big.NewRat(1, 2)) > 0 {
			t.Fatalf("%d*%d/%d is %d, off by %s", a, b, c, mulDiv(a, b, c), off)
		}
	})
}
