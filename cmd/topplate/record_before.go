package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strconv"

	"topplate/plan"
	"topplate/plan/diag"
	"topplate/route"
)

// An inherited is a thing that an earlier job left, in words, and the entry that says
// so.
type inherited struct {
	pos   diag.Pos
	entry int
	words string
}

// tellBefore prints what a job starts from, and which entry of which record it
// is from. Files are named from the folder of the job.
func tellBefore(w io.Writer, res *route.Result, dir string) error {
	job := res.Job
	if len(job.Before.Jobs) == 0 {
		return nil
	}
	if _, err := fmt.Fprintln(w, "\nFrom earlier jobs"); err != nil {
		return err
	}
	for _, h := range slices.Concat(plateHoles(job), otherHoles(res), spoolsLeft(job), portsTaken(job)) {
		file := h.pos.File
		if rel, err := filepath.Rel(dir, file); err == nil {
			file = filepath.ToSlash(rel)
		}
		if _, err := fmt.Fprintf(w, "  %s  (%s, entry %d)\n", h.words, file, h.entry); err != nil {
			return err
		}
	}
	return nil
}

func plateHoles(job *plan.Job) (out []inherited) {
	text := job.House.Units.Format
	for _, o := range job.Before.Holes {
		i := slices.IndexFunc(job.Fixed, func(f plan.Fixed) bool { return f.ID == o.ID })
		f := &job.Fixed[i]
		out = append(out, inherited{o.Pos, o.Entry, fmt.Sprintf("hole %s, %s plate, %s along wall %s, %s, cables in it: %d",
			f.ID, plateOf(f), text(f.At), job.House.Walls[f.Wall].ID, text(f.Diameter), f.Cables)})
	}
	return out
}

// otherHoles are those that are in no plate, and why one is not used.
func otherHoles(res *route.Result) (out []inherited) {
	job, text := res.Job, res.Job.House.Units.Format
	unused := map[string]string{}
	for _, k := range res.Graph.Known {
		unused[k.ID] = k.Unused
	}
	for i := range job.Before.Opened {
		o := &job.Before.Opened[i]
		where, why := "", ""
		switch {
		case o.Wall >= 0:
			where = fmt.Sprintf(", %s along wall %s", text(o.At), job.House.Walls[o.Wall].ID)
		case o.Pointed:
			where = fmt.Sprintf(", %s east and %s north of the zero point", text(o.Point.X), text(o.Point.Y))
		}
		if unused[o.ID] != "" {
			why = "; known, not used: " + unused[o.ID]
		}
		out = append(out, inherited{o.Pos, o.Entry, fmt.Sprintf("hole %s, %s%s, %s, cables in it: %d%s", o.ID, o.Through, where, text(o.Diameter), o.Cables, why)})
	}
	return out
}

func spoolsLeft(job *plan.Job) (out []inherited) {
	for _, o := range job.Before.Spools {
		i := slices.IndexFunc(job.Spools, func(s plan.Spool) bool { return s.ID == o.ID })
		s := &job.Spools[i]
		out = append(out, inherited{o.Pos, o.Entry, fmt.Sprintf("spool %s, %s of %s", s.ID, job.House.Units.Format(s.Left), s.Cable.ID)})
	}
	return out
}

func portsTaken(job *plan.Job) (out []inherited) {
	for _, u := range job.Before.Ports {
		port := "a port"
		if u.Port > 0 {
			port = "port " + strconv.Itoa(u.Port)
		}
		out = append(out, inherited{u.Pos, u.Entry, fmt.Sprintf("%s, taken by %s", port, u.Cable)})
	}
	return out
}

// plateOf says which plate of its wall a fixed hole is in.
func plateOf(f *plan.Fixed) string {
	if f.Bottom {
		return "bottom"
	}
	return "top"
}
