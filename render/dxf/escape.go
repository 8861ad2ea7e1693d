package dxf

import (
	"fmt"
	"strings"

	"topplate/render/font"
)

// maxText is the greatest length of a value of text in release 12.
const maxText = 255

// more stands for the end of a text that is too long.
const more = "..."

// escape writes words so that a reader shows them as they are: "%%" begins a
// control code, and "%%%" is the sign itself; "^" begins a control character,
// and "^ " is the sign itself; "\U+" and "\M+" begin a character by its
// number, as each one beyond ASCII is written. A character beyond the first
// 65 536 has no such number and becomes font.Substitute.
func escape(words string) string {
	plain := []rune(font.Plain(words))
	var b strings.Builder
	kept := 0 // length of b with room left for more
	for i := range plain {
		b.WriteString(escapeAt(plain, i))
		if b.Len() > maxText {
			return b.String()[:kept] + more
		}
		if b.Len() <= maxText-len(more) {
			kept = b.Len()
		}
	}
	return b.String()
}

// escapeAt writes the character with number i.
func escapeAt(plain []rune, i int) string {
	ahead := func(n int) rune {
		if i+n >= len(plain) {
			return 0
		}
		return plain[i+n]
	}
	switch r := plain[i]; {
	case r == '%' && ahead(1) == '%':
		return "%%%"
	case r == '^':
		return "^ "
	case r == '\\' && strings.ContainsRune("UuMm", ahead(1)) && ahead(2) == '+':
		return `\U+005C`
	case r > 0xFFFF:
		return fmt.Sprintf(`\U+%04X`, font.Substitute)
	case r > '~':
		return fmt.Sprintf(`\U+%04X`, r)
	default:
		return string(r)
	}
}
