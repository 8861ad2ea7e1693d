package render

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"topplate/render/font"
	"topplate/render/sheet"
)

// labelled is a strip with a name, which can be split between its lines, each
// of which is 5 mm tall.
func labelled(name string, lines int) strip {
	const line = 5 * sheet.MM
	return strip{
		height: sheet.Paper(lines) * line,
		draw: func(g *sheet.Group, at sheet.Point) {
			for i := range lines {
				g.Text(0, at.Add(sheet.Pt(0, sheet.Paper(i)*line)), sheet.Start, name)
			}
		},
		split: func(room sheet.Paper) (strip, strip) {
			n := max(1, min(lines-1, int(room/line)))
			return labelled(name, n), labelled(name, lines-n)
		},
	}
}

// Rows flow over pages in order, each whole unless it is taller than a page, no
// page is overfull, and what a page goes on with stands under its list's name.
func TestFlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := flow{room: 100 * sheet.MM, first: 60 * sheet.MM}
		tall := map[string]int{}
		var want []string
		for i := range rapid.IntRange(1, 8).Draw(t, "runs") {
			l := &listing{id: fmt.Sprint(i)}
			again := []strip{labelled(fmt.Sprintf("again %d", i), 2)}
			r := run{list: l, lead: []strip{labelled("lead", 2)}, fresh: []strip{labelled("fresh", 2)}, again: again}
			for k := range rapid.IntRange(0, 12).Draw(t, "rows") {
				name, n := fmt.Sprintf("row %d.%d", i, k), rapid.SampledFrom([]int{1, 1, 2, 3, 7, 45}).Draw(t, "lines")
				tall[name] = n
				want = append(want, slices.Repeat([]string{name}, n)...)
				r.rows = append(r.rows, labelled(name, n))
			}
			f.add(r)
		}
		checkSplits(t, &f)
		var got []string
		on := map[string]int{} // pages that a row is on
		for n, p := range f.pages {
			room := f.room
			if n == 0 {
				room = f.first
			}
			here := map[string]bool{}
			for i, s := range p {
				if s.down+s.height > room {
					t.Fatalf("page %d is overfull: %d of %d", n, s.down+s.height, room)
				}
				if i > 0 && s.down < p[i-1].down+p[i-1].height {
					t.Fatalf("page %d: strips overlap", n)
				}
				g := &sheet.Group{}
				s.draw(g, sheet.Point{})
				for _, item := range g.Items {
					w := item.(sheet.Text).Words
					if strings.HasPrefix(w, "row") {
						got = append(got, w)
						here[w] = true
						if i == 0 {
							t.Fatalf("page %d begins with %s, without a head", n, w)
						}
					}
				}
			}
			for w := range here {
				on[w]++
			}
		}
		if !slices.Equal(got, want) {
			t.Fatalf("got %q, want %q", got, want)
		}
		for w, n := range on {
			if n > 1 && tall[w] <= 18 {
				t.Fatalf("%s of %d lines is on %d pages", w, tall[w], n)
			}
		}
	})
}

// checkSplits wants what goes on on the next page to have filled its own: less
// than a line is left below it.
func checkSplits(t *rapid.T, f *flow) {
	end := func(p []inked) (name string, room sheet.Paper) {
		last := p[len(p)-1]
		g := &sheet.Group{}
		last.draw(g, sheet.Point{})
		return g.Items[0].(sheet.Text).Words, f.room - last.down - last.height
	}
	for n := 1; n+1 < len(f.pages); n++ {
		name, room := end(f.pages[n])
		for _, s := range f.pages[n+1] {
			g := &sheet.Group{}
			s.draw(g, sheet.Point{})
			if g.Items[0].(sheet.Text).Words == name && strings.HasPrefix(name, "row") && room >= 5*sheet.MM {
				t.Fatalf("page %d has room for %d µm more of %s", n, room, name)
			}
		}
	}
}

// heightWith is the height of a table at given widths.
func heightWith(columns []column, rows [][]string, widths ...sheet.Paper) sheet.Paper {
	for i, w := range widths {
		columns[i].width = w
	}
	var sum sheet.Paper
	for _, cells := range rows {
		r := newRow(columns, cells)
		sum += r.height()
	}
	return sum
}

// The widths that are chosen make a table of three columns at most a fifth
// taller than the best of all widths in steps of 4 mm, and by less than a tenth
// on average.
func TestFitColumns(t *testing.T) {
	words := strings.Fields("the quick brown installer feeds one cable after another through a double plate from the attic")
	var ours, bests sheet.Paper
	for seed := range 10 {
		var rows [][]string
		next := seed * 7
		text := func(n int) string {
			var out []string
			for range n {
				next = (next*31 + 17) % 9973
				out = append(out, words[next%len(words)])
			}
			return strings.Join(out, " ")
		}
		for i := range 6 {
			rows = append(rows, []string{text(1 + (seed+i)%5), text(4 + (seed*3+i*5)%20), text(2 + (seed*5+i*7)%30)})
		}
		columns := make([]column, 3)
		const width = 120 * sheet.MM
		fitColumns(columns, rows, width)
		a, b, c := columns[0].width, columns[1].width, columns[2].width
		if got := a + b + c + 2*columnGap; got > width || got < width-sheet.MM {
			t.Errorf("seed %d: widths %d %d %d make %d of %d", seed, a, b, c, got, width)
		}
		got := heightWith(columns, rows, a, b, c)
		best := got
		for x := 12 * sheet.MM; x < width; x += 4 * sheet.MM {
			for y := 12 * sheet.MM; x+y+12*sheet.MM+2*columnGap <= width; y += 4 * sheet.MM {
				best = min(best, heightWith(columns, rows, x, y, width-2*columnGap-x-y))
			}
		}
		if got > best*6/5 {
			t.Errorf("seed %d: %d tall, %d at best", seed, got, best)
		}
		ours, bests = ours+got, bests+best
	}
	if ours > bests*11/10 {
		t.Errorf("tables are %d tall, %d at best", ours, bests)
	}
	t.Logf("tables are %.1f %% taller than the best", 100*float64(ours-bests)/float64(bests))
}

