package cut

import (
	"fmt"
	"slices"
	"strconv"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/stock"
)

// What is kept of a remainder.
const (
	keepPatch = measure.Metre      // for a patch cord (common practice, no source)
	keepSpool = 10 * measure.Metre // for another job (common practice, no source)
)

// Plan plans the cuts of all drops that have a route and are run today. It is
// exact for the jobs of a house, as package stock says.
func Plan(res *route.Result) (*Cuts, []route.Finding) {
	p := planner{job: res.Job, of: map[string]pieceOf{}}
	found := p.strangeSpools()
	today, later := p.pieces(res)
	answer, err := stock.Solve(stock.Job{Pieces: today, Spools: p.spools(), Buy: p.buy(today), Usable: keepSpool, Patch: keepPatch})
	if err != nil {
		return &Cuts{}, append(found, route.Finding{
			Rule: NoSpool, Severity: rule.Stop, Pos: p.job.Drops[0].Pos, Where: p.job.Name,
			Found: fmt.Sprintf("the cuts can't be planned: %v", err), Change: "two jobs instead of one",
		})
	}
	found = append(found, p.unplaced(answer.Unplaced)...)
	cuts := &Cuts{Later: later}
	for i := range answer.Types {
		cuts.Cables = append(cuts.Cables, p.cable(&answer.Types[i]))
	}
	p.cover(cuts, res)
	return cuts, found
}

// A pieceOf is the cable that a piece is.
type pieceOf struct{ drop, number int }

type planner struct {
	job *plan.Job
	of  map[string]pieceOf // by the name of the piece
}

// pieces are the cables to cut today, and the drops that are left for later.
func (p *planner) pieces(res *route.Result) (today []stock.Piece, later []Later) {
	for i := range res.Routes {
		r := &res.Routes[i]
		d := &p.job.Drops[r.Drop]
		switch {
		case r.Blocked != nil:
		case d.Later:
			later = append(later, Later{Tag: d.Tag, Drop: r.Drop, Cable: d.Cable.ID, Count: d.Count, Length: r.Lengths.Cut})
		default:
			today = append(today, p.piecesOf(r.Drop, r.Lengths)...)
		}
	}
	return today, later
}

// piecesOf are the cables of one drop.
func (p *planner) piecesOf(drop int, l route.Lengths) []stock.Piece {
	d := &p.job.Drops[drop]
	var out []stock.Piece
	for n := 1; n <= d.Count; n++ {
		name := d.Tag + "." + strconv.Itoa(n)
		p.of[name] = pieceOf{drop, n}
		out = append(out, stock.Piece{
			Tag: name, Type: d.Cable.ID, Group: d.Tag, Length: l.Cut,
			Excess: l.Cut - l.Developed - l.Closet - l.Outlet - l.Trim,
		})
	}
	return out
}

// spools are those at hand. Marks are reckoned here, not by package stock: one
// may be read between two numbers.
func (p *planner) spools() []stock.Spool {
	var out []stock.Spool
	for i := range p.job.Spools {
		s := &p.job.Spools[i]
		out = append(out, stock.Spool{Tag: s.ID, Type: s.Cable.ID, Length: s.Left})
	}
	return out
}

// buy lists what can be bought of the kinds that are cut.
func (p *planner) buy(pieces []stock.Piece) []stock.Purchase {
	var out []stock.Purchase
	for i := range pieces {
		id := pieces[i].Type
		if !slices.ContainsFunc(out, func(b stock.Purchase) bool { return b.Type == id }) {
			out = append(out, stock.Purchase{Type: id, Length: p.job.Buy.Of(id)})
		}
	}
	return out
}

