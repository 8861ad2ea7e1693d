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

// holesFixed are the fixed holes of a wall that something is to be done with.
func (b *builder) holesFixed(wall int, do plan.FixedDo) []*plan.Fixed {
	var out []*plan.Fixed
	for i := range b.fixed {
		if f := &b.fixed[i]; f.Wall == wall && f.Do == do {
			out = append(out, f)
		}
	}
	return out
}

// fixHoles applies the fixed holes of a wall to the places where the plate
// over one of its bays may be bored. What is not to be bored is forbidden and
// stays where it is: the lattice keeps its lines, so that a fixed part changes
// nothing but what it says.
func (b *builder) fixHoles(key bayKey, holes []shaftHole) []shaftHole {
	if b.overBay(key) == nil {
		return holes
	}
	bay := &b.bays[key.wall][key.bay]
	inBay := func(f *plan.Fixed) bool { return bay.Start <= f.At && f.At <= bay.End }
	pins := b.holesFixed(key.wall, plan.UseFixed)
	for _, f := range pins {
		if inBay(f) {
			holes = b.pin(key, holes, f)
		}
	}
	for _, f := range b.holesFixed(key.wall, plan.FixedThere) {
		if inBay(f) {
			holes = b.takeExisting(key, holes, f)
		}
	}
	for i := range holes {
		for _, f := range b.holesFixed(key.wall, plan.AvoidFixed) {
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
	free, clear, _ := b.stretches(key)
	in := func(s span) bool { return s.contains(f.At) }
	stretches, blocks := clear, []Block(nil)
	if b.relax && !slices.ContainsFunc(clear, in) {
		stretches, blocks = free, b.feedBlocks(w, bay)
	}
	k := slices.IndexFunc(stretches, in)
	if k < 0 {
		return holes
	}
	s := stretches[k]
	return append(holes, b.shaftHole(key, around(f.At, min(f.At-s.lo, s.hi-f.At)), blocks))
}

// takeExisting adds the hole of f, beside which nothing is bored unless its
// place may be bored anyway.
func (b *builder) takeExisting(key bayKey, holes []shaftHole, f *plan.Fixed) []shaftHole {
	if k := samePlace(holes, f); k >= 0 {
		holes[k].there = f
		return holes
	}
	w, bay := &b.house.Walls[key.wall], &b.bays[key.wall][key.bay]
	var blocks []Block
	for _, s := range b.feeds(w, bay, f.Diameter/2) {
		if s.lo < f.At && f.At < s.hi {
			blocks = b.feedBlocks(w, bay)
		}
	}
	h := b.shaftHole(key, around(f.At, f.Diameter/2), blocks)
	h.there, h.unbored = f, true
	return append(holes, h)
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
	found := fmt.Sprintf("fixed part %s has wall %s bored at %s along it and nowhere else", f.ID, b.house.Walls[f.Wall].ID, b.text(f.At))
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
	bl.At.Z = b.cavities[0].base
	if f.Wall >= 0 {
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
		return rule.HoleToMemberRule, b.solidAt(w, f.At)
	}
	free, clear, stop := b.stretches(bayKey{f.Wall, k})
	in := func(s span) bool { return s.contains(f.At) }
	bay := &b.bays[f.Wall][k]
	half := b.holeSize(w)/2 + b.book.Length(rule.HoleToMember)
	switch {
	case slices.ContainsFunc(clear, in):
		return rule.FixedPart, ""
	case slices.ContainsFunc(free, in):
		return rule.PowerBay, b.feedBlocks(w, bay)[0].Found
	case len(free) == 0:
		return stop.Rule, stop.Found
	case !(span{bay.Start, bay.End}).inset(half).contains(f.At):
		return rule.HoleToMemberRule, fmt.Sprintf("a stud is %s beside the middle of the hole; %s is needed", b.text(min(f.At-bay.Start, bay.End-f.At)), b.text(half))
	}
	member := "a rafter"
	if c := b.overBay(bayKey{f.Wall, k}); w.AlongY() != c.ax.alongY && inside(f.At, b.alongWall(w, span{bay.Start, bay.End}, c.js.bodies, half)) {
		member = "a joist"
	}
	return rule.HoleToMemberRule, fmt.Sprintf("%s on the plate is nearer than %s to the middle of the hole", member, b.text(half))
}

// inside reports whether x is in one of the spans, off its ends.
func inside(x measure.Length, ss []span) bool {
	return slices.ContainsFunc(ss, func(s span) bool { return s.lo < x && x < s.hi })
}

// solidAt says what takes up a place of a wall outside its bays.
func (b *builder) solidAt(w *plan.Wall, at measure.Length) string {
	for i := range w.Openings {
		if o := &w.Openings[i]; o.Start <= at && at <= o.End {
			return "the header over " + o.ID + " is"
		}
	}
	return "a stud is"
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
			return fmt.Errorf("%s: fixed part %s: found a hole at %s along wall %s, where %s; want a place in a stud bay", f.Pos, f.ID, b.text(f.At), w.ID, b.solidAt(w, f.At))
		case b.bays[f.Wall][k].Window >= 0:
			return fmt.Errorf("%s: fixed part %s: found a hole at %s along wall %s, where %s closes the bay; want a bay that goes up to the plate", f.Pos, f.ID, b.text(f.At), w.ID, w.Openings[b.bays[f.Wall][k].Window].ID)
		}
	}
	return nil
}

// throughExisting adds the arc through the hole that is there. It is not
// bored: cable is fished through it as it is through the bay. It is used only
// if it takes all cables that may come, since what it does not take needs a
// hole bored beside it anyway. Those in it are taken to be as thick as the
// thickest of the job's cables.
func (b *builder) throughExisting(s *shaft, h *shaftHole) {
	takes := b.cablesThrough(h.there.Diameter) - h.there.Cables
	if takes < b.mayCome(s) {
		return
	}
	thick := b.plates(s)
	h.cavity.add(Arc{
		Kind: FishArc, From: b.inBay(s.key, h, b.bays[s.key.wall][s.key.bay].Top), To: h.cavity.low(h.at), Heading: up, Length: thick,
		Hole: -1, Capacity: takes, There: existing(b.job, h.there.ID), Charges: b.cable(thick), Blocks: slices.Clone(h.blocks),
	})
}

// mayCome is how many cables may come through the plate over a shaft: those of
// the plates in it, and all if the closet is in it. Where bays may be joined
// behind patched board the whole wall is taken for it.
func (b *builder) mayCome(s *shaft) int {
	c, bay := &b.job.Closet, &b.bays[s.key.wall][s.key.bay]
	behind := span{bay.Start, bay.End}.overlaps(around(c.Spot.At, c.Width/2))
	all := c.Spot.Wall == s.key.wall && (b.job.Allow.Patching || behind)
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
