package render

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"topplate/plan/measure"
	"topplate/plan/record"
	"topplate/render/sheet"
	"topplate/route"
)

// unknown stands in a cell for what the record does not say.
const unknown = "–"

// legend says what the drawing is from and what is missing, and explains the
// pens, whose meanings are this drawing's own.
func (b *built) legend(d *drawing) {
	last := b.last()
	d.heading(fmt.Sprintf("From the record, entry %d", last.Number))
	d.paragraph(sheet.LetterSmall, fmt.Sprintf("Last entry of %s. %s", last.When.Format(time.DateOnly), b.total()))
	if changes := b.Plan.Changes(b.Entries); len(changes) > 0 {
		d.paragraph(sheet.LetterSmall, "The record was begun with another plan: "+strings.Join(changes, ", ")+". Places and lengths of the plan may differ.")
	}
	b.missing(d)
	line := func(meaning string, pen sheet.Pen) {
		d.legendRow(meaning, func(g *sheet.Group, s sheet.Box) {
			g.Line(pen, sheet.Pt(s.Min.X, s.Centre().Y), sheet.Pt(s.Max.X, s.Centre().Y))
		})
	}
	d.heading("Legend")
	line("cable that was run", penRun)
	line("cable deferred or not run", penLeft)
	line("cable without an entry in the record", penSilent)
	d.legendRow("2 of the 3 cables planned here were run", func(g *sheet.Group, s sheet.Box) {
		g.Text(sheet.LetterCableTag, sheet.Pt(s.Min.X, s.Max.Y-sheet.MM), sheet.Start, "2 of 3×")
	})
	d.legendRow("hole as drilled, and its planned place", func(g *sheet.Group, s sheet.Box) {
		g.Circle(penPlanned, s.Centre(), min(plannedRadius, s.Height()/2))
		drawSample(g, penDrilled, s)
	})
	d.legendRow("hole without an entry", func(g *sheet.Group, s sheet.Box) { g.Circle(penUndone, s.Centre(), holeRadius) })
	if slices.ContainsFunc(b.res.Reused, func(u route.Reuse) bool { return u.Conduit }) {
		d.legendRow("conduit that is there and used", func(g *sheet.Group, s sheet.Box) { g.Rect(penDrilled, around(s.Centre(), holeRadius)) })
	}
	for _, s := range outletSymbols() {
		d.legendRow(s.meaning, s.draw)
	}
	d.legendRow(sheet.PenWall.Style().Meaning, func(g *sheet.Group, s sheet.Box) { drawSample(g, sheet.PenWall, s) })
	line(sheet.PenEave.Style().Meaning, sheet.PenEave)
}

// total sums up what was run.
func (b *built) total() string {
	var cut, measured measure.Length
	run, count := 0, 0
	for i := range b.Plan.Cables {
		c := &b.Plan.Cables[i]
		e, ok := b.cables[c.ID]
		if !ok || e.Cable.State != record.Run {
			continue
		}
		run++
		if e.Cable.Length != 0 && !c.NoRoute {
			count, cut, measured = count+1, cut+c.Cut, measured+e.Cable.Length
		}
	}
	out := fmt.Sprintf("%d of %d cables run", run, len(b.Plan.Cables))
	if count > 0 {
		u := b.Plan.Units
		out += fmt.Sprintf("; %s measured where %s were to be cut (%s)", u.Format(measured), u.Format(cut), b.more(measured-cut))
	}
	return out + "."
}

// missing lists what the record does not tell, and what it tells that can't be
// drawn.
func (b *built) missing(d *drawing) {
	list := func(what string, ids []string) {
		if len(ids) > 0 {
			d.paragraph(sheet.LetterSmall, what+": "+strings.Join(ids, ", "))
		}
	}
	d.heading("Missing")
	before := d.next
	list("no entry of cables", silent(b.Plan.Cables, b.cables, func(c *record.PlannedCable) string { return c.ID }))
	list("no entry of holes", silent(b.Plan.Holes, b.holes, func(h *record.PlannedHole) string { return h.ID }))
	list("no entry of spools", silent(b.Plan.Spools, b.spools, func(s *record.PlannedSpool) string { return s.ID }))
	list("no length", b.ran(func(_ *record.PlannedCable, c *record.Cable) bool { return c.Length == 0 }))
	list("no wire map", b.ran(func(_ *record.PlannedCable, c *record.Cable) bool { return c.WireMap == record.Untested }))
	list("wire map fails, to be mended", b.ran(func(_ *record.PlannedCable, c *record.Cable) bool { return c.WireMap == record.Fail }))
	list("no power measured at the device", b.ran(func(p *record.PlannedCable, c *record.Cable) bool { return p.Powered && c.Watts == 0 }))
	list("recorded, and not in this plan", b.strangers())
	list("drilled where this house has no place for it", b.homeless())
	if d.next == before {
		d.line(sheet.LetterSmall, 0, "nothing")
	}
}

