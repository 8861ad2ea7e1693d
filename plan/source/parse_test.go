package source

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

// unmark takes the one § out of a document and returns its place.
func unmark(t *testing.T, marked string) (string, diag.Pos) {
	t.Helper()
	before, after, ok := strings.Cut(marked, "§")
	if !ok {
		t.Fatalf("no mark in %q", marked)
	}
	return before + after, diag.Pos{
		File: "t.toml",
		Line: strings.Count(before, "\n") + 1,
		Col:  len(before) - strings.LastIndex(before, "\n"),
	}
}

// mustParse reads a document that is TOML.
func mustParse(t *testing.T, src string) (*Table, *diag.List) {
	t.Helper()
	root, problems := Parse("t.toml", []byte(src))
	if root == nil {
		t.Fatalf("%q does not parse: %v", src, messages(problems))
	}
	return root, problems
}

func messages(l *diag.List) string {
	var b strings.Builder
	if err := l.Print(&b, nil); err != nil {
		return err.Error()
	}
	return b.String()
}

// wantOne checks that there is one diagnostic, at pos, whose key and message
// hold want.
func wantOne(t *testing.T, src string, l *diag.List, pos diag.Pos, want string) {
	t.Helper()
	all := l.Sorted()
	if len(all) != 1 {
		t.Errorf("%.200q gives %d diagnostics, want one with %q\n%s", src, len(all), want, messages(l))
		return
	}
	if got := all[0].Key + ": " + all[0].Msg; all[0].Pos != pos || !strings.Contains(got, want) {
		t.Errorf("%.200q:\ngot  %s %s\nwant %s %s", src, all[0].Pos, got, pos, want)
	}
}

// The § stands where the fault is reported.
func TestParseErrors(t *testing.T) {
	tests := []struct{ marked, want string }{
		{"a = 1\nb = §\n", "not TOML: "},
		{"a = 1\n§= 2\n", "not TOML: "},
		{"r§äume = 1", "not TOML: expected '=' after key"},
		{"§äume = 1", "not TOML: invalid character at start of key: 'ä'"},
		{"a = §☃", "not TOML: unexpected character '☃' at start of value"},
		{"a = [1,\n 2\n§[b]\n", "not TOML: "},
		{"[[wall]]\nid = \"a\"\n[[wall]]\nid = §b\n", `put text and lengths between quotes: id = "b"`},
		{"at = 5§ft 6in # from the corner", `put text and lengths between quotes: at = "5ft 6in"`},
		{"at = \"12' 6\"§\"\n", `between quotes write ft and in, such as at = "12ft 6in"`},
		{"a = \"x\ty§\x01z\"", "not TOML: "},
		{"a = \"§\\q\"", "not TOML: "},
		{"a = §99999999999999999999", "not TOML: 99999999999999999999 is out of range"},
		{"a = §2026-02-30", "not TOML: invalid datetime"},
		{"a = 1\n§a = 2\n", "a: this key is set twice"},
		{"a = 1\n§a.b = 2\n", "a: this key is set twice"},
		{"a = {b = 1, §b = 2}\n", "a.b: this key is set twice"},
		{"a = 1\n[§a]\n", "a: this key is set twice"},
		{"a = 1\n[[§a]]\n", "a: this key is set twice"},
		{"a = 1\n[§a.b]\n", "a: this key is set twice"},
		{"[[a]]\n[§a]\n", "a: this key is set twice"},
		{"[a]\n[[§a]]\n", "a: this key is set twice"},
		{"[a]\n[b]\n[ §a ]\n", "the table [a] is opened twice"},
		{"[[a]]\n[a.b]\n[[a]]\n[a.b]\n[a.§b]\n", "the table [a[1].b] is opened twice"},
		// BurntSushi/toml v1.6.0 accepts these three, which TOML does not.
		{"a.b = 1\n[§a]\n", "not TOML: table a already exists"},
		{"a = {b = 1}\n§a.c = 2\n", "not TOML: key a is already defined"},
		{"a = [{b = 1}]\n[[§a]]\n", "not TOML: "},
		{"a = \"§\xff\"", "byte 0xff, which is not UTF-8"},
		{"# gr§\xfcn\n", "byte 0xfc, which is not UTF-8"},
		{"a = 1\n§\x00", "zero byte"},
		{"§" + strings.Repeat("k", maxKey+1) + " = 1", "a key of 65 bytes"},
		{"a = 1\n[b.§\"" + strings.Repeat("é", maxKey) + "\"]", "a key of 128 bytes"},
		{"a = [" + strings.Repeat("[", maxDepth-1) + "§[1]" + strings.Repeat("]", maxDepth), "more than 16 deep"},
		{"[" + strings.Repeat("a.", maxDepth) + "§b]", "more than 16 deep"},
		{strings.Repeat("a.", maxDepth) + "§b = 1", "more than 16 deep"},
		{strings.Repeat("a.", maxDepth) + "§b" + strings.Repeat(".c", 1000) + " = 1", "more than 16 deep"},
		{strings.Repeat("a.", maxKeys) + "§a" + strings.Repeat(".a", 1_000_000) + " = 1", "more than 30000 keys in one file"},
		{"[" + strings.Repeat("a.", maxKeys) + "§a" + strings.Repeat(".a", 1_000_000) + "]", "more than 30000 keys in one file"},
		{manyKeys(maxKeys) + "§a = 1", "more than 30000 keys in one file"},
		{"t = [" + strings.Repeat("{k = 1}, ", maxKeys-1) + "{§k = 1}]", "more than 30000 keys in one file"},
		{"a = [" + strings.Repeat("1,", maxValues-1) + "§1]", "more than 200000 keys and values"},
	}
	for _, tt := range tests {
		src, pos := unmark(t, tt.marked)
		root, problems := Parse("t.toml", []byte(src))
		if root != nil {
			t.Errorf("%.60q gives a table", src)
		}
		wantOne(t, src, problems, pos, tt.want)
	}
}

