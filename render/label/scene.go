package label

import "topplate/render/sheet"

// A scene is a problem with its obstacles in grids.
type scene struct {
	*Problem
	clear     sheet.Paper
	maxLeader sheet.Paper
	boxes     *grid // of Boxes
	lines     *grid // of Lines
	anchors   *grid // of the anchors of Requests that label a point
	found     []int32
}

func newScene(p *Problem) *scene {
	s := &scene{
		Problem: p, clear: p.Clear, maxLeader: p.MaxLeader,
		boxes: newGrid(p.Frame), lines: newGrid(p.Frame), anchors: newGrid(p.Frame),
	}
	if s.clear <= 0 {
		s.clear = DefaultClear
	}
	if s.maxLeader <= 0 {
		s.maxLeader = DefaultMaxLeader
	}
	for i, b := range p.Boxes {
		s.boxes.add(int32(i), b)
	}
	for i, l := range p.Lines {
		s.lines.addLine(int32(i), l.A, l.B)
	}
	for i := range p.Requests {
		if r := &p.Requests[i]; len(r.Along) < 2 && r.Within == (sheet.Box{}) {
			s.anchors.add(int32(i), sheet.Box{Min: r.Anchor, Max: r.Anchor})
		}
	}
	return s
}

// free reports whether a text may stand in box, as far as the obstacles go.
func (s *scene) free(r *Request, box sheet.Box) bool {
	if !s.Frame.Contains(box) || !s.clearOfBoxes(box) {
		return false
	}
	if r.Symbol != (sheet.Box{}) && box.Overlaps(r.Symbol) {
		return false
	}
	return s.strikes(r, box, false) == 0
}

func (s *scene) clearOfBoxes(box sheet.Box) bool {
	wide := box.Inset(-s.clear)
	s.found = s.boxes.near(wide, s.found[:0])
	for _, i := range s.found {
		if wide.Overlaps(s.Boxes[i]) {
			return false
		}
	}
	return true
}

// strikes counts the lines of one kind that would strike a text of r in box or
// come so close to it that the line's own width does.
// A line that passes several cells of the grid counts several times: it is the
// worse for that.
func (s *scene) strikes(r *Request, box sheet.Box, soft bool) int {
	n := 0
	wide := box.Inset(-s.clear / 2)
	s.found = s.lines.near(wide, s.found[:0])
	for _, i := range s.found {
		l := &s.Lines[i]
		if l.Soft == soft && (l.Owner == "" || l.Owner != r.ID) && wide.Struck(l.A, l.B) {
			n++
		}
	}
	return n
}

// foreign counts the points labelled by other requests that would lie in box or
// nearly so: the text would seem to belong to them.
func (s *scene) foreign(r *Request, box sheet.Box) int {
	n := 0
	wide := box.Inset(-s.clear)
	s.found = s.anchors.near(wide, s.found[:0])
	for _, i := range s.found {
		if other := s.Requests[i].Anchor; other != r.Anchor && wide.Has(other) {
			n++
		}
	}
	return n
}
