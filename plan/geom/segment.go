package geom

import (
	"math/big"

	"topplate/plan/measure"
)

// SegmentsTouch reports whether the segments ab and cd have a point in common,
// an end included.
func SegmentsTouch(a, b, c, d Point) bool {
	if (Rect{a, b}).Canon().Intersect(Rect{c, d}.Canon()).Empty() {
		return false
	}
	// The boxes meet, so the segments are apart only if the line of one leaves
	// the other wholly on one side.
	ab, cd := b.Sub(a), d.Sub(c)
	return cross(ab, c.Sub(a))*cross(ab, d.Sub(a)) <= 0 && cross(cd, a.Sub(c))*cross(cd, b.Sub(c)) <= 0
}

// SegmentTouchesRect reports whether the segment ab has a point in common with
// r, its edge included.
func SegmentTouchesRect(a, b Point, r Rect) bool {
	if r.Empty() || r.Intersect(Rect{a, b}.Canon()).Empty() {
		return false
	}
	left, right := r.sidesOf(a, b)
	return left < 4 && right < 4
}

// SegmentEntersRect reports whether the segment ab has a point inside r, off
// its edge: sliding along a wall is not entering it.
func SegmentEntersRect(a, b Point, r Rect) bool {
	if a == b {
		return r.ContainsInside(a)
	}
	box := Rect{a, b}.Canon()
	if r.Width() <= 0 || r.Height() <= 0 ||
		box.Max.X <= r.Min.X || box.Min.X >= r.Max.X || box.Max.Y <= r.Min.Y || box.Min.Y >= r.Max.Y {
		return false
	}
	left, right := r.sidesOf(a, b)
	return left > 0 && right > 0
}

// sidesOf counts the corners of r strictly left and strictly right of the line
// through a and b.
func (r Rect) sidesOf(a, b Point) (left, right int) {
	for _, corner := range r.corners() {
		switch cross(b.Sub(a), corner.Sub(a)) {
		case +1:
			left++
		case -1:
			right++
		}
	}
	return left, right
}

// SegmentsCloserThan reports whether the distance between the segments ab and
// cd is less than limit. A distance of exactly limit is not closer, and
// nothing is closer than a limit of zero.
func SegmentsCloserThan(a, b, c, d Point, limit measure.Length) bool {
	if limit <= 0 || boxesApart(Rect{a, b}.Canon(), Rect{c, d}.Canon(), limit) {
		return false
	}
	return SegmentsTouch(a, b, c, d) ||
		pointCloserThan(a, c, d, limit) || pointCloserThan(b, c, d, limit) ||
		pointCloserThan(c, a, b, limit) || pointCloserThan(d, a, b, limit)
}

// SegmentRectCloserThan reports whether the distance from the segment ab to
// the nearest point of r is less than limit, with the same meaning of the
// limit. Nothing is close to an empty r.
func SegmentRectCloserThan(a, b Point, r Rect, limit measure.Length) bool {
	if limit <= 0 || r.Empty() || boxesApart(Rect{a, b}.Canon(), r, limit) {
		return false
	}
	if SegmentTouchesRect(a, b, r) {
		return true
	}
	corners := r.corners()
	for i, c := range corners {
		if SegmentsCloserThan(a, b, c, corners[(i+1)%4], limit) {
			return true
		}
	}
	return false
}

// boxesApart reports whether a gap of at least limit along one axis lies
// between r and s. It settles most pairs without a product.
func boxesApart(r, s Rect, limit measure.Length) bool {
	gap := r.Intersect(s)
	return -gap.Width() >= limit || -gap.Height() >= limit
}

// pointCloserThan reports whether p is closer than limit to the segment ab.
func pointCloserThan(p, a, b Point, limit measure.Length) bool {
	ab, ap := b.Sub(a), p.Sub(a)
	switch {
	case dot(ab, ap) <= 0:
		return DistSquared(a, p).Cmp(Squared(limit)) < 0
	case dot(ab, p.Sub(b)) >= 0:
		return DistSquared(b, p).Cmp(Squared(limit)) < 0
	case ab.X == 0:
		return max(ap.X, -ap.X) < limit
	case ab.Y == 0:
		return max(ap.Y, -ap.Y) < limit
	}
	// The foot of the perpendicular lies between a and b. The distance is
	// |ab × ap| / |ab|; both sides of the comparison are squared.
	area := bigCross(ab, ap)
	reach := new(big.Int).Mul(big.NewInt(int64(limit)), big.NewInt(int64(limit)))
	return area.Mul(area, area).Cmp(reach.Mul(reach, bigDot(ab, ab))) < 0
}

// A CosSquared is an angle of 0° to 90°, given exactly by the square of its
// cosine as a fraction: 0/1 is 90°, 1/4 is 60°, 1/2 is 45°, 3/4 is 30° and 1/1
// is 0°. Den is positive.
type CosSquared struct{ Num, Den int64 }

// AngleAtLeast reports whether the lines through ab and through cd make an
// angle of at least least, the smaller of the two angles between them being
// meant. A segment without length has no direction and passes.
func AngleAtLeast(a, b, c, d Point, least CosSquared) bool {
	ab, cd := b.Sub(a), d.Sub(c)
	if dot(ab, cd) == 0 {
		return true
	}
	// cos² of the angle is (ab · cd)² / (|ab|² |cd|²), and falls as it opens.
	found := bigDot(ab, cd)
	found.Mul(found, found).Mul(found, big.NewInt(least.Den))
	most := bigDot(ab, ab)
	most.Mul(most, bigDot(cd, cd)).Mul(most, big.NewInt(least.Num))
	return found.Cmp(most) <= 0
}
