package route

import (
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// A surface raceway is the last resort where nothing is hollow: a channel on the
// faces of a room's walls, at the height of the skirting, with channels up and
// down to boxes, panel and ceiling, and holes from room to room.

// raceways adds them to some wall plates, and to a panel on a wall without a
// hollow, if the job allows channels.
func (b *builder) raceways(drops []int) {
	c := &b.job.Closet
	solid := !c.Ceiling && b.house.Walls[c.Spot.Wall].Masonry
	if !b.job.Allow.Raceway || len(drops) == 0 && !solid {
		return
	}
	rails := make([]*rail, len(b.house.Rooms))
	height := b.book.Length(rule.RacewayHeight)
	for i := range b.house.Rooms {
		r := &b.house.Rooms[i]
		rails[i] = &rail{z: b.house.Levels[r.Level].Floor + height, rings: append([]geom.Polygon{r.Outline}, r.Holes...)}
		b.jambs(rails[i], r.Level, height)
	}
	for _, d := range drops {
		if s := &b.job.Drops[d].Spot; s.Room >= 0 {
			box := b.onTheFace(d)
			b.ontoRail(rails[s.Room], s, box)
			b.upToCeiling(s, box, d)
		}
	}
	if !c.Ceiling {
		b.ontoRail(rails[c.Room], &c.Spot, b.root)
		if solid {
			b.upToCeiling(&c.Spot, b.root, noOwner)
		}
	}
	for w := range b.house.Walls {
		b.railsThroughWall(rails, w)
	}
	b.risers(rails, drops)
	for i, r := range rails {
		b.layRail(r, b.house.Rooms[i].Level, height)
	}
}

// layRail adds the channel between the stations of a room's rail; it goes up and
// over where a door is in the way.
func (b *builder) layRail(r *rail, level int, height measure.Length) {
	r.eachStretch(func(p, q geom.Point) {
		l := geom.Dist(p, q)
		var round []Charge
		if _, o := b.openingOn(level, p, q, height); o != nil {
			l += 2 * (o.Head - height)
			round = append(round, b.once(price.RacewayDoor, 1))
		}
		b.add(Arc{
			Kind: RacewayArc, From: b.station(r, p), To: b.station(r, q), Heading: headingTo(p, q), Length: l, Hole: -1,
			Charges: append(append(b.cable(l), b.onceBy(price.RacewayRun, l)), round...),
		})
	})
}

// ontoRail joins a node on the face of a wall to the rail below it.
func (b *builder) ontoRail(r *rail, s *plan.Spot, node int) {
	w := &b.house.Walls[s.Wall]
	p := w.FacePoint(s.At, s.Side)
	z := b.nodes[node].At.Z
	l := dist(z, r.z)
	heading := up
	if z > r.z {
		heading = up.Reverse()
	}
	b.add(Arc{
		Kind: RacewayArc, From: node, To: b.station(r, p), Heading: heading, Length: l, Hole: -1,
		Charges: append(b.cable(l), b.onceBy(price.RacewayRun, l)),
	})
}

// upToCeiling joins a node on the face of a wall to the space over the room, by
// a channel up to the ceiling and a hole through it in front of the wall.
func (b *builder) upToCeiling(s *plan.Spot, node, d int) {
	w := &b.house.Walls[s.Wall]
	lvl := &b.house.Levels[w.Level]
	at := inFront(w, s.At, s.Side, offTheFace)
	c := b.over(w.Level, at)
	if c == nil || b.house.Rooms[s.Room].Open {
		return
	}
	face := w.FacePoint(s.At, s.Side)
	top := b.node(RailNode, geom.Point3{X: face.X, Y: face.Y, Z: lvl.Floor + lvl.Ceiling}, -1, noOwner)
	l := lvl.Floor + lvl.Ceiling - b.nodes[node].At.Z
	b.add(Arc{
		Kind: RacewayArc, From: node, To: top, Heading: up, Length: l, Hole: -1,
		Charges: append(b.cable(l), b.onceBy(price.RacewayRun, l)),
	})
	c.betweenJoists(at, func(q geom.Point, _ measure.Length) {
		if b.house.RoomOn(w.Level, q) == s.Room {
			out := squarely(face, q)
			c.ceilingHole(d, top, q, s.Room, out, []Charge{b.once(price.BoreWall, 1), b.onceBy(price.RacewayRun, out)}, nil)
		}
	})
}

// railsThroughWall joins the rails of the rooms on both sides of a wall by holes
// through it: in the first, the middle and the last bay that rooms lie on both
// sides of.
func (b *builder) railsThroughWall(rails []*rail, wall int) {
	w := &b.house.Walls[wall]
	if w.Exterior {
		return
	}
	places := b.throughPlaces(wall)
	for _, k := range slices.Compact([]int{0, len(places) / 2, len(places) - 1}) {
		if k < 0 || k >= len(places) {
			continue
		}
		at := places[k].at
		left, right := b.house.RoomBeside(w, at, plan.Left), b.house.RoomBeside(w, at, plan.Right)
		p, q := w.FacePoint(at, plan.Left), w.FacePoint(at, plan.Right)
		from, to := b.station(rails[left], p), b.station(rails[right], q)
		b.throughWall(wall, at, places[k].free, from, to)
	}
}

// A throughPlace is where a hole may go through a wall from face to face.
type throughPlace struct{ at, free measure.Length }

// throughPlaces lists the places of a wall with different rooms on both sides,
// between studs, or at every step of masonry.
func (b *builder) throughPlaces(wall int) []throughPlace {
	w := &b.house.Walls[wall]
	var all []throughPlace
	if w.Masonry {
		for at := measure.Length(measure.Foot); at < w.Length(); at += lineStep {
			all = append(all, throughPlace{at, measure.Foot})
		}
	}
	for i := range b.bays[wall] {
		bay := &b.bays[wall][i]
		if bay.End-bay.Start >= b.book.Length(rule.BayWidth) {
			all = append(all, throughPlace{span{bay.Start, bay.End}.mid(), bay.End - bay.Start})
		}
	}
	height := b.book.Length(rule.RacewayHeight)
	return slices.DeleteFunc(all, func(p throughPlace) bool {
		left, right := b.house.RoomBeside(w, p.at, plan.Left), b.house.RoomBeside(w, p.at, plan.Right)
		blocked := slices.ContainsFunc(w.Openings, func(o plan.Opening) bool {
			return o.Sill <= height && o.Start-p.free/2 < p.at && p.at < o.End+p.free/2
		})
		return left < 0 || right < 0 || left == right || blocked
	})
}

// throughWall adds a hole through a wall between two nodes on its faces.
func (b *builder) throughWall(wall int, along, free measure.Length, from, to int) {
	w := &b.house.Walls[wall]
	at, end := b.nodes[from].At, b.nodes[to].At
	l := geom.Dist(flat(at), flat(end))
	bore := price.BoreWall
	if w.HardToBore() {
		bore = price.BoreMasonry
	}
	b.add(Arc{
		Kind: WallArc, From: from, To: to, Heading: headingTo(flat(at), flat(end)), Length: l,
		Charges: append(b.cable(l), b.once(bore, 1)),
		Hole: b.hole(HolePlace{
			Kind: WallArc, At: geom.Point3{X: w.PointAt(along).X, Y: w.PointAt(along).Y, Z: at.Z}, Wall: wall, Along: along, Room: -1,
			Space: -1, Free: free, Reach: l,
		}),
	})
}

// racewayAsChange adds, where a change is looked for, the last resort: cable on the
// surface of the rooms from a drop to the closet.
func (b *builder) racewayAsChange(d int, pos diag.Pos) {
	if !b.relax {
		return
	}
	p, q := b.nodes[b.terms[d]].At, b.nodes[b.root].At
	l := dist(p.X, q.X) + dist(p.Y, q.Y) + dist(p.Z, q.Z)
	b.add(Arc{
		Kind: RacewayArc, From: b.terms[d], To: b.root, Heading: up, Length: l, Hole: -1, Charges: b.cable(l),
		Blocks: []Block{{
			Rule: rule.NoHiddenWay, Pos: pos, At: p,
			Found:  noWay,
			Change: fmt.Sprintf("a surface raceway through the rooms, at least %s long", b.text(l)),
			Price:  b.prices.PerMetre(price.ChangeRaceway, l),
		}},
	})
}
