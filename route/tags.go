package route

import (
	"cmp"
	"strings"
)

// CompareTags orders tags as people do: runs of digits by their value, so
// that D2 comes before D10.
func CompareTags(a, b string) int {
	for a != "" && b != "" {
		x, y := chunk(a), chunk(b)
		a, b = a[len(x):], b[len(y):]
		if isDigit(x[0]) && isDigit(y[0]) {
			x, y = strings.TrimLeft(x, "0"), strings.TrimLeft(y, "0")
			if c := cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(x, y)); c != 0 {
				return c
			}
			continue
		}
		if c := cmp.Compare(x, y); c != 0 {
			return c
		}
	}
	return cmp.Compare(len(a), len(b))
}

// chunk is the first run of digits or of other characters.
func chunk(s string) string {
	n := 1
	for n < len(s) && isDigit(s[n]) == isDigit(s[0]) {
		n++
	}
	return s[:n]
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
