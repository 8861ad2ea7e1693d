package render

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/record"
	"topplate/plan/rule"
	"topplate/render/pdf"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/render/svg"
	"topplate/route"
)

// AsBuiltID is the id of the sheet that shows a job as built; a house that is
// too large for one sheet has as-built-1, as-built-2 and so on.
const AsBuiltID = "as-built"

// asBuiltText is the file that has all that the record says.
const asBuiltText = AsBuiltID + ".txt"

// An AsBuilt is a job with what its record says was done.
type AsBuilt struct {
	Result  *route.Result
	Plan    *record.Plan   // what the record is held against
	Entries []record.Entry // all of the record, in its order
	Record  Entry          // the file of the record
}

// shownFrom are the least differences of a hole's place from the plan that the
// drawing shows: what is less is within what a hand-held drill and a tape do
// (common practice, no source).
var shownFrom = [...]measure.Length{measure.Imperial: measure.Inch / 4, measure.Metric: 6 * measure.Millimetre}

// Done reports whether the record says that anything was done, and not only
// which job it is of.
func (a *AsBuilt) Done() bool {
	return slices.ContainsFunc(a.Entries, func(e record.Entry) bool { return e.Kind != record.StartKind })
}

// AsBuiltFolder makes the files of a folder that shows a job as built: the
// sheets as SVG and in one PDF, all that is recorded as text, and the manifest.
func AsBuiltFolder(a *AsBuilt) ([]File, error) {
	f := &folder{res: a.Result, sheets: AsBuiltSheets(a)}
	for _, s := range f.sheets {
		f.add(f.make(s.ID+".svg", func(w io.Writer) error { return svg.Write(w, s, svg.Options{}) }))
	}
	f.add(f.make(AsBuiltID+".pdf", func(w io.Writer) error { return pdf.Write(w, a.Result.Job.Name, f.sheets) }))
	f.add(f.make(asBuiltText, a.text))
	if f.err != nil {
		return nil, f.err
	}
	m := ManifestOf(a.Result.Job, f.files)
	m.Inputs = append(m.Inputs, a.Record)
	last, err := m.File()
	return append(f.files, last), err
}

// text writes the record against the plan, with the cautions in full.
func (a *AsBuilt) text(w io.Writer) error {
	var b bytes.Buffer
	if err := record.Show(&b, a.Plan, a.Entries); err != nil {
		return err
	}
	if changes := a.Plan.Changes(a.Entries); len(changes) > 0 {
		fmt.Fprintf(&b, "\nThe record was begun with another plan: %s.\n", strings.Join(changes, ", "))
	}
	fmt.Fprintf(&b, "\nCautions\n")
	for _, id := range a.Result.Cautions {
		if rl, ok := rule.Lookup(id); ok {
			fmt.Fprintf(&b, "  %s. %s\n", rl.Title, rl.Text)
		}
	}
	fmt.Fprintf(&b, "  %s\n", report.Deference)
	_, err := w.Write(b.Bytes())
	return err
}

// AsBuiltSheets draws the plan with what the record says was done: cables that
// were run, those that were not, and those without an entry, each with a pen of
// its own; holes as drilled beside their planned place; and in the column the
// tests, the spools and what is missing. There is one entry at least. It takes
// time in proportion to cables times entries.
func AsBuiltSheets(a *AsBuilt) []*sheet.Sheet {
	b := newBuilt(a)
	h := a.Result.Job.House
	var pages []*drawing
	for _, level := range byHeight(h) {
		bored := slices.ContainsFunc(b.now, func(e record.Entry) bool {
			return e.Kind == record.HoleKind && b.levelOf(e.ID, e.Hole.Wall) == level
		})
		if len(h.Levels) > 1 && !bored && !passed(a.Result, level) {
			continue
		}
		k := &planKind{
			id: levelID(h, AsBuiltID, level), title: "As built" + levelTitle(h, level), scope: levelScope(level),
			desc:   fmt.Sprintf("Plan of %s%s with what the record says was done, up to entry %d.", h.Name, levelClause(h, level), b.last().Number),
			draw:   b.draw,
			legend: b.legend, tables: b.tables, rest: asBuiltText,
		}
		pages = append(pages, k.pages(a.Result)...)
	}
	var out []*sheet.Sheet
	for i, p := range pages {
		place := fmt.Sprintf("record, entry %d", b.last().Number)
		if len(pages) > 1 {
			place = fmt.Sprintf("%d of %d, entry %d", i+1, len(pages), b.last().Number)
		}
		p.number(place)
		out = append(out, p.sheet)
	}
	return out
}

// A built is a record laid beside the plan.
type built struct {
	*AsBuilt
	res    *route.Result
	now    []record.Entry // that hold
	cables map[string]*record.Entry
	holes  map[string]*record.Entry
	spools map[string]*record.Entry
}

func newBuilt(a *AsBuilt) *built {
	b := &built{
		AsBuilt: a, res: a.Result, now: record.Current(a.Entries),
		cables: map[string]*record.Entry{}, holes: map[string]*record.Entry{}, spools: map[string]*record.Entry{},
	}
	of := map[record.Kind]map[string]*record.Entry{record.CableKind: b.cables, record.HoleKind: b.holes, record.SpoolKind: b.spools}
	for i := range b.now {
		if e := &b.now[i]; of[e.Kind] != nil {
			of[e.Kind][e.ID] = e
		}
	}
	return b
}

