package diag

import (
	"strings"
	"unicode/utf8"
)

// maxNearest bounds the words for which a near one is sought, in characters. A
// key or a name that is longer was not mistyped.
const maxNearest = 64

// Nearest returns the known word that word was most likely meant to be: the
// one with the fewest typing errors, if they are at most one in three
// characters. Capitals do not count as errors. Of equally near words the first
// in the order of bytes is returned, so that the order of known does not
// matter.
func Nearest(word string, known []string) (string, bool) {
	typed := letters(word)
	best, fewest := "", -1
	for _, k := range known {
		n, near := misspelling(typed, letters(k))
		if near && (fewest < 0 || n < fewest || n == fewest && k < best) {
			best, fewest = k, n
		}
	}
	return best, fewest >= 0
}

// misspelling counts the typing errors that made typed of meant, and reports
// whether they are few enough.
func misspelling(typed, meant []rune) (errors int, near bool) {
	longer, shorter := max(len(typed), len(meant)), min(len(typed), len(meant))
	allowed := (longer + 2) / 3
	if longer > maxNearest || longer-shorter > allowed {
		return 0, false
	}
	errors = typingErrors(typed, meant)
	return errors, errors <= allowed && errors < shorter
}

// letters are the characters of word in lower case. A word that is longer than
// any that is compared is cut, so that its length costs nothing.
func letters(word string) []rune {
	return []rune(strings.ToLower(word[:min(len(word), utf8.UTFMax*(maxNearest+1))]))
}

// typingErrors is the least number of characters left out, put in, mistaken or
// swapped with their neighbour that makes b of a: the optimal string alignment
// distance (F. J. Damerau, "A technique for computer detection and correction
// of spelling errors", Communications of the ACM 7(3), 1964), in which no
// character takes part in two errors. It takes time len(a)*len(b).
func typingErrors(a, b []rune) int {
	older, old, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i, ra := range a {
		older, old, row = old, row, older
		row[0] = i + 1
		for j, rb := range b {
			mistaken := old[j]
			if ra != rb {
				mistaken++
			}
			row[j+1] = min(mistaken, old[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && ra == b[j-1] && a[i-1] == rb {
				row[j+1] = min(row[j+1], older[j-1]+1)
			}
		}
	}
	return row[len(b)]
}
