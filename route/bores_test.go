package route

import (
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// By hand, for a 1 in hole at most: two cables of 6.5 mm and three of 6.0 mm
// are counted as five of 6.5 mm, 17.6 mm, but lie in less; what is left, seven
// of 6.0 mm, needs 18.0 mm. Both need a 1 in bit for 1/4 in over the bundle,
// and the two holes with 1/4 in between are 2-1/4 in wide.
func TestBores(t *testing.T) {
	bits := []plan.Bit{{Diameter: inch(1, 2)}, {Diameter: inch(3, 4)}, {Diameter: inch(1, 1)}}
	book := rule.NewBook(nil)
	const thin, thick = 6 * measure.Millimetre, 65 * measure.Millimetre / 10
	cables := []measure.Length{thin, thick, thin, thin, thin, thin, thin, thick, thin, thin, thin, thin}
	bores, width, ok := Bores(bits, book, inch(7, 4), cables)
	if !ok || len(bores) != 2 || width != inch(9, 4) {
		t.Fatalf("%v, %v wide, %v", bores, width, ok)
	}
	mixed := bores[0]
	if mixed.Cables != 5 || mixed.Bit != inch(1, 1) || mixed.Bundle >= 176*measure.Millimetre/10 || mixed.Bundle < 27013*6*measure.Micrometre/10 {
		t.Errorf("the first takes %+v", mixed)
	}
	if bores[1] != (Bore{Cables: 7, Bundle: 18 * measure.Millimetre, Bit: inch(1, 1)}) {
		t.Errorf("the second takes %+v", bores[1])
	}
	// One cable of 7 mm and one of 3 mm: 10 mm together, where two of the
	// thicker would be 14 mm. With 1/4 in over it that is 16.35 mm against
	// 20.35 mm: a 3/4 in bit instead of a 1 in one.
	bores, width, ok = Bores(bits, book, inch(7, 4), []measure.Length{3 * measure.Millimetre, 7 * measure.Millimetre})
	if !ok || len(bores) != 1 || bores[0] != (Bore{2, 10 * measure.Millimetre, inch(3, 4)}) || width != inch(3, 4) {
		t.Errorf("%v, %v wide, %v", bores, width, ok)
	}
	if bores, width, ok = Bores(bits, book, inch(7, 4), []measure.Length{thin, 2 * measure.Inch}); ok || bores != nil || width != 0 {
		t.Errorf("a cable as thick as the hole goes through %v, %v wide", bores, width)
	}
}
