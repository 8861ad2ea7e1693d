package diag

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	known := []string{"height", "width", "wall", "at", "hinge", "swing", "stud_depth", "kitchen", "x"}
	tests := []struct{ word, want string }{
		{"heigth", "height"},
		{"hieght", "height"},
		{"Width", "width"},
		{"WIDHT", "width"},
		{"ta", "at"},
		{"walls", "wall"},
		{"stud-depth", "stud_depth"},
		{"kichen", "kitchen"},
		{"kit", ""},
		{"y", ""},
		{"X", "x"},
		{"zz", ""},
		{"", ""},
		{"\xff\xfe\xfd", ""},
		{strings.Repeat("wall", 1<<20), ""},
	}
	for _, tt := range tests {
		if got, ok := Nearest(tt.word, known); got != tt.want || ok != (tt.want != "") {
			t.Errorf("Nearest(%.20q) = %q, %v; want %q", tt.word, got, ok, tt.want)
		}
	}
	if got, ok := Nearest("a", nil); ok {
		t.Errorf("of no words %q is near", got)
	}
}

// The order of the known words does not matter, also where two are equally
// near.
func TestNearestIsDeterministic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		known := rapid.SliceOfN(rapid.StringMatching("[a-cA]{1,4}"), 1, 6).Draw(t, "known")
		word := rapid.StringMatching("[a-c]{1,4}").Draw(t, "word")
		got, ok := Nearest(word, known)
		slices.Sort(known)
		if again, okAgain := Nearest(word, known); got != again || ok != okAgain {
			t.Fatalf("%q and %q", got, again)
		}
	})
}

// kitten and sitting, and CA and ABC (3 where no character takes part in two
// errors, 2 otherwise), are the examples usual in texts on edit distance; they
// are quoted from memory.
func TestTypingErrors(t *testing.T) {
	tests := []struct {
		a, b string
		want int
	}{
		{"", "", 0},
		{"", "abc", 3},
		{"kitten", "sitting", 3},
		{"ca", "abc", 3},
		{"abcd", "acbd", 1},
		{"abcd", "badc", 2},
		{"saturday", "sunday", 3},
		{"räume", "raume", 1},
	}
	for _, tt := range tests {
		if got := typingErrors([]rune(tt.a), []rune(tt.b)); got != tt.want {
			t.Errorf("%q and %q: %d, want %d", tt.a, tt.b, got, tt.want)
		}
	}
}

// slowErrors is the definition of the distance, without a table.
func slowErrors(a, b string) int {
	if a == "" || b == "" {
		return len(a) + len(b)
	}
	m, n := len(a)-1, len(b)-1
	mistaken := slowErrors(a[:m], b[:n])
	if a[m] != b[n] {
		mistaken++
	}
	least := min(mistaken, slowErrors(a[:m], b)+1, slowErrors(a, b[:n])+1)
	if m > 0 && n > 0 && a[m] == b[n-1] && a[m-1] == b[n] {
		least = min(least, slowErrors(a[:m-1], b[:n-1])+1)
	}
	return least
}

func TestTypingErrorsAgainstDefinition(t *testing.T) {
	word := rapid.StringMatching("[a-c]{0,6}")
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		if got, want := typingErrors([]rune(a), []rune(b)), slowErrors(a, b); got != want {
			t.Fatalf("%q and %q: %d, want %d", a, b, got, want)
		}
	})
}

func BenchmarkNearest(b *testing.B) {
	known := []string{"height", "width", "wall", "at", "hinge", "swing", "stud_depth", "kitchen", "x"}
	for b.Loop() {
		if _, ok := Nearest("stud-depht", known); !ok {
			b.Fatal("nothing is near")
		}
	}
}
