package source

import (
	"strings"
	"testing"
)

func TestSame(t *testing.T) {
	const doc = "a = 1\nb = \"x\"\nc = [1.5, \"y\"]\nd = 2026-03-31\n[t]\ne = true\n[[u]]\nf = 1\n[[u]]\nf = 2\n"
	alike := func(_, a, b string) bool { return a == b }
	folded := func(key, a, b string) bool { return a == b || key == "c" && strings.EqualFold(a, b) }
	tests := []struct {
		other string
		equal func(key, a, b string) bool
		want  bool
	}{
		{doc, alike, true},
		{"[t]\ne = true\n[[u]]\nf = 1\n[[u]]\nf = 2\n", alike, false},
		{"c = [ 1.5,\"y\" ]\nd = 2026-03-31\nb = \"x\"\na = 1\n[[u]]\nf = 1\n[t]\ne = true\n[[u]]\nf = 2\n", alike, true},
		{strings.Replace(doc, "f = 1", "f = 3", 1), alike, false},
		{strings.Replace(strings.Replace(doc, "f = 1", "f = 3", 1), "f = 2", "f = 1", 1), alike, false},
		{strings.Replace(doc, "a = 1", "a = 1.0", 1), alike, false},
		{strings.Replace(doc, "a = 1", "z = 1", 1), alike, false},
		{strings.Replace(doc, "1.5", "1.50", 1), alike, false},
		{strings.Replace(doc, `"x"`, "7", 1), alike, false},
		{strings.Replace(doc, "a = 1", `a = "1"`, 1), alike, false},
		{strings.Replace(doc, "true", "false", 1), alike, false},
		{strings.Replace(doc, "03-31", "03-30", 1), alike, false},
		{strings.Replace(doc, `"y"`, `"Y"`, 1), alike, false},
		{strings.Replace(doc, `"y"`, `"Y"`, 1), folded, true},
		{strings.Replace(doc, `"x"`, `"X"`, 1), folded, false},
		{strings.Replace(doc, `[1.5, "y"]`, `{ 0 = 1.5, 1 = "y" }`, 1), alike, false},
	}
	a, _ := Parse("a", []byte(doc))
	for _, tt := range tests {
		b, list := Parse("b", []byte(tt.other))
		if b == nil {
			t.Fatalf("%q: %v", tt.other, list.Sorted()[0].Msg)
		}
		if got := a.Same(b, tt.equal); got != tt.want {
			t.Errorf("%q: same is %v, want %v", tt.other, got, tt.want)
		}
	}
}
