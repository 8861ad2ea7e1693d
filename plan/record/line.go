package record

import (
	"encoding/hex"
	"errors"
	"fmt"
	"hash/crc32"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// Bounds of a line, so that bad input can't take the machine's memory.
const (
	mostLine   = 1 << 16 // bytes
	mostNumber = 1 << 30
	mostText   = 500 // characters of a note
)

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

const sumKey = " crc32c="

// line is e as a line of the file, with its end.
func (e *Entry) line() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%d %s %s", e.Number, e.When.UTC().Format(time.RFC3339), e.Kind)
	if e.ID != "" {
		b.WriteString(" " + value(e.ID))
	}
	put := func(key, text string) {
		if text != "" {
			b.WriteString(" " + key + "=" + value(text))
		}
	}
	put("replaces", number(e.Replaces))
	if e.Anyway {
		put("anyway", "yes")
	}
	switch e.Kind {
	case StartKind:
		e.Start.fields(put)
	case CableKind:
		e.Cable.fields(put)
	case HoleKind:
		e.Hole.fields(put)
	case SpoolKind:
		e.Spool.fields(put)
	}
	put("by", e.By)
	put("note", e.Note)
	return fmt.Sprintf("%s%s%08x\n", b.String(), sumKey, crc32.Checksum([]byte(b.String()), castagnoli))
}

