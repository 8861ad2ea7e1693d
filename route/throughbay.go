package route

import (
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/price"
)

// throughBays adds the bays that cable can go through without any opening in a
// room: of inner walls with a space over them and another under their floor,
// each of which a hand may get into. Such a bay is bored at both ends and fished
// from one to the other.
func (b *builder) throughBays() {
	for wall := range b.house.Walls {
		w := &b.house.Walls[wall]
		if w.Exterior || w.Masonry || w.Insulated {
			continue
		}
		b.throughWallsBays(wall)
	}
}

// throughWallsBays adds those of one wall: every bay whose holes are on lines that
// are there, or that has a hole already, and of the others one for each regular
// step.
func (b *builder) throughWallsBays(wall int) {
	last := everywhere.lo
	open := b.bored(wall)
	for _, onLines := range []bool{true, false} {
		for k := range b.bays[wall] {
			key := bayKey{wall, k}
			bay := &b.bays[wall][k]
			over, under := b.overBay(key), b.underBay(key)
			if over == nil || under == nil || !over.open() || !under.open() || bay.Window >= 0 {
				continue
			}
			apart := bay.Start-last >= lineStep
			switch s := b.shafts[key]; {
			case s != nil && (onLines || !apart || !s.offLines):
			case s != nil:
				last = bay.Start
			case onLines:
				if !b.throughBay(key, true) && open[k] && b.throughBay(key, false) {
					b.shafts[key].offLines = true
				}
			case apart && b.throughBay(key, false):
				last = bay.Start
			}
		}
	}
}

// bored tells of which bays of a wall a plate has a hole that is there.
func (b *builder) bored(wall int) map[int]bool {
	out := map[int]bool{}
	for _, bottom := range []bool{false, true} {
		for _, f := range b.holesFixed(wall, bottom, plan.FixedThere) {
			if k, ok := bayAt(b.bays[wall], f.At); ok {
				out[k] = true
			}
		}
	}
	return out
}

// open reports whether a hand may get into the cavity.
func (b *cavity) open() bool {
	if b.space.Kind != plan.FloorSpace {
		return true
	}
	for i := range b.house.Rooms {
		if r := &b.house.Rooms[i]; r.Level == b.space.Below && r.Open {
			return true
		}
	}
	return false
}

// underBay is the cavity under the floor below a bay, nil if there is none.
func (b *builder) underBay(key bayKey) *cavity {
	w, bay := &b.house.Walls[key.wall], &b.bays[key.wall][key.bay]
	return b.under(w.Level, w.PointAt(span{bay.Start, bay.End}.mid()))
}

// throughBay makes a shaft of a bay without a box, if its plates may be bored; on
// lines that both lattices have anyway, or else in the middle of a free stretch.
func (b *builder) throughBay(key bayKey, onLines bool) bool {
	tops, soles := b.throughEnd(key, false, onLines), b.throughEnd(key, true, onLines)
	if len(tops) == 0 || len(soles) == 0 {
		return false
	}
	s := &shaft{key: key, laid: map[[2]int]bool{}, holes: append(tops, soles...), through: true}
	b.shafts[key] = s
	for i := range s.holes {
		h := &s.holes[i]
		h.cavity.ports = append(h.cavity.ports, port{at: h.at})
	}
	return true
}

// throughEnd are the holes at one end of a bay without a box: one that is bored, and
// those that are fixed.
func (b *builder) throughEnd(key bayKey, bottom, onLines bool) []shaftHole {
	holes, _ := b.plateHoles(key)
	if bottom {
		holes, _ = b.soleHoles(key)
	}
	var out []shaftHole
	for i := range holes {
		if h := &holes[i]; h.snap(&b.house.Walls[key.wall]) || !onLines {
			out = append(out, *h)
			break
		}
	}
	return b.fixHoles(key, bottom, out)
}

// snap moves a hole to a regular line of its cavity's lattice within its free
// stretch, and reports whether there is one.
func (h *shaftHole) snap(w *plan.Wall) bool {
	c := h.cavity
	for _, x := range c.regular(w.AlongY()) {
		along := w.Along(pointOn(w, x))
		if h.free.lo <= along && along <= h.free.hi {
			h.free = around(along, min(along-h.free.lo, h.free.hi-along))
			h.along, h.at = along, w.PointAt(along)
			return true
		}
	}
	return false
}

// regular are the coordinates, on the axis along Y or along X, of the regular
// lines: the middles of joist bays, and steps along the joists.
func (b *cavity) regular(alongY bool) []measure.Length {
	l := &liner{cavity: b}
	l.regularLines()
	lines := l.us
	if alongY == b.ax.alongY {
		lines = l.vs
	}
	out := make([]measure.Length, len(lines))
	for i := range lines {
		out[i] = lines[i].at
	}
	return out
}

// raiseThrough adds the ways through a bay without a box, from holes at its top that
// are there or bored from their space to such at its bottom. Fire blocking in it
// would have to be bored blind, so that such a bay is left alone.
func (b *builder) raiseThrough(s *shaft) {
	if len(b.house.Walls[s.key.wall].FireBlocks) > 0 {
		return
	}
	var ends [2][]*shaftHole // the top's, the bottom's
	for i := range s.holes {
		h := &s.holes[i]
		switch {
		case h.there == nil && !h.cavity.handy(h.at):
		case h.cavity.zoneOf(h.at) > Arm:
		case h.sole:
			ends[1] = append(ends[1], h)
		default:
			ends[0] = append(ends[0], h)
		}
	}
	bay := &b.bays[s.key.wall][s.key.bay]
	for _, top := range ends[0] {
		for _, sole := range ends[1] {
			l := bay.Top - bay.Bottom + dist(top.along, sole.along)
			b.add(Arc{
				Kind: FishArc, From: b.inBay(s.key, sole, bay.Bottom), To: b.inBay(s.key, top, bay.Top), Heading: up, Length: l, Hole: -1,
				Charges: append(b.cable(l), b.once(price.FishBay, 1)),
			})
		}
	}
	if len(ends[0]) == 0 || len(ends[1]) == 0 {
		return
	}
	for _, h := range slices.Concat(ends[0], ends[1]) {
		if h.sole {
			b.throughBottom(s, h)
		} else {
			b.throughPlate(s, h)
		}
	}
}
