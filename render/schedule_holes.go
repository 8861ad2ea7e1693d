package render

import (
	"fmt"
	"regexp"
	"strings"

	"topplate/plan"
	"topplate/render/report"
	"topplate/route/fix"
	"topplate/route/work"
)

// holeListing tells how each hole is made, and how it is found from below and
// from above. In a long list what many holes have in common is said once.
func holeListing(w *work.Work, t report.Table) *listing {
	l := &listing{id: "list-holes", title: "Holes", columns: []column{
		{kind: toTick, width: tickWidth},
		{head: "hole", lettering: tag, whole: true},
		{head: "how it is made", lettering: note},
		{head: "found from below", lettering: note},
		{head: "found from above", lettering: note},
	}}
	var rows [][]string
	var made [][]string
	for i := range w.Fixes {
		h := &w.Fixes[i]
		made = append(made, madeWords(w, &t, i))
		rows = append(rows, []string{"", h.ID, "", h.Below.Text, strings.Join(h.FoundText(), "\n")})
	}
	if len(w.Fixes) > longHoles {
		longHoleListing(w, l, made)
		return l
	}
	for i := range rows {
		rows[i][2] = strings.Join(made[i], "\n")
	}
	if len(rows) > 0 {
		l.portions = []portion{{rows: rows}}
	}
	return l
}

// longHoleListing tells of many holes in two columns: what is read in the attic
// first, and below it in smaller letters how the hole is made and how it is
// found from below.
func longHoleListing(w *work.Work, l *listing, made [][]string) {
	b := newBrief(w)
	l.columns = []column{{lettering: note, each: true}}
	p := portion{narrow: true, words: append(boreKey(made), b.told())}
	for i := range w.Fixes {
		h := &w.Fixes[i]
		p.rows = append(p.rows, []string{""})
		p.numbers = append(p.numbers, h.ID)
		p.each = append(p.each, once([]string{b.words(h)}))
		p.asides = append(p.asides, strings.Join(made[i], "; ")+". Found from below "+h.Below.Text+".")
	}
	l.portions = []portion{p}
}

// madeWords are how a hole is made: what is bored and for whom, then how.
func madeWords(w *work.Work, t *report.Table, i int) []string {
	h := &w.Fixes[i]
	value := func(head string) string { return strings.Join(picked(t, t.Rows[i], []string{head}), "") }
	made := []string{value("through"), "for " + value("drops") + ", bundle " + value("bundle"), value("bored with")}
	if h.Wall >= 0 {
		made[0] += ", " + w.Job.House.Units.Format(h.Along) + " along the wall"
	}
	for _, more := range [][2]string{{"largest allowed", "at most "}, {"plate or tie", "wants a "}, {"seal", "seal: "}} {
		if v := value(more[0]); v != "" {
			made = append(made, more[1]+v)
		}
	}
	return made
}

// boredFrom is where in the words of a hole those begin that others may have too.
const boredFrom = 2

// boreKey gives a letter to the words that several holes have for how they are
// bored, puts it in their place, and says what the letters stand for.
func boreKey(made [][]string) []string {
	count := map[string]int{}
	for _, m := range made {
		count[strings.Join(m[boredFrom:], "; ")]++
	}
	letters := map[string]string{}
	var out []string
	for i, m := range made {
		how := strings.Join(m[boredFrom:], "; ")
		if count[how] < leastAlike || len(out) == 26 && letters[how] == "" {
			made[i] = []string{m[0], m[1], how}
			continue
		}
		if letters[how] == "" {
			letters[how] = string(rune('A' + len(out)))
			out = append(out, fmt.Sprintf("Bored as %s: %s.", letters[how], how))
		}
		made[i] = []string{m[0] + "; " + m[1] + "; bored as " + letters[how]}
	}
	return out
}

// A brief says in few words how holes are found from above.
type brief struct {
	shorter *strings.Replacer
	buried  string // what is said of most holes
}

const tries = ", 95 tries in 100"

