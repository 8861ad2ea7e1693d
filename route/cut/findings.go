package cut

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/stock"
)

// Ids of what is found here.
const (
	NoSpool      rule.ID = "no-spool-long-enough"
	UnusedSpool  rule.ID = "spool-not-used"
	MarkMismatch rule.ID = "spool-mark-mismatch"
)

// Rules are the rules of this package, for whoever prints all of them.
var Rules = []rule.Rule{
	{
		ID: NoSpool, Title: "No spool is long enough", Severity: rule.Stop,
		Source: rule.Source{Status: rule.CommonPractice},
		Text:   "A cable is cut in one piece: a splice in a wall or an attic fails unseen. The spool must hold all of it.",
		Change: "a longer spool, or a closet nearer by",
	},
	{
		ID: UnusedSpool, Title: "Spool of a cable that no drop uses", Severity: rule.Note,
		Source: rule.Source{Status: rule.CommonPractice},
		Text:   "It need not be carried to this job. Or a drop names another cable than was meant.",
	},
	{
		ID: MarkMismatch, Title: "Mark and length of a spool contradict each other", Severity: rule.Caution,
		Source: rule.Source{Status: rule.CommonPractice},
		Text: "Where the printed marks count down they end at zero with the cable, unless it was rewound or cut from a longer reel. " +
			"Unwind and measure if there is a doubt: a cable that comes up short is pulled twice.",
		Change: "the mark and the length as they are on the spool",
	},
}

// unplaced reports cables that no spool is long enough for, once for each drop.
func (p *planner) unplaced(list []stock.Unplaced) []route.Finding {
	counts := map[string]int{}
	for i := range list {
		counts[list[i].Piece.Group]++
	}
	var out []route.Finding
	for i := range list {
		u := &list[i]
		n := counts[u.Piece.Group]
		if n == 0 {
			continue
		}
		counts[u.Piece.Group] = 0
		d := &p.job.Drops[p.of[u.Piece.Tag].drop]
		out = append(out, route.Finding{
			Rule: NoSpool, Severity: rule.Stop, Pos: d.Pos, Where: d.Tag,
			Found:  fmt.Sprintf("%d of %s, %s each: the longest spool, at hand or to buy, has %s", n, d.Cable.ID, p.text(u.Piece.Length), p.text(u.Longest)),
			Change: fmt.Sprintf("%s = %q under [buy], if such spools are sold, or a closet nearer by", d.Cable.ID, u.Piece.Length),
		})
	}
	return out
}

// strangeSpools reports spools of no use, and marks that contradict the length.
func (p *planner) strangeSpools() []route.Finding {
	used := map[string]bool{}
	for i := range p.job.Drops {
		used[p.job.Drops[i].Cable.ID] = true
	}
	var out []route.Finding
	for i := range p.job.Spools {
		s := &p.job.Spools[i]
		if !used[s.Cable.ID] {
			out = append(out, route.Finding{
				Rule: UnusedSpool, Severity: rule.Note, Pos: s.Pos, Where: s.ID,
				Found: fmt.Sprintf("%s of %s, which no drop of the job uses", p.text(s.Left), s.Cable.ID),
			})
		}
		if f, ok := p.mark(s); ok {
			out = append(out, f)
		}
	}
	return out
}

// mark holds the mark of a spool that counts down against what is left.
func (p *planner) mark(s *plan.Spool) (f route.Finding, ok bool) {
	if !s.Marked || !s.Down || s.Mark == s.Left {
		return f, false
	}
	f = route.Finding{
		Rule: MarkMismatch, Severity: rule.Caution, Pos: s.Pos, Where: s.ID,
		Found:  fmt.Sprintf("%s left, but the marks count down from %s and would end below zero", p.text(s.Left), markAfter(s, 0)),
		Change: fmt.Sprintf("left = %q, or the mark as it is on the jacket, or counts = \"up\"", s.Mark),
	}
	if s.Left < s.Mark {
		f.Severity = rule.Note
		f.Found = fmt.Sprintf("%s left, but the marks count down from %s: planned with %s", p.text(s.Left), markAfter(s, 0), p.text(s.Left))
		f.Change = fmt.Sprintf("left = %q, if the marks reach zero at the end of the cable", s.Mark)
	}
	return f, true
}

func (p *planner) text(l measure.Length) string { return p.job.House.Units.Format(l) }
