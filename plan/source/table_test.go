package source

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/diag"
)

// walk descends a path of keys from the root; elements of arrays are numbers.
func walk(t *testing.T, root *Table, path string) (*Table, string) {
	t.Helper()
	keys := strings.Fields(path)
	for _, key := range keys[:len(keys)-1] {
		e := root.entries[key]
		if e == nil || e.table == nil {
			t.Fatalf("no table %q in %q", key, path)
		}
		root = e.table
	}
	return root, keys[len(keys)-1]
}

// The § stands before the value, or before the key where the path ends in a
// colon.
func TestPositions(t *testing.T) {
	tests := []struct{ path, marked, dotted string }{
		{"a", "a = §1", "a"},
		{"a:", "x = 2\n  §a = 1", "a"},
		{"b c", "[b]\nc =\t§\"x\"", "b.c"},
		{"b c:", "b.§c = 1", "b.c"},
		{"b:", "§b.c = 1", "b"},
		{"b", "[ §b ]", "b"},
		{"b c", "[b.§c]", "b.c"},
		{"b c:", "b = { x = 1, §\"c\" = 2 }", "b.c"},
		{"b", "b = §{ c = 2 }", "b"},
		{"a", "a = §[ [ 1 ] ]", "a"},
		{"a 0", "a = [ §[ 1 ] ]", "a[0]"},
		{"a 1", "a = [ [ 1 ], # one\n\t§[\n 2 ] ]", "a[1]"},
		{"a 1 1", "a = [ [ 1 ], [ 2, §3 ] ]", "a[1][1]"},
		{"a 1 0 x", "a = [ [ 1 ], [ { x = §3 } ] ]", "a[1][0].x"},
		{"a 0", "a = §[ [] ]", "a[0]"},
		{"a 0", "a = [ [ # why\n §1 ] ]", "a[0]"},
		{"wall 0 at", "[[wall]]\nat = §1\n[[wall]]\nat = 2\n", "wall[0].at"},
		{"wall 1 at", "[[wall]]\nat = 1\n[[wall]]\nat = §2\n", "wall[1].at"},
		{"wall 1:", "[[wall]]\n[[§wall]]\n", "wall[1]"},
		{"wall:", "[[§wall]]\n[[wall]]\n", "wall"},
		{"wall 1 opening 0 at", "[[wall]]\n[[wall.opening]]\nat=1\n[[wall]]\n[[wall.opening]]\nat=§2\n[[wall.opening]]\nat=3", "wall[1].opening[0].at"},
		{"wall 0 x y", "[[wall]]\n[wall.x]\ny = §1\n[[wall]]\n[wall.x]\ny = 2", "wall[0].x.y"},
		{"limits bore.stud", "[limits]\n\"bore.stud\" = §1", `limits."bore.stud"`},
		{"a", "\"ä\" = 1\na = §\"ü\"", "a"},
		{"ä", "\"ä\" = §1", `"ä"`},
	}
	for _, tt := range tests {
		src, want := unmark(t, tt.marked)
		root, _ := mustParse(t, src)
		table, key := walk(t, root, strings.TrimSuffix(tt.path, ":"))
		got := table.ValuePos(key)
		if strings.HasSuffix(tt.path, ":") {
			got = table.KeyPos(key)
		}
		if got != want || table.Path(key) != tt.dotted {
			t.Errorf("%q: %s is at %v as %s, want %v as %s", src, tt.path, got, table.Path(key), want, tt.dotted)
		}
	}
}

