package pull

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"topplate/plan/measure"
)

const m = measure.Metre

// pounds is a force in newtons: one pound-force is 4.4482216152605 N exactly
// (NIST Special Publication 811, appendix B).
func pounds(lbf float64) float64 { return lbf * 4.4482216152605 }

func tension(t *testing.T, p Path, l Load) Pull {
	t.Helper()
	got, err := Tension(p, l)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func about(got, want, within float64) bool { return math.Abs(got-want) <= within }

// The capstan table: tension ratio by friction and angle. CAP01 is 2.1933 and
// 4.8105 at 0.5.
func TestCapstanTable(t *testing.T) {
	for _, row := range []struct {
		friction float64
		want     [4]float64 // 45°, 90°, 180°, 270°
	}{
		{0.20, [4]float64{1.1701, 1.3691, 1.8745, 2.5663}},
		{0.35, [4]float64{1.3164, 1.7329, 3.0028, 5.2035}},
		{0.50, [4]float64{1.4810, 2.1933, 4.8105, 10.5507}},
		{0.60, [4]float64{1.6020, 2.5663, 6.5861, 16.902}},
	} {
		for i, turn := range []Angle{45 * Degree, Square, 2 * Square, 3 * Square} {
			got := tension(t, Path{Bend(turn)}, Load{Friction: row.friction, Feed: 1}).Most
			if !about(got, row.want[i], 0.0006) {
				t.Errorf("friction %v, bend %d: %v, want %v", row.friction, i, got, row.want[i])
			}
		}
	}
}

// CAP02: 5 lbf fed round one, two and three square bends at 0.5 is 10.97,
// 24.05 and 52.75 lbf. Two bends reach 25 lbf (110 N as printed) from 5.20 lbf.
func TestBendsMultiply(t *testing.T) {
	p := Path{Bend(Square), Bend(Square), Bend(Square)}
	got := tension(t, p, Load{Friction: 0.5, Feed: pounds(5)})
	for i, want := range []float64{10.97, 24.05, 52.75} {
		if !about(got.After[i], pounds(want), pounds(0.006)) {
			t.Errorf("after bend %d: %v N, want %v lbf", i+1, got.After[i], want)
		}
	}
	if got.Most != got.After[2] || got.At != 2 {
		t.Errorf("most %v at %d", got.Most, got.At)
	}
	for _, tt := range []struct {
		feed   float64
		within bool
	}{{5.19, true}, {5.21, false}} {
		_, err := Points(p[:2], Load{Friction: 0.5, Feed: pounds(tt.feed)}, Limits{Tension: pounds(25)})
		if (err == nil) != tt.within {
			t.Errorf("fed with %v lbf: %v", tt.feed, err)
		}
	}
}

// CAP03: 40 kg/km, 0.5, fed with 2 N: 6 m level, bend, 10 m level, bend:
// 3.177, 6.968, 8.930, 19.587 N. Its 0.392 N/m took 9.81 m/s².
func TestPathWorkedExample(t *testing.T) {
	l := Load{Mass: 0.04 * 9.81 / gravity, Friction: 0.5, Feed: 2}
	p := Path{Straight(6*m, 0), Bend(Square), Straight(10*m, 0), Bend(Square)}
	got := tension(t, p, l)
	for i, want := range []float64{3.177, 6.968, 8.930, 19.587} {
		if !about(got.After[i], want, 0.0011) {
			t.Errorf("after piece %d: %v, want %v", i+1, got.After[i], want)
		}
	}
	if got.End(l) != got.After[3] || tension(t, nil, l).End(l) != 2 || tension(t, nil, l).At != -1 {
		t.Error("the end of a pull")
	}
}

// Worked examples of published pages on pulling cable: 500 m of 2.5 kg/m at
// 0.4 take 4905 N, 300 ft of 0.5 lbf/ft at 0.25 take 37.5 lbf (both an article
// on straight runs), and 200 ft of 1.5 lbf/ft at 0.3 take 90 lbf, then 144 lbf
// round a square bend (a page on feeder cable).
func TestPublishedExamples(t *testing.T) {
	perFoot := func(lbf float64) float64 { return pounds(lbf) / 0.3048 / gravity }
	got := tension(t, Path{Straight(500*m, 0)}, Load{Mass: 2.5 * 9.81 / gravity, Friction: 0.4})
	if !about(got.Most, 4905, 0.001) {
		t.Errorf("500 m: %v N, want 4905", got.Most)
	}
	got = tension(t, Path{Straight(300*measure.Foot, 0)}, Load{Mass: perFoot(0.5), Friction: 0.25})
	if !about(got.Most, pounds(37.5), 1e-5) {
		t.Errorf("300 ft: %v N, want 37.5 lbf", got.Most)
	}
	got = tension(t, Path{Straight(200*measure.Foot, 0), Bend(Square)}, Load{Mass: perFoot(1.5), Friction: 0.3})
	if !about(got.After[0], pounds(90), 1e-5) || !about(got.After[1], pounds(144), pounds(0.5)) {
		t.Errorf("feeder: %v, want 90 and 144 lbf", got.After)
	}
}

// Published for a slope of θ: T2 = T1 + L·W·(sin θ + K·cos θ) up and
// T1 - L·W·(sin θ - K·cos θ) down, with the angle taken from a 3-4-5 triangle.
func TestSlopes(t *testing.T) {
	l := Load{Mass: 1, Friction: 0.5, Feed: 100}
	w := gravity
	for _, tt := range []struct {
		rise measure.Length
		want float64
	}{
		{3 * m, 100 + 5*w*(0.6+0.5*0.8)},
		{4 * m, 100 + 5*w*(0.8+0.5*0.6)},
		{5 * m, 100 + 5*w},
		{0, 100 + 5*w*0.5},
		{-1 * m, 100 - 5*w*(0.2-0.5*math.Sqrt(0.96))},
		// Going down steeply the guides give less than what is fed. Here it is
		// held back.
		{-4 * m, 100},
		{-5 * m, 100},
	} {
		if got := tension(t, Path{Straight(5*m, tt.rise)}, l).Most; !about(got, tt.want, 1e-5) {
			t.Errorf("rise %v: %v, want %v", tt.rise, got, tt.want)
		}
	}
	// Tension gained before is given back on the way down.
	got := tension(t, Path{Straight(5*m, 5*m), Straight(5*m, -5*m)}, l)
	if !about(got.After[1], 100, 1e-5) || got.At != 0 {
		t.Errorf("up and down: %+v", got)
	}
}

// Feed at the end that the bends are near (a utility contractor's column): the
// long run is then pulled after the bend, and not multiplied by it.
func TestBothEnds(t *testing.T) {
	l := Load{Mass: 0.1, Friction: 0.5, Feed: 1}
	p := Path{Straight(20*m, 0), Bend(Square), Straight(2*m, 0)}
	got, err := BothEnds(p, l)
	if err != nil || !got.FromEnd {
		t.Fatalf("%+v %v", got, err)
	}
	w := 0.1 * gravity * 0.5
	f := math.Exp(math.Pi / 4)
	if !about(got.Forward.Most, (1+20*w)*f+2*w, 1e-5) || !about(got.Backward.Most, (1+2*w)*f+20*w, 1e-5) {
		t.Errorf("%v and %v", got.Forward.Most, got.Backward.Most)
	}
	if got, _ := BothEnds(p.Reverse(), l); got.FromEnd {
		t.Error("reversed, the start is the end to feed")
	}
	if got, _ := BothEnds(Path{Straight(5*m, 0)}, l); got.FromEnd {
		t.Error("a tie goes to the end")
	}
	// Up a wall: cheaper pulled down.
	if got, _ := BothEnds(Path{Straight(5*m, 5*m)}, l); !got.FromEnd {
		t.Error("pulling up is as good as down")
	}
	if !about(tension(t, p.Reverse().Reverse(), l).Most, got.Forward.Most, 0) {
		t.Error("reversed twice is not the same")
	}
}

func TestBadInput(t *testing.T) {
	nan := math.NaN()
	for _, tt := range []struct {
		p    Path
		l    Load
		want string
	}{
		{Path{Straight(-1, 0)}, Load{}, "piece 1 is"},
		{Path{Straight(math.MaxInt64, 0)}, Load{}, "piece 1 is"},
		{Path{Straight(MaxLength, 0), Straight(1, 0)}, Load{}, "the path is longer"},
		{Path{Straight(m, 2*m)}, Load{}, "piece 1 rises"},
		{Path{Straight(m, -2*m)}, Load{}, "piece 1 rises"},
		{Path{Bend(-1)}, Load{}, "piece 1 turns"},
		{Path{Bend(361 * Degree)}, Load{}, "piece 1 turns"},
		{Path{{Length: m, Turn: Square}}, Load{}, "piece 1 is a bend with a length"},
		{Path{{Open: true, Turn: Square}}, Load{}, "piece 1 is a bend with a length"},
		{nil, Load{Mass: nan}, "the mass is NaN"},
		{nil, Load{Friction: -1}, "the friction is -1"},
		{nil, Load{Feed: math.Inf(1)}, "the feed tension is +Inf"},
		{make(Path, MaxPieces+1), Load{}, "10001 pieces"},
	} {
		for name, err := range map[string]error{
			"Tension":    second(Tension(tt.p, tt.l)),
			"BothEnds":   second(BothEnds(tt.p, tt.l)),
			"Points":     second(Points(tt.p, tt.l, Limits{})),
			"BestPoints": second(BestPoints(tt.p, tt.l, Limits{})),
		} {
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("%s of %v %v: %v, want %q", name, tt.p, tt.l, err, tt.want)
			}
		}
	}
	for _, lim := range []Limits{{Tension: nan}, {Tension: -1}, {Turn: -1}, {Length: -1}} {
		if _, err := Points(nil, Load{}, lim); err == nil {
			t.Errorf("limits %v are taken", lim)
		}
	}
}

