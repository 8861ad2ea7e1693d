package tape

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

const trials = 40_000

// cloud gathers the misses of many tries.
type cloud struct {
	n          int
	xx, xy, yy float64
	within     int
	radius     float64
}

func (c *cloud) add(dx, dy float64) {
	c.n++
	c.xx += dx * dx
	c.xy += dx * dy
	c.yy += dy * dy
	if math.Hypot(dx, dy) <= c.radius {
		c.within++
	}
}

// hold compares the cloud with what was expected: axes to 3 % and the share
// within the 95 % circle to half a per cent, or no less where some errors have
// an end, as the size of a mark.
func (c *cloud) hold(t *testing.T, name string, e Ellipse, most float64) {
	t.Helper()
	n := float64(c.n)
	half, diff, xy := (c.xx+c.yy)/2/n, (c.xx-c.yy)/2/n, c.xy/n
	spread := math.Hypot(diff, xy)
	for _, v := range []struct {
		what      string
		got, want float64
	}{
		{"major", float64(e.Major), math.Sqrt(half + spread)},
		{"minor", float64(e.Minor), math.Sqrt(half - spread)},
		{"radial", float64(e.Radial), math.Sqrt(2 * half)},
	} {
		if math.Abs(v.got/v.want-1) > 0.03 {
			t.Errorf("%s: %s is %.3f mm, trials gave %.3f mm", name, v.what, v.got/1e6, v.want/1e6)
		}
	}
	if share := float64(c.within) / n; share < 0.945 || share > most {
		t.Errorf("%s: %.2f %% of trials were within the 95 %% circle", name, 100*share)
	}
	if spread > half/5 {
		axis := math.Atan2(xy, diff) / 2 * 180 / math.Pi
		if math.Abs(math.Remainder(axis-e.Axis, 180)) > 3 {
			t.Errorf("%s: axis at %v, trials gave %v", name, e.Axis, axis)
		}
	}
}

// A house makes the errors of one try.
type house struct {
	rng *rand.Rand
	r   Request
}

func (h *house) off(p geom.Point, sigma measure.Length) geom.Point {
	return p.Add(geom.Point{X: h.length(sigma), Y: h.length(sigma)})
}

func (h *house) length(sigma measure.Length) measure.Length {
	return measure.Length(h.rng.NormFloat64() * float64(sigma))
}

// held is where the tape's end really is.
func (h *house) held(m Mark) geom.Point {
	p := h.off(h.off(m.At, h.r.Sketch), m.Place)
	radius, turn := float64(m.Size)/2*math.Sqrt(h.rng.Float64()), 2*math.Pi*h.rng.Float64()
	return p.Add(geom.Point{X: measure.Length(radius * math.Cos(turn)), Y: measure.Length(radius * math.Sin(turn))})
}

// taped is the plan distance that is really set off.
func (h *house) taped(d measure.Length) measure.Length {
	t := h.r.Tape
	rise := h.rng.NormFloat64() * float64(t.Rise)
	return d + h.length(t.Constant) + measure.Length(float64(d)*t.PPM*1e-6*h.rng.NormFloat64()) +
		measure.Length((h.rng.Float64()-0.5)*float64(t.Step)) - measure.Length(rise*rise/2/float64(d))
}

func request() Request {
	a, b, c := mark("a", 0.3, 0.2), mark("b", 6.1, 0.4), mark("c", 2.2, 6.9)
	a.Size, b.Place, c.Size = 100*mm, 6*mm, 60*mm
	return Request{
		Marks:  []Mark{a, b, c},
		Tape:   Tape{Constant: 4 * mm, PPM: 900, Step: measure.Graduation},
		Sketch: 5 * mm, Angle: 1,
		Joists: &Joists{AlongY: true, First: 200 * mm, Spacing: 16 * measure.Inch, Sigma: 7 * mm},
	}
}

