package font

import (
	"testing"

	"topplate/render/sheet"
)

const mm = sheet.MM

func TestBox(t *testing.T) {
	at := sheet.Pt(100*mm, 50*mm)
	w, h := Width(sheet.LetterTag, "K1"), Drop(sheet.LetterTag)+Rise(sheet.LetterTag, "K1")
	for _, c := range []struct {
		name          string
		text          sheet.Text
		left, top     sheet.Paper // without the slack
		width, height sheet.Paper
	}{
		{"start", sheet.Text{}, 100 * mm, 50*mm - Rise(0, "x"), w, h},
		{"middle", sheet.Text{Align: sheet.Middle}, 100*mm - w/2, 50*mm - Rise(0, "x"), w, h},
		{"end", sheet.Text{Align: sheet.End}, 100*mm - w, 50*mm - Rise(0, "x"), w, h},
		{"upwards", sheet.Text{Turn: sheet.QuarterTurn}, 100*mm - Rise(0, "x"), 50*mm - w, h, w},
		{"downwards", sheet.Text{Turn: -sheet.QuarterTurn}, 100*mm - Drop(0), 50 * mm, h, w},
	} {
		c.text.Lettering, c.text.At, c.text.Words = sheet.LetterTag, at, "K1"
		got := Box(c.text)
		tight := sheet.Bx(c.left, c.top, c.width, c.height)
		if !got.Contains(tight) || !tight.Inset(-w/90).Contains(got) {
			t.Errorf("%s: %v, want %v and one percent of the width more on each side", c.name, got, tight)
		}
	}
}

func TestBoxOfTurnedTextHoldsIt(t *testing.T) {
	text := sheet.Text{Lettering: sheet.LetterTag, At: sheet.Pt(0, 0), Turn: 45 * sheet.Degree, Words: "Kitchen"}
	w, h := BoxSize(text.Lettering, text.Words)
	diagonal := (w + h) * 707 / 1000 // of the turned rectangle along either axis
	if got := Box(text); got.Width() < diagonal || got.Width() > diagonal*101/100 || got.Width()-got.Height() > 3 {
		t.Errorf("%v, want a square of %d", got, diagonal)
	}
}

func TestBoxOfNothing(t *testing.T) {
	got := Box(sheet.Text{At: sheet.Pt(5, 6), Words: "\x00"})
	if got != (sheet.Box{Min: sheet.Pt(5, 6), Max: sheet.Pt(5, 6)}) {
		t.Errorf("a text without characters has the box %v", got)
	}
}

func TestRiseKnowsAccents(t *testing.T) {
	plain, accented := Rise(sheet.LetterTag, "E"), Rise(sheet.LetterTag, "É")
	if plain != Rise(sheet.LetterTag, "x") || accented <= plain {
		t.Errorf("E rises by %d, É by %d", plain, accented)
	}
	if line := LineHeight(sheet.LetterTag); accented+Drop(sheet.LetterTag) > line {
		t.Errorf("an accent meets the tails of the line above: %d and %d in %d", accented, Drop(sheet.LetterTag), line)
	}
}

func TestBlockLinesKeepApart(t *testing.T) {
	block := Block{{sheet.LetterRoom, "Kitchen gypq"}, {sheet.LetterSmall, "ÉÅ 142 sq ft"}, {sheet.LetterNote, "gÅ"}}
	w, h := block.Size()
	for _, upward := range []bool{false, true} {
		box := sheet.Bx(10*mm, 20*mm, w, h)
		if upward {
			box = sheet.Bx(10*mm, 20*mm, h, w)
		}
		texts := block.In(box, upward, true)
		for i, text := range texts {
			b := Box(text)
			if !box.Inset(-2).Contains(b) {
				t.Errorf("upward %v: line %d lies in %v, outside of %v", upward, i, b, box)
			}
			if i > 0 && b.Inset(2).Overlaps(Box(texts[i-1])) {
				t.Errorf("upward %v: lines %d and %d overlap", upward, i-1, i)
			}
			if !text.Halo {
				t.Errorf("line %d has no halo", i)
			}
		}
		if first, last := Box(texts[0]), Box(texts[2]); upward && first.Min.X > last.Min.X {
			t.Errorf("reading upwards, the first line %v is right of the last %v", first, last)
		}
	}
	if w, h := (Block{}).Size(); w != 0 || h != 0 {
		t.Errorf("no lines measure %d by %d", w, h)
	}
}