// BurntSushi/toml v1.6.0 gives the line of the last element of an array of
// tables for a fault in any of them; here each has its own.
func TestLinesInsideArrays(t *testing.T) {
	root, problems := mustParse(t, "[[drop]]\nat = 5\n\n[[drop]]\nat = \"6ft\"\n\n[[drop]]\nat = 7\n")
	drops, ok := root.Tables("drop", Required)
	if !ok || len(drops) != 3 {
		t.Fatalf("%d drops, %v", len(drops), ok)
	}
	for _, d := range drops {
		d.Length("at", Required, door)
	}
	want := `t.toml:2:6: error: drop[0].at: found the number 5; a length needs a unit, such as "12ft 6in" or "8-1/2in"
t.toml:8:6: error: drop[2].at: found the number 7; a length needs a unit, such as "12ft 6in" or "8-1/2in"
`
	if got := messages(problems); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// What a table lacks is reported at its own header.
func TestMissingInsideArrays(t *testing.T) {
	src, pos := unmark(t, "[[wall]]\nid = \"a\"\n[[§wall]]\nstuds = \"16in\"\n[[wall]]\nid = \"c\"")
	root, problems := mustParse(t, src)
	walls, _ := root.Tables("wall", Required)
	for _, w := range walls {
		w.Name("id", Required)
	}
	wantOne(t, src, problems, pos, "wall[1].id: missing; want a name")
	if got := walls[1].Pos(); got != pos {
		t.Errorf("the table is at %v, want %v", got, pos)
	}
}

// The byte of the value at the offset is written at §.
func TestValuePosAt(t *testing.T) {
	tests := []struct {
		marked string
		offset int
	}{
		{`k = "§abc"`, 0},
		{`k = "§abc"`, -1},
		{`k = "ab§c"`, 2},
		{`k = "abc§"`, 3},
		{`k = "abc§"`, 99},
		{`k = "§"`, 0},
		{`k = 'a\§nb'`, 2},
		{`k = "a\n§b"`, 2},
		{`k = "é§b"`, 2},
		{`k = "\u00e9§b"`, 2},
		{`k = "§\u00e9b"`, 1},
		{`k = "\U0001F600§b"`, 4},
		{`k = "\x41\e§b"`, 2},
		{`k = "\"\\§b"`, 2},
		{"k = \"\"\"§abc\"\"\"", 0},
		{"k = \"\"\"\n§abc\"\"\"", 0},
		{"k = \"\"\"\r\na§bc\"\"\"", 1},
		{"k = \"\"\"\n\n§abc\"\"\"", 1},
		{"k = \"\"\"a\\\n   \n  §bc\"\"\"", 1},
		{"k = \"\"\"a\\  \r\n §bc\"\"\"", 1},
		{"k = '''\na\n  §b'''", 4},
		{"k = \"\"\"a\"§\"\"\"\"", 2},
		{"k = '''§'''", 0},
		{"k = §12", 1},
		{"§j = 1", 0},
	}
	for _, tt := range tests {
		src, want := unmark(t, tt.marked)
		root, _ := mustParse(t, src)
		if got := root.ValuePosAt("k", tt.offset); got != want {
			t.Errorf("byte %d of %q is at %v, want %v", tt.offset, src, got, want)
		}
	}
}

func TestKinds(t *testing.T) {
	root, problems := mustParse(t, `
text = ""
integer = 1
float = 1.0
boolean = false
date = 2026-01-01
time = 07:32:00
moment = 2026-01-01T07:32:00
array = []
inline = {}
[table]
[[tables]]
`)
	want := map[string]Kind{
		"text": KindText, "integer": KindInteger, "float": KindFloat, "boolean": KindBoolean,
		"date": KindDate, "time": KindTime, "moment": KindTime, "array": KindArray,
		"inline": KindTable, "table": KindTable, "tables": KindArray, "none": KindNone,
	}
	for key, kind := range want {
		if got := root.Kind(key); got != kind {
			t.Errorf("%s is of kind %d, want %d", key, got, kind)
		}
		if got := root.Has(key); got != (kind != KindNone) {
			t.Errorf("has %s: %v", key, got)
		}
	}
	if root.Done(); len(problems.Sorted()) != 0 {
		t.Errorf("a key that was asked for is unknown:\n%s", messages(problems))
	}
}

// A key that takes two forms: a point is two lengths, or a table.
func TestArrayOfSeveralForms(t *testing.T) {
	src, pos := unmark(t, "points = [[\"1ft\", \"2ft\"], {room = \"hall\"}, [\"1ft\", §2]]")
	root, problems := mustParse(t, src)
	points, ok := root.Array("points", Required)
	if !ok {
		t.Fatal(messages(problems))
	}
	var got []string
	for _, i := range points.Keys() {
		if points.Kind(i) == KindTable {
			room, _ := points.Table(i, Required)
			name, _ := room.Name("room", Required)
			got = append(got, name)
		} else if xy, ok := points.Lengths(i, Required, door); ok {
			got = append(got, xy[0].Value.String()+" "+xy[1].Value.String())
		}
	}
	if diff := cmp.Diff([]string{"1ft 2ft", "hall"}, got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	root.Done()
	wantOne(t, src, problems, pos, "points[2][1]: found the number 2; a length needs a unit")
}

func TestKeysInOrder(t *testing.T) {
	root, problems := mustParse(t, "[limits]\nzeta = 1\nalpha = 2\n\"b.c\" = 3\nalpha2.x = 1")
	limits, _ := root.Table("limits", Required)
	if diff := cmp.Diff([]string{"zeta", "alpha", "b.c", "alpha2"}, limits.Keys()); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	limits.Keys()[0] = "changed"
	if limits.Keys()[0] != "zeta" {
		t.Error("a caller can change the keys")
	}
	if limits.Done(); len(problems.Sorted()) != 4 {
		t.Errorf("listing keys counts as asking:\n%s", messages(problems))
	}
}

// Keys are case-sensitive, and one that nobody asked for is found in every
// table that was read, once.
func TestDone(t *testing.T) {
	root, problems := mustParse(t, `
Name = "x"
[[wall]]
heigth = "8ft"
[[wall]]
height = "8ft"
opening = [{ at = "1ft", zzz = 1 }]
[roof.eave]
x = 1
[other]
y = 2
`)
	root.Text("name", Optional)
	walls, _ := root.Tables("wall", Required)
	for _, w := range walls {
		w.Length("height", Optional, door)
		w.Bool("bearing", Optional)
		openings, _ := w.Tables("opening", Optional)
		for _, o := range openings {
			o.Length("at", Required, door)
		}
		w.Done()
	}
	roof, _ := root.Table("roof", Required)
	eave, _ := roof.Table("eave", Required)
	_ = eave
	root.Done()
	want := `t.toml:2:1: error: Name: unknown key "Name"; did you mean "name"?
t.toml:4:1: error: wall[0].heigth: unknown key "heigth"; did you mean "height"?
t.toml:7:26: error: wall[1].opening[0].zzz: unknown key "zzz"; the keys here are "at"
t.toml:9:1: error: roof.eave.x: unknown key "x"; no keys are read here
t.toml:10:2: error: other: unknown key "other"; the keys here are "name", "roof" or "wall"
`
	if got := messages(problems); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// Errors of the caller stand at the value, or at the table where there is none.
func TestErrorf(t *testing.T) {
	root, problems := mustParse(t, "[[wall]]\nid = \"a\"\n")
	walls, _ := root.Tables("wall", Required)
	walls[0].Errorf("id", "is used %s", "twice").Note(diag.Pos{File: "t.toml", Line: 1, Col: 1}, "here")
	walls[0].Errorf("height", "is needed with this id")
	walls[0].Warnf("", "the wall is odd")
	want := `t.toml:1:3: error: wall[0].height: is needed with this id
t.toml:1:3: warning: wall[0]: the wall is odd
t.toml:2:6: error: wall[0].id: is used twice
t.toml:1:1: note: here
`
	if got := messages(problems); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// Where the decoded values do not fit the text, nothing is guessed.
func TestFillRefusesDisagreement(t *testing.T) {
	for _, decoded := range []map[string]any{
		{"a": "1", "b": []any{true}},
		{"b": []any{true}},
		{"a": int64(1), "b": []any{true, false}},
		{"a": int64(1), "b": map[string]any{"0": true}},
		{"a": int64(1), "b": []map[string]any{{}}},
	} {
		root, problems := mustParse(t, "a = 1\nb = [true]")
		if root.fill(decoded); len(problems.Sorted()) != 1 {
			t.Errorf("%v:\n%s", decoded, messages(problems))
		}
	}
}
