package font

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"topplate/render/sheet"
)

// Substitute stands for a character that the fonts do not have.
const Substitute = '□'

// Plain returns s as one line without anything that is not to be seen: bytes
// that are no UTF-8, control and format characters (among them those that turn
// the direction of writing) are left out, and each run of spaces, tabs and
// line breaks becomes one space, at either end none. A no-break space stays.
func Plain(s string) string {
	var b strings.Builder
	gap := false
	for i, r := range s {
		switch {
		case r == utf8.RuneError && !strings.HasPrefix(s[i:], "\uFFFD"):
		case r != '\u00A0' && unicode.IsSpace(r):
			gap = true
		case hidden(r):
		default:
			if gap && b.Len() > 0 {
				b.WriteByte(' ')
			}
			gap = false
			b.WriteRune(r)
		}
	}
	return b.String()
}

// hidden reports whether r has no ink of its own: control and format
// characters, surrogates, private use, code points that mean nothing, and
// selectors of a variant.
func hidden(r rune) bool {
	return !unicode.IsGraphic(r) || unicode.Is(unicode.Variation_Selector, r)
}

// Clean returns s as face f draws it: Plain, with each character that the
// fonts do not have replaced by Substitute, so that a back end never takes
// another font for it, with other widths.
func Clean(f sheet.Face, s string) string {
	return strings.Map(func(r rune) rune {
		if !Has(f, r) {
			return Substitute
		}
		return r
	}, Plain(s))
}
