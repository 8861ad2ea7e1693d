package report

import (
	"cmp"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/route"
	"topplate/route/tasks"
)

// An Often is a step that comes in many visits: the words that all of them have
// in common, and those of them at the front that name it.
type Often struct {
	Short, Words string
}

// leastVisits is in how many visits a step comes often (common practice, no
// source).
const leastVisits = 3

// A cluster is steps that are alike, of any visits.
type cluster struct {
	kind   tasks.Kind
	helps  bool
	words  [][]string // of each step
	of     []string   // their numbers
	visits map[int]bool
	items  map[string]string // by number
	often  Often
}

// GatherVisits is Gather for a whole order of work. Steps that come often are
// named by the words that they begin with, and told in full once. Drops that follow each
// other are named by the first and the last. It takes time in proportion to the
// square of the steps.
func GatherVisits(job *plan.Job, t *tasks.Work) ([]Often, [][]Gathered) {
	visits := make([][]tasks.Step, len(t.Visits))
	for i := range t.Visits {
		for _, s := range t.Visits[i].Steps {
			s.Words = brief(job, &s)
			visits[i] = append(visits[i], s)
		}
	}
	named := often(visits)
	var told []Often
	by := map[string]*cluster{}
	for _, c := range named {
		told = append(told, Often{c.often.Short, strings.ReplaceAll(c.often.Words, listed, " ")})
		for _, n := range c.of {
			by[n] = c
		}
	}
	out := make([][]Gathered, len(visits))
	for i, steps := range visits {
		for len(steps) > 0 {
			c, n := by[steps[0].Number], 1
			for n < len(steps) && by[steps[n].Number] == c && (c == nil || steps[n].Together == steps[0].Together) {
				n++
			}
			if c == nil {
				out[i] = append(out[i], Gather(steps[:n])...)
			} else {
				g := Gathered{Steps: steps[:n], Words: c.often.Short, Often: true}
				for k := range n {
					g.Items = append(g.Items, c.items[steps[k].Number])
				}
				out[i] = append(out[i], g)
			}
			steps = steps[n:]
		}
		for k := range out[i] {
			out[i][k].loosen()
		}
	}
	return told, out
}

// listed is a space within a list of drops, which is one word while steps are
// held against each other. It is no space to Unicode, and in no name.
const listed = "\x1f"

// loosen puts spaces back into lists of drops.
func (g *Gathered) loosen() {
	g.Words = strings.ReplaceAll(g.Words, listed, " ")
	for i := range g.Items {
		g.Items[i] = strings.ReplaceAll(g.Items[i], listed, " ")
	}
}

// often finds the steps that come often, in the order of their kinds.
func often(visits [][]tasks.Step) []*cluster {
	var all []*cluster
	for i, steps := range visits {
		for k := range steps {
			all = joining(all, &steps[k], i)
		}
	}
	all = slices.DeleteFunc(all, func(c *cluster) bool { return len(c.visits) < leastVisits })
	slices.SortStableFunc(all, func(a, b *cluster) int { return cmp.Compare(a.kind, b.kind) })
	var out []*cluster
	for _, c := range all {
		g := gatheredWords(c.words)
		c.often = Often{named(out, tokens(g.Words)), g.Words}
		if c.often.Short == "" {
			continue
		}
		c.items = map[string]string{}
		for k, n := range c.of {
			c.items[n] = g.Items[k]
		}
		out = append(out, c)
	}
	return out
}

// joining puts a step to the first that it is like, or begins a cluster.
func joining(all []*cluster, s *tasks.Step, visit int) []*cluster {
	words := tokens(s.Words)
	for _, c := range all {
		if c.kind != s.Task.Kind || c.helps != s.Helps {
			continue
		}
		more := append(c.words[:len(c.words):len(c.words)], words)
		front, back := common(more)
		if front == 0 || bare(words[:front])+bare(words[len(words)-back:]) < leastCommon || !allOrNone(more, front+back) {
			continue
		}
		c.words, c.of = more, append(c.of, s.Number)
		c.visits[visit] = true
		return all
	}
	return append(all, &cluster{kind: s.Task.Kind, helps: s.Helps, words: [][]string{words}, of: []string{s.Number}, visits: map[int]bool{visit: true}})
}

// allOrNone reports whether each has something of its own, or none has.
func allOrNone(all [][]string, shared int) bool {
	return differ(all, shared) || !slices.ContainsFunc(all, func(w []string) bool { return !slices.Equal(w, all[0]) })
}

// gatheredWords is what sentences have in common, and what each has besides.
func gatheredWords(words [][]string) Gathered {
	steps := make([]tasks.Step, len(words))
	if same(words, func(w []string) string { return joined(w) }) {
		return Gathered{Words: joined(words[0]), Items: make([]string, len(words))}
	}
	return gathered(steps, words)
}

// named is a name for a sentence: as few words from its front as tell it from
// the others, empty if there are none.
func named(others []*cluster, words []string) string {
	for n := 1; n <= len(words) && !strings.Contains(words[n-1], Gap) && !isMark(words[n-1]); n++ {
		short := joined(words[:n])
		if !slices.ContainsFunc(others, func(c *cluster) bool { return c.often.Short == short }) {
			return short
		}
	}
	return ""
}

// brief are the words of a step with drops that follow each other named by the
// first and the last of them: "A1 to A8".
func brief(job *plan.Job, s *tasks.Step) string {
	var tags []string
	for _, d := range s.Task.Drops {
		tags = append(tags, job.Drops[d].Tag)
	}
	if len(tags) < 2 {
		return s.Words
	}
	return strings.ReplaceAll(s.Words, and(tags), strings.ReplaceAll(and(Spans(job, tags)), " ", listed))
}

func and(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// leastSpan is how many drops that follow each other are named by two.
const leastSpan = 3

// Spans names drops, in the order of their tags, those of one letter that follow
// each other in the job by the first and the last: "A1 to A8", "C2". No drop of
// the job that is not among them is between the two.
func Spans(job *plan.Job, tags []string) []string {
	var all []string
	for i := range job.Drops {
		all = append(all, job.Drops[i].Tag)
	}
	slices.SortFunc(all, route.CompareTags)
	place := map[string]int{}
	for i, tag := range all {
		place[tag] = i
	}
	var out []string
	for len(tags) > 0 {
		n := 1
		for n < len(tags) && letters(tags[n]) == letters(tags[0]) && place[tags[n]] == place[tags[n-1]]+1 {
			n++
		}
		if n >= leastSpan {
			out = append(out, tags[0]+" to "+tags[n-1])
		} else {
			out = append(out, tags[:n]...)
		}
		tags = tags[n:]
	}
	return out
}

// letters are those that a tag begins with.
func letters(tag string) string { return strings.TrimRight(tag, "0123456789") }
