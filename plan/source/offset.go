package source

import (
	"bytes"
	"strconv"
	"unicode/utf8"
)

// rawOffset is the place, in the raw text of a TOML string with its quotes, of
// the byte at offset in its value. An escape is where it starts. Offsets
// outside the value give its ends.
func rawOffset(raw []byte, offset int) int {
	quotes := 1
	if len(raw) >= 6 && raw[1] == raw[0] {
		quotes = 3
	}
	at, end := quotes, len(raw)-quotes
	if quotes == 3 {
		at += len(raw[at:end]) - len(trimNewline(raw[at:end]))
	}
	for value := 0; at < end; {
		rawSize, valueSize := 1, 1
		if raw[0] == '"' && raw[at] == '\\' {
			rawSize, valueSize = escape(raw[at:end])
		}
		if value+valueSize > offset {
			break
		}
		at += rawSize
		value += valueSize
	}
	return min(at, end)
}

// trimNewline drops the line end that may follow the opening quotes of a
// string of several lines, which is no part of the value.
func trimNewline(s []byte) []byte {
	switch {
	case len(s) > 0 && s[0] == '\n':
		return s[1:]
	case len(s) > 1 && s[0] == '\r' && s[1] == '\n':
		return s[2:]
	}
	return s
}

// escape is the size of the escape that s starts with, and of what it stands
// for.
func escape(s []byte) (rawSize, valueSize int) {
	digits := map[byte]int{'x': 2, 'u': 4, 'U': 8}[s[1]]
	switch {
	case digits > 0:
		r, _ := strconv.ParseUint(string(s[2:2+digits]), 16, 32)
		return 2 + digits, utf8.RuneLen(rune(r))
	case bytes.IndexByte([]byte(" \t\r\n"), s[1]) >= 0:
		return len(s) - len(bytes.TrimLeft(s[1:], " \t\r\n")), 0
	}
	return 2, 1
}
