package record

import (
	"slices"
	"strings"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

// Check holds proposals against the plan, against what is recorded, and against
// each other. It tells all that is wrong with them: errors of what can't be or
// contradicts another entry, and warnings. What can't be by the plan is a
// warning if the proposal is to be recorded anyway.
func Check(p *Plan, all []Entry, add []Proposal) *diag.List {
	c := checker{plan: p, all: all, list: &diag.List{}}
	for i := range add {
		c.e = &add[i]
		c.now = Current(c.all)
		c.texts()
		c.replaces()
		switch c.e.Kind {
		case CableKind:
			c.cable()
		case HoleKind:
			c.hole()
		case SpoolKind:
			c.spool()
		case NoteKind:
			if strings.TrimSpace(c.e.Note) == "" {
				c.errorf("a note without text")
			}
		}
		// Numbers below zero are those of proposals, which nothing replaces yet.
		next := c.e.Entry
		next.Number, next.Line = -1-i, c.e.Pos.Line
		c.all = append(slices.Clip(c.all), next)
	}
	return c.list
}

// A checker checks one proposal after the other.
type checker struct {
	plan *Plan
	all  []Entry // recorded, and the proposals before this one
	now  []Entry // those of them that hold
	e    *Proposal
	list *diag.List
}

// about begins a message.
func (c *checker) about() string { return strings.TrimSpace(c.e.Kind.String() + " " + c.e.ID) }

func (c *checker) errorf(format string, args ...any) {
	c.list.Errorf(c.e.Pos, c.about(), format, args...)
}

func (c *checker) warnf(format string, args ...any) {
	c.list.Warnf(c.e.Pos, c.about(), format, args...)
}

// cant reports what can't be if the plan is right.
func (c *checker) cant(format string, args ...any) {
	if c.e.Anyway {
		c.warnf(format+"; it is recorded anyway", args...)
		return
	}
	c.errorf(format+"; measure again, or record it anyway with a note (--anyway --note)", args...)
}

// entryName names an entry, or the row that a proposal was read from.
func entryName(e *Entry) string {
	if e.Number > 0 {
		return "entry " + number(e.Number)
	}
	return "row " + number(e.Line)
}

func (c *checker) texts() {
	for _, t := range []struct{ what, text string }{{"by", c.e.By}, {"note", c.e.Note}, {"plug", c.e.Cable.Plug}, {"through", c.e.Hole.Through}} {
		if err := Text(t.text); err != nil {
			c.errorf("%s: %v", t.what, err)
		}
	}
	if c.e.Anyway && strings.TrimSpace(c.e.Note) == "" {
		c.errorf("recorded anyway without a note; want a note that says why (--note)")
	}
}

// replaces checks that a correction corrects the entry that holds, and that
// nothing else is an entry about the same thing.
func (c *checker) replaces() {
	if c.e.Kind != CableKind && c.e.Kind != HoleKind {
		if c.e.Replaces != 0 {
			c.correctsOther()
		}
		return
	}
	there, ok := find(c.now, c.e.Kind, c.e.ID)
	switch {
	case ok && c.e.Replaces == there.Number:
	case ok && c.e.Replaces == 0:
		c.errorf("found a second record of it: %s has it already%s", entryName(there), c.howToReplace(there))
	case ok:
		c.errorf("found that it replaces entry %d; the entry that holds is %s%s", c.e.Replaces, entryName(there), c.howToReplace(there))
	case c.e.Replaces != 0:
		c.errorf("found that it replaces entry %d, but there is no entry about it", c.e.Replaces)
	}
}

func (c *checker) howToReplace(there *Entry) string {
	if there.Number < 0 {
		return ""
	}
	return "; a correction says so: --replaces " + number(there.Number)
}

// correctsOther checks a correction of a spool's entry or of a note.
func (c *checker) correctsOther() {
	i := slices.IndexFunc(c.now, func(o Entry) bool { return o.Number == c.e.Replaces })
	if i < 0 || c.now[i].Kind != c.e.Kind || c.now[i].ID != c.e.ID {
		c.errorf("found that it replaces entry %d, which is no entry about it that holds", c.e.Replaces)
	}
}

// unknown reports a thing that the plan doesn't have.
func (c *checker) unknown(more string) {
	c.errorf("found %.40q, which is no %s of the plan; %s%s", c.e.ID, c.e.Kind, near(c.e.ID, c.plan.ids(c.e.Kind)), more)
}

// cable checks what became of a cable.
func (c *checker) cable() {
	planned, ok := c.plan.Cable(c.e.ID)
	if !ok {
		c.unknown("")
		return
	}
	v := &c.e.Cable
	if v.State != Run {
		if v.measures() {
			c.errorf("found a length, a test, a port or a plug of a cable that is %s; only one that was run has them", v.State)
		}
		c.notInHoles()
		return
	}
	if planned.NoRoute {
		c.warnf("the plan has no allowed route for it; its length can't be checked")
	}
	c.length(planned)
	c.ends()
	// Gigabit links and faster need all four pairs (IEEE 802.3, clause 40,
	// from memory).
	if v.WireMap == Fail && v.Speed >= 1000 {
		c.warnf("found a wire map that fails and a link of %d Mb/s, which needs all four pairs: test again", v.Speed)
	}
}

// length checks the length of a cable against its route and its marks.
func (c *checker) length(planned *PlannedCable) {
	v, text := &c.e.Cable, c.plan.text
	switch {
	case v.Length == 0:
	case v.Length < planned.Straight:
		c.cant("found %s, but its ends are %s from each other in a straight line", text(v.Length), text(planned.Straight))
	case v.Length < planned.Developed:
		c.cant("found %s, but its way is %s long", text(v.Length), text(planned.Developed))
	}
	if !v.Marked || v.Length == 0 {
		return
	}
	off := max(v.Length-v.ByMarks(), v.ByMarks()-v.Length)
	if off > measure.Length(MarksOff.Value) {
		c.cant("found %s, but the marks are %s apart; they may differ by %s", text(v.Length), text(v.ByMarks()), text(measure.Length(MarksOff.Value)))
	}
}

// ends checks the plug and the port.
func (c *checker) ends() {
	v := &c.e.Cable
	if v.Plug != "" && !slices.Contains(c.plan.Plugs, v.Plug) {
		c.warnf("found %.40q, which is no plug or jack that the job knows; %s", v.Plug, near(v.Plug, c.plan.Plugs))
	}
	if v.Port == 0 {
		return
	}
	if v.Port > c.plan.Ports {
		c.errorf("found port %d; the panel has %d", v.Port, c.plan.Ports)
	}
	for _, u := range c.plan.UsedPorts {
		if u.Port == v.Port {
			c.errorf("found port %d, where cable %s of an earlier job is (%s, entry %d)", v.Port, u.Cable, u.File, u.Number)
		}
	}
	for i := range c.now {
		o := &c.now[i]
		if o.Kind == CableKind && o.ID != c.e.ID && o.Cable.Port == v.Port {
			c.errorf("found port %d, where cable %s is (%s)", v.Port, o.ID, entryName(o))
		}
	}
}

// notInHoles warns of holes that are recorded with a cable that was not run.
func (c *checker) notInHoles() {
	for i := range c.now {
		o := &c.now[i]
		if o.Kind == HoleKind && slices.Contains(o.Hole.Cables, c.e.ID) {
			c.warnf("%s has it in hole %s; it is not counted there", entryName(o), o.ID)
		}
	}
}
