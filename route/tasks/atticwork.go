package tasks

import (
	"fmt"
	"slices"

	"topplate/plan/measure"
	"topplate/route"
)

// boreHoles adds boring what is not part of an opening and not bored yet.
func (l *lot) boreHoles() {
	for _, o := range l.holes {
		if l.bored[o.h] || l.partOfOpening(&o) {
			continue
		}
		h := &l.res.Holes[o.h]
		p := &l.graph.Holes[h.Place]
		id := at("bore", h.ID)
		t := Task{ID: id, Kind: Bore, Place: o.place, Holes: []int{o.h}, Bores: true, Drops: l.dropsOf(o.ways), Carry: l.bit(&o)}
		t.Words = l.boreWords(&o)
		if p.Kind == route.SoffitArc {
			l.record(id, soffitHole, h.Count)
		}
		for _, k := range o.ways {
			t.Needs = append(t.Needs, l.opening(k, &o))
		}
		if p.Kind == route.BlockArc && !o.below {
			t.Needs = append(t.Needs, l.plateOver(&o)...)
		}
		l.add(t)
	}
}

// partOfOpening reports whether a hole is made when the ceiling is opened.
func (l *lot) partOfOpening(o *hole) bool {
	return l.graph.Holes[l.res.Holes[o.h].Place].Kind == route.CeilingArc
}

// opening is the task before which hole o is not bored for way k: from below
// the opening is cut, from above what is behind it is known.
func (l *lot) opening(k int, o *hole) string {
	w := &l.ways[k]
	switch {
	case o.closet && l.first:
		return openCloset
	case o.closet:
		return ""
	case o.below || l.outdoors(w):
		return at("open", w.drop.Tag)
	default:
		return at("mark", w.drop.Tag)
	}
}

// plateOver is the boring of the plate through which a fire block is bored
// from above.
func (l *lot) plateOver(o *hole) []string {
	var out []string
	for _, p := range l.holes {
		plate := l.graph.Holes[l.res.Holes[p.h].Place].Kind == route.PlateArc
		if plate && !l.bored[p.h] && p.closet == o.closet && slices.ContainsFunc(p.ways, func(k int) bool { return slices.Contains(o.ways, k) }) {
			out = append(out, at("bore", l.res.Holes[p.h].ID))
		}
	}
	return out
}

func (l *lot) boreWords(o *hole) string {
	h := &l.res.Holes[o.h]
	p := &l.graph.Holes[h.Place]
	text := fmt.Sprintf("Bore %s, %s", h.ID, l.bores(o.h))
	var wall string
	if p.Wall >= 0 {
		wall = fmt.Sprintf("wall %s, %s along it", l.job.House.Walls[p.Wall].ID, l.text(p.Along))
	}
	switch p.Kind {
	case route.PlateArc:
		if !o.below {
			return fmt.Sprintf("Measure from the marks, find the plate of %s. %s.", wall, text)
		}
		return fmt.Sprintf("%s, from below up through the plate of %s: a flexible bit that reaches %s.", text, wall, l.text(p.Reach))
	case route.BlockArc:
		from := "from the plate above"
		if o.below {
			from = "from the opening"
		}
		return fmt.Sprintf("%s, in the fire block of %s, %s: a flexible bit that reaches %s.", text, wall, from, l.text(p.Reach))
	case route.StudArc:
		return fmt.Sprintf("Open the board at the stud of %s. %s through it.", wall, text)
	case route.GableArc:
		return fmt.Sprintf("%s, through the wall under the gable, %s, sloping down to the outside; sleeve it.", text, wall)
	default:
		return text + " in the soffit."
	}
}

// bit is what a hole is bored with: a bit of the hole's size that reaches, with
// the extension where none does alone.
func (l *lot) bit(o *hole) []Item {
	h := &l.res.Holes[o.h]
	p := &l.graph.Holes[h.Place]
	need := p.Reach
	long := o.below && p.Kind != route.SoffitArc && p.Kind != route.StudArc || p.Kind == route.BlockArc
	best, found := measure.Length(0), false
	for _, b := range l.job.Tools.Bits {
		usable := b.Diameter == h.Bit && (!long || b.Flexible)
		if usable && (!found || b.Reach > best) {
			best, found = b.Reach, true
		}
	}
	out := tools("drill", "safety glasses")
	if !o.below {
		out = tools("right-angle drill", "tape measure", "safety glasses")
	}
	if !found {
		return out
	}
	name := l.text(h.Bit) + " bit"
	if long {
		name = l.text(h.Bit) + " flexible bit"
	}
	if long && best < need && l.job.Tools.Extension > 0 {
		out = append(out, Item{What: "extension for the flexible bit"})
	}
	return append(out, Item{What: name})
}

