package plan

import (
	"cmp"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// closingReach is how far rooms are grown so that they and the walls between
// them are one.
func (l *houseLoader) closingReach(m *makeup) measure.Length {
	return (m.thickest()+l.house.SketchError)/2 + 1
}

// insideOutline is the line of the inner faces of a level's outer walls. It
// reports rooms that hang together with no others, and spaces that are enclosed
// and no room.
func (l *houseLoader) insideOutline(on []int, m *makeup) (geom.Polygon, bool) {
	reach := l.closingReach(m)
	var grown []geom.Rect
	bounds := l.insides[on[0]].bounds
	for _, k := range on {
		b := l.insides[k].bounds
		bounds.Min = geom.Point{X: min(bounds.Min.X, b.Min.X), Y: min(bounds.Min.Y, b.Min.Y)}
		bounds.Max = geom.Point{X: max(bounds.Max.X, b.Max.X), Y: max(bounds.Max.Y, b.Max.Y)}
		for _, r := range l.insides[k].parts {
			grown = append(grown, r.Outset(reach))
		}
	}
	bounds = bounds.Outset(reach + 1*foot)
	indoors := geom.NewRegion(outOfDoors(grown, bounds), bounds)
	good := true
	first := &l.insides[on[0]]
	for _, k := range on {
		if in := &l.insides[k]; !indoors.Reaches(first.outline[0], in.outline[0]) {
			near, gap := l.nearest(in, on, func(k int) bool { return indoors.Reaches(first.outline[0], l.insides[k].outline[0]) })
			in.t.Errorf("id", "found room %s, which no wall joins to room %s: the nearest of those is room %s, %s away; want all rooms%s", in.id, first.id, near.id, l.house.text(gap), l.together(first.level)).
				Note(first.t.Pos(), "%s is here", first.id)
			good = false
		}
	}
	outline, holes, ok := indoors.Outline(first.outline[0])
	for _, hole := range holes {
		// The rooms were grown into it.
		b := hole.Bounds().Outset(reach)
		first.t.Errorf("id", "found a space of %s by %s at %s that rooms enclose and that is none; want a room there, or the rooms round it where no gap is left",
			l.house.text(b.Width()), l.house.text(b.Height()), l.house.pointText(b.Min))
		good = false
	}
	return shrunk(outline, reach), good && ok
}

// nearest is the room nearest to another of those on a level that are wanted, and
// how far its faces are away.
func (l *houseLoader) nearest(in *inside, on []int, wanted func(k int) bool) (near *inside, gap measure.Length) {
	for _, k := range on {
		if !wanted(k) {
			continue
		}
		for _, r := range l.insides[k].parts {
			for _, s := range in.parts {
				both := r.Intersect(s)
				if d := max(-both.Width(), -both.Height()); near == nil || d < gap {
					near, gap = &l.insides[k], d
				}
			}
		}
	}
	return near, gap
}

// together says what all rooms of a level have in common.
func (l *houseLoader) together(level int) string {
	if l.house.several() {
		return l.house.onLevel(level) + " within one run of outer walls"
	}
	return " under one roof"
}

// outOfDoors are rectangles that cover what of the bounds no room covers.
func outOfDoors(rooms []geom.Rect, bounds geom.Rect) []geom.Rect {
	free := geom.NewRegion(rooms, bounds)
	xs, ys := []measure.Length{bounds.Min.X, bounds.Max.X}, []measure.Length{bounds.Min.Y, bounds.Max.Y}
	for _, r := range rooms {
		xs, ys = append(xs, r.Min.X, r.Max.X), append(ys, r.Min.Y, r.Max.Y)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	var out []geom.Rect
	for y := range len(ys) - 1 {
		for x := range len(xs) - 1 {
			if !free.Free(geom.Point{X: middle(xs[x], xs[x+1]), Y: middle(ys[y], ys[y+1])}) {
				continue
			}
			if last := len(out) - 1; last >= 0 && out[last].Min.Y == ys[y] && out[last].Max.X == xs[x] {
				out[last].Max.X = xs[x+1]
				continue
			}
			out = append(out, geom.Rect{Min: geom.Point{X: xs[x], Y: ys[y]}, Max: geom.Point{X: xs[x+1], Y: ys[y+1]}})
		}
	}
	return out
}

// shrunk is a counter-clockwise outline moved inwards.
func shrunk(p geom.Polygon, by measure.Length) geom.Polygon {
	out := make(geom.Polygon, len(p))
	for i, at := range p {
		before, after := p[(i+len(p)-1)%len(p)], p[(i+1)%len(p)]
		out[i] = at.Add(inwards(headingOf(before, at), by)).Add(inwards(headingOf(at, after), by))
	}
	return out
}

// inwards is a step to the left of a direction.
func inwards(h Heading, by measure.Length) geom.Point {
	switch h.Turn(Left) {
	case East:
		return geom.Point{X: by}
	case North:
		return geom.Point{Y: by}
	case West:
		return geom.Point{X: -by}
	default:
		return geom.Point{Y: -by}
	}
}

// straightened takes the small steps out of the line of a level's outer walls:
// those that are no more than a tape is off.
func (l *houseLoader) straightened(p geom.Polygon, on []int, m *makeup) (geom.Polygon, bool) {
	for i := 0; i < len(p); {
		n := len(p)
		at := func(k int) geom.Point { return p[(i+k+n)%n] }
		step := geom.Dist(at(0), at(1))
		before, after := headingOf(at(-1), at(0)), headingOf(at(1), at(2))
		if before != after || n <= 4 {
			i++
			continue
		}
		looks := before.Turn(Right)
		rooms := l.alongFaces(on, looks, at(-1), at(0), at(2))
		thick := measure.Length(0)
		for _, k := range rooms {
			thick = max(thick, m.outerOf(l.insides[k].level, k, looks).run.thick())
		}
		if step >= thick {
			i++
			continue
		}
		last := &l.insides[slices.Max(rooms)]
		if step > l.house.SketchError {
			last.t.Errorf("id", "found the %s outer wall with a step of %s along %s, less than the wall is thick, %s; want these faces in line, or farther apart",
				headingWords[looks], l.house.text(step), l.roomsText(rooms), l.house.text(thick))
			return nil, false
		}
		if l.tells(step) {
			last.t.Warnf("id", "the %s faces of %s are %s out of line, and the outer wall is drawn straight along the longer of them", headingWords[looks], l.roomsText(rooms), l.house.text(step))
		}
		// The shorter side moves into the line of the longer one.
		shift, moved := at(1).Sub(at(0)), []int{-1, 0}
		if geom.Dist(at(-1), at(0)) >= geom.Dist(at(1), at(2)) {
			shift, moved = at(0).Sub(at(1)), []int{1, 2}
		}
		for _, k := range moved {
			p[(i+k+n)%n] = at(k).Add(shift)
		}
		p = without(p, i, (i+1)%n)
		i = 0
	}
	return p, true
}

// without is an outline without two of its corners.
func without(p geom.Polygon, i, j int) geom.Polygon {
	var out geom.Polygon
	for k := range p {
		if k != i && k != j {
			out = append(out, p[k])
		}
	}
	return out
}

var headingWords = [4]string{East: "east", North: "north", West: "west", South: "south"}

// alongFaces finds the rooms of a level that have a face that looks one way and is
// on the line of some points.
func (l *houseLoader) alongFaces(on []int, h Heading, at ...geom.Point) (rooms []int) {
	for _, i := range on {
		in := &l.insides[i]
		if slices.ContainsFunc(in.faces(), func(f insideFace) bool {
			return f.looks == h && slices.ContainsFunc(at, func(p geom.Point) bool {
				return h.AlongY() && p.Y == f.at || !h.AlongY() && p.X == f.at
			})
		}) {
			rooms = append(rooms, i)
		}
	}
	return rooms
}

// roomsText names rooms in a message.
func (l *houseLoader) roomsText(rooms []int) string {
	var ids []string
	for _, i := range rooms {
		ids = append(ids, l.insides[i].id)
	}
	slices.Sort(ids)
	if len(ids) == 1 {
		return "room " + quoted(ids)
	}
	return "rooms " + quoted(ids)
}

// fromSouthWest is an outline from the western of its southernmost corners on.
func fromSouthWest(p geom.Polygon) geom.Polygon {
	first := 0
	for i := range p {
		if cmp.Or(cmp.Compare(p[i].Y, p[first].Y), cmp.Compare(p[i].X, p[first].X)) < 0 {
			first = i
		}
	}
	return append(slices.Clone(p[first:]), p[:first]...)
}
