package render

import (
	"slices"
	"strings"

	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route/tasks"
)

// Sizes of what is carried: a smaller box before each thing.
const (
	carryTick = 2500 * sheet.Micrometre
	carryName = 13 * sheet.MM
	carryGap  = 3 * sheet.MM
	carryHang = 5 * sheet.MM // of lines after the first
)

// A parcel is things to tick with a name before them.
type parcel struct {
	name  string
	items []string
}

// A bag is tools that go along to most places of a kind, packed once.
type bag struct {
	name  string
	kinds []tasks.PlaceKind
	tools []string
}

// How often a tool must be wanted to be in a bag: in half of the places that
// are gone to, if there are three. A bag is taken where half of it is wanted
// (common practice, no source).
const (
	bagVisits = 3
	bagShare  = 2
)

// bagsOf are the bags that are worth packing.
func bagsOf(t *tasks.Work) []bag {
	var out []bag
	for _, b := range []bag{
		{name: "room bag", kinds: []tasks.PlaceKind{tasks.Room}},
		{name: "attic bag", kinds: []tasks.PlaceKind{tasks.Attic, tasks.Crawl}},
	} {
		wanted := map[string]int{}
		visits := 0
		for i := range t.Visits {
			if v := &t.Visits[i]; slices.Contains(b.kinds, v.Place.Kind) {
				visits++
				for _, it := range v.Carry {
					if it.Count == 0 {
						wanted[it.What]++
					}
				}
			}
		}
		for what, n := range wanted {
			if n*bagShare >= visits {
				b.tools = append(b.tools, what)
			}
		}
		slices.Sort(b.tools)
		if visits >= bagVisits && len(b.tools) > bagVisits {
			out = append(out, b)
		}
	}
	return out
}

// carryPacks are what goes along to a visit: the bag, if half of it is wanted,
// and what is not in it. Things of one kind that are each for another drop stand
// together.
func carryPacks(v *tasks.Visit, bags []bag) []parcel {
	out := []parcel{{name: "carry"}}
	var in []string
	for i := range bags {
		b := &bags[i]
		n := 0
		for _, it := range v.Carry {
			if it.Count == 0 && slices.Contains(b.tools, it.What) {
				n++
			}
		}
		if slices.Contains(b.kinds, v.Place.Kind) && n*bagShare >= len(b.tools) {
			in = append(in, b.tools...)
			out[0].items = append(out[0].items, b.name)
		}
	}
	for _, it := range v.Carry {
		if it.Count == 0 && slices.Contains(in, it.What) {
			continue
		}
		what, whom, ok := strings.Cut(it.What, " for ")
		if !ok || it.Count == 0 {
			out[0].items = append(out[0].items, it.String())
			continue
		}
		it.What = whom
		if last := &out[len(out)-1]; len(out) > 1 && last.name == what+" for" {
			last.items = append(last.items, it.String())
			continue
		}
		out = append(out, parcel{what + " for", []string{it.String()}})
	}
	return out
}

// A carried is one thing to carry with its place on a line.
type carried struct {
	along sheet.Paper
	words string
	tick  bool
}

// strips are the lines of a parcel, nil if it is empty.
func (p parcel) strips(width sheet.Paper) []strip {
	if len(p.items) == 0 {
		return nil
	}
	l := sheet.LetterNote
	name := font.Fit(sheet.LetterTag, p.name, width/2)
	x := max(carryName, font.Width(sheet.LetterTag, name)+2*sheet.MM)
	lines := [][]carried{nil}
	for _, item := range p.items {
		for i, words := range font.Wrap(l, glued(item), width-carryHang-2*carryTick) {
			need := 2*carryTick + font.Width(l, words)
			if x+need > width || i > 0 {
				lines = append(lines, nil)
				x = carryHang
			}
			last := &lines[len(lines)-1]
			*last = append(*last, carried{x, words, i == 0})
			x += need + carryGap
		}
	}
	var out []strip
	for i, line := range lines {
		first := ""
		if i == 0 {
			first = name
		}
		out = append(out, carryStrip(line, first))
	}
	return out
}

func carryStrip(line []carried, name string) strip {
	l := sheet.LetterNote
	return strip{height: font.LineHeight(l), draw: func(g *sheet.Group, at sheet.Point) {
		base := at.Y + font.LineHeight(l) - sheet.MM/2
		g.Text(sheet.LetterTag, sheet.Pt(at.X, base), sheet.Start, name)
		for _, c := range line {
			x := at.X + c.along
			if c.tick {
				g.Rect(sheet.PenThin, sheet.Bx(x, base-carryTick, carryTick, carryTick))
			}
			g.Text(l, sheet.Pt(x+carryTick*8/5, base), sheet.Start, c.words)
		}
	}}
}
