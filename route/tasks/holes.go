package tasks

import (
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// A hole is one that the cables of a lot go through.
type hole struct {
	h    int // index in Result.Holes
	uses []use
	ways []int // of the uses
	// closet is true if it is bored, if from a room, from the closet's opening.
	closet bool
	// opening is true if it is in the ceiling and made when the opening of the
	// closet or of a drop is.
	opening bool
	// inRoom is true if it is bored, and sealed, from a room's opening and not
	// from a framing space.
	inRoom bool
	box    int // the way whose opening that is, -1 if it is none of the lot
	plate  int // hole in lot.holes through which a fire block is bored, or -1
	place  string
}

// A use is a passage that goes through a hole.
type use struct{ way, passage int }

func (l *lot) gatherHoles() {
	for k := range l.ways {
		for i, a := range l.ways[k].route.Arcs {
			if l.graph.Arcs[a].Hole >= 0 {
				l.gatherHole(k, i, a)
			}
		}
	}
	slices.SortFunc(l.holes, func(a, b hole) int { return a.h - b.h })
	for i := range l.holes {
		l.placeHole(&l.holes[i])
	}
}

func (l *lot) gatherHole(k, i, arc int) {
	h := l.holeAt[l.graph.Arcs[arc].Hole]
	at := slices.IndexFunc(l.holes, func(o hole) bool { return o.h == h })
	if at < 0 {
		at = len(l.holes)
		l.holes = append(l.holes, hole{h: h, box: -1, plate: -1})
	}
	o := &l.holes[at]
	p := l.ways[k].passageAt(i)
	w := &l.ways[k]
	o.closet = o.closet || w.closetSide(p) && l.underCloset(l.graph.Arcs[arc].Hole)
	if l.graph.Arcs[arc].Kind == route.CeilingArc {
		first := l.job.Closet.Ceiling && l.holesOf(w.route.Arcs[:i]) == 0
		last := w.drop.Kind == plan.CeilingPoint && l.holesOf(w.route.Arcs[i+1:]) == 0
		o.closet = o.closet && first
		o.opening = o.opening || first || last
	}
	if !slices.Contains(o.ways, k) {
		o.ways = append(o.ways, k)
		o.uses = append(o.uses, use{k, p})
	}
}

// holesOf counts the holes on some arcs.
func (s *site) holesOf(arcs []int) int {
	n := 0
	for _, a := range arcs {
		if s.graph.Arcs[a].Hole >= 0 {
			n++
		}
	}
	return n
}

// underCloset reports whether a hole place is in the closet's own wall or
// ceiling.
func (l *lot) underCloset(place int) bool {
	p := &l.graph.Holes[place]
	if l.job.Closet.Ceiling {
		return p.Wall < 0
	}
	return p.Wall == l.job.Closet.Spot.Wall
}

// kindOf is what a hole goes through.
func (l *lot) kindOf(o *hole) route.ArcKind { return l.graph.Holes[l.res.Holes[o.h].Place].Kind }

// holesIn lists the holes, by index in lot.holes, in passage p of way k.
func (l *lot) holesIn(k, p int) []int {
	var out []int
	for i := range l.holes {
		if slices.Contains(l.holes[i].uses, use{k, p}) {
			out = append(out, i)
		}
	}
	return out
}

// numbers are the indices in Result.Holes of some holes, each once, and bored
// the tasks that bore them.
func (l *lot) numbers(holes []int) (numbers []int, bored []string) {
	slices.Sort(holes)
	for _, i := range slices.Compact(holes) {
		numbers = append(numbers, l.holes[i].h)
		bored = append(bored, l.boredBy(l.holes[i].h))
	}
	return numbers, bored
}

// placeHole decides from where a hole is bored.
func (l *lot) placeHole(o *hole) {
	p := &l.graph.Holes[l.res.Holes[o.h].Place]
	o.place = l.opened(o)
	from := p
	switch p.Kind {
	case route.PlateArc, route.SoleArc, route.GableArc, route.PassArc:
		o.inRoom = !p.FromSpace
	case route.BlockArc:
		if o.plate = l.blockThrough(o); o.plate >= 0 {
			from = &l.graph.Holes[l.res.Holes[l.holes[o.plate].h].Place]
		}
		o.inRoom = o.plate < 0
	default:
		o.inRoom = true
	}
	if !o.inRoom {
		o.place, o.box = l.handPlace(from.Space, flat(from.At)), -1
	}
}

// opened is the place from which a hole is bored that is bored from no space.
// For one in framing that is the place of an opening: in its own wall, or for one that is in no wall that of the highest box that it is over.
// Where no opening is in that wall it is a room beside it.
func (l *lot) opened(o *hole) string {
	p := &l.graph.Holes[l.res.Holes[o.h].Place]
	u := o.uses[0]
	switch ends := l.ways[u.way].passages[u.passage].ends; {
	case o.closet:
		return closet
	case p.Kind == route.SoffitArc:
		return outside
	case p.Kind == route.JoistArc || p.Kind == route.FloorArc || p.Kind == route.CeilingArc && !o.opening:
		return l.roomKey(p.Room)
	case p.Kind == route.WallArc && ends[0] != outside && u.passage < len(l.ways[u.way].passages)-1:
		return ends[0]
	case p.Kind == route.WallArc && ends[0] == outside:
		return ends[1]
	}
	walled := inWall(p.Kind) && p.Wall >= 0
	if o.box = l.highestBox(o, func(k int) bool { return !walled || wallOf(&l.ways[k]) == p.Wall }); o.box >= 0 {
		return l.placeOf(l.ways[o.box].drop)
	}
	if o.box = l.boxNear(p); o.box >= 0 {
		return l.placeOf(l.ways[o.box].drop)
	}
	return l.besideWall(p)
}

// highestBox is the way of hole o with the highest box, -1 if none will do.
func (l *lot) highestBox(o *hole, will func(k int) bool) int {
	best := -1
	for _, k := range o.ways {
		if will(k) && (best < 0 || l.ways[k].route.Place.Z > l.ways[best].route.Place.Z) {
			best = k
		}
	}
	return best
}

// boxNear is the way whose box is in the wall of a hole and nearest to it, -1 if
// there is none in the lot.
func (l *lot) boxNear(p *route.HolePlace) int {
	best, least := -1, measure.Length(0)
	for k := range l.ways {
		at := flat(l.ways[k].route.Place)
		if d := geom.Dist(at, flat(p.At)); wallOf(&l.ways[k]) == p.Wall && (best < 0 || d < least) {
			best, least = k, d
		}
	}
	return best
}

// besideWall is a room from which a hole is bored in whose wall the lot has no
// box.
func (l *lot) besideWall(p *route.HolePlace) string {
	h := l.job.House
	if !l.job.Closet.Ceiling && l.job.Closet.Spot.Wall == p.Wall {
		return closet
	}
	for i := range l.job.Drops {
		if d := &l.job.Drops[i]; d.Kind == plan.WallPlate && d.Spot.Wall == p.Wall {
			return l.placeOf(d)
		}
	}
	if p.Wall < 0 {
		return l.roomKey(p.Room)
	}
	w := &h.Walls[p.Wall]
	left, right := h.RoomBeside(w, p.Along, plan.Left), h.RoomBeside(w, p.Along, plan.Right)
	if left < 0 || right >= 0 && h.Rooms[right].ID < h.Rooms[left].ID {
		left = right
	}
	return l.roomKey(left)
}

// blockThrough is the hole in a plate through which a fire block is bored from a
// framing space, if the way from the box is no shorter; -1 if it is bored from
// the box.
func (l *lot) blockThrough(o *hole) int {
	block := &l.graph.Holes[l.res.Holes[o.h].Place]
	for _, u := range o.uses {
		box := l.ways[u.way].route.Place.Z
		if o.closet {
			box = l.graph.Nodes[l.graph.Root].At.Z
		}
		found := false
		for _, i := range l.holesIn(u.way, u.passage) {
			p := &l.graph.Holes[l.res.Holes[l.holes[i].h].Place]
			if p.Wall != block.Wall || p.Kind != route.PlateArc && p.Kind != route.SoleArc {
				continue
			}
			found = true
			if p.FromSpace && far(p.At.Z, block.At.Z) <= far(block.At.Z, box) {
				return i
			}
		}
		if found {
			return -1
		}
	}
	return -1
}

func far(a, b measure.Length) measure.Length { return max(a-b, b-a) }
