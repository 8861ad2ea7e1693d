package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// furthestMove is how far from the wished place a box is looked for when a
// change is needed.
const furthestMove = 4 * measure.Foot

// boxWidth is the width of the opening that a box for n cables needs.
func (b *builder) boxWidth(n int) measure.Length { return BoxWidth(b.book, n) }

// BoxWidth is the width of the opening that a box for n cables needs: one
// gang, two, or two and as much again for each gang more.
func BoxWidth(book rule.Book, n int) measure.Length {
	one, two := book.Length(rule.BoxSingle), book.Length(rule.BoxDouble)
	perGang := int(book.Value(rule.CablesPerGang))
	gangs := (n + perGang - 1) / perGang
	if gangs <= 1 {
		return one
	}
	return two + measure.Length(gangs-2)*(two-one)
}

// wallPlate adds the places where the plate of drop d may be: in each bay, in
// each stretch that is wide enough and clear of power, the point nearest to
// the wished one.
func (b *builder) wallPlate(d int) {
	drop := &b.job.Drops[d]
	w := &b.house.Walls[drop.Spot.Wall]
	if w.Masonry {
		b.onMasonry(d)
		return
	}
	for k := range b.bays[drop.Spot.Wall] {
		bay := &b.bays[drop.Spot.Wall][k]
		if drop.Spot.Height < bay.Bottom || drop.Spot.Height > bay.Top {
			continue
		}
		for _, s := range b.boxStretches(drop, w, bay) {
			at := s.clamp(drop.Spot.At)
			if move := dist(at, drop.Spot.At); move <= drop.Shift || b.relax && move <= furthestMove {
				b.boxAt(d, bayKey{drop.Spot.Wall, k}, at, move)
			}
		}
	}
}

func dist(a, b measure.Length) measure.Length { return max(a-b, b-a) }

// boxStretches are the stretches of a bay where the middle of a box may be.
func (b *builder) boxStretches(drop *plan.Drop, w *plan.Wall, bay *Bay) spans {
	half := b.boxWidth(drop.Count) / 2
	cuts := b.feedsBeside(drop, w, bay, half)
	devices(w, bay, func(d *plan.Device) {
		if dist(d.Height, drop.Spot.Height) < b.book.Length(rule.BoxHeight) {
			cuts = append(cuts, around(d.At, half+b.book.Length(rule.BoxSingle)/2))
		}
	})
	return spans{span{bay.Start, bay.End}.inset(half)}.nonEmpty().without(cuts...)
}

// feedsBeside are the stretches too near to a power cable that passes the
// height of the box.
func (b *builder) feedsBeside(drop *plan.Drop, w *plan.Wall, bay *Bay, half measure.Length) []span {
	var out []span
	devices(w, bay, func(d *plan.Device) {
		passes := d.Up && drop.Spot.Height >= d.Height || d.Down && drop.Spot.Height <= d.Height
		if passes || dist(d.Height, drop.Spot.Height) < b.book.Length(rule.BoxHeight) {
			out = append(out, around(feed(d, bay), b.book.Length(rule.PowerParallel)+half))
		}
	})
	return out
}

// boxAt adds a candidate place for the box of drop d.
func (b *builder) boxAt(d int, key bayKey, at, move measure.Length) {
	drop := &b.job.Drops[d]
	w := &b.house.Walls[key.wall]
	p := w.PointAt(at)
	z := b.floorOf(key.wall) + drop.Spot.Height
	box := b.node(BoxNode, geom.Point3{X: p.X, Y: p.Y, Z: z}, key.wall, d)
	a := Arc{Kind: EnterArc, From: b.terms[d], To: box, Heading: up, Hole: -1, Charges: []Charge{
		b.once(price.CutBox, 1), b.once(price.MountBox, 1), b.onceBy(price.Shift, move),
	}}
	if move > drop.Shift {
		a.Blocks = append(a.Blocks, b.whyNotThere(drop, w, at, move))
	}
	b.add(a)
	if move > drop.Shift {
		d = noOwner // what stops another place is no answer for the wished one
	}
	b.intoShaft(d, box, key, at, drop.Spot.Height)
	b.outOfTheBack(box, key.wall, at, drop.Spot.Height, drop.Spot.Side)
	if b.job.Allow.Patching || b.relax {
		b.sideways(key, drop.Spot.Height)
	}
}

