package route

import (
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
// are there, and of the others one for each regular step.
func (b *builder) throughWallsBays(wall int) {
	last := everywhere.lo
	for _, onLines := range []bool{true, false} {
		for k := range b.bays[wall] {
			key := bayKey{wall, k}
			bay := &b.bays[wall][k]
			over, under := b.overBay(key), b.underBay(key)
			if over == nil || under == nil || !over.open() || !under.open() || bay.Window >= 0 || b.shafts[key] != nil {
				continue
			}
			if onLines {
				b.throughBay(key, true)
			} else if bay.Start-last >= lineStep && b.throughBay(key, false) {
				last = bay.Start
			}
		}
	}
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
	tops, _ := b.plateHoles(key)
	soles, _ := b.soleHoles(key)
	var holes []shaftHole
	for _, group := range [][]shaftHole{tops, soles} {
		for i := range group {
			if h := &group[i]; h.snap(&b.house.Walls[key.wall]) || !onLines {
				holes = append(holes, *h)
				break
			}
		}
	}
	if len(holes) != 2 {
		return false
	}
	s := &shaft{key: key, laid: map[[2]int]bool{}, holes: holes, through: true}
	b.shafts[key] = s
	for i := range s.holes {
		h := &s.holes[i]
		h.cavity.ports = append(h.cavity.ports, port{at: h.at})
	}
	return true
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

// raiseThrough adds the way through a bay without a box, if both its plates are
// bored from their spaces. Fire blocking in it would have to be bored blind, so
// that such a bay is left alone.
func (b *builder) raiseThrough(s *shaft) {
	top, sole := &s.holes[0], &s.holes[1]
	bay := &b.bays[s.key.wall][s.key.bay]
	if !top.cavity.handy(top.at) || !sole.cavity.handy(sole.at) || len(b.house.Walls[s.key.wall].FireBlocks) > 0 {
		return
	}
	l := bay.Top - bay.Bottom + dist(top.along, sole.along)
	b.add(Arc{
		Kind: FishArc, From: b.inBay(s.key, sole, bay.Bottom), To: b.inBay(s.key, top, bay.Top), Heading: up, Length: l, Hole: -1,
		Charges: append(b.cable(l), b.once(price.FishBay, 1)),
	})
	b.throughBored(s, top)
	b.throughSole(s, sole)
}
