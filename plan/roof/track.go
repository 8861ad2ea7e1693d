package roof

import (
	"cmp"
	"slices"

	"topplate/plan/measure"
)

// A plane rises by 1 in 1 from the line of a side, which is at foot. Heights
// of planes are those of the roof divided by its pitch.
type plane struct {
	side side
	foot measure.Length
}

// A linear is the value start + slope·t along a track.
type linear struct{ start, slope measure.Length }

func (f linear) at(t measure.Length) measure.Length { return f.start + f.slope*t }
func (f linear) plus(c measure.Length) linear       { return linear{f.start + c, f.slope} }
func (f linear) minus(g linear) linear              { return linear{f.start - g.start, f.slope - g.slope} }

// A track is a line in plan. Its coordinates, and the heights over it, are in
// halves of a nanometre, since planes meet in the middle of their feet.
type track struct{ x, y linear }

var running = linear{0, 1}

// meeting is the track over which two planes of different sides meet, p's side
// before q's in their order.
func meeting(p, q plane) track {
	if p.side.alongX() == q.side.alongX() {
		middle := linear{p.foot + q.foot, 0}
		if p.side.alongX() {
			return track{middle, running}
		}
		return track{running, middle}
	}
	// Sides along X come first. Both planes rise alike from where their feet
	// cross.
	turn := p.side.sign() * q.side.sign()
	return track{running, linear{2*q.foot - turn*2*p.foot, turn}}
}

// line is the track along the foot of a plane.
func (p plane) line() track {
	if p.side.alongX() {
		return track{linear{2 * p.foot, 0}, running}
	}
	return track{running, linear{2 * p.foot, 0}}
}

// over is the height of the plane over a track.
func (p plane) over(t track) linear {
	coordinate := t.y
	if p.side.alongX() {
		coordinate = t.x
	}
	rise := coordinate.plus(-2 * p.foot)
	return linear{p.side.sign() * rise.start, p.side.sign() * rise.slope}
}

// alongX reports whether the plane of the side rises along X.
func (s side) alongX() bool { return s == west || s == east }

// sign is +1 if the plane rises with the coordinate, else -1.
func (s side) sign() measure.Length {
	if s == west || s == south {
		return 1
	}
	return -1
}

// opposite is the side across.
func (s side) opposite() side { return s ^ 1 }

// A span is the open stretch of a track between two values of t.
type span struct{ from, to measure.Length }

// everywhere is longer than anything drawn.
var everywhere = span{-away, away}

// above keeps the part of s where f is above zero. A slope of 2 only comes
// with an even start: two planes that rise against each other, over a track on
// which both start even.
func (s *span) above(f linear) {
	switch {
	case f.slope > 0:
		s.from = max(s.from, -f.start/f.slope)
	case f.slope < 0:
		s.to = min(s.to, -f.start/f.slope)
	case f.start <= 0:
		s.to = s.from
	}
}

// notBelow keeps the part of s where f is not below zero, save for its ends.
func (s *span) notBelow(f linear) {
	if f.slope != 0 || f.start < 0 {
		s.above(f)
	}
}

// A class says which of two planes a block has.
type class uint8

const (
	neither class = iota
	first
	second
	both
)

func (b *block) classify(p, q plane) class {
	c := neither
	if b.has(p) {
		c |= first
	}
	if b.has(q) {
		c |= second
	}
	return c
}

func (b *block) has(p plane) bool { return !b.open[p.side] && p.side.of(b.area) == p.foot }

// counts are the numbers of blocks of each class.
type counts [4]int

// A sweep counts blocks along a track.
type sweep struct{ changes []change }

// A change is where a block's stretch begins or ends.
type change struct {
	at    measure.Length
	class class
	by    int
}

func (s *sweep) add(at span, c class) {
	if at.from < at.to {
		s.changes = append(s.changes, change{at.from, c, +1}, change{at.to, c, -1})
	}
}

// where returns the longest stretches over which the counts satisfy the
// condition, but for single points.
func (s *sweep) where(condition func(counts) bool) []span {
	slices.SortFunc(s.changes, func(a, b change) int { return cmp.Compare(a.at, b.at) })
	var found []span
	var n counts
	open := false
	for i, c := range s.changes {
		n[c.class] += c.by
		if i+1 < len(s.changes) && s.changes[i+1].at == c.at {
			continue
		}
		holds := condition(n)
		if holds && !open {
			found = append(found, span{c.at, c.at})
		} else if !holds && open {
			found[len(found)-1].to = c.at
		}
		open = holds
	}
	return found
}
