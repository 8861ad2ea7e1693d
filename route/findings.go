package route

import (
	"cmp"
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// findings holds the result against the rules.
func (r *Result) findings(book rule.Book) []Finding {
	c := collector{r: r, book: book}
	for i := range r.Routes {
		c.blocked(&r.Routes[i])
		c.moved(&r.Routes[i])
		c.long(&r.Routes[i])
		c.outdoors(&r.Routes[i])
	}
	for i := range r.Holes {
		c.hole(&r.Holes[i])
	}
	c.conduits()
	c.reused()
	c.chases()
	c.panelBesideChase()
	for i := range r.Job.House.Hatches {
		c.hatch(&r.Job.House.Hatches[i])
	}
	slices.SortStableFunc(c.out, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Severity, b.Severity), CompareTags(a.Where, b.Where), cmp.Compare(a.Rule, b.Rule))
	})
	return c.out
}

type collector struct {
	r    *Result
	book rule.Book
	out  []Finding
}

func (c *collector) add(id rule.ID, f Finding) {
	rl, _ := rule.Lookup(id)
	f.Rule = id
	f.Severity = rl.Severity
	c.out = append(c.out, f)
}

func (c *collector) text(l measure.Length) string { return c.r.Job.House.Units.Format(l) }

// blocked reports every rule in the way of a drop without a route.
func (c *collector) blocked(r *Route) {
	if r.Blocked == nil {
		return
	}
	d := &c.r.Job.Drops[r.Drop]
	for _, b := range r.Blocked.Blocks {
		c.out = append(c.out, Finding{Rule: b.Rule, Severity: rule.Stop, Pos: b.Pos, Where: d.Tag, Found: b.Found, Change: b.Change})
	}
}

// moved notes a place that is not where it was wished.
func (c *collector) moved(r *Route) {
	if r.Moved == 0 || r.Blocked != nil {
		return
	}
	d := &c.r.Job.Drops[r.Drop]
	id, why := c.whyMoved(d)
	c.out = append(c.out, Finding{
		Rule: id, Severity: rule.Note, Pos: d.Pos, Where: d.Tag,
		Found: fmt.Sprintf("placed %s from where it was wished: %s", c.text(r.Moved), why),
	})
}

// whyMoved is the reason why a place was moved, as far as one can be named.
func (c *collector) whyMoved(d *plan.Drop) (id rule.ID, why string) {
	h := c.r.Job.House
	switch d.Kind {
	case plan.SoffitSpot:
		along := h.Walls[d.Eave].Along(d.Point)
		for i := range h.Baffles {
			if b := &h.Baffles[i]; b.Wall == d.Eave && b.Start < along && along < b.End {
				return rule.EaveBaffle, fmt.Sprintf("baffle %s closes the rafter bay there", b.ID)
			}
		}
		return rule.HoleToMemberRule, "a rafter tail is there"
	case plan.CeilingPoint:
		return rule.BoxFit, "a joist is there"
	}
	w := &h.Walls[d.Spot.Wall]
	k, ok := bayAt(c.r.Graph.Bays[d.Spot.Wall], d.Spot.At)
	if !ok {
		return rule.BoxFit, "a stud is there"
	}
	bay := &c.r.Graph.Bays[d.Spot.Wall][k]
	id, why = rule.BoxFit, "the box does not fit beside the stud, or a hole over the next bay costs less"
	if bay.Window >= 0 {
		id, why = rule.Window, fmt.Sprintf("%s closes the bay there", w.Openings[bay.Window].ID)
	}
	devices(w, bay, func(dev *plan.Device) {
		id, why = rule.PowerBay, fmt.Sprintf("%s %s is in the bay", dev.Kind, dev.ID)
	})
	return id, why
}

// long reports a cable over the length of a link.
func (c *collector) long(r *Route) {
	limit := c.book.Length(rule.LinkLength)
	d := &c.r.Job.Drops[r.Drop]
	if r.Blocked != nil || !d.Cable.FourPair || r.Lengths.Cut <= limit {
		return
	}
	c.add(rule.LinkLengthRule, Finding{
		Pos: d.Pos, Where: d.Tag,
		Found:  fmt.Sprintf("%s of cable; a link may be %s, and no route is as short", c.text(r.Lengths.Cut), c.text(limit)),
		Change: "put the closet nearer",
	})
}

