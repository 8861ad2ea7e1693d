package estimate

import (
	"slices"
	"strings"

	"topplate/plan/price"
	"topplate/route"
	"topplate/route/parts"
)

// An Estimate is what a job costs. Amounts are in the smallest unit of the
// currency.
type Estimate struct {
	Currency string
	Decimals int
	Hour     string // the rate, as Money writes it
	Labour   []Line
	Material []Line
	Minutes  int64 // of all lines of labour
	// LabourSum and MaterialSum add up to Subtotal, and with Allowance, Percent
	// of the subtotal, to Total.
	LabourSum, MaterialSum, Subtotal, Allowance, Total int64

	Percent int
	Notes   []string // what the sums rest on and leave out, in plain words
}

// A Line is one line of the estimate.
type Line struct {
	Text    string
	Minutes int64 // of labour
	Amount  int64
}

// A group gathers work that a homeowner sees as one thing.
type group struct {
	text  string
	terms []price.ID
}

// groups is in the order of the page. What is named in none goes to the last.
var groups = []group{
	{"Setting up", []price.ID{"set-up", "to-attic", "to-crawl", "to-outside", "to-room", "stairs", "make-fast"}},
	{"Cutting openings, fitting boxes and plates", []price.ID{
		price.CutBox, price.CutCeiling, price.MountBox, "panel-opening",
	}},
	{"Opening and closing soffits", []price.ID{price.OpenSoffit, "bore-soffit", "open-vent-strip", "close-vent-strip"}},
	{"Boring holes in the framing, and sealing them", append([]price.ID{"seal-board"}, price.Bores...)},
	{"Closing and painting openings in walls", []price.ID{price.Patch}},
	{"Laying and pulling cable", []price.ID{
		price.Walk, price.CrawlTravel, price.ArmTravel, price.Insulation, price.CrossJoist, price.Pull, price.BendFree, price.BendAtHole,
		price.LiftBoard, price.Rod, price.RodPush, price.FishConduit, price.FishBay, price.OutOfBack, price.FishChase, price.PassAttic, price.OutsideRun, price.OutsideAnchors, price.RacewayDoor, "mount-channel", "cut-cable",
	}},
	{"Jacks and plugs, labels", []price.ID{"end-jack", "end-plug", "end-coax", "end-screws", "panel-port", "tag-cable"}},
	{"Testing every cable", []price.ID{"test-link", "power-up"}},
	{"Clearing up", []price.ID{"clean-room", "clean-attic", "clean-crawl", "clean-outside", "clean-closet"}},
	{"Other work", nil},
}

// Of makes the estimate. lines are those of package parts: what is needed is
// charged, also what is taken from stock. hours are those of the drops that
// are run today, as Usual gives them or as the tasks of the job have them.
func Of(res *route.Result, lines []parts.Line, hours Hours) (*Estimate, []route.Finding) {
	job := res.Job
	e := &Estimate{Currency: job.Rates.Currency, Decimals: decimals(job.Rates.Currency), Percent: job.Allowance}
	e.Hour = e.Money(minor(job.Rates.Hour*1000, e.Decimals))
	e.labour(hours, job.Rates.Hour)
	e.material(lines)
	e.Subtotal = e.LabourSum + e.MaterialSum
	e.Allowance = (e.Subtotal*int64(e.Percent) + 50) / 100
	e.Total = e.Subtotal + e.Allowance
	e.notes(res, lines)
	return e, findings(res)
}

// labour adds up the work by group. An hour costs hour thousandths of the
// currency's unit; a minute of it is hour*1000/60 cost units, of which what is
// less than one is dropped: it can't change where half a coin is passed.
func (e *Estimate) labour(hours Hours, hour int64) {
	sums := make([]int64, len(groups))
	for _, w := range hours.Work {
		i := slices.IndexFunc(groups, func(g group) bool { return slices.Contains(g.terms, w.Term) })
		if i < 0 {
			i = len(groups) - 1
		}
		sums[i] += w.Thousandths
	}
	for i, sum := range sums {
		minutes := (sum + 500) / 1000
		if minutes == 0 {
			continue
		}
		l := Line{Text: groups[i].text, Minutes: minutes, Amount: minor(minutes*hour*1000/60, e.Decimals)}
		e.Labour = append(e.Labour, l)
		e.Minutes += l.Minutes
		e.LabourSum += l.Amount
	}
}

// material adds up the parts by group.
func (e *Estimate) material(lines []parts.Line) {
	sums := map[parts.Group]int64{}
	var order []parts.Group
	for i := range lines {
		l := &lines[i]
		if l.Charge == 0 {
			continue
		}
		if _, ok := sums[l.Group]; !ok {
			order = append(order, l.Group)
		}
		sums[l.Group] += l.Charge
	}
	slices.Sort(order)
	for _, g := range order {
		l := Line{Text: headline(g), Amount: minor(sums[g], e.Decimals)}
		e.Material = append(e.Material, l)
		e.MaterialSum += l.Amount
	}
}

// headline is what a group of parts is called on the page.
func headline(g parts.Group) string {
	text := g.String()
	return strings.ToUpper(text[:1]) + text[1:]
}
