package render

import (
	"fmt"
	"slices"
	"strings"

	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/route/work"
)

// A pick is a column of a sheet made from columns of a report's table.
type pick struct {
	column
	from []string // heads in the table, of which those that say something are joined
	with string   // what joins them
	// blank leaves a nought out.
	blank bool
}

// A plainList is a listing made from a table of the report.
type plainList struct {
	table   string
	title   string // if the table's own is not plain enough
	picks   []pick
	band    []string // heads whose values make the bands; none is no bands
	alike   []string // heads that are said once if all rows have the same under them
	message string   // under the heading
}

const (
	small, smallTag = sheet.LetterSmall, sheet.LetterSmallTag
	note, tag       = sheet.LetterNote, sheet.LetterTag
)

func ticked() pick { return pick{column: column{kind: toTick, width: tickWidth}} }

func written(head string) pick {
	return pick{column: column{head: head, kind: toFill, width: writeWidth}}
}

// words is a column of text.
func words(l sheet.Lettering, head string, from ...string) pick {
	if len(from) == 0 {
		from = []string{head}
	}
	return pick{column: column{head: head, lettering: l}, from: from, with: ", "}
}

// whole is a column of names or numbers, which are not broken over lines.
func whole(l sheet.Lettering, head string, from ...string) pick {
	p := words(l, head, from...)
	p.whole, p.with = true, " "
	return p
}

// number is a column of counts.
func number(l sheet.Lettering, head string, from ...string) pick {
	p := whole(l, head, from...)
	p.align = sheet.End
	return p
}

// unlessNone is a column in which nought is left out.
func unlessNone(p pick) pick {
	p.blank = true
	return p
}

// plainLists are the lists in the order in which they are printed.
var plainLists = []plainList{
	{
		table: "drops", title: "Drops and their lengths",
		alike:   []string{"loop, closet", "loop, drop", "trim", "sketch", "cable", "bends"},
		message: "To cut each cable: along the route, a loop at both ends, trim, what the sketch may be wrong by, and an allowance.",
		picks: []pick{
			whole(tag, "drop"), words(small, "what and where", "kind", "room", "note"),
			number(small, "cables"), words(small, "cable", "type"), whole(tag, "cut each", "cut"), whole(small, "along the route"),
			whole(small, "loop, closet", "loop at the closet"), whole(small, "loop, drop", "loop at the drop"),
			whole(small, "trim"), whole(small, "sketch"), whole(small, "allow", "allowance"), number(small, "bends"), unlessNone(whole(small, "moved")),
		},
	},
	{table: "cuts", band: []string{"cable", "spool"}, message: "Pull the first of a set, measure it, and write the length down before its equals are cut.", picks: []pick{
		ticked(), whole(tag, "piece"), whole(tag, "planned", "length"), whole(note, "running number"), whole(note, "mark expected"),
		words(note, "stop and check"), written("measured"),
	}},
	{table: "spools", picks: []pick{
		words(note, "cable"), whole(tag, "spool"), whole(note, "before"), number(note, "cuts"), whole(note, "left"), words(note, "what is left"),
		whole(note, "mark at the start"), whole(note, "mark at the end"), written("mark read"), written("left, measured"),
	}},
	{table: "parts", picks: []pick{
		ticked(), words(smallTag, "part"), words(small, "what"), words(small, "unit"), number(small, "need", "needed"), unlessNone(number(small, "in stock")),
		number(smallTag, "buy", "to buy"), unlessNone(number(small, "later", "for later")), words(small, "why so many"),
	}},
	{table: "labels", picks: []pick{
		ticked(), whole(smallTag, "label"), whole(small, "on"), words(small, "where"), words(small, "other end"), whole(small, "when"),
	}},
	{table: "power", picks: []pick{
		whole(tag, "drop"), number(note, "cables"), number(note, "class"), whole(note, "device"), whole(note, "switch gives"),
		whole(note, "at the device"), whole(note, "lost"), whole(note, "spare"), whole(note, "cable and cords", "cable"), whole(note, "longest"),
		written("measured"),
	}},
}

