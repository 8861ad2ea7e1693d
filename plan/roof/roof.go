// Package roof has the shape of a hip or gable roof of one pitch over a
// rectilinear outline: its height at every point, what is under it, and the
// lines a drafter draws of it.
//
// The outline, which edges of it are gables, the pitch, the overhang and the
// framing come in as a Spec; a Roof answers questions and is never changed.
// Points are in the frame of the house. Heights are measured up from the top
// of the wall plates. Everything is exact in whole numbers and rounded once,
// half up, to a nanometre; where two rounded terms are added, it is said so.
// The package knows nothing of walls, attics or cables and reads no files.
//
// # The surface
//
// The surface is the plane of each roof slope through the outer top edge of
// the plate: zero above an eave. Each rectangle that can be inscribed in the
// outline, its sides along the axes, would have a roof of its own, with a
// plane that rises inward from each of its sides, save from a side that lies
// wholly on gable edges. The surface is the highest of all these roofs: at a
// point, the pitch times the greatest, over the rectangles that contain the
// point, of the least distance to a side that has a plane.
//
// Without gables that is the pitch times the distance to the outline in the
// maximum norm, which is the straight skeleton of a rectilinear outline
// (Aichholzer, Aurenhammer, Alberts and Gärtner, "A novel type of skeleton for
// polygons", J. Universal Computer Science 1 (12), 1995). With gables at the
// ends of wings it is the roof that a framer builds of equal pitches on plates
// of one height: a ridge runs out to its gable, a wing narrower than the body
// dies into the slope, a wider one rises above it.
//
// It may differ from what stands there:
//
//   - A gable on a stretch of a longer straight wall, or on a wall that ends
//     in an inside corner, gets a small cross gable as wide as the stretch,
//     with a valley from each end of it. If the wall is the end of a body
//     that is narrower than the wall, that is the usual gable of this body.
//   - A gable wall with a jog in it gets one such gable for each piece; a
//     framer often carries one roof over both.
//   - A gable on the long side of a wing leaves the wing a shed roof.
//   - Where a roof is cut off flush, the next one is not seen. A side of an
//     inscribed rectangle that is flush in part has its overhang all along.
//   - Plates of several heights, several pitches in one roof, dormers, a gable cut off by
//     a small hip and a hip with a small gable are not modelled.
//
// Under the surface there are rafters or top chords, and nothing else: ridge
// boards, deeper hip and valley rafters, collar ties and the webs of trusses
// leave less room than is said here.
package roof

import (
	"errors"
	"fmt"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Spec is what a roof is made from.
type Spec struct {
	// Outline runs along the outer faces of the wall plates. It is simple and
	// rectilinear; either direction will do, and so will a vertex on a
	// straight wall, where a gable may begin.
	Outline geom.Polygon
	// Gable tells for each edge, from Outline[i] to the next vertex, that the
	// wall goes up to the roof there instead of carrying rafters. nil is no
	// gable at all.
	Gable []bool
	// Flush tells for each edge that the roof is cut off there like a gable, but
	// without an overhang: against the wall of a higher storey, or where another
	// roof begins. nil is none.
	Flush    []bool
	Pitch    Pitch
	Overhang measure.Length // level, past eaves and gables alike; may be zero
	Framing  Framing
}

// What a Spec may hold. These bounds keep every product within 128 bits and
// every answer within a second; no house comes near them.
const (
	maxCorners                = 200
	maxLength  measure.Length = 1 << 50 // about 1100 km, for coordinates too
)

// A SpecError says what is wrong with one field of a Spec.
type SpecError struct{ Field, Reason string }

func (e *SpecError) Error() string { return "roof " + e.Field + ": " + e.Reason }

// A Roof is a roof over an outline.
type Roof struct {
	spec   Spec
	blocks []block
	// Above the top of the plate, the underside of a rafter at depth d is the
	// pitch times d - seat, plus low; the sheathing lies slant higher.
	seat, low, slant measure.Length
}

// New makes a roof. Its error joins one *SpecError for each thing that is
// wrong with the spec. For n corners it takes time O(n³): 2 µs for an L.
func New(spec Spec) (*Roof, error) {
	if err := spec.check(); err != nil {
		return nil, err
	}
	spec.Outline = slices.Clone(spec.Outline)
	spec.Gable = slices.Clone(spec.Gable)
	spec.Flush = slices.Clone(spec.Flush)
	if spec.Gable == nil {
		spec.Gable = make([]bool, len(spec.Outline))
	}
	if spec.Flush == nil {
		spec.Flush = make([]bool, len(spec.Outline))
	}
	for i, flush := range spec.Flush {
		spec.Gable[i] = spec.Gable[i] || flush
	}
	r := &Roof{spec: spec, blocks: newGrid(spec.Outline, spec.Gable).blocks()}
	for i := range r.blocks {
		r.blocks[i].roofed = r.roofed(r.blocks[i].area)
	}
	r.seat, r.low, r.slant = spec.Framing.offsets(spec.Pitch)
	return r, nil
}

func (s *Spec) check() error {
	wrong := s.checkOutline()
	if s.Gable != nil && len(s.Gable) != len(s.Outline) {
		wrong = append(wrong, &SpecError{"gable", fmt.Sprintf("%d answers for an outline of %d edges", len(s.Gable), len(s.Outline))})
	} else if s.Flush != nil && len(s.Flush) != len(s.Outline) {
		wrong = append(wrong, &SpecError{"flush", fmt.Sprintf("%d answers for an outline of %d edges", len(s.Flush), len(s.Outline))})
	} else if s.noEave() {
		wrong = append(wrong, &SpecError{"gable", "every edge is a gable; at least one must be an eave"})
	}
	if reason := s.Pitch.check(); reason != "" {
		wrong = append(wrong, &SpecError{"pitch", reason})
	}
	for _, l := range []struct {
		field string
		value measure.Length
	}{
		{"overhang", s.Overhang},
		{"depth", s.Framing.Depth},
		{"plate width", s.Framing.PlateWidth},
		{"heel", s.Framing.Heel},
	} {
		if l.value < 0 || l.value > maxLength {
			wrong = append(wrong, &SpecError{l.field, l.value.String() + " is not from 0in to " + maxLength.String()})
		}
	}
	return errors.Join(wrong...)
}

// noEave reports whether every edge is a gable.
func (s *Spec) noEave() bool {
	for i := range s.Outline {
		if !(s.Gable != nil && s.Gable[i] || s.Flush != nil && s.Flush[i]) {
			return false
		}
	}
	return len(s.Outline) > 0
}

func (s *Spec) checkOutline() (wrong []error) {
	limits := geom.Rect{Max: geom.Point{X: maxLength, Y: maxLength}, Min: geom.Point{X: -maxLength, Y: -maxLength}}
	bounds := s.Outline.Bounds()
	switch {
	case len(s.Outline) > maxCorners:
		wrong = append(wrong, &SpecError{"outline", fmt.Sprintf("it has %d corners, more than %d", len(s.Outline), maxCorners)})
	case bounds.Empty() || !limits.Contains(bounds.Min) || !limits.Contains(bounds.Max):
		wrong = append(wrong, &SpecError{"outline", "it has no corners, or one more than " + maxLength.String() + " from the axes"})
	case !s.Outline.Rectilinear():
		wrong = append(wrong, &SpecError{"outline", "its edges do not all run along the axes"})
	case !s.Outline.IsSimple():
		wrong = append(wrong, &SpecError{"outline", "it crosses or touches itself"})
	}
	return wrong
}