// The expected errors against trials in which every mark, the point, the tape
// and the joists are off at random. The seed is fixed.
func TestErrorAgainstTrials(t *testing.T) {
	for i, want := range []geom.Point{metres(3, 3), metres(4.4, 1.9), metres(1, 4.4), metres(4.8, 3.7)} {
		h := &house{rand.New(rand.NewPCG(1, uint64(i))), request()}
		h.r.Want = want
		most := 0.98
		if i%2 == 0 {
			most = 0.955
			for j := range h.r.Marks {
				h.r.Marks[j].Size = 0
			}
		}
		a := find(t, h.r)
		pair, joist, single := cloud{radius: float64(a.Best.Error.Within95)}, cloud{radius: float64(a.Joist.Error.Within95)}, cloud{radius: float64(a.Single.Error.Within95)}
		for range trials {
			really := h.off(want, h.r.Sketch)
			h.tryPair(t, a.Best, really, &pair)
			h.tryJoist(a.Joist, really, &joist)
			h.trySingle(a.Single, really, &single)
		}
		pair.hold(t, fmt.Sprint("pair at ", want), a.Best.Error, most)
		joist.hold(t, fmt.Sprint("joist at ", want), a.Joist.Error, most)
		single.hold(t, fmt.Sprint("single at ", want), a.Single.Error, most)
	}
}

func (h *house) tryPair(t *testing.T, p *Pair, really geom.Point, c *cloud) {
	left, right, ok := Cross(h.held(p.Marks[0]), h.held(p.Marks[1]), h.taped(p.Distance[0].Exact), h.taped(p.Distance[1].Exact))
	if !ok {
		t.Fatal("arcs that should meet don't")
	}
	found := left
	if p.Side == Right {
		found = right
	}
	c.add(float64(found.X-really.X), float64(found.Y-really.Y))
}

// tryJoist counts joists that run north, and swings the tape to their line.
func (h *house) tryJoist(f *JoistFix, really geom.Point, c *cloud) {
	tape := h.r.Tape
	x := float64(h.r.Want.X + h.length(h.r.Joists.Sigma) + h.length(tape.Constant) + measure.Length((h.rng.Float64()-0.5)*float64(tape.Step)))
	from := h.held(f.Mark)
	d := float64(h.taped(f.Distance.Exact))
	y := float64(from.Y) + float64(f.Way)*math.Sqrt(d*d-square(x-float64(from.X)))
	c.add(x-float64(really.X), y-float64(really.Y))
}

func (h *house) trySingle(f *Single, really geom.Point, c *cloud) {
	from := h.held(f.Mark)
	turn := math.Atan2(float64(f.North), float64(f.East)) + h.rng.NormFloat64()*h.r.Angle*math.Pi/180
	d := float64(h.taped(f.Distance.Exact))
	c.add(float64(from.X-really.X)+d*math.Cos(turn), float64(from.Y-really.Y)+d*math.Sin(turn))
}

// The slope term against trials: the mean square of what an unlevel tape costs.
func TestSlopeAgainstTrials(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	const d, rise = 2000.0, 150.0
	sum := 0.0
	for range 200_000 {
		h := rng.NormFloat64() * rise
		sum += square(d - math.Sqrt(d*d-h*h))
	}
	got := Tape{Rise: 150 * mm}.Sigma(2000 * mm).Millimetres()
	if want := math.Sqrt(sum / 200_000); math.Abs(got/want-1) > 0.04 {
		t.Errorf("slope %v mm, trials gave %v", got, want)
	}
}

// numeric is the long semi-axis of a pair by differences of Cross: no angle
// of cut and no closed form.
func numeric(t *testing.T, r *Request, m, n Mark) (major float64, ok bool) {
	t.Helper()
	if geom.SegmentEntersRect(m.At, r.Want, r.Obstacles[0]) || geom.SegmentEntersRect(n.At, r.Want, r.Obstacles[0]) {
		return 0, false
	}
	dm, dn := geom.Dist(m.At, r.Want), geom.Dist(n.At, r.Want)
	const h = 100 * measure.Micrometre
	at := func(em, en measure.Length) (geom.Point, bool) {
		l, rt, ok := Cross(m.At, n.At, dm+em, dn+en)
		if geom.DistSquared(l, r.Want).Cmp(geom.DistSquared(rt, r.Want)) > 0 {
			l = rt
		}
		return l, ok
	}
	var col [2][2]float64
	for i, e := range [2][2]measure.Length{{h, 0}, {0, h}} {
		p, ok1 := at(e[0], e[1])
		q, ok2 := at(-e[0], -e[1])
		if !ok1 || !ok2 {
			return 0, false
		}
		col[i] = [2]float64{float64(p.X-q.X) / float64(2*h), float64(p.Y-q.Y) / float64(2*h)}
	}
	var xx, xy, yy float64
	for i, m := range []Mark{m, n} {
		d := float64([]measure.Length{dm, dn}[i])
		v := square(float64(r.Tape.Constant)) + square(d*r.Tape.PPM/1e6) + square(float64(m.Place)) + square(float64(m.Size))/16 + square(float64(r.Sketch)) + square(float64(r.Tape.Step))/12
		xx += v * col[i][0] * col[i][0]
		xy += v * col[i][0] * col[i][1]
		yy += v * col[i][1] * col[i][1]
	}
	xx, yy = xx+square(float64(r.Sketch)), yy+square(float64(r.Sketch))
	return math.Sqrt((xx+yy)/2 + math.Hypot((xx-yy)/2, xy)), true
}

