package render

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/sheet"
	"topplate/route"
)

// sketchSpace shows what was taped in a space and, of an attic, under the eave.
func sketchSpace(res *route.Result, space int) *planKind {
	h := res.Job.House
	return &planKind{
		id: "sketch-" + spaceID(h, space), title: sketchTitle(h, space), scope: spaceScope(space),
		desc:    fmt.Sprintf("The %s of %s as it was sketched, with every dimension, to be checked against the house.", spaceWords(h, space), h.Name),
		draw:    drawSketchSpace,
		tables:  (*drawing).roofTable,
		symbols: func(*drawing) []legendSymbol { return nil },
	}
}

// sketchTitle names the check sheet of a space, short enough for a title block.
func sketchTitle(h *plan.House, space int) string {
	if len(h.Spaces) == 1 {
		return "Sketch of the " + spaceWords(h, space)
	}
	return "Sketch: " + spaceWords(h, space)
}

func drawSketchSpace(d *drawing) {
	d.drawDecking()
	d.drawWallsBelow()
	d.drawRoof(true)
	d.scaleBar(true)
	d.column((*drawing).sketchNote)
	d.dimensionPlates()
	d.drawObstacles()
	d.drawEaves()
	d.drawPower()
	d.drawHatches()
	d.drawMarks()
	d.drawChases()
	d.drawZero()
	d.noteJoists()
	d.measureAttic()
}

// roofTable lists what was taped of the roof and the ceiling's framing.
func (d *drawing) roofTable() {
	words := "Roof and framing"
	if d.space().Roof < 0 {
		words = "Framing"
	}
	if !d.heading(words) {
		return // it is in the lists
	}
	d.tableOrIn(inLists, sheet.LetterSmall, framingRows(d.res.Job.House, d.scope.space, d.length))
}

// storeyRows are the heights of the levels.
func storeyRows(h *plan.House, length func(measure.Length) string) (rows [][]string) {
	for i := range h.Levels {
		l := &h.Levels[i]
		rows = append(
			rows,
			[]string{"floor of " + l.ID, length(l.Floor)},
			[]string{"ceiling of " + l.ID, length(l.Ceiling)},
			[]string{"top of its plates", length(l.PlateTop)},
		)
	}
	return rows
}

// framingRows are the heights of the levels and the dimensions of a space, with
// the roof over it.
func framingRows(h *plan.House, space int, length func(measure.Length) string) [][]string {
	return append(storeyRows(h, length), spaceRows(h, space, length)...)
}

// spaceRows are the dimensions of a space, with the roof over it.
func spaceRows(h *plan.House, space int, length func(measure.Length) string) (rows [][]string) {
	a := h.Spaces[space]
	if a.Roof >= 0 {
		r := h.Roofs[a.Roof]
		rows = append(
			rows,
			[]string{"pitch", pitchWords(h, r)},
			[]string{"overhang", length(r.Overhang)},
			[]string{"rafters", length(r.Width) + " wide, " + length(r.Spacing) + " o.c."},
			[]string{"centres of two rafters", eastNorth(r.FirstX, r.FirstY, length)},
		)
	}
	along := "west to east"
	if a.AlongY {
		along = "south to north"
	}
	rows = append(
		rows,
		[]string{"joists", along + ", " + length(a.Width) + " × " + length(a.Depth) + ", " + length(a.Spacing) + " o.c."},
		[]string{"centre of one joist", length(a.First) + " from zero"},
	)
	if a.Kind == plan.CrawlSpace {
		rows = append(rows, []string{"from the ground to the joists", length(a.Clear)})
	}
	if a.Above >= 0 {
		rows = append(rows, []string{"boards over the joists", length(a.Subfloor)})
	}
	if a.Kind == plan.AtticSpace || a.Insulation > 0 {
		rows = append(rows, []string{"insulation", length(a.Insulation)})
	}
	return rows
}

// measureAttic adds places and sizes to the labels of what is in the attic.
func (d *drawing) measureAttic() {
	h := d.res.Job.House
	words := map[string][]string{}
	for i := range h.Obstacles {
		o := &h.Obstacles[i]
		words["obstacle-"+o.ID] = []string{d.sizeOf(o.Area), d.placeOf(o.Area.Min), "height " + d.length(o.Bottom) + " to " + d.length(o.Top)}
	}
	for i := range h.Hatches {
		hatch := &h.Hatches[i]
		lines := []string{d.sizeOf(hatch.Area), d.placeOf(hatch.Area.Min)}
		if hatch.ID != "hatch" {
			lines = append([]string{hatch.ID}, lines...)
		}
		words["hatch-"+hatch.ID] = lines
	}
	for i := range h.Marks {
		words["mark-"+h.Marks[i].ID] = []string{d.placeOf(h.Marks[i].At)}
	}
	for i := range h.PowerRuns {
		words["power-"+h.PowerRuns[i].ID] = d.powerWords(&h.PowerRuns[i])
	}
	for i := range h.Soffits {
		s := &h.Soffits[i]
		words["soffit opening-"+s.ID] = d.stretchWords(s.Wall, s.Start, s.End)
	}
	for i := range h.Baffles {
		s := &h.Baffles[i]
		words["baffle-"+s.ID] = d.stretchWords(s.Wall, s.Start, s.End)
	}
	for i, r := range d.space().Decking {
		words[fmt.Sprintf("decking-%d", i+1)] = []string{d.sizeOf(r), d.placeOf(r.Min)}
	}
	for i := range d.asks {
		if a := &d.asks[i]; words[a.id] != nil {
			a.block[0].Lettering = sheet.LetterSmallTag
		}
	}
	d.addWords(words)
}

// mostCorners is of how many corners of a power cable the drawing has the
// places; the lists have all.
const mostCorners = 4

func (d *drawing) powerWords(run *plan.PowerRun) []string {
	var out []string
	if run.Circuits > 1 {
		out = append(out, fmt.Sprintf("%d circuits", run.Circuits))
	}
	if len(run.Path) > mostCorners {
		return append(out, fmt.Sprintf("%d corners", len(run.Path)))
	}
	for _, p := range run.Path {
		out = append(out, d.placeOf(p))
	}
	return out
}

// sizeOf is the size of an area, west to east by south to north.
func (d *drawing) sizeOf(r geom.Rect) string {
	return d.length(r.Width()) + " × " + d.length(r.Height())
}

// placeOf is a place from the zero point: of an area, its south-west corner.
func (d *drawing) placeOf(p geom.Point) string { return eastNorth(p.X, p.Y, d.length) }

func (d *drawing) stretchWords(wall int, from, to measure.Length) []string {
	return []string{d.length(from) + " to " + d.length(to), "along " + d.res.Job.House.Walls[wall].ID}
}
