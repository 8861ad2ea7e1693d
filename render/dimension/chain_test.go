package dimension

import (
	"testing"

	"pgregory.net/rapid"

	"topplate/render/font"
	"topplate/render/sheet"
)

const mm = sheet.MM

func TestChainWithRoom(t *testing.T) {
	d := Chain{
		Line:  20 * mm,
		Stops: []Stop{{10 * mm, 30 * mm}, {60 * mm, 30 * mm}, {120 * mm, 35 * mm}},
		Words: []string{"12′-6 1/2″", "15′-0″"},
	}.Draw()
	if len(d.Texts) != 2 {
		t.Fatalf("%d texts, want 2", len(d.Texts))
	}
	for i, want := range []sheet.Paper{35 * mm, 90 * mm} {
		if c := d.Texts[i].Centre().X; c < want-2 || c > want+2 {
			t.Errorf("text %d is centred at %d, want %d", i, c, want)
		}
		if bottom := d.Texts[i].Max.Y; bottom != 20*mm-clear {
			t.Errorf("text %d ends at %d, want %d above the line", i, bottom, clear)
		}
	}
	first := d.Items[1].(sheet.Line)
	if want := (sheet.Line{Pen: sheet.PenDimension, A: sheet.Pt(10*mm, 29*mm), B: sheet.Pt(10*mm, 18_500)}); first != want {
		t.Errorf("extension line is %v, want %v", first, want)
	}
}

func TestVerticalTextsReadUpwards(t *testing.T) {
	d := Chain{
		Vertical: true, Line: 20 * mm,
		Stops: []Stop{{10 * mm, 30 * mm}, {60 * mm, 30 * mm}},
		Words: []string{"3810"},
	}.Draw()
	text := d.Items[len(d.Items)-1].(sheet.Text)
	if text.Turn != sheet.QuarterTurn {
		t.Errorf("turned by %d, want a quarter turn", text.Turn)
	}
	if box := d.Texts[0]; box.Max.X != 20*mm-clear || box.Height() < box.Width() {
		t.Errorf("text stands in %v, want it upright and left of the line", box)
	}
}

func TestChainLeavesOutWhatIsNotThere(t *testing.T) {
	two := []Stop{{0, 0}, {50 * mm, 0}}
	for _, c := range []struct {
		name  string
		chain Chain
		items int
		texts int
	}{
		{"nothing", Chain{}, 0, 0},
		{"one stop", Chain{Stops: two[:1], Words: []string{"1"}}, 0, 0},
		{"no words", Chain{Line: 9 * mm, Stops: two}, 5, 0},
		{"empty words", Chain{Line: 9 * mm, Stops: two, Words: []string{""}}, 5, 0},
		{"too many words", Chain{Line: 9 * mm, Stops: two, Words: []string{"1", "2", "3"}}, 6, 1},
	} {
		if d := c.chain.Draw(); len(d.Items) != c.items || len(d.Texts) != c.texts {
			t.Errorf("%s: %d items and %d texts, want %d and %d", c.name, len(d.Items), len(d.Texts), c.items, c.texts)
		}
	}
}

// A chain through a wall of 4 1/2 in between two rooms at 1:48: the middle part
// is 2.4 mm, its text four times as wide.
func TestNarrowPartStandsOutside(t *testing.T) {
	for _, c := range []struct {
		name string
		from sheet.Paper // where the drawing is
	}{{"drawing below", 40 * mm}, {"drawing above", 0}} {
		d := Chain{
			Line:  20 * mm,
			Stops: []Stop{{0, c.from}, {60 * mm, c.from}, {62_400, c.from}, {120 * mm, c.from}},
			Words: []string{"9′-5 1/2″", "4 1/2″", "9′-1″"},
		}.Draw()
		narrow := d.Texts[2]
		if x := narrow.Centre().X; x < 61_198 || x > 61_202 {
			t.Errorf("%s: text is centred at %d, want 61200", c.name, x)
		}
		if outside := narrow.Max.Y < d.Texts[0].Min.Y; c.from > 20*mm && !outside {
			t.Errorf("%s: text %v does not stand above %v", c.name, narrow, d.Texts[0])
		}
		if c.from < 20*mm && narrow.Min.Y < 20*mm+overshoot {
			t.Errorf("%s: text %v does not stand below the line", c.name, narrow)
		}
	}
}

// Of five narrow parts in a row the middle text is the furthest out.
func TestClusterIsAStair(t *testing.T) {
	stops := []Stop{{0, 40 * mm}}
	for i := range 5 {
		stops = append(stops, Stop{sheet.Paper(i+1) * 2 * mm, 40 * mm})
	}
	d := Chain{Line: 30 * mm, Stops: stops, Words: []string{"1 1/2″", "3 1/2″", "5 1/2″", "3 1/2″", "1 1/2″"}}.Draw()
	heights := []sheet.Paper{}
	for _, b := range d.Texts {
		heights = append(heights, b.Min.Y)
	}
	if !(heights[0] > heights[1] && heights[1] > heights[2] && heights[2] < heights[3] && heights[3] < heights[4]) {
		t.Errorf("tops of the texts are at %v, want them to climb to the middle", heights)
	}
}

func TestChainNeverOverlapsItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Chain{Vertical: rapid.Bool().Draw(t, "vertical"), Line: 50 * mm}
		from := rapid.SampledFrom([]sheet.Paper{0, 40 * mm, 60 * mm, 100 * mm}).Draw(t, "from")
		at := sheet.Paper(0)
		for range rapid.IntRange(2, 30).Draw(t, "stops") {
			c.Stops = append(c.Stops, Stop{at, from})
			at += sheet.Paper(rapid.IntRange(1, 30_000).Draw(t, "part"))
			c.Words = append(c.Words, rapid.SampledFrom([]string{"", "1″", "4 1/2″", "12′-6 1/2″", "É9", "102400"}).Draw(t, "words"))
		}
		checkClear(t, c.Draw())
	})
}

// checkClear fails if two texts overlap or a line strikes one.
func checkClear(t *rapid.T, d Drawing) {
	for i, b := range d.Texts {
		if !d.Bounds.Contains(b) {
			t.Fatalf("text %v is not in the bounds %v", b, d.Bounds)
		}
		for _, other := range d.Texts[:i] {
			if b.Overlaps(other) {
				t.Fatalf("texts %v and %v overlap", b, other)
			}
		}
		for _, item := range d.Items {
			for _, s := range item.Strokes() {
				if b.Struck(s[0], s[1]) {
					t.Fatalf("text %v is struck by %v", b, s)
				}
			}
		}
	}
}

func TestTextsAreThoseOfTheItems(t *testing.T) {
	d := Chain{Line: 10 * mm, Stops: []Stop{{0, 0}, {50 * mm, 0}, {52 * mm, 0}}, Words: []string{"12′", "1/2″"}}.Draw()
	n := 0
	for _, item := range d.Items {
		if text, ok := item.(sheet.Text); ok {
			if d.Texts[n] != font.Box(text) {
				t.Errorf("box %d is %v, want %v", n, d.Texts[n], font.Box(text))
			}
			n++
		}
	}
	if n != 2 || len(d.Texts) != 2 {
		t.Errorf("%d texts and %d boxes, want 2 of each", n, len(d.Texts))
	}
}
