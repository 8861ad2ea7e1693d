package compare

import (
	"cmp"

	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/route"
)

// A Unit is what a Figure counts.
type Unit uint8

// Units of figures.
const (
	Number Unit = iota
	Money       // cost units: millionths of the currency's unit
	Length      // nanometres
	Minutes
)

// A Figure is a number that both plans have.
type Figure struct {
	ID   string // in words joined by hyphens
	What string // as it is printed
	Unit Unit
	Is   [2]int64
}

// Change is how much more it is in B than in A.
func (f Figure) Change() int64 { return f.Is[1] - f.Is[0] }

// A Cable is how much of one kind of cable is cut.
type Cable struct {
	ID     string
	Cables [2]int // pieces
	Length [2]measure.Length
}

func (c Cable) changed() bool { return c.Cables[0] != c.Cables[1] || c.Length[0] != c.Length[1] }

// figures fills in all that is counted.
func (d *Difference) figures() {
	var f [2]route.Figures
	var terms [2]map[price.ID]int64
	for side, p := range d.Plans {
		f[side] = route.FiguresOf(p.Result)
		terms[side] = map[price.ID]int64{}
		for _, t := range p.Cost.Terms {
			terms[side][t.Term] = t.Amount
		}
	}
	both := func(of func(side int) int64) [2]int64 { return [2]int64{of(0), of(1)} }
	climbs := "ways up into the attic"
	if len(d.Plans[0].Job.House.Spaces)+len(d.Plans[1].Job.House.Spaces) > 2 {
		climbs = "ways up into attics and down into crawl spaces"
	}
	d.Cost = Figure{"cost", "cost", Money, both(func(s int) int64 { return f[s].Cost })}
	d.Figures = []Figure{
		{"unrouted", "drops without an allowed route", Number, both(func(s int) int64 { return unrouted(d.Plans[s].Result) })},
		{"openings", "openings in finished surfaces", Number, both(func(s int) int64 { return int64(f[s].Openings) })},
		{"crawled", "crawled or at arm's length", Length, both(func(s int) int64 { return int64(f[s].Crawled) })},
		{"bored", "holes bored", Number, both(func(s int) int64 { return int64(f[s].Bored) })},
		{"climbs", climbs, Number, both(func(s int) int64 { return int64(d.Plans[s].Tasks.Climbs) })},
		{"minutes", "from the first task to the last", Minutes, both(func(s int) int64 { return int64(d.Plans[s].Tasks.Minutes) })},
	}
	for _, t := range price.Terms {
		sum := both(func(s int) int64 { return terms[s][t.ID] })
		if sum[0] != 0 || sum[1] != 0 {
			d.Terms = append(d.Terms, Figure{string(t.ID), t.Title, Money, sum})
		}
	}
	d.cables()
}

// cables compares how much of each kind is cut.
func (d *Difference) cables() {
	var kinds [2][]string
	for side, p := range d.Plans {
		for _, t := range p.Tails {
			kinds[side] = append(kinds[side], t.Cable)
		}
	}
	for _, in := range pairs(kinds[0], kinds[1], cmp.Compare[string]) {
		var c Cable
		for side, i := range in {
			if i >= 0 {
				t := &d.Plans[side].Tails[i]
				c.ID, c.Cables[side], c.Length[side] = t.Cable, t.Cables, t.Length
			}
		}
		d.Cables = append(d.Cables, c)
	}
}

// unrouted counts the drops that have no allowed route: a plan that leaves one
// out is cheap for the wrong reason.
func unrouted(res *route.Result) (n int64) {
	for i := range res.Routes {
		if res.Routes[i].Blocked != nil {
			n++
		}
	}
	return n
}
