package record

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"topplate/plan/measure"
)

// Show prints what is recorded against the plan: every cable, hole and spool,
// how far it is from what was planned, and what is missing. It returns the first
// error of w.
func Show(w io.Writer, p *Plan, all []Entry) error {
	s := shower{w: w, p: p, all: all, now: Current(all)}
	s.head()
	s.cables()
	s.holes()
	s.spools()
	s.notes()
	s.missing()
	return s.err
}

// A shower prints a record and keeps the first error.
type shower struct {
	w   io.Writer
	p   *Plan
	all []Entry
	now []Entry
	err error
}

func (s *shower) printf(format string, args ...any) {
	if s.err == nil {
		_, s.err = fmt.Fprintf(s.w, format, args...)
	}
}

// table prints rows with their columns in line, and a title if there are any
// beside the header.
func (s *shower) table(title string, rows [][]string) {
	if len(rows) < 2 || s.err != nil {
		return
	}
	s.printf("\n%s\n", title)
	var b strings.Builder
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, r := range rows {
		fmt.Fprintf(t, "  %s\n", strings.Join(r, "\t"))
	}
	t.Flush()
	for line := range strings.Lines(b.String()) {
		s.printf("%s\n", strings.TrimRight(line, " \n"))
	}
}

const none = "–"

func (s *shower) length(l measure.Length) string {
	if l == 0 {
		return none
	}
	return s.p.text(l)
}

// more is a difference with its sign.
func (s *shower) more(l measure.Length) string {
	if l > 0 {
		return "+" + s.p.text(l)
	}
	return s.p.text(l)
}

func or(text string) string {
	if text == "" {
		return none
	}
	return text
}

func (s *shower) head() {
	s.printf("Record of %s\n", s.p.Job)
	if e, ok := find(s.all, StartKind, ""); ok {
		s.printf("begun %s, %d entries\n", e.When.Format("2006-01-02"), len(s.all))
	} else {
		s.printf("nothing is recorded yet\n")
	}
}

func (s *shower) cables() {
	rows := [][]string{{"cable", "state", "planned", "measured", "difference", "on the end", "port", "wire map", "Mb/s", "W", "V", "hours", "entry", "note"}}
	var planned, measured measure.Length
	var hours int64
	count, run := 0, 0
	for i := range s.p.Cables {
		c := &s.p.Cables[i]
		e, ok := find(s.now, CableKind, c.ID)
		if !ok {
			continue
		}
		v := &e.Cable
		diff := none
		if v.State == Run {
			run++
		}
		if v.Length != 0 && !c.NoRoute {
			diff = s.more(v.Length - c.Cut)
			count, planned, measured = count+1, planned+c.Cut, measured+v.Length
		}
		hours += v.Hours
		rows = append(rows, []string{
			c.ID, v.State.String(), s.length(c.Cut), s.length(v.Length), diff, or(v.Plug), or(number(v.Port)), s.wireMap(v), or(number(int(v.Speed))),
			or(thousandthsText(v.Watts)), or(thousandthsText(v.Volts)), or(thousandthsText(v.Hours)), s.number(e), e.Note,
		})
	}
	s.table("Cables", rows)
	s.printf("\n%d of %d cables run", run, len(s.p.Cables))
	if count > 0 {
		s.printf("; %s measured where %s were planned to cut (%s)", s.p.text(measured), s.p.text(planned), s.more(measured-planned))
	}
	s.printf("\n%s hours recorded; the plan counts %s\n", decimal(hours), decimal((s.p.Hours+50)/100*100))
}

// wireMap is the result of a test of a cable that was run.
func (s *shower) wireMap(c *Cable) string {
	if c.State != Run {
		return none
	}
	return c.WireMap.String()
}

// number is that of an entry, with those that it replaces.
func (s *shower) number(e *Entry) string {
	out := number(e.Number)
	for e.Replaces != 0 {
		i := slices.IndexFunc(s.all, func(o Entry) bool { return o.Number == e.Replaces })
		out += ", for " + number(e.Replaces)
		if i < 0 {
			break
		}
		e = &s.all[i]
	}
	return out
}

