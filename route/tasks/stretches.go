package tasks

import (
	"slices"

	"topplate/plan/geom"
	"topplate/route"
)

// A stretch is a way at one place, in one framing space, that the same cables
// of a lot take and that is laid by hand.
type stretch struct {
	id    string
	place string
	along medium
	arcs  []int
	ways  []int // indices of the ways that take it
	rank  int   // see lot.divideWays
}

// A pass is a passage between two places where cable is laid by hand, with the
// cables of a lot that take it.
type pass struct {
	id   string
	arcs [2]int // its first and its last
	ways []int
	at   int // index of the passage on the first of the ways
	rank int
}

// divideWays finds the stretches and the passes of the ways. Both are ranked as
// they are met first, on way after way from the closet out. What comes after
// another on some way has the higher rank, but where two ways take the same two
// in opposite order; so tasks never wait for one another in a circle if they
// wait for lower ranks only.
func (l *lot) divideWays() {
	d := divider{lot: l, users: map[int][]int{}, of: map[int]int{}}
	for k := range l.ways {
		w := &l.ways[k]
		for i, a := range w.route.Arcs {
			if w.passageAt(i) < 0 && !slices.Contains(d.users[a], k) {
				d.users[a] = append(d.users[a], k)
			}
		}
	}
	for k := range l.ways {
		d.divide(k)
	}
}

// A divider numbers stretches and passes.
type divider struct {
	*lot
	users map[int][]int // ways, by arc that is laid
	of    map[int]int   // stretch, by arc
	ranks int
}

func (d *divider) rank() int {
	d.ranks++
	return d.ranks
}

// divide goes along a way. open is the stretch that goes on, -1 if none does.
func (d *divider) divide(k int) {
	w := &d.ways[k]
	open := -1
	for i := 0; i < len(w.route.Arcs); i++ {
		if p := w.passageAt(i); p >= 0 {
			if 0 < p && p < len(w.passages)-1 {
				d.pass(k, p)
			}
			open, i = -1, w.passages[p].to-1
			continue
		}
		open = d.lay(k, i, open)
	}
}

// lay finds the stretch of arc i of way k, and returns the one that goes on.
func (d *divider) lay(k, i, open int) int {
	w := &d.ways[k]
	a := w.route.Arcs[i]
	s, known := d.of[a]
	place, along := d.placeOfArc(a), mediumOf(d.graph.Arcs[a].Kind)
	switch {
	case known:
		open = -1
	case open >= 0 && d.stretches[open].place == place && d.stretches[open].along == along && slices.Equal(d.stretches[open].ways, d.users[a]):
		s = open
	default:
		s = len(d.stretches)
		d.stretches = append(d.stretches, stretch{id: numbered("lay", s+1), place: place, along: along, ways: d.users[a], rank: d.rank()})
		open = s
	}
	if !known {
		d.of[a] = s
		d.stretches[s].arcs = append(d.stretches[s].arcs, a)
	}
	if !slices.ContainsFunc(w.items, func(it item) bool { return it.stretch == s }) {
		w.items = append(w.items, item{stretch: s, pass: -1})
	}
	return open
}

// pass finds the pass of a way's passage.
func (d *divider) pass(k, p int) {
	w := &d.ways[k]
	arcs := [2]int{w.route.Arcs[w.passages[p].from], w.route.Arcs[w.passages[p].to-1]}
	i := slices.IndexFunc(d.passes, func(o pass) bool { return o.arcs == arcs })
	if i < 0 {
		i = len(d.passes)
		d.passes = append(d.passes, pass{id: numbered("pass", i+1), arcs: arcs, at: p, rank: d.rank()})
	}
	d.passes[i].ways = append(d.passes[i].ways, k)
	w.items = append(w.items, item{stretch: -1, pass: i, passage: p})
}

// A medium is what cable is laid along.
type medium uint8

// Media.
const (
	joists    medium = iota // in an attic or a crawl space, or over a room with an open ceiling
	channel                 // on the face of a room's wall
	outerWall               // outside
	soffit                  // in a soffit that opens
)

func mediumOf(k route.ArcKind) medium {
	switch k {
	case route.RacewayArc:
		return channel
	case route.OutsideArc:
		return outerWall
	case route.InSoffitArc:
		return soffit
	default:
		return joists
	}
}

// placeOfArc is where one works who lays cable along an arc.
func (s *site) placeOfArc(a int) string {
	arc := &s.graph.Arcs[a]
	from, to := &s.graph.Nodes[arc.From], &s.graph.Nodes[arc.To]
	switch p, q := flat(from.At), flat(to.At); {
	case arc.Kind == route.OutsideArc || arc.Kind == route.InSoffitArc:
		return outside
	case arc.Space >= 0:
		return s.handPlace(arc.Space, geom.Point{X: p.X + (q.X-p.X)/2, Y: p.Y + (q.Y-p.Y)/2})
	case from.Kind == route.RailNode:
		return s.roomAt(from.At)
	default:
		return s.roomAt(to.At)
	}
}

// stretchOf is the stretch that arc a is laid in.
func (l *lot) stretchOf(a int) *stretch {
	return &l.stretches[slices.IndexFunc(l.stretches, func(s stretch) bool { return slices.Contains(s.arcs, a) })]
}

// passOf is the pass of passage p of way k.
func (l *lot) passOf(k, p int) *pass {
	w := &l.ways[k]
	i := slices.IndexFunc(w.items, func(it item) bool { return it.pass >= 0 && it.passage == p })
	return &l.passes[w.items[i].pass]
}

// done is the task after which an item is behind the cables, and its rank.
func (l *lot) done(it item) (id string, rank int) {
	if it.stretch >= 0 {
		return l.stretches[it.stretch].id, l.stretches[it.stretch].rank
	}
	return l.passDone(&l.passes[it.pass]), l.passes[it.pass].rank
}

// before is the task that item it comes after on way k, empty if it is the
// first there, or if the one before is done later for other cables.
func (l *lot) before(k int, it item) string {
	w := &l.ways[k]
	i := slices.Index(w.items, it)
	if i <= 0 {
		return ""
	}
	_, own := l.done(it)
	id, rank := l.done(w.items[i-1])
	if rank > own {
		return ""
	}
	return id
}