// shorterWords make the marks of a house and what is said of them shorter.
func shorterWords(house *plan.House) *strings.Replacer {
	var pairs []string
	hatches := house.Hatches
	for i := range hatches {
		name, short := "the hatch", "hatch"
		if len(hatches) > 1 {
			name, short = "hatch "+hatches[i].ID, hatches[i].ID
		}
		for _, c := range [][2]string{{"south-west", "SW"}, {"south-east", "SE"}, {"north-east", "NE"}, {"north-west", "NW"}} {
			pairs = append(pairs, fmt.Sprintf("%s corner of %s", c[0], name), short+" "+c[1])
		}
	}
	pairs = append(pairs, ", on the left of the way from the first to the second", ", left",
		", on the right of the way from the first to the second", ", right", " clear over the joists", " clear", "; within ", "; ±\u00A0", tries, "")
	for i := range house.Marks {
		m := &house.Marks[i]
		pairs = append(pairs, "from "+m.Kind+" "+m.ID, "from "+m.ID)
	}
	return strings.NewReplacer(pairs...)
}

func newBrief(w *work.Work) *brief {
	b := &brief{shorter: shorterWords(w.Job.House)}
	count := map[string]int{}
	for i := range w.Fixes {
		a := &w.Fixes[i].Above
		if !a.Reached {
			continue
		}
		for _, line := range a.Text {
			if strings.HasPrefix(line, "under ") {
				if count[line]++; count[line]*2 > len(w.Fixes) {
					b.buried = line
				}
			}
		}
	}
	return b
}

// told is what is said once for all holes.
func (b *brief) told() string {
	out := "Found from above: SW is the south-west corner of a hatch, and so on; clear is the room over the joists; left and right are of the way from the first mark to the second; “9 joists + 300 mm” is so far beyond the middle of the ninth; 95 tries in 100 are within the distance given after ±."
	if b.buried != "" {
		out += " The place is " + b.buried + " unless the line says something else."
	}
	return out
}

// zoneAgain is how one works at a place, where the way there has just said it.
var zoneAgain = regexp.MustCompile(`^([a-z' ]+), `)

// joistWords is how joists are counted, as package fix words it.
var joistWords = regexp.MustCompile(`^from (.*) (east|north|west|south): (?:in the same joist bay, (.*) on|past (1 joist), (.*) beyond its middle|past (\d+ joists), (.*) beyond the middle of the last), and (.*) along the joists$`)

// plateWords make what a plate looks like shorter.
var plateWords = strings.NewReplacer(" wide, which runs ", ", ", "north and south", "north to south", "east and west", "east to west")

// joistBrief says the same in few words.
func joistBrief(m []string) string {
	from, heading, along := m[1], m[2], m[8]
	switch {
	case m[3] != "":
		return fmt.Sprintf("same bay as %s, %s %s, %s", from, m[3], heading, along)
	case m[4] != "":
		return fmt.Sprintf("%s + %s %s of %s, %s", m[4], m[5], heading, from, along)
	}
	return fmt.Sprintf("%s + %s %s of %s, %s", m[6], m[7], heading, from, along)
}

// words are how a hole is found: the way there and the room at it, what is
// taped, and what else is to be counted and looked for.
func (b *brief) words(h *fix.Hole) string {
	a := &h.Above
	if !a.Reached || len(a.Text) < 2 {
		return strings.Join(h.FoundText(), "\n")
	}
	clear := a.Text[1]
	if m := zoneAgain.FindStringSubmatch(clear); m != nil && strings.HasSuffix(a.Text[0], " "+m[1]) {
		clear = strings.TrimPrefix(clear, m[0])
	}
	way := strings.TrimPrefix(strings.TrimPrefix(a.Text[0], "from "), "hatch ")
	lines := []string{"Way: " + way + "; " + clear}
	var taped, more []string
	covered := a.Decked
	for _, line := range a.Text[2:] {
		covered = covered || strings.HasPrefix(line, "under ")
		switch m := joistWords.FindStringSubmatch(line); {
		case line == b.buried:
		case m != nil:
			more = append(more, joistBrief(m))
		case strings.HasPrefix(line, "look for the "+h.Member+", "):
			plate := line[len("look for the "+h.Member+", "):]
			more = append(more, "plate "+plateWords.Replace(plate))
		case len(more) == 0:
			taped = append(taped, line)
		default:
			more = append(more, line)
		}
	}
	if !covered && b.buried != "" {
		more = append(more, "no insulation")
	}
	if len(taped) > 0 {
		lines = append(lines, "Tape: "+strings.Join(taped, "; "))
	}
	if len(more) > 0 {
		lines = append(lines, "Then: "+strings.Join(more, "; "))
	}
	lines = append(lines, h.FoundText()[len(a.Text):]...) // of the other side
	return b.shorter.Replace(strings.Join(lines, ". ")) + "."
}
