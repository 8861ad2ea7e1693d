// Package tape finds a place from above with a tape: the spot of a hole that
// was wanted on a plan, found in an attic from marks that can be seen there.
//
// A point, the marks, what a tape can't pass through and how good the tape is
// come in. Out go the two marks whose distances fix the point best, with the
// distances, the side, the expected error, a distance to check with and the
// pair that comes next; and, for where two distances don't serve, a count of
// joists with one distance, and one distance with a bearing.
//
// The package measures in plan, along the joists' upper edges: it knows no
// heights but for what an unlevel tape costs. It never reads files and never
// panics, and the same input in any order gives the same answer.
//
// # Errors
//
// Every distance is a line of position: it fixes the point across the tape
// and leaves it free along the arc. Two lines that cross at the angle γ, with
// the standard deviations s and t across them, give an ellipse of error whose
// semi-axes a and b satisfy
//
//	a² + b² = (s² + t²) / sin² γ,   a·b = s·t / |sin γ|
//
// (variance propagation through the two distance equations, derived here; the
// standard treatment is Mathematical considerations pertaining to the accuracy
// of position location and navigation systems, 1965). Each deviation is that
// of the tape, of the mark and of the sketch together. The sketch is
// off independently at each mark and at the point itself; near places are in
// truth off together, so this is the cautious side. The propagation is of
// first order: where the ellipse is longer than the point is away from the
// line through its marks, the arcs may not meet at all, and the answer is
// marked weak.
package tape
