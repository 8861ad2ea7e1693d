package report

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"

	"topplate/plan/price"
	"topplate/route"
	"topplate/route/work"
)

// A Table is a list of the results with a row for each thing in it, for a
// spreadsheet or a page.
type Table struct {
	ID, Title string
	Head      []string
	Rows      [][]string
}

// CSV writes the table after RFC 4180, its head first. A cell that a
// spreadsheet would take for a formula begins with an apostrophe.
func (t *Table) CSV(w io.Writer) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	_ = out.Write(t.Head) // the writer keeps its first error
	for _, row := range t.Rows {
		cells := make([]string, len(row))
		for i, c := range row {
			cells[i] = harmless(c)
		}
		_ = out.Write(cells)
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("writing table %s: %w", t.ID, err)
	}
	return nil
}

func harmless(cell string) string {
	if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
		return "'" + cell
	}
	return cell
}

func dropTable(res *route.Result) Table {
	u := res.Job.House.Units
	t := Table{ID: "drops", Title: "Drops", Head: []string{
		"drop", "kind", "cables", "type", "room", "moved", "along the route", "loop at the closet", "loop at the drop", "trim", "sketch", "allowance", "cut", "bends", "note",
	}}
	for i := range res.Routes {
		r := &res.Routes[i]
		d := &res.Job.Drops[r.Drop]
		room := ""
		if d.Room >= 0 {
			room = res.Job.House.Rooms[d.Room].Name
		}
		row := []string{d.Tag, d.Kind.String(), fmt.Sprint(d.Count), d.Cable.ID, room}
		if r.Blocked != nil {
			t.Rows = append(t.Rows, append(row, "", "no allowed route", "", "", "", "", "", "", "", d.Note))
			continue
		}
		l := r.Lengths
		t.Rows = append(t.Rows, append(row, u.Format(r.Moved), u.Format(l.Developed), u.Format(l.Closet), u.Format(l.Outlet),
			u.Format(l.Trim), u.Format(l.Sketch), u.Format(l.Allowance), u.Format(l.Cut), fmt.Sprint(r.Bends), d.Note))
	}
	var levels []string
	for i := range res.Routes {
		levels = append(levels, levelID(res.Job.House, res.Job.House.LevelOf(&res.Job.Drops[res.Routes[i].Drop])))
	}
	withColumn(&t, res.Job.House, 4, "level", levels)
	return t
}

func costTable(res *route.Result) Table {
	t := Table{ID: "cost", Title: "What the plan was chosen by", Head: []string{"term", "amount", "currency"}}
	for _, s := range res.Cost.Terms {
		term, _ := price.Lookup(s.Term)
		t.Rows = append(t.Rows, []string{term.Title, amount(s.Amount), res.Job.Rates.Currency})
	}
	t.Rows = append(t.Rows, []string{"total", amount(res.Cost.Total), res.Job.Rates.Currency})
	return t
}

func findingTable(w *work.Work) Table {
	t := Table{ID: "findings", Title: "Findings", Head: []string{"severity", "where", "found", "what would help", "rule", "source", "place in the file"}}
	for i := range w.Findings {
		f := &w.Findings[i]
		rl, _ := work.Lookup(f.Rule)
		t.Rows = append(t.Rows, []string{f.Severity.String(), f.Where, f.Found, f.Change, string(f.Rule), rl.Source.String(), f.Pos.String()})
	}
	return t
}