// inTheAttic adds laying the stretches.
func (l *lot) inTheAttic() {
	for s := range l.stretches {
		st := &l.stretches[s]
		drops := l.dropsOf(st.ways)
		t := Task{ID: st.id, Kind: Lay, Place: attic, Drops: drops, Carry: tools("cable straps")}
		for _, k := range st.ways {
			t.Needs = append(t.Needs, l.lowered[k], l.before(k, s))
		}
		var length measure.Length
		for _, a := range st.arcs {
			length += l.graph.Arcs[a].Length
			if hole := l.graph.Arcs[a].Hole; hole >= 0 {
				t.Holes = append(t.Holes, l.holeAt[hole])
				t.Needs = append(t.Needs, l.boredBy(l.holeAt[hole]))
			}
		}
		t.Words = fmt.Sprintf("Lay the %s of %s, %s%s.", plural(l.cables(drops), "cable"), l.tags(drops), l.text(length), l.onward(s))
		l.add(t)
	}
}

// before is the laying of the stretch before s on way k, empty if s is its
// first or is laid earlier for other cables.
func (l *lot) before(k, s int) string {
	w := &l.ways[k]
	i := slices.Index(w.stretches, s)
	if i == 0 || w.stretches[i-1] > s {
		return ""
	}
	return l.stretches[w.stretches[i-1]].id
}

// onward says where the cables part or go after a stretch.
func (l *lot) onward(s int) string {
	var to []string
	more := false
	for _, k := range l.stretches[s].ways {
		w := &l.ways[k]
		i := slices.Index(w.stretches, s)
		if i+1 < len(w.stretches) {
			more = true
			continue
		}
		for j := w.to; j < len(w.route.Arcs); j++ {
			if hole := l.graph.Arcs[w.route.Arcs[j]].Hole; hole >= 0 {
				if id := l.res.Holes[l.holeAt[hole]].ID; !slices.Contains(to, id) {
					to = append(to, id)
				}
				break
			}
		}
	}
	switch {
	case len(to) == 0:
		return ", to where they part"
	case more:
		return ", to " + listed(to) + ", where the rest goes on"
	}
	return ", to " + listed(to)
}

// shoot adds a rod shot. At an eave the rods come in from outside and draw the
// cables out with them; at a wall or a ceiling out of reach they fetch the end
// of a tape that is fed up from below.
func (l *lot) shoot(s *shot) {
	drops := l.dropsOf(s.ways)
	w := &l.ways[s.ways[0]]
	rods := tools("rods, "+l.text(l.job.Tools.Rods)+" joined", "hook for the rods", "tape")
	length := l.text(l.graph.Arcs[s.arc].Length)
	t := Task{ID: s.id, Kind: Shoot, Place: attic, Helper: closet, Drops: drops, Carry: rods, HelperCarry: tools("fish tape")}
	if !s.closet {
		t.Helper = l.placeOf(w.drop)
	}
	if t.Helper == outside {
		return // part of atDrop: the cables have to be laid before
	}
	what := l.tags(drops)
	for _, o := range l.holes {
		if slices.Contains(o.ways, s.ways[0]) && o.closet == s.closet && !l.partOfOpening(&o) && !l.bored[o.h] {
			t.Needs = append(t.Needs, at("bore", l.res.Holes[o.h].ID))
		}
	}
	t.Needs = append(t.Needs, l.openingsOf(s)...)
	t.Words = fmt.Sprintf("Shoot the rods %s to the hole of %s, hook the tape and bring it back.", length, what)
	t.HelperWords = fmt.Sprintf("Feed the tape up the hole of %s and guide it on to the hook.", what)
	if l.people == 1 {
		ready := "ready-" + s.id[len("shoot-"):]
		l.halve(t.ID, ready)
		l.record(ready, makeFast, 1)
		l.add(Task{
			ID: ready, Kind: Ready, Place: t.Helper, Drops: drops, Needs: t.Needs, Carry: t.HelperCarry,
			Words: fmt.Sprintf("Feed a tape up the hole of %s, a loop at its end, and leave it there.", what),
		})
		t.Needs, t.Helper, t.HelperWords, t.HelperCarry = []string{ready}, "", "", nil
		l.add(t)
		return
	}
	t.Hands = 2
	l.add(t)
}

// openingsOf lists the openings below a shot.
func (l *lot) openingsOf(s *shot) []string {
	if s.closet {
		return l.ifThere(openCloset)
	}
	var out []string
	for _, k := range s.ways {
		out = append(out, at("open", l.ways[k].drop.Tag))
	}
	return out
}