// manyKeys is a document of n keys.
func manyKeys(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "key%d = 1\n", i)
	}
	return b.String()
}

// Keys that are set twice count too, so that a file of them fills no memory
// with messages.
func TestTwiceIsBounded(t *testing.T) {
	for _, line := range []string{"a = 1\n", "[a]\n"} {
		root, problems := Parse("t.toml", []byte(strings.Repeat(line, 500_000)))
		if got := len(problems.Sorted()); root != nil || got != maxKeys {
			t.Errorf("%d times %q: %d diagnostics, want %d", 500_000, line, got, maxKeys)
		}
	}
}

// Faults of the file as a whole have no line.
func TestParseRefusesFile(t *testing.T) {
	tests := []struct{ src, want string }{
		{"#" + strings.Repeat(" ", maxFile), "found 4194305 bytes; a file of at most 4194304 is read"},
		{"\xff\xfea\x00", "UTF-16"},
		{"\xfe\xff\x00a", "UTF-16"},
	}
	for _, tt := range tests {
		_, problems := Parse("t.toml", []byte(tt.src))
		wantOne(t, tt.src, problems, diag.Pos{File: "t.toml"}, tt.want)
	}
}

// Documents at the limits are read.
func TestParseAtLimits(t *testing.T) {
	for _, src := range []string{
		"",
		"#" + strings.Repeat(" ", maxFile-1),
		strings.Repeat("k", maxKey) + " = 1",
		"a = " + strings.Repeat("[", maxDepth-1) + "1" + strings.Repeat("]", maxDepth-1),
		"[" + strings.Repeat("a.", maxDepth-2) + "b]\nc = 1",
		manyKeys(maxKeys),
		"a = [" + strings.Repeat("1,", maxValues-1) + "]",
	} {
		if _, problems := Parse("t.toml", []byte(src)); problems.HasErrors() {
			t.Errorf("%.40q: %s", src, messages(problems))
		}
	}
}