func (s *shower) holes() {
	rows := [][]string{{"hole", "through", "planned", "as drilled", "difference", "size planned", "size", "cables", "entry", "note"}}
	for i := range s.now {
		e := &s.now[i]
		if e.Kind != HoleKind {
			continue
		}
		h := &e.Hole
		planned, diff, size := "not planned", none, none
		if p, ok := s.p.Hole(e.ID); ok {
			planned, size = s.where(p.Wall, p.At), s.length(p.Diameter)
			switch {
			case p.Wall != h.Wall:
				diff = "another wall"
			case p.Wall != "":
				diff = s.more(h.At - p.At)
			}
		}
		rows = append(rows, []string{
			e.ID, h.Through, planned, s.where(h.Wall, h.At), diff, size, s.length(h.Diameter), fmt.Sprint(inHole(s.now, h)), s.number(e), e.Note,
		})
	}
	s.table("Holes", rows)
}

func (s *shower) where(wall string, at measure.Length) string {
	if wall == "" {
		return "as planned"
	}
	return s.p.text(at) + " along wall " + wall
}

func (s *shower) spools() {
	rows := [][]string{{"spool", "cable", "at the start", "left", "mark", "entry", "note"}}
	for i := range s.now {
		e := &s.now[i]
		if e.Kind != SpoolKind {
			continue
		}
		start, mark := none, none
		if p, ok := s.p.Spool(e.ID); ok {
			start = s.p.text(p.Left)
		}
		if e.Spool.Marked {
			mark = s.p.text(e.Spool.Mark)
		}
		rows = append(rows, []string{e.ID, e.Spool.Cable, start, s.p.text(e.Spool.Left), mark, s.number(e), e.Note})
	}
	s.table("Spools", rows)
}

func (s *shower) notes() {
	rows := [][]string{{"note", "by", "when"}}
	for i := range s.now {
		if e := &s.now[i]; e.Kind == NoteKind {
			rows = append(rows, []string{e.Note, or(e.By), e.When.Format("2006-01-02 15:04")})
		}
	}
	s.table("Notes", rows)
}

// missing lists what was planned and is not recorded.
func (s *shower) missing() {
	rows := [][]string{{"what", "of"}}
	list := func(what string, ids []string) {
		if len(ids) > 0 {
			rows = append(rows, []string{what, strings.Join(ids, ", ")})
		}
	}
	list("no record of the cable", s.without(CableKind))
	list("no length", s.ran(func(_ *PlannedCable, c *Cable) bool { return c.Length == 0 }))
	list("no wire map", s.ran(func(_ *PlannedCable, c *Cable) bool { return c.WireMap == Untested }))
	list("wire map fails, to be mended", s.ran(func(_ *PlannedCable, c *Cable) bool { return c.WireMap == Fail }))
	list("no power measured at the device", s.ran(func(p *PlannedCable, c *Cable) bool { return p.Powered && c.Watts == 0 }))
	list("no record of the hole", s.without(HoleKind))
	list("not told what is left on the spool", s.without(SpoolKind))
	if len(rows) == 1 {
		s.printf("\nNothing is missing.\n")
		return
	}
	s.table("Missing", rows)
}

// without lists the things of the plan that have no entry.
func (s *shower) without(k Kind) []string {
	return slices.DeleteFunc(s.p.ids(k), func(id string) bool {
		_, ok := find(s.now, k, id)
		return ok
	})
}

// ran lists the cables that were run and of which a condition holds.
func (s *shower) ran(holds func(p *PlannedCable, c *Cable) bool) (out []string) {
	for i := range s.p.Cables {
		p := &s.p.Cables[i]
		if e, ok := find(s.now, CableKind, p.ID); ok && e.Cable.State == Run && holds(p, &e.Cable) {
			out = append(out, p.ID)
		}
	}
	return out
}
