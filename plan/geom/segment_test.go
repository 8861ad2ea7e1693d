package geom

import (
	"math/big"
	"testing"

	"topplate/plan/measure"

	"pgregory.net/rapid"
)

func TestSegmentsTouch(t *testing.T) {
	tests := []struct {
		name       string
		a, b, c, d Point
		want       bool
	}{
		{"cross", Point{0, 0}, Point{4, 4}, Point{0, 4}, Point{4, 0}, true},
		{"end on side", Point{0, 0}, Point{4, 4}, Point{2, 2}, Point{9, 0}, true},
		{"common end", Point{0, 0}, Point{4, 4}, Point{4, 4}, Point{9, 0}, true},
		{"overlap on a line", Point{0, 0}, Point{4, 4}, Point{3, 3}, Point{9, 9}, true},
		{"apart on a line", Point{0, 0}, Point{2, 2}, Point{3, 3}, Point{9, 9}, false},
		{"parallel", Point{0, 0}, Point{4, 4}, Point{1, 0}, Point{5, 4}, false},
		{"boxes meet, segments do not", Point{0, 0}, Point{4, 4}, Point{3, 0}, Point{4, 1}, false},
		{"line of one cuts the other", Point{0, 0}, Point{1, 1}, Point{0, 4}, Point{4, 0}, false},
		{"point on segment", Point{2, 2}, Point{2, 2}, Point{0, 0}, Point{4, 4}, true},
		{"point off segment", Point{2, 3}, Point{2, 3}, Point{0, 0}, Point{4, 4}, false},
		{"point on point", Point{2, 2}, Point{2, 2}, Point{2, 2}, Point{2, 2}, true},
		{"a nanometre short at the far end", Point{0, 0}, Point{MaxCoordinate, MaxCoordinate}, Point{MaxCoordinate, MaxCoordinate - 1}, Point{MaxCoordinate, 0}, false},
	}
	for _, tt := range tests {
		if got := SegmentsTouch(tt.a, tt.b, tt.c, tt.d); got != tt.want {
			t.Errorf("%s: SegmentsTouch = %v", tt.name, got)
		}
	}
}

func TestSegmentRect(t *testing.T) {
	r := rect(0, 0, 4, 4)
	tests := []struct {
		name            string
		a, b            Point
		touches, enters bool
	}{
		{"inside", Point{1, 1}, Point{2, 3}, true, true},
		{"through", Point{-1, 2}, Point{9, 2}, true, true},
		{"slides along the edge", Point{-1, 4}, Point{9, 4}, true, false},
		{"ends on the edge", Point{-1, 2}, Point{0, 2}, true, false},
		{"ends inside", Point{-1, 2}, Point{1, 2}, true, true},
		{"touches a corner", Point{-2, 2}, Point{2, 6}, true, false},
		{"passes a corner", Point{-2, 3}, Point{1, 6}, false, false},
		{"cuts a corner", Point{-1, 2}, Point{3, 6}, true, true},
		{"from corner to corner", Point{0, 0}, Point{4, 4}, true, true},
		{"away", Point{5, 0}, Point{5, 4}, false, false},
		{"point inside", Point{1, 1}, Point{1, 1}, true, true},
		{"point on the edge", Point{0, 1}, Point{0, 1}, true, false},
	}
	for _, tt := range tests {
		for g := range Symmetries {
			a, b, r := g.Apply(tt.a), g.Apply(tt.b), g.Rect(r)
			if got := SegmentTouchesRect(a, b, r); got != tt.touches {
				t.Errorf("%s, symmetry %d: SegmentTouchesRect = %v", tt.name, g, got)
			}
			if got := SegmentEntersRect(a, b, r); got != tt.enters {
				t.Errorf("%s, symmetry %d: SegmentEntersRect = %v", tt.name, g, got)
			}
		}
	}
	flat, empty := rect(2, 0, 2, 4), rect(3, 0, 2, 4)
	if !SegmentTouchesRect(Point{0, 1}, Point{4, 2}, flat) || SegmentEntersRect(Point{0, 1}, Point{4, 2}, flat) {
		t.Error("a rectangle without width has an edge and no inside")
	}
	if SegmentTouchesRect(Point{0, 1}, Point{4, 2}, empty) || SegmentEntersRect(Point{0, 1}, Point{4, 2}, empty) {
		t.Error("an empty rectangle is touched")
	}
}

