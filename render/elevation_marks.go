package render

import (
	"cmp"
	"slices"
	"strings"

	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
)

// A level is a height that is written beside a drawing, on a line that leads
// to it.
type level struct {
	height measure.Length
	words  string
}

// Measures of level marks; common practice, no source.
const (
	levelStep  = 4500 * sheet.Micrometre // least distance between two
	levelReach = 6 * sheet.MM            // from the drawing to the words
	levelGap   = 1500 * sheet.Micrometre // from the drawing to the line
)

// merged joins levels of one height and sorts them from the highest down.
func merged(levels []level, format func(measure.Length) string) []level {
	levels = slices.Clone(levels)
	slices.SortStableFunc(levels, func(a, b level) int { return cmp.Compare(b.height, a.height) })
	var out []level
	for _, l := range levels {
		n := len(out)
		switch {
		case n == 0 || out[n-1].height != l.height:
			out = append(out, l)
		case !slices.Contains(strings.Split(out[n-1].words, ", "), l.words):
			out[n-1].words += ", " + l.words
		}
	}
	for i := range out {
		const longest = 34 * sheet.MM
		out[i].words = font.Fit(sheet.LetterNote, out[i].words, longest) + " " + format(out[i].height)
	}
	return out
}

// levelWidth is the paper that merged levels take beside a drawing.
func levelWidth(levels []level) sheet.Paper {
	var w sheet.Paper
	for _, l := range levels {
		w = max(w, font.Width(sheet.LetterNote, l.words))
	}
	if w == 0 {
		return 0
	}
	return levelReach + w + 2*sheet.MM
}

// drawLevels writes merged levels beside the drawing's edge at x: to the right
// of it, or to the left. Those too near to each other are moved apart, and
// their lines bend.
func (d *drawing) drawLevels(id string, levels []level, x sheet.Paper, right bool, at func(measure.Length) sheet.Paper) {
	if len(levels) == 0 {
		return
	}
	g := d.sheet.Group(id, "levels", "Heights")
	side := sheet.Paper(-1)
	if right {
		side = 1
	}
	ys := make([]sheet.Paper, len(levels))
	for i, l := range levels {
		ys[i] = at(l.height)
	}
	moved := apart(ys, levelStep)
	for i, l := range levels {
		w := font.Width(sheet.LetterNote, l.words)
		g.Polyline(sheet.PenDimension,
			sheet.Pt(x+side*levelGap, ys[i]), sheet.Pt(x+side*levelReach/2, ys[i]), sheet.Pt(x+side*levelReach, moved[i]),
			sheet.Pt(x+side*(levelReach+w+sheet.MM), moved[i]))
		middle := x + side*(levelReach+w/2+sheet.MM/2)
		base := moved[i] - font.Drop(sheet.LetterNote) - 300*sheet.Micrometre
		g.Text(sheet.LetterNote, sheet.Pt(middle, base), sheet.Middle, l.words)
	}
}

// apart moves rising coordinates as little as needed so that neighbours are
// at least a step apart: groups that touch share what they are moved by.
func apart(at []sheet.Paper, step sheet.Paper) []sheet.Paper {
	type group struct{ n, sum sheet.Paper }
	var groups []group
	start := func(g group) sheet.Paper { return g.sum/g.n - (g.n-1)*step/2 }
	for _, y := range at {
		groups = append(groups, group{n: 1, sum: y})
		for n := len(groups); n > 1; n = len(groups) {
			a, b := groups[n-2], groups[n-1]
			if start(a)+a.n*step <= start(b) {
				break
			}
			groups = append(groups[:n-2], group{n: a.n + b.n, sum: a.sum + b.sum})
		}
	}
	var out []sheet.Paper
	for _, g := range groups {
		for i := range g.n {
			out = append(out, start(g)+i*step)
		}
	}
	return out
}

// An offset is a distance along a drawing from one of its corners.
type offset struct {
	words    string
	from, to sheet.Paper
	atRight  bool // from the right-hand corner
	broken   bool // the corner itself is not on the drawing
}

