package route

import (
	"cmp"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A line of the lattice stands at a coordinate of one axis and is laid along
// the other, maybe in parts only.
type line struct {
	at   measure.Length
	laid spans // disjoint, rising
}

// lineStep is the distance between the regular lines along the joists.
const lineStep = 4 * measure.Foot

// lineReach is how far the lines of a single thing are laid past it in a large
// building: to the next regular lines on both sides.
const lineReach = lineStep

// mostCrossings is how many crossings a lattice may have whose lines all go
// from end to end of the house. In a larger building the lines of single things
// are laid about these only, as the product of all lines grows with the square
// of the floor area. Tests set it lower.
var mostCrossings = 25_000

// A liner chooses the lines of both axes.
type liner struct {
	*cavity
	us, vs []line
}

// everyPlace is the stretch of a line that goes from end to end.
var everyPlace = geom.Rect{Min: geom.Point{X: everywhere.lo, Y: everywhere.lo}, Max: geom.Point{X: everywhere.hi, Y: everywhere.hi}}

// add adds the lines through p, laid where they pass an area.
func (l *liner) add(p geom.Point, over geom.Rect) {
	u, v := l.ax.uv(p)
	u0, v0 := l.ax.uv(over.Min)
	u1, v1 := l.ax.uv(over.Max)
	l.us = append(l.us, line{u, spans{{v0, v1}}})
	l.vs = append(l.vs, line{v, spans{{u0, u1}}})
}

// whole adds lines from end to end.
func (l *liner) whole(p geom.Point) { l.add(p, everyPlace) }

// local adds lines that are laid past p on all sides.
func (l *liner) local(p geom.Point) { l.add(p, geom.Rect{Min: p, Max: p}.Outset(lineReach)) }

// around adds the lines along the edges of an area, laid past it on all sides.
func (l *liner) around(r geom.Rect) {
	l.add(r.Min, r.Outset(lineReach))
	l.add(r.Max, r.Outset(lineReach))
}

// lines chooses the lattice's lines: the middle of each joist bay, every
// place a hole may be, the edges of what is in the way plus its clearance,
// marks, corners of trunks, of the outline and of where one can stand and crawl, and a
// regular step. A cheapest squared route
// around the obstacles never needs another line (Hanan's grid). In a large
// building the lines of single things are not laid from end to end, but for
// those through the closet, which all cables share; a route may be a little
// dearer there than the cheapest.
func (b *cavity) lines() *liner {
	l := &liner{cavity: b}
	for i := range b.ports {
		if i < b.trunks {
			l.whole(b.ports[i].at)
		} else {
			l.local(b.ports[i].at)
		}
	}
	for _, outline := range b.space.Edges() {
		for _, p := range outline {
			l.whole(p)
		}
	}
	for i := range b.house.Hatches {
		if h := &b.house.Hatches[i]; h.Space == b.index {
			l.whole(mid(h.Area))
		}
	}
	for i := range b.house.Marks {
		if m := &b.house.Marks[i]; m.Space == b.index {
			l.local(m.At)
		}
	}
	for _, k := range b.keepOuts {
		l.around(k.area)
	}
	for _, outline := range b.zoneOutlines() {
		for _, p := range outline {
			l.whole(p)
		}
	}
	b.trunkLines(l.whole)
	for _, c := range b.by {
		if c.space == b.index {
			l.whole(c.at)
		}
	}
	l.powerLines()
	l.regularLines()
	l.tidy()
	return l
}

// powerLines adds the lines at the least distance from the corners of power
// runs, laid about the legs that meet there.
func (l *liner) powerLines() {
	for i := range l.house.PowerRuns {
		if l.house.PowerRuns[i].Space != l.index {
			continue
		}
		limit := l.besidePower(&l.house.PowerRuns[i])
		path := l.house.PowerRuns[i].Path
		for k, p := range path {
			legs := geom.Rect{Min: path[max(k-1, 0)], Max: p}.Canon()
			next := geom.Rect{Min: p, Max: path[min(k+1, len(path)-1)]}.Canon()
			legs.Min.X, legs.Min.Y = min(legs.Min.X, next.Min.X), min(legs.Min.Y, next.Min.Y)
			legs.Max.X, legs.Max.Y = max(legs.Max.X, next.Max.X), max(legs.Max.Y, next.Max.Y)
			by := geom.Point{X: limit, Y: limit}
			l.add(p.Sub(by), legs.Outset(limit+lineReach))
			l.add(p.Add(by), legs.Outset(limit+lineReach))
		}
	}
}

// zoneOutlines are the edges of where the roof leaves room to stand, crawl and
// put an arm, and of the rooms from which a floor is got at.
func (b *cavity) zoneOutlines() []geom.Polygon {
	var out []geom.Polygon
	if b.space.Kind == plan.FloorSpace {
		for i := range b.house.Rooms {
			if r := &b.house.Rooms[i]; r.Level == b.space.Below && r.Open {
				out = append(append(out, r.Outline), r.Holes...)
			}
		}
	}
	if b.space.Roof < 0 {
		return out
	}
	for _, id := range []rule.LimitID{rule.ReachStand, rule.ReachCrawl, rule.ReachArmHeight} {
		out = append(out, b.house.Roofs[b.space.Roof].Surface.ClearContour(b.book.Length(id)+b.js.depth+b.space.Lift)...)
	}
	return out
}

// regularLines adds the middle of every joist bay, and lines along the joists
// at a regular step from the middle of the house.
func (l *liner) regularLines() {
	box := l.space.Bounds()
	u0, v0 := l.ax.uv(box.Min)
	u1, v1 := l.ax.uv(box.Max)
	for n := l.js.bay(u0); n <= l.js.bay(u1); n++ {
		l.us = append(l.us, line{l.js.clear(n).mid(), spans{everywhere}})
	}
	c := span{v0, v1}.mid()
	for d := measure.Length(0); d <= (v1-v0)/2; d += lineStep {
		l.vs = append(l.vs, line{c - d, spans{everywhere}}, line{c + d, spans{everywhere}})
	}
}

// few reports whether all lines can go from end to end.
func (l *liner) few() bool { return len(l.us)*len(l.vs) <= mostCrossings }

// tidy sorts the lines, and lays them from end to end if there are few.
func (l *liner) tidy() {
	l.us, l.vs = l.inHouse(l.us, true), l.inHouse(l.vs, false)
	if !l.few() {
		return
	}
	for _, lines := range [][]line{l.us, l.vs} {
		for i := range lines {
			lines[i].laid = spans{everywhere}
		}
	}
}

// inHouse sorts lines, joins those at one coordinate and drops what lies
// outside the plates.
func (b *cavity) inHouse(lines []line, u bool) []line {
	box := b.space.Bounds()
	u0, v0 := b.ax.uv(box.Min)
	u1, v1 := b.ax.uv(box.Max)
	s := span{v0, v1}
	if u {
		s = span{u0, u1}
	}
	slices.SortFunc(lines, func(a, b line) int {
		return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.laid[0].lo, b.laid[0].lo))
	})
	var out []line
	for _, l := range lines {
		switch k := len(out) - 1; {
		case !s.contains(l.at):
		case k >= 0 && out[k].at == l.at:
			out[k].laid = out[k].laid.joined(l.laid)
		default:
			out = append(out, l)
		}
	}
	return out
}

// pastRods lays the lines of ports that no hand reaches as far as rods are
// pushed from there. It reports whether that changes anything.
func (l *liner) pastRods(r *Reach) bool {
	if l.few() {
		return false
	}
	far := false
	for i := range l.ports {
		p := l.ports[i].at
		if r.zoneOf(p) <= Arm {
			continue
		}
		far = true
		// Along the joists, and across them where the roof rises that way.
		u, v := l.ax.uv(p)
		l.us = append(l.us, line{u, spans{around(v, l.longestRods())}})
		if slope, ok := l.upSlope(p); ok && !l.alongJoists(slope) {
			l.vs = append(l.vs, line{v, spans{around(u, l.longestRods())}})
		}
	}
	l.us, l.vs = l.inHouse(l.us, true), l.inHouse(l.vs, false)
	return far
}

func mid(r geom.Rect) geom.Point {
	return geom.Point{X: span{r.Min.X, r.Max.X}.mid(), Y: span{r.Min.Y, r.Max.Y}.mid()}
}
