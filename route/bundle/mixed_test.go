package bundle

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"topplate/plan/measure"
)

const mm = measure.Millimetre

// Best known radii of n equal circles in a circle, in radii of one, to six
// digits: E. Specht's tables of packings, from memory, and the list of closed
// forms in the encyclopedia article on circle packing in a circle.
var published = [...]float64{
	1: 1, 2: 2, 3: 2.154701, 4: 2.414214, 5: 2.701302, 6: 3, 7: 3, 8: 3.304765, 9: 3.613126, 10: 3.813026,
	11: 3.923804, 12: 4.029602, 13: 4.236068, 14: 4.328429, 15: 4.521357, 16: 4.615426, 17: 4.792034, 18: 4.863703, 19: 4.863703, 20: 5.122321,
}

func TestDiameterAgainstPublishedTable(t *testing.T) {
	for n := 1; n <= 20; n++ {
		// The table here is rounded up, the published one to the nearest.
		if got := float64(Diameter(n, measure.Metre)) / float64(measure.Metre); math.Abs(got-published[n]) > 1.001e-6 {
			t.Errorf("%d circles: %.7f, published %.6f", n, got, published[n])
		}
	}
	// Closed forms beyond those of bundle_test.go: 5 circles
	// 1+√(2+2/√5), 9 circles 1+√(4+2√2), 15 circles 1+√(6+2/√5+4√(1+2/√5)).
	for n, want := range map[int]float64{
		5:  1 + math.Sqrt(2+2/math.Sqrt(5)),
		9:  1 + math.Sqrt(4+2*math.Sqrt2),
		15: 1 + math.Sqrt(6+2/math.Sqrt(5)+4*math.Sqrt(1+2/math.Sqrt(5))),
	} {
		if got := ratio(n); got < want || got > want+1e-6 {
			t.Errorf("%d circles: %.7f, want %.7f and never less", n, got, want)
		}
	}
}

// By hand. Two circles lie side by side. Three that touch each other, with
// curvatures a, b, c, lie in a circle of curvature 2√(ab+bc+ca)-(a+b+c)
// (Descartes' theorem): radii 1, 2, 3 give curvatures 1, 1/2, 1/3 and
// ab+bc+ca = 1, so 2 - 11/6 = 1/6: a circle of radius 6 would be larger than 5,
// the circle of the larger two; there the third fits beside them, in a
// gap that takes 1/(1/2+1/3-1/5+2√(1/6-1/10-1/15)) = 30/19 > 1. Radii 2, 2, 1 give
// 1/2, 1/2, 1: ab+bc+ca = 5/4, 2√1.25 - 2 = 0.236068, radius 4.236068, but the
// two of radius 2 fill only 4 and the gap beside them takes 4/3 > 1: radius 4.
// Radii 3, 3, 2.5 do not fit in 6 (the gap takes 2): 1/3, 1/3, 2/5 give
// 1/9 + 4/15 = 17/45, radius 1/(2√(17/45) - 16/15) = 6.1498.
func TestEnclosingByHand(t *testing.T) {
	for _, tt := range []struct {
		radii []measure.Length // tenths of a millimetre
		want  float64          // millimetres, diameter
	}{
		{nil, 0},
		{[]measure.Length{0, -5}, 0},
		{[]measure.Length{30}, 6},
		{[]measure.Length{20, 30}, 10},
		{[]measure.Length{10, 20, 30}, 10},
		{[]measure.Length{20, 10, 20}, 8},
		{[]measure.Length{30, 25, 30}, 2 / (2*math.Sqrt(17.0/45) - 16.0/15)},
		{[]measure.Length{30, 30, 30}, 6 * (1 + 2/math.Sqrt(3))},
		// A thin cable in the middle of three, four and six thick ones: the
		// gap takes 2/√3-1 = 0.155, √2-1 = 0.414 and 1 of their radius.
		{[]measure.Length{100, 100, 100, 15}, 20 * (1 + 2/math.Sqrt(3))},
		{[]measure.Length{100, 100, 100, 100, 41}, 20 * (1 + math.Sqrt2)},
	} {
		var d []measure.Length
		for _, r := range tt.radii {
			d = append(d, r*mm/5)
		}
		if got := Enclosing(d).Millimetres(); got < tt.want-1e-6 || got > tt.want*1.002 {
			t.Errorf("radii %v: %.6f mm, want %.6f and never less", tt.radii, got, tt.want)
		}
	}
}

