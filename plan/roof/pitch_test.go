package roof

import (
	"math"
	"math/big"
	"testing"

	"topplate/plan/measure"

	"pgregory.net/rapid"
)

// roundHalfUp is ⌊x + 1/2⌋.
func roundHalfUp(x *big.Rat) *big.Int {
	x = new(big.Rat).Add(x, big.NewRat(1, 2))
	return new(big.Int).Div(x.Num(), x.Denom()) // Euclidean; the denominator is positive
}

func TestMulDiv(t *testing.T) {
	length := rapid.OneOf(rapid.Int64Range(-50, 50), rapid.Int64Range(-1<<62+1, 1<<62-1))
	factor := rapid.OneOf(rapid.Uint64Range(1, 20), rapid.Uint64Range(1, 1<<31))
	rapid.Check(t, func(t *rapid.T) {
		a, mul, div := length.Draw(t, "a"), factor.Draw(t, "mul"), factor.Draw(t, "div")
		product := new(big.Int).Mul(big.NewInt(a), new(big.Int).SetUint64(mul))
		want := roundHalfUp(new(big.Rat).SetFrac(product, new(big.Int).SetUint64(div)))
		if largest := big.NewInt(math.MaxInt64); want.CmpAbs(largest) > 0 {
			want = largest.Mul(largest, big.NewInt(int64(want.Sign())))
		}
		if got := mulDiv(measure.Length(a), mul, div); want.Cmp(big.NewInt(int64(got))) != 0 {
			t.Fatalf("mulDiv(%d, %d, %d) = %d, want %v", a, mul, div, got, want)
		}
	})
}

func drawPitch(t *rapid.T) Pitch {
	p := Pitch{rapid.IntRange(1, 30).Draw(t, "rise"), rapid.IntRange(1, 30).Draw(t, "run")}
	if rapid.Bool().Draw(t, "tangent of an angle") {
		p = Pitch{rapid.IntRange(1e4, 1e9).Draw(t, "rise"), 1e7}
	}
	return p
}

// run is the least distance that rises far enough.
func TestRunInvertsRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPitch(t)
		most := rapid.SampledFrom([]int64{40, int64(100 * measure.Metre)}).Draw(t, "most")
		h := measure.Length(rapid.Int64Range(-most, most).Draw(t, "h"))
		d := p.run(h)
		if p.rise(2*d) < h || p.rise(2*(d-1)) >= h {
			t.Fatalf("%v: run(%d) = %d, which rises %d, and one less %d", p, h, d, p.rise(2*d), p.rise(2*(d-1)))
		}
	})
}

// Rafter lengths for 1 of run at 3, 4, 5, 6, 8 and 12 in 12, to four places, as
// tables for the framing square have them (from memory; they are √(1+m²)).
func TestSlantFactors(t *testing.T) {
	for rise, want := range map[int]float64{3: 1.0308, 4: 1.0541, 5: 1.0833, 6: 1.1180, 8: 1.2019, 12: 1.4142} {
		got := Pitch{rise, 12}.slant(measure.Metre).Metres()
		if math.Abs(got-want) > 0.00005 {
			t.Errorf("%d:12: %.5f, want %.4f", rise, got, want)
		}
	}
	// A 5-12-13 triangle is exact.
	if got := (Pitch{5, 12}).slant(12 * measure.Inch); got != 13*measure.Inch {
		t.Errorf("5:12: 12in lies %v deep, want 13in", got)
	}
}

// slant is the whole number nearest to depth·√(1+m²), held against squares:
// (2s-1)²·run² <= 4·depth²·(run²+rise²) < (2s+1)²·run².
func TestSlantIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPitch(t)
		depth := rapid.SampledFrom([]int64{20, int64(measure.Metre)}).Draw(t, "most")
		depth = rapid.Int64Range(0, depth).Draw(t, "depth")
		s := int64(p.slant(measure.Length(depth)))
		square := func(a, b int64) *big.Int {
			x := new(big.Int).Mul(big.NewInt(a), big.NewInt(b))
			return x.Mul(x, x)
		}
		true4 := new(big.Int).Add(square(2*depth, int64(p.Run)), square(2*depth, int64(p.Rise)))
		if square(2*s-1, int64(p.Run)).Cmp(true4) > 0 && depth > 0 || square(2*s+1, int64(p.Run)).Cmp(true4) <= 0 {
			t.Fatalf("%v: slant(%d) = %d", p, depth, s)
		}
	})
}
