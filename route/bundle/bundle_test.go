package bundle

import (
	"math"
	"testing"

	"topplate/plan/measure"
)

// Closed forms of the best known packings: 2 circles 2, 3 circles 1+2/√3, 4
// circles 1+√2, 6 and 7 circles 3, 8 circles 1+1/sin(π/7), 11 circles
// 1+1/sin(π/9), 13 circles 2+√5, 18 and 19 circles 1+√2+√6.
func TestDiameterAgainstClosedForms(t *testing.T) {
	for n, want := range map[int]float64{
		1: 1, 2: 2, 3: 1 + 2/math.Sqrt(3), 4: 1 + math.Sqrt2, 6: 3, 7: 3, 8: 1 + 1/math.Sin(math.Pi/7),
		11: 1 + 1/math.Sin(math.Pi/9), 13: 2 + math.Sqrt(5), 18: 1 + math.Sqrt2 + math.Sqrt(6), 19: 1 + math.Sqrt2 + math.Sqrt(6),
	} {
		got := float64(Diameter(n, measure.Metre)) / float64(measure.Metre)
		if got < want-1e-9 || got > want+2e-6 {
			t.Errorf("Diameter of %d = %.7f, want %.7f and never less", n, got, want)
		}
	}
}

// Six cables of 6.0 mm: 18.0 mm; seven: 18.0 mm (the usual rule of thumb
// 1.2√n gives 17.6 mm for six, which is impossible).
func TestDiameterWorkedExamples(t *testing.T) {
	for n, want := range map[int]measure.Length{6: 18 * measure.Millimetre, 7: 18 * measure.Millimetre, 2: 12 * measure.Millimetre} {
		if got := Diameter(n, 6*measure.Millimetre); got != want {
			t.Errorf("Diameter(%d, 6 mm) = %v, want %v", n, got, want)
		}
	}
}

func TestDiameterGrows(t *testing.T) {
	for n := 1; n < 200; n++ {
		a, b := Diameter(n, measure.Metre), Diameter(n+1, measure.Metre)
		if b < a {
			t.Errorf("%d cables need %v but %d need %v", n, a, n+1, b)
		}
		// No packing of equal circles is denser than π/√12 (Thue 1910).
		if r := ratio(n); float64(n)/(r*r) > math.Pi/math.Sqrt(12)+1e-9 && n > 1 {
			t.Errorf("%d circles in ratio %.4f are packed denser than is possible", n, r)
		}
	}
}
