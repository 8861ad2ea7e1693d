package record

import (
	"slices"
	"strings"

	"topplate/plan/measure"
)

// hole checks a hole as it was bored.
func (c *checker) hole() {
	planned, ok := c.plan.Hole(c.e.ID)
	_, before := find(c.all, HoleKind, c.e.ID) // a new one that was recorded once
	switch {
	case !IsName(c.e.ID):
		c.errorf("found the name %.40q; want letters, digits, - _ or .", c.e.ID)
		return
	case !ok && !c.e.New && !before:
		c.unknown("; one that is not planned is recorded with --new --wall --at --size")
		return
	case ok && c.e.New:
		c.errorf("the plan has a hole of this name; give another one to a new hole")
		return
	}
	h := &c.e.Hole
	if h.Diameter == 0 {
		c.errorf("found no size of the hole; want its diameter (--size)")
	}
	if h.Through == "" {
		c.errorf("found nothing that it goes through (--through)")
	}
	c.place(planned)
	c.through(planned)
	c.room()
	if ok && planned.Largest > 0 && h.Diameter > planned.Largest {
		c.warnf("found a hole of %s, larger than %s, the largest that the plan allows there; a bearing member may need strengthening: ask who answers for the structure", c.plan.text(h.Diameter), c.plan.text(planned.Largest))
	}
}

// place checks where a hole is.
func (c *checker) place(planned *PlannedHole) {
	h, text := &c.e.Hole, c.plan.text
	if h.Wall == "" {
		if h.InPlate() {
			c.errorf("found no wall; want the wall and the place along it (--wall, --at)")
		}
		return
	}
	w, ok := c.plan.wall(h.Wall)
	if !ok {
		var ids []string
		for i := range c.plan.Walls {
			ids = append(ids, c.plan.Walls[i].ID)
		}
		c.errorf("found %.40q, which is no wall of the house; %s", h.Wall, near(h.Wall, ids))
		return
	}
	if h.At <= w.From || h.At >= w.To {
		c.errorf("found a hole at %s along wall %s; want it from %s to %s", text(h.At), w.ID, text(w.From), text(w.To))
	}
	if planned != nil && planned.Wall != "" && planned.Wall != h.Wall {
		c.warnf("found it in wall %s; it was planned in wall %s", h.Wall, planned.Wall)
	}
	for i := range c.now {
		o := &c.now[i]
		apart := max(o.Hole.At-h.At, h.At-o.Hole.At)
		if o.Kind == HoleKind && o.ID != c.e.ID && o.Hole.Wall == h.Wall && o.Hole.Through == h.Through && 2*apart < o.Hole.Diameter+h.Diameter {
			c.cant("found a hole at %s along wall %s, where hole %s is (%s)", text(h.At), h.Wall, o.ID, entryName(o))
		}
	}
}

// through checks the cables through a hole.
func (c *checker) through(planned *PlannedHole) {
	h := &c.e.Hole
	if planned != nil && planned.Cables == nil && len(h.Cables) == 0 {
		c.errorf("found no cables; want those that go through this one of the holes side by side (--cables)")
	}
	seen := map[string]bool{}
	for _, id := range h.Cables {
		_, known := c.plan.Cable(id)
		switch {
		case !known:
			c.errorf("found %.40q through it, which is no cable of the plan; %s", id, near(id, c.plan.ids(CableKind)))
		case seen[id]:
			c.errorf("found cable %s through it twice", id)
		case leftOut(c.now, id):
			e, _ := find(c.now, CableKind, id)
			c.errorf("found cable %s through it, which is %s (%s)", id, e.Cable.State, entryName(e))
		default:
			c.beside(id)
		}
		seen[id] = true
	}
}

// beside checks that a cable is not in another of the holes side by side, which
// are called H3.1, H3.2.
func (c *checker) beside(id string) {
	base := func(hole string) string {
		i := strings.LastIndexByte(hole, '.')
		if p, ok := c.plan.Hole(hole); !ok || p.Cables != nil || i < 0 {
			return ""
		}
		return hole[:i]
	}
	own := base(c.e.ID)
	for i := range c.now {
		o := &c.now[i]
		if own != "" && o.Kind == HoleKind && o.ID != c.e.ID && base(o.ID) == own && slices.Contains(o.Hole.Cables, id) {
			c.errorf("found cable %s through it, which is in hole %s beside it (%s)", id, o.ID, entryName(o))
		}
	}
}

// room checks that cables of so much area can be in the hole at all. Those of
// other jobs are taken to be as thick as the thinnest of this one.
func (c *checker) room() {
	h := &c.e.Hole
	square := func(l measure.Length) int64 {
		um := int64(l / measure.Micrometre)
		return um * um
	}
	var area int64
	var thinnest measure.Length
	for i := range c.plan.Cables {
		p := &c.plan.Cables[i]
		if thinnest == 0 || p.Diameter < thinnest {
			thinnest = p.Diameter
		}
		if slices.Contains(h.Cables, p.ID) {
			area += square(p.Diameter)
		}
	}
	area += int64(h.There) * square(thinnest)
	if h.Diameter > 0 && area > square(h.Diameter) {
		c.cant("found %d cables in a hole of %s, which together have more area than the hole", len(h.Cables)+h.There, c.plan.text(h.Diameter))
	}
}

// spool checks what is left on a spool.
func (c *checker) spool() {
	s, text := &c.e.Spool, c.plan.text
	before, ok := spoolBefore(c.plan, without(c.all, c.e.Replaces), c.e.ID)
	switch {
	case !IsName(c.e.ID):
		c.errorf("found the name %.40q; want letters, digits, - _ or .", c.e.ID)
		return
	case !ok && s.Cable == "":
		c.unknown("; one that was bought since is recorded with its --cable")
		return
	case !slices.Contains(c.plan.CableKinds, s.Cable):
		c.errorf("found cable %.40q, which the job doesn't know; %s", s.Cable, near(s.Cable, c.plan.CableKinds))
	case ok && s.Cable != before.Cable:
		c.errorf("found cable %s; this spool has %s", s.Cable, before.Cable)
	}
	if s.Left < 0 {
		c.errorf("found a mark by which less than nothing is left")
		return
	}
	if !ok {
		return
	}
	if s.Left > before.Left {
		c.cant("found %s left, but there were %s before", text(s.Left), text(before.Left))
	}
	if s.Marked && before.Marked && (s.Down && s.Mark > before.Mark || !s.Down && s.Mark < before.Mark) {
		c.cant("found the mark %s after %s, the wrong way for marks that count %s", text(s.Mark), text(before.Mark), map[bool]string{false: "up", true: "down"}[s.Down])
	}
	if s.Marked && s.Down && s.Left > s.Mark {
		c.cant("found %s left, but the mark says %s", text(s.Left), text(s.Mark))
	}
}
