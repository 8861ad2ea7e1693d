package render

import (
	"slices"

	"topplate/render/font"
	"topplate/render/sheet"
)

// cut leaves on the sheet what its tile shows of what has been drawn, and of
// the labels those of its own part.
func (d *drawing) cut() {
	if d.tile == nil {
		return
	}
	groups := d.sheet.Groups[:0]
	for _, g := range d.sheet.Groups {
		if !slices.Contains(paperOnly, g.Class) && g.Clip == nil {
			d.tile.cutGroup(g)
			g.Clip = d.tile.window.Corners()
		}
		groups = append(groups, g)
	}
	d.sheet.Groups = groups
	asks := d.asks[:0]
	for _, a := range d.asks {
		if d.tile.cutAsk(&a) {
			asks = append(asks, a)
		}
	}
	d.asks = asks
}

// cutGroup leaves out what lies outside of the window altogether, and texts
// that don't lie in it altogether. The rest is clipped by who draws it.
func (t *tile) cutGroup(g *sheet.Group) {
	kept := g.Items[:0]
	for _, item := range g.Items {
		switch it := item.(type) {
		case *sheet.Group:
			if t.cutGroup(it); len(it.Items) == 0 {
				continue
			}
		case sheet.Text:
			if !t.window.Contains(font.Box(it)) {
				continue
			}
		case sheet.Poly:
			// A ring that lies outside fills nothing inside.
			if it.Rings = t.within(it.Rings); len(it.Rings) == 0 {
				continue
			}
			item = it
		case sheet.Line:
			a, b, ok := clipped(it.A, it.B, t.window)
			if !ok {
				continue
			}
			item = sheet.Line{Pen: it.Pen, A: a, B: b}
		default:
			if len(t.within(item.Strokes())) == 0 {
				continue
			}
		}
		kept = append(kept, item)
	}
	g.Items = kept
}

// within are the lines whose bounds meet the window.
func (t *tile) within(lines [][]sheet.Point) [][]sheet.Point {
	var out [][]sheet.Point
	for _, l := range lines {
		if t.window.Overlaps(sheet.Bounds(l...)) {
			out = append(out, l)
		}
	}
	return out
}

// longSymbol is how long the part of a thing on a tile must be to be labelled
// there as well where its middle is on another.
const longSymbol = 20 * sheet.MM

// cutAsk reports whether a label belongs to the tile, and cuts what it labels
// to the tile's own part.
func (t *tile) cutAsk(a *ask) bool {
	switch {
	case len(a.along) > 0 && a.at == (sheet.Point{}):
		whole := longestWithin(a.along, sheet.Bounds(a.along...))
		a.along = longestWithin(a.along, t.own)
		// What is short is named where its middle is.
		return longest(a.along) >= shortestCounted || len(a.along) == 2 && t.has(sheet.Bounds(whole...).Centre())
	case a.within != (sheet.Box{}):
		middle := a.within.Centre()
		a.within = meet(a.within, t.own)
		w, h := a.block.Size()
		if a.within.Width() < w || a.within.Height() < h {
			return t.has(middle)
		}
		if !a.within.Has(a.at) {
			a.at = a.within.Centre()
		}
		return true
	case t.has(a.at):
		if len(a.along) == 2 {
			a.along = longestWithin(a.along, t.window)
		}
		return true
	}
	part := meet(a.symbol, t.own)
	if len(a.along) > 0 || min(part.Width(), part.Height()) < 0 || max(part.Width(), part.Height()) < longSymbol {
		return false
	}
	a.symbol, a.at = part, part.Centre()
	return true
}

// meet is what two boxes share; it is empty where they are apart.
func meet(a, b sheet.Box) sheet.Box {
	return sheet.Box{
		Min: sheet.Pt(max(a.Min.X, b.Min.X), max(a.Min.Y, b.Min.Y)),
		Max: sheet.Pt(min(a.Max.X, b.Max.X), min(a.Max.Y, b.Max.Y)),
	}
}

// longestWithin is the longest straight stretch of a line that lies in a box.
func longestWithin(line []sheet.Point, b sheet.Box) []sheet.Point {
	var best []sheet.Point
	for i := 1; i < len(line); i++ {
		p, q, ok := clipped(line[i-1], line[i], b)
		if s := []sheet.Point{p, q}; ok && longest(s) > longest(best) {
			best = s
		}
	}
	return best
}

// clipped is the part of a segment that lies in a box, by its share of both
// axes (Liang and Barsky, ACM Transactions on Graphics 3(1), 1984).
func clipped(p, q sheet.Point, b sheet.Box) (sheet.Point, sheet.Point, bool) {
	d := q.Sub(p)
	from, to := 0.0, 1.0
	for _, e := range [4][2]sheet.Paper{{-d.X, p.X - b.Min.X}, {d.X, b.Max.X - p.X}, {-d.Y, p.Y - b.Min.Y}, {d.Y, b.Max.Y - p.Y}} {
		switch r := float64(e[1]) / float64(e[0]); {
		case e[0] == 0 && e[1] < 0:
			return p, q, false
		case e[0] < 0:
			from = max(from, r)
		case e[0] > 0:
			to = min(to, r)
		}
	}
	at := func(t float64) sheet.Point {
		return p.Add(sheet.Pt(sheet.Paper(float64(float64(d.X)*t)), sheet.Paper(float64(float64(d.Y)*t))))
	}
	return at(from), at(to), from < to
}
