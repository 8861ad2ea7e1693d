package roof

import (
	"cmp"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A LineKind is what a Line is called on a roof plan.
type LineKind uint8

// Kinds of line.
const (
	// A Ridge is level: two planes rise to it from opposite sides.
	Ridge LineKind = iota
	// A Hip runs up from an outside corner.
	Hip
	// A Valley is where planes fall to each other, as above an inside corner.
	Valley
	// An Eave is the level lower end of a plane, at the overhang.
	Eave
	// A Rake is any other end of the roof: past a gable, or the upper end of a
	// shed roof.
	Rake
)

func (k LineKind) String() string {
	return [...]string{"ridge", "hip", "valley", "eave", "rake"}[k]
}

// A Line is a straight line of the roof with its height above the top of the
// plates as Z. A is the end farther west, of two equally far west the one
// farther south. Ends may lie halfway between two nanometres; they are rounded
// half up.
type Line struct {
	Kind LineKind
	A, B geom.Point3
}

// Lines returns all lines of the roof with its overhang, each as long as it
// goes straight on between the same two planes, by kind and then by A and B.
// Where the overhang of a gable is over another roof, the lines are those of the
// upper one. For n corners and m rectangles it takes time
// O(n² m log m): 10 µs for an L.
func (r *Roof) Lines() []Line {
	planes := r.planes()
	all := r.ends(planes)
	for i, p := range planes {
		for _, q := range planes[i+1:] {
			if p.side != q.side {
				all = append(all, r.creases(p, q)...)
			}
		}
	}
	slices.SortFunc(all, func(a, b Line) int {
		return cmp.Or(cmp.Compare(a.Kind, b.Kind), compare(a.A, b.A), compare(a.B, b.B))
	})
	return all
}

func compare(a, b geom.Point3) int {
	return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y), cmp.Compare(a.Z, b.Z))
}

// planes lists the planes of all blocks.
func (r *Roof) planes() []plane {
	var all []plane
	for i := range r.blocks {
		for _, s := range sides {
			if !r.blocks[i].open[s] {
				all = append(all, plane{s, s.of(r.blocks[i].area)})
			}
		}
	}
	slices.SortFunc(all, func(p, q plane) int {
		return cmp.Or(cmp.Compare(p.side, q.side), cmp.Compare(p.foot, q.foot))
	})
	return slices.Compact(all)
}

// creases returns the lines in which two planes of different sides meet on the
// surface. In plan they lie on one track.
//
// Of the blocks whose other planes are all higher than that, one with neither
// plane hides the meeting under its roof, and one with both makes a ridge or a
// hip. Two with one plane each make a valley, since the higher roof counts;
// with one such block alone, the meeting is under the plane it has.
func (r *Roof) creases(p, q plane) []Line {
	on := meeting(p, q)
	height := p.over(on)
	var s sweep
	for i := range r.blocks {
		b := &r.blocks[i]
		c := b.classify(p, q)
		// A block that ends along the track can hide one side of the meeting,
		// but takes no part in it.
		reach := (*span).above
		if c == neither {
			reach = (*span).notBelow
		}
		s.add(r.stretch(b, on, height, reach, (*span).above, p, q), c)
	}
	folds := s.where(func(n counts) bool { return n[neither] == 0 && n[first]+n[second] == 0 && n[both] > 0 })
	valleys := s.where(func(n counts) bool { return n[neither] == 0 && n[first] > 0 && n[second] > 0 })
	kind := Hip
	if p.side.alongX() == q.side.alongX() {
		kind = Ridge
	}
	return append(r.draw(kind, on, height, folds), r.draw(Valley, on, height, valleys)...)
}

// ends returns the lines at which a roof ends, over nothing or, past a gable,
// over a lower roof. They lie on the sides of the blocks with their overhang.
func (r *Roof) ends(planes []plane) []Line {
	var all []Line
	for _, s := range sides {
		var feet []measure.Length
		for i := range r.blocks {
			feet = append(feet, s.of(r.blocks[i].roofed))
		}
		for _, foot := range lines(feet) {
			for _, p := range planes {
				all = append(all, r.endsAt(plane{s, foot}, p)...)
			}
		}
	}
	return all
}

// endsAt returns where the surface is p on one side of a line, that to which
// the plane end rises from it, and lower or nothing on the other.
//
// Of the blocks that end at the line and whose other planes are all higher
// than p there, one without p hides it. So does any block that goes on, if no
// other plane of it is lower.
func (r *Roof) endsAt(end, p plane) []Line {
	on := end.line()
	height := p.over(on)
	var s sweep
	for i := range r.blocks {
		b := &r.blocks[i]
		roofed := b.roofed
		from := end.side.sign() * (end.side.of(roofed) - end.foot)
		to := end.side.sign() * (end.side.opposite().of(roofed) - end.foot)
		switch {
		case from == 0:
			s.add(r.stretch(b, on, height, (*span).notBelow, (*span).above, p), b.classify(p, p))
		case from < 0 && to >= 0:
			s.add(r.stretch(b, on, height, (*span).notBelow, (*span).notBelow, p), neither)
		}
	}
	kind := Rake
	if height == (linear{start: -2 * r.spec.Overhang}) {
		kind = Eave
	}
	return r.draw(kind, on, height, s.where(func(n counts) bool { return n[neither] == 0 && n[both] > 0 }))
}

// stretch returns the part of a track over which the block has a roof and all
// its planes are higher than the height, save for those named. reach decides
// at the end of an overhang past a gable, higher for planes that keep to the
// height.
func (r *Roof) stretch(b *block, on track, height linear, reach, higher func(*span, linear), named ...plane) span {
	at := everywhere
	at.notBelow(height.plus(2 * r.spec.Overhang))
	for _, s := range sides {
		p := plane{s, s.of(b.area)}
		if b.open[s] {
			past := s.sign() * (s.of(b.area) - s.of(b.roofed))
			reach(&at, p.over(on).plus(2*past))
		} else if !slices.Contains(named, p) {
			higher(&at, p.over(on).minus(height))
		}
	}
	return at
}

// draw makes lines of stretches of a track.
func (r *Roof) draw(kind LineKind, on track, height linear, stretches []span) []Line {
	var drawn []Line
	for _, stretch := range stretches {
		a, b := r.end(on, height, stretch.from), r.end(on, height, stretch.to)
		if compare(a, b) > 0 {
			a, b = b, a
		}
		// Rounding may leave nothing of half a nanometre.
		if a.X != b.X || a.Y != b.Y {
			drawn = append(drawn, Line{kind, a, b})
		}
	}
	return drawn
}

func (r *Roof) end(on track, height linear, at measure.Length) geom.Point3 {
	return geom.Point3{
		X: halved(on.x.at(at)),
		Y: halved(on.y.at(at)),
		Z: r.spec.Pitch.rise(height.at(at)),
	}
}

// halved is l/2 rounded half up.
func halved(l measure.Length) measure.Length { return (l + 1) >> 1 }
