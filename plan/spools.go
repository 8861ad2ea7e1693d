package plan

import (
	"topplate/plan/cable"
	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// A Spool is a spool or box of cable that is at hand.
type Spool struct {
	ID    string
	Pos   diag.Pos
	Cable cable.Type
	// Left is how much cable is on it.
	Left measure.Length
	// Marked is true if the file tells the mark that is printed on the jacket
	// at the free end: Mark from the maker's zero, in feet or metres as Units
	// says. Down is true if the marks get smaller as cable is drawn off.
	Marked bool
	Mark   measure.Length
	Units  measure.System
	Down   bool
}

// A Purchase is how cable is bought.
type Purchase struct {
	// Length is that of a new spool, of cable that has no own length in
	// Lengths, by id of cable.
	Length  measure.Length
	Lengths map[string]measure.Length
}

// Of is the length of a new spool of a kind of cable.
func (p Purchase) Of(cableID string) measure.Length {
	if own, ok := p.Lengths[cableID]; ok {
		return own
	}
	return p.Length
}

// newPurchase buys all cable in spools of one length.
func newPurchase(spool measure.Length) Purchase {
	return Purchase{Length: spool, Lengths: map[string]measure.Length{}}
}

// mostSpools bounds the spools at hand.
const mostSpools = 200

// Ranges of spools.
var (
	lefts     = between(1*inch, 20_000*foot, "what is on a spool")
	marks     = between(0, 300_000*foot, "the length printed on the jacket")
	newSpools = between(10*foot, 20_000*foot, "a new spool")
)

// spools reads [[spool]].
func (l *jobLoader) spools(root *source.Table) {
	ids := names{kind: "spool"}
	for _, t := range tables(root, "spool", source.Optional, mostSpools) {
		s := Spool{Pos: t.Pos()}
		s.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", s.ID)
		s.Cable = l.cableOr(t, "cable", source.Required)
		// Most boxes tell what is left in them (common practice, no source).
		s.Down = choiceOr(t, "counts", "down", "up") == "down"
		only(t, "counts", t.Has("mark"), "mark")
		if s.Mark, s.Marked = length(t, "mark", source.Optional, marks); s.Marked {
			text, _ := t.Text("mark", source.Optional)
			s.Units = systemOf(text)
		}
		s.Left = l.left(t, &s)
		l.job.Spools = append(l.job.Spools, s)
	}
}

// left reads what is on a spool. Marks that count down tell it themselves.
func (l *jobLoader) left(t *source.Table, s *Spool) measure.Length {
	byMark := s.Down && t.Has("mark")
	if byMark && !t.Has("left") {
		if s.Marked && !lefts.Contains(s.Mark) {
			t.Errorf("mark", "found %s left by the mark; want %s: %s", exact(s.Units, s.Mark), lefts.text(s.Units), lefts.why)
		}
		return s.Mark
	}
	left, ok := length(t, "left", source.Required, lefts)
	if ok && byMark && s.Marked && left > s.Mark {
		t.Warnf("left", "there are %s left, but the marks count down from %s: they would go below zero", exact(t.Units(), left), exact(t.Units(), s.Mark))
	}
	return left
}

// buy reads [buy]: the length of a new spool by kind of cable.
func (l *jobLoader) buy(root *source.Table) {
	t, ok := root.Table("buy", source.Optional)
	if !ok {
		return
	}
	known := l.cableIDs()
	for _, id := range t.Keys() {
		if _, ok := l.job.Cable(id); !ok {
			t.Has(id)
			l.list.Errorf(t.KeyPos(id), t.Path(id), "found %.40q, which is no cable; %s", id, suggest(id, "cable", known))
			continue
		}
		if v, ok := length(t, id, source.Required, newSpools); ok {
			l.job.Buy.Lengths[id] = v
		}
	}
}
