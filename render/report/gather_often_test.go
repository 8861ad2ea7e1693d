package report

import (
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/route/tasks"
)

// Drops that follow each other are named by two of them only where no other drop
// of the job is between these.
func TestSpans(t *testing.T) {
	job := &plan.Job{}
	for _, tag := range strings.Fields("B1 A1 A2 A3 A10 A4 C1 C3 C2 S1") {
		job.Drops = append(job.Drops, plan.Drop{Tag: tag})
	}
	for _, c := range [][2]string{
		{"A1 A2 A3", "A1 to A3"},
		{"A1 A2", "A1|A2"},
		{"A1 A2 A4 A10", "A1|A2|A4|A10"},
		{"A2 A3 A4 A10 B1", "A2 to A10|B1"},
		{"A4 A10 B1 C1 C2 C3 S1", "A4|A10|B1|C1 to C3|S1"},
		{"S1", "S1"},
		{"", ""},
	} {
		if got := strings.Join(Spans(job, strings.Fields(c[0])), "|"); got != c[1] {
			t.Errorf("%q is %q, want %q", c[0], got, c[1])
		}
	}
}

// unspanned are the drops that a text names, one by one.
func unspanned(job *plan.Job, text string) []string {
	words := tokens(text)
	out := append(slices.Clone(words), "and", ",")
	for i := 1; i+1 < len(words); i++ {
		if words[i] != "to" {
			continue
		}
		for _, d := range job.Drops {
			if letters(d.Tag) == letters(words[i-1]) && letters(d.Tag) == letters(words[i+1]) {
				out = append(out, d.Tag)
			}
		}
	}
	return out
}

// In the samples every step of every visit is told in its order, by words of its
// own, by those that it shares with its neighbours or by those said once for all.
func TestGatheringVisitsLosesNothing(t *testing.T) {
	for _, path := range jobs {
		w := sample(t, path)
		told, visits := GatherVisits(w.Job, w.Tasks)
		full := map[string]string{}
		for _, o := range told {
			if !strings.HasPrefix(o.Words, o.Short) || full[o.Short] != "" {
				t.Errorf("%q names %q, and %q", o.Short, o.Words, full[o.Short])
			}
			full[o.Short] = o.Words
		}
		rows, steps := 0, 0
		for i := range w.Tasks.Visits {
			rest := w.Tasks.Visits[i].Steps
			steps += len(rest)
			for _, g := range visits[i] {
				rows++
				for k := range g.Steps {
					said := g.Words
					if g.Often {
						said = full[g.Words]
					}
					if len(g.Items) > 0 {
						said += " " + g.Items[k]
					}
					if g.Steps[k].Number != rest[0].Number {
						t.Fatalf("step %s is where %s is due", g.Steps[k].Number, rest[0].Number)
					}
					words := unspanned(w.Job, said)
					for _, word := range tokens(rest[0].Words) {
						if !slices.Contains(words, word) {
							t.Errorf("%q of %q is not in %q", word, rest[0].Words, said)
						}
					}
					rest = rest[1:]
				}
			}
			if len(rest) > 0 {
				t.Fatalf("visit %d: %d steps are left out", i+1, len(rest))
			}
		}
		if steps > 200 && (len(told) < 5 || rows*2 > steps) {
			t.Errorf("%s: %d steps in %d rows, %d of them told once", path, steps, rows, len(told))
		}
	}
}

// What comes in fewer than three visits is told where it is, and steps of one
// kind but other words are told apart.
func TestOften(t *testing.T) {
	visit := func(n string, words ...string) []tasks.Step {
		out := stepsOf(tasks.Seal, words...)
		for i := range out {
			out[i].Number = n + "." + string(rune('1'+i))
		}
		return out
	}
	got := often([][]tasks.Step{
		visit("1", "Seal H1 round the cables.", "Seal the sleeve of H2 against the weather."),
		visit("2", "Seal H3 round the cables.", "Close the hole H9."),
		visit("3", "Seal H4 round the cables.", "Seal H5 round the cables.", "Close the hole H8."),
	})
	if len(got) != 1 || got[0].often != (Often{"Seal", "Seal … round the cables."}) || len(got[0].of) != 4 || got[0].items["3.2"] != "H5" {
		t.Errorf("%+v", got)
	}
}