func second[T any](_ T, err error) error { return err }

// open is an open straight piece.
func open(length measure.Length) Piece { return Piece{Length: length, Open: true} }

// TIA-569: two square bends and 30 m (100 ft) between pull points.
var tia569 = Limits{Turn: 2 * Square, Length: 30 * m}

func TestPointsByBendsAndLength(t *testing.T) {
	hatch := open(0)
	for _, tt := range []struct {
		name string
		p    Path
		want []Place
	}{
		{"nothing", nil, nil},
		{"30 m", Path{Straight(30*m, 0)}, nil},
		{"two bends", Path{Bend(Square), Straight(29*m, 0), Bend(Square)}, nil},
		{"70 m open", Path{open(70 * m)}, []Place{{0, 30 * m}, {0, 60 * m}}},
		{"60 m open", Path{open(60 * m)}, []Place{{0, 30 * m}}},
		{"three bends, open between", Path{Bend(Square), open(4 * m), Bend(Square), open(3 * m), Bend(Square)}, []Place{{4, 0}}},
		{"a hatch between bends", Path{Bend(Square), Bend(Square), hatch, Bend(Square)}, []Place{{3, 0}}},
		{"a hatch too early for one stretch", Path{Straight(10*m, 0), hatch, Straight(25*m, 0), hatch, Straight(20*m, 0)}, []Place{{2, 0}, {4, 0}}},
		{"before the bend", Path{open(20 * m), Bend(Square), Bend(Square), Bend(45 * Degree), Straight(5*m, 0)}, nil},
	} {
		got, err := Points(tt.p, Load{Friction: 0.3}, tia569)
		if tt.name == "before the bend" {
			var stuck *StuckError
			if !errors.As(err, &stuck) || !stuck.Turn || stuck.Length || stuck.Tension || stuck.From != (Place{1, 0}) || stuck.To != (Place{5, 0}) ||
				!strings.Contains(err.Error(), "bends of 225° together") {
				t.Errorf("%s: %v %+v", tt.name, err, stuck)
			}
			continue
		}
		if err != nil || !samePlaces(got.Points, tt.want) {
			t.Errorf("%s: %v %v, want %v", tt.name, got.Points, err, tt.want)
		}
		holds(t, tt.p, Load{Friction: 0.3}, tia569, got)
	}
	if _, err := Points(Path{Straight(31*m, 0), hatch}, Load{}, tia569); err == nil || !strings.Contains(err.Error(), "a length of") {
		t.Errorf("31 m without an opening: %v", err)
	}
	// Too hard from the start, on a path of nothing too.
	if _, err := Points(nil, Load{Feed: 120}, Limits{Tension: 110}); err == nil {
		t.Error("120 N are within 110 N")
	}
	if _, err := Points(Path{hatch}, Load{Feed: 120}, Limits{Tension: 110}); err == nil || !strings.Contains(err.Error(), "a tension of 120.0 N") {
		t.Errorf("fed beyond the limit: %v", err)
	}
}

