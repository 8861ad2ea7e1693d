package survey

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// metres and line make the networks of books, in which heights take the place
// of one coordinate. A network on one line has its unknowns in X, and one more
// that holds all Y.
func metres(m float64) measure.Length { return measure.Length(math.Round(m * 1e9)) }

type run1D struct{ from, to, length, sigma float64 }

func line(held []float64, free int, runs []run1D) Network {
	n := Network{}
	for _, h := range held {
		n.Near, n.Held = append(n.Near, metres(h)), append(n.Held, true)
	}
	for range free {
		n.Near, n.Held = append(n.Near, 0), append(n.Held, false)
	}
	y := len(n.Near)
	n.Near, n.Held = append(n.Near, 0), append(n.Held, true)
	for _, r := range runs {
		n.Observations = append(n.Observations, Observation{
			From: Station{X: int(r.from), Y: y}, To: Station{X: int(r.to), Y: y},
			Length: metres(r.length), Sigma: metres(r.sigma),
		})
	}
	return n
}

func adjusted(t testing.TB, n Network) *Adjustment {
	t.Helper()
	a, err := Adjust(n)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// The published output of GNU Gama 1.5.09 for its sample of a level ring that
// was run both ways ("Sample 1D vertical least square adjustment", vrmapper
// pages): one height known, 1000 m, eight differences of 5 mm each. It prints
// heights to 0.01 mm, the sum of squares in mm² and the largest normalized
// residual, of observation 6.
func TestPublishedRing(t *testing.T) {
	a := adjusted(t, line([]float64{1000}, 3, []run1D{ // 0 is 1a; 1, 2, 3 are 2, 3, 4
		{0, 3, -1.225, 0.005},
		{3, 2, -0.848, 0.005},
		{2, 1, 1.342, 0.005},
		{1, 0, 0.720, 0.005},
		{0, 1, -0.724, 0.005},
		{1, 2, -1.335, 0.005},
		{2, 3, 0.842, 0.005},
		{3, 0, 1.231, 0.005},
	}))
	for i, want := range []float64{1000, 999.27487, 997.93325, 998.77513} {
		near(t, "height", a.Values[i], measure.Metre, want, 0.000006)
	}
	if a.Redundancy != 5 {
		t.Errorf("redundancy %d, want 5", a.Redundancy)
	}
	if got := a.Squares * 25; math.Abs(got-146.625) > 0.001 {
		t.Errorf("[pvv] = %.4f mm², want 146.625", got)
	}
	worst, at := 0.0, 0
	for i, o := range a.Outcomes {
		if w := math.Abs(o.Standardised); w > worst {
			worst, at = w, i+1
		}
	}
	if at != 6 || math.Abs(worst-1.68) > 0.005 {
		t.Errorf("largest normalized residual %.3f of observation %d, want 1.68 of 6", worst, at)
	}
	if got := a.Doubtful(Snooping); got != nil {
		t.Errorf("doubts %v of a good ring", got)
	}
	if got := a.Doubtful(Critical{Value: 1.645}); !slices.Equal(got, []int{5}) {
		t.Errorf("doubts %v at 1.645, want observation 6", got)
	}
}

// The levelling network of G. Strang and K. Borre, Linear Algebra, Geodesy and
// GPS, as adjusted by another program in a public discussion ("How would you
// adjust this leveling data?"): standard errors of 6 mm times the root of the
// length in km, sum of the squares of residuals over them 4.636, error factor
// 1.243.
func TestPublishedLevelling(t *testing.T) {
	se := func(m float64) float64 { return 0.006 * math.Sqrt(m/1000) }
	a := adjusted(t, line([]float64{10.021, 10.321, 11.002}, 2, []run1D{
		{0, 3, 0.732, se(970)}, {0, 4, 1.978, se(1002)}, {1, 3, 0.420, se(1070)}, {2, 4, 0.988, se(1110)}, {3, 4, 1.258, se(890)},
	}))
	if math.Abs(a.Squares-4.636) > 0.0005 || a.Redundancy != 3 {
		t.Errorf("sum of squares %.4f of redundancy %d, want 4.636 of 3", a.Squares, a.Redundancy)
	}
	if got := math.Sqrt(a.Squares / 3); math.Abs(got-1.243) > 0.0005 {
		t.Errorf("error factor %.4f, want 1.243", got)
	}
}

// Two lengths of one line are worked by hand: 10.00 m of 1 cm and 10.05 m of
// 2 cm have weights 4 and 1, so the line is 10.01 m. Redundancy numbers are
// 1/5 and 4/5, and both standardised residuals 5 cm over the root of 5 cm².
func TestTwoTapes(t *testing.T) {
	a := adjusted(t, line([]float64{0}, 1, []run1D{{0, 1, 10, 0.01}, {0, 1, 10.05, 0.02}}))
	near(t, "line", a.Values[1], measure.Metre, 10.01, 1e-9)
	for i, want := range []Outcome{
		{metres(0.01), 0.2, math.Sqrt(5), metres(10.05)}, {metres(-0.04), 0.8, -math.Sqrt(5), metres(10)},
	} {
		got := a.Outcomes[i]
		if got.Residual != want.Residual || got.Expected != want.Expected ||
			math.Abs(got.Redundancy-want.Redundancy) > 1e-9 || math.Abs(got.Standardised-want.Standardised) > 1e-9 {
			t.Errorf("tape %d: %+v, want %+v", i, got, want)
		}
	}
	// Nothing can tell which of two is wrong.
	if got := a.Doubtful(Critical{Value: 2}); !slices.Equal(got, []int{0, 1}) {
		t.Errorf("doubts %v, want both", got)
	}
}

// The critical value is that of the normal distribution: a level of 0.001 on
// both sides.
func TestSnoopingLevel(t *testing.T) {
	if level := math.Erfc(Snooping.Value / math.Sqrt2); math.Abs(level-0.001) > 0.00001 {
		t.Errorf("a good measurement exceeds %.2f once in %.0f times, want 1000", Snooping.Value, 1/level)
	}
}

// loopNetwork is a run that closes on its start as a network of its latitudes
// and departures, each of a variance in proportion to the length of its leg.
// Legs along an axis share the unknown across it if directions are held.
func loopNetwork(legs []Leg, held bool) (n Network, at []Station) {
	n = Network{Near: []measure.Length{0, 0}, Held: []bool{true, true}}
	at = []Station{{X: 0, Y: 1}}
	last := map[Along]int{} // the leg that comes back to the start along an axis
	for i, leg := range legs {
		step := leg.Bearing.vector(leg.Length)
		if step.X != 0 || !held {
			last[AlongX] = i
		}
		if step.Y != 0 || !held {
			last[AlongY] = i
		}
	}
	near := geom.Point{}
	for i, leg := range legs {
		step := leg.Bearing.vector(leg.Length)
		near = near.Add(step)
		to := at[i]
		sigma := measure.Length(math.Sqrt(float64(leg.Length)) * 1e3)
		for along, unknown := range []*int{&to.X, &to.Y} {
			length, coordinate := []measure.Length{step.X, step.Y}[along], []measure.Length{near.X, near.Y}[along]
			if length == 0 && held {
				continue
			}
			if *unknown = along; last[Along(along)] != i {
				*unknown = len(n.Near)
				n.Near, n.Held = append(n.Near, coordinate), append(n.Held, false)
			}
			n.Observations = append(n.Observations, Observation{at[i], to, Along(along), length, sigma})
		}
		at = append(at, to)
	}
	return n, at
}

// The compass rule is least squares with the variances of latitude and
// departure in proportion to the length of the leg (Bowditch's own reason for
// it), so the published loops of traverse_test.go and least squares agree, and
// so do runs along the axes with directions held.
func TestCompassRuleIsLeastSquares(t *testing.T) {
	for _, run := range []string{
		`S 68°05'35" W 472.68ft, N 19°46'00" W 216.13ft, N 45°55'20" E 276.52ft, S 54°59'15" E 382.24ft`,
		"N 76° E 80.40m, S 36° E 46.30m, S 61° W 72.80m, N 38° W 68.00m",
		"E 40ft, N 26ft, W 39.94ft, S 25.96ft",
	} {
		legs := mustParse(t, run)
		loop := Close(legs, true, measure.Metre)
		n, at := loopNetwork(legs, loop.DirectionsHeld)
		a := adjusted(t, n)
		for i := range at {
			got := geom.Point{X: a.Values[at[i].X], Y: a.Values[at[i].Y]}
			if d := geom.Dist(got, loop.Points[i]); d > measure.Micrometre {
				t.Errorf("%s: corner %d is %v, by the compass rule %v", run, i, got, loop.Points[i])
			}
		}
	}
}

// A diagonal of a rectangle of 3 by 4, by hand: walls of 3 m and 4 m, the
// diagonal taped 5.05 m, all of one weight. By Lagrange, v = -kA for the
// condition 5 + 0.6 v1 + 0.8 v2 - v3 = 5.05 to first order: the squares of the
// coefficients add up to 2, so the walls take 0.6/2 and 0.8/2 of 5 cm and the
// diagonal 1/2.
func TestDiagonalByHand(t *testing.T) {
	n := Network{Near: []measure.Length{0, 0, metres(3), metres(4)}, Held: []bool{true, true, false, false}}
	corner := []Station{{X: 0, Y: 1}, {X: 2, Y: 1}, {X: 2, Y: 3}}
	sigma := 10 * measure.Millimetre
	n.Observations = []Observation{
		{From: corner[0], To: corner[1], Along: AlongX, Length: metres(3), Sigma: sigma},
		{From: corner[1], To: corner[2], Along: AlongY, Length: metres(4), Sigma: sigma},
		{From: corner[0], To: corner[2], Along: Straight, Length: metres(5.05), Sigma: sigma},
	}
	a := adjusted(t, n)
	for i, want := range []float64{0.015, 0.020, -0.025} {
		near(t, "residual", a.Outcomes[i].Residual, measure.Metre, want, 0.0002)
	}
	near(t, "diagonal by the walls", a.Outcomes[2].Expected, measure.Metre, 5, 0.0002)
	if got := math.Hypot(a.Values[2].Metres(), a.Values[3].Metres()) - 5.05; math.Abs(got-a.Outcomes[2].Residual.Metres()) > 2e-9 {
		t.Errorf("the points are %v m off the diagonal, the residual is %v", got, a.Outcomes[2].Residual)
	}
}

// randomNetwork is points with distances between all of them and the two axis
// differences of a few; the first is held.
func randomNetwork(rng *rand.Rand) (Network, []geom.Point) {
	points := make([]geom.Point, 3+rng.IntN(5))
	n := Network{}
	for i := range points {
		points[i] = geom.Point{X: metres(20 * rng.Float64()), Y: metres(20*rng.Float64()) + measure.Length(i)*30*measure.Metre}
		slip := func() measure.Length { return metres(0.1 * rng.NormFloat64()) }
		if i == 0 {
			slip = func() measure.Length { return 0 }
		}
		n.Near = append(n.Near, points[i].X+slip(), points[i].Y+slip())
		n.Held = append(n.Held, i == 0, i == 0)
	}
	for i := range points {
		for j := range i {
			from, to := Station{X: 2 * j, Y: 2*j + 1}, Station{X: 2 * i, Y: 2*i + 1}
			sigma := metres(0.005 + 0.02*rng.Float64())
			noise := func() measure.Length { return measure.Length(rng.NormFloat64() * float64(sigma)) }
			n.Observations = append(n.Observations, Observation{from, to, Straight, geom.Dist(points[i], points[j]) + noise(), sigma})
			if j == 0 || rng.IntN(2) == 0 {
				d := points[i].Sub(points[j])
				n.Observations = append(n.Observations, Observation{from, to, AlongX, d.X + noise(), sigma}, Observation{from, to, AlongY, d.Y + noise(), sigma})
			}
		}
	}
	return n, points
}

// An independent solution: gonum's QR factorisation of the whole design matrix,
// repeated until nothing moves, and the diagonal of I - Q Qᵀ.
func byQR(n Network) (values, redundancy, standardised []float64) {
	free := len(n.Near) - 2
	x := make([]float64, len(n.Near))
	for i := range x {
		x[i] = n.Near[i].Metres()
	}
	m := len(n.Observations)
	var q, r mat.Dense
	miss := mat.NewVecDense(m, nil)
	for range 15 {
		design := mat.NewDense(m, free, nil)
		for i, o := range n.Observations {
			dx, dy := x[o.To.X]-x[o.From.X], x[o.To.Y]-x[o.From.Y]
			d, ux, uy := dx, 1.0, 0.0
			switch o.Along {
			case AlongY:
				d, ux, uy = dy, 0, 1
			case Straight:
				d = math.Hypot(dx, dy)
				ux, uy = dx/d, dy/d
			}
			s := o.Sigma.Metres()
			miss.SetVec(i, (o.Length.Metres()-d)/s)
			for _, e := range []struct {
				at int
				by float64
			}{{o.From.X, -ux}, {o.To.X, ux}, {o.From.Y, -uy}, {o.To.Y, uy}} {
				if e.at > 1 {
					design.Set(i, e.at-2, design.At(i, e.at-2)+e.by/s)
				}
			}
		}
		var qr mat.QR
		qr.Factorize(design)
		var step mat.VecDense
		if err := qr.SolveVecTo(&step, false, miss); err != nil {
			panic(err)
		}
		for k := range free {
			x[k+2] += step.AtVec(k)
		}
		qr.QTo(&q)
		qr.RTo(&r)
	}
	for i := range m {
		h := 0.0
		for k := range free {
			h += q.At(i, k) * q.At(i, k)
		}
		redundancy = append(redundancy, 1-h)
		standardised = append(standardised, -miss.AtVec(i)/math.Sqrt(1-h))
	}
	return x, redundancy, standardised
}

func TestAgainstQR(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	for range 60 {
		n, _ := randomNetwork(rng)
		a := adjusted(t, n)
		values, redundancy, standardised := byQR(n)
		for i, v := range values {
			if math.Abs(v-a.Values[i].Metres()) > 3e-9 {
				t.Fatalf("value %d: %v, by QR %v", i, a.Values[i].Metres(), v)
			}
		}
		sum := 0.0
		for i, o := range a.Outcomes {
			sum += o.Redundancy
			if math.Abs(o.Redundancy-redundancy[i]) > 1e-6 || math.Abs(o.Standardised-standardised[i]) > 1e-5 {
				t.Fatalf("observation %d: %+v, by QR %v and %v", i, o, redundancy[i], standardised[i])
			}
		}
		if math.Abs(sum-float64(a.Redundancy)) > 1e-6 {
			t.Fatalf("redundancy numbers add up to %v, want %d", sum, a.Redundancy)
		}
	}
}

// No other values near those found have a smaller sum of squares.
func TestLeastIsLeast(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 14))
	for range 30 {
		n, _ := randomNetwork(rng)
		a := adjusted(t, n)
		least := squaresAt(n, a.Values)
		for range 200 {
			other := slices.Clone(a.Values)
			other[2+rng.IntN(len(other)-2)] += metres(0.01 * rng.NormFloat64())
			if s := squaresAt(n, other); s < least*(1-1e-6) { // values are rounded to the nanometre
				t.Fatalf("squares %v beside the least, %v", s, least)
			}
		}
		if math.Abs(least-a.Squares) > 1e-5*max(1, least) {
			t.Fatalf("squares %v, counted anew %v", a.Squares, least)
		}
	}
}