// A message stays a line, whatever it quotes.
func TestLongMessages(t *testing.T) {
	long := strings.Repeat("9", 1_000_000)
	for _, src := range []string{"a = " + long, "a = 0." + long + "e999", "a = 2026-01-01T" + long, long + " " + long} {
		_, problems := Parse("t.toml", []byte(src))
		if got := messages(problems); len(got) > 1000 || !problems.HasErrors() {
			t.Errorf("%.20q: %.300q", src, got)
		}
	}
	root, problems := mustParse(t, "a = \""+long+"\"\nb = ["+strings.Repeat("1,", 1000)+"]")
	root.Choice("a", Required, "x")
	root.Name("a", Required)
	root.Title("a", Required)
	root.Date("a", Required)
	root.Length("a", Required, door)
	root.Text("b", Required)
	for _, d := range problems.Sorted() {
		if len(d.Msg) > 300 {
			t.Errorf("%d bytes: %.300q", len(d.Msg), d.Msg)
		}
	}
}

// All keys that are set twice are reported at once, with the first place.
func TestTwiceHasNotes(t *testing.T) {
	_, problems := Parse("t.toml", []byte("a = 1\nb = 2\na = 3\nb = 4\n[c]\n[c]\n"))
	want := `t.toml:3:1: error: a: this key is set twice
t.toml:1:1: note: it was first set here
t.toml:4:1: error: b: this key is set twice
t.toml:2:1: note: it was first set here
t.toml:6:2: error: the table [c] is opened twice; put all of it under one header
t.toml:5:2: note: it was first opened here
`
	if got := messages(problems); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// Thousands of open brackets overflow no stack.
func TestDeepNesting(t *testing.T) {
	for _, open := range []string{"[", "{a=", "[{a=", "[\n", "[ #\n"} {
		src := "a = " + strings.Repeat(open, 1_000_000/len(open))
		if root, problems := Parse("t.toml", []byte(src)); root != nil || !problems.HasErrors() {
			t.Errorf("%q without end is accepted", open)
		}
		closed := map[string]string{"[": "]", "{a=": "}", "[{a=": "}]", "[\n": "]", "[ #\n": "]"}[open]
		src = "a = " + strings.Repeat(open, 2000) + "1" + strings.Repeat(closed, 2000)
		_, problems := Parse("t.toml", []byte(src))
		if got := messages(problems); !strings.Contains(got, "deep") {
			t.Errorf("2000 times %q: %s", open, got)
		}
	}
}

// The line ends of any system and a byte order mark move nothing.
func TestPositionsWithMarkAndLineEnds(t *testing.T) {
	for _, src := range []string{"\ufeffa = 1\nb = true", "a = 1\r\nb = true\r\n", "\ufeff\ta = 1\r\nb = true"} {
		root, _ := mustParse(t, src)
		if got, want := root.ValuePos("b"), (diag.Pos{File: "t.toml", Line: 2, Col: 5}); got != want {
			t.Errorf("%q: b is at %v, want %v", src, got, want)
		}
		if line, ok := Line([]byte(src), 2); line != "b = true" || !ok {
			t.Errorf("line 2 of %q is %q, %v", src, line, ok)
		}
	}
}

func TestLine(t *testing.T) {
	src := []byte("\ufeffone\n\nthree\r\n")
	for line, want := range map[int]string{1: "one", 2: "", 3: "three", 4: ""} {
		if got, ok := Line(src, line); got != want || !ok {
			t.Errorf("line %d is %q, %v; want %q", line, got, ok, want)
		}
	}
	for _, line := range []int{-1, 0, 5} {
		if got, ok := Line(src, line); ok {
			t.Errorf("line %d is %q", line, got)
		}
	}
}

// A hint is given only for the slips that it is about.
func TestHint(t *testing.T) {
	for _, line := range []string{"a = ", "a", "= 5ft", `a = "x" y`, "a = [5ft]", "a = {b = 5ft}", "# a = 5ft", "a = # 5ft", `a = "5ft"" `, "a = .5", "a = 01", "a = True", "a = 1 b = 2"} {
		if got := hint(line, len(line)); got != "" {
			t.Errorf("%q gets %q", line, got)
		}
	}
	for line, col := range map[string]int{"a b = 5ft": 2, "a = 5ft # \x01": 10} {
		if got := hint(line, col); got != "" {
			t.Errorf("a fault outside the value of %q gets %q", line, got)
		}
	}
}

// FuzzParse asks every getter about every key. None panics, all places are
// inside the file, and the parser's text of each string is the decoder's.
func FuzzParse(f *testing.F) {
	for _, src := range []string{
		"a = 1\n[[b]]\nc = \"8ft\"\n[[b]]\nd = [[\"1ft\", 2], {e = 2026-01-01}]\n",
		"\ufeffa.b.\"c d\" = '''\nx\\ny'''\r\nt = 07:32:00\n", "a = \"\"\"\\\n  \\u00e9\\\"x\"\"\"\"\"\n",
		"a.b=1\n[a]\n", "[a]\n[a]\n", "a = {b=1}\na.c=2", "a = nan\nb = -inf\nc = 0x1F\nd = 1e9", "a = [ # x\n [], [[\n]]]", "\"\" = \"\\x41\\e\"",
	} {
		f.Add([]byte(src))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		root, problems := Parse("t.toml", src)
		if (root == nil) != problems.HasErrors() {
			t.Fatalf("%q: table %v\n%s", src, root, messages(problems))
		}
		if root != nil {
			askAll(t, root)
			root.Done()
		}
		for _, d := range problems.Sorted() {
			if _, ok := Line(src, d.Pos.Line); !ok && d.Pos.Line != 0 || d.Pos.Line > 0 && d.Pos.Col < 1 {
				t.Fatalf("%q: %v", src, d)
			}
			if strings.Contains(d.Msg, "understand this differently") {
				t.Fatalf("%q: %v", src, d)
			}
		}
	})
}

