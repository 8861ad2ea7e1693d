package roof

import "topplate/plan/measure"

// A Kind says how a roof is framed.
type Kind uint8

// Kinds of framing.
const (
	Rafter Kind = iota
	Truss
)

func (k Kind) String() string {
	if k == Truss {
		return "truss"
	}
	return "rafter"
}

// A Framing is what carries the sheathing.
//
// Rafters sit on the plate with a birdsmouth as wide as the plate, so the
// underside of a rafter passes through the inner top edge of the plate. The
// top chord of a truss with a raised heel has its upper side Heel above the
// outer top edge of the plate.
type Framing struct {
	Kind       Kind
	Depth      measure.Length // of the rafter or the top chord, square to its length
	PlateWidth measure.Length // of the plate under rafters
	Heel       measure.Length // of a truss, at the outer face of the plate
}

// offsets returns where the underside of a rafter lies: see Roof.
func (f Framing) offsets(p Pitch) (seat, low, slant measure.Length) {
	slant = p.slant(f.Depth)
	if f.Kind == Truss {
		return 0, f.Heel - slant, slant
	}
	return f.PlateWidth, 0, slant
}
