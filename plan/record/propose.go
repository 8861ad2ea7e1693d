package record

import (
	"slices"
	"time"

	"topplate/plan/diag"
)

// A Proposal is an entry that is to be added, before it was checked.
type Proposal struct {
	Entry
	New bool     // a hole that the plan does not have
	Pos diag.Pos // where it was read from
}

// Propose begins an entry about a thing. A correction begins with all that the
// entry has that it replaces, a hole as it is planned, and a spool as it was
// last. What a plan or a record doesn't know is left for Check to report.
func Propose(p *Plan, all []Entry, k Kind, id string, replaces int) Proposal {
	now := Current(all)
	if c, ok := p.Cable(id); ok && k == CableKind {
		id = c.ID
	}
	e := Entry{Kind: k, ID: id, Replaces: replaces}
	if i := slices.IndexFunc(now, func(o Entry) bool { return o.Number == replaces && o.Kind == k && o.ID == id }); i >= 0 && replaces > 0 {
		e.Cable, e.Hole, e.Spool, e.Note = now[i].Cable, now[i].Hole, now[i].Spool, now[i].Note
		return Proposal{Entry: e}
	}
	switch k {
	case HoleKind:
		if h, ok := p.Hole(id); ok {
			e.Hole = Hole{Bore: h.Bore, There: h.There}
			for _, c := range h.Cables {
				if !leftOut(now, c) {
					e.Hole.Cables = append(e.Hole.Cables, c)
				}
			}
		}
	case SpoolKind:
		e.Spool, _ = spoolBefore(p, now, e.ID)
		e.Spool.Marked, e.Spool.Mark = false, 0
	}
	return Proposal{Entry: e}
}

// leftOut reports whether a cable is recorded as not run.
func leftOut(now []Entry, id string) bool {
	e, ok := find(now, CableKind, id)
	return ok && e.Cable.State != Run
}

// spoolBefore is a spool as it was recorded last, or as the job has it.
func spoolBefore(p *Plan, now []Entry, id string) (Spool, bool) {
	if e, ok := find(now, SpoolKind, id); ok {
		return e.Spool, true
	}
	if s, ok := p.Spool(id); ok {
		return Spool{Cable: s.Cable, Left: s.Left, Marked: s.Marked, Mark: s.Mark, Down: s.Down}, true
	}
	return Spool{}, false
}

// without are the entries that hold once an entry is corrected: of a spool the
// one before it comes back.
func without(all []Entry, replaced int) []Entry {
	return Current(slices.DeleteFunc(slices.Clone(all), func(e Entry) bool { return e.Number == replaced }))
}

// TakeMark works out what is left on the spool of a proposal from the mark at
// its free end: the mark itself where marks count down, otherwise what was left
// before less what was drawn off. It reports whether that can be told.
func (e *Proposal) TakeMark(p *Plan, all []Entry) bool {
	before, ok := spoolBefore(p, without(all, e.Replaces), e.ID)
	switch {
	case e.Spool.Down:
		e.Spool.Left = e.Spool.Mark
	case ok && before.Marked && !before.Down:
		e.Spool.Left = before.Left - (e.Spool.Mark - before.Mark)
	default:
		return false
	}
	return true
}

// Entries are the entries of proposals, with the one that begins a record
// before them if there is none.
func Entries(p *Plan, all []Entry, when time.Time, add []Proposal) []Entry {
	var out []Entry
	if _, ok := find(all, StartKind, ""); !ok {
		out = append(out, Entry{Kind: StartKind, When: when, Start: p.start()})
	}
	for i := range add {
		out = append(out, add[i].Entry)
	}
	return out
}
