package render

import (
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
)

// Which labels of a check sheet come first where there is no room for all.
const (
	wallFirst    = 14
	checkFirst   = 13
	openingFirst = 12
	deviceFirst  = 8
)

// measureWalls asks for the name and length of each wall beside it: inside the
// house of an outer wall, whose outside has the dimensions, else on either
// side.
func (d *drawing) measureWalls() {
	h := d.res.Job.House
	starts := map[string]string{}
	for i := range h.Traverses {
		t := &h.Traverses[i]
		if t.On != "" {
			starts[t.First] = "starts at " + d.length(t.At)
		}
	}
	for i := range h.Walls {
		w := &h.Walls[i]
		if w.Level != d.scope.level {
			continue
		}
		faces := []geom.Point{w.FacePoint(0, plan.Left), w.FacePoint(w.Length(), plan.Left), w.FacePoint(w.Length(), plan.Right), w.FacePoint(0, plan.Right)}
		if w.Exterior {
			in := w.Out.Opposite()
			faces = []geom.Point{w.FacePoint(0, in), w.FacePoint(w.Length(), in)}
		}
		d.ask(ask{id: "wall-" + w.ID, along: d.view.Points(faces), priority: wallFirst, leader: true, block: d.wallWords(w, starts[w.ID])})
	}
}

// wallWords are the name of a wall and its length: as drawn and, where that
// differs in print, as taped. start is where its run starts, if on a wall.
func (d *drawing) wallWords(w *plan.Wall, start string) font.Block {
	lines := []string{d.length(w.Length())}
	if taped := d.length(w.Taped); taped != lines[0] {
		lines = append(lines, "taped "+taped)
	}
	if start != "" {
		lines = append(lines, start)
	}
	return smallBlock(w.ID, lines...)
}

// measureOpenings asks for the name, place and size of each opening.
func (d *drawing) measureOpenings() {
	h := d.res.Job.House
	for i := range h.Walls {
		w := &h.Walls[i]
		if w.Level != d.scope.level {
			continue
		}
		for j := range w.Openings {
			o := &w.Openings[j]
			b := d.view.Box(openingRect(w, o))
			lines := []string{"at " + d.length(o.Start) + ", " + d.length(o.End-o.Start) + " wide"}
			if o.Sill != 0 {
				lines = append(lines, "sill "+d.length(o.Sill)+", head "+d.length(o.Head))
			} else {
				lines = append(lines, "head "+d.length(o.Head))
			}
			d.ask(ask{id: "opening-" + o.ID, at: b.Centre(), symbol: b, priority: openingFirst, leader: true, block: smallBlock(o.ID, lines...)})
		}
	}
}

// measureDevices asks for the name, place and height of each power device.
func (d *drawing) measureDevices() {
	h := d.res.Job.House
	for i := range h.Walls {
		w := &h.Walls[i]
		if w.Level != d.scope.level {
			continue
		}
		for j := range w.Devices {
			dev := &w.Devices[j]
			at := sheet.Polar(d.view.Point(w.FacePoint(dev.At, dev.Side)), deviceRadius, turnOfHeading(w.Faces(dev.Side)))
			d.ask(ask{
				id: "device-" + dev.ID, at: at, symbol: around(at, deviceRadius), priority: deviceFirst, leader: true,
				block: smallBlock(dev.ID, "at "+d.length(dev.At)+", "+d.length(dev.Height)+" up"),
			})
		}
	}
}

// drawConduits draws the pipes in the walls, larger than they are, and asks for
// their places and sizes.
func (d *drawing) drawConduits() {
	const r = sheet.MM
	h := d.res.Job.House
	if len(h.Conduits) == 0 {
		return
	}
	g := d.sheet.Group("conduits", "conduits", "Conduits")
	for i := range h.Conduits {
		c := &h.Conduits[i]
		if h.Walls[c.Wall].Level != d.scope.level {
			continue
		}
		at := d.view.Point(h.Walls[c.Wall].PointAt(c.At))
		g.Group(sheet.ID("conduit", c.ID), "conduit", "Conduit "+c.ID).Circle(sheet.PenChase, at, r)
		d.ask(ask{
			id: "conduit-" + c.ID, at: at, symbol: around(at, r), priority: deviceFirst, leader: true,
			block: smallBlock(c.ID, "at "+d.length(c.At)+", "+d.length(c.Height)+" up", d.length(c.Inside)+" inside"),
		})
	}
}

// drawChecks draws the lengths that were taped as checks, and asks for them as
// taped and as the walls make them.
func (d *drawing) drawChecks() {
	h := d.res.Job.House
	if len(h.Checks) == 0 {
		return
	}
	g := d.sheet.Group("checks", "checks", "Checks")
	for i := range h.Checks {
		c := &h.Checks[i]
		if levelOfCheck(h, c) != d.scope.level {
			continue
		}
		line := d.view.Points([]geom.Point{c.A, c.B})
		g.Group(sheet.ID("check", c.ID), "check", "Check "+c.ID).Line(sheet.PenCheck, line[0], line[1])
		differs := "taped is " + longer(c.Length-c.Drawn, d.length)
		if !c.Agrees {
			differs += ": TAPE AGAIN"
		}
		d.ask(ask{
			id: "check-" + c.ID, along: line, priority: checkFirst, leader: true,
			block: smallBlock("check "+c.ID, "taped "+d.length(c.Length)+", drawn "+d.length(c.Drawn), differs),
		})
	}
}

// levelOfCheck is the level on whose walls a check begins and ends.
func levelOfCheck(h *plan.House, c *plan.Check) int {
	for l := range h.Levels {
		on := func(p geom.Point) bool {
			return slices.ContainsFunc(h.Walls, func(w plan.Wall) bool { return w.Level == l && w.Body.Outset(measure.Inch).Contains(p) })
		}
		if on(c.A) && on(c.B) {
			return l
		}
	}
	return 0
}

// measureRooms adds the inside width and depth to the names of rooms.
func (d *drawing) measureRooms() {
	words := map[string][]string{}
	for i := range d.res.Job.House.Rooms {
		r := &d.res.Job.House.Rooms[i]
		lines := []string{insideSize(r, d.length)}
		if w, _ := font.BoxSize(sheet.LetterSmall, lines[0]); w > d.view.Box(largestRect(r.Outline)).Width()-sheet.MM {
			lines = strings.SplitAfter(lines[0], " × ")
		}
		words["room-"+r.ID] = lines
	}
	d.addWords(words)
}

// insideSize is how far a room reaches between its finished faces, west to east
// by south to north.
func insideSize(r *plan.Room, length func(measure.Length) string) string {
	b := r.Outline.Bounds()
	size := length(b.Width()) + " × " + length(b.Height())
	if len(r.Outline) > 4 {
		size += " over all"
	}
	return size
}

// addWords adds small lines to labels that have been asked for, by their ids.
func (d *drawing) addWords(words map[string][]string) {
	for i := range d.asks {
		a := &d.asks[i]
		for _, line := range words[a.id] {
			a.block = append(a.block, font.Line{Lettering: sheet.LetterSmall, Words: line})
		}
	}
}