func squaresAt(n Network, x []measure.Length) float64 {
	sum := 0.0
	for _, o := range n.Observations {
		p := geom.Point{X: x[o.From.X], Y: x[o.From.Y]}.Add(o.From.Known)
		q := geom.Point{X: x[o.To.X], Y: x[o.To.Y]}.Add(o.To.Known)
		l := []measure.Length{q.X - p.X, q.Y - p.Y, geom.Dist(p, q)}[o.Along]
		e := float64(l-o.Length) / float64(o.Sigma)
		sum += e * e
	}
	return sum
}

// What is known of a station moves it as a whole: the same network with its
// stations set off by known amounts has the same unknowns.
func TestKnownOffsets(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 16))
	n, _ := randomNetwork(rng)
	want := adjusted(t, n)
	off := make([]geom.Point, len(n.Near))
	for i := range off {
		off[i] = geom.Point{X: metres(rng.Float64()), Y: metres(rng.Float64())}
	}
	m := n
	m.Near, m.Observations = slices.Clone(n.Near), slices.Clone(n.Observations)
	for i := range m.Near {
		m.Near[i] -= []measure.Length{off[i/2].X, off[i/2].Y}[i%2]
	}
	for i := range m.Observations {
		o := &m.Observations[i]
		o.From.Known, o.To.Known = off[o.From.X/2], off[o.To.X/2]
	}
	got := adjusted(t, m)
	for i := range got.Values {
		if d := got.Values[i] + []measure.Length{off[i/2].X, off[i/2].Y}[i%2] - want.Values[i]; d < -1 || d > 1 {
			t.Errorf("unknown %d is %d nm off", i, d)
		}
	}
}

