package route

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// boreJoists adds, in a floor that is closed, the ways from a port's joist bay
// into its neighbours: through sawn joists, behind an opening in the ceiling that
// is patched. It returns the places in the neighbouring bays, from which rods go
// on. Trusses and I-joists are left alone.
func (b *cavity) boreJoists(ports []geom.Point) []geom.Point {
	if b.space.Joist != plan.Sawn || b.space.Below < 0 || !b.job.Allow.Patching && !b.relax {
		return nil
	}
	var out []geom.Point
	for _, p := range ports {
		for _, dir := range []int{-1, 1} {
			from := p
			for range baysSideways {
				to, ok := b.throughJoist(from, dir)
				if !ok {
					break
				}
				out = append(out, to)
				from = to
			}
		}
	}
	return out
}

// throughJoist adds the way from p to the middle of the next bay, if one sawn
// joist stands between and the floor goes on there.
func (b *cavity) throughJoist(p geom.Point, dir int) (geom.Point, bool) {
	u, v := b.ax.uv(p)
	n := b.js.bay(u)
	q := b.ax.point(b.js.clear(n+dir).mid(), v)
	joist := b.js.centre(max(n, n+dir))
	if b.js.onJoist(u) || !b.js.stand.contains(joist) || !b.space.Contains(q) || b.house.OpenBelow(b.space, q) || !b.clearBetween(p, q) {
		return q, false
	}
	at := b.ax.point(joist, v)
	room := b.house.RoomOn(b.space.Below, at)
	if room < 0 {
		return q, false
	}
	l := geom.Dist(p, q)
	place := HolePlace{
		Kind: JoistArc, At: geom.Point3{X: at.X, Y: at.Y, Z: b.base + b.js.depth/2}, Wall: -1, Room: room,
		MemberWidth: b.js.depth, Free: b.js.depth,
	}
	a := Arc{
		Kind: JoistArc, From: b.low(p), To: b.low(q), Heading: headingTo(p, q), Length: l, Zone: RodOnly, Hole: b.hole(place),
		Charges: append(b.cable(l), b.once(price.BoreJoist, 1), b.once(price.Patch, 1)),
	}
	if !b.job.Allow.Patching {
		a.Blocks = []Block{{
			Rule: rule.Patching, Pos: b.house.Rooms[room].Pos, At: place.At,
			Found:  "boring through a joist needs the ceiling opened and patched, which the job does not allow",
			Change: "allow patching in this ceiling (patching = true)",
			Price:  b.prices.Each(price.ChangePatching),
		}}
	}
	b.add(a)
	return q, true
}
