package tasks

import (
	"fmt"

	"topplate/plan"
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
		t.Needs = l.openings(&o)
		if o.plate >= 0 && !l.bored[l.holes[o.plate].h] {
			t.Needs = append(t.Needs, at("bore", l.res.Holes[l.holes[o.plate].h].ID))
		}
		l.add(t)
	}
}

// partOfOpening reports whether a hole is made when the ceiling is opened.
func (l *lot) partOfOpening(o *hole) bool {
	return l.kindOf(o) == route.CeilingArc
}

// openings are the tasks before which hole o is not bored: from a room the
// opening is cut, from elsewhere what is behind it is known.
func (l *lot) openings(o *hole) []string {
	var out []string
	if o.place == closet && o.inRoom || o.closet {
		out = append(out, l.openedCloset())
	}
	if o.box >= 0 {
		out = append(out, l.openedAt(o.box))
	}
	p := &l.graph.Holes[l.res.Holes[o.h].Place]
	for _, u := range o.uses {
		w := &l.ways[u.way]
		switch {
		case u.passage < len(w.passages)-1 || o.closet && w.closetSide(u.passage):
		case inWall(p.Kind) && wallOf(w) != p.Wall:
		case o.inRoom || l.outdoors(w):
			out = append(out, l.openedAt(u.way))
		default:
			out = append(out, at("mark", w.drop.Tag))
		}
	}
	return out
}

// openedCloset is the task that opens the closet, empty if an earlier lot did.
func (l *lot) openedCloset() string {
	if !l.first {
		return ""
	}
	return openCloset
}

// openedAt is the task after which one gets at the framing behind a drop: its
// opening is cut, or its place under open joists is marked.
func (l *lot) openedAt(k int) string {
	if l.underOpenJoists(k) {
		return at("mark", l.ways[k].drop.Tag)
	}
	return at("open", l.ways[k].drop.Tag)
}

// underOpenJoists reports whether a drop is on joists without a ceiling board.
func (l *lot) underOpenJoists(k int) bool {
	d := l.ways[k].drop
	return d.Kind == plan.CeilingPoint && l.job.House.Rooms[d.Room].Open
}

func (l *lot) boreWords(o *hole) string {
	h := &l.res.Holes[o.h]
	p := &l.graph.Holes[h.Place]
	text := fmt.Sprintf("Bore %s, %s", h.ID, l.bores(o.h))
	var name, wall string
	if p.Wall >= 0 {
		name = "wall " + l.job.House.Walls[p.Wall].ID
		wall = fmt.Sprintf("%s, %s along it", name, l.text(p.Along))
	}
	switch p.Kind {
	case route.PlateArc:
		if !o.inRoom {
			return fmt.Sprintf("Measure from the marks, find the plate of %s. %s.", wall, text)
		}
		return fmt.Sprintf("%s, from below up through the plate of %s: a flexible bit that reaches %s.", text, wall, l.text(p.Reach))
	case route.SoleArc:
		if !o.inRoom {
			return fmt.Sprintf("Measure from the marks, find %s over the floor, %s along it. %s, up through floor and bottom plate.", name, l.text(p.Along), text)
		}
		return fmt.Sprintf("%s, from above down through the bottom plate of %s, and the floor: a flexible bit that reaches %s.", text, wall, l.text(p.Reach))
	case route.BlockArc:
		from := "from the opening"
		if o.plate >= 0 {
			from = "from the plate above"
			if l.kindOf(&l.holes[o.plate]) == route.SoleArc {
				from = "from the plate below"
			}
		}
		return fmt.Sprintf("%s, in the fire block of %s, %s: a flexible bit that reaches %s.", text, wall, from, l.text(p.Reach))
	case route.StudArc:
		return fmt.Sprintf("Open the board at the stud of %s. %s through it.", wall, text)
	case route.GableArc:
		return fmt.Sprintf("%s, through the wall under the gable, %s, sloping down to the outside; sleeve it.", text, wall)
	case route.SoffitArc:
		return text + " in the soffit."
	default:
		return text + "."
	}
}

// bit is what a hole is bored with: a bit of the hole's size that reaches, with
// the extension where none does alone.
func (l *lot) bit(o *hole) []Item {
	h := &l.res.Holes[o.h]
	p := &l.graph.Holes[h.Place]
	need := p.Reach
	long := o.inRoom && p.Kind != route.SoffitArc && p.Kind != route.StudArc || p.Kind == route.BlockArc
	best, found := measure.Length(0), false
	for _, b := range l.job.Tools.Bits {
		usable := b.Diameter == h.Bit && (!long || b.Flexible)
		if usable && (!found || b.Reach > best) {
			best, found = b.Reach, true
		}
	}
	out := tools("drill", "safety glasses")
	if !o.inRoom {
		out = l.withLadder(o.place, tools("right-angle drill", "tape measure", "safety glasses"))
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