func samePlaces(a, b []Place) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// holds checks a plan by its promises alone: it covers the path from end to
// end, every point is open and every stretch is within the limits, reckoned
// by the published formula with sines and cosines.
func holds(t *testing.T, p Path, l Load, lim Limits, plan Plan) {
	t.Helper()
	ends := append(append([]Place{{}}, plan.Points...), Place{len(p), 0})
	if len(plan.Stretches) != len(ends)-1 {
		t.Fatalf("%d stretches with %d points", len(plan.Stretches), len(plan.Points))
	}
	for _, at := range plan.Points {
		inside := at.Piece < len(p) && p[at.Piece].Open
		if !inside && (at.At != 0 || at.Piece == 0 || !p[at.Piece-1].Open) {
			t.Errorf("the point %v is not open", at)
		}
	}
	for i, s := range plan.Stretches {
		if s.From != ends[i] || s.To != ends[i+1] {
			t.Errorf("stretch %d goes from %v to %v, want %v to %v", i, s.From, s.To, ends[i], ends[i+1])
		}
		t2, most := l.Feed, l.Feed
		var length measure.Length
		var turn Angle
		for k := s.From.Piece; k < len(p) && k <= s.To.Piece; k++ {
			piece, from, to := p[k], measure.Length(0), p[k].Length
			if k == s.From.Piece {
				from = s.From.At
			}
			if k == s.To.Piece {
				if s.To.At == 0 {
					break
				}
				to = s.To.At
			}
			if piece.Length > 0 {
				sin := float64(piece.Rise) / float64(piece.Length)
				t2 += (to - from).Metres() * l.Mass * gravity * (sin + l.Friction*math.Cos(math.Asin(sin)))
			}
			t2 = max(l.Feed, t2*math.Exp(l.Friction*math.Pi/180*float64(piece.Turn)/float64(Degree)))
			most = max(most, t2)
			length, turn = length+to-from, turn+piece.Turn
		}
		if length != s.Length || turn != s.Turn || !about(most, s.Tension, 1e-5*(1+most)) {
			t.Errorf("stretch %d: %+v, want %v, %v, %v", i, s, length, turn, most)
		}
		if lim.Length > 0 && length > lim.Length || lim.Turn > 0 && turn > lim.Turn || lim.Tension > 0 && most > lim.Tension+1e-5*(1+most) {
			t.Errorf("stretch %d is beyond the limits: %+v", i, s)
		}
	}
}

