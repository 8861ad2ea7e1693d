package tasks

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
)

// layAndPass adds laying the stretches, and bringing cables on from one place
// where they are laid to the next.
func (l *lot) layAndPass() {
	for s := range l.stretches {
		l.lay(s)
	}
	for p := range l.passes {
		l.passOn(&l.passes[p])
	}
}

func (l *lot) lay(s int) {
	st := &l.stretches[s]
	drops := l.dropsOf(st.ways)
	t := Task{ID: st.id, Kind: Lay, Place: st.place, Drops: drops, Carry: tools("cable straps")}
	how := ""
	switch {
	case st.along == channel:
		t.Carry, how = tools("channel", "hacksaw", "level", "screwdriver", "screws"), "Mount the channel on the wall. "
	case st.along == outerWall:
		how, t.Carry = l.clips(st)
	case st.along == soffit:
		t.Carry, how = tools("pry bar", "screwdriver"), "Take the soffit down. "
	case l.kindAt(st.place) != Attic:
		t.Carry = l.withLadder(st.place, tools("cable hooks"))
	}
	for _, k := range st.ways {
		t.Needs = append(t.Needs, l.lowered[k], l.before(k, item{stretch: s, pass: -1}))
	}
	var length, loop measure.Length
	for _, a := range st.arcs {
		length += l.graph.Arcs[a].Length
		loop = max(loop, l.graph.Arcs[a].Loop)
	}
	if st.along == channel {
		l.give(st.id, mountChannel, perLength(value(mountChannel), length))
	}
	t.Words = how + fmt.Sprintf("Lay %s of %s, %s%s.", the(l.cables(drops), "cable"), l.tags(drops), l.text(length), l.onward(s))
	if loop > 0 {
		t.Words += fmt.Sprintf(" Hang %s of each in a drip loop, lower than the hole, wherever it goes in or out.", l.text(loop))
	}
	l.add(t)
}

// clips says how clips are set along the outer walls of a stretch, each kind of
// cladding once, and what is carried for it.
func (l *lot) clips(st *stretch) (how string, carry []Item) {
	carry = tools("clips for out of doors", "drill")
	var kinds []string
	walls, clips, hard := map[string][]string{}, map[string]string{}, false
	for _, a := range st.arcs {
		w := l.graph.Arcs[a].Outer
		if w == nil {
			continue
		}
		kind, text := w.Cladding.ID, w.Cladding.Clips
		switch {
		case kind == "" && w.Masonry:
			kind, text = "masonry", "screwed into anchors"
		case kind == "":
			continue
		}
		hard = hard || w.HardToFix()
		if clips[kind] == "" {
			kinds = append(kinds, kind)
			clips[kind] = text
		}
		if !slices.Contains(walls[kind], w.ID) {
			walls[kind] = append(walls[kind], w.ID)
		}
	}
	if hard {
		carry = append(carry, tools("hammer drill", "masonry bit for the anchors", "anchors")...)
	}
	slices.Sort(kinds)
	how = "Set clips along the wall. "
	for _, k := range kinds {
		slices.Sort(walls[k])
		how += fmt.Sprintf("On the %s of wall %s they are %s. ", k, listed(walls[k]), clips[k])
	}
	return how, carry
}

// onward says where the cables part or go after a stretch.
func (l *lot) onward(s int) string {
	var to []string
	more := false
	for _, k := range l.stretches[s].ways {
		w := &l.ways[k]
		i := slices.Index(w.items, item{stretch: s, pass: -1})
		next := len(w.passages) - 1
		if i+1 < len(w.items) {
			if w.items[i+1].stretch >= 0 {
				more = true
				continue
			}
			next = w.items[i+1].passage
		}
		if name := l.entry(k, next); !slices.Contains(to, name) {
			to = append(to, name)
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

// entry is the first hole of a passage of a way, or the drop where it has none.
func (l *lot) entry(k, p int) string {
	w := &l.ways[k]
	for _, a := range w.route.Arcs[w.passages[p].from:w.passages[p].to] {
		if hole := l.graph.Arcs[a].Hole; hole >= 0 {
			return l.res.Holes[l.holeAt[hole]].ID
		}
	}
	return w.drop.Tag
}

// passOn adds bringing cables through a passage from one place where they are
// laid by hand to the next.
func (l *lot) passOn(p *pass) {
	k := p.ways[0]
	way := &l.ways[k].passages[p.at]
	drops := l.dropsOf(p.ways)
	t := Task{
		ID: p.id, Kind: Pass, Place: way.ends[0], Helper: way.ends[1], Drops: drops,
		Carry: l.withLadder(way.ends[0], tools("fish tape", "tape")), HelperCarry: l.withLadder(way.ends[1], tools("fish tape", "tape")),
	}
	var holes []int
	for _, k := range p.ways {
		w := &l.ways[k]
		for _, it := range w.items {
			if it.pass >= 0 && &l.passes[it.pass] == p {
				t.Needs = append(t.Needs, l.lowered[k], l.before(k, it))
				holes = append(holes, l.holesIn(k, it.passage)...)
				t.Needs = append(t.Needs, l.shotsIn(k, it.passage)...)
			}
		}
	}
	var bored []string
	t.Holes, bored = l.numbers(holes)
	t.Needs = append(t.Needs, bored...)
	what := fmt.Sprintf("%s of %s", the(l.cables(drops), "cable"), l.tags(drops))
	up := "down"
	if way.up {
		up = "up"
	}
	t.Words = fmt.Sprintf("Feed all that is left of %s %s%s to %s, no kinks.", what, up, l.through(t.Holes), l.toward(t.Helper))
	t.HelperWords = fmt.Sprintf("Push a tape through, and draw in %s to the end.", what)
	if l.people == 1 && t.Helper != t.Place {
		t.Words = fmt.Sprintf("Push a tape %s%s to %s, tie on %s, lay them out to run free and make the tape fast.", up, l.through(t.Holes), l.toward(t.Helper), what)
	}
	l.pair(t, "draw-"+p.id, fmt.Sprintf("Draw in %s to the end.", what))
}

// passDone is the task after which cables are through a pass.
func (l *lot) passDone(p *pass) string {
	ends := l.ways[p.ways[0]].passages[p.at].ends
	if l.people == 1 && ends[0] != ends[1] {
		return "draw-" + p.id
	}
	return p.id
}

// toward is a place in the words of a task.
func (l *lot) toward(place string) string {
	p := l.titles[place]
	switch {
	case p.Kind != Attic && p.Kind != Crawl:
		return p.Title
	case place == plan.AtticSpace.String() || place == plan.CrawlSpace.String():
		return "the " + place
	default:
		return place
	}
}

// kindAt is what kind of place a key is of.
func (s *site) kindAt(place string) PlaceKind { return s.titles[place].Kind }
