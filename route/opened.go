package route

import (
	"cmp"
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// Holes that earlier jobs left elsewhere than in plates are held against the
// places where this job would bore: one that is within the hole's radius is not
// bored, and cable goes through what is there.

// A Known is a hole of an earlier job that is not in a plate. Unused says why no
// way of this job goes through it, empty if one could.
type Known struct {
	ID, Unused string
}

// made are the terms that are not paid where a hole is there already.
var made = append(slices.Clone(price.Bores), price.PassAttic)

// opened takes over the holes of earlier jobs in the order of their ids. It comes
// once all ways are laid.
func (b *builder) opened() (out []Known) {
	list := slices.Clone(b.job.Before.Opened)
	slices.SortFunc(list, func(a, c plan.Opened) int { return CompareTags(a.ID, c.ID) })
	taken := map[int]bool{}
	for i := range list {
		o := &list[i]
		place, why := b.placeOf(o, taken)
		if why == "" {
			taken[place] = true
			why = b.reopen(o, place)
		}
		out = append(out, Known{o.ID, why})
	}
	return out
}

// placeOf finds the place that is bored where a hole is: of its kind, in its wall,
// and nearest of those within its radius.
func (b *builder) placeOf(o *plan.Opened, taken map[int]bool) (place int, why string) {
	switch {
	case o.Unknown != "":
		return -1, o.Unknown
	case o.Wall < 0 && !o.Pointed:
		return -1, "its record doesn't say where it is"
	}
	place = -1
	var best, last measure.Length
	several := false
	for i := range b.holes {
		p := &b.holes[i]
		if taken[i] || p.Kind.String() != o.Through || p.Wall != o.Wall {
			continue
		}
		off := b.offHole(o, p)
		if off > o.Diameter/2 {
			continue
		}
		several = several || place >= 0 && dist(p.At.Z, last) > o.Diameter/2
		if place < 0 || cmp.Or(cmp.Compare(off, best), comparePlaces(p.At, b.holes[place].At)) < 0 {
			place, best = i, off
		}
		last = p.At.Z
	}
	switch {
	case place < 0:
		return -1, "no cable of this job can come through there"
	case several && !o.Pointed:
		return -1, "its record doesn't say at which height it is"
	}
	return place, ""
}

// offHole is how far a place is from where a hole was recorded, along each axis at
// most.
func (b *builder) offHole(o *plan.Opened, p *HolePlace) measure.Length {
	var off measure.Length
	if o.Pointed {
		off = dist(p.At.Z, o.Point.Z)
	}
	if o.Wall >= 0 {
		return max(off, dist(p.Along, o.At))
	}
	return max(off, dist(p.At.X, o.Point.X), dist(p.At.Y, o.Point.Y))
}

func comparePlaces(p, q geom.Point3) int {
	return cmp.Or(cmp.Compare(p.Z, q.Z), cmp.Compare(p.Y, q.Y), cmp.Compare(p.X, q.X))
}

// reopen makes the arcs through a place go through the hole that is there, if it
// takes all cables that may come, and otherwise moves the place beside it.
func (b *builder) reopen(o *plan.Opened, place int) (why string) {
	p := b.holes[place]
	takes, come := b.cablesThrough(o.Diameter)-o.Cables, b.mayPass(place)
	if takes < come {
		b.moveBeside(o, place)
		return fmt.Sprintf("it has room for %d more, and %d may come", max(takes, 0), come)
	}
	p.Free = o.Diameter
	there := &There{o.ID, o.Pos, p, o.Diameter, o.Cables}
	for i := range b.arcs {
		a := &b.arcs[i]
		if a.Hole != place {
			continue
		}
		a.Hole, a.There, a.Capacity = -1, there, takes
		a.Charges = slices.DeleteFunc(slices.Clone(a.Charges), func(c Charge) bool { return slices.Contains(made, c.Term) })
		b.openedFrom(a)
	}
	return ""
}

// openedFrom takes the cutting of a ceiling off the ways to its face, where the
// hole is there.
func (b *builder) openedFrom(a *Arc) {
	if a.Kind != CeilingArc {
		return
	}
	for i := range b.arcs {
		if e := &b.arcs[i]; e.Kind == EnterArc && e.To == a.From {
			e.Charges = slices.DeleteFunc(slices.Clone(e.Charges), func(c Charge) bool { return c.Term == price.CutCeiling })
		}
	}
}

// mayPass is how many cables may come through a place: through a ceiling or a soffit
// those of its own drop, inside a wall those of the boxes on it unless the closet is,
// elsewhere all.
func (b *builder) mayPass(place int) int {
	p := &b.holes[place]
	var drops []int
	switch p.Kind {
	case CeilingArc, SoffitArc:
		for i := range b.arcs {
			if a := &b.arcs[i]; a.Hole == place {
				drops = append(drops, b.dropsAt(a.From)...)
			}
		}
	case BlockArc, StudArc:
		if c := &b.job.Closet; !c.Ceiling && c.Spot.Wall == p.Wall {
			drops = allDrops(b.job)
			break
		}
		for d := range b.job.Drops {
			if drop := &b.job.Drops[d]; drop.Kind == plan.WallPlate && drop.Spot.Wall == p.Wall {
				drops = append(drops, d)
			}
		}
	default:
		drops = allDrops(b.job)
	}
	n := 0
	for _, d := range drops {
		n += b.job.Drops[d].Count
	}
	return n
}

// dropsAt are those whose ways begin at a face, all if the closet's do.
func (b *builder) dropsAt(face int) (out []int) {
	for i := range b.arcs {
		a := &b.arcs[i]
		if a.Kind != EnterArc || a.To != face {
			continue
		}
		if a.From == b.root {
			return allDrops(b.job)
		}
		if d := slices.Index(b.terms, a.From); d >= 0 {
			out = append(out, d)
		}
	}
	return out
}

// moveBeside moves a place off the hole that is there and has no room: along its
// wall, up a stud or along a joist. In a ceiling or a soffit it stays, since what
// hangs there says where it is. Where nothing is free beside it, it is not bored.
func (b *builder) moveBeside(o *plan.Opened, place int) {
	p := &b.holes[place]
	by := o.Diameter/2 + b.largestBit()/2 + b.book.Length(rule.HoleToMember)
	switch p.Kind {
	case CeilingArc, SoffitArc:
	case StudArc:
		p.At.Z += by
	case JoistArc:
		i := slices.IndexFunc(b.arcs, func(a Arc) bool { return a.Hole == place })
		ax := b.cavities[b.arcs[i].Space].ax
		u, v := ax.uv(flat(p.At))
		at := ax.point(u, v+by)
		p.At.X, p.At.Y = at.X, at.Y
	default:
		along, ok := b.roomBeside(o, p.Kind, by)
		if !ok {
			b.forbid(o, place)
			return
		}
		at := b.house.Walls[p.Wall].PointAt(along)
		p.Along, p.At.X, p.At.Y = along, at.X, at.Y
	}
}

// roomBeside is the place so far along a wall from a hole that is clear of studs,
// which the ways between spaces know nothing of.
func (b *builder) roomBeside(o *plan.Opened, kind ArcKind, by measure.Length) (along measure.Length, ok bool) {
	if b.house.Walls[o.Wall].Masonry || kind == PassArc {
		return o.At + by, true
	}
	k, ok := bayAt(b.bays[o.Wall], o.At)
	if !ok {
		return 0, false
	}
	bay := &b.bays[o.Wall][k]
	clear := span{bay.Start, bay.End}.inset(b.largestBit()/2 + b.book.Length(rule.HoleToMember))
	for _, along := range []measure.Length{o.At + by, o.At - by} {
		if clear.contains(along) {
			return along, true
		}
	}
	return 0, false
}

// forbid keeps a place from being bored because a hole is in it.
func (b *builder) forbid(o *plan.Opened, place int) {
	if !b.relax {
		b.arcs = slices.DeleteFunc(b.arcs, func(a Arc) bool { return a.Hole == place })
		return
	}
	bl := Block{
		Rule: rule.HoleToMemberRule, Pos: o.Pos, At: b.holes[place].At,
		Found:  fmt.Sprintf("hole %s is there, %s wide and full, with no room for another beside it", o.ID, b.text(o.Diameter)),
		Change: fmt.Sprintf("take a cable out of hole %s", o.ID), Price: b.prices.Each(price.ChangeMovePlate),
	}
	for i := range b.arcs {
		if a := &b.arcs[i]; a.Hole == place {
			a.Blocks = append(slices.Clone(a.Blocks), bl)
			a.Charges = append(slices.Clone(a.Charges), Charge{Term: price.Change, Amount: bl.Price})
		}
	}
}