// random is a path with openings without length, so that all places for pull
// points can be tried.
func random(rng *rand.Rand) (Path, Load, Limits) {
	var p Path
	for range 1 + rng.IntN(14) {
		switch rng.IntN(4) {
		case 0:
			p = append(p, open(0))
		case 1:
			p = append(p, Bend(Angle(1+rng.IntN(90))*Degree))
		default:
			length := measure.Length(1+rng.IntN(12)) * m
			rise := measure.Length(rng.IntN(5)-2) * length / 2
			p = append(p, Straight(length, rise))
		}
	}
	l := Load{Mass: rng.Float64() / 5, Friction: rng.Float64(), Feed: 3 * rng.Float64()}
	lim := Limits{}
	if rng.IntN(2) == 0 {
		lim.Tension = 1 + 40*rng.Float64()
	}
	if rng.IntN(2) == 0 {
		lim.Turn = Angle(30+rng.IntN(200)) * Degree
	}
	if rng.IntN(2) == 0 {
		lim.Length = measure.Length(8+rng.IntN(30)) * m
	}
	return p, l, lim
}

// fewest tries every set of hatches, each stretch a path of its own. It knows
// no order of trying that would matter. It returns -1 if none serves.
func fewest(t *testing.T, p Path, l Load, lim Limits) int {
	var hatches []int
	for i, piece := range p {
		if piece.Open {
			hatches = append(hatches, i)
		}
	}
	best := -1
	for set := range 1 << len(hatches) {
		start, n, ok := 0, 0, true
		ends := []int{}
		for k, i := range hatches {
			if set>>k&1 == 1 {
				ends = append(ends, i)
				n++
			}
		}
		for _, end := range append(ends, len(p)) {
			got := tension(t, p[start:end], l)
			var length measure.Length
			var turn Angle
			for _, piece := range p[start:end] {
				length, turn = length+piece.Length, turn+piece.Turn
			}
			ok = ok && (lim.Tension == 0 || got.Most <= lim.Tension) && (lim.Turn == 0 || turn <= lim.Turn) && (lim.Length == 0 || length <= lim.Length)
			start = end
		}
		if ok && (best < 0 || n < best) {
			best = n
		}
	}
	return best
}

