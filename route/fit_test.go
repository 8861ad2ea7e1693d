package route

import (
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// By hand, with 1/4 in over the bundle and bits of 1/2, 3/4 and 1 in: a 1 in
// hole takes a bundle of 19.05 mm. Of 6.0 mm cables that is seven (18.0 mm; an
// eighth makes it 19.8), of 6.5 mm ones five (17.6 mm; a sixth makes it 19.5).
func TestFewestHoles(t *testing.T) {
	bits := []plan.Bit{{Diameter: inch(1, 2)}, {Diameter: inch(3, 4)}, {Diameter: inch(1, 1)}}
	book := rule.NewBook(nil)
	const thin, thick = 6 * measure.Millimetre, 65 * measure.Millimetre / 10
	cables := func(nThin, nThick int) (out []measure.Length) {
		for range nThin {
			out = append(out, thin)
		}
		for range nThick {
			out = append(out, thick)
		}
		return out
	}
	for _, c := range []struct {
		thin, thick, holes int
		bit                measure.Length
	}{
		{1, 0, 1, inch(1, 2)},
		{2, 0, 1, inch(3, 4)},
		{7, 0, 1, inch(1, 1)},
		{8, 0, 2, inch(1, 1)},
		{0, 5, 1, inch(1, 1)},
		{0, 6, 2, inch(1, 1)},
		{10, 2, 2, inch(1, 1)}, // five with the thick ones, then seven
		{11, 2, 3, inch(1, 1)},
	} {
		f := newFitting(bits, book, inch(7, 4), cables(c.thin, c.thick))
		if !f.everythingIn || f.holes != c.holes || f.bit != c.bit {
			t.Errorf("%d thin and %d thick cables: %d holes up to %v, want %d up to %v", c.thin, c.thick, f.holes, f.bit, c.holes, c.bit)
		}
	}
	if f := newFitting(bits, book, inch(1, 4), cables(1, 0)); f.everythingIn {
		t.Error("a 6 mm cable goes through a 1/4 in hole")
	}
}