// number writes n, and nothing for 0.
func number(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// thousandthsText writes n thousandths, and nothing for 0.
func thousandthsText(n int64) string {
	if n == 0 {
		return ""
	}
	return decimal(n)
}

func (s *Start) fields(put func(key, text string)) {
	put("name", s.Name)
	put("number", s.Number)
	for _, in := range s.Inputs {
		put("input", in.Path+" "+hex.EncodeToString(in.SHA256[:]))
	}
}

func (c *Cable) fields(put func(key, text string)) {
	put("state", c.State.String())
	if c.Length != 0 {
		put("length", c.Length.String())
	}
	if c.Marked {
		put("marks", c.Marks[0].String()+","+c.Marks[1].String())
	}
	put("plug", c.Plug)
	put("port", number(c.Port))
	if c.WireMap != Untested {
		put("wiremap", c.WireMap.String())
	}
	put("speed", number(int(c.Speed)))
	put("watts", thousandthsText(c.Watts))
	put("volts", thousandthsText(c.Volts))
	put("hours", thousandthsText(c.Hours))
}

func (h *Hole) fields(put func(key, text string)) {
	put("through", h.Through)
	if h.Wall != "" {
		put("wall", h.Wall)
		put("at", h.At.String())
	}
	if h.Pointed {
		put("point", h.Point[0].String()+","+h.Point[1].String()+","+h.Point[2].String())
	}
	put("diameter", h.Diameter.String())
	put("cables", strings.Join(h.Cables, ","))
	put("there", number(h.There))
}

func (s *Spool) fields(put func(key, text string)) {
	put("cable", s.Cable)
	put("left", s.Left.String())
	if s.Marked {
		put("mark", s.Mark.String())
		put("counts", map[bool]string{false: "up", true: "down"}[s.Down])
	}
}

// value writes a value: bare if it is of plain characters only.
func value(s string) string {
	if s != "" && strings.Trim(s, letters+"0123456789.,:/+-") == "" {
		return s
	}
	return strconv.Quote(s)
}

// errTorn says that a line is not whole.
var errTorn = errors.New("its checksum is missing or does not fit: it was torn while it was written, or changed later")

// parseLine reads a line without its end.
func parseLine(line string) (e Entry, err error) {
	at := strings.LastIndex(line, sumKey)
	if at < 0 || len(line) > mostLine || line[at+len(sumKey):] != fmt.Sprintf("%08x", crc32.Checksum([]byte(line[:at]), castagnoli)) {
		return e, errTorn
	}
	words, err := split(line[:at])
	if err != nil {
		return e, err
	}
	if len(words) < 3 {
		return e, errors.New("found less than a number, a time and a kind")
	}
	if e.Number, err = whole(words[0].text, mostNumber); err != nil || e.Number == 0 {
		return e, fmt.Errorf("found the number %.40q", words[0].text)
	}
	if e.When, err = time.Parse(time.RFC3339, words[1].text); err != nil || e.When.Location() != time.UTC {
		return e, fmt.Errorf("found the time %.40q; want one such as 2026-03-31T14:40:00Z", words[1].text)
	}
	kind, err := word(words[2].text, kindNames[:], nil)
	if err != nil {
		return e, fmt.Errorf("%w: it may be from a newer release", err)
	}
	e.Kind = Kind(kind)
	rest := words[3:]
	if e.Kind == CableKind || e.Kind == HoleKind || e.Kind == SpoolKind {
		if len(rest) == 0 || rest[0].key != "" || !IsName(rest[0].text) {
			return e, fmt.Errorf("found no name of a %s", e.Kind)
		}
		e.ID, rest = rest[0].text, rest[1:]
	}
	return e, e.readFields(rest)
}

// readFields reads key=value pairs.
func (e *Entry) readFields(fields []field) error {
	seen := map[string]bool{}
	for _, f := range fields {
		if f.key == "" {
			return fmt.Errorf("found %.40q where key=value is wanted", f.text)
		}
		if seen[f.key] && f.key != "input" {
			return fmt.Errorf("found %s twice", f.key)
		}
		seen[f.key] = true
		if err := e.set(f.key, f.text); err != nil {
			return fmt.Errorf("%s: %w", f.key, err)
		}
	}
	if e.Kind == HoleKind && (e.Hole.Through == "" || e.Hole.Diameter == 0) {
		return errors.New("found a hole without what it goes through or its diameter")
	}
	return nil
}

// set reads one field of an entry.
func (e *Entry) set(key, text string) (err error) {
	switch key {
	case "by":
		e.By = text
		return Text(text)
	case "note":
		e.Note = text
		return Text(text)
	case "replaces":
		e.Replaces, err = whole(text, e.Number-1)
		return err
	case "anyway":
		e.Anyway = text == "yes"
		return nil
	}
	switch e.Kind {
	case StartKind:
		return e.Start.set(key, text)
	case CableKind:
		return e.Cable.Set(key, text, "")
	case HoleKind:
		return e.Hole.Set(key, text)
	case SpoolKind:
		return e.Spool.Set(key, text)
	}
	return errors.New("a note has none")
}

func (s *Start) set(key, text string) error {
	switch key {
	case "name":
		s.Name = text
	case "number":
		s.Number = text
	case "input":
		in := Input{}
		at := strings.LastIndexByte(text, ' ')
		if at < 0 || len(text)-at-1 != hex.EncodedLen(len(in.SHA256)) {
			return fmt.Errorf("found %.40q; want a file and its SHA-256", text)
		}
		in.Path = text[:at]
		if _, err := hex.Decode(in.SHA256[:], []byte(text[at+1:])); err != nil {
			return err
		}
		s.Inputs = append(s.Inputs, in)
	default:
		return fmt.Errorf("a job has no %s", key)
	}
	return nil
}

// A field is a value, with its key if it has one.
type field struct{ key, text string }

// split takes a line apart at its spaces, but for those in quotes.
func split(line string) (out []field, err error) {
	for line != "" {
		var f field
		if n := strings.IndexAny(line, `= "`); n > 0 && line[n] == '=' {
			f.key, line = line[:n], line[n+1:]
		}
		if strings.HasPrefix(line, `"`) {
			quoted, err := strconv.QuotedPrefix(line)
			if err != nil {
				return nil, errors.New("found a quotation mark without its other half")
			}
			line = line[len(quoted):]
			if f.text, err = strconv.Unquote(quoted); err != nil {
				return nil, err
			}
		} else {
			n := strings.IndexByte(line+" ", ' ')
			f.text, line = line[:n], line[n:]
		}
		if line != "" {
			if line[0] != ' ' || len(line) == 1 {
				return nil, fmt.Errorf("found %.40q after a value", line)
			}
			line = line[1:]
		}
		out = append(out, f)
	}
	return out, nil
}

// IsName reports whether s is a name as the files of a job have them, of a
// cable with its number.
func IsName(s string) bool {
	return s != "" && len(s) <= 80 && strings.Trim(s, letters+"0123456789-_.") == "" && strings.IndexAny(s, "-_.") != 0
}

// Text says what is wrong with a text for people on one line, at most 500
// characters.
func Text(s string) error {
	bad := func(r rune) bool {
		return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == '\u2028' || r == '\u2029'
	}
	switch {
	case !utf8.ValidString(s):
		return errors.New("found bytes that are no text (UTF-8)")
	case strings.ContainsFunc(s, bad):
		return fmt.Errorf("found a control character in %.40q; want one line of text", s)
	case utf8.RuneCountInString(s) > mostText:
		return fmt.Errorf("found %d characters; want at most %d", utf8.RuneCountInString(s), mostText)
	}
	return nil
}
