package source

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
	gotoml "github.com/pelletier/go-toml/v2"

	"topplate/plan/diag"
)

var byteOrderMark = []byte("\ufeff")

// Parse reads a TOML document. The name is the one that diagnostics print. The
// table is nil if the document could not be read; the list then says why. The
// getters of the table add to the list.
func Parse(name string, src []byte) (*Table, *diag.List) {
	d := newDocument(name, bytes.TrimPrefix(src, byteOrderMark))
	if !d.readable() {
		return nil, d.diags
	}
	root := d.build()
	if d.diags.HasErrors() {
		return nil, d.diags
	}
	decoded := d.decode()
	if d.diags.HasErrors() {
		return nil, d.diags
	}
	root.fill(decoded)
	if d.diags.HasErrors() {
		return nil, d.diags
	}
	return root, d.diags
}

// readable reports whether the document is text of a reasonable size.
func (d *document) readable() bool {
	switch {
	case len(d.src) > maxFile:
		d.fileErrorf("found %d bytes; a file of at most %d is read", len(d.src), maxFile)
		return false
	case bytes.HasPrefix(d.src, []byte("\xff\xfe")), bytes.HasPrefix(d.src, []byte("\xfe\xff")):
		d.fileErrorf("found text in UTF-16; save the file as UTF-8")
		return false
	}
	if i := bytes.IndexByte(d.src, 0); i >= 0 {
		d.errorAt(i, "found a zero byte; want text in UTF-8")
		return false
	}
	if i := firstInvalid(d.src); i >= 0 {
		d.errorAt(i, "found byte 0x%02x, which is not UTF-8; save the file as UTF-8", d.src[i])
		return false
	}
	return true
}

// firstInvalid is the offset of the first byte that is not UTF-8, or -1.
func firstInvalid(src []byte) int {
	if utf8.Valid(src) {
		return -1
	}
	for i := 0; i < len(src); {
		r, size := utf8.DecodeRune(src[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return -1
}

// decode returns the values of the document, once both decoders accept it.
func (d *document) decode() map[string]any {
	var decoded map[string]any
	if err := toml.Unmarshal(d.src, &decoded); err != nil {
		d.syntaxError(err)
		return nil
	}
	var second map[string]any
	if err := gotoml.Unmarshal(d.src, &second); err != nil {
		d.syntaxError(err)
		return nil
	}
	return decoded
}

// syntaxError adds the error of either library, at its place.
func (d *document) syntaxError(err error) {
	var first toml.ParseError
	var second *gotoml.DecodeError
	line, col, msg := 1, 1, strings.TrimPrefix(err.Error(), "toml: ")
	switch {
	case errors.As(err, &first):
		line, col, msg = first.Position.Line, first.Position.Col, first.Message
	case errors.As(err, &second):
		line, col = second.Position()
	}
	line = min(max(line, 1), len(d.lines))
	d.syntaxErrorAt(min(d.lines[line-1]+max(col-1, 0), len(d.src)), msg)
}

// syntaxErrorAt adds a syntax error at a byte, with a hint where the line
// shows one of the usual slips. The parser names the byte that it stopped at,
// which says little of a character of several bytes, and may quote any length
// of the document.
func (d *document) syntaxErrorAt(offset int, msg string) {
	if offset < len(d.src) {
		char, _ := utf8.DecodeRune(d.src[offset:])
		msg = strings.Replace(msg, fmt.Sprintf("%#U", rune(d.src[offset])), strconv.QuoteRune(char), 1)
	}
	d.errorAt(offset, "not TOML: %.200s%s", msg, hint(d.lineAt(offset), offset-d.lineStart(offset)))
}