func TestSegmentsCloserThan(t *testing.T) {
	in := measure.Inch
	tests := []struct {
		name       string
		a, b, c, d Point
		dist       measure.Length // the true distance
	}{
		{"parallel, 2 in apart", Point{0, 0}, Point{100 * in, 0}, Point{50 * in, 2 * in}, Point{200 * in, 2 * in}, 2 * in},
		{"end to end", Point{0, 0}, Point{10 * in, 0}, Point{13 * in, 4 * in}, Point{20 * in, 4 * in}, 5 * in},
		{"crossing", Point{0, 0}, Point{4 * in, 4 * in}, Point{0, 4 * in}, Point{4 * in, 0}, 0},
		// The line 3x + 4y = 0 is (3·25 + 4·0)/5 = 15 from (25, 0).
		{"point to diagonal", Point{-40 * in, 30 * in}, Point{40 * in, -30 * in}, Point{25 * in, 0}, Point{25 * in, 0}, 15 * in},
		// Parallel diagonals 3x + 4y = 0 and 3x + 4y = 50.
		{"diagonal to diagonal", Point{-40 * in, 30 * in}, Point{40 * in, -30 * in}, Point{6 * in, 8 * in}, Point{10 * in, 5 * in}, 10 * in},
		{"far apart", Point{-MaxCoordinate, 0}, Point{-MaxCoordinate, 4}, Point{MaxCoordinate, 0}, Point{MaxCoordinate, 4}, 2 * MaxCoordinate},
	}
	for _, tt := range tests {
		for _, c := range []struct {
			limit measure.Length
			want  bool
		}{{tt.dist, false}, {tt.dist + 1, true}, {tt.dist - 1, false}, {-1, false}} {
			for g := range Symmetries {
				a, b, p, q := g.Apply(tt.a), g.Apply(tt.b), g.Apply(tt.c), g.Apply(tt.d)
				if SegmentsCloserThan(a, b, p, q, c.limit) != c.want || SegmentsCloserThan(q, p, a, b, c.limit) != c.want {
					t.Errorf("%s, symmetry %d: closer than %d nm is not %v", tt.name, g, c.limit, c.want)
				}
			}
		}
	}
}

func TestSegmentRectCloserThan(t *testing.T) {
	r := rect(0, 0, 40, 40)
	tests := []struct {
		name string
		a, b Point
		dist measure.Length
	}{
		{"beside", Point{43, 10}, Point{90, 10}, 3},
		{"off a corner", Point{43, 44}, Point{90, 90}, 5},
		// The line 3x + 4y = 330 is (330 - 280)/5 = 10 from (40, 40).
		{"diagonal past a corner", Point{70, 30}, Point{30, 60}, 10},
		{"through", Point{-9, 20}, Point{90, 25}, 0},
		{"inside", Point{10, 10}, Point{20, 20}, 0},
	}
	for _, tt := range tests {
		for g := range Symmetries {
			a, b, r := g.Apply(tt.a), g.Apply(tt.b), g.Rect(r)
			if SegmentRectCloserThan(a, b, r, tt.dist) || !SegmentRectCloserThan(a, b, r, tt.dist+1) {
				t.Errorf("%s, symmetry %d: the distance is not %d", tt.name, g, tt.dist)
			}
		}
	}
	if SegmentRectCloserThan(Point{0, 0}, Point{1, 1}, rect(1, 0, 0, 0), 100) {
		t.Error("an empty rectangle is close")
	}
}

// distSquared is the square of the distance between two segments in rational
// numbers, minimised over both parameters by a way of its own: the minimum of
// a convex quadratic over a square is inside, on an edge or at a corner.
func distSquared(a, b, c, d Point) *big.Rat {
	rat := func(l measure.Length) *big.Rat { return new(big.Rat).SetInt64(int64(l)) }
	at := func(p, q Point, t *big.Rat) [2]*big.Rat {
		x := new(big.Rat).Mul(t, rat(q.X-p.X))
		y := new(big.Rat).Mul(t, rat(q.Y-p.Y))
		return [2]*big.Rat{x.Add(x, rat(p.X)), y.Add(y, rat(p.Y))}
	}
	gap := func(p, q [2]*big.Rat) *big.Rat {
		dx, dy := new(big.Rat).Sub(p[0], q[0]), new(big.Rat).Sub(p[1], q[1])
		return dx.Mul(dx, dx).Add(dx, dy.Mul(dy, dy))
	}
	zero, one := rat(0), rat(1)
	var best *big.Rat
	try := func(s, t *big.Rat) {
		if s.Cmp(zero) < 0 || s.Cmp(one) > 0 || t.Cmp(zero) < 0 || t.Cmp(one) > 0 {
			return
		}
		if g := gap(at(a, b, s), at(c, d, t)); best == nil || g.Cmp(best) < 0 {
			best = g
		}
	}
	u, v, w := b.Sub(a), d.Sub(c), a.Sub(c)
	uu, vv := new(big.Rat).SetInt(bigDot(u, u)), new(big.Rat).SetInt(bigDot(v, v))
	uv, uw, vw := new(big.Rat).SetInt(bigDot(u, v)), new(big.Rat).SetInt(bigDot(u, w)), new(big.Rat).SetInt(bigDot(v, w))
	mul := func(x, y *big.Rat) *big.Rat { return new(big.Rat).Mul(x, y) }
	sub := func(x, y *big.Rat) *big.Rat { return new(big.Rat).Sub(x, y) }
	if det := sub(mul(uu, vv), mul(uv, uv)); det.Sign() != 0 {
		try(new(big.Rat).Quo(sub(mul(uv, vw), mul(vv, uw)), det), new(big.Rat).Quo(sub(mul(uu, vw), mul(uv, uw)), det))
	}
	for _, end := range []*big.Rat{zero, one} {
		for _, other := range []*big.Rat{zero, one} {
			try(end, other)
		}
		if vv.Sign() != 0 { // s = end: t = (vw + s·uv) / vv
			try(end, new(big.Rat).Quo(new(big.Rat).Add(vw, mul(end, uv)), vv))
		}
		if uu.Sign() != 0 { // t = end: s = (t·uv - uw) / uu
			try(new(big.Rat).Quo(sub(mul(end, uv), uw), uu), end)
		}
	}
	return best
}

