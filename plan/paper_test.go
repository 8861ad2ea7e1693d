package plan

import "testing"

// Sheets are drawn on the paper that the job names, or on the largest that an
// office has where the house is (common practice, no source).
func TestPaper(t *testing.T) {
	imperial, metric := houses(t)
	for _, tt := range []struct {
		keys, house string
		want        Paper
	}{
		{"", imperial, Tabloid},
		{"", metric, A3},
		{"[sheets]", imperial, Tabloid},
		{"[sheets]\npaper = \"letter\"", imperial, Letter},
		{"[sheets]\npaper = \"tabloid\"", metric, Tabloid},
		{"[sheets]\npaper = \"a4\"", imperial, A4},
		{"[sheets]\npaper = \"a3\"", imperial, A3},
	} {
		if got := jobOf(t, tt.keys, tt.house).Paper; got != tt.want {
			t.Errorf("%q: paper %v, want %v", tt.keys, got, tt.want)
		}
	}
}
