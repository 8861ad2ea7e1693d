package plan

import (
	"cmp"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// An extent is a stretch of an axis of the house.
type extent struct{ lo, hi measure.Length }

// overlap is how much of the axis two extents share, negative if they are
// apart by that much.
func (e extent) overlap(f extent) measure.Length { return min(e.hi, f.hi) - max(e.lo, f.lo) }

// end is the end of e towards rising coordinates or away from them.
func (e extent) end(rising bool) measure.Length {
	if rising {
		return e.hi
	}
	return e.lo
}

// setEnd moves the end of e towards rising coordinates or away from them.
func (e *extent) setEnd(rising bool, at measure.Length) {
	if rising {
		e.hi = at
	} else {
		e.lo = at
	}
}

// The layers of a wall that are joined: the finished wall, and its frame.
const (
	body = iota
	frame
	layers
)

// The ends of a leg.
const (
	atStart = iota
	atEnd
)

// A leg is a wall while it is being joined to others. Coordinates are on the
// axis that the leg runs along, or on the one across.
type leg struct {
	level   int
	heading Heading
	taped   extent
	line    measure.Length // across, of the taped line
	across  [layers]extent
	along   [layers]extent // grows from taped as ends are joined
	clear   extent         // between the frames that it meets at its ends
	corner  [2]int         // legs of the same run at the start and at the end, -1 if free
	joined  [2]int         // legs met by free ends in a corner, -1 if none
}

// rising reports whether coordinates grow towards an end of the leg.
func (l *leg) rising(end int) bool { return l.heading.Rising() == (end == atEnd) }

// tapedEnd is the coordinate of an end of the taped line.
func (l *leg) tapedEnd(end int) measure.Length { return l.taped.end(l.rising(end)) }

// A stop is where one end of a leg comes to lie: all its layers, and the
// stretch that is clear of the wall it meets there.
type stop struct {
	at    [layers]measure.Length
	clear measure.Length
}

// set moves an end.
func (l *leg) set(end int, s stop) {
	for i := range layers {
		l.along[i].setEnd(l.rising(end), s.at[i])
	}
	l.clear.setEnd(l.rising(end), s.clear)
}

// rect is the leg's rectangle in a layer.
func (l *leg) rect(layer int) geom.Rect {
	u, v := l.along[layer], l.across[layer]
	if l.heading.AlongY() {
		u, v = v, u
	}
	return geom.Rect{Min: geom.Point{X: u.lo, Y: v.lo}, Max: geom.Point{X: u.hi, Y: v.hi}}
}

// joinLegs finds where legs end: a leg that turns into another at a corner
// runs to the far face of the corner, one that ends at another wall stops at
// its face. What comes out does not depend on the order of the legs. It takes
// time O(n²).
func joinLegs(legs []leg) {
	for i := range legs {
		l := &legs[i]
		for end := range 2 {
			if j := l.corner[end]; j >= 0 && legs[j].heading.AlongY() != l.heading.AlongY() {
				l.set(end, l.stopAt(end, &legs[j], true))
			}
		}
	}
	joints := make([][2]joint, len(legs))
	for i := range legs {
		for end := range 2 {
			if legs[i].corner[end] < 0 {
				joints[i][end] = findJoint(legs, i, end)
			}
		}
	}
	for i := range legs {
		for end, j := range joints[i] {
			if j.kind == noJoint {
				continue
			}
			legs[i].set(end, j.stop)
			if j.kind == ell {
				legs[i].joined[end] = j.with
			}
		}
	}
}

// stopAt is where l ends at another leg across it: at its far face in a
// corner, at its near face otherwise.
func (l *leg) stopAt(end int, other *leg, corner bool) stop {
	out := l.rising(end)
	s := stop{clear: other.across[frame].end(!out)}
	for i := range layers {
		s.at[i] = other.across[i].end(out == corner)
	}
	return s
}

// A jointKind says how a free end of a leg meets another leg.
type jointKind uint8

const (
	noJoint jointKind = iota
	tee
	ell
	butt // in line
)

// A joint is what the free end of a leg meets.
type joint struct {
	stop
	kind  jointKind
	with  int
	depth measure.Length // how far the leg reaches beyond the near face
}

// before orders joints at one end: across before in line, the nearest face
// first.
func (j joint) before(k joint) bool {
	if j.kind == noJoint || k.kind == noJoint {
		return k.kind == noJoint
	}
	return cmp.Or(
		cmp.Compare(j.kind/butt, k.kind/butt),
		cmp.Compare(k.depth, j.depth),
		cmp.Compare(j.kind, k.kind),
		cmp.Compare(j.at[frame], k.at[frame]),
		cmp.Compare(j.clear, k.clear),
	) < 0
}

// findJoint finds what the free end of leg i meets.
func findJoint(legs []leg, i, end int) joint {
	var best joint
	for k := range legs {
		if k == i || legs[k].level != legs[i].level || legs[i].corner[1-end] == k {
			continue
		}
		j, ok := legs[i].jointWith(end, &legs[k])
		j.with = k
		if ok && j.before(best) {
			best = j
		}
	}
	return best
}

// jointWith reports whether the free end of l meets another leg, and how.
func (l *leg) jointWith(end int, other *leg) (joint, bool) {
	if l.heading.AlongY() == other.heading.AlongY() {
		return l.buttWith(end, other)
	}
	depth, ok := l.depthIn(end, other)
	if !ok || other.grown().overlap(l.across[body]) <= 0 {
		return joint{}, false
	}
	kind := tee
	for e := range 2 {
		if _, ok := other.depthIn(e, l); ok && other.corner[e] < 0 && l.grown().overlap(other.across[body]) > 0 {
			kind = ell
		}
	}
	return joint{stop: l.stopAt(end, other, kind == ell), kind: kind, depth: depth}, true
}

// depthIn is how far the taped end of l reaches beyond the near face of
// another leg across it. ok is false if it stops short of it, or passes
// through, by more than the reach of a joint.
func (l *leg) depthIn(end int, other *leg) (depth measure.Length, ok bool) {
	out, w := l.rising(end), other.across[body]
	depth = l.tapedEnd(end) - w.end(!out)
	if !out {
		depth = -depth
	}
	return depth, -joinReach.Max <= depth && depth <= w.hi-w.lo+joinReach.Max
}

// grown is where the finished leg may come to lie along its axis.
func (l *leg) grown() extent {
	e := l.along[body]
	for end := range 2 {
		if l.corner[end] < 0 {
			at := joinReach.Max
			if !l.rising(end) {
				at = -at
			}
			e.setEnd(l.rising(end), e.end(l.rising(end))+at)
		}
	}
	return e
}

// buttWith finds whether l goes on in line as another leg, with the two ends
// meeting halfway.
func (l *leg) buttWith(end int, other *leg) (joint, bool) {
	if l.across[body].overlap(other.across[body]) <= 0 {
		return joint{}, false
	}
	for e := range 2 {
		if other.corner[e] >= 0 || other.rising(e) == l.rising(end) {
			continue
		}
		p, q := l.tapedEnd(end), other.tapedEnd(e)
		if gap := max(p, q) - min(p, q); gap <= joinReach.Max {
			at := middle(min(p, q), max(p, q))
			return joint{stop: stop{[layers]measure.Length{at, at}, at}, kind: butt, depth: -gap}, true
		}
	}
	return joint{}, false
}
