package render

import (
	"cmp"
	"fmt"
	"slices"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// leastScales are the smallest scales at which a plan with its tags is read
// well, in each system (common practice, no source). A house that is too large
// for them is drawn on several sheets.
var leastScales = [...]int64{measure.Imperial: 96, measure.Metric: 100}

// leastScale is the smallest standard scale for plans.
func leastScale(u measure.System) sheet.Scale {
	var least sheet.Scale
	for _, s := range sheet.Scales(u) {
		if s.Den <= leastScales[u] {
			least = s
		}
	}
	return least
}

// Paper around a tile: what neighbours share beyond the match line, and what is
// kept free on all sides of the part that is a tile's own, where the house ends
// for dimensions.
const (
	overlap    = 15 * sheet.MM
	tileMargin = 21 * sheet.MM
)

// A tile is the part of a house that one of several sheets shows.
type tile struct {
	row, column int
	number      int       // from 1
	real        geom.Rect // up to the match lines
	// own is that part on paper, and on to the edge of the drawing where no tile
	// follows. window is all that is drawn: own, and what is shared.
	own, window sheet.Box
	match       []matchLine
}

// A matchLine is where a tile ends and another goes on.
type matchLine struct {
	a, b sheet.Point
	next int // number of the tile there
}

// extent is what a plan shows: the house with its roof.
func extent(res *route.Result) geom.Rect {
	return roofBounds(res.Job.House)
}

// tiles cut the house into the fewest equal parts that fit in an area at the
// least scale, row by row from the north-west. Parts without anything of the
// house are left out.
func tiles(res *route.Result, area sheet.Box) []tile {
	all, s := extent(res), leastScale(res.Job.House.Units)
	columns := parts(all.Width(), s.Real(area.Width()-2*tileMargin))
	rows := parts(all.Height(), s.Real(area.Height()-2*tileMargin))
	var out []tile
	for r := range rows {
		for c := range columns {
			t := tile{row: int(r), column: int(c), number: len(out) + 1}
			t.real.Min = geom.Point{X: all.Min.X + share(all.Width(), c, columns), Y: all.Max.Y - share(all.Height(), r+1, rows)}
			t.real.Max = geom.Point{X: all.Min.X + share(all.Width(), c+1, columns), Y: all.Max.Y - share(all.Height(), r, rows)}
			if shows(res, t.real) {
				out = append(out, t)
			}
		}
	}
	for i := range out {
		out[i].layOut(out, area, s)
	}
	return out
}

// parts is into how many parts of at most one length another is cut.
func parts(whole, part measure.Length) measure.Length {
	return max(1, (whole+part-1)/max(1, part))
}

// share is n of so many equal parts of a length.
func share(l, n, of measure.Length) measure.Length { return l/of*n + l%of*n/of }

// shows reports whether anything of the house or the job is in a part.
func shows(res *route.Result, part geom.Rect) bool {
	h := res.Job.House
	for i := range res.Routes {
		if part.Contains(res.Job.Drops[res.Routes[i].Drop].Point) || part.Contains(flat(res.Routes[i].Place)) {
			return true
		}
	}
	var overhang measure.Length
	for _, r := range h.Roofs {
		overhang = max(overhang, r.Overhang)
	}
	near, middle := part.Outset(overhang), geom.Point{X: (part.Min.X + part.Max.X) / 2, Y: (part.Min.Y + part.Max.Y) / 2}
	for l := range h.Levels {
		line := h.Levels[l].PlateLine
		for i, p := range line {
			if geom.SegmentEntersRect(p, line[(i+1)%len(line)], near) {
				return true
			}
		}
		if line.Contains(middle) {
			return true
		}
	}
	return false
}

// layOut finds where a tile lies on its sheet, and its match lines.
func (t *tile) layOut(all []tile, area sheet.Box, s sheet.Scale) {
	v := t.view(area, s)
	cell, edge := v.Box(t.real), area.Inset(3*sheet.MM)
	t.own, t.window = cell, cell.Inset(-overlap)
	north, south := t.next(all, -1, 0), t.next(all, 1, 0)
	west, east := t.next(all, 0, -1), t.next(all, 0, 1)
	for _, side := range []struct {
		next        int
		own, window *sheet.Paper
		edge        sheet.Paper
	}{
		{north, &t.own.Min.Y, &t.window.Min.Y, edge.Min.Y},
		{south, &t.own.Max.Y, &t.window.Max.Y, edge.Max.Y},
		{west, &t.own.Min.X, &t.window.Min.X, edge.Min.X},
		{east, &t.own.Max.X, &t.window.Max.X, edge.Max.X},
	} {
		if side.next == 0 {
			*side.own, *side.window = side.edge, side.edge
		}
	}
	w := t.window
	for _, m := range []matchLine{
		{sheet.Pt(w.Min.X, cell.Min.Y), sheet.Pt(w.Max.X, cell.Min.Y), north},
		{sheet.Pt(w.Min.X, cell.Max.Y), sheet.Pt(w.Max.X, cell.Max.Y), south},
		{sheet.Pt(cell.Min.X, w.Min.Y), sheet.Pt(cell.Min.X, w.Max.Y), west},
		{sheet.Pt(cell.Max.X, w.Min.Y), sheet.Pt(cell.Max.X, w.Max.Y), east},
	} {
		if m.next > 0 {
			t.match = append(t.match, m)
		}
	}
}

// view lays the middle of a tile in the middle of the drawing area.
func (t *tile) view(area sheet.Box, s sheet.Scale) sheet.View {
	middle := geom.Point{X: (t.real.Min.X + t.real.Max.X) / 2, Y: (t.real.Min.Y + t.real.Max.Y) / 2}
	return sheet.View{Scale: s, From: middle, To: area.Centre()}
}

// next is the number of the tile beside t, 0 if there is none.
func (t *tile) next(all []tile, down, right int) int {
	for i := range all {
		if all[i].row == t.row+down && all[i].column == t.column+right {
			return all[i].number
		}
	}
	return 0
}

// here reports whether a place of the house is on the sheet's own part, edges
// counted.
func (d *drawing) here(p geom.Point) bool { return d.tile == nil || d.tile.has(d.view.Point(p)) }

func (t *tile) has(p sheet.Point) bool { return t.own.Has(p) }

// drawMatchLines draws where the neighbours go on, broken where it would strike
// a text, and names the sheets.
func (d *drawing) drawMatchLines(kind string) {
	if d.tile == nil {
		return
	}
	var texts []sheet.Box
	for item := range d.sheet.All() {
		if t, ok := item.(sheet.Text); ok {
			texts = append(texts, font.Box(t).Inset(-sheet.MM))
		}
	}
	g := d.sheet.Group("match", "match", "Match lines")
	for _, m := range d.tile.match {
		for _, part := range besides(m.a, m.b, texts) {
			g.Line(sheet.PenMatch, part[0], part[1])
		}
		words := "match line, see sheet " + partID(d.res.Job.House, kind, m.next)
		label := sheet.Text{Lettering: sheet.LetterNote, Align: sheet.Middle, Level: sheet.OnHalf, Words: words, At: d.tile.beyond(m)}
		if m.a.X == m.b.X {
			label.Turn = sheet.QuarterTurn
		}
		g.Add(label)
	}
}

// beyond is the middle of the strip that a tile leaves free outside of its
// window at a match line.
func (t *tile) beyond(m matchLine) sheet.Point {
	const off = (tileMargin - overlap) / 2
	p := sheet.Bounds(m.a, m.b).Centre()
	switch w := t.window; {
	case m.a.X == m.b.X && p.X == w.Min.X+overlap:
		p.X = w.Min.X - off
	case m.a.X == m.b.X:
		p.X = w.Max.X + off
	case p.Y == w.Min.Y+overlap:
		p.Y = w.Min.Y - off
	default:
		p.Y = w.Max.Y + off
	}
	return p
}

// besides are the parts of a line along an axis that lie outside of all boxes,
// in order.
func besides(a, b sheet.Point, boxes []sheet.Box) [][2]sheet.Point {
	var struck []sheet.Box
	for _, box := range boxes {
		if box.Struck(a, b) {
			struck = append(struck, box)
		}
	}
	along := func(p sheet.Point) sheet.Paper { return p.X - a.X + p.Y - a.Y }
	across := a.X == b.X
	end := func(p sheet.Point) sheet.Point {
		if across {
			return sheet.Pt(a.X, p.Y)
		}
		return sheet.Pt(p.X, a.Y)
	}
	slices.SortFunc(struck, func(p, q sheet.Box) int { return cmp.Compare(along(end(p.Min)), along(end(q.Min))) })
	var out [][2]sheet.Point
	from := a
	for _, s := range struck {
		if to := end(s.Min); along(to) > along(from) {
			out = append(out, [2]sheet.Point{from, to})
		}
		if to := end(s.Max); along(to) > along(from) {
			from = to
		}
	}
	if along(b) > along(from) {
		out = append(out, [2]sheet.Point{from, b})
	}
	return out
}

// keyHeight is the most that a key plan takes in the column.
const keyHeight = 32 * sheet.MM

// keyPlan draws the outline of the house in the column, with its tiles, this
// one filled.
func (d *drawing) keyPlan(all []tile) {
	d.heading("Key plan")
	real := extent(d.res)
	box := sheet.Bx(d.side.Min.X+padding, d.next+sheet.MM, d.side.Width()-2*padding, keyHeight)
	v := sheet.View{Scale: sheet.Scale{Den: keyDen(real, box)}, From: geom.Point{X: real.Min.X, Y: real.Max.Y}, To: box.Min}
	g := d.sheet.Group("key", "column", "Key plan")
	for i := range all {
		if all[i].number == d.tile.number {
			g.Rect(sheet.PenKey, v.Box(all[i].real))
		}
	}
	for i := range all {
		t := &all[i]
		b, words, l := v.Box(t.real), fmt.Sprint(t.number), sheet.LetterSmall
		if t.number == d.tile.number {
			l = sheet.LetterSmallTag
		} else {
			g.Rect(sheet.PenThin, b)
		}
		if w, h := font.BoxSize(l, words); w <= b.Width() && h <= b.Height() {
			g.Add(sheet.Text{Lettering: l, At: b.Centre(), Align: sheet.Middle, Level: sheet.OnHalf, Halo: true, Words: words})
		}
	}
	for i := range d.res.Job.House.Levels {
		g.Polygon(sheet.PenMedium, v.Points(d.res.Job.House.Levels[i].PlateLine))
	}
	d.next = v.Box(real).Max.Y + sheet.MM
}

// keyDen is the reduction at which a house fits in a box; a key plan is not to
// scale.
func keyDen(real geom.Rect, box sheet.Box) int64 {
	w := int64(real.Width()) / int64(sheet.Scale{Den: 1}.Real(box.Width()))
	h := int64(real.Height()) / int64(sheet.Scale{Den: 1}.Real(box.Height()))
	return max(w, h) + 1
}