func randomCables(r *rand.Rand) []measure.Length {
	kinds := make([]measure.Length, 1+r.IntN(4))
	for i := range kinds {
		kinds[i] = 2*mm + measure.Length(r.Int64N(int64(10*mm)))
	}
	out := make([]measure.Length, 1+r.IntN(14))
	for i := range out {
		out[i] = kinds[r.IntN(len(kinds))]
	}
	return out
}

// Never less than the two thickest side by side, nor than a circle of the area
// of all, nor than what a smaller bundle of their thinnest needs; never more
// than as many of the thickest, nor than all in a row.
func TestEnclosingBounds(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	thinner := 0
	for range 150 {
		d := randomCables(r)
		got := Enclosing(d)
		slices.Sort(d)
		area, row := 0.0, measure.Length(0)
		for _, x := range d {
			area += float64(x) * float64(x)
			row += x
		}
		n := len(d)
		if n > 1 && got < d[n-1]+d[n-2] || float64(got) < math.Sqrt(area) || got > max(row, Diameter(n, d[n-1])) || got > Diameter(n, d[n-1]) {
			t.Errorf("%v: %v", d, got)
		}
		// Below 14 equal circles the table is proved best, so this holds for any bound.
		if n <= 13 && float64(got) < float64(Diameter(n, d[0]))*(1-1e-6) {
			t.Errorf("%v: %v, less than %d of the thinnest need", d, got, n)
		}
		if d[0] != d[n-1] && got < Diameter(n, d[n-1]) {
			thinner++
		}
		r.Shuffle(n, func(i, j int) { d[i], d[j] = d[j], d[i] })
		if again := Enclosing(d); again != got {
			t.Errorf("%v: %v in another order, %v before", d, again, got)
		}
	}
	if thinner < 50 {
		t.Errorf("only %d bundles come out thinner than of their thickest", thinner)
	}
}

// Attempts at random to pack the cables: the circle that is claimed takes them.
// An attempt lets the cables push each other apart inside the circle from
// random places; it counts where the largest overlap left is below a
// thousandth of a diameter. If the bound were too small, no attempt could
// succeed; a few that don't are the attempts' own fault.
func TestEnclosingHoldsThem(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	failed, short := 0, 0
	for range 25 {
		d := randomCables(r)
		if len(d) > 8 {
			d = d[:8]
		}
		// One in fifty less than the two thickest need is never enough.
		pair := slices.Sorted(slices.Values(d))
		if n := len(d); n > 1 && settles(r, d, float64(pair[n-1]+pair[n-2])/2*0.98) {
			short++
		}
		big := float64(Enclosing(d)) / 2 * 1.004
		ok := false
		for try := 0; try < 100 && !ok; try++ {
			ok = settles(r, d, big)
		}
		if !ok {
			failed++
		}
	}
	if failed > 3 || short > 0 {
		t.Errorf("%d of 25 bundles don't settle in their circle; %d in one that is too small", failed, short)
	}
}

// settles lets discs push each other apart inside a circle.
func settles(r *rand.Rand, d []measure.Length, big float64) bool {
	type point struct{ x, y float64 }
	p := make([]point, len(d))
	for i := range p {
		p[i] = point{(r.Float64() - 0.5) * big, (r.Float64() - 0.5) * big}
	}
	for range 1000 {
		worst := 0.0
		for i := range p {
			ri := float64(d[i]) / 2
			for j := range p[:i] {
				rj := float64(d[j]) / 2
				dx, dy := p[i].x-p[j].x, p[i].y-p[j].y
				dist := math.Hypot(dx, dy) + 1
				if over := ri + rj - dist; over > 0 {
					worst = max(worst, over/(ri+rj))
					p[i].x += dx / dist * over / 2
					p[i].y += dy / dist * over / 2
					p[j].x -= dx / dist * over / 2
					p[j].y -= dy / dist * over / 2
				}
			}
			if out := math.Hypot(p[i].x, p[i].y); out+ri > big {
				worst = max(worst, (out+ri-big)/ri)
				p[i].x *= (big - ri) / out
				p[i].y *= (big - ri) / out
			}
		}
		if worst < 1e-3 {
			return true
		}
	}
	return false
}

// Many cables, and more than are placed one by one, end in good time.
func TestEnclosingOfMany(t *testing.T) {
	for _, n := range []int{mostPlaced, mostPlaced + 1, 500} {
		d := slices.Repeat([]measure.Length{6 * mm}, n)
		d[n/2] = 7 * mm
		if got := Enclosing(d); got > Diameter(n, 7*mm) || got < measure.Length(math.Sqrt(float64(n))*6e6) {
			t.Errorf("%d cables: %v", n, got)
		}
	}
}
