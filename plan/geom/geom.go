// Package geom has the exact plane and space geometry of a house: points,
// rectangles and outlines whose sides run along the two axes of the house.
//
// Coordinates are measure.Length in the frame of the house: X to house east,
// Y to house north, Z up from the floor of the lowest level. The same values
// give the same answers on every machine: nothing here uses floating point
// except where a result is named as a float, and products that overflow 64
// bits are taken in 128 bits or with math/big. Every function is exact while
// no coordinate exceeds MaxCoordinate.
//
// Segments are given by their two ends and are closed: they have both ends. A
// segment whose ends coincide is a point. The package knows nothing of walls
// or cables, never reads files and never panics.
package geom

import "topplate/plan/measure"

// MaxCoordinate bounds the magnitude of a coordinate: sums and differences of
// two then fit a Length, and products of two differences fit 128 bits. It is
// about 2.3 million kilometres.
const MaxCoordinate measure.Length = 1 << 61

// A Point is a place in plan.
type Point struct{ X, Y measure.Length }

// A Point3 is a place in space.
type Point3 struct{ X, Y, Z measure.Length }

// A Rect is the closed rectangle of the points with Min.X <= X <= Max.X and
// Min.Y <= Y <= Max.Y. It is empty when Min exceeds Max in either axis.
type Rect struct{ Min, Max Point }

// A Polygon is a simple closed outline, counter-clockwise, without repeating
// its first point.
type Polygon []Point
