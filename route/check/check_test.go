package check

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"topplate/plan/rule"
)

// A finding warns, and never says that something is in order.
var claims = regexp.MustCompile(`(?i)\b(compl(y|ies|iant)|guarantee|certif|to code|is safe|permitted)\b`)

// Each rule has a job that breaks it alone, and one on the limit that keeps
// it.
func TestRulesAtTheirLimits(t *testing.T) {
	base := Findings(solved(t))
	if len(base) != 1 || base[0].Rule != rule.SealHoles || !strings.HasSuffix(base[0].Found, ": H1 and H2") {
		t.Fatalf("the base breaks %+v", base)
	}
	for _, tt := range trials {
		t.Run(string(tt.rule)+" "+tt.source, func(t *testing.T) {
			keeps := Findings(solved(t, edits(tt.with, tt.keeps)...))
			if f := find(keeps, tt.rule); f != nil {
				t.Errorf("on the limit it is broken: %s", f.Found)
			}
			breaks := Findings(solved(t, edits(tt.with, tt.breaks)...))
			f := find(breaks, tt.rule)
			if f == nil {
				t.Fatalf("beyond the limit it is kept: %v", rulesOf(breaks))
			}
			if !strings.Contains(f.Found, tt.found) {
				t.Errorf("found %q, want %q", f.Found, tt.found)
			}
			if m := claims.FindString(f.Found + f.Change); m != "" {
				t.Errorf("%q claims too much", f.Found)
			}
			if f.Pos.Line == 0 || f.Where == "" {
				t.Errorf("%+v has no place", f)
			}
			more := rulesOf(breaks)
			for _, id := range slices.Concat(rulesOf(keeps), tt.also, []rule.ID{tt.rule}) {
				more = slices.DeleteFunc(more, func(m rule.ID) bool { return m == id })
			}
			if len(more) > 0 {
				t.Errorf("it breaks %v as well", more)
			}
		})
	}
}