func TestFitErrors(t *testing.T) {
	sigma := 5 * measure.Millimetre
	a, b, c := Station{X: 0, Y: 1}, Station{X: 2, Y: 3}, Station{X: 4, Y: 5}
	near := []measure.Length{0, 0, metres(3), metres(4), metres(8), metres(1)}
	held := []bool{true, true, false, false, false, false}
	straight := func(p, q Station, m float64) Observation { return Observation{p, q, Straight, metres(m), sigma} }
	tests := []struct {
		name string
		obs  []Observation
		want FitError
	}{
		{"nothing places c", []Observation{{a, b, AlongX, metres(3), sigma}, {a, b, AlongY, metres(4), sigma}}, FitError{4, -1}},
		{"it can turn", []Observation{straight(a, b, 5), straight(b, c, 5.8), straight(a, c, 8.1)}, FitError{5, -1}},
		{"one place", []Observation{straight(b, b, 1)}, FitError{-1, 0}},
	}
	for _, tt := range tests {
		got, err := Adjust(Network{near, held, tt.obs})
		var fault *FitError
		if !errors.As(err, &fault) || *fault != tt.want || fault.Error() == "" {
			t.Errorf("%s: %+v, %v; want %+v", tt.name, got, err, tt.want)
		}
	}
	none, err := Adjust(Network{})
	if err != nil || len(none.Values) != 0 || none.Doubtful(Snooping) != nil {
		t.Errorf("an empty network: %+v, %v", none, err)
	}
}

