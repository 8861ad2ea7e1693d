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
	case l.dropRod(w) >= 0 && l.outdoors(w):
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
	if place == outside && !l.onSurface(k) {
		open.Carry = tools("pry bar", "screwdriver")
		open.Words = fmt.Sprintf("Open the soffit at %s%s.", tag, l.noteOf(w.drop))
		if l.parts[open.ID] == nil {
			l.record(open.ID, openStrip, 1)
			open.Words = fmt.Sprintf("Unclip the soffit at %s%s.", tag, l.noteOf(w.drop))
		}
		l.add(open)
		return
	}
	if l.onSurface(k) {
		on := map[plan.DropKind]string{plan.WallPlate: "on the face of the wall", plan.CeilingPoint: "on the open joists", plan.SoffitSpot: "under the eave"}
		l.add(Task{
			ID: at("mark", tag), Kind: Mark, Place: place, Drops: []int{w.d},
			Words: fmt.Sprintf("Mark the place of %s%s %s%s.", tag, l.noteOf(w.drop), on[w.drop.Kind], l.movedText(w)),
			Carry: l.withLadder(place, tools("pencil", "tape measure")),
		})
		return
	}
	open.Needs = []string{at("mark", tag)}
	if hole := l.ceilingThere(w); hole != "" {
		l.add(Task{
			ID: at("mark", tag), Kind: Mark, Place: place, Drops: []int{w.d},
			Words: fmt.Sprintf("See that hole %s is in the ceiling at %s%s, and what is in it.", hole, tag, l.noteOf(w.drop)),
		})
		open.Words, open.Carry = fmt.Sprintf("Take down what covers hole %s.", hole), tools("screwdriver")
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
	open.Words = fmt.Sprintf("Cut the opening of %s.", tag)
	for _, o := range l.holes {
		if !o.closet && o.opening && !l.bored[o.h] && slices.Contains(o.ways, k) {
			open.Holes, open.Bores = append(open.Holes, o.h), true
			open.Words = fmt.Sprintf("Cut the opening of %s through the ceiling%s.", tag, l.boring(open.Holes))
		}
	}
	l.add(open)
}

// ceilingThere is the hole in the ceiling that is there at the drop of a way, if
// its cables go through one.
func (l *lot) ceilingThere(w *way) string {
	for _, a := range w.route.Arcs {
		if arc := &l.graph.Arcs[a]; arc.Kind == route.CeilingArc && arc.There != nil && w.drop.Kind == plan.CeilingPoint {
			return arc.There.ID
		}
	}
	return ""
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
	return l.numbers(l.holesIn(k, len(l.ways[k].passages)-1))
}

// laid are the tasks after which a way's cables lie where they come to its
// drop.
func (l *lot) laid(k int) []string {
	out := []string{l.lowered[k]}
	for _, it := range l.ways[k].items {
		id, _ := l.done(it)
		out = append(out, id)
	}
	return out
}

// fish adds bringing the cables of a way from where they are laid to its
// opening, or from the closet where they are laid nowhere.
func (l *lot) fish(k int) {
	w := &l.ways[k]
	tag := w.drop.Tag
	holes, bored := l.dropHoles(k)
	from, to := w.last().ends[0], w.last().ends[1]
	t := Task{
		ID: at("fish", tag), Kind: Fish, Place: from, Helper: to, Drops: []int{w.d}, Holes: holes,
		Needs: append(append(bored, l.laid(k)...), l.openedAt(k)),
		Carry: tools("fish tape", "tape"), HelperCarry: tools("fish tape", "hook"),
	}
	if !w.inside() {
		t.Carry = l.withLadder(from, t.Carry)
	}
	t.Needs = append(t.Needs, l.shotsIn(k, len(w.passages)-1)...)
	t.Words, t.HelperWords = l.fishWords(k, holes)
	switch {
	case w.inside():
		t.Needs = append(t.Needs, at("tag", tag))
		t.Needs = append(t.Needs, l.ifThere(openCloset)...)
		t.Carry = append(t.Carry, l.coil(k))
		l.home[k] = t.ID
	case l.handsOn(w):
		t.Helper, t.HelperWords, t.HelperCarry = "", "", nil
		l.add(t)
		l.arrived[k] = t.ID
		return
	}
	alone := fmt.Sprintf("Draw %s of %s out of the opening; leave %s.", the(w.drop.Count, "cable"), tag, l.text(l.job.Slack.Outlet))
	l.arrived[k] = l.pair(t, at("draw", tag), alone)
}