func TestFewestPoints(t *testing.T) {
	rng := rand.New(rand.NewPCG(20, 26))
	solved, stuck, several := 0, 0, 0
	for range 4000 {
		p, l, lim := random(rng)
		want := fewest(t, p, l, lim)
		plan, err := Points(p, l, lim)
		if (err == nil) != (want >= 0) || err == nil && len(plan.Points) != want {
			t.Fatalf("%v %+v %+v: %d points, %v, want %d", p, l, lim, len(plan.Points), err, want)
		}
		if err != nil {
			var s *StuckError
			if stuck++; !errors.As(err, &s) || !(s.Tension || s.Turn || s.Length) {
				t.Fatalf("%v", err)
			}
			continue
		}
		holds(t, p, l, lim, plan)
		solved++
		if want > 1 {
			several++
		}
		best, err := BestPoints(p, l, lim)
		back := fewest(t, p.Reverse(), l, lim)
		if err != nil || len(best.Points) != min(want, max(back, 0)) && back >= 0 || best.FromEnd && len(best.Points) != back {
			t.Fatalf("best %+v %v, want %d or from the end %d", best, err, want, back)
		}
	}
	if solved < 500 || stuck < 500 || several < 50 {
		t.Errorf("%d solved, %d stuck, %d with several points", solved, stuck, several)
	}
}

// With openings along straight pieces there are no more points than with any
// that lie on whole metres, and where the limit is whole metres, as many.
func TestFewestPointsAlongPieces(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 12))
	for range 150 {
		p, l, lim := random(rng)
		var fine, coarse Path
		for _, piece := range p[:min(len(p), 6)] {
			piece.Open = false
			if piece.Turn > 0 || piece.Length == 0 || rng.IntN(2) == 0 {
				fine, coarse = append(fine, piece), append(coarse, piece)
				continue
			}
			n := int(piece.Length / (3 * m))
			piece.Rise, piece.Length = 0, measure.Length(3*n)*m
			fine, coarse = append(fine, Piece{Length: piece.Length, Open: true}), append(coarse, open(0))
			for range n {
				coarse = append(coarse, Straight(3*m, 0), open(0))
			}
		}
		lim.Length = lim.Length / (3 * m) * (3 * m)
		want := fewest(t, coarse, l, lim)
		got, err := Points(fine, l, lim)
		if want >= 0 && (err != nil || len(got.Points) > want) {
			t.Fatalf("%v: %+v %v, on metres %d", fine, got, err, want)
		}
		if err == nil {
			holds(t, fine, l, lim, got)
		}
	}
}

// Seen from the end the places are those of the path as given.
func TestPlanFromTheEnd(t *testing.T) {
	l := Load{Mass: 0.05, Friction: 0.5, Feed: 2}
	lim := Limits{Tension: 10.5}
	p := Path{open(35 * m), Bend(Square), Straight(1*m, 0), Bend(Square)}
	best, err := BestPoints(p, l, lim)
	if err != nil || !best.FromEnd || len(best.Points) != 1 {
		t.Fatalf("%+v %v", best, err)
	}
	s := best.Stretches[0]
	if s.From != (Place{4, 0}) || s.To != best.Points[0] || best.Points[0].Piece != 0 || best.Stretches[1].To != (Place{}) {
		t.Errorf("%+v", best)
	}
	// Fed at the end: both bends first, then as much of the open run as
	// 10.5 N allow, which is measured from the far end of the path.
	w := 0.05 * gravity * 0.5
	f := math.Exp(math.Pi / 4)
	run := (10.5 - ((2*f)+w)*f) / w
	if got := (35*m - best.Points[0].At).Metres(); !about(got, run, 1e-4) {
		t.Errorf("pulled out after %v m of the run, want %v", got, run)
	}
	var seen Plan
	if seen = (Plan{Points: []Place{{1, 0}, {4, 0}}}).seenFrom(p); seen.Points[0] != (Place{3, 0}) || seen.Points[1] != (Place{}) {
		t.Errorf("%v", seen.Points)
	}
}