// Distances that cannot come together either fit badly or say so; nothing
// hangs or panics.
func TestNonsense(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := rapid.IntRange(1, 5).Draw(t, "points")
		n := Network{}
		length := rapid.Int64Range(-int64(measure.MaxParsed), int64(measure.MaxParsed))
		for range 2 * points {
			n.Near = append(n.Near, measure.Length(length.Draw(t, "near")))
			n.Held = append(n.Held, rapid.Bool().Draw(t, "held"))
		}
		station := rapid.Custom(func(t *rapid.T) Station {
			return Station{X: rapid.IntRange(0, 2*points-1).Draw(t, "x"), Y: rapid.IntRange(0, 2*points-1).Draw(t, "y")}
		})
		for range rapid.IntRange(0, 12).Draw(t, "observations") {
			n.Observations = append(n.Observations, Observation{
				station.Draw(t, "from"), station.Draw(t, "to"), Along(rapid.IntRange(0, 2).Draw(t, "along")),
				measure.Length(length.Draw(t, "length")), measure.Length(rapid.Int64Range(1, 1e9).Draw(t, "sigma")),
			})
		}
		a, err := Adjust(n)
		if (a == nil) == (err == nil) {
			t.Fatalf("%+v, %v", a, err)
		}
		if a != nil {
			for _, o := range a.Outcomes {
				if o.Redundancy < 0 || o.Redundancy > 1 || math.IsNaN(o.Standardised) {
					t.Fatalf("%+v", o)
				}
			}
		}
	})
}

