package geom

import (
	"math/big"
	"testing"

	"topplate/plan/measure"

	"pgregory.net/rapid"
)

// coordinates draws what breaks products: near zero, near the bound, and as
// large as a house.
func coordinates() *rapid.Generator[measure.Length] {
	return rapid.OneOf(
		rapid.Map(rapid.Int64Range(-4, 4), func(n int64) measure.Length { return measure.Length(n) }),
		rapid.Map(rapid.Int64Range(-100e9, 100e9), func(n int64) measure.Length { return measure.Length(n) }),
		rapid.Map(rapid.Int64Range(0, 4), func(n int64) measure.Length { return MaxCoordinate - measure.Length(n) }),
		rapid.Map(rapid.Int64Range(0, 4), func(n int64) measure.Length { return measure.Length(n) - MaxCoordinate }),
	)
}

func points() *rapid.Generator[Point] {
	return rapid.Custom(func(t *rapid.T) Point {
		return Point{coordinates().Draw(t, "x"), coordinates().Draw(t, "y")}
	})
}

// 128-bit signs against arbitrary precision.
func TestSignsAgainstBigIntegers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := points().Draw(t, "u").Sub(points().Draw(t, "from"))
		v := points().Draw(t, "v").Sub(points().Draw(t, "from"))
		if got, want := cross(u, v), bigCross(u, v).Sign(); got != want {
			t.Fatalf("cross(%v, %v) = %d, want %d", u, v, got, want)
		}
		if got, want := dot(u, v), bigDot(u, v).Sign(); got != want {
			t.Fatalf("dot(%v, %v) = %d, want %d", u, v, got, want)
		}
	})
}

func TestDist(t *testing.T) {
	tests := []struct {
		a, b Point
		want measure.Length
	}{
		{Point{1, 2}, Point{1, 2}, 0},
		{Point{1, 2}, Point{1, -7}, 9},
		{Point{5, 2}, Point{-4, 2}, 9},
		{Point{0, 0}, Point{3, 4}, 5},
		{Point{0, 0}, Point{5 * measure.Foot, 12 * measure.Foot}, 13 * measure.Foot},
		{Point{0, 0}, Point{1, 1}, 1}, // √2 is 1.41
		{Point{0, 0}, Point{1, 2}, 2}, // √5 is 2.24
		{Point{0, 0}, Point{2, 2}, 3}, // √8 is 2.83
		// √2 to 18 decimals is 1.414213562373095049.
		{Point{0, 0}, Point{1e18, 1e18}, 1_414_213_562_373_095_049},
		{Point{-MaxCoordinate, 0}, Point{MaxCoordinate, 0}, 2 * MaxCoordinate},
	}
	for _, tt := range tests {
		if got := Dist(tt.a, tt.b); got != tt.want {
			t.Errorf("Dist(%v, %v) = %d, want %d", tt.a, tt.b, got, tt.want)
		}
	}
}

// The rounded distance d is within 1/2 of the true one: (2d-1)² < 4·d² < (2d+1)².
func TestDistRoundsToNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := points().Draw(t, "a"), points().Draw(t, "b")
		d := big.NewInt(int64(Dist(a, b)))
		four := new(big.Int).Lsh(bigDot(b.Sub(a), b.Sub(a)), 2)
		twice := new(big.Int).Lsh(d, 1)
		low := new(big.Int).Sub(twice, big.NewInt(1))
		high := new(big.Int).Add(twice, big.NewInt(1))
		if d.Sign() > 0 && low.Mul(low, low).Cmp(four) >= 0 || high.Mul(high, high).Cmp(four) <= 0 {
			t.Fatalf("Dist(%v, %v) = %d", a, b, d)
		}
	})
}

func TestSquareLength(t *testing.T) {
	tests := []struct {
		a, b SquareLength
		want int
	}{
		{Squared(0), SquareLength{}, 0},
		{Squared(-3), Squared(3), 0},
		{Squared(1 << 40), Squared(1<<40 + 1), -1},
		{Squared(1 << 32), SquareLength{1, 0}, 0},
		{DistSquared(Point{1, 1}, Point{4, 5}), Squared(5), 0},
		{DistSquared(Point{}, Point{1 << 61, 1 << 61}), SquareLength{1 << 59, 0}, 0},
		{DistSquared(Point{}, Point{1, 1}), Squared(1), +1},
	}
	for _, tt := range tests {
		if got := tt.a.Cmp(tt.b); got != tt.want {
			t.Errorf("%v.Cmp(%v) = %d, want %d", tt.a, tt.b, got, tt.want)
		}
	}
}