// intoShaft joins a box to the places in its bay from which the plate over it
// is bored.
func (b *builder) intoShaft(d, box int, key bayKey, at, height measure.Length) {
	s := b.shaftOf(key, height)
	if d != noOwner {
		s.drops = append(s.drops, d)
		if len(s.holes) == 0 {
			for _, stop := range s.stops {
				b.deadEnd([]int{d}, stop)
			}
		}
	}
	b.intoConduits(box, key, at, height)
	for i := range s.holes {
		l := dist(at, s.holes[i].along)
		b.add(Arc{
			Kind: SlantArc, From: box, To: b.inBay(key, &s.holes[i], height), Heading: network.Free,
			Length: l, Hole: -1, Charges: b.cable(l),
		})
	}
}

// whyNotThere says what is in the way at the wished place of a wall plate.
func (b *builder) whyNotThere(drop *plan.Drop, w *plan.Wall, at, move measure.Length) Block {
	p := w.PointAt(drop.Spot.At)
	side := "start"
	if at > drop.Spot.At {
		side = "end"
	}
	bl := Block{
		Rule: rule.BoxFit, Pos: w.Pos, At: geom.Point3{X: p.X, Y: p.Y, Z: drop.Spot.Height},
		Found:  fmt.Sprintf("a stud of wall %s is where the box of %s would be", w.ID, drop.Tag),
		Change: fmt.Sprintf("move the plate of %s by %s towards the %s of wall %s (a shift of that much)", drop.Tag, b.text(move), side, w.ID),
		Price:  b.prices.Each(price.ChangeMovePlate),
	}
	k, ok := bayAt(b.bays[drop.Spot.Wall], drop.Spot.At)
	if !ok {
		return bl
	}
	bay := &b.bays[drop.Spot.Wall][k]
	devices(w, bay, func(d *plan.Device) {
		bl.Rule, bl.Pos = rule.PowerBay, d.Pos
		bl.Found = fmt.Sprintf("%s %s and its cable are in the bay where %s was wished; the box is to be kept %s from the cable and clear of the device",
			d.Kind, d.ID, drop.Tag, b.text(b.book.Length(rule.PowerParallel)))
	})
	if bl.Pos == w.Pos && bay.Window >= 0 {
		o := &w.Openings[bay.Window]
		bl.Rule, bl.Pos, bl.Found = rule.Window, o.Pos, fmt.Sprintf("%s closes the bay over %s", o.ID, drop.Tag)
	}
	return bl
}

// baysSideways is how many bays on either side a cable may be taken behind
// patched board.
const baysSideways = 3

// sideways adds the arcs from bay to bay at a height, through the studs
// between them.
func (b *builder) sideways(key bayKey, height measure.Length) {
	for _, dir := range []int{-1, 1} {
		from := key
		for n := 0; n < baysSideways; n++ {
			to := bayKey{key.wall, from.bay + dir}
			if to.bay < 0 || to.bay >= len(b.bays[key.wall]) || !b.throughStud(from, to, height) {
				break
			}
			from = to
		}
	}
}

// throughStud adds the arcs between two neighbouring bays and reports whether
// there are any: no more than one stud may stand between them.
func (b *builder) throughStud(from, to bayKey, height measure.Length) bool {
	w := &b.house.Walls[from.wall]
	bays := b.bays[from.wall]
	lo, hi := &bays[min(from.bay, to.bay)], &bays[max(from.bay, to.bay)]
	if hi.Start-lo.End > w.StudWidth || height > lo.Top || height > hi.Top || height < lo.Bottom || height < hi.Bottom {
		return false
	}
	s, t := b.shaftOf(from, height), b.shaftOf(to, height)
	if len(t.holes) == 0 {
		return false
	}
	stud := w.PointAt(lo.End + (hi.Start-lo.End)/2)
	at := geom.Point3{X: stud.X, Y: stud.Y, Z: b.floorOf(from.wall) + height}
	place := HolePlace{
		Kind: StudArc, At: at, Wall: from.wall, Along: lo.End, Room: -1, Space: t.holes[0].cavity.index,
		MemberWidth: w.StudDepth, Free: w.StudDepth,
	}
	for i := range s.holes {
		for j := range t.holes {
			b.studArc(from, to, &s.holes[i], &t.holes[j], height, place)
		}
	}
	return true
}

func (b *builder) studArc(from, to bayKey, h, g *shaftHole, height measure.Length, place HolePlace) {
	l := dist(h.along, g.along)
	a := Arc{
		Kind: StudArc, From: b.inBay(from, h, height), To: b.inBay(to, g, height),
		Heading: headingTo(h.at, g.at), Length: l, Hole: b.hole(place),
		Charges: append(b.cable(l), b.once(price.BoreStud, 1), b.once(price.Patch, 1)),
	}
	if !b.job.Allow.Patching {
		a.Blocks = []Block{{
			Rule: rule.Patching, Pos: b.house.Walls[from.wall].Pos, At: place.At,
			Found:  "boring from bay to bay needs the board opened and patched, which the job does not allow",
			Change: "allow patching in this wall (patching = true)",
			Price:  b.prices.Each(price.ChangePatching),
		}}
	}
	b.add(a)
}

