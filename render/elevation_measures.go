package render

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/render/sheet"
	"topplate/route"
)

// boxSize is the opening that the box for n cables needs: of one gang, of two,
// and so on by the difference between them. It is that which the routes are
// planned with.
func boxSize(book rule.Book, n int) (width, tall measure.Length) {
	one, two := book.Length(rule.BoxSingle), book.Length(rule.BoxDouble)
	perGang := int(book.Value(rule.CablesPerGang))
	width = one
	if gangs := (n + perGang - 1) / perGang; gangs > 1 {
		width = two + measure.Length(gangs-2)*(two-one)
	}
	return width, book.Length(rule.BoxHeight)
}

// detail is the elevation as a drawing that shares a sheet.
func (e *elevation) detail() *detail {
	u := e.res.Job.House.Units
	w := e.wall
	note := fmt.Sprintf("without its board; studs %s o.c., %s by %s; from corner to corner %s",
		u.FormatSheet(w.Spacing), u.FormatSheet(w.StudWidth), u.FormatSheet(w.StudDepth), u.FormatSheet(e.width()))
	if w.Masonry {
		note = fmt.Sprintf("masonry, %s thick; from corner to corner %s", u.FormatSheet(w.StudDepth), u.FormatSheet(e.width()))
	}
	return &detail{
		id: e.id(), title: e.title(), note: note,
		real:    geom.Rect{Min: geom.Point{X: e.first, Y: e.lowest()}, Max: geom.Point{X: e.last, Y: e.highest()}},
		margins: e.margins, draw: e.draw, list: e.list,
	}
}

// margins is what levels, dimensions and labels take around the wall.
func (e *elevation) margins(s sheet.Scale) margins {
	below, above := e.offsets(sheet.View{Scale: s})
	m := margins{
		left: levelWidth(e.leftLevels()) + 5*sheet.MM, right: levelWidth(e.rightLevels()) + 5*sheet.MM,
		top:    6*sheet.MM + sheet.Paper(offsetRows(above))*offsetStep,
		bottom: 6*sheet.MM + sheet.Paper(offsetRows(below))*offsetStep,
	}
	lo, hi := s.Paper(e.first), s.Paper(e.last)
	for _, o := range append(below, above...) {
		left, right := o.text()
		m.left, m.right = max(m.left, lo-left+4*sheet.MM), max(m.right, right-hi+4*sheet.MM)
	}
	return m
}

// offsets are the distances of boxes, below, and of holes in the plate, above,
// from the nearest corner, and the distance between the corners.
func (e *elevation) offsets(v sheet.View) (below, above []offset) {
	for _, b := range e.boxes() {
		if !b.fromOtherSide {
			below = e.addOffset(below, v, b.name, b.across)
		}
	}
	for _, h := range e.holes() {
		if h.kind == route.PlateArc && e.inRoom(h.across) {
			above = e.addOffset(above, v, h.hole.ID, h.across)
		}
		if h.kind == route.SoleArc && e.inRoom(h.across) {
			below = e.addOffset(below, v, h.hole.ID, h.across)
		}
	}
	if e.first <= 0 && e.last >= e.width() {
		below = append(below, offset{words: e.text(e.width()), from: e.x(v, 0), to: e.x(v, e.width())})
	}
	return below, above
}

// addOffset adds the distance of a thing from the nearer corner; things at one
// place share theirs.
func (e *elevation) addOffset(list []offset, v sheet.View, name string, u measure.Length) []offset {
	to := e.x(v, u)
	for i := range list {
		if list[i].to == to {
			list[i].words = name + ", " + list[i].words
			return list
		}
	}
	corner, dist, side := e.nearest(u)
	o := offset{words: name + " " + e.text(dist), from: e.x(v, corner), to: to, atRight: side == "right"}
	if !e.shows(corner) {
		o.broken = true
		o.from = max(e.x(v, e.first), min(o.from, e.x(v, e.last)))
	}
	return append(list, o)
}

// nearest is the corner nearest to a place, how far away it is, and its name.
func (e *elevation) nearest(u measure.Length) (corner, dist measure.Length, name string) {
	if w := e.width(); u > w/2 {
		return w, w - u, "right"
	}
	return 0, u, "left"
}