// A run of 1000 walls round a house with 200 diagonals.
func BenchmarkAdjust(b *testing.B) {
	n := Network{Near: []measure.Length{0, 0}, Held: []bool{true, true}}
	at := []Station{{X: 0, Y: 1}}
	for i := range 999 {
		last, along := at[i], Along(i%2)
		next := last
		if along == AlongX {
			next.X = len(n.Near)
			n.Near = append(n.Near, n.Near[last.X]+measure.Metre)
		} else {
			next.Y = len(n.Near)
			n.Near = append(n.Near, n.Near[last.Y]+measure.Metre)
		}
		n.Held = append(n.Held, false)
		n.Observations = append(n.Observations, Observation{last, next, along, measure.Metre, measure.Inch})
		at = append(at, next)
	}
	rng := rand.New(rand.NewPCG(1, 1))
	for range 200 {
		p, q := at[rng.IntN(500)], at[500+rng.IntN(500)]
		d := geom.Dist(geom.Point{X: n.Near[p.X], Y: n.Near[p.Y]}, geom.Point{X: n.Near[q.X], Y: n.Near[q.Y]})
		n.Observations = append(n.Observations, Observation{p, q, Straight, d + measure.Inch, measure.Inch})
	}
	for b.Loop() {
		adjusted(b, n)
	}
}
