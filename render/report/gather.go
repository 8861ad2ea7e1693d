package report

import (
	"slices"
	"strings"

	"topplate/route/tasks"
)

// A Gathered is steps of a visit, one after the other, that are alike.
type Gathered struct {
	Steps []tasks.Step
	// Words are those of the step, if it is one. Of several they are what all
	// have in common, with Gap where they differ, and Items what each has there.
	Words string
	Items []string
	// Often is set where Words only name a step that is told once for all visits.
	Often bool
}

// Gap stands in common words for what differs.
const Gap = "…"

// leastCommon is how many words steps must have in common to be gathered.
const leastCommon = 2

// settled is how many steps together don't take one more that has less in
// common with them than they have.
const settled = 4

// Gather puts steps that are alike together, for lists that would be too long
// to be used with a row for each: of one kind, by the same people, and
// their words begin the same. Nothing that a step says is left out. It takes
// time in proportion to the steps and to the cube of the words of one.
func Gather(steps []tasks.Step) []Gathered {
	var out []Gathered
	for len(steps) > 0 {
		n := 1
		words := [][]string{tokens(steps[0].Words)}
		for n < len(steps) && alike(&steps[0], &steps[n]) {
			more := append(words[:n:n], tokens(steps[n].Words))
			front, back := common(more)
			if front+back < leastCommon || front == 0 || !differ(more, front+back) {
				break
			}
			if a, b := common(words); n >= settled && front+back < a+b {
				break
			}
			words = more
			n++
		}
		out = append(out, gathered(steps[:n], words))
		steps = steps[n:]
	}
	return out
}

func alike(a, b *tasks.Step) bool {
	return a.Task.Kind == b.Task.Kind && a.Together == b.Together && a.Helps == b.Helps
}

func gathered(steps []tasks.Step, words [][]string) Gathered {
	if len(steps) == 1 {
		return Gathered{Steps: steps, Words: steps[0].Words}
	}
	g := Gathered{Steps: steps}
	front, back := common(words)
	first := words[0]
	middles := make([][]string, len(words))
	for i, w := range words {
		middles[i] = w[front : len(w)-back]
	}
	shared, items := split(middles)
	g.Words = joined(slices.Concat(first[:front], shared, first[len(first)-back:]))
	for _, item := range items {
		g.Items = append(g.Items, strings.TrimLeft(item, ".,;: "))
	}
	return g
}

// split tells what sentences have in common, with Gap where they differ, and
// what each has in the gaps. They differ at both ends.
func split(all [][]string) (shared, items []string) {
	from, n := longestRun(all)
	if n == 0 {
		for _, w := range all {
			items = append(items, joined(w))
		}
		if !slices.ContainsFunc(items, func(s string) bool { return s != "" }) {
			return nil, items
		}
		return []string{Gap}, items
	}
	left, right := make([][]string, len(all)), make([][]string, len(all))
	for i, w := range all {
		left[i], right[i] = w[:from[i]], w[from[i]+n:]
	}
	run := all[0][from[0] : from[0]+n]
	before, firsts := split(left)
	after, seconds := split(right)
	for i := range all {
		items = append(items, listedBoth(firsts[i], strings.TrimLeft(seconds[i], ".,;: ")))
	}
	return slices.Concat(before, run, after), items
}

func listedBoth(a, b string) string {
	switch {
	case a == "" || a == b:
		return b
	case b == "":
		return a
	}
	return a + ", " + b
}

// longestRun finds the longest run of words that is in all sentences, the first
// in the first of them, and where it begins in each. It is of at least
// leastCommon words, or else n is 0.
func longestRun(all [][]string) (from []int, n int) {
	first := all[0]
	for a := range first {
		for b := len(first); b-a > n; b-- {
			run := first[a:b]
			if bare(run) < leastCommon || isUnit(first[a]) {
				continue
			}
			if at := inAll(all, run); at != nil {
				from, n = at, b-a
				break
			}
		}
	}
	return from, n
}

// bare counts words without marks.
func bare(words []string) int {
	n := 0
	for _, w := range words {
		if !isMark(w) {
			n++
		}
	}
	return n
}

// inAll is where a run of words begins in each sentence, nil if one lacks it.
func inAll(all [][]string, run []string) []int {
	var out []int
	for _, w := range all {
		at := -1
		for i := 0; i+len(run) <= len(w) && at < 0; i++ {
			if slices.Equal(w[i:i+len(run)], run) {
				at = i
			}
		}
		if at < 0 {
			return nil
		}
		out = append(out, at)
	}
	return out
}

// tokens are the words of a sentence, with the marks behind them apart.
func tokens(s string) []string {
	var out []string
	for _, word := range strings.Fields(s) {
		bare := strings.TrimRight(word, ".,;:")
		if bare == "" {
			bare = word
		}
		out = append(out, bare)
		if marks := word[len(bare):]; marks != "" {
			out = append(out, marks)
		}
	}
	return out
}

// joined is the opposite of tokens.
func joined(words []string) string {
	var b strings.Builder
	for _, w := range words {
		if b.Len() > 0 && !isMark(w) {
			b.WriteByte(' ')
		}
		b.WriteString(w)
	}
	return b.String()
}

func isUnit(w string) bool { return w == "m" || w == "mm" }

func isMark(w string) bool { return strings.Trim(w, ".,;:") == "" }

// common is how many words at the front and at the back sentences have in
// common. A unit stays with its number.
func common(all [][]string) (front, back int) {
	first := all[0]
	least := len(first)
	for _, w := range all {
		least = min(least, len(w))
	}
	for front < least && same(all, func(w []string) string { return w[front] }) {
		front++
	}
	for back < least-front && same(all, func(w []string) string { return w[len(w)-1-back] }) {
		back++
	}
	if at := len(first) - back; back > 0 && isUnit(first[at]) {
		back--
	}
	return front, back
}

func same(all [][]string, of func(w []string) string) bool {
	return !slices.ContainsFunc(all, func(w []string) bool { return of(w) != of(all[0]) })
}

// differ reports whether each has something of its own.
func differ(all [][]string, shared int) bool {
	return !slices.ContainsFunc(all, func(w []string) bool { return len(w) <= shared })
}
