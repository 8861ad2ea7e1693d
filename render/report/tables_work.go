package report

import (
	"fmt"
	"strconv"
	"strings"

	"topplate/plan/measure"
	"topplate/route/cut"
	"topplate/route/fix"
	"topplate/route/tags"
	"topplate/route/tasks"
	"topplate/route/work"
)

// Tables makes the tables of a job, each ready for a spreadsheet. Lengths are
// printed in the units of the house.
func Tables(w *work.Work) []Table {
	return []Table{
		dropTable(w.Result), holeTable(w), cutTable(w), spoolTable(w), partTable(w), orderTable(w), carryTable(w),
		labelTable(w), powerTable(w), estimateTable(w), costTable(w.Result), findingTable(w),
	}
}

// holeTable lists how every hole is made and found.
func holeTable(w *work.Work) Table {
	u := w.Job.House.Units
	t := Table{ID: "holes", Title: "Holes", Head: []string{
		"hole", "through", "where", "drops", "cables", "bundle", "bored with", "largest allowed", "plate or tie", "seal", "from below", "from above", "expected error",
	}}
	for i := range w.Fixes {
		h := &w.Fixes[i]
		t.Rows = append(t.Rows, []string{
			h.ID, h.Member, HoleWhere(w.Result, &w.Graph.Holes[w.Holes[h.Index].Place]), tagsOf(w.Result, h.Drops), strconv.Itoa(h.Cables), u.Format(h.Bundle), boresText(h, u), allowedText(h, u),
			platesText(h), sealText(h), h.Below.Text, strings.Join(h.FoundText(), " "), errorText(h, u),
		})
	}
	var levels, spaces []string
	for i := range w.Fixes {
		p := &w.Graph.Holes[w.Holes[w.Fixes[i].Index].Place]
		levels = append(levels, levelID(w.Job.House, holeLevel(w.Result, p)))
		spaces = append(spaces, InSpace(w.Job.House, p.Space))
	}
	withColumn(&t, w.Job.House, 2, "level", levels)
	withColumn(&t, w.Job.House, 3, "opens", spaces)
	return t
}

// boresText is what the bores of a place are made with, equal ones once.
func boresText(h *fix.Hole, u measure.System) string {
	var out []string
	for i := 0; i < len(h.Bores); {
		text, n := h.Bores[i].BitText(u), 1
		for i+n < len(h.Bores) && h.Bores[i+n].BitText(u) == text {
			n++
		}
		if n > 1 {
			text = fmt.Sprintf("%d side by side: %s", n, text)
		}
		out = append(out, text)
		i += n
	}
	return strings.Join(out, "; ")
}

func allowedText(h *fix.Hole, u measure.System) string {
	if len(h.Allowed.Rules) == 0 && len(h.Allowed.Limits) == 0 {
		return ""
	}
	return u.Format(h.Allowed.Largest)
}

func platesText(h *fix.Hole) string {
	var out []string
	if h.Shield {
		out = append(out, "shield plate")
	}
	if h.Tie {
		out = append(out, "plate tie")
	}
	return strings.Join(out, ", ")
}

func sealText(h *fix.Hole) string { return strings.Join(sealList(h), ", ") }

// sealList says against what a hole is closed again.
func sealList(h *fix.Hole) []string {
	var out []string
	for _, s := range []struct {
		on   bool
		text string
	}{{h.Seal.Fire, "fire"}, {h.Seal.Air, "air"}, {h.Seal.Weather, "weather"}, {h.Seal.Garage, "garage separation"}} {
		if s.on {
			out = append(out, s.text)
		}
	}
	return out
}

func errorText(h *fix.Hole, u measure.System) string {
	if !h.Above.Reached || h.Above.Method == fix.ByNothing {
		return ""
	}
	return u.Format(h.Above.Error)
}

// cutTable lists the cuts in the order of cutting.
func cutTable(w *work.Work) Table {
	u := w.Job.House.Units
	t := Table{ID: "cuts", Title: "Cuts", Head: []string{"cable", "spool", "piece", "length", "running number", "mark expected", "stop and check"}}
	for i := range w.Cuts.Cables {
		c := &w.Cuts.Cables[i]
		for j := range c.Spools {
			s := &c.Spools[j]
			for k := range s.Cuts {
				x := &s.Cuts[k]
				t.Rows = append(t.Rows, []string{c.ID, s.ID, x.Piece, u.Format(x.Length), u.Format(x.Used), x.Mark.String(), CheckText(s, x.Piece, u)})
			}
		}
	}
	return t
}

// CheckText is where to stop while the first of a set of equal cables is
// pulled.
func CheckText(s *cut.Spool, piece string, u measure.System) string {
	for i := range s.Checks {
		if s.Checks[i].First == piece {
			return s.Checks[i].Words(u)
		}
	}
	return ""
}