// hole reports more cable than fits, and shield plates.
func (c *collector) hole(h *Hole) {
	p := &c.r.Graph.Holes[h.Place]
	var pos diag.Pos
	if p.Wall >= 0 {
		pos = c.r.Job.House.Walls[p.Wall].Pos
	} else {
		pos = c.r.Job.House.Spaces[p.Space].Pos
	}
	switch thick := c.thickest(h); {
	case thick+c.book.Length(rule.HoleOverBundle) > h.Largest:
		c.out = append(c.out, Finding{
			Rule: rule.PlateCapacity, Severity: rule.Stop, Pos: pos, Where: h.ID,
			Found:  fmt.Sprintf("one cable of %s needs a hole of %s; the largest allowed is %s", c.text(thick), c.text(thick+c.book.Length(rule.HoleOverBundle)), c.text(h.Largest)),
			Change: "a thinner cable, or another way for it",
		})
	case h.Bit == 0:
		c.add(rule.PlateCapacity, Finding{
			Pos: pos, Where: h.ID,
			Found:  fmt.Sprintf("no bit of the job makes a hole for one cable here: the largest allowed is %s", c.text(h.Largest)),
			Change: "list a bit that fits under [tools]",
		})
	case h.Width > p.Free:
		c.add(rule.PlateCapacity, Finding{
			Pos: pos, Where: h.ID,
			Found:  fmt.Sprintf("%d cables need %d holes up to %s, %s wide together; %s is free", h.Cables, h.Count, c.text(h.Bit), c.text(h.Width), c.text(p.Free)),
			Change: "take some of the cables through another bay",
		})
	}
	if p.Kind == BlockArc {
		c.add(rule.FireBlock, Finding{Pos: pos, Where: h.ID, Found: fmt.Sprintf("bored with a bit that reaches %s", c.text(p.Reach))})
	}
	if h.Shield && h.Bit > 0 {
		c.add(rule.Shield, Finding{
			Pos: pos, Where: h.ID,
			Found: fmt.Sprintf("a %s hole leaves %s to the face of the %s", c.text(h.Bit), c.text((p.MemberWidth-h.Bit)/2), p.Kind),
		})
	}
}

// thickest is the diameter of the thickest cable that goes through a hole.
func (c *collector) thickest(h *Hole) measure.Length {
	var most measure.Length
	for _, d := range h.Drops {
		most = max(most, c.r.Job.Drops[d].Cable.Diameter)
	}
	return most
}

// panelBesideChase notes chases of the panel's room that no cable starts in, since
// the panel is just out of an arm's reach of them.
func (c *collector) panelBesideChase() {
	job, g := c.r.Job, c.r.Graph
	panel := g.Nodes[g.Root].At
	for i := range job.House.Chases {
		t := &job.House.Chases[i]
		m := mid(t.Area)
		l := dist(panel.X, m.X) + dist(panel.Y, m.Y)
		if t.Hot || !slices.Contains(t.Rooms, job.Closet.Room) || l <= job.Tools.ArmReach || l > 2*job.Tools.ArmReach {
			continue
		}
		c.out = append(c.out, Finding{
			Rule: rule.NoHiddenWay, Severity: rule.Note, Pos: t.Pos, Where: t.ID,
			Found:  fmt.Sprintf("the panel is %s from the middle of it; its cables may start there from within %s, an arm's reach", c.text(l), c.text(job.Tools.ArmReach)),
			Change: "the panel nearer to the chase",
		})
	}
}

// hatch reports an attic access in a ceiling that is smaller than the code's.
func (c *collector) hatch(h *plan.Hatch) {
	house := c.r.Job.House
	if s := house.Spaces[h.Space]; s.Kind != plan.AtticSpace || h.Room >= 0 && house.Rooms[h.Room].Level != s.Below {
		return
	}
	short, long := c.book.Length(rule.HatchShort), c.book.Length(rule.HatchLong)
	a, b := min(h.Area.Width(), h.Area.Height()), max(h.Area.Width(), h.Area.Height())
	if a >= short && b >= long {
		return
	}
	c.add(rule.HatchSize, Finding{
		Pos: h.Pos, Where: h.ID,
		Found: fmt.Sprintf("%s by %s; an attic access is at least %s by %s", c.text(a), c.text(b), c.text(short), c.text(long)),
	})
}

// cautions lists what is printed on every sheet of the job.
func cautions(job *plan.Job, book rule.Book) []rule.ID {
	var out []rule.ID
	for _, r := range book.Cautions(job.House.Built) {
		out = append(out, r.ID)
	}
	out = append(out, rule.SealHoles)
	if slices.ContainsFunc(job.House.Spaces, func(s *plan.Space) bool { return s.Joist != plan.Sawn }) {
		out = append(out, rule.TrussNever)
	}
	outdoors := func(d plan.Drop) bool { return d.Kind == plan.SoffitSpot }
	if slices.ContainsFunc(job.Drops, outdoors) {
		out = append(out, rule.OutdoorEntry)
	}
	return out
}
