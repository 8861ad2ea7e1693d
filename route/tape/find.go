package tape

import (
	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Verdict says what kind of answer there is.
type Verdict uint8

// Verdicts, best first.
const (
	// AtMark: the point is a mark itself; nothing needs taping.
	AtMark Verdict = iota
	// TwoTapes: two distances fix the point.
	TwoTapes
	// FlatCut: there are marks, but the lines to all of them run along each
	// other, so distances fix the point along that line and not across it.
	FlatCut
	// OneMark: only one mark can be taped from.
	OneMark
	// NoneUsable: there are marks, but a tape gets to none of them.
	NoneUsable
	// NoMarks: there are no marks.
	NoMarks
)

// String says in a sentence what the verdict means.
func (v Verdict) String() string {
	return [...]string{
		AtMark:     "the point is at a mark",
		TwoTapes:   "two distances fix the point",
		FlatCut:    "all marks lie in one line with the point, so distances don't fix it across that line",
		OneMark:    "only one mark can be taped from",
		NoneUsable: "no mark can be taped from",
		NoMarks:    "there are no marks",
	}[v]
}

// A Reading is a distance to tape.
type Reading struct {
	// Exact is rounded to the nanometre; Shown is Exact at the tape's nearest
	// mark.
	Exact, Shown measure.Length
}

// Why a mark is not taped from.
type Why uint8

// Reasons.
const (
	// Here: the mark is at the point, so the tape has no direction.
	Here Why = iota
	// InTheWay: an obstacle lies across the tape.
	InTheWay
	// TooFar: the tape is too short.
	TooFar
)

// String names the reason.
func (w Why) String() string {
	return [...]string{Here: "is at the point", InTheWay: "is behind an obstacle", TooFar: "is farther than the tape reaches"}[w]
}

// An Unused is a mark that can't be taped from.
type Unused struct {
	Mark Mark
	Why  Why
	// Obstacle is the first that is in the way, as an index of the request's
	// obstacles, or -1.
	Obstacle int
}

// An Answer says how to find the point. Parts that are nil could not be given.
type Answer struct {
	Verdict Verdict
	// At is the best mark that is at the point, for AtMark, and AtError the
	// expected error of taking it for the point.
	At      *Mark
	AtError *Ellipse
	// Best is the pair of marks with the smallest expected error, and RunnerUp
	// the pair that comes next.
	Best, RunnerUp *Pair
	// Check is one more distance that tells a mistake with Best.
	Check *Check
	// Joist is the best fix by counting joists and taping one distance.
	Joist *JoistFix
	// Single is the best fix by one distance and a bearing.
	Single *Single
	// Unused are the marks that were not taped from, by id.
	Unused []Unused
}

// sight is a mark that can be taped from.
type sight struct {
	mark Mark
	// fixing is the line of position that the distance gives, with the errors
	// of the tape, the mark and the mark's place on the sketch.
	fixing
	reading Reading
	// nanometres is the distance before rounding.
	nanometres float64
}

// Find says how to find r.Want. It takes time O(n²·(1 + m)) for n marks and m
// obstacles. The error names everything that is wrong with the request: an
// error or size that is negative or no number, or a coordinate beyond
// 1000 km.
func Find(r Request) (*Answer, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	a := &Answer{}
	var sights []sight
	for _, m := range sorted(r.Marks) {
		if why, obstacle, ok := r.usable(m); !ok {
			a.Unused = append(a.Unused, Unused{m, why, obstacle})
			a.takeIfHere(&r, m, why)
			continue
		}
		sights = append(sights, r.sight(m))
	}
	a.pairs(&r, sights)
	a.joist(&r, sights)
	a.single(&r, sights)
	switch {
	case a.At != nil:
		a.Verdict = AtMark
	case a.Best != nil:
		a.Verdict = TwoTapes
	case len(sights) > 1:
		a.Verdict = FlatCut
	case len(sights) == 1:
		a.Verdict = OneMark
	case len(r.Marks) > 0:
		a.Verdict = NoneUsable
	default:
		a.Verdict = NoMarks
	}
	return a, nil
}

// takeIfHere keeps the best of the marks that are at the point.
func (a *Answer) takeIfHere(r *Request, m Mark, why Why) {
	if why != Here || a.At != nil && a.At.variance() <= m.variance() {
		return
	}
	e := covariance{}.plus(m.variance() + 2*square(float64(r.Sketch))).ellipse()
	a.At, a.AtError = &m, &e
}

// usable reports whether m can be taped from, or why not.
func (r *Request) usable(m Mark) (why Why, obstacle int, ok bool) {
	if m.At == r.Want {
		return Here, -1, false
	}
	if r.Tape.Longest > 0 && geom.DistSquared(m.At, r.Want).Cmp(geom.Squared(r.Tape.Longest)) > 0 {
		return TooFar, -1, false
	}
	for i, o := range r.Obstacles {
		if geom.SegmentEntersRect(m.At, r.Want, o) {
			return InTheWay, i, false
		}
	}
	return 0, -1, true
}

func (r *Request) sight(m Mark) sight {
	u, d := direction(m.At, r.Want)
	exact := geom.Dist(m.At, r.Want)
	return sight{
		mark:       m,
		fixing:     fixing{u, r.Tape.variance(d) + m.variance() + square(float64(r.Sketch))},
		reading:    Reading{exact, r.Tape.show(exact)},
		nanometres: d,
	}
}

// weak reports whether a fix at this cut, whose mirror image is 2·offset away,
// should not be relied on.
func (r *Request) weak(cut float64, e Ellipse, offset measure.Length) bool {
	return cut < r.LeastCut || cut > 180-r.LeastCut || e.Major > offset
}
