package tasks

import (
	"fmt"
	"slices"

	"topplate/plan/price"
	"topplate/route"
)

// atCloset adds what is done at the closet before cables come, and the feeds
// into it.
func (l *lot) atCloset() {
	if l.first {
		l.record("set-up", setUp, 1)
		l.add(Task{ID: "set-up", Kind: SetUp, Place: closet, Words: "Lay out the tools, set up the spools, cover the floor.", Carry: l.spools()})
	}
	l.openCloset()
	for k := range l.ways {
		l.cutAndTag(k)
	}
	for i := range l.shots {
		l.shoot(&l.shots[i])
	}
	for i := range l.feeds {
		l.feed(&l.feeds[i])
	}
}

// openCloset adds the opening behind the panel, or in the closet's ceiling.
func (l *lot) openCloset() {
	var holes []int
	for _, o := range l.holes {
		if o.closet && o.opening && !l.bored[o.h] {
			holes = append(holes, o.h)
		}
	}
	wall := !l.job.Closet.Ceiling
	if !l.first && len(holes) == 0 {
		return
	}
	t := Task{ID: openCloset, Kind: Open, Place: closet, Holes: holes, Bores: len(holes) > 0, Carry: toolsToCut}
	t.Words = "Look for wires, pipes and framing; cut the opening in the closet's ceiling" + l.boring(holes) + "."
	switch {
	case wall && !l.behindPanel():
		t.Words = "Mark where the cables come to the panel on the face of the wall."
		t.Carry = tools("level", "pencil", "tape measure")
	case wall:
		l.record(openCloset, panelOpening, 1)
		t.Words = "Look for wires, pipes and studs; open the wall behind the panel."
	case len(holes) == 0 && l.job.House.Rooms[l.job.Closet.Room].Open:
		t.Words = "Look for wires and pipes on the open joists over the panel; mark where the cables come down."
		t.Carry = l.withLadder(closet, tools("pencil", "tape measure"))
	}
	l.add(t)
}

// behindPanel reports whether any cable comes out of the wall behind the panel,
// and does not go on its face or into a chase beside it.
func (l *lot) behindPanel() bool {
	for i := range l.res.Routes {
		r := &l.res.Routes[i]
		if r.Blocked != nil || len(r.Nodes) < 2 {
			continue
		}
		if k := l.graph.Nodes[r.Nodes[1]].Kind; k == route.BoxNode || k == route.BayNode || k == route.PlateNode {
			return true
		}
	}
	return false
}

// boring names holes with their bits: ": H5 with two 1in holes".
func (l *lot) boring(holes []int) string {
	var names []string
	for _, h := range holes {
		names = append(names, l.res.Holes[h].ID+", "+l.bores(h))
	}
	if len(names) == 0 {
		return ""
	}
	return ": " + listed(names)
}

// bores tells how a hole is made: "one 3/4in hole", "two 1in holes".
func (l *lot) bores(h int) string {
	hole := &l.res.Holes[h]
	if hole.Bit == 0 {
		return "a hole for which no bit is listed"
	}
	if hole.Count == 1 {
		return "one " + l.text(hole.Bit) + " hole"
	}
	return fmt.Sprintf("%s holes up to %s", number(hole.Count), l.text(hole.Bit))
}

func number(n int) string {
	words := [...]string{"no", "one", "two", "three", "four", "five", "six"}
	if n < len(words) {
		return words[n]
	}
	return fmt.Sprint(n)
}

// cutAndTag adds cutting the cables of a way at the spool and tagging them.
func (l *lot) cutAndTag(k int) {
	w := &l.ways[k]
	n, tag := w.drop.Count, w.drop.Tag
	l.record(at("cut", tag), cutCable, n)
	l.add(Task{
		ID: at("cut", tag), Kind: Cut, Place: closet, Needs: l.ifThere("set-up"), Drops: []int{w.d},
		Words: fmt.Sprintf("Cut %d × %s for %s at the spool, %s long; tape the ends of each coil.", n, w.drop.Cable.ID, tag, l.text(w.route.Lengths.Cut)),
		Carry: append(tools("cable cutter", "tape measure", "tape"), Item{"spool of " + w.drop.Cable.ID, 0}),
	})
	l.record(at("tag", tag), tagCable, n)
	l.add(Task{
		ID: at("tag", tag), Kind: Tag, Place: closet, Needs: []string{at("cut", tag)}, Drops: []int{w.d},
		Words: fmt.Sprintf("Tag both ends of %s of %s.", the(n, "cable"), tag), Carry: []Item{{"tags for cable ends", 2 * n}},
	})
}