// silent lists the things of the plan that have no entry.
func silent[T any](planned []T, entries map[string]*record.Entry, id func(*T) string) (out []string) {
	for i := range planned {
		if name := id(&planned[i]); entries[name] == nil {
			out = append(out, name)
		}
	}
	return out
}

// ran lists the cables that were run and of which a condition holds.
func (b *built) ran(holds func(p *record.PlannedCable, c *record.Cable) bool) (out []string) {
	for i := range b.Plan.Cables {
		p := &b.Plan.Cables[i]
		if e, ok := b.cables[p.ID]; ok && e.Cable.State == record.Run && holds(p, &e.Cable) {
			out = append(out, p.ID)
		}
	}
	return out
}

// strangers are recorded cables that the plan no longer has.
func (b *built) strangers() (out []string) {
	for i := range b.now {
		if e := &b.now[i]; e.Kind == record.CableKind {
			if _, ok := b.Plan.Cable(e.ID); !ok {
				out = append(out, e.ID)
			}
		}
	}
	return out
}

// homeless are drilled holes that can't be drawn.
func (b *built) homeless() (out []string) {
	for i := range b.now {
		if e := &b.now[i]; e.Kind == record.HoleKind {
			if _, ok := b.drilled(e); !ok {
				out = append(out, e.ID)
			}
		}
	}
	return out
}

// tables writes the cables with their tests, the holes and the spools.
func (b *built) tables(d *drawing) {
	b.cableTable(d)
	b.holeTable(d)
	b.spoolTable(d)
}

// cableTable has all cables of the drops that the sheet shows.
func (b *built) cableTable(d *drawing) {
	u := b.Plan.Units
	rows := [][]string{{"cable", "state", "cut", "measured", "difference", "wire map", "Mb/s", "W", "entry"}}
	for i := range b.res.Routes {
		r := &b.res.Routes[i]
		if !d.here(d.dropPlace(r)) {
			continue
		}
		for _, id := range b.cablesOf(&b.res.Job.Drops[r.Drop]) {
			c, _ := b.Plan.Cable(id)
			row := []string{id, "no entry", unknown, unknown, unknown, unknown, unknown, unknown, unknown}
			if !c.NoRoute {
				row[2] = u.Format(c.Cut)
			}
			if e, ok := b.cables[id]; ok {
				b.fillCable(row, c, e)
			}
			rows = append(rows, row)
		}
	}
	d.heading("Cables")
	d.tableOr("none", rows)
}

// fillCable puts what is recorded of a cable into its row.
func (b *built) fillCable(row []string, c *record.PlannedCable, e *record.Entry) {
	v := &e.Cable
	row[1], row[8] = v.State.String(), strconv.Itoa(e.Number)
	if v.State != record.Run {
		return
	}
	row[5] = v.WireMap.String()
	if v.Length != 0 {
		row[3] = b.Plan.Units.Format(v.Length)
	}
	if v.Length != 0 && !c.NoRoute {
		row[4] = b.more(v.Length - c.Cut)
	}
	if v.Speed != 0 {
		row[6] = strconv.FormatInt(v.Speed, 10)
	}
	if v.Watts != 0 {
		row[7] = thousandths(v.Watts)
	}
}

// thousandths writes n thousandths as a decimal number, n at least 0.
func thousandths(n int64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%d.%03d", n/1000, n%1000), "0"), ".")
}

// holeTable has the holes that were drilled on this sheet.
func (b *built) holeTable(d *drawing) {
	u := b.Plan.Units
	rows := [][]string{{"hole", "wall", "drilled at", "planned", "difference", "size", "planned", "entry"}}
	for i := range b.now {
		e := &b.now[i]
		if e.Kind != record.HoleKind {
			continue
		}
		if p, ok := b.drilled(e); ok && !d.here(p) {
			continue
		}
		h := &e.Hole
		row := []string{e.ID, h.Wall, u.Format(h.At), unknown, b.apart(e), u.Format(h.Diameter), unknown, strconv.Itoa(e.Number)}
		if h.Wall == "" {
			row[1], row[2] = unknown, "as planned"
		}
		if row[4] == "" {
			row[4] = unknown
		}
		if p, ok := b.Plan.Hole(e.ID); ok {
			if p.Wall == h.Wall && p.Wall != "" {
				row[3] = u.Format(p.At)
			}
			if p.Diameter != 0 {
				row[6] = u.Format(p.Diameter)
			}
		}
		rows = append(rows, row)
	}
	d.heading("Holes")
	d.tableOr("none recorded", rows)
}

// spoolTable has what is left on the spools.
func (b *built) spoolTable(d *drawing) {
	u := b.Plan.Units
	rows := [][]string{{"spool", "cable", "left", "mark at the end", "entry"}}
	for i := range b.now {
		e := &b.now[i]
		if e.Kind != record.SpoolKind {
			continue
		}
		mark := unknown
		if e.Spool.Marked {
			mark = u.Format(e.Spool.Mark)
		}
		rows = append(rows, []string{e.ID, e.Spool.Cable, u.Format(e.Spool.Left), mark, strconv.Itoa(e.Number)})
	}
	d.heading("Spools left")
	d.tableOr("none recorded", rows)
}