func headingTo(p, q geom.Point) network.Heading {
	switch {
	case q.X > p.X:
		return network.East
	case q.X < p.X:
		return network.West
	case q.Y > p.Y:
		return network.North
	default:
		return network.South
	}
}

// closet adds the root and the bays behind the panel, or the hole in the
// closet's ceiling.
func (b *builder) closet() {
	c := &b.job.Closet
	if c.Ceiling {
		b.closetCeiling()
		return
	}
	floor := b.floorOf(c.Spot.Wall)
	w := &b.house.Walls[c.Spot.Wall]
	p := w.PointAt(c.Spot.At)
	b.root = b.node(RootNode, geom.Point3{X: p.X, Y: p.Y, Z: floor + c.Spot.Height}, c.Spot.Wall, noOwner)
	b.upTheFace(b.root, &c.Spot, noOwner, nil)
	panel := around(c.Spot.At, c.Width/2)
	var shut []Block
	open := slices.ContainsFunc(b.house.Conduits, func(x plan.Conduit) bool { return x.Wall == c.Spot.Wall })
	for k := range b.bays[c.Spot.Wall] {
		bay := &b.bays[c.Spot.Wall][k]
		s := span{bay.Start, bay.End}
		if !s.overlaps(panel) || c.Spot.Height > bay.Top {
			continue
		}
		at := s.clamp(c.Spot.At)
		q := w.PointAt(at)
		box := b.node(BoxNode, geom.Point3{X: q.X, Y: q.Y, Z: floor + c.Spot.Height}, c.Spot.Wall, noOwner)
		l := dist(at, c.Spot.At)
		b.add(Arc{Kind: EnterArc, From: b.root, To: box, Heading: network.Free, Length: l, Hole: -1, Charges: b.cable(l)})
		b.intoShaft(noOwner, box, bayKey{c.Spot.Wall, k}, at, c.Spot.Height)
		b.outOfTheBack(box, c.Spot.Wall, at, c.Spot.Height, c.Spot.Side)
		shaft := b.shafts[bayKey{c.Spot.Wall, k}]
		open = open || len(shaft.holes) > 0
		shut = append(shut, shaft.stops[0])
	}
	if !open {
		b.shut = shut
	}
}

// closetCeiling adds the holes in the closet's ceiling: in each joist bay that
// the opening's width reaches, the point nearest to the wished one.
func (b *builder) closetCeiling() {
	c := &b.job.Closet
	level := b.house.Rooms[c.Room].Level
	lvl := &b.house.Levels[level]
	b.root = b.node(RootNode, geom.Point3{X: c.Point.X, Y: c.Point.Y, Z: lvl.Floor + c.Spot.Height}, -1, noOwner)
	cav := b.over(level, c.Point)
	if cav == nil {
		b.stopAll(Block{
			Rule: rule.NoHiddenWay, Pos: b.house.Levels[level].Pos, At: b.nodes[b.root].At,
			Found: "the sketch has no attic or floor over the ceiling of the closet",
		})
		return
	}
	found := false
	u, _ := cav.ax.uv(c.Point)
	most := max(c.Width/2, cav.js.width)
	cav.betweenJoists(c.Point, func(p geom.Point, move measure.Length) {
		if move > most && !b.relax || b.house.RoomOn(level, p) != c.Room {
			return
		}
		var blocks []Block
		if move > most {
			blocks = append(blocks, Block{
				Rule: rule.BoxFit, Pos: c.Pos, At: b.nodes[b.root].At,
				Found:  fmt.Sprintf("a joist is over the closet's opening, %s across the joists", b.text(u)),
				Change: fmt.Sprintf("move the closet's opening by %s across the joists", b.text(move)),
				Price:  b.prices.Each(price.ChangeMovePlate),
			})
		}
		found = true
		l := lvl.Floor + lvl.Ceiling - b.nodes[b.root].At.Z + move
		cav.ceilingHole(noOwner, b.root, p, c.Room, l, []Charge{b.once(price.CutCeiling, 1)}, blocks)
	})
	if !found {
		b.stopAll(Block{Rule: rule.BoxFit, Pos: c.Pos, At: b.nodes[b.root].At, Found: "joists leave no room for a hole in the closet's ceiling"})
	}
}

// stopAll keeps what stops every drop for good.
func (b *builder) stopAll(stop Block) {
	for d := range b.job.Drops {
		b.deadEnd([]int{d}, stop)
	}
}
