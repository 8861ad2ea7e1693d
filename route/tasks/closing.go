package tasks

import (
	"fmt"

	"topplate/route"
)

// sealHoles adds sealing what no later lot goes through, and patching.
func (l *lot) sealHoles() {
	for _, o := range l.holes {
		if l.kept[o.h] {
			continue
		}
		h := &l.res.Holes[o.h]
		kind := l.graph.Holes[h.Place].Kind
		t := Task{ID: at("seal", h.ID), Kind: Seal, Place: o.place, Holes: []int{o.h}, Drops: l.dropsOf(o.ways), Needs: l.drawnThrough(&o), Carry: tools("fire-rated sealant")}
		t.Words = fmt.Sprintf("Seal %s round the cables.", h.ID)
		switch kind {
		case route.CeilingArc, route.SoffitArc:
			l.record(t.ID, sealBoard, max(h.Count, 1))
			t.Carry = tools("sealant")
		case route.GableArc:
			t.Place, t.Carry = outside, tools("outdoor sealant")
			t.Words = fmt.Sprintf("Seal the sleeve of %s against the weather.", h.ID)
		case route.WallArc, route.PassArc:
			if !l.graph.Holes[h.Place].UnderWall(l.job.House) {
				t.Words = fmt.Sprintf("Seal %s round the cables, on both sides.", h.ID)
			}
		case route.StudArc, route.JoistArc:
			t.ID, t.Kind, t.Carry = at("patch", h.ID), Patch, tools("board, compound and tape")
			t.Words = fmt.Sprintf("Put the board back at %s, tape and first coat.", h.ID)
		}
		l.add(t)
		l.beforeClosing(&o, t.ID)
	}
}

// drawnThrough lists the tasks after which all cables of a hole are in place.
func (l *lot) drawnThrough(o *hole) []string {
	var out []string
	for _, u := range o.uses {
		switch w := &l.ways[u.way]; {
		case u.passage == len(w.passages)-1:
			out = append(out, l.arrived[u.way])
		case u.passage == 0:
			out = append(out, l.home[u.way])
		default:
			out = append(out, l.passDone(l.passOf(u.way, u.passage)))
		}
	}
	return out
}

// beforeClosing makes a box or a soffit wait for the seal behind it.
func (l *lot) beforeClosing(o *hole, seal string) {
	for _, u := range o.uses {
		w := &l.ways[u.way]
		next := at("mount", w.drop.Tag)
		if l.outdoors(w) && !l.onSurface(u.way) {
			next = at("close", w.drop.Tag)
		}
		if t := l.tasks[next]; t != nil && u.passage == len(w.passages)-1 && t.Place == l.tasks[seal].Place {
			t.Needs = append(t.Needs, seal)
		}
	}
}

// cleanUp adds clearing each place, after all that is done there.
func (l *lot) cleanUp() {
	needs := map[string][]string{}
	for id, t := range l.tasks {
		needs[t.Place] = append(needs[t.Place], id)
		if t.Helper != "" && t.Helper != t.Place {
			needs[t.Helper] = append(needs[t.Helper], id)
		}
	}
	for place, ids := range needs {
		t := Task{ID: at("clean", place), Kind: Clean, Place: place, Needs: ids, Words: "Clean up; count the tools.", Carry: tools("vacuum", "rubbish bag")}
		r := cleanRoom
		switch l.kindAt(place) {
		case Attic:
			r, t.Words, t.Carry = cleanAttic, "Put the insulation back, take out tools and rubbish.", tools("rubbish bag")
		case Crawl:
			r, t.Words, t.Carry = cleanCrawl, "Put back insulation and ground cover, take out tools and rubbish.", tools("rubbish bag")
		case Outside:
			r, t.Words, t.Carry = cleanOutside, "Clear up, take the ladder down.", tools("rubbish bag")
		case Closet:
			r, t.Words = cleanCloset, "Dress the loop, clean up, mark what is left of the cable with its length."
		}
		l.record(t.ID, r, 1)
		l.add(t)
	}
}
