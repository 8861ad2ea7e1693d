package source

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
)

// bareValue matches a line whose value is neither quoted nor an array nor a
// table, up to the comment: at = 5ft 6in # from the corner.
var bareValue = regexp.MustCompile(`^\s*([\w.-]+)\s*=\s*([^\s"'\[{#][^#]*)`)

// notText matches what is meant as a number or a boolean, or is two keys on one
// line: quotes would not mend it.
var notText = regexp.MustCompile(`(?i)^([-+.\d_]+|true|false)$|=`)

// inchMark matches a line with a double quote for inches inside double quotes:
// at = "12' 6"".
var inchMark = regexp.MustCompile(`^\s*([\w.-]+)\s*=\s*"[^"]*\d\s*""`)

// hint says what is most likely meant by a line that is not TOML, for the two
// slips that lengths invite; it is empty for others.
func hint(line string, col int) string {
	if m := inchMark.FindStringSubmatch(line); m != nil {
		return fmt.Sprintf(`; between quotes write ft and in, such as %s = "12ft 6in"`, m[1])
	}
	m := bareValue.FindStringSubmatchIndex(line)
	if m == nil || col < m[4] || col > m[5] { // the fault is in the key or in the comment
		return ""
	}
	key, value := line[m[2]:m[3]], strings.TrimSpace(line[m[4]:m[5]])
	if notText.MatchString(value) {
		return ""
	}
	return fmt.Sprintf("; put text and lengths between quotes: %.40s = %.60q", key, value)
}

// Line returns a line of src by its number, counted from 1 as in the positions
// that Parse gives, without its end. It takes time len(src).
func Line(src []byte, line int) (string, bool) {
	d := newDocument("", bytes.TrimPrefix(src, byteOrderMark))
	if line < 1 || line > len(d.lines) {
		return "", false
	}
	return d.lineAt(d.lines[line-1]), true
}

// lineStart is the offset of the start of the line that offset is in.
func (d *document) lineStart(offset int) int { return d.lines[d.pos(offset).Line-1] }

// lineAt is the line that offset is in, without its end.
func (d *document) lineAt(offset int) string {
	line, _, _ := bytes.Cut(d.src[d.lineStart(offset):], []byte("\n"))
	return string(bytes.TrimSuffix(line, []byte("\r")))
}