// cable puts the plan of one kind of cable in the words of the job.
func (p *planner) cable(t *stock.TypePlan) Cable {
	c := Cable{
		ID: t.Type, Each: p.job.Buy.Of(t.Type), Cut: t.Totals.Cut, Proved: t.Proved.String(),
	}
	for i := range t.Spools {
		s := &t.Spools[i]
		for k := range s.Cuts {
			c.Surplus += s.Cuts[k].Piece.Excess
		}
		c.Pieces += len(s.Cuts)
		if s.ID.Tag == "" {
			c.New++
		}
		switch s.Keeping {
		case stock.Usable:
			c.Left += s.Remainder
		case stock.Patch:
			c.Patch += s.Remainder
		case stock.Waste:
			c.Waste += s.Remainder
		}
		c.Spools = append(c.Spools, p.spool(s))
	}
	return c
}

var fates = map[stock.Keeping]string{stock.Empty: "none", stock.Waste: "waste", stock.Patch: "patch cords", stock.Usable: "kept"}

func (p *planner) spool(s *stock.SpoolPlan) Spool {
	out := Spool{ID: s.ID.Tag, Length: s.Length, Left: s.Remainder, Fate: fates[s.Keeping]}
	var at *plan.Spool
	if i := slices.IndexFunc(p.job.Spools, func(q plan.Spool) bool { return q.ID == s.ID.Tag }); i >= 0 {
		at = &p.job.Spools[i]
	} else {
		out.ID, out.New = fmt.Sprintf("new %d", s.ID.New), true
	}
	out.Start, out.End = markAfter(at, 0), markAfter(at, s.Length-s.Remainder)
	for i := range s.Cuts {
		c := &s.Cuts[i]
		of := p.of[c.Piece.Tag]
		out.Cuts = append(out.Cuts, Cut{
			Piece: c.Piece.Tag, Drop: of.drop, Number: of.number, Length: c.Piece.Length, Used: c.Used, Mark: markAfter(at, c.Used),
		})
	}
	for i := range s.Checks {
		c := &s.Checks[i]
		out.Checks = append(out.Checks, Check{
			First: c.First, Equal: c.Equal, Planned: p.planned(s, c.First), StopFirst: c.StopFirst - c.Before,
			Before: c.Before, Rest: c.MustRemain, StopMark: markAfter(at, c.StopFirst), EndMark: markAfter(at, c.StopAfter),
		})
	}
	return out
}

// planned is the length of a piece of a spool.
func (p *planner) planned(s *stock.SpoolPlan, piece string) measure.Length {
	i := slices.IndexFunc(s.Cuts, func(c stock.CutStep) bool { return c.Piece.Tag == piece })
	return s.Cuts[i].Piece.Length
}

// markAfter is the mark at the free end of a spool once a length is drawn off.
// A new spool is nil.
func markAfter(s *plan.Spool, used measure.Length) Mark {
	if s == nil || !s.Marked {
		return Mark{}
	}
	at := s.Mark + used
	if s.Down {
		at = s.Mark - used
	}
	return Mark{Known: at >= 0, At: at, Units: s.Units}
}

// cover finds out which drops for later what is left today would do for.
func (p *planner) cover(c *Cuts, res *route.Result) {
	var spools []stock.Spool
	for i := range c.Cables {
		for k := range c.Cables[i].Spools {
			s := &c.Cables[i].Spools[k]
			spools = append(spools, stock.Spool{Tag: s.ID + " of " + c.Cables[i].ID, Type: c.Cables[i].ID, Length: s.Left})
		}
	}
	var pieces []stock.Piece
	for i := range res.Routes {
		if r := &res.Routes[i]; r.Blocked == nil && p.job.Drops[r.Drop].Later {
			pieces = append(pieces, p.piecesOf(r.Drop, r.Lengths)...)
		}
	}
	answer, err := stock.Solve(stock.Job{Pieces: pieces, Spools: spools, Usable: keepSpool, Patch: keepPatch})
	if err != nil {
		return
	}
	short := map[string]bool{}
	for i := range answer.Unplaced {
		short[answer.Unplaced[i].Piece.Group] = true
	}
	for i := range c.Later {
		c.Later[i].Covered = !short[c.Later[i].Tag]
	}
}