// askAll calls every getter for every key of t, and for one that is missing.
func askAll(t *testing.T, table *Table) {
	wide := measure.Range{Min: -measure.MaxParsed, Max: measure.MaxParsed}
	for _, key := range append(table.Keys(), "no such key") {
		table.Has(key)
		table.Kind(key)
		table.KeyPos(key)
		table.TextOr(key, "")
		table.Name(key, Required)
		table.Title(key, Optional)
		table.Choice(key, Required, "door", "window")
		table.Date(key, Optional)
		table.Length(key, Required, wide)
		table.Int(key, Optional, 0, 9)
		table.Number(key, Required, -1, 1)
		table.Bool(key, Optional)
		table.Texts(key, Optional)
		table.Lengths(key, Required, wide)
		table.Warnf(key, "a warning")
		if text, ok := table.Text(key, Optional); ok {
			checkOffsets(t, table, key, text)
		}
		tables, _ := table.Tables(key, Optional)
		if inner, ok := table.Table(key, Required); ok {
			tables = append(tables, inner)
		}
		if array, ok := table.Array(key, Optional); ok {
			tables = append(tables, array)
		}
		for _, inner := range tables {
			askAll(t, inner)
		}
	}
}

// checkOffsets checks that a byte of a text is found where it is written,
// unless it is part of an escape.
func checkOffsets(t *testing.T, table *Table, key, text string) {
	e := table.entries[key]
	raw := table.doc.src[e.offset : e.offset+e.length]
	for i := range len(text) {
		at := rawOffset(raw, i)
		if raw[at] != text[i] && bytes.IndexByte(raw, '\\') < 0 {
			t.Fatalf("byte %d of %q is not byte %d of %q", i, text, at, raw)
		}
	}
	if end := rawOffset(raw, len(text)); raw[end] != raw[0] {
		t.Fatalf("the end of %q is not byte %d of %q", text, end, raw)
	}
}
