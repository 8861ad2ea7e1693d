package render

import (
	"slices"

	"topplate/render/font"
	"topplate/render/sheet"
)

// nameFirst comes after all that is not the name of a wall.
const nameFirst = 3

// nameWalls asks for the names of walls that the words of a sheet of a space
// refer to, if they are drawn on it.
func (d *drawing) nameWalls(walls []int) {
	h := d.res.Job.House
	slices.Sort(walls)
	for _, i := range slices.Compact(walls) {
		if i < 0 {
			continue
		}
		w := &h.Walls[i]
		part, ok := d.scope.wallPart(h, w, d.scope.below(h))
		if !ok {
			part, ok = d.scope.wallPart(h, w, d.scope.above(h))
		}
		if !ok {
			part, ok = d.scope.besidePart(h, w)
		}
		if !ok {
			continue
		}
		b := d.view.Box(part)
		d.ask(ask{
			id: "wall-" + w.ID, along: b.Corners(), priority: nameFirst, leader: true,
			block: font.Block{{Lettering: sheet.LetterSmall, Words: w.ID}},
		})
	}
}

// holeWalls are the walls that the table of holes refers to.
func (d *drawing) holeWalls() []int {
	var out []int
	for i := range d.res.Holes {
		place := &d.res.Graph.Holes[d.res.Holes[i].Place]
		if d.scope.hasHole(d.res.Job.House, place) && d.here(flat(place.At)) {
			out = append(out, place.Wall)
		}
	}
	return out
}

// wallsOf are the walls that the words of the fixes refer to.
func (f *fixDrawing) wallsOf(d *drawing) []int {
	var out []int
	for i := range f.fixes {
		h := &f.fixes[i]
		if !d.here(flat(h.At)) {
			continue
		}
		for _, t := range h.Below.From {
			out = append(out, t.Wall)
		}
		for _, x := range h.Above.Faces {
			out = append(out, x.Wall)
		}
	}
	return out
}