// ifThere is a task as a need, none if this lot does not have it.
func (l *lot) ifThere(ids ...string) []string {
	var out []string
	for _, id := range ids {
		if l.tasks[id] != nil {
			out = append(out, id)
		}
	}
	return out
}

// feed adds pulling a bundle from the first place where it is laid by hand into
// the closet.
func (l *lot) feed(f *feed) {
	drops := l.dropsOf(f.ways)
	first := &l.ways[f.ways[0]].passages[0]
	t := Task{ID: f.id, Kind: Feed, Place: first.ends[1], Helper: closet, Drops: drops, Needs: l.ifThere(openCloset)}
	var holes []int
	for _, k := range f.ways {
		w := &l.ways[k]
		t.Needs = append(t.Needs, at("tag", w.drop.Tag))
		t.Needs = append(t.Needs, l.shotsIn(k, 0)...)
		t.Carry = append(t.Carry, l.coil(k))
		holes = append(holes, l.holesIn(k, 0)...)
	}
	var bored []string
	t.Holes, bored = l.numbers(holes)
	t.Needs = append(t.Needs, bored...)
	t.Carry = l.withLadder(t.Place, append(t.Carry, tools("fish tape", "tape")...))
	t.HelperCarry = tools("fish tape", "tape")
	l.feedWords(&t, first)
	draw := fmt.Sprintf("Draw in the cables of %s; leave %s for the loop.", l.tags(drops), l.text(l.job.Slack.Closet))
	last := l.pair(t, "draw-closet-"+f.id[len("feed-"):], draw)
	for _, k := range f.ways {
		l.lowered[k], l.home[k] = f.id, last
	}
}

// feedWords tell of a feed. From where cables are laid it mostly goes down into
// the closet, and up where they are laid under its floor.
func (l *lot) feedWords(t *Task, p *passage) {
	what := "the cables of " + l.tags(t.Drops)
	loop := l.text(l.job.Slack.Closet)
	down := "down"
	if !p.up {
		down = "up"
	}
	t.Words = fmt.Sprintf("Feed %s %s%s to the closet, one bundle, no kinks.", what, down, l.through(t.Holes))
	t.HelperWords = fmt.Sprintf("Catch and draw in %s; leave %s for the loop.", what, loop)
	switch {
	case p.from == p.to:
		t.Words = fmt.Sprintf("Bring %s to the panel.", what)
	case l.people == 2 || t.Place == t.Helper:
	case p.up:
		t.Words = fmt.Sprintf("Lower %s%s to the closet and make them fast, %s more than reaches the panel.", what, l.through(t.Holes), loop)
	default:
		t.Words = fmt.Sprintf("Push a fish tape up%s to the closet, tie on %s, lay them out to run free and make the tape fast.", l.through(t.Holes), what)
	}
}

// boredBy is the task that bores a hole, empty if that was done before.
func (l *lot) boredBy(h int) string {
	for _, id := range []string{openCloset, at("bore", l.res.Holes[h].ID)} {
		if t := l.tasks[id]; t != nil && t.Bores && slices.Contains(t.Holes, h) {
			return id
		}
	}
	for k := range l.ways {
		id := at("open", l.ways[k].drop.Tag)
		if t := l.tasks[id]; t != nil && t.Bores && slices.Contains(t.Holes, h) {
			return id
		}
	}
	return ""
}

// through names holes on the way: " through H3".
func (l *lot) through(holes []int) string {
	if len(holes) == 0 {
		return ""
	}
	return " through " + l.holeNames(holes)
}

func (l *lot) holeNames(holes []int) string {
	var names []string
	for _, h := range holes {
		names = append(names, l.res.Holes[h].ID)
	}
	return listed(names)
}

// endRecord is the minutes of one end of a drop's cable.
func (l *lot) endRecord(k int, panel bool) price.ID {
	c := &l.ways[k].drop.Cable
	switch {
	case c.Category == "coax":
		return endCoax
	case !c.FourPair:
		return endScrews
	case panel:
		return panelPort
	case l.plugged(k):
		return endPlug
	default:
		return endJack
	}
}
