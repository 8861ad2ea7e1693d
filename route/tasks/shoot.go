package tasks

import (
	"fmt"
	"slices"
)

// shoot adds a rod shot. At an eave the rods come in from outside and draw the
// cables out with them; at a wall or a ceiling out of reach they fetch the end
// of a tape that is fed in at the hole there. Inside a closed floor they are
// pushed in at one hole, and the tape is fed in at the other.
func (l *lot) shoot(s *shot) {
	k := s.ways[0]
	w := &l.ways[k]
	p := &w.passages[s.at]
	if s.out {
		return // part of atDrop: the cables have to be laid before
	}
	drops := l.dropsOf(s.ways)
	rods := tools("rods, "+l.text(l.job.Tools.Rods)+" joined", "hook for the rods", "tape")
	length, what := l.text(l.graph.Arcs[s.arc].Length), l.tags(drops)
	ends := l.shotEnds(s)
	t := Task{ID: s.id, Kind: Shoot, Place: ends[0], Helper: ends[1], Drops: drops}
	if p.to < len(w.route.Arcs) && w.route.Arcs[p.to-1] == s.arc {
		t.Place, t.Helper = t.Helper, t.Place // a hand takes the rods on the drop's side
	}
	t.Carry, t.HelperCarry = l.withLadder(t.Place, rods), l.withLadder(t.Helper, tools("fish tape"))
	for _, i := range l.holesIn(k, s.at) {
		if o := &l.holes[i]; !o.opening && !l.bored[o.h] {
			t.Needs = append(t.Needs, at("bore", l.res.Holes[o.h].ID))
		}
	}
	t.Needs = append(t.Needs, l.openingsOf(s)...)
	t.Words = fmt.Sprintf("Shoot the rods %s to the hole of %s, hook the tape and bring it back.", length, what)
	t.HelperWords = fmt.Sprintf("Feed the tape up the hole of %s and guide it on to the hook.", what)
	tape := fmt.Sprintf("Feed a tape up the hole of %s, a loop at its end, and leave it there.", what)
	if l.closed(s) {
		t.Words = fmt.Sprintf("Push the rods in at the hole, %s inside the floor to the hole of %s, hook the tape and bring it back.", length, what)
		t.HelperWords = fmt.Sprintf("Feed the tape in at the hole of %s and guide it on to the hook.", what)
		tape = fmt.Sprintf("Feed a tape in at the hole of %s, a loop at its end, and make it fast.", what)
	}
	l.twoAtShot(t, tape)
}

// shotEnds are the places at the ends of a shot, the closet's side first: those
// of the passage that it is in, or in one with more than walls and the shot
// those from which the holes before and after it are bored.
func (l *lot) shotEnds(s *shot) [2]string {
	k := s.ways[0]
	w := &l.ways[k]
	p := &w.passages[s.at]
	ends := p.ends
	if !l.closed(s) && len(l.rods(w, p)) == 1 && (s.at == 0 || s.at == len(w.passages)-1) {
		return ends
	}
	past := false
	for _, a := range w.route.Arcs[p.from:p.to] {
		if a == s.arc {
			past = true
		}
		if l.graph.Arcs[a].Hole < 0 {
			continue
		}
		i := slices.IndexFunc(l.holes, func(o hole) bool { return o.h == l.holeAt[l.graph.Arcs[a].Hole] })
		if past {
			ends[1] = l.holes[i].place
			break
		}
		ends[0] = l.holes[i].place
	}
	return ends
}

// twoAtShot adds a shot for two. One person alone leaves the tape at the hole
// first.
func (l *lot) twoAtShot(t Task, tape string) {
	switch {
	case l.people == 2:
		t.Hands = 2
	case t.Place == t.Helper:
		t.Carry = append(t.Carry, t.HelperCarry...)
		t.Words = tape + " " + t.Words
		t.Helper, t.HelperWords, t.HelperCarry = "", "", nil
	default:
		ready := "ready-" + t.ID[len("shoot-"):]
		l.halve(t.ID, ready)
		l.record(ready, makeFast, 1)
		l.add(Task{ID: ready, Kind: Ready, Place: t.Helper, Drops: t.Drops, Needs: t.Needs, Carry: t.HelperCarry, Words: tape})
		t.Needs, t.Helper, t.HelperWords, t.HelperCarry = []string{ready}, "", "", nil
	}
	l.add(t)
}

// closed reports whether no hand gets at either end of a shot.
func (l *lot) closed(s *shot) bool {
	a := &l.graph.Arcs[s.arc]
	return !l.inReach(a.From) && !l.inReach(a.To)
}

// openingsOf lists the openings that a shot needs.
func (l *lot) openingsOf(s *shot) []string {
	var out []string
	for _, k := range s.ways {
		w := &l.ways[k]
		if s.at == 0 {
			out = append(out, l.openedCloset())
		}
		if s.at == len(w.passages)-1 {
			out = append(out, l.openedAt(k))
		}
	}
	return out
}

// shotOf is the shot on an arc of passage p of way k.
func (l *lot) shotOf(k, p, arc int) *shot {
	i := slices.IndexFunc(l.shots, func(s shot) bool {
		return s.arc == arc && slices.Contains(s.ways, k) && s.out == (p == len(l.ways[k].passages)-1 && l.outdoors(&l.ways[k]))
	})
	return &l.shots[i]
}

// shotsIn are the tasks of the shots in passage p of way k.
func (l *lot) shotsIn(k, p int) []string {
	var out []string
	for _, a := range l.rods(&l.ways[k], &l.ways[k].passages[p]) {
		out = append(out, l.shotOf(k, p, a).id)
	}
	return out
}