// Measures of parallel dimensions (ISO 129-1 leaves them free; common
// practice).
const (
	offsetFirst = 5 * sheet.MM
	offsetStep  = 5800 * sheet.Micrometre
	offsetTick  = 1000 * sheet.Micrometre
	offsetOver  = 1500 * sheet.Micrometre // of extension lines
)

// mostOffsets bounds how many dimension lines lie below each other; what is
// beyond is in the table of the sheet.
const mostOffsets = 6

// stacked sorts offsets from the shortest and gives each a row such that
// neither lines nor words of one row meet, and of those from one corner the
// longer lie further out: then no extension line strikes words.
func stacked(offsets []offset) (sorted []offset, rows []int) {
	sorted = slices.Clone(offsets)
	slices.SortStableFunc(sorted, func(a, b offset) int {
		return cmp.Or(cmp.Compare(a.length(), b.length()), cmp.Compare(a.from, b.from))
	})
	for i := range sorted {
		row := 0
		for j := 0; j < i; j++ {
			a, b := sorted[i].extent(), sorted[j].extent()
			if a[0] < b[1] && b[0] < a[1] {
				row = max(row, rows[j]+1)
			}
		}
		rows = append(rows, row)
	}
	return sorted, rows
}

func (o *offset) length() sheet.Paper { return max(o.to-o.from, o.from-o.to) }

// text is where the words stand along the dimension line: on it, or outside
// the corner if it is too short for them.
func (o *offset) text() (left, right sheet.Paper) {
	w, _ := font.BoxSize(sheet.LetterDimension, o.words)
	if w+2*offsetTick <= o.length() {
		m := (o.from + o.to) / 2
		return m - w/2, m + w/2
	}
	const beside = 2 * sheet.MM
	if !o.atRight {
		return o.from - beside - w, o.from - beside
	}
	return o.from + beside, o.from + beside + w
}

// extent is what the line and the words take, with some room.
func (o *offset) extent() [2]sheet.Paper {
	left, right := o.text()
	return [2]sheet.Paper{min(o.from, o.to, left) - sheet.MM, max(o.from, o.to, right) + sheet.MM}
}

// offsetRows is how many rows offsets take.
func offsetRows(offsets []offset) int {
	_, rows := stacked(offsets)
	n := 0
	for _, r := range rows {
		n = max(n, r+1)
	}
	return min(n, mostOffsets)
}

// drawOffsets draws dimensions from corners below the drawing's edge at y, or
// above it if out is -1. Those beyond the last row are left out.
func (d *drawing) drawOffsets(id string, offsets []offset, y, out sheet.Paper) {
	g := d.sheet.Group(id, "dimensions", "Distances from the nearest corner")
	sorted, rows := stacked(offsets)
	far := map[sheet.Paper]sheet.Paper{}
	for i, o := range sorted {
		if rows[i] >= mostOffsets {
			continue
		}
		line := y + out*(offsetFirst+sheet.Paper(rows[i])*offsetStep)
		g.Line(sheet.PenDimension, sheet.Pt(o.from, line), sheet.Pt(o.to, line))
		for _, x := range [2]sheet.Paper{o.from, o.to} {
			if x == o.from && o.broken {
				continue
			}
			g.Line(sheet.PenTick, sheet.Pt(x-offsetTick, line+offsetTick), sheet.Pt(x+offsetTick, line-offsetTick))
			if end := line + out*offsetOver; far[x] == 0 || out*end > out*far[x] {
				far[x] = end
			}
		}
		left, right := o.text()
		base := line - font.Drop(sheet.LetterDimension) - 300*sheet.Micrometre
		g.Text(sheet.LetterDimension, sheet.Pt((left+right)/2, base), sheet.Middle, o.words)
	}
	for _, x := range sortedKeys(far) {
		g.Line(sheet.PenDimension, sheet.Pt(x, y+out*sheet.MM), sheet.Pt(x, far[x]))
	}
}

func sortedKeys(m map[sheet.Paper]sheet.Paper) []sheet.Paper {
	var out []sheet.Paper
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}
