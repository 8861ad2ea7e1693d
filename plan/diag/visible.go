package diag

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// How much of a source line is shown on each side of the caret, in terminal
// cells, so that a line of a minified file does not fill the screen.
const (
	cellsBefore = 60
	cellsAfter  = 40
)

// tab is what a tab in a source line is shown as. The caret's line is spaced
// by cells, so that any fixed width lines up.
const tab = "    "

// visible writes text so that a terminal shows it and never obeys it: control
// characters, marks that reverse the direction of writing, line separators and
// bytes that are not UTF-8 come out as escapes such as \x1b or \u202e.
func visible(text string) string {
	if !strings.ContainsFunc(text, hidden) {
		return text
	}
	var b strings.Builder
	for i, r := range text {
		switch {
		case !hidden(r):
			b.WriteRune(r)
		case r == utf8.RuneError:
			b.WriteString(escapeError(text[i:]))
		case r < 0x100:
			fmt.Fprintf(&b, `\x%02x`, r)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	return b.String()
}

// hidden reports whether a terminal may not show r as a character of its own:
// all that Unicode does not call graphic, and U+FFFD, which ranging over a
// string gives for a byte that is not UTF-8.
func hidden(r rune) bool { return !unicode.IsGraphic(r) || r == utf8.RuneError }

// escapeError tells a U+FFFD that was written from a byte that is not UTF-8.
func escapeError(text string) string {
	if _, size := utf8.DecodeRuneInString(text); size > 1 {
		return string(utf8.RuneError)
	}
	return fmt.Sprintf(`\x%02x`, text[0])
}

// clip returns what is shown of a source line before and after the byte at
// col, 0 <= col <= len(text). What is cut off is shown as "…".
func clip(text string, col int) (before, after string) {
	for col > 0 && col < len(text) && !utf8.RuneStart(text[col]) {
		col--
	}
	return tail(text[:col]), head(text[col:])
}

// head is the visible form of text, cut off after cellsAfter.
func head(text string) string {
	var b strings.Builder
	used := 0
	for len(text) > 0 {
		shown, size := first(text)
		if used += cells(shown); used > cellsAfter {
			return b.String() + "…"
		}
		b.WriteString(shown)
		text = text[size:]
	}
	return b.String()
}

// tail is the visible form of text, cut off before the last cellsBefore.
func tail(text string) string {
	shown := ""
	for len(text) > 0 {
		_, size := utf8.DecodeLastRuneInString(text)
		next := showRune(text[len(text)-size:])
		if cells(next)+cells(shown) > cellsBefore {
			return "…" + shown
		}
		shown = next + shown
		text = text[:len(text)-size]
	}
	return shown
}

// first is the visible form of the first character and its length in bytes.
func first(text string) (shown string, size int) {
	_, size = utf8.DecodeRuneInString(text)
	return showRune(text[:size]), size
}

func showRune(char string) string {
	if char == "\t" {
		return tab
	}
	return visible(char)
}

// cells is how many terminal cells visible text takes. It counts one for each
// character: combining marks and wide East Asian characters move the caret.
func cells(text string) int { return utf8.RuneCountInString(text) }
