package compare_test

import (
	"slices"
	"strings"
	"testing"

	"topplate/route/compare"
)

// levels is a house of three levels with a crawl space and two attics.
const levels = "../tasks/testdata/levels"

// Levels, spaces and roofs are told by their names where there are several, and
// things with the space that they are in.
func TestSeveralLevelsAndSpaces(t *testing.T) {
	plain := edited(t, levels)
	for _, c := range []struct {
		name  string
		edits []edit
		told  []string
	}{
		{"nothing", nil, nil},
		{"crawl space higher", []edit{{house, "crawl = \"26in\"", "crawl = \"30in\""}}, []string{"crawl space crawl changed 0in height: 2ft 2in > 2ft 6in"}},
		{"floor above", []edit{{house, "floor = \"8ft 10-5/8in\"", "floor = \"8ft 10-3/8in\""}}, []string{"level upper changed 0in floor: 8ft 10-5/8in > 8ft 10-3/8in", "attic high changed 0in base: 16ft 11-1/4in > 16ft 11in"}},
		{"lower roof", []edit{{house, "pitch = \"3/12\"", "pitch = \"4/12\""}}, []string{"roof lean changed 0in pitch: 3/12 > 4/12"}},
		{"ceiling closed", []edit{{house, "ceiling = \"open\"\n", ""}}, []string{"room cellar changed 0in open ceiling: yes > no"}},
		{"mark in another space", []edit{{house, "seen = \"both\"", "seen = \"both\"\nspace = \"over-cellar\""}}, []string{"mark pipe changed 0in space: between > over-cellar"}},
		{"hatch from outside gone", []edit{{house, "[[hatch]]\nid = \"crawl-door\"\nspace = \"crawl\"\noutside = true\nat = [\"38ft\", \"12ft\"]\nsize = [\"30in\", \"30in\"]\n", ""}}, []string{"hatch crawl-door gone 0in"}},
	} {
		d := compare.Of(worked(t, plain), worked(t, edited(t, levels, c.edits...)))
		// What follows for drops comes after it.
		got := slices.DeleteFunc(told(d), func(s string) bool { return strings.HasPrefix(s, "drop ") })
		if !slices.Equal(got, c.told) {
			t.Errorf("%s: told %q, want %q", c.name, got, c.told)
		}
	}
	d := compare.Of(worked(t, edited(t, starter)), worked(t, plain))
	got := strings.Join(told(d), "\n")
	for _, want := range []string{"outline", "level basement added", "attic attic gone", "attic high added", "floor between added", "crawl space crawl added", "roof lean added"} {
		if !strings.Contains(got, want) {
			t.Errorf("against a house of one level: no %q in\n%s", want, got)
		}
	}
}
