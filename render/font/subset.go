package font

import (
	"slices"

	"codeberg.org/go-pdf/fpdf"

	"topplate/render/sheet"
)

// Subset returns a TrueType font with the glyphs of face f for the characters
// of text and no others, to be embedded in a drawing. The same characters give
// the same bytes, in whatever order. Without a character that f has, it
// returns nil.
func Subset(f sheet.Face, text string) []byte {
	runes := []rune(Clean(f, text))
	slices.Sort(runes)
	runes = slices.Compact(runes)
	if len(runes) == 0 {
		return nil
	}
	return fpdf.UTF8CutFont(slices.Clone(TTF(f)), string(runes))
}
