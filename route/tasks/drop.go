package tasks

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/connector"
	"topplate/route"
)

// atDrop adds what is done for way k at its drop, and bringing its cables
// there.
func (l *lot) atDrop(k int) {
	l.openDrop(k)
	switch w := &l.ways[k]; {
	case w.dropRod >= 0 && l.outdoors(w):
		l.shootOut(k)
	default:
		l.fish(k)
	}
	l.fitOut(k)
}

// openDrop adds marking and opening.
func (l *lot) openDrop(k int) {
	w := &l.ways[k]
	tag, place := w.drop.Tag, l.placeOf(w.drop)
	open := Task{ID: at("open", tag), Kind: Open, Place: place, Drops: []int{w.d}, Carry: toolsToCut}
	if place == outside && w.drop.Kind == plan.SoffitSpot {
		open.Carry = tools("pry bar", "screwdriver")
		open.Words = fmt.Sprintf("Open the soffit at %s%s.", tag, l.noteOf(w.drop))
		if l.parts[open.ID] == nil {
			l.record(open.ID, openStrip, 1)
			open.Words = fmt.Sprintf("Unclip the soffit at %s%s.", tag, l.noteOf(w.drop))
		}
		l.add(open)
		return
	}
	where := "in the ceiling"
	if w.drop.Kind == plan.WallPlate {
		where = l.text(w.drop.Spot.Height) + " above the floor"
	}
	l.add(Task{
		ID: at("mark", tag), Kind: Mark, Place: place, Drops: []int{w.d},
		Words: fmt.Sprintf("Look for wires, pipes and framing behind %s%s, then mark its opening %s%s.", tag, l.noteOf(w.drop), where, l.movedText(w)),
		Carry: tools("stud and wire finder", "level", "pencil", "tape measure"),
	})
	open.Needs = []string{at("mark", tag)}
	open.Words = fmt.Sprintf("Cut the opening of %s.", tag)
	for _, o := range l.holes {
		if !o.closet && l.partOfOpening(&o) && !l.bored[o.h] && slices.Contains(o.ways, k) {
			open.Holes, open.Bores = append(open.Holes, o.h), true
			open.Words = fmt.Sprintf("Cut the opening of %s through the ceiling%s.", tag, l.boring(open.Holes))
		}
	}
	l.add(open)
}

func (l *lot) noteOf(d *plan.Drop) string {
	if d.Note == "" {
		return ""
	}
	return " (" + d.Note + ")"
}

// movedText says that a place was moved from where it was wished.
func (l *lot) movedText(w *way) string {
	if w.route.Moved == 0 {
		return ""
	}
	return ", moved " + l.text(w.route.Moved)
}

// dropHoles are the holes of a way on the side of its drop.
func (l *lot) dropHoles(k int) (holes []int, bored []string) {
	for _, o := range l.holes {
		if slices.Contains(o.ways, k) && (!o.closet || l.ways[k].atticless) {
			holes = append(holes, o.h)
			bored = append(bored, l.boredBy(o.h))
		}
	}
	return holes, bored
}

// laid are the tasks after which a way's cables lie where they come down.
func (l *lot) laid(k int) []string {
	out := []string{l.lowered[k]}
	for _, s := range l.ways[k].stretches {
		out = append(out, l.stretches[s].id)
	}
	return out
}

// fish adds bringing the cables of a way from the attic to its opening, or
// inside a wall from the closet.
func (l *lot) fish(k int) {
	w := &l.ways[k]
	tag, place := w.drop.Tag, l.placeOf(w.drop)
	holes, bored := l.dropHoles(k)
	t := Task{
		ID: at("fish", tag), Kind: Fish, Place: attic, Helper: place, Drops: []int{w.d}, Holes: holes,
		Needs: append(append(bored, l.laid(k)...), at("open", tag)), Carry: tools("fish tape", "tape"), HelperCarry: tools("fish tape", "hook"),
	}
	if w.dropRod >= 0 {
		t.Needs = append(t.Needs, l.shotID(w.dropRod))
	}
	t.Words, t.HelperWords = l.fishWords(k, holes)
	switch {
	case w.atticless:
		t.Place = closet
		t.Needs = append(t.Needs, at("tag", tag))
		t.Needs = append(t.Needs, l.ifThere(openCloset)...)
		t.Carry = append(t.Carry, l.coil(k))
		l.home[k] = t.ID
	case l.passes(w):
		t.Helper, t.HelperWords, t.HelperCarry = "", "", nil
		l.add(t)
		l.arrived[k] = t.ID
		return
	}
	alone := fmt.Sprintf("Draw the %s of %s out of the opening; leave %s.", plural(w.drop.Count, "cable"), tag, l.text(l.job.Slack.Outlet))
	l.arrived[k] = l.pair(t, at("draw", tag), alone)
}