func TestSegmentsAgainstRationals(t *testing.T) {
	near := rapid.Custom(func(t *rapid.T) Point {
		return Point{
			measure.Length(rapid.Int64Range(-6, 6).Draw(t, "x")),
			measure.Length(rapid.Int64Range(-6, 6).Draw(t, "y")),
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		var p [4]Point
		for i := range p {
			p[i] = near.Draw(t, "p")
		}
		limit := measure.Length(rapid.Int64Range(1, 9).Draw(t, "limit"))
		scale := rapid.SampledFrom([]measure.Length{1, measure.SixtyFourth, 1 << 58}).Draw(t, "scale")
		d2 := distSquared(p[0], p[1], p[2], p[3])
		closer := d2.Cmp(new(big.Rat).SetInt64(int64(limit*limit))) < 0
		for i := range p {
			p[i] = Point{p[i].X * scale, p[i].Y * scale}
		}
		if limit > 7 && scale == 1<<58 {
			limit, closer = 7, d2.Cmp(big.NewRat(49, 1)) < 0
		}
		if got := SegmentsCloserThan(p[0], p[1], p[2], p[3], limit*scale); got != closer {
			t.Fatalf("SegmentsCloserThan(%v, %d) = %v, but the distance squared is %v", p, limit*scale, got, d2)
		}
		if got := SegmentsTouch(p[0], p[1], p[2], p[3]); got != (d2.Sign() == 0) {
			t.Fatalf("SegmentsTouch(%v) = %v, but the distance squared is %v", p, got, d2)
		}
	})
}

func TestAngleAtLeast(t *testing.T) {
	sixty, fortyFive, thirty := CosSquared{1, 4}, CosSquared{1, 2}, CosSquared{3, 4}
	o := Point{}
	tests := []struct {
		name  string
		b, d  Point
		least CosSquared
		want  bool
	}{
		{"90 for 90", Point{7, 3}, Point{-3, 7}, CosSquared{0, 1}, true},
		{"just under 90", Point{7, 3}, Point{-3, 8}, CosSquared{0, 1}, false},
		{"45 for 45", Point{5, 0}, Point{5, 5}, fortyFive, true},
		{"135 is 45", Point{5, 0}, Point{-5, 5}, fortyFive, true},
		{"just under 45", Point{1e9, 0}, Point{1e9, 1e9 - 1}, fortyFive, false},
		{"45 for 60", Point{5, 0}, Point{5, 5}, sixty, false},
		// √3 lies between 1.7320508 and 1.7320509.
		{"just under 60", Point{1, 0}, Point{10000000, 17320508}, sixty, false},
		{"just over 60", Point{1, 0}, Point{10000000, 17320509}, sixty, true},
		{"just over 30", Point{1, 0}, Point{17320508, 10000000}, thirty, true},
		{"just under 30", Point{1, 0}, Point{17320509, 10000000}, thirty, false},
		{"parallel", Point{1, 2}, Point{-2, -4}, thirty, false},
		{"parallel for 0", Point{1, 2}, Point{2, 4}, CosSquared{1, 1}, true},
		{"no direction", Point{1, 2}, o, sixty, true},
		{"large", Point{MaxCoordinate, 0}, Point{MaxCoordinate, MaxCoordinate - 1}, fortyFive, false},
	}
	for _, tt := range tests {
		for g := range Symmetries {
			b, d := g.Apply(tt.b), g.Apply(tt.d)
			if AngleAtLeast(o, b, o, d, tt.least) != tt.want || AngleAtLeast(d, o, b, o, tt.least) != tt.want {
				t.Errorf("%s, symmetry %d: not %v", tt.name, g, tt.want)
			}
		}
	}
}

func BenchmarkSegmentsCloserThan(b *testing.B) {
	in := measure.Inch
	run := [2]Point{{0, 0}, {400 * in, 300 * in}}
	for _, bb := range []struct {
		name       string
		c, d       Point
		wantCloser bool
	}{
		{"boxes apart", Point{0, 310 * in}, Point{400 * in, 310 * in}, false},
		{"crossing", Point{200 * in, 149 * in}, Point{10 * in, 290 * in}, true},
		{"beside a diagonal", Point{200 * in, 160 * in}, Point{10 * in, 160 * in}, false},
	} {
		b.Run(bb.name, func(b *testing.B) {
			for b.Loop() {
				if SegmentsCloserThan(run[0], run[1], bb.c, bb.d, 2*in) != bb.wantCloser {
					b.Fatal("wrong answer")
				}
			}
		})
	}
}
