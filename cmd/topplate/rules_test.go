package main

import (
	"bytes"
	"strings"
	"testing"

	"topplate/plan/rule"
)

// The reference is printed from the records: a line for each limit and each
// rule, with where it comes from.
func TestRulesPrintsEverySource(t *testing.T) {
	var out, errs bytes.Buffer
	if got := run([]string{"rules"}, &out, &errs); got != exitOK {
		t.Fatalf("exits with %d: %s", got, errs.String())
	}
	lines := map[string]string{}
	for line := range strings.Lines(out.String()) {
		if cells := strings.Split(line, " | "); len(cells) > 2 {
			lines[strings.TrimPrefix(cells[0], "| ")] = line
		}
	}
	for _, l := range rule.Limits {
		if line := lines[string(l.ID)]; !strings.Contains(line, " | "+l.Source.String()+" | ") {
			t.Errorf("%s is printed as %q, want its source %s", l.ID, line, l.Source)
		}
	}
	for _, r := range rule.Rules {
		line := lines[string(r.ID)]
		if !strings.Contains(line, " | "+r.Source.String()+" | ") || !strings.Contains(line, " | "+r.Severity.String()+" | ") || strings.Count(line, "|") != 6 {
			t.Errorf("%s is printed as %q, want its source %s", r.ID, line, r.Source)
		}
	}
}
