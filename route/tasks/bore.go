package tasks

import (
	"fmt"
	"strings"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/route"
)

// boreHoles adds boring what is not part of an opening and not bored yet.
func (l *lot) boreHoles() {
	for _, o := range l.holes {
		if l.bored[o.h] || o.opening {
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
// opening is cut, or its place is marked where it wants none.
func (l *lot) openedAt(k int) string {
	if l.onSurface(k) {
		return at("mark", l.ways[k].drop.Tag)
	}
	return at("open", l.ways[k].drop.Tag)
}

// onSurface reports whether a drop wants no opening: on joists without a board,
// on the face of a wall, or outside where cable does not come out of a hole.
func (l *lot) onSurface(k int) bool {
	w := &l.ways[k]
	switch w.drop.Kind {
	case plan.CeilingPoint:
		return l.job.House.Rooms[w.drop.Room].Open
	case plan.WallPlate:
		return l.parts[at("open", w.drop.Tag)] == nil
	default:
		from := w.last().from
		return from > 0 && l.graph.Arcs[w.route.Arcs[from-1]].Kind == route.OutsideArc && l.parts[at("open", w.drop.Tag)] == nil
	}
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
	case route.JoistArc:
		return fmt.Sprintf("Open the ceiling of %s under the joist. %s through the joist, in the middle of its height.", l.job.House.Rooms[p.Room].Name, text)
	case route.PassArc:
		if p.UnderWall(l.job.House) {
			return fmt.Sprintf("Measure from the marks to the joist bay under %s; feel with a wire whether it is open. Where it is blocked: %s, through the blocking.", wall, "bore"+strings.TrimPrefix(text, "Bore"))
		}
		return fmt.Sprintf("Measure from the marks to %s; look from the other side at what is behind it. %s, through it, from one side to the other.", wall, text)
	case route.WallArc:
		return fmt.Sprintf("%s, through %s, from one side to the other.%s", text, wall, l.claddingText(p))
	case route.FloorArc:
		return fmt.Sprintf("Look under the floor for pipes, wires and joists. %s, down through the floor of %s beside the wall, where the channel hides it.", text, l.job.House.Rooms[p.Room].Name)
	case route.CeilingArc:
		return text + ", through the ceiling beside the wall."
	case route.GableArc:
		return fmt.Sprintf("%s, through the wall under the gable, %s, sloping down to the outside; sleeve it.%s", text, wall, l.claddingText(p))
	case route.SoffitArc:
		return text + " in the soffit."
	default:
		return text + "."
	}
}

// claddingText says how the cladding of an outer wall is bored, if it is known.
func (l *lot) claddingText(p *route.HolePlace) string {
	w := &l.job.House.Walls[p.Wall]
	if w.Masonry || !w.Exterior || w.Cladding.ID == "" {
		return ""
	}
	return fmt.Sprintf(" Bore the %s %s.", w.Cladding.ID, w.Cladding.Bore)
}

// bit is what a hole is bored with: a bit of the hole's size that reaches, with
// the extension where none does alone.
func (l *lot) bit(o *hole) []Item {
	h := &l.res.Holes[o.h]
	p := &l.graph.Holes[h.Place]
	need := p.Reach
	long := o.inRoom && longBit(p.Kind) || p.Kind == route.BlockArc
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
	hard, through := p.InMasonry(l.job.House)
	if hard {
		out = append(out, tools("hammer drill", l.text(h.Bit)+" masonry bit")...)
	}
	if !found || through {
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

// longBit reports whether a kind of hole is bored from a room with a long
// flexible bit.
func longBit(k route.ArcKind) bool {
	return k == route.PlateArc || k == route.SoleArc || k == route.BlockArc || k == route.GableArc
}