// spoolTable lists the spools with what is left on them.
func spoolTable(w *work.Work) Table {
	u := w.Job.House.Units
	t := Table{ID: "spools", Title: "Spools", Head: []string{"cable", "spool", "before", "cuts", "left", "what is left", "mark at the start", "mark at the end"}}
	for i := range w.Cuts.Cables {
		c := &w.Cuts.Cables[i]
		for j := range c.Spools {
			s := &c.Spools[j]
			t.Rows = append(t.Rows, []string{
				c.ID, s.ID, u.Format(s.Length), strconv.Itoa(len(s.Cuts)), u.Format(s.Left), s.Fate, s.Start.String(), s.End.String(),
			})
		}
	}
	return t
}

// partTable lists what is needed, in stock and to be bought.
func partTable(w *work.Work) Table {
	t := Table{ID: "parts", Title: "Parts", Head: []string{"part", "what", "unit", "needed", "in stock", "to buy", "for later", "why so many", "charged"}}
	for i := range w.Parts {
		l := &w.Parts[i]
		t.Rows = append(t.Rows, []string{
			l.ID, l.Title, l.Unit, strconv.FormatInt(l.Need, 10), strconv.FormatInt(l.Have, 10), strconv.FormatInt(l.Buy, 10),
			strconv.FormatInt(l.Later, 10), l.Rule, amount(l.Charge),
		})
	}
	return t
}

// orderTable is the order of work, step by step.
func orderTable(w *work.Work) Table {
	t := Table{ID: "order", Title: "Order of work", Head: []string{"step", "who", "place", "from", "to", "what", "drops", "holes"}}
	var levels, days []string
	eachStep(w.Tasks, func(v *tasks.Visit, s *tasks.Step) {
		days = append(days, strconv.Itoa(s.Start.Day()))
		levels = append(levels, placeLevel(w.Job.House, v.Place))
		who := strconv.Itoa(v.Person)
		if s.Together {
			who = "both"
		}
		var holes []string
		for _, h := range s.Task.Holes {
			holes = append(holes, w.Holes[h].ID)
		}
		t.Rows = append(t.Rows, []string{
			s.Number, who, v.Place.Title, s.Start.Hours(), s.End.Hours(), s.Words, tagsOf(w.Result, s.Task.Drops), strings.Join(holes, " "),
		})
	})
	if w.Tasks.Days > 1 {
		addColumn(&t, 2, "day", days)
	}
	withColumn(&t, w.Job.House, 2, "level", levels)
	return t
}

func eachStep(t *tasks.Work, f func(v *tasks.Visit, s *tasks.Step)) {
	for i := range t.Visits {
		for j := range t.Visits[i].Steps {
			f(&t.Visits[i], &t.Visits[i].Steps[j])
		}
	}
}

// carryTable lists what to carry to each visit.
func carryTable(w *work.Work) Table {
	t := Table{ID: "carry", Title: "What to carry", Head: []string{"visit", "place", "carry"}}
	var levels []string
	for i := range w.Tasks.Visits {
		v := &w.Tasks.Visits[i]
		if len(v.Carry) > 0 {
			t.Rows = append(t.Rows, []string{strconv.Itoa(v.Number), v.Place.Title, carryText(v)})
			levels = append(levels, placeLevel(w.Job.House, v.Place))
		}
	}
	withColumn(&t, w.Job.House, 1, "level", levels)
	return t
}

func carryText(v *tasks.Visit) string {
	out := make([]string, len(v.Carry))
	for i, item := range v.Carry {
		out[i] = item.String()
	}
	return strings.Join(out, ", ")
}

func labelTable(w *work.Work) Table {
	t := Table{ID: "labels", Title: "Labels", Head: tags.Columns()}
	for i := range w.Labels {
		t.Rows = append(t.Rows, w.Labels[i].Row())
	}
	return t
}

// powerTable lists how the devices are supplied over their cables.
func powerTable(w *work.Work) Table {
	u := w.Job.House.Units
	t := Table{ID: "power", Title: "Power at the devices", Head: []string{
		"drop", "cables", "class", "device", "switch gives", "at the device", "lost", "spare", "cable", "longest",
	}}
	for i := range w.Devices {
		d := &w.Devices[i]
		row := []string{w.Job.Drops[d.Drop].Tag, strconv.Itoa(d.Cables)}
		if s := d.Supply; s != nil {
			row = append(row, strconv.Itoa(s.Class.Number), watts(s.Watts), watts(s.Drawn), fmt.Sprintf("%.1f V", s.DeviceVolts), watts(s.Lost),
				fmt.Sprintf("%.1f V", s.SpareVolts), u.Format(s.Length), u.Format(s.Longest))
		} else {
			row = append(row, "", "", "", "", "", "", "", "")
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func watts(w float64) string { return fmt.Sprintf("%.1f W", w) }

func estimateTable(w *work.Work) Table {
	t := Table{ID: "estimate", Title: "Estimate", Head: []string{"what", "time", "amount"}}
	for _, r := range w.Estimate.Rows() {
		t.Rows = append(t.Rows, []string{r.Text, r.Time, r.Amount})
	}
	return t
}
