package source

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

var door = measure.Range{Min: 1 * measure.Foot, Max: 20 * measure.Foot}

// Values come out as they are written.
func TestGetters(t *testing.T) {
	root, problems := mustParse(t, `
text = "a\tb"
length = "12ft 6-1/2in"
int = -3
float = 2.5
yes = true
choice = "door"
name = "7.north-wall_B"
title = "Küche 2½ \"big\""
day = 2026-03-31
daytext = "2024-02-29"
texts = ["a", "b"]
lengths = ["1ft", "3.81m"]
none = []
`)
	got := map[string]any{}
	put := func(key string) func(any, bool) {
		return func(value any, ok bool) {
			if got[key] = value; !ok {
				t.Errorf("%s is refused", key)
			}
		}
	}
	put("text")(root.Text("text", Required))
	put("length")(root.Length("length", Required, door))
	put("int")(root.Int("int", Required, -3, -3))
	put("float")(root.Number("float", Required, 2.5, 2.5))
	put("int as number")(root.Number("int", Required, math.Inf(-1), math.Inf(1)))
	put("yes")(root.Bool("yes", Required))
	put("choice")(root.Choice("choice", Required, "window", "door"))
	put("name")(root.Name("name", Required))
	put("title")(root.Title("title", Required))
	put("day")(root.Date("day", Required))
	put("daytext")(root.Date("daytext", Required))
	put("texts")(root.Texts("texts", Required))
	put("lengths")(root.Lengths("lengths", Required, door))
	put("none")(root.Texts("none", Required))

	at := func(line, col int) diag.Pos { return diag.Pos{File: "t.toml", Line: line, Col: col} }
	want := map[string]any{
		"text": "a\tb", "length": 12*measure.Foot + 6*measure.Inch + measure.Inch/2,
		"int": -3, "int as number": -3.0, "float": 2.5, "yes": true, "choice": "door",
		"name": "7.north-wall_B", "title": `Küche 2½ "big"`, "day": "2026-03-31", "daytext": "2024-02-29",
		"texts":   []Item[string]{{"a", at(12, 10)}, {"b", at(12, 15)}},
		"lengths": []Item[measure.Length]{{measure.Foot, at(13, 12)}, {3810 * measure.Millimetre, at(13, 19)}},
		"none":    []Item[string](nil),
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	if root.Done(); len(problems.Sorted()) != 0 {
		t.Error(messages(problems))
	}
}

// What is optional and missing is no fault and no value.
func TestOptional(t *testing.T) {
	root, problems := mustParse(t, "")
	for key, ask := range readers {
		if ask(root, key, Optional) {
			t.Errorf("%s: a missing key is ok", key)
		}
	}
	if got := root.TextOr("text", "else"); got != "else" {
		t.Errorf("TextOr gives %q", got)
	}
	if all := problems.Sorted(); len(all) != 0 {
		t.Error(messages(problems))
	}
}

// readers calls each getter in one way.
var readers = map[string]func(t *Table, key string, need Need) bool{
	"text":    func(t *Table, key string, need Need) bool { _, ok := t.Text(key, need); return ok },
	"length":  func(t *Table, key string, need Need) bool { _, ok := t.Length(key, need, door); return ok },
	"int":     func(t *Table, key string, need Need) bool { _, ok := t.Int(key, need, 1, 8); return ok },
	"number":  func(t *Table, key string, need Need) bool { _, ok := t.Number(key, need, 0, 1.5); return ok },
	"bool":    func(t *Table, key string, need Need) bool { _, ok := t.Bool(key, need); return ok },
	"choice":  func(t *Table, key string, need Need) bool { _, ok := t.Choice(key, need, "door", "window"); return ok },
	"name":    func(t *Table, key string, need Need) bool { _, ok := t.Name(key, need); return ok },
	"title":   func(t *Table, key string, need Need) bool { _, ok := t.Title(key, need); return ok },
	"date":    func(t *Table, key string, need Need) bool { _, ok := t.Date(key, need); return ok },
	"texts":   func(t *Table, key string, need Need) bool { _, ok := t.Texts(key, need); return ok },
	"lengths": func(t *Table, key string, need Need) bool { _, ok := t.Lengths(key, need, door); return ok },
	"array":   func(t *Table, key string, need Need) bool { _, ok := t.Array(key, need); return ok },
	"table":   func(t *Table, key string, need Need) bool { _, ok := t.Table(key, need); return ok },
	"tables":  func(t *Table, key string, need Need) bool { _, ok := t.Tables(key, need); return ok },
}

// The key names the getter; the § stands where the fault is reported, which
// for what is missing is the table.
func TestGetterErrors(t *testing.T) {
	tests := []struct{ key, marked, want string }{
		{"text", "§", "text: missing; want text in quotes"},
		{"text", "text = §1", "text: found the number 1; want text in quotes"},
		{"text", "text = §[]", "text: found an array of 0; want text in quotes"},
		{"text", "text = §{}", "text: found a table; want"},
		{"text", "[§text]", "text: found a table; want"},
		{"text", "[[§text]]\n[[text]]", "text: found an array of 2; want"},
		{"text", "text = §07:32:00", "text: found the date or time 07:32:00; want"},
		{"length", "§", `length: missing; want a length from 1ft to 20ft, such as "8ft"`},
		{"length", "length = §12", `length: found the number 12; a length needs a unit, such as "12ft 6in" or "8-1/2in"`},
		{"length", "length = §3.81", `length: found the number 3.81; a length needs a unit, such as "12ft 6in" or "8-1/2in"`},
		{"length", "length = §true", `length: found true; want a length from 1ft to 20ft, such as "8ft"`},
		{"length", `length = §"11in"`, `length: found "11in"; want a length from 1ft to 20ft, such as "8ft"`},
		{"length", `length = §"-2ft"`, `length: found "-2ft"; want a length from 1ft`},
		{"length", `length = "12§"`, `found no unit after "12"`},
		{"length", `length = '12§'`, `found no unit after "12"`},
		{"length", `length = "\u00312ft §99in"`, `found "99in" after feet`},
		{"length", "length = '''\n\n12ft\n§99in'''", `found "99in" after feet`},
		{"int", "§", "int: missing; want a whole number from 1 to 8"},
		{"int", "int = §9", "int: found the number 9; want a whole number from 1 to 8"},
		{"int", "int = §0x0", "int: found the number 0x0; want"},
		{"int", "int = §2.0", "int: found the number 2.0; want"},
		{"int", `int = §"2"`, `int: found "2"; want`},
		{"int", "int = §-9223372036854775808", "int: found the number -9223372036854775808; want"},
		{"number", "§", "number: missing; want a number from 0 to 1.5"},
		{"number", "number = §nan", "number: found the number nan; want a number from 0 to 1.5"},
		{"number", "number = §-inf", "number: found the number -inf; want"},
		{"number", "number = §1.6", "number: found the number 1.6; want"},
		{"number", "number = §-1", "number: found the number -1; want"},
		{"number", `number = §"1"`, `number: found "1"; want`},
		{"bool", "§", "bool: missing; want true or false"},
		{"bool", `bool = §"true"`, `bool: found "true"; want true or false, without quotes`},
		{"choice", "§", `choice: missing; want "door" or "window"`},
		{"choice", `choice = §"dor"`, `choice: found "dor"; want "door" or "window"; did you mean "door"?`},
		{"choice", `choice = §"Window"`, `choice: found "Window"; want "door" or "window"; did you mean "window"?`},
		{"choice", `choice = §"hatch"`, `choice: found "hatch"; want "door" or "window"`},
		{"choice", "choice = §1", `choice: found the number 1; want "door" or "window"`},
		{"name", "§", "name: missing; want a name of 1 to 40 letters"},
		{"name", `name = "§"`, `name: found ""; want a name`},
		{"name", `name = "north§ wall"`, `name: found "north wall"; want a name`},
		{"name", `name = "§-north"`, `name: found "-north"; want a name`},
		{"name", `name = "n§ördlich"`, `name: found "nördlich"; want a name`},
		{"name", `name = "a1234567890123456789012345678901234567890"`[:48] + `§0"`, "name: found"},
		{"name", "name = §true", "name: found true; want a name"},
		{"title", "§", "title: missing; want a text of 1 to 200 characters"},
		{"title", `title = §" "`, `title: found 1 characters, " "; want`},
		{"title", `title = "a§\u001bc"`, "title: found the control character U+001B; want"},
		{"title", "title = \"a§\u202ec\"", "title: found the control character U+202E; want"},
		{"title", "title = '''a§\nb'''", "title: found the control character U+000A; want"},
		{"title", "title = §7", "title: found the number 7; want"},
		{"date", "§", "date: missing; want a date as YYYY-MM-DD, such as 2026-03-31"},
		{"date", `date = §"2026-02-30"`, `date: found "2026-02-30"; want a date`},
		{"date", `date = §"31.3.2026"`, `date: found "31.3.2026"; want a date`},
		{"date", "date = §2026-03-31T07:00:00Z", "date: found the date or time 2026-03-31T07:00:00Z; want a date"},
		{"date", "date = §20260331", "date: found the number 20260331; want a date"},
		{"texts", "§", `texts: missing; want an array of texts, such as ["a", "b"]`},
		{"texts", `texts = §"a"`, `texts: found "a"; want an array of texts`},
		{"texts", `texts = ["a", §2, "c"]`, "texts[1]: found the number 2; want text in quotes"},
		{"lengths", "§", `lengths: missing; want an array of lengths, such as ["8ft", "8ft"]`},
		{"lengths", "lengths = [\n \"1ft\", # one\n §2\n]", "lengths[1]: found the number 2; a length needs a unit"},
		{"lengths", `lengths = ["1ft", "2§fe"]`, `lengths[1]: found unknown unit "fe"`},
		{"array", "§", "array: missing; want an array in [ ]"},
		{"array", "[§array]", "array: found a table; want an array in [ ]"},
		{"table", "§", "table: missing; want a table [table]"},
		{"table", "table = §1", "table: found the number 1; want a table [table]"},
		{"table", "[[§table]]", "table: found an array of 1; want one table: [table], with single brackets"},
		{"table", "[[§table]]\n[[table]]", "table: found an array of 2; want one table: [table], with single brackets"},
		{"tables", "§", "tables: missing; want one or more tables [[tables]], with double brackets"},
		{"tables", "[§tables]", "tables: found a table; want one or more tables [[tables]], with double brackets"},
		{"tables", "tables = [{}, §1]", "tables[1]: found the number 1; want a table"},
	}
	for _, tt := range tests {
		src, pos := unmark(t, tt.marked)
		root, problems := mustParse(t, src)
		if readers[tt.key](root, tt.key, Required) {
			t.Errorf("%q is accepted", src)
		}
		wantOne(t, src, problems, pos, tt.want)
	}
}

func TestTitleOf200Characters(t *testing.T) {
	for n, want := range map[int]bool{maxTitle: true, maxTitle + 1: false} {
		text := ""
		for range n {
			text += "é"
		}
		root, _ := mustParse(t, "title = \""+text+"\"")
		if _, ok := root.Title("title", Required); ok != want {
			t.Errorf("%d characters: %v", n, ok)
		}
	}
}

// The example in a message is one that would be accepted.
func TestExampleLength(t *testing.T) {
	for want, r := range map[[2]string]measure.Range{
		{"8ft", "2.4m"}:       door,
		{"1ft 4in", "400mm"}:  {Min: 0, Max: 2 * measure.Foot},
		{"3-1/2in", "90mm"}:   {Min: 1, Max: measure.Foot},
		{"3/4in", "20mm"}:     {Min: 0, Max: measure.Inch},
		{"1/8in", ""}:         {Min: measure.Inch / 8, Max: measure.Inch / 4},
		{"100ft", "30.480 m"}: {Min: 100 * measure.Foot, Max: 200 * measure.Foot},
		{"", "5 mm"}:          {Min: 5 * measure.Millimetre, Max: 7 * measure.Millimetre},
	} {
		for units, text := range want {
			if got := exampleLength(r, measure.System(units)); text != "" && (got != text || !r.Contains(mustLength(t, got))) {
				t.Errorf("for %v: %s, want %s", r, got, text)
			}
		}
	}
}

func mustLength(t *testing.T, s string) measure.Length {
	t.Helper()
	l, err := measure.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// A house of 300 walls, 45 kB.
func BenchmarkParse(b *testing.B) {
	src := ""
	for range 300 {
		src += "[[wall]]\nid = \"north\"\nrun = \"E 12ft 6in, N 8ft\"\nheight = \"8ft 1in\"\nopening = [{ kind = \"door\", at = \"3ft 2in\", width = \"32in\" }]\n\n"
	}
	b.SetBytes(int64(len(src)))
	for b.Loop() {
		root, problems := Parse("house.toml", []byte(src))
		if root == nil {
			b.Fatal(messages(problems))
		}
		walls, _ := root.Tables("wall", Required)
		for _, w := range walls {
			if _, ok := w.Length("height", Required, door); !ok {
				b.Fatal(messages(problems))
			}
		}
	}
}