// passes reports whether one person in the attic passes a way's cables through
// to its drop.
func (l *lot) passes(w *way) bool {
	return w.dropRod < 0 && (w.drop.Kind == plan.CeilingPoint || l.outdoors(w))
}

func (l *lot) fishWords(k int, holes []int) (words, helper string) {
	w := &l.ways[k]
	what := fmt.Sprintf("the %s of %s", plural(w.drop.Count, "cable"), w.drop.Tag)
	through := what + l.through(holes)
	helper = fmt.Sprintf("Catch %s and draw out of the opening; leave %s.", what, l.text(l.job.Slack.Outlet))
	switch {
	case w.atticless:
		words = fmt.Sprintf("Feed %s inside the wall to the opening; keep %s at the panel.", through, l.text(l.job.Slack.Closet))
	case l.passes(w):
		words = fmt.Sprintf("Pass %s, %s to spare.", through, l.text(l.job.Slack.Outlet))
	case l.people == 1 && w.dropRod >= 0:
		words = fmt.Sprintf("Tie %s on to the tape and lay them out to run free.", what)
	case l.people == 1:
		words = fmt.Sprintf("Lower %s on a weighted line; leave enough for the opening and make them fast.", through)
	default:
		words = fmt.Sprintf("Feed %s, one bundle, no kinks.", through)
	}
	return words, helper
}

// shootOut adds the rod shot in from an eave, which draws the cables out.
func (l *lot) shootOut(k int) {
	w := &l.ways[k]
	tag := w.drop.Tag
	s := l.shots[slices.IndexFunc(l.shots, func(s shot) bool { return s.arc == w.dropRod })]
	if s.ways[0] != k {
		// Two drops behind one hole: the first draws the cables of both.
		l.arrived[k] = l.arrived[s.ways[0]]
		return
	}
	holes, bored := l.dropHoles(k)
	drops := l.dropsOf(s.ways)
	length := l.text(l.graph.Arcs[s.arc].Length)
	rods := tools("rods, "+l.text(l.job.Tools.Rods)+" joined", "hook for the rods", "tape")
	what := fmt.Sprintf("the %s of %s", plural(l.cables(drops), "cable"), l.tags(drops))
	var laid []string
	for _, j := range s.ways {
		laid = append(laid, l.laid(j)...)
	}
	ready := append(bored, at("open", tag))
	if l.people == 2 {
		l.add(Task{
			ID: s.id, Kind: Shoot, Place: outside, Helper: attic, Hands: 2, Drops: drops, Holes: holes, Needs: append(ready, laid...),
			Words:       fmt.Sprintf("Shoot the rods in at %s, %s up the rafter bay; draw them back with %s%s.", tag, length, what, l.through(holes)),
			HelperWords: fmt.Sprintf("Take the rods of %s, tie on %s, feed.", tag, what),
			Carry:       rods, HelperCarry: tools("tape"),
		})
		l.arrived[k] = s.id
		return
	}
	push, draw := "ready-"+s.id[len("shoot-"):], at("draw", tag)
	l.halve(s.id, push)
	l.halve(s.id, draw)
	l.record(push, makeFast, 1)
	l.record(s.id, makeFast, 1)
	l.add(Task{
		ID: push, Kind: Ready, Place: outside, Drops: drops, Holes: holes, Needs: ready, Carry: rods,
		Words: fmt.Sprintf("Push the rods in at %s, %s up the rafter bay, and leave them.", tag, length),
	})
	l.add(Task{
		ID: s.id, Kind: Shoot, Place: attic, Drops: drops, Needs: append(laid, push), Carry: tools("tape"),
		Words: fmt.Sprintf("Take the end of the rods of %s, tie on %s and lay them out to run free.", tag, what),
	})
	l.add(Task{
		ID: draw, Kind: Draw, Place: outside, Drops: drops, Holes: holes, Needs: []string{s.id},
		Words: fmt.Sprintf("Draw the rods back at %s with %s%s.", tag, what, l.through(holes)),
	})
	l.arrived[k] = draw
}

// plugged reports whether the cables of way k end in plugs.
func (l *lot) plugged(k int) bool { return l.ways[k].drop.End == connector.Plug }

