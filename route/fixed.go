package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// fixedParts lists the fixed parts of a job by their ids, so that their order
// in the file decides nothing.
func fixedParts(job *plan.Job) []plan.Fixed {
	out := slices.Clone(job.Fixed)
	slices.SortFunc(out, func(f, g plan.Fixed) int { return CompareTags(f.ID, g.ID) })
	return out
}

// holesFixed are the fixed holes of a wall's bottom plate, or of its top plates,
// that something is to be done with.
func (b *builder) holesFixed(wall int, bottom bool, do plan.FixedDo) []*plan.Fixed {
	var out []*plan.Fixed
	for i := range b.fixed {
		if f := &b.fixed[i]; f.Wall == wall && f.Bottom == bottom && f.Do == do {
			out = append(out, f)
		}
	}
	return out
}

// fixHoles applies the fixed holes of a wall to the places where the plate over
// one of its bays, or the bottom plate under it, may be bored. What is not to be
// bored is forbidden and stays where it is: the lattice keeps its lines, so that a
// fixed part changes nothing but what it says.
func (b *builder) fixHoles(key bayKey, bottom bool, holes []shaftHole) []shaftHole {
	if b.beyondPlate(key, bottom) == nil {
		return holes
	}
	bay := &b.bays[key.wall][key.bay]
	inBay := func(f *plan.Fixed) bool { return bay.Start <= f.At && f.At <= bay.End }
	pins := b.holesFixed(key.wall, bottom, plan.UseFixed)
	for _, f := range pins {
		if inBay(f) {
			holes = b.pin(key, holes, f)
		}
	}
	for _, f := range b.holesFixed(key.wall, bottom, plan.FixedThere) {
		if inBay(f) {
			holes = b.takeExisting(key, holes, f)
		}
	}
	for i := range holes {
		for _, f := range b.holesFixed(key.wall, bottom, plan.AvoidFixed) {
			b.avoidHole(&holes[i], f)
		}
		b.forbidBeside(&holes[i], pins)
	}
	return holes
}

func samePlace(holes []shaftHole, f *plan.Fixed) int {
	return slices.IndexFunc(holes, func(h shaftHole) bool { return h.along == f.At })
}

// pin adds the place of f, if the plate may be bored there. Further holes, for
// more cable than one takes, go on both sides of it.
func (b *builder) pin(key bayKey, holes []shaftHole, f *plan.Fixed) []shaftHole {
	if samePlace(holes, f) >= 0 {
		return holes
	}
	w, bay := &b.house.Walls[key.wall], &b.bays[key.wall][key.bay]
	free, clear, _ := b.stretches(key, f.Bottom)
	in := func(s span) bool { return s.contains(f.At) }
	stretches, blocks := clear, []Block(nil)
	if b.relax && !slices.ContainsFunc(clear, in) {
		stretches, blocks = free, b.feedBlocks(w, bay, f.Bottom)
	}
	k := slices.IndexFunc(stretches, in)
	if k < 0 {
		return holes
	}
	s := stretches[k]
	return append(holes, b.shaftHole(key, f.Bottom, around(f.At, min(f.At-s.lo, s.hi-f.At)), blocks))
}

// avoidHole forbids hole h if f keeps holes away from it, and otherwise keeps
// what is bored beside it as far away.
func (b *builder) avoidHole(h *shaftHole, f *plan.Fixed) {
	if f.Avoids(h.along) {
		h.blocks = append(h.blocks, b.fixedBlock(f, h, rule.FixedPart, fmt.Sprintf("fixed part %s keeps holes %s away from %s along wall %s",
			f.ID, b.text(f.Width/2), b.text(f.At), b.house.Walls[f.Wall].ID)))
		return
	}
	if h.free.overlaps(around(f.At, f.Width/2)) {
		h.free = around(h.along, dist(h.along, f.At)-f.Width/2)
	}
}

