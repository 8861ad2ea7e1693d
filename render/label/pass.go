package label

import "topplate/render/sheet"

// passes reports whether the leader w goes through no hard box but that of its
// own symbol, and no point of another request, to which it would else seem to
// lead and which it would cut off.
func (s *scene) passes(r *Request, w way) bool {
	s.found = s.boxes.near(w.bounds(), s.found[:0])
	for _, i := range s.found {
		if b := s.Boxes[i]; b.Struck(w.from, w.to) && !b.Has(r.target()) {
			return false
		}
	}
	s.found = s.anchors.near(w.bounds().Inset(-s.clear), s.found[:0])
	for _, i := range s.found {
		square := sheet.BoxAround(s.Requests[i].Anchor, s.clear, s.clear)
		if square.Struck(w.from, w.to) && !square.Has(r.target()) {
			return false
		}
	}
	return true
}

// lineCost is the cost of the hard lines that the leader w crosses or runs
// along, each once for each cell of the grid that both touch. A line that
// passes where the leader ends is not crossed.
func (s *scene) lineCost(w way) int {
	cost := 0
	s.found = s.lines.near(w.bounds().Inset(-s.clear), s.found[:0])
	for _, i := range s.found {
		line := &s.Lines[i]
		switch {
		case line.Soft:
		case s.hugs(w, line):
			cost += costHugging
		case meet(w.from, w.to, line.A, line.B) && sheet.Turn(line.A, line.B, w.to) != 0:
			cost += costCrossing
		}
	}
	return cost
}

// hugs reports whether w runs along a line: one end is close to it, and the
// sine of the angle between them is below a quarter, that of 14°.
func (s *scene) hugs(w way, line *Line) bool {
	if !near(w.from, s.clear, line) && !near(w.to, s.clear, line) {
		return false
	}
	cross := float64(sheet.Turn(w.from, w.to, w.from.Add(line.B.Sub(line.A))))
	return 16*cross*cross < side{w.from, w.to}.squared()*side{line.A, line.B}.squared()
}

// near reports whether the line comes within about a distance of p.
func near(p sheet.Point, distance sheet.Paper, line *Line) bool {
	return sheet.Box{Min: p, Max: p}.Inset(-distance).Struck(line.A, line.B)
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
