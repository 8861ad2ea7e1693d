package diag

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestPosString(t *testing.T) {
	tests := map[Pos]string{
		{"hall.toml", 14, 16}: "hall.toml:14:16",
		{"hall.toml", 0, 0}:   "hall.toml",
	}
	for pos, want := range tests {
		if got := pos.String(); got != want {
			t.Errorf("%#v is written %q, want %q", pos, got, want)
		}
	}
}

// texts are the places and messages of l in order.
func texts(l *List) []string {
	var out []string
	for _, d := range l.Sorted() {
		out = append(out, d.Pos.String()+" "+d.Severity.String()+" "+d.Key+" "+d.Msg)
	}
	return out
}

func TestSorted(t *testing.T) {
	var l List
	l.Errorf(Pos{"b.toml", 1, 1}, "k", "first of the second file")
	l.Errorf(Pos{"a.toml", 10, 1}, "k", "line %d", 10)
	l.Errorf(Pos{"a.toml", 9, 12}, "k", "column 12")
	l.Warnf(Pos{"a.toml", 9, 3}, "k", "column 3, z")
	l.Errorf(Pos{"a.toml", 9, 3}, "k", "column 3, a")
	l.Errorf(Pos{"a.toml", 9, 3}, "j", "column 3, a")
	l.Errorf(Pos{File: "a.toml"}, "", "whole file")
	want := []string{
		"a.toml error  whole file",
		"a.toml:9:3 error j column 3, a",
		"a.toml:9:3 error k column 3, a",
		"a.toml:9:3 warning k column 3, z",
		"a.toml:9:12 error k column 12",
		"a.toml:10:1 error k line 10",
		"b.toml:1:1 error k first of the second file",
	}
	if diff := cmp.Diff(want, texts(&l)); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

// What was said twice is kept once, in the words that came first, and a
// warning does not hide an error.
func TestSortedDropsRepetitions(t *testing.T) {
	var l List
	pos := Pos{"a.toml", 1, 1}
	l.Errorf(pos, "k", "same").Note(pos, "kept")
	l.Errorf(pos, "k", "other")
	l.Errorf(pos, "k", "same").Note(pos, "dropped")
	l.Warnf(pos, "k", "same")
	want := []string{"a.toml:1:1 error k other", "a.toml:1:1 error k same", "a.toml:1:1 warning k same"}
	if diff := cmp.Diff(want, texts(&l)); diff != "" {
		t.Fatalf("-want +got:\n%s", diff)
	}
	if notes := l.Sorted()[1].Notes; len(notes) != 1 || notes[0].Msg != "kept" {
		t.Errorf("notes are %v", notes)
	}
}

func TestHasErrors(t *testing.T) {
	var house, job List
	if house.HasErrors() {
		t.Error("an empty list has errors")
	}
	house.Warnf(Pos{}, "", "a warning")
	if house.HasErrors() {
		t.Error("a list of one warning has errors")
	}
	job.Errorf(Pos{}, "", "an error")
	if house.Append(&job); !house.HasErrors() {
		t.Error("the appended error is lost")
	}
}

// lines gives the lines of one file of any name.
func lines(text string) func(string, int) (string, bool) {
	return func(_ string, line int) (string, bool) {
		all := strings.Split(text, "\n")
		if line > len(all) {
			return "", false
		}
		return all[line-1], true
	}
}

func printed(t *testing.T, l *List, src func(string, int) (string, bool)) string {
	t.Helper()
	var b strings.Builder
	if err := l.Print(&b, src); err != nil {
		t.Fatal(err)
	}
	return b.String()
}
