package report

import (
	"slices"
	"strings"
	"testing"

	"topplate/route/tasks"
)

func stepsOf(kind tasks.Kind, words ...string) []tasks.Step {
	var out []tasks.Step
	for _, w := range words {
		out = append(out, tasks.Step{Task: &tasks.Task{Kind: kind}, Words: w})
	}
	return out
}

func TestGather(t *testing.T) {
	for _, c := range []struct {
		words []string
		want  string
		items []string
	}{
		{[]string{"Seal H1 round the cables.", "Seal H2 round the cables."}, "Seal … round the cables.", []string{"H1", "H2"}},
		{[]string{"Tag both ends of the 3 cables of A1.", "Tag both ends of the cable of K1."}, "Tag both ends of the ….", []string{"3 cables of A1", "cable of K1"}},
		{[]string{
			"Cut 3 × cat6 for A1 at the spool, 17.000 m long; tape the ends of each coil.", "Cut 1 × cat6a for A2 at the spool, 9.500 m long; tape the ends of each coil.",
		}, "Cut … at the spool, … long; tape the ends of each coil.", []string{"3 × cat6 for A1, 17.000 m", "1 × cat6a for A2, 9.500 m"}},
		{[]string{
			"Look behind B1 (desk), then mark its opening 300 mm above the floor, moved 61 mm.", "Look behind B2, then mark its opening 300 mm above the floor.",
		}, "Look behind …, then mark its opening 300 mm above the floor….", []string{"B1 (desk), moved 61 mm", "B2"}},
		{[]string{"Take the rods of S1, tie on the cable of S1, feed.", "Take the rods of S2, tie on the cable of S2, feed."}, "Take the rods of …, tie on the cable of …, feed.", []string{"S1", "S2"}},
		{[]string{"Clean up."}, "Clean up.", nil},
	} {
		got := Gather(stepsOf(tasks.Seal, c.words...))
		if len(got) != 1 || strings.ReplaceAll(got[0].Words, " ….", "….") != strings.ReplaceAll(c.want, " ….", "….") || !slices.Equal(got[0].Items, c.items) {
			t.Errorf("%q: %+v", c.words, got)
		}
	}
	for _, apart := range [][]tasks.Step{
		stepsOf(tasks.Seal, "Seal H1 round the cables.", "Close the soffit at S1."),
		stepsOf(tasks.Seal, "Seal H1 round the cables.", "Seal H1 round the cables."),
		append(stepsOf(tasks.Seal, "Seal H1."), stepsOf(tasks.Bore, "Seal H2.")...),
	} {
		if got := Gather(apart); len(got) != 2 || got[0].Words != apart[0].Words || got[1].Words != apart[1].Words {
			t.Errorf("%q and %q: %+v", apart[0].Words, apart[1].Words, got)
		}
	}
}

// In the samples every step is in one row, in its order, with all its words.
func TestGatheringLosesNothing(t *testing.T) {
	for _, path := range jobs {
		w := sample(t, path)
		for i := range w.Tasks.Visits {
			steps := w.Tasks.Visits[i].Steps
			at := 0
			for _, g := range Gather(steps) {
				for k := range g.Steps {
					if g.Steps[k].Number != steps[at].Number {
						t.Fatalf("step %s is where %s is due", g.Steps[k].Number, steps[at].Number)
					}
					said := g.Words
					if len(g.Steps) > 1 {
						said += " " + g.Items[k]
					}
					words := tokens(said)
					for _, word := range tokens(steps[at].Words) {
						if !slices.Contains(words, word) {
							t.Errorf("%q of %q is not in %q", word, steps[at].Words, said)
						}
					}
					at++
				}
			}
			if at != len(steps) {
				t.Fatalf("%d of %d steps", at, len(steps))
			}
		}
	}
}