// forbidBeside forbids boring hole h where others are pinned in its wall. The
// nearest pin says so, and what is in its own way.
func (b *builder) forbidBeside(h *shaftHole, pins []*plan.Fixed) {
	if len(pins) == 0 {
		return
	}
	f := slices.MinFunc(pins, func(f, g *plan.Fixed) int { return int(dist(f.At, h.along) - dist(g.At, h.along)) })
	if f.At == h.along {
		return
	}
	what := "wall"
	if f.Bottom {
		what = "the bottom plate of wall"
	}
	found := fmt.Sprintf("fixed part %s has %s %s bored at %s along it and nowhere else", f.ID, what, b.house.Walls[f.Wall].ID, b.text(f.At))
	id, why := b.whyNotBored(f)
	if why != "" {
		found += ", where " + why
	}
	h.beside = append(h.beside, b.fixedBlock(f, h, id, found))
}

func (b *builder) fixedBlock(f *plan.Fixed, h *shaftHole, id rule.ID, found string) Block {
	bl := b.partBlock(f, found)
	bl.Rule, bl.At.X, bl.At.Y = id, h.at.X, h.at.Y
	return bl
}

// partBlock forbids something because of a fixed part.
func (b *builder) partBlock(f *plan.Fixed, found string) Block {
	bl := Block{
		Rule: rule.FixedPart, Pos: f.Pos, Found: found,
		Change: fmt.Sprintf("take fixed part %s out of the job", f.ID),
		Price:  b.prices.Each(price.ChangeMovePlate),
	}
	switch {
	case f.Wall < 0:
		bl.At.Z = b.cavities[0].base
	case f.Bottom:
		bl.At.Z = b.floorOf(f.Wall)
	default:
		bl.At.Z = b.plateTop(f.Wall)
	}
	return bl
}

// whyNotBored says what is in the way of a pinned hole, nothing if it can be
// bored.
func (b *builder) whyNotBored(f *plan.Fixed) (id rule.ID, why string) {
	w := &b.house.Walls[f.Wall]
	k, ok := bayAt(b.bays[f.Wall], f.At)
	if !ok {
		return rule.HoleToMemberRule, b.solidAt(w, f)
	}
	key := bayKey{f.Wall, k}
	free, clear, stop := b.stretches(key, f.Bottom)
	in := func(s span) bool { return s.contains(f.At) }
	for _, o := range b.holesFixed(f.Wall, f.Bottom, plan.FixedThere) {
		if dist(o.At, f.At) < (o.Diameter+b.holeSize(w))/2+b.book.Length(rule.HoleToMember) {
			return rule.FixedPart, "hole " + o.ID + " is already"
		}
	}
	bay := &b.bays[f.Wall][k]
	half := b.holeSize(w)/2 + b.book.Length(rule.HoleToMember)
	switch {
	case slices.ContainsFunc(clear, in):
		return rule.FixedPart, ""
	case slices.ContainsFunc(free, in):
		return rule.PowerBay, b.feedBlocks(w, bay, f.Bottom)[0].Found
	case len(free) == 0:
		return stop.Rule, stop.Found
	case !(span{bay.Start, bay.End}).inset(half).contains(f.At):
		return rule.HoleToMemberRule, fmt.Sprintf("a stud is %s beside the middle of the hole; %s is needed", b.text(min(f.At-bay.Start, bay.End-f.At)), b.text(half))
	}
	member := "a rafter on the plate"
	switch c := b.beyondPlate(key, f.Bottom); {
	case f.Bottom:
		member = "a joist under the plate"
	case w.AlongY() != c.ax.alongY && inside(f.At, b.alongWall(w, span{bay.Start, bay.End}, c.js.bodies, half)):
		member = "a joist on the plate"
	}
	return rule.HoleToMemberRule, fmt.Sprintf("%s is nearer than %s to the middle of the hole", member, b.text(half))
}

// inside reports whether x is in one of the spans, off its ends.
func inside(x measure.Length, ss []span) bool {
	return slices.ContainsFunc(ss, func(s span) bool { return s.lo < x && x < s.hi })
}

// solidAt says what takes up the place of a fixed hole outside the bays of its
// wall.
func (b *builder) solidAt(w *plan.Wall, f *plan.Fixed) string {
	for i := range w.Openings {
		switch o := &w.Openings[i]; {
		case f.At < o.Start || o.End < f.At:
		case f.Bottom:
			return o.ID + " comes down to the plate"
		default:
			return "the header over " + o.ID + " is"
		}
	}
	return "a stud is"
}
