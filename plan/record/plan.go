package record

import (
	"cmp"
	"slices"
	"strings"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

// A Plan is what was planned, as far as a record is held against it.
type Plan struct {
	Job, Number, By string
	Units           measure.System
	Inputs          []Input // the job's own first, that of its house second
	Cables          []PlannedCable
	Holes           []PlannedHole
	Spools          []PlannedSpool
	Walls           []PlannedWall
	CableKinds      []string
	Plugs           []string // ids of what may be on an end
	Ports           int
	UsedPorts       []UsedPort // by earlier jobs
	Hours           int64      // of work by the estimate, thousandths
}

// A PlannedCable is one cable of a drop.
type PlannedCable struct {
	ID        string // tag and number in the drop: D1.2
	Tag       string
	Only      bool // the drop's one cable, so that the tag will do
	Later     bool
	NoRoute   bool
	Kind      string
	Diameter  measure.Length
	Developed measure.Length // along the route
	Straight  measure.Length // between the ends of the route
	Cut       measure.Length
	Powered   bool
}

// A PlannedHole is a hole that is to be bored, or one that is there and that
// cables are planned through.
type PlannedHole struct {
	ID      string
	Bore                   // Diameter is 0 if no bit will do
	Largest measure.Length // that is allowed there, 0 if nothing is said
	Cables  []string       // nil if the plan doesn't say which of several holes side by side they take
	There   int            // cables in it before
}

// A PlannedSpool is a spool at hand.
type PlannedSpool struct {
	ID    string
	Cable string
	Left  measure.Length
	// Marked, Mark and Down as in Spool.
	Marked bool
	Mark   measure.Length
	Down   bool
}

// A PlannedWall is a wall by its id, and between where a hole can be along it.
type PlannedWall struct {
	ID       string
	From, To measure.Length
}

// Cable finds a cable by its id, or by the tag of a drop of one cable.
func (p *Plan) Cable(id string) (*PlannedCable, bool) {
	for _, same := range []func(c *PlannedCable) bool{
		func(c *PlannedCable) bool { return c.ID == id },
		func(c *PlannedCable) bool { return c.Only && c.Tag == id },
	} {
		for i := range p.Cables {
			if same(&p.Cables[i]) {
				return &p.Cables[i], true
			}
		}
	}
	return nil, false
}

// Of lists the ids of a drop's cables.
func (p *Plan) of(tag string) (ids []string) {
	for i := range p.Cables {
		if p.Cables[i].Tag == tag {
			ids = append(ids, p.Cables[i].ID)
		}
	}
	return ids
}

// Expand turns tags of drops into the ids of their cables, and keeps the rest.
func (p *Plan) Expand(ids []string) (out []string) {
	for _, id := range ids {
		if all := p.of(id); len(all) > 0 && !slices.ContainsFunc(p.Cables, func(c PlannedCable) bool { return c.ID == id }) {
			out = append(out, all...)
		} else {
			out = append(out, id)
		}
	}
	return out
}

// Hole finds a hole by its id.
func (p *Plan) Hole(id string) (*PlannedHole, bool) {
	i := slices.IndexFunc(p.Holes, func(h PlannedHole) bool { return h.ID == id })
	if i < 0 {
		return nil, false
	}
	return &p.Holes[i], true
}

// Spool finds a spool by its id.
func (p *Plan) Spool(id string) (*PlannedSpool, bool) {
	i := slices.IndexFunc(p.Spools, func(s PlannedSpool) bool { return s.ID == id })
	if i < 0 {
		return nil, false
	}
	return &p.Spools[i], true
}

func (p *Plan) wall(id string) (*PlannedWall, bool) {
	i := slices.IndexFunc(p.Walls, func(w PlannedWall) bool { return w.ID == id })
	if i < 0 {
		return nil, false
	}
	return &p.Walls[i], true
}

func (p *Plan) text(l measure.Length) string { return p.Units.Format(l) }

// ids are the ids of all things of a kind.
func (p *Plan) ids(k Kind) (out []string) {
	switch k {
	case CableKind:
		for i := range p.Cables {
			out = append(out, p.Cables[i].ID)
		}
	case HoleKind:
		for i := range p.Holes {
			out = append(out, p.Holes[i].ID)
		}
	case SpoolKind:
		for i := range p.Spools {
			out = append(out, p.Spools[i].ID)
		}
	}
	return out
}

// start is the first entry of the record of p.
func (p *Plan) start() Start { return Start{Name: p.Job, Number: p.Number, Inputs: p.Inputs} }

// Changes says which files of the job are not what they were when the record
// was begun, in the order of their names.
func (p *Plan) Changes(all []Entry) (out []string) {
	e, ok := find(all, StartKind, "")
	if !ok {
		return nil
	}
	then := map[string]Input{}
	for _, in := range e.Start.Inputs {
		then[in.Path] = in
	}
	for _, in := range p.Inputs {
		old, ok := then[in.Path]
		switch {
		case !ok:
			out = append(out, in.Path+" is new since then")
		case old.SHA256 != in.SHA256:
			out = append(out, in.Path+" was changed since then")
		}
		delete(then, in.Path)
	}
	for path := range then {
		out = append(out, path+" is no longer a part of the job")
	}
	slices.SortFunc(out, cmp.Compare[string])
	return out
}

// near says which name of a thing may be meant.
func near(word string, known []string) string {
	if n, ok := diag.Nearest(word, known); ok {
		return "the nearest is " + n
	}
	const most = 8
	switch {
	case len(known) == 0:
		return "there is none"
	case len(known) > most:
		return "there are " + strings.Join(known[:most], ", ") + ", …"
	}
	return "there are " + strings.Join(known, ", ")
}