// last is the entry that was added last.
func (b *built) last() *record.Entry { return &b.Entries[len(b.Entries)-1] }

// cablesOf are the ids of a drop's cables.
func (b *built) cablesOf(drop *plan.Drop) (ids []string) {
	for i := range b.Plan.Cables {
		if c := &b.Plan.Cables[i]; c.Tag == drop.Tag {
			ids = append(ids, c.ID)
		}
	}
	return ids
}

// A tally counts cables by what became of them.
type tally struct{ run, deferred, notRun, silent int }

// tally counts the cables of some drops.
func (b *built) tally(drops []int) (t tally) {
	for _, i := range drops {
		for _, id := range b.cablesOf(&b.res.Job.Drops[i]) {
			e, ok := b.cables[id]
			switch {
			case !ok:
				t.silent++
			case e.Cable.State == record.Run:
				t.run++
			case e.Cable.State == record.Deferred:
				t.deferred++
			default:
				t.notRun++
			}
		}
	}
	return t
}

// words says what became of the cables: a state alone where all are in it.
func (t tally) words() string {
	all := t.run + t.deferred + t.notRun + t.silent
	var parts []string
	for _, p := range []struct {
		n    int
		name string
	}{{t.run, record.Run.String()}, {t.deferred, record.Deferred.String()}, {t.notRun, record.NotRun.String()}, {t.silent, "no entry"}} {
		switch {
		case p.n == all && all == 1:
			return p.name
		case p.n > 0:
			parts = append(parts, fmt.Sprintf("%d %s", p.n, p.name))
		}
	}
	return strings.Join(parts, ", ")
}

// pen draws a bundle by the most that became of its cables.
func (t tally) pen() sheet.Pen {
	switch {
	case t.run > 0:
		return penRun
	case t.deferred+t.notRun > 0:
		return penLeft
	}
	return penSilent
}

// planned is where a hole of the plan is, in plan.
func (b *built) planned(h *record.PlannedHole) (geom.Point, bool) {
	for i := range b.res.Holes {
		x := &b.res.Holes[i]
		if x.ID != h.ID && !strings.HasPrefix(h.ID, x.ID+".") {
			continue
		}
		place := &b.res.Graph.Holes[x.Place]
		if h.Wall == "" {
			return flat(place.At), true
		}
		return b.moved(h.Wall, flat(place.At), place.Along, h.At), true
	}
	return b.onWall(h.Wall, h.At)
}

// moved is a point that is shifted along a wall.
func (b *built) moved(wall string, p geom.Point, from, to measure.Length) geom.Point {
	w := b.wall(wall)
	if w == nil {
		return p
	}
	return p.Add(w.PointAt(to).Sub(w.PointAt(from)))
}

// levelOf is the level that a hole is on: that of its wall, or where it was
// planned.
func (b *built) levelOf(id, wall string) int {
	if w := b.wall(wall); w != nil {
		return w.Level
	}
	for i := range b.res.Holes {
		if x := &b.res.Holes[i]; x.ID == id || strings.HasPrefix(id, x.ID+".") {
			return levelOfHole(b.res.Job.House, &b.res.Graph.Holes[x.Place])
		}
	}
	return 0
}

// onWall is a place on the centre line of a wall.
func (b *built) onWall(wall string, at measure.Length) (geom.Point, bool) {
	w := b.wall(wall)
	if w == nil {
		return geom.Point{}, false
	}
	return w.PointAt(at), true
}

func (b *built) wall(id string) *plan.Wall {
	for i := range b.res.Job.House.Walls {
		if w := &b.res.Job.House.Walls[i]; w.ID == id {
			return w
		}
	}
	return nil
}

// drilled is where a hole was bored, if that can be drawn: its wall is there
// and the place is in the house.
func (b *built) drilled(e *record.Entry) (geom.Point, bool) {
	h, p, ok := &e.Hole, geom.Point{}, false
	switch pl, planned := b.Plan.Hole(e.ID); {
	case planned && pl.Wall == h.Wall:
		if p, ok = b.planned(pl); ok && h.Wall != "" {
			p = b.moved(h.Wall, p, pl.At, h.At)
		}
	default:
		p, ok = b.onWall(h.Wall, h.At)
	}
	return p, ok && extent(b.res).Contains(p)
}

// apart says how far a hole is from where it was planned, if that is more than
// is shown.
func (b *built) apart(e *record.Entry) string {
	h := &e.Hole
	p, ok := b.Plan.Hole(e.ID)
	switch {
	case !ok:
		return "not planned"
	case p.Wall != h.Wall:
		return "another wall"
	case h.Wall != "" && max(h.At-p.At, p.At-h.At) > shownFrom[b.Plan.Units]:
		return b.more(h.At - p.At)
	}
	return ""
}

// more is a difference with its sign.
func (b *built) more(l measure.Length) string {
	if l > 0 {
		return "+" + b.Plan.Units.Format(l)
	}
	return b.Plan.Units.Format(l)
}
