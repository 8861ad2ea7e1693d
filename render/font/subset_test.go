package font

import (
	"bytes"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"

	"topplate/render/sheet"
)

// Each character of a subset has the width that it has in the font, and other
// characters are gone.
func TestSubset(t *testing.T) {
	const text = "Kitchen 12′-6 1/2″ ½⅞ É 部"
	for _, f := range sheet.Faces() {
		small, err := sfnt.Parse(Subset(f, text))
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range Clean(f, text) {
			index, err := small.GlyphIndex(new(sfnt.Buffer), r)
			if err != nil || index == 0 {
				t.Errorf("%s: the subset has no %c", Family(f), r)
				continue
			}
			advance, err := small.GlyphAdvance(new(sfnt.Buffer), index, unitsPerEm, font.HintingNone)
			if want := metricsOf(f).glyph(r).advance; err != nil || int64(advance) != want {
				t.Errorf("%s: %c is %d wide in the subset, want %d", Family(f), r, advance, want)
			}
		}
		if index, _ := small.GlyphIndex(new(sfnt.Buffer), 'Z'); index != 0 {
			t.Errorf("%s: the subset has a Z that the text has not", Family(f))
		}
	}
}

func TestSubsetIsDeterministicAndSmall(t *testing.T) {
	first := Subset(sheet.Regular, "Kitchen 12′")
	for range 10 {
		if !bytes.Equal(first, Subset(sheet.Regular, "′21nehctiK K")) {
			t.Fatal("the same characters in another order give other bytes")
		}
	}
	if len(first) > len(TTF(sheet.Regular))/5 {
		t.Errorf("10 characters take %d bytes of %d", len(first), len(TTF(sheet.Regular)))
	}
	if !bytes.Contains(first, []byte("Bigelow")) && !bytes.Contains(first, []byte("B\x00i\x00g\x00e\x00l\x00o\x00w")) {
		t.Error("the subset has lost the notice of its licence")
	}
}

func TestSubsetOfNothing(t *testing.T) {
	for _, text := range []string{"", "\x00\n"} {
		if got := Subset(sheet.Bold, text); got != nil {
			t.Errorf("%q gives %d bytes", text, len(got))
		}
	}
}

// The file of a face must not change when a subset is cut from it.
func TestSubsetLeavesTheFont(t *testing.T) {
	before := bytes.Clone(TTF(sheet.Mono))
	Subset(sheet.Mono, signs)
	if !bytes.Equal(before, TTF(sheet.Mono)) {
		t.Error("the font has changed")
	}
}
