package source

import (
	"testing"

	"pgregory.net/rapid"
)

// A string put together from random pieces, of which what is written and what
// is meant are known, has each piece where it was written.
func TestRawOffsetAgainstPieces(t *testing.T) {
	type piece struct{ raw, value string }
	basic := []piece{
		{"a", "a"},
		{"é", "é"},
		{"'", "'"},
		{`\n`, "\n"},
		{`\"`, `"`},
		{`\\`, `\`},
		{`\e`, "\x1b"},
		{`\x7e`, "~"},
		{`\xe9`, "é"},
		{`\u2603`, "☃"},
		{`\U0001F600`, "😀"},
	}
	several := append([]piece{{"\n", "\n"}, {"\\\n \t ", ""}, {"\\ \n\n", ""}}, basic...)
	literal := []piece{{"a", "a"}, {"é", "é"}, {`"`, `"`}, {`\n`, `\n`}, {"☃", "☃"}}
	forms := []struct {
		open, end string
		pieces    []piece
	}{{`"`, `"`, basic}, {`"""`, `"""`, several}, {"\"\"\"\n", `"""`, several}, {"'", "'", literal}, {"'''\r\n", "'''", literal}}
	rapid.Check(t, func(t *rapid.T) {
		form := rapid.SampledFrom(forms).Draw(t, "form")
		// The first piece keeps a line end from being part of the opening.
		pieces := append([]piece{{"x", "x"}}, rapid.SliceOfN(rapid.SampledFrom(form.pieces), 0, 8).Draw(t, "pieces")...)
		raw, value, starts := form.open, "", map[int]int{}
		dropped := false // an escaped line end drops those that follow as well
		for _, p := range pieces {
			if dropped && p.value == "\n" && p.raw == "\n" {
				p.value = ""
			}
			if dropped = p.value == ""; !dropped {
				starts[len(value)] = len(raw)
			}
			raw, value = raw+p.raw, value+p.value
		}
		root, problems := Parse("t.toml", []byte("k = "+raw+form.end))
		if root == nil {
			t.Fatalf("%q: %s", raw, messages(problems))
		}
		if got, _ := root.Text("k", Required); got != value {
			t.Fatalf("%q means %q, not %q", raw, got, value)
		}
		for valueAt, rawAt := range starts {
			if got := rawOffset([]byte(raw+form.end), valueAt); got != rawAt {
				t.Fatalf("byte %d of %q: %d in %q, want %d", valueAt, value, got, raw, rawAt)
			}
		}
	})
}