// The chosen pair is the best of all pairs, and the runner-up the best of the
// others, each tried by another way of reckoning.
func TestBestOfAllPairs(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 14))
	answered := 0
	for range 300 {
		r := Request{
			Want:      metres(8*rng.Float64(), 6*rng.Float64()),
			Obstacles: []geom.Rect{{Min: metres(2, 2), Max: metres(2+3*rng.Float64(), 2.5)}},
			Tape:      Tape{Constant: 3 * mm, PPM: 500, Step: mm},
			Sketch:    4 * mm,
		}
		for i := range 2 + rng.IntN(7) {
			m := mark(fmt.Sprint("m", i), 8*rng.Float64(), 6*rng.Float64())
			m.Size, m.Place = measure.Length(rng.IntN(150))*mm, measure.Length(rng.IntN(10))*mm
			r.Marks = append(r.Marks, m)
		}
		var all []float64
		for i, m := range r.Marks {
			for _, n := range r.Marks[:i] {
				if major, ok := numeric(t, &r, n, m); ok {
					all = append(all, major)
				}
			}
		}
		slices.Sort(all)
		a := find(t, r)
		for i, p := range []*Pair{a.Best, a.RunnerUp} {
			if p == nil {
				if len(all) > i {
					t.Errorf("no pair %d of %v", i, all)
				}
				continue
			}
			answered++
			// Differences say little of a cut so flat that the error is feet long.
			close := 0.002
			if p.Error.Major > measure.Foot {
				close = 0.03
			}
			if got := float64(p.Error.Major); len(all) <= i || math.Abs(got/all[i]-1) > close {
				t.Errorf("pair %d of %v: %v", i, all, got)
			}
		}
	}
	if answered < 400 {
		t.Errorf("only %d pairs were compared", answered)
	}
}

// The check tells the sides apart and fits within its spread.
func TestCheckAgainstTrials(t *testing.T) {
	h := &house{rand.New(rand.NewPCG(5, 9)), request()}
	h.r.Want = metres(3, 3)
	a := find(t, h.r)
	c := a.Check
	if c == nil || c.Mark == a.Best.Marks[0] || c.Mark == a.Best.Marks[1] {
		t.Fatalf("check %+v", c)
	}
	left, right, _ := Cross(a.Best.Marks[0].At, a.Best.Marks[1].At, a.Best.Distance[0].Exact, a.Best.Distance[1].Exact)
	wrong := right
	if a.Best.Side == Right {
		wrong = left
	}
	if got := geom.Dist(c.Mark.At, wrong); !near(c.OtherSide, got.Millimetres(), 0.01) {
		t.Errorf("other side %v, want %v", c.OtherSide, got)
	}
	// The distance from where the third mark's end is held to where the arcs
	// cross, against the distance on the plan.
	var sum float64
	for range trials {
		l, r, ok := Cross(h.held(a.Best.Marks[0]), h.held(a.Best.Marks[1]), h.taped(a.Best.Distance[0].Exact), h.taped(a.Best.Distance[1].Exact))
		if a.Best.Side == Right {
			l = r
		}
		if !ok {
			t.Fatal("no fix")
		}
		sum += square(float64(h.taped(geom.Dist(h.held(c.Mark), l)) - c.Distance.Exact))
	}
	if want := math.Sqrt(sum / trials); math.Abs(float64(c.Sigma)/want-1) > 0.03 {
		t.Errorf("sigma of the check %v mm, trials gave %v", c.Sigma.Millimetres(), want/1e6)
	}
}