// tableListings makes the listings of the tables of a job, the holes after the
// drops.
func tableListings(w *work.Work) []*listing {
	tables := map[string]report.Table{}
	for _, t := range report.Tables(w) {
		tables[t.ID] = t
	}
	var out []*listing
	for i := range plainLists {
		p := &plainLists[i]
		l := p.listing(tables[p.table])
		switch p.table {
		case "labels":
			if len(tables["labels"].Rows) > manyLabels {
				l = labelListing(w)
			}
		case "drops":
			out = append(out, l, holeListing(w, tables["holes"]), reusedListing(w))
			continue
		case "parts":
			l.shortenReasons(w.Job)
		case "cuts":
			if len(tables["cuts"].Rows) > longList {
				cutListing(w, l)
			}
			l.intro = append(l.intro, laterCuts(w)...)
		}
		out = append(out, l)
	}
	return out
}

// listing fills in the rows of a table.
func (p *plainList) listing(t report.Table) *listing {
	l := &listing{id: "list-" + p.table, title: t.Title}
	if p.title != "" {
		l.title = p.title
	}
	for i := range p.picks {
		l.columns = append(l.columns, p.picks[i].column)
	}
	last := ""
	for n, cells := range t.Rows {
		band := strings.Join(picked(&t, cells, p.band), " from spool ")
		if n == 0 || band != last {
			l.portions = append(l.portions, portion{name: band})
			last = band
		}
		in := &l.portions[len(l.portions)-1]
		in.rows = append(in.rows, p.row(&t, cells))
	}
	if p.message != "" && len(t.Rows) > 0 {
		l.intro = []string{p.message}
	}
	l.sayOnce(p.alike)
	return l
}

// sayOnce takes the columns with some heads out of a list of many rows if all
// of them have the same there, and says it in the intro.
func (l *listing) sayOnce(heads []string) {
	var said []string
	for _, head := range heads {
		i := slices.IndexFunc(l.columns, func(c column) bool { return c.head == head })
		if value, n := l.sameIn(i); n >= leastAlike {
			said = append(said, head+" "+value)
			for k := range l.portions {
				for _, row := range l.portions[k].rows {
					row[i] = ""
				}
			}
		}
	}
	if len(said) > 0 {
		l.intro = append(l.intro, "The same for all: "+strings.Join(said, "; ")+".")
	}
}

// leastAlike is how many rows have what is alike in them said once (common
// practice, no source).
const leastAlike = 3

// sameIn is what all rows have in a column, and how many they are; or nought.
func (l *listing) sameIn(i int) (string, int) {
	value, n := "", 0
	for k := range l.portions {
		for _, row := range l.portions[k].rows {
			if n > 0 && row[i] != value {
				return "", 0
			}
			value = row[i]
			n++
		}
	}
	if value == "" {
		return "", 0
	}
	return value, n
}

func (p *plainList) row(t *report.Table, cells []string) []string {
	out := make([]string, len(p.picks))
	for i := range p.picks {
		out[i] = strings.Join(picked(t, cells, p.picks[i].from), p.picks[i].with)
		if p.picks[i].blank && !strings.ContainsAny(out[i], "123456789") {
			out[i] = ""
		}
	}
	return out
}

// picked are the cells of a row under some heads, empty ones left out.
func picked(t *report.Table, cells, heads []string) []string {
	var out []string
	for _, h := range heads {
		if c := cells[slices.Index(t.Head, h)]; c != "" {
			out = append(out, c)
		}
	}
	return out
}

// laterCuts say what is not cut today.
func laterCuts(w *work.Work) []string {
	var out []string
	for _, c := range w.Cuts.Later {
		out = append(out, fmt.Sprintf("Not cut today: %s, %d × %s, %s each.", c.Tag, c.Count, c.Cable, w.Job.House.Units.Format(c.Length)))
	}
	return out
}

// reusedListing lists the holes and conduits that are there and used.
func reusedListing(w *work.Work) *listing {
	l := &listing{id: "list-reused", title: "Holes and conduits that are there and used", columns: []column{
		{kind: toTick, width: tickWidth},
		{head: "which", lettering: tag},
		{head: "what", lettering: note, whole: true},
		{head: "where", lettering: note},
		{head: "inside", lettering: note, whole: true},
		{head: "drops", lettering: tag},
	}}
	h := w.Job.House
	var rows [][]string
	for i := range w.Reused {
		u := &w.Reused[i]
		var drops []string
		for _, d := range u.Drops {
			drops = append(drops, w.Job.Drops[d].Tag)
		}
		rows = append(rows, []string{"", u.ID, u.What(), report.HoleIn(w.Result, &u.HolePlace), h.Units.Format(u.Inside), strings.Join(drops, " ")})
	}
	if len(rows) > 0 {
		l.portions = []portion{{rows: rows}}
	}
	return l
}
