package diag

import (
	"errors"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
)

func TestPrint(t *testing.T) {
	src := "stud = \"89mm\"\n\thole = [{ d = \"40mm\" }]\nlast"
	var l List
	l.Errorf(Pos{"hall.toml", 2, 16}, "wall[0].hole[0].d", "found %q", "40mm").
		Note(Pos{"hall.toml", 1, 8}, "the stud is set here").
		Note(Pos{"job.toml", 7, 1}, "and here")
	l.Warnf(Pos{"hall.toml", 3, 99}, "", "past the end")
	l.Errorf(Pos{"hall.toml", 1000000, 1}, "", "no such line")
	l.Errorf(Pos{File: "hall.toml"}, "", "whole file")
	want := `hall.toml: error: whole file
hall.toml:2:16: error: wall[0].hole[0].d: found "40mm"
    2 |     hole = [{ d = "40mm" }]
      |                   ^
hall.toml:1:8: note: the stud is set here
job.toml:7:1: note: and here
hall.toml:3:99: warning: past the end
    3 | last
      |     ^
hall.toml:1000000:1: error: no such line
`
	if diff := cmp.Diff(want, printed(t, &l, lines(src))); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	if got := printed(t, &l, nil); strings.Contains(got, "|") || strings.Count(got, "\n") != 6 {
		t.Errorf("without the source:\n%s", got)
	}
}

// The caret stands under the byte at §, whatever comes before it.
func TestCaret(t *testing.T) {
	long := strings.Repeat("0123456789", 30)
	for _, marked := range []string{
		"§", "§a", "a§", "a = §1", "\t\ta\t=\t§1 # one", "räume = §1", "a = 'é§é'", "☃☃ = §x",
		"a\x1b[31m = §1", "\u202ea = §b", "\xff\xfe§b", long + "§|" + long, "\t" + long + "\t§|", "§|" + long, long + "é§",
	} {
		col := strings.Index(marked, "§")
		src := strings.Replace(marked, "§", "", 1)
		var l List
		l.Errorf(Pos{"f", 1, col + 1}, "", "m")
		got := strings.Split(printed(t, &l, lines(src)), "\n")
		source, caret := []rune(got[1]), []rune(got[2])
		at := len(caret) - 1
		if caret[at] != '^' || len(source) > 8+cellsBefore+cellsAfter+2 {
			t.Errorf("%.20q:\n%s\n%s", marked, got[1], got[2])
		}
		rest := append(source, ' ')[at:]
		if shown := visible(src[col:] + " "); []rune(shown)[0] != rest[0] {
			t.Errorf("caret is not under %.5q:\n%s\n%s", src[col:], got[1], got[2])
		}
	}
}

// Of a long line only the part around the caret is shown.
func TestClip(t *testing.T) {
	src := strings.Repeat("a", 500) + strings.Repeat("b", 500)
	before, after := clip(src, 500)
	if want := "…" + strings.Repeat("a", cellsBefore); before != want {
		t.Errorf("before the caret: %q", before)
	}
	if want := strings.Repeat("b", cellsAfter) + "…"; after != want {
		t.Errorf("after the caret: %q", after)
	}
	if before, after := clip("aé", 2); before != "a" || after != "é" {
		t.Errorf("the middle of a character splits it: %q %q", before, after)
	}
}

func TestVisible(t *testing.T) {
	tests := []struct{ text, want string }{
		{"räume 12' 6½\" ☃", "räume 12' 6½\" ☃"},
		{"\x1b]0;title\a", `\x1b]0;title\x07`},
		{"a\nb\r\tc\x7f", `a\x0ab\x0d\x09c\x7f`},
		{"\u0085\u009b", `\x85\x9b`},
		{"\u202eabc\u2066", `\u202eabc\u2066`},
		{"a\u2028b\u200bc", `a\u2028b\u200bc`},
		{"\xff\xc3", `\xff\xc3`},
		{"\ufffd", "\ufffd"},
		{"\U000f0000", `\uf0000`},
	}
	for _, tt := range tests {
		if got := visible(tt.text); got != tt.want {
			t.Errorf("visible(%q) = %q, want %q", tt.text, got, tt.want)
		}
	}
}

// The first 50 of each severity are printed; a flood of warnings does not hide
// an error.
func TestPrintCaps(t *testing.T) {
	var l List
	for i := range 51 {
		l.Errorf(Pos{"f", 1000 + i, 1}, "", "e")
	}
	for i := range 53 {
		l.Warnf(Pos{"f", 1 + i, 1}, "", "w")
	}
	got := printed(t, &l, nil)
	if strings.Count(got, ": error: ") != 50 || strings.Count(got, ": warning: ") != 50 {
		t.Errorf("printed\n%s", got)
	}
	if !strings.HasSuffix(got, "\nand 1 more error\nand 3 more warnings\n") {
		t.Errorf("ends in %q", got[len(got)-60:])
	}
}

type brokenPipe struct{}

func (brokenPipe) Write([]byte) (int, error) { return 0, errors.New("broken pipe") }

func TestPrintReturnsWriteError(t *testing.T) {
	var l List
	l.Errorf(Pos{"f", 1, 1}, "", "e")
	if err := l.Print(brokenPipe{}, nil); err == nil || err.Error() != "broken pipe" {
		t.Errorf("error is %v", err)
	}
}

// Whatever a file holds, a terminal gets lines of visible characters.
func FuzzPrint(f *testing.F) {
	f.Add("hall.toml", "wall[0]", "found \x1b[2J", "a = \x1b[2J\t1", 5)
	f.Add("\x9b", "\u202e", "\n\r", "\xff\xfe", -3)
	f.Fuzz(func(t *testing.T, file, key, msg, src string, col int) {
		var l List
		l.Errorf(Pos{file, 1, col}, key, "%s", msg).Note(Pos{file, 2, col}, "%s", msg)
		got := printed(t, &l, func(string, int) (string, bool) { return src, true })
		if strings.Count(got, "\n") != 4 {
			t.Fatalf("not 4 lines: %q", got)
		}
		for _, r := range got {
			if r != '\n' && !unicode.IsGraphic(r) {
				t.Fatalf("%U in %q", r, got)
			}
		}
	})
}
