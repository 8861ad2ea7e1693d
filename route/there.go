package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// takeExisting adds the hole of f. Others are bored beside it.
func (b *builder) takeExisting(key bayKey, holes []shaftHole, f *plan.Fixed) []shaftHole {
	w, bay := &b.house.Walls[key.wall], &b.bays[key.wall][key.bay]
	var blocks []Block
	for _, s := range b.feeds(w, bay, f.Bottom, f.Diameter/2) {
		if s.lo < f.At && f.At < s.hi {
			blocks = b.feedBlocks(w, bay, f.Bottom)
		}
	}
	h := b.shaftHole(key, f.Bottom, around(f.At, f.Diameter/2), blocks)
	h.there = f
	return append(holes, h)
}

// checkExisting returns an error that names the first hole that the job says
// is there and the framing of the house leaves no room for.
func (b *builder) checkExisting() error {
	for i := range b.fixed {
		f := &b.fixed[i]
		if f.Do != plan.FixedThere || f.Wall < 0 {
			continue
		}
		w := &b.house.Walls[f.Wall]
		k, ok := bayAt(b.bays[f.Wall], f.At)
		switch {
		case !ok:
			return fmt.Errorf("%s: fixed part %s: found a hole at %s along wall %s, where %s; want a place in a stud bay", f.Pos, f.ID, b.text(f.At), w.ID, b.solidAt(w, f))
		case b.beyondPlate(bayKey{f.Wall, k}, f.Bottom) == nil:
			return fmt.Errorf("%s: fixed part %s: found a hole at %s along wall %s, where the sketch has no attic, floor or crawl space that it opens into; want a place at one", f.Pos, f.ID, b.text(f.At), w.ID)
		case f.Bottom:
		case b.bays[f.Wall][k].Window >= 0:
			return fmt.Errorf("%s: fixed part %s: found a hole at %s along wall %s, where %s closes the bay; want a bay that goes up to the plate", f.Pos, f.ID, b.text(f.At), w.ID, w.Openings[b.bays[f.Wall][k].Window].ID)
		}
	}
	return nil
}

// throughExisting adds the arc through the hole in a plate that is there. It is not
// bored: cable is fished through it as it is through the bay. It is used only
// if it takes all cables that may come, since what it does not take needs a
// hole bored beside it anyway. Those in it are taken to be as thick as the
// thickest of the job's cables.
func (b *builder) throughExisting(s *shaft, h *shaftHole) {
	takes := b.cablesThrough(h.there.Diameter) - h.there.Cables
	if takes < b.mayCome(s) {
		return
	}
	bay, c := &b.bays[s.key.wall][s.key.bay], h.cavity
	from, l, heading := bay.Top, b.plates(s), up
	if h.sole {
		from, l, heading = bay.Bottom, b.throughFloor(s, h), up.Reverse()
	}
	there := b.thereAt(s.key.wall, h)
	c.add(Arc{
		Kind: there.Kind, From: b.inBay(s.key, h, from), To: c.low(h.at), Heading: heading, Length: l,
		Hole: -1, Capacity: takes, There: there, Charges: b.cable(l), Blocks: slices.Clone(h.blocks),
	})
}

// thereAt is the hole that is there in a plate of a wall.
func (b *builder) thereAt(wall int, h *shaftHole) *There {
	f := h.there
	p := HolePlace{
		Kind: PlateArc, At: geom.Point3{X: h.at.X, Y: h.at.Y, Z: h.cavity.base}, Wall: wall, Along: h.along, Room: -1,
		Free: f.Diameter, MemberWidth: b.house.Walls[wall].StudDepth, Space: h.cavity.index,
	}
	if h.sole {
		p.Kind = SoleArc
	}
	return &There{f.ID, f.Pos, p, f.Diameter, f.Cables}
}

// mayCome is how many cables may come through a plate of a shaft: those of the
// plates in it, and all if the closet is in it or no box is. Where bays may be
// joined behind patched board the whole wall is taken for it.
func (b *builder) mayCome(s *shaft) int {
	c, bay := &b.job.Closet, &b.bays[s.key.wall][s.key.bay]
	behind := span{bay.Start, bay.End}.overlaps(around(c.Spot.At, c.Width/2))
	all := s.through || c.Spot.Wall == s.key.wall && (b.job.Allow.Patching || behind)
	n := 0
	for d := range b.job.Drops {
		drop := &b.job.Drops[d]
		beside := b.job.Allow.Patching && drop.Kind == plan.WallPlate && drop.Spot.Wall == s.key.wall
		if all || beside || slices.Contains(s.drops, d) {
			n += drop.Count
		}
	}
	return n
}

// cablesThrough is how many of the job's thickest cables go through a hole.
func (b *builder) cablesThrough(hole measure.Length) int {
	var thickest measure.Length
	for i := range b.job.Drops {
		thickest = max(thickest, b.job.Drops[i].Cable.Diameter)
	}
	f := fitting{bits: []plan.Bit{{Diameter: hole}}, over: b.book.Length(rule.HoleOverBundle), largest: hole}
	return f.take(slices.Repeat([]measure.Length{thickest}, mostThrough))
}

// mostThrough bounds the cables through one hole.
const mostThrough = 500

// reused reports holes that are there and would be fuller than they can be.
func (c *collector) reused() {
	g := c.r.Graph
	most := map[string]int{}
	for i := range g.Arcs {
		if a := &g.Arcs[i]; a.There != nil {
			most[a.There.ID] = a.Capacity
		}
	}
	for i := range c.r.Reused {
		if u := &c.r.Reused[i]; !u.Conduit && u.Cables > most[u.ID] {
			c.add(rule.PlateCapacity, Finding{
				Pos: u.Pos, Where: u.ID,
				Found:  fmt.Sprintf("%d cables would go through a hole that is there, %s wide with %d in it; %d more fit", u.Cables, c.text(u.Inside), u.Before, most[u.ID]),
				Change: "take some of the cables another way",
			})
		}
	}
}
