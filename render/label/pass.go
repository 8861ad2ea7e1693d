package label

import "topplate/render/sheet"

// clearOfTexts reports whether box keeps away from all placed texts.
func (l *leading) clearOfTexts(box sheet.Box) bool {
	wide := box.Inset(-l.clear)
	l.found = l.texts.near(wide, l.found[:0])
	for _, i := range l.found {
		if wide.Overlaps(l.out[i].Box) {
			return false
		}
	}
	return true
}

// clearOfWays reports whether no leader passes through box.
func (l *leading) clearOfWays(box sheet.Box) bool {
	l.found = l.ways.near(box, l.found[:0])
	for _, i := range l.found {
		if w := l.out[i].way(); box.Struck(w.from, w.to) {
			return false
		}
	}
	return true
}

// passes reports whether the leader w goes through no text, no hard box but
// its own symbol, and no other leader.
func (l *leading) passes(r *Request, w way) bool {
	l.found = l.texts.near(w.bounds(), l.found[:0])
	for _, i := range l.found {
		if l.out[i].Box.Struck(w.from, w.to) {
			return false
		}
	}
	l.found = l.ways.near(w.bounds(), l.found[:0])
	for _, i := range l.found {
		if other := l.out[i].way(); meet(w.from, w.to, other.from, other.to) {
			return false
		}
	}
	l.found = l.boxes.near(w.bounds(), l.found[:0])
	for _, i := range l.found {
		if b := l.Boxes[i]; b.Struck(w.from, w.to) && !b.Has(r.target()) {
			return false
		}
	}
	return true
}

// crossings counts the lines that the leader w crosses, those that pass where
// it ends left out, once for each cell of the grid that both touch.
func (l *leading) crossings(w way) int {
	n := 0
	l.found = l.lines.near(w.bounds(), l.found[:0])
	for _, i := range l.found {
		line := &l.Lines[i]
		if !line.Soft && meet(w.from, w.to, line.A, line.B) && sheet.Turn(line.A, line.B, w.to) != 0 {
			n++
		}
	}
	return n
}

// meet reports whether the segments ab and cd have a point in common.
func meet(a, b, c, d sheet.Point) bool {
	if !touch(a.X, b.X, c.X, d.X) || !touch(a.Y, b.Y, c.Y, d.Y) {
		return false
	}
	return !apart(sheet.Turn(a, b, c), sheet.Turn(a, b, d)) && !apart(sheet.Turn(c, d, a), sheet.Turn(c, d, b))
}

// touch reports whether the intervals ab and cd have a point in common.
func touch(a, b, c, d sheet.Paper) bool {
	return max(a, b) >= min(c, d) && max(c, d) >= min(a, b)
}

// apart reports whether two points lie off a line on the same side of it.
func apart(side, other int64) bool { return side > 0 && other > 0 || side < 0 && other < 0 }
