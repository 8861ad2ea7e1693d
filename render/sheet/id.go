package sheet

import (
	"fmt"
	"strings"
)

// ID makes an id for a group out of the kind of thing it is, such as "hole",
// and its name as the user wrote it: "hole-K1", "hole-K_20_1". Letters of
// ASCII, digits and hyphens stay; every other byte is written in hexadecimal
// between two underscores. Different names give different ids. kind must start
// with a letter and be plain.
func ID(kind, name string) string {
	var b strings.Builder
	b.WriteString(kind)
	b.WriteByte('-')
	for i := range len(name) {
		if c := name[i]; isPlain(c) && c != '_' {
			b.WriteByte(c)
		} else {
			fmt.Fprintf(&b, "_%02X_", c)
		}
	}
	return b.String()
}

// validID reports whether id is a name in XML, in the part of it that ID
// uses.
func validID(id string) bool {
	if id == "" || !isLetter(id[0]) {
		return false
	}
	for i := range len(id) {
		if !isPlain(id[i]) {
			return false
		}
	}
	return true
}

func isPlain(c byte) bool {
	return isLetter(c) || '0' <= c && c <= '9' || c == '-' || c == '_'
}

func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }
