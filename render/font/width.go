package font

import (
	"strings"

	"topplate/render/sheet"
)

// Size returns the size of the font, its em, at which capitals have the height
// of the lettering, rounded to the micrometre.
func Size(l sheet.Lettering) sheet.Paper {
	return (l.Style().Height*unitsPerEm + capHeight/2) / capHeight
}

// Width returns how wide s is when it is drawn, rounded up to the micrometre:
// the sum of the widths of the characters of Clean.
func Width(l sheet.Lettering, s string) sheet.Paper {
	return lengthOf(l, units(l, Clean(l.Style().Face, s)))
}

// units is the width of a clean text in 2048ths of the size.
func units(l sheet.Lettering, clean string) int64 {
	m := metricsOf(l.Style().Face)
	sum := int64(0)
	for _, r := range clean {
		sum += m.glyph(r).advance
	}
	return sum
}

func lengthOf(l sheet.Lettering, units int64) sheet.Paper {
	return sheet.Paper((units*int64(Size(l)) + unitsPerEm - 1) / unitsPerEm)
}

// LineHeight returns the distance from one baseline to the next: 1.6 times the
// height of capitals, at which not even an accent on a capital meets a tail of
// the line above. ISO 3098 asks for at least 1.5 times for capitals and small
// letters without accents.
func LineHeight(l sheet.Lettering) sheet.Paper { return l.Style().Height * 8 / 5 }

// Rise returns how far the ink of s reaches above the baseline: that of the
// tallest letter without an accent, or more if s has a taller character.
func Rise(l sheet.Lettering, s string) sheet.Paper {
	m := metricsOf(l.Style().Face)
	top := int64(letterTop)
	for _, r := range Clean(l.Style().Face, s) {
		top = max(top, m.glyph(r).top)
	}
	return lengthOf(l, top)
}

// Drop returns how far letters with tails reach below the baseline.
func Drop(l sheet.Lettering) sheet.Paper { return lengthOf(l, letterBottom) }

const ellipsis = "…"

// Fit returns the text of s that fits in the width: all of it, cleaned, or as
// much as fits with an ellipsis after it, or nothing if not even the ellipsis
// fits.
func Fit(l sheet.Lettering, s string, width sheet.Paper) string {
	clean := Clean(l.Style().Face, s)
	if lengthOf(l, units(l, clean)) <= width {
		return clean
	}
	m := metricsOf(l.Style().Face)
	sum := units(l, ellipsis)
	if lengthOf(l, sum) > width {
		return ""
	}
	for i, r := range clean {
		sum += m.glyph(r).advance
		if lengthOf(l, sum) > width {
			return strings.TrimRight(clean[:i], " ") + ellipsis
		}
	}
	return clean
}

// Wrap breaks s at spaces into lines that fit in the width, but not at a
// no-break space. A word that is too long for a line is broken between two
// characters. Every line has at least one character, however narrow the width.
// An empty s has no lines.
func Wrap(l sheet.Lettering, s string, width sheet.Paper) []string {
	var lines []string
	line, sum, space := "", int64(0), units(l, " ")
	for word := range strings.SplitSeq(Clean(l.Style().Face, s), " ") {
		joined, more := word, units(l, word)
		if line != "" {
			joined, more = line+" "+word, sum+space+more
		}
		if lengthOf(l, more) <= width {
			line, sum = joined, more
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		var broken []string
		broken, line = breakWord(l, word, width)
		lines, sum = append(lines, broken...), units(l, line)
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// breakWord cuts pieces that fill a line from the front of word, and returns
// them and what is left, which fits in the width unless it is one character.
func breakWord(l sheet.Lettering, word string, width sheet.Paper) (pieces []string, rest string) {
	m := metricsOf(l.Style().Face)
	start, sum := 0, int64(0)
	for i, r := range word {
		advance := m.glyph(r).advance
		if i > start && lengthOf(l, sum+advance) > width {
			pieces = append(pieces, word[start:i])
			start, sum = i, 0
		}
		sum += advance
	}
	return pieces, word[start:]
}
