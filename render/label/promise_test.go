package label

import (
	"fmt"

	"topplate/render/sheet"
)

// check names the first promise of the package that placements break, or "". It
// compares all with all and shares no code with the search.
func check(p *Problem, got []Placement) string {
	if len(got) != len(p.Requests) {
		return fmt.Sprintf("%d placements for %d requests", len(got), len(p.Requests))
	}
	for i := range got {
		if got[i].ID != p.Requests[i].ID {
			return fmt.Sprintf("placement %d has the id %q, want %q", i, got[i].ID, p.Requests[i].ID)
		}
		if !got[i].Placed {
			continue
		}
		if fault := checkAlone(p, &p.Requests[i], got[i]); fault != "" {
			return fmt.Sprintf("text %d: %s", i, fault)
		}
		for j := range got {
			if fault := checkPair(p, got[i], got[j]); i != j && got[j].Placed && fault != "" {
				return fmt.Sprintf("texts %d and %d: %s", i, j, fault)
			}
		}
	}
	return ""
}

func checkAlone(p *Problem, r *Request, got Placement) string {
	b := got.Box
	width, height := r.Width, r.Height
	if got.Turned {
		width, height = height, width
	}
	switch {
	case b.Width() != width || b.Height() != height:
		return fmt.Sprintf("box %v is not %d by %d", b, width, height)
	case !p.Frame.Contains(b):
		return fmt.Sprintf("box %v leaves the frame", b)
	case got.Turned && !r.Turn:
		return "is turned, which was not allowed"
	case got.Leader != nil && !r.Leader:
		return "is on a leader, which was not allowed"
	case got.Leader == nil && r.Within != (sheet.Box{}) && len(r.Along) == 0 && !r.Within.Contains(b):
		return "leaves its area"
	case r.Symbol != (sheet.Box{}) && b.Overlaps(r.Symbol):
		return "covers its symbol"
	}
	for _, other := range p.Boxes {
		if b.Inset(-clearOf(p)).Overlaps(other) {
			return fmt.Sprintf("box %v is too close to %v", b, other)
		}
		if l := got.Leader; l != nil && other.Struck(l[0], l[1]) && !other.Has(r.target()) {
			return fmt.Sprintf("leader %v passes through %v", l, other)
		}
	}
	area := func(r *Request) bool { return len(r.Along) == 0 && r.Within != (sheet.Box{}) }
	for i := range p.Requests {
		other := &p.Requests[i]
		if got.Leader != nil && area(r) && area(other) && b.Overlaps(other.Within) && !r.Within.Overlaps(other.Within) {
			return fmt.Sprintf("box %v on a leader reaches into the area %v of another", b, other.Within)
		}
		if len(other.Along) > 0 || other.Within != (sheet.Box{}) || got.Leader == nil {
			continue
		}
		square := sheet.BoxAround(other.Anchor, clearOf(p), clearOf(p))
		if square.Struck(got.Leader[0], got.Leader[1]) && !square.Has(r.target()) {
			return fmt.Sprintf("leader %v passes by the point %v", got.Leader, other.Anchor)
		}
	}
	for _, l := range p.Lines {
		if !l.Soft && b.Inset(-clearOf(p)/2).Struck(l.A, l.B) {
			return fmt.Sprintf("box %v is struck by %v", b, l)
		}
	}
	return ""
}

func checkPair(p *Problem, a, b Placement) string {
	switch {
	case a.Box.Inset(-clearOf(p)).Overlaps(b.Box):
		return fmt.Sprintf("boxes %v and %v are too close", a.Box, b.Box)
	case a.Leader != nil && b.Box.Inset(-clearOf(p)/2).Struck(a.Leader[0], a.Leader[1]):
		return fmt.Sprintf("leader %v passes through the box %v", a.Leader, b.Box)
	case a.Leader == nil || b.Leader == nil || a.Leader[1] == b.Leader[1]:
	case meet(a.Leader[0], a.Leader[1], b.Leader[0], b.Leader[1]):
		return fmt.Sprintf("leaders %v and %v meet", a.Leader, b.Leader)
	}
	return ""
}

func clearOf(p *Problem) sheet.Paper {
	if p.Clear == 0 {
		return DefaultClear
	}
	return p.Clear
}