// Cells that fit on one line each stay there, and columns keep to the page
// whatever is in them.
func TestFitColumnsAtTheEnds(t *testing.T) {
	long := strings.Repeat("W", 200)
	for _, c := range []struct {
		rows [][]string
		one  bool
	}{
		{[][]string{{"a", "b c", "d e f"}}, true},
		{[][]string{{long, long, long}}, false},
		{[][]string{{"", "", ""}}, true},
		{nil, true},
	} {
		columns := []column{{whole: true}, {}, {head: "head", whole: true}, {kind: toFill, width: writeWidth}}
		var rows [][]string
		for _, r := range c.rows {
			rows = append(rows, append(r, ""))
		}
		const width = 100 * sheet.MM
		fitColumns(columns, rows, width)
		sum := 3 * columnGap
		for i := range columns {
			sum += columns[i].width
			if columns[i].width <= 0 {
				t.Errorf("%q: column %d is %d wide", c.rows, i, columns[i].width)
			}
		}
		if sum > width {
			t.Errorf("%q is %d wide", c.rows, sum)
		}
		for _, r := range rows {
			for i, lines := range newRow(columns, r).lines {
				if len(lines) > 1 && c.one {
					t.Errorf("%q: column %d has %d lines", r, i, len(lines))
				}
			}
		}
	}
}

// A row that is split keeps every line, in order, and is marked once.
func TestRowSplit(t *testing.T) {
	columns := []column{{kind: toTick, width: tickWidth}, {width: 20 * sheet.MM}, {width: 30 * sheet.MM}}
	r := newRow(columns, []string{"", strings.Repeat("word ", 90), "one\ntwo three four five six seven"})
	var got [3][]cellLine
	marks, rules := 0, 0
	for range 1000 {
		first, rest := r.split(40 * sheet.MM)
		if first.height() > 40*sheet.MM {
			t.Fatalf("a part is %d tall", first.height())
		}
		for i := range got {
			got[i] = append(got[i], first.lines[i]...)
		}
		if first.marked {
			marks++
		}
		if first.ruled || rest.height() <= r.above()+cellPad && rest.ruled {
			rules++
		}
		if r = rest; len(r.lines[1]) == 0 {
			break
		}
	}
	want := newRow(columns, []string{"", strings.Repeat("word ", 90), "one\ntwo three four five six seven"})
	for i := range got {
		if !slices.EqualFunc(got[i], want.lines[i], func(a, b cellLine) bool { return a.words == b.words && a.indent == b.indent }) {
			t.Errorf("column %d has %v, want %v", i, got[i], want.lines[i])
		}
	}
	if marks != 1 || rules != 1 {
		t.Errorf("%d boxes, %d lines below", marks, rules)
	}
}

// The orders of ANSI/TIA-568 by pin, written as wiring guides print them: an
// odd pin has the white conductor with stripes, pairs 1 and 4 are the same in
// both, and a cable with one at each end crosses 1 with 3 and 2 with 6.
func TestPinOuts(t *testing.T) {
	want := map[string]string{
		"T568A": "w/green green w/orange blue w/blue orange w/brown brown",
		"T568B": "w/orange orange w/green blue w/blue green w/brown brown",
	}
	pairs := map[string]int{"blue": 1, "orange": 2, "green": 3, "brown": 4}
	for _, p := range pinOutTable {
		var got []string
		for i, c := range p.pins {
			name := c.colour
			if c.striped {
				name = "w/" + name
			}
			got = append(got, name)
			if c.striped != (i%2 == 0) || c.pair != pairs[c.colour] {
				t.Errorf("%s pin %d: %+v", p.name, i+1, c)
			}
		}
		if strings.Join(got, " ") != want[p.name] {
			t.Errorf("%s is %q, want %q", p.name, got, want[p.name])
		}
	}
	a, b := pinOutTable[0].pins, pinOutTable[1].pins
	for pin, other := range map[int]int{1: 3, 2: 6, 3: 1, 4: 4, 5: 5, 6: 2, 7: 7, 8: 8} {
		if a[pin-1] != b[other-1] {
			t.Errorf("pin %d of the one is not pin %d of the other", pin, other)
		}
	}
}

// A line never ends between a number and its unit.
func TestGlued(t *testing.T) {
	for s, want := range map[string]string{
		"12ft 6-1/2in, then 3.500 m along": "12ft_6-1/2in, then 3.500_m along",
		"2 × coil":                         "2_× coil",
		"10 %, 300 ml to 1 h 5 min":        "10_%, 300_ml to 1_h 5_min",
		"2 men, 3 mills":                   "2 men, 3 mills",
	} {
		if got := strings.ReplaceAll(glued(s), "\u00A0", "_"); got != want {
			t.Errorf("%q is glued to %q, want %q", s, got, want)
		}
	}
	if got := font.Wrap(sheet.LetterNote, glued("along 3.500 m of it"), font.Width(sheet.LetterNote, "along 3.500")); got[0] != "along" {
		t.Errorf("wrapped to %q", got)
	}
}
