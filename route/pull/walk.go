package pull

import "topplate/plan/measure"

// walk goes from a place as far as the limits allow. It returns the stretch
// to where it has to stop, and the last open place up to there, or from if
// there is none after it.
func walk(p Path, l Load, lim Limits, from Place) (s Stretch, opening Place) {
	s, opening = Stretch{From: from, To: from, Tension: l.Feed}, from
	t := l.Feed
	if lim.exceeded(s) {
		return s, opening
	}
	for i := from.Piece; i < len(p); i++ {
		start := measure.Length(0)
		if i == from.Piece {
			start = from.At
		}
		next, after := s.extend(l, p[i], p[i].Length-start, t)
		if lim.exceeded(next) {
			if p[i].Open {
				opening = lim.farthest(l, s, opening, Place{i, start}, p[i], t)
			}
			return s, opening
		}
		next.To = Place{i + 1, 0}
		s, t = next, after
		if p[i].Open || i+1 < len(p) && p[i+1].Open {
			opening = next.To
		}
	}
	return s, opening
}

// extend is the stretch with one more piece, or so much of a straight one, that
// is entered with tension t, and the tension at its end. The tension along a
// piece is largest at an end.
func (s Stretch) extend(l Load, piece Piece, length measure.Length, t float64) (Stretch, float64) {
	t = l.along(piece, length, t)
	s.Tension = max(s.Tension, t)
	s.Turn += piece.Turn
	s.Length += length
	return s, t
}

func (lim Limits) exceeded(s Stretch) bool {
	tension, turn, length := lim.over(s)
	return tension || turn || length
}

func (lim Limits) over(s Stretch) (tension, turn, length bool) {
	return lim.Tension > 0 && s.Tension > lim.Tension, lim.Turn > 0 && s.Turn > lim.Turn, lim.Length > 0 && s.Length > lim.Length
}

// farthest is the last place in an open piece that s, which ends at start with
// tension t, can be stretched to, or the opening before if that is none. The
// place is found to the nanometre by halving.
func (lim Limits) farthest(l Load, s Stretch, before, start Place, piece Piece, t float64) Place {
	within, beyond := start.At, piece.Length
	for beyond-within > 1 {
		mid := within + (beyond-within)/2
		if next, _ := s.extend(l, piece, mid-start.At, t); lim.exceeded(next) {
			beyond = mid
		} else {
			within = mid
		}
	}
	if within == start.At {
		return before
	}
	return Place{start.Piece, within}
}

// between is the stretch from one place to another.
func between(p Path, l Load, from, to Place) Stretch {
	s, t := Stretch{From: from, To: to, Tension: l.Feed}, l.Feed
	for i := from.Piece; i < len(p) && i <= to.Piece; i++ {
		start, stop := measure.Length(0), p[i].Length
		if i == from.Piece {
			start = from.At
		}
		if i == to.Piece {
			if stop = to.At; stop == 0 {
				break
			}
		}
		s, t = s.extend(l, p[i], stop-start, t)
	}
	return s
}

// stuck says what is wrong between a place and the next opening.
func stuck(p Path, l Load, lim Limits, from Place) *StuckError {
	to := Place{len(p), 0}
	for i := from.Piece; i < len(p); i++ {
		if i > from.Piece && p[i].Open {
			to = Place{i, 0}
			break
		}
	}
	e := &StuckError{From: from, To: to, Found: between(p, l, from, to)}
	e.Tension, e.Turn, e.Length = lim.over(e.Found)
	return e
}