// With as many points either way the smaller tension decides, and then the
// start of the path.
func TestBetterEnd(t *testing.T) {
	l := Load{Mass: 0.1, Friction: 0.5, Feed: 1}
	bendFirst := Path{Straight(2*m, 0), Bend(Square), Straight(20*m, 0)}
	for _, tt := range []struct {
		p       Path
		fromEnd bool
	}{{bendFirst, false}, {bendFirst.Reverse(), true}, {Path{Straight(5*m, 0)}, false}} {
		got, err := BestPoints(tt.p, l, tia569)
		if err != nil || got.FromEnd != tt.fromEnd || len(got.Stretches) != 1 || !about(got.most(), tension(t, bendFirst, l).Most, 1e-9) && len(tt.p) == 3 {
			t.Errorf("%v: %+v %v", tt.p, got, err)
		}
	}
}

// More friction, mass, feed or length is never less tension, and a looser limit
// never more points.
func TestMoreIsNeverLess(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		p, l, lim := random(rng)
		base := tension(t, p, l).Most
		for _, more := range []Load{
			{l.Mass, l.Friction + 0.1, l.Feed},
			{l.Mass, l.Friction, l.Feed + 1},
		} {
			if got := tension(t, p, more).Most; got < base {
				t.Fatalf("%v: %v with %+v, %v with %+v", p, got, more, base, l)
			}
		}
		if got := tension(t, append(p, Straight(2*m, 0)), l).Most; got < base {
			t.Fatalf("longer: %v, %v", got, base)
		}
		a, err := Points(p, l, lim)
		if err != nil {
			continue
		}
		b, err := Points(p, l, Limits{lim.Tension * 1.2, lim.Turn * 2, lim.Length * 2})
		if err != nil || len(b.Points) > len(a.Points) {
			t.Fatalf("looser limits: %d points, %v, before %d", len(b.Points), err, len(a.Points))
		}
	}
}

// A huge path stays finite and quick.
func TestLargePath(t *testing.T) {
	p := make(Path, MaxPieces)
	for i := range p {
		if p[i] = open(9 * m); i%2 == 1 {
			p[i] = Bend(Square)
		}
	}
	got := tension(t, p, Load{Mass: 1, Friction: 5, Feed: 1})
	if got.Most != MaxTension {
		t.Errorf("most %v", got.Most)
	}
	plan, err := Points(p, Load{Mass: 1, Friction: 0.5, Feed: 1}, tia569)
	if err != nil || len(plan.Points) < 2000 {
		t.Errorf("%d points, %v", len(plan.Points), err)
	}
}

// A limit a hair above the feed would need a pull point every fifth of a millimetre.
func TestTooManyPoints(t *testing.T) {
	_, err := Points(Path{open(100 * m)}, Load{Mass: 1, Friction: 0.5, Feed: 1}, Limits{Tension: 1.001})
	if err == nil || !strings.Contains(err.Error(), "more than 10000 pull points") {
		t.Errorf("%v", err)
	}
}

// Whatever comes in, tensions are finite and plans keep their promises.
func FuzzPoints(f *testing.F) {
	f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8}, 0.04, 0.5, 2.0, 25.0)
	f.Add([]byte{200, 3, 130, 0, 255, 9, 64, 65, 66}, math.Inf(1), math.NaN(), -1.0, 1e300)
	f.Add([]byte{}, 0.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, data []byte, mass, friction, feed, most float64) {
		var p Path
		lim := Limits{Tension: most}
		for i, b := range data[:min(len(data), 40)] {
			length := measure.Length(b>>2) * m / 3
			switch b % 4 {
			case 0:
				p = append(p, Bend(Angle(b)*Degree))
			case 1:
				p = append(p, open(length))
			case 2:
				p = append(p, Piece{Length: length, Rise: length * measure.Length(i%7-3) / 3, Open: b > 128})
			default:
				p = append(p, Straight(length, -length))
			}
			lim.Length = max(lim.Length, 2*length)
			lim.Turn = 2 * Square
		}
		l := Load{Mass: mass, Friction: friction, Feed: feed}
		got, err := Tension(p, l)
		if err != nil {
			return
		}
		if !(got.Most >= feed && got.Most <= MaxTension) {
			t.Errorf("most %v", got.Most)
		}
		if plan, err := Points(p, l, lim); err == nil && mass < 10 && got.Most < 1e6 {
			holds(t, p, l, lim, plan)
		}
	})
}