// handsOn reports whether one person passes a way's cables through to its drop
// from where they are laid.
func (l *lot) handsOn(w *way) bool {
	return l.dropRod(w) < 0 && (w.drop.Kind == plan.CeilingPoint || l.outdoors(w) || w.last().ends[0] == w.last().ends[1] && l.holesOf(w.route.Arcs[w.last().from:]) == 0)
}

func (l *lot) fishWords(k int, holes []int) (words, helper string) {
	w := &l.ways[k]
	what := fmt.Sprintf("%s of %s", the(w.drop.Count, "cable"), w.drop.Tag)
	through := what + l.through(holes)
	leave := l.text(l.job.Slack.Outlet)
	helper = fmt.Sprintf("Catch %s and draw out of the opening; leave %s.", what, leave)
	rod, up := l.dropRod(w) >= 0, w.last().up
	switch {
	case w.inside() && !l.leavesWall(w):
		words = fmt.Sprintf("Feed %s inside the wall to the opening; keep %s at the panel.", through, l.text(l.job.Slack.Closet))
	case w.inside():
		words = fmt.Sprintf("Feed %s to the opening of %s; keep %s at the panel.", through, w.drop.Tag, l.text(l.job.Slack.Closet))
	case l.handsOn(w):
		words = fmt.Sprintf("Pass %s, %s to spare.", through, leave)
	case l.people == 1 && rod:
		words = fmt.Sprintf("Tie %s on to the tape and lay them out to run free.", what)
	case l.people == 1 && up:
		words = fmt.Sprintf("Push a fish tape up%s to the opening, tie on %s and lay them out to run free.", l.through(holes), what)
	case l.people == 1:
		words = fmt.Sprintf("Lower %s on a weighted line; leave enough for the opening and make them fast.", through)
	case up:
		words = fmt.Sprintf("Tie %s on to the tape that comes down and feed them up%s, one bundle, no kinks.", what, l.through(holes))
		helper = fmt.Sprintf("Push a fish tape down, draw %s out of the opening; leave %s.", what, leave)
	default:
		words = fmt.Sprintf("Feed %s, one bundle, no kinks.", through)
	}
	return words, helper
}

// leavesWall reports whether a way goes through a plate at the top or the bottom
// of the closet's wall.
func (l *lot) leavesWall(w *way) bool {
	return slices.ContainsFunc(w.route.Arcs, func(a int) bool { return l.graph.Arcs[a].Space >= 0 })
}

// shootOut adds the rod shot in from an eave, which draws the cables out.
func (l *lot) shootOut(k int) {
	w := &l.ways[k]
	tag := w.drop.Tag
	s := l.shotOf(k, len(w.passages)-1, l.dropRod(w))
	if s.ways[0] != k {
		// Two drops behind one hole: the first draws the cables of both.
		l.arrived[k] = l.arrived[s.ways[0]]
		return
	}
	holes, bored := l.dropHoles(k)
	drops := l.dropsOf(s.ways)
	length := l.text(l.graph.Arcs[s.arc].Length)
	rods := tools("rods, "+l.text(l.job.Tools.Rods)+" joined", "hook for the rods", "tape")
	what := fmt.Sprintf("%s of %s", the(l.cables(drops), "cable"), l.tags(drops))
	var laid []string
	for _, j := range s.ways {
		laid = append(laid, l.laid(j)...)
	}
	ready := append(bored, at("open", tag))
	from := w.last().ends[0]
	if w.inside() {
		laid = append(laid, at("tag", tag))
		laid = append(laid, l.ifThere(openCloset)...)
		l.home[k] = s.id
	}
	if l.people == 2 {
		l.add(Task{
			ID: s.id, Kind: Shoot, Place: outside, Helper: from, Hands: 2, Drops: drops, Holes: holes, Needs: append(ready, laid...),
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
		ID: s.id, Kind: Shoot, Place: from, Drops: drops, Needs: append(laid, push), Carry: tools("tape"),
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
		Words: fmt.Sprintf("Test %s of %s against the remotes in the panel; write down length and result.", the(n, "link"), tag),
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
	if w.drop.Kind == plan.SoffitSpot && !l.onSurface(k) {
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
		Words: fmt.Sprintf("Close the soffit at %s.", w.drop.Tag), Carry: tools("screwdriver", "screws"),
	}
	l.add(t)
}

// cables counts those of some drops.
func (s *site) cables(drops []int) int {
	n := 0
	for _, d := range drops {
		n += s.job.Drops[d].Count
	}
	return n
}