// fitOut adds boxes, ends, tests and what closes a drop.
func (l *lot) fitOut(k int) {
	w := &l.ways[k]
	tag, place, n := w.drop.Tag, l.placeOf(w.drop), w.drop.Count
	only := []int{w.d}
	mount := Task{ID: at("mount", tag), Kind: Mount, Place: place, Drops: only, Needs: []string{l.arrived[k]}, Carry: append(tools("screwdriver"), Item{boxFor(w.drop), 1})}
	mount.Words = fmt.Sprintf("Bring the cables of %s into its %s and fix it.", tag, boxFor(w.drop))
	l.add(mount)
	l.terminate(k)
	l.record(at("test", tag), testLink, n)
	l.add(Task{
		ID: at("test", tag), Kind: Test, Place: place, Drops: only, Needs: []string{at("end", tag), at("panel", tag)},
		Words: fmt.Sprintf("Test the %s of %s against the remotes in the panel; write down length and result.", plural(n, "link"), tag),
		Carry: tools("cable tester"),
	})
	finish := Task{ID: at("finish", tag), Kind: Finish, Place: place, Drops: only, Needs: []string{at("test", tag)}, Carry: append(tools("screwdriver"), Item{faceFor(w.drop), 1})}
	finish.Words = fmt.Sprintf("Fit the %s of %s.", faceFor(w.drop), tag)
	l.add(finish)
	if w.drop.Cable.FourPair && (l.plugged(k) || w.drop.Class != plan.NoClass || w.drop.Watts > 0) {
		l.record(at("power", tag), powerUp, 1)
		l.add(Task{
			ID: at("power", tag), Kind: Power, Place: closet, Drops: only, Needs: []string{at("finish", tag)},
			Words: fmt.Sprintf("Patch %s in; see that its device gets power and that data comes back.", tag), Carry: []Item{{"patch cord", n}},
		})
	}
	if w.drop.Kind == plan.SoffitSpot {
		l.closeSoffit(k)
	}
}

// terminate adds both ends of a way's cables.
func (l *lot) terminate(k int) {
	w := &l.ways[k]
	tag, place, n := w.drop.Tag, l.placeOf(w.drop), w.drop.Count
	what := l.endName(k)
	l.record(at("end", tag), l.endRecord(k, false), n)
	l.add(Task{
		ID: at("end", tag), Kind: Terminate, Place: place, Drops: []int{w.d}, Needs: []string{at("mount", tag)},
		Words: fmt.Sprintf("Put %d × %s on the cables of %s and label them.", n, what, tag),
		Carry: append(tools("termination tool"), Item{what, n}),
	})
	far := "panel jack"
	if !w.drop.Cable.FourPair {
		far = what
	}
	l.record(at("panel", tag), l.endRecord(k, true), n)
	l.add(Task{
		ID: at("panel", tag), Kind: Panel, Place: closet, Drops: []int{w.d}, Needs: []string{l.home[k]},
		Words: fmt.Sprintf("Put %d × %s on the cables of %s, label the ports, plug in the tester's remotes.", n, far, tag),
		Carry: append(tools("termination tool"), Item{far, n}, Item{"tester remote", n}),
	})
}

// endName is what ends a cable at the drop.
func (l *lot) endName(k int) string {
	if c := &l.ways[k].drop.Connector; c.ID != "" {
		return c.ID
	}
	return "screw end"
}

func boxFor(d *plan.Drop) string {
	switch d.Kind {
	case plan.WallPlate:
		return "box bracket"
	case plan.CeilingPoint:
		return "ceiling box"
	default:
		return "outdoor box"
	}
}

func faceFor(d *plan.Drop) string {
	if d.End == connector.Jack {
		return "plate"
	}
	return "device"
}

// closeSoffit adds closing the soffit of a drop outside.
func (l *lot) closeSoffit(k int) {
	w := &l.ways[k]
	id := at("close", w.drop.Tag)
	if l.parts[id] == nil {
		l.record(id, closeStrip, 1)
	}
	t := Task{
		ID: id, Kind: Close, Place: outside, Drops: []int{w.d}, Needs: []string{at("finish", w.drop.Tag)},
		Words: fmt.Sprintf("Close the soffit at %s; leave a drip loop.", w.drop.Tag), Carry: tools("screwdriver", "screws"),
	}
	l.add(t)
}

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
		case route.StudArc:
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
	for _, k := range o.ways {
		if o.closet && !l.ways[k].atticless {
			out = append(out, l.home[k])
		} else {
			out = append(out, l.arrived[k])
		}
	}
	return out
}

// beforeClosing makes a box or a soffit wait for the seal behind it.
func (l *lot) beforeClosing(o *hole, seal string) {
	for _, k := range o.ways {
		tag := l.ways[k].drop.Tag
		next := at("mount", tag)
		if l.outdoors(&l.ways[k]) {
			next = at("close", tag)
		}
		if t := l.tasks[next]; t != nil && !o.closet && t.Place == l.tasks[seal].Place {
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
		switch place {
		case attic:
			r, t.Words, t.Carry = cleanAttic, "Put the insulation back, take out tools and rubbish.", tools("rubbish bag")
		case outside:
			r, t.Words, t.Carry = cleanOutside, "Clear up, take the ladder down.", tools("rubbish bag")
		case closet:
			r, t.Words = cleanCloset, "Dress the loop, clean up, mark what is left of the cable with its length."
		}
		l.record(t.ID, r, 1)
		l.add(t)
	}
}

// cables counts those of some drops.
func (s *site) cables(drops []int) int {
	n := 0
	for _, d := range drops {
		n += s.job.Drops[d].Count
	}
	return n
}