func (e *elevation) x(v sheet.View, u measure.Length) sheet.Paper {
	return v.Point(geom.Point{X: u}).X
}

func (e *elevation) text(l measure.Length) string { return e.res.Job.House.Units.FormatSheet(l) }

// leftLevels are the heights of what is opened or has power, rightLevels those
// of the wall.
func (e *elevation) leftLevels() []level {
	var out []level
	for _, b := range e.boxes() {
		if !b.fromOtherSide {
			out = append(out, level{b.height, b.name})
		}
	}
	for i := range e.wall.Devices {
		if dev := &e.wall.Devices[i]; e.shows(e.across(dev.At)) && dev.Side == e.side {
			out = append(out, level{dev.Height, dev.Kind})
		}
	}
	for i := range e.res.Job.House.Conduits {
		if c := &e.res.Job.House.Conduits[i]; e.hasConduit(c) {
			out = append(out, level{c.Height, "conduit " + c.ID})
		}
	}
	return merged(out, e.text)
}

func (e *elevation) rightLevels() []level {
	lvl := e.level()
	out := []level{{0, "floor"}, {lvl.Ceiling, "ceiling"}, {lvl.PlateTop, "plate, top"}}
	for i := range e.wall.Openings {
		o := &e.wall.Openings[i]
		if !e.showsOpening(o) {
			continue
		}
		out = append(out, level{o.Head, "head"})
		if o.Sill > 0 {
			out = append(out, level{o.Sill, "sill"})
		}
	}
	for _, fb := range e.wall.FireBlocks {
		out = append(out, level{fb, "fire block"})
	}
	for _, h := range e.holes() {
		if h.kind == route.StudArc {
			out = append(out, level{h.height, h.hole.ID})
		}
	}
	return merged(out, e.text)
}

func (e *elevation) showsOpening(o *plan.Opening) bool {
	a, b := e.across(o.Start), e.across(o.End)
	return min(a, b) < e.last && e.first < max(a, b)
}

func (e *elevation) hasConduit(c *plan.Conduit) bool {
	return &e.res.Job.House.Walls[c.Wall] == e.wall && e.shows(e.across(c.At))
}

// list writes the boxes, holes and devices of the wall in the column.
func (e *elevation) list(p *page) {
	u := p.res.Job.House.Units
	p.line(sheet.LetterTag, 0, e.title())
	var rows [][]string
	row := func(name, what string, across measure.Length, at string) {
		_, dist, corner := e.nearest(across)
		rows = append(rows, []string{name, what, u.Format(dist) + " from the " + corner, at})
	}
	for _, b := range e.boxes() {
		if b.fromOtherSide {
			continue
		}
		what := "panel"
		if b.drop != nil {
			what = fmt.Sprintf("%d × %s", b.drop.Count, b.drop.Cable.ID)
		}
		row(b.name, what, b.across, u.Format(b.height)+" up")
	}
	for _, h := range e.holes() {
		if !e.inRoom(h.across) {
			continue
		}
		row(h.hole.ID, h.kind.String(), h.across, bitWords(u, h.hole)+from(p.res, h.hole))
	}
	for i := range e.wall.Devices {
		if dev := &e.wall.Devices[i]; e.shows(e.across(dev.At)) && e.inRoom(e.across(dev.At)) {
			row(dev.ID, dev.Kind, e.across(dev.At), u.Format(dev.Height)+" up")
		}
	}
	p.table(sheet.LetterSmall, rows)
	p.next += sheet.MM
}

// from says where a hole is bored from.
func from(res *route.Result, h *route.Hole) string {
	p := &res.Graph.Holes[h.Place]
	switch {
	case p.Kind == route.SoleArc && p.FromSpace:
		return ", from below"
	case p.Kind == route.SoleArc:
		return ", from the box down"
	case p.FromSpace && p.Space >= 0 && res.Job.House.Spaces[p.Space].Kind != plan.AtticSpace:
		return ", from below"
	case p.FromSpace:
		return ", from above"
	}
	return ", from below"
}
