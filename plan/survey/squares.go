package survey

import (
	"math"

	"topplate/plan/measure"
)

// Limits of the solver. All are of arithmetic, not of surveying.
const (
	mostSteps  = 30        // of Gauss and Newton; a network that fits needs five
	stillNM    = 0.01      // nanometres: a step this small is the last
	togetherNM = 1000      // nanometres: nearer points have no direction between them
	dependent  = 1e-12     // part of a diagonal that rounding may leave of zero
	unchecked  = 1e-9      // redundancy below which it is rounding
	farthest   = 1 << 55   // nanometres: beyond it the steps have run away
	toMetres   = 1.0 / 1e9 // keeps the equations near one
)

// A row is the derivative of one observation by the unknowns, over its standard
// deviation: at most four of them, with their columns.
type row struct {
	col  [4]int
	by   [4]float64
	n    int
	miss float64 // taped less computed, over the standard deviation
}

func (r *row) add(col int, by float64) {
	if col < 0 || by == 0 {
		return
	}
	for k := range r.n {
		if r.col[k] == col {
			r.by[k] += by
			return
		}
	}
	r.col[r.n], r.by[r.n] = col, by
	r.n++
}

// A solver adjusts one network. What it computes does not depend on the
// machine: products are rounded before they are added (the Go language allows
// to fuse them otherwise), and sums run in the order of the network.
type solver struct {
	net    *Network
	column []int // of an unknown, -1 if it is held
	free   int
	moved  []float64 // what each unknown is from Near, in nanometres
	rows   []row
	normal *envelope
}

// Adjust finds the values of the unknowns for which the squares of the
// residuals, each over its standard deviation, have the least sum. Straight
// distances are made linear at the values found so far, again and again, until
// nothing moves (Gauss and Newton). Redundancy numbers and standardised
// residuals are those of Baarda for observations without correlation:
//
//	redundancy    r = 1 - a N⁻¹ aᵀ    a is the observation's row over its sigma
//	standardised  w = v / (sigma √r)
//	expected      length + v / r
//
// Values and residuals are rounded to whole nanometres at the end. The error is
// a *FitError. It takes time O(n³ + mn²) for n unknowns and m observations, and
// O(n + m) for a chain.
func Adjust(net Network) (*Adjustment, error) {
	s := newSolver(&net)
	for range mostSteps {
		if err := s.linearise(); err != nil {
			return nil, err
		}
		step, err := s.step()
		if err != nil {
			return nil, err
		}
		if s.move(step) {
			if err := s.linearise(); err != nil {
				return nil, err
			}
			return s.result(), nil
		}
	}
	return nil, &FitError{Unknown: -1, Observation: -1}
}

func newSolver(net *Network) *solver {
	s := &solver{net: net, column: make([]int, len(net.Near)), moved: make([]float64, len(net.Near))}
	for i := range net.Near {
		s.column[i] = -1
		if !net.Held[i] {
			s.column[i] = s.free
			s.free++
		}
	}
	s.rows = make([]row, len(net.Observations))
	return s
}

// gap is how far To is from From along one axis, in nanometres.
func (s *solver) gap(from, to int, known measure.Length) float64 {
	return float64(s.net.Near[to]-s.net.Near[from]+known) + (s.moved[to] - s.moved[from])
}

// linearise makes the rows at the present values.
func (s *solver) linearise() error {
	for i := range s.net.Observations {
		o := &s.net.Observations[i]
		known := o.To.Known.Sub(o.From.Known)
		dx, dy := s.gap(o.From.X, o.To.X, known.X), s.gap(o.From.Y, o.To.Y, known.Y)
		byX, byY, computed := 1.0, 0.0, dx
		switch o.Along {
		case AlongY:
			byX, byY, computed = 0, 1, dy
		case Straight:
			computed = math.Sqrt(float64(dx*dx) + float64(dy*dy))
			if computed < togetherNM {
				return &FitError{Unknown: -1, Observation: i}
			}
			byX, byY = dx/computed, dy/computed
		}
		weight := 1 / (float64(o.Sigma) * toMetres)
		r := row{miss: (float64(o.Length) - computed) * toMetres * weight}
		r.add(s.column[o.From.X], -byX*weight)
		r.add(s.column[o.To.X], byX*weight)
		r.add(s.column[o.From.Y], -byY*weight)
		r.add(s.column[o.To.Y], byY*weight)
		s.rows[i] = r
	}
	return nil
}

// step solves the normal equations, for a step in metres.
func (s *solver) step() ([]float64, error) {
	s.normal = newEnvelope(s.free, s.rows)
	right := make([]float64, s.free)
	for i := range s.rows {
		r := &s.rows[i]
		for k := range r.n {
			right[r.col[k]] += float64(r.by[k] * r.miss)
		}
	}
	if at := s.normal.factor(); at >= 0 {
		for i, c := range s.column {
			if c == at {
				return nil, &FitError{Unknown: i, Observation: -1}
			}
		}
	}
	s.normal.forward(right, 0)
	s.normal.backward(right)
	return right, nil
}

// move takes a step and reports whether it was the last. A step that runs away
// is not: the steps end by their number.
func (s *solver) move(step []float64) (still bool) {
	still = true
	for i, c := range s.column {
		if c < 0 {
			continue
		}
		nm := step[c] / toMetres
		s.moved[i] = min(max(s.moved[i]+nm, -farthest), farthest)
		still = still && math.Abs(nm) <= stillNM
	}
	return still
}

// result rounds what was found. The rows are those of the last values.
func (s *solver) result() *Adjustment {
	a := &Adjustment{
		Values:     make([]measure.Length, len(s.moved)),
		Outcomes:   make([]Outcome, len(s.rows)),
		Redundancy: len(s.rows) - s.free,
	}
	for i, near := range s.net.Near {
		a.Values[i] = near + rounded(s.moved[i])
	}
	work := make([]float64, s.free)
	for i := range s.rows {
		r, o := &s.rows[i], &s.net.Observations[i]
		a.Squares += float64(r.miss * r.miss)
		residual := -r.miss * float64(o.Sigma)
		out := Outcome{Residual: rounded(residual), Redundancy: max(0, 1-s.normal.leverage(r, work)), Expected: o.Length}
		if out.Redundancy > unchecked {
			out.Standardised = -r.miss / math.Sqrt(out.Redundancy)
			out.Expected += rounded(residual / out.Redundancy)
		} else {
			out.Redundancy = 0
		}
		a.Outcomes[i] = out
	}
	return a
}

func rounded(nm float64) measure.Length { return measure.Length(math.Round(nm)) }
