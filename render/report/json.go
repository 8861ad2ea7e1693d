package report

import (
	"encoding/json"
	"fmt"
	"io"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/cut"
	"topplate/route/fix"
	"topplate/route/order"
	"topplate/route/tasks"
	"topplate/route/work"
)

// Schema names the shape of what JSON writes. JSONSchema describes it.
const Schema = "topplate-result/2"

type results struct {
	Schema   string            `json:"schema" doc:"name and version of this shape"`
	Units    map[string]string `json:"units" doc:"units of lengths, money and time"`
	Job      string            `json:"job"`
	House    string            `json:"house"`
	Drops    []drop            `json:"drops" doc:"in the order of their tags"`
	Holes    []hole            `json:"holes" doc:"from north to south, then west to east"`
	Reused   []reused          `json:"reused" doc:"holes and conduits that are there and used"`
	Cost     cost              `json:"cost" doc:"what the plan was chosen by"`
	Cuts     []cable           `json:"cuts" doc:"how cables come off their spools"`
	Parts    []part            `json:"parts"`
	Order    workOrder         `json:"order" doc:"order of work"`
	Labels   []label           `json:"labels"`
	Power    []device          `json:"power" doc:"devices that are powered over their cable"`
	Estimate estimated         `json:"estimate"`
	Findings []finding         `json:"findings" doc:"worst first"`
}

type drop struct {
	Tag      string       `json:"tag"`
	Kind     string       `json:"kind"`
	Cable    string       `json:"cable"`
	Count    int          `json:"count" doc:"cables"`
	Later    bool         `json:"later" doc:"planned, but not run today"`
	Routed   bool         `json:"routed"`
	Level    string       `json:"level,omitempty" doc:"of a house with several levels"`
	Place    *[3]float64  `json:"place,omitempty" doc:"x east, y north, z up"`
	Moved    float64      `json:"moved" doc:"from where it was wished"`
	Points   [][3]float64 `json:"points" doc:"corners of the route, closet first"`
	Legs     []leg        `json:"legs" doc:"closet first"`
	Bends    int          `json:"bends"`
	Lengths  *lengths     `json:"lengths,omitempty"`
	Alone    int64        `json:"alone" doc:"price of the route if it shared nothing"`
	Changes  []string     `json:"changes,omitempty" doc:"what would allow a route"`
	ChangeAt int64        `json:"changes_price,omitempty"`
}

type leg struct {
	Kind    string  `json:"kind"`
	Heading string  `json:"heading"`
	Length  float64 `json:"length"`
	Hole    string  `json:"hole,omitempty"`
	There   string  `json:"there,omitempty" doc:"the hole that is there and that it goes through"`
	Space   string  `json:"space,omitempty" doc:"that it lies in or leads into, of a house with several"`
}

type lengths struct {
	Developed float64 `json:"developed" doc:"along the route, square corners"`
	Closet    float64 `json:"closet"`
	Outlet    float64 `json:"outlet"`
	Trim      float64 `json:"trim" doc:"for re-termination, both ends together"`
	Sketch    float64 `json:"sketch" doc:"for the error of the sketch"`
	Allowance float64 `json:"allowance"`
	Cut       float64 `json:"cut" doc:"the sum, rounded up"`
}

type hole struct {
	ID       string      `json:"id"`
	Kind     string      `json:"kind"`
	Member   string      `json:"member" doc:"what is bored, in words"`
	At       [3]float64  `json:"at"`
	Wall     string      `json:"wall,omitempty"`
	Level    string      `json:"level,omitempty" doc:"of a house with several levels"`
	Space    string      `json:"space,omitempty" doc:"that it opens into, of a house with several"`
	Along    float64     `json:"along" doc:"along the wall from its start"`
	Cables   int         `json:"cables"`
	Drops    []string    `json:"drops"`
	Bundle   float64     `json:"bundle" doc:"diameter of a circle that surely encloses the thickest bundle"`
	Diameter float64     `json:"diameter" doc:"the largest bore; 0 if no bit fits"`
	Count    int         `json:"count" doc:"bores side by side"`
	Bores    []bore      `json:"bores"`
	Largest  float64     `json:"largest" doc:"that the member allows"`
	Attic    bool        `json:"from_attic" doc:"there is room to bore it from the framing space that it opens into"`
	Shield   bool        `json:"shield" doc:"a steel plate is wanted over it"`
	Tie      bool        `json:"tie" doc:"a metal tie is wanted across the plate"`
	Seal     []string    `json:"seal" doc:"against what it is closed again"`
	Below    string      `json:"from_below" doc:"how it is found without climbing"`
	Above    []string    `json:"from_above" doc:"how it is found in the attic"`
	Error    *float64    `json:"expected_error,omitempty" doc:"of the way from above; 95 % of tries are nearer"`
	Tapes    []taped     `json:"tapes" doc:"the two distances that fix it from above"`
	Joists   *joistCount `json:"joists,omitempty"`
	Far      *farSide    `json:"other_side,omitempty" doc:"how a hole between two spaces is found from the one that it is not bored from"`
}

type farSide struct {
	Space  string      `json:"space"`
	Found  []string    `json:"found"`
	Error  *float64    `json:"expected_error,omitempty" doc:"95 % of tries are nearer"`
	Tapes  []taped     `json:"tapes" doc:"the two distances that fix it"`
	Joists *joistCount `json:"joists,omitempty"`
}

type bore struct {
	Diameter float64 `json:"diameter"`
	Cables   int     `json:"cables"`
	Offset   float64 `json:"offset" doc:"from the middle of the place along the wall"`
	With     string  `json:"with"`
	Need     float64 `json:"need" doc:"how deep the bit must reach"`
	Why      string  `json:"why"`
}

type taped struct {
	Mark     string  `json:"mark"`
	Distance float64 `json:"distance"`
}

type joistCount struct {
	Mark   string  `json:"mark"`
	Joists int     `json:"joists"`
	Offset float64 `json:"offset" doc:"from the centre of the last joist"`
}

type reused struct {
	ID      string     `json:"id"`
	Kind    string     `json:"kind" doc:"hole or conduit"`
	Through string     `json:"through,omitempty" doc:"what a hole goes through"`
	Wall    string     `json:"wall"`
	Along   float64    `json:"along"`
	At      [3]float64 `json:"at"`
	Inside  float64    `json:"inside" doc:"diameter"`
	Before  int        `json:"before,omitempty" doc:"cables that are in a hole already"`
	Cables  int        `json:"cables" doc:"that come to it"`
	Drops   []string   `json:"drops"`
}

type cost struct {
	Total      int64            `json:"total"`
	LowerBound int64            `json:"lower_bound" doc:"no plan costs less"`
	Together   int64            `json:"lower_bound_together" doc:"no plan costs less whose bundles stay together once cables have met"`
	Stopped    bool             `json:"stopped" doc:"the search was ended early"`
	Proved     bool             `json:"proved" doc:"total is lower_bound"`
	Currency   string           `json:"currency"`
	Terms      map[string]int64 `json:"terms"`
}

type cable struct {
	Cable   string  `json:"cable"`
	Cables  int     `json:"cables" doc:"pieces"`
	Length  float64 `json:"length" doc:"of all pieces"`
	New     int     `json:"new_spools"`
	Each    float64 `json:"new_spool_length"`
	Surplus float64 `json:"surplus" doc:"cut off in place if the sketch is right"`
	Left    float64 `json:"left"`
	Patch   float64 `json:"patch" doc:"ends that make patch cords"`
	Waste   float64 `json:"waste"`
	Proved  string  `json:"proved" doc:"in what respects no cut plan is better"`
	Spools  []spool `json:"spools"`
}

type spool struct {
	ID     string  `json:"id"`
	New    bool    `json:"new"`
	Length float64 `json:"length" doc:"before the job"`
	Left   float64 `json:"left"`
	Fate   string  `json:"fate" doc:"of what is left"`
	Cuts   []piece `json:"cuts" doc:"in the order of cutting"`
}

type piece struct {
	Piece  string   `json:"piece" doc:"drop and number of the cable"`
	Length float64  `json:"length"`
	Used   float64  `json:"used" doc:"running number after the cut"`
	Mark   *float64 `json:"mark,omitempty" doc:"footage mark expected at the cut"`
	Check  string   `json:"check,omitempty" doc:"where to stop while the first of equal cables is pulled"`
}

type part struct {
	ID     string `json:"id"`
	Title  string `json:"title"`
	Unit   string `json:"unit"`
	Need   int64  `json:"need"`
	Have   int64  `json:"have"`
	Buy    int64  `json:"buy"`
	Later  int64  `json:"later"`
	Rule   string `json:"rule" doc:"why so many"`
	Charge int64  `json:"charge"`
	Priced bool   `json:"priced"`
}

type workOrder struct {
	People   int      `json:"people"`
	Start    string   `json:"start"`
	End      string   `json:"end"`
	Days     int      `json:"days,omitempty" doc:"on which there is work, if several; end is on the last of them"`
	Sunset   string   `json:"sunset,omitempty"`
	Climbs   int      `json:"climbs" doc:"ways up into attics and down into crawl spaces"`
	Changes  int      `json:"changes" doc:"of place"`
	Minutes  int      `json:"minutes"`
	Proved   bool     `json:"proved" doc:"no order of these tasks is better"`
	Fewest   bool     `json:"proved_changes" doc:"none has fewer changes"`
	Baseline figures  `json:"drop_after_drop"`
	Visits   []visit  `json:"visits"`
	Deferred []string `json:"deferred"`
}

type figures struct {
	Climbs  int `json:"climbs"`
	Changes int `json:"changes"`
	Minutes int `json:"minutes"`
}

type visit struct {
	Number int      `json:"number"`
	Person int      `json:"person"`
	Place  string   `json:"place"`
	Level  string   `json:"level,omitempty" doc:"of a room, in a house with several levels"`
	Climb  bool     `json:"climb"`
	Day    int      `json:"day,omitempty" doc:"of a job of several days, from 1"`
	Arrive string   `json:"arrive"`
	Leave  string   `json:"leave"`
	Carry  []string `json:"carry"`
	Steps  []step   `json:"steps"`
}

type step struct {
	Number   string   `json:"number"`
	Task     string   `json:"task"`
	Kind     string   `json:"kind"`
	Words    string   `json:"words"`
	Day      int      `json:"day,omitempty" doc:"of a job of several days, from 1"`
	Start    string   `json:"start"`
	End      string   `json:"end"`
	Together bool     `json:"together" doc:"both people are in it"`
	Drops    []string `json:"drops"`
	Holes    []string `json:"holes"`
}

type label struct {
	Text  string `json:"text"`
	On    string `json:"on"`
	Drop  string `json:"drop"`
	Cable int    `json:"cable"`
	Panel string `json:"panel"`
	Port  int    `json:"port"`
	Where string `json:"where"`
	Far   string `json:"other_end"`
	Later bool   `json:"later"`
}

type device struct {
	Drop     string  `json:"drop"`
	Cables   int     `json:"cables"`
	Supplied bool    `json:"supplied" doc:"false where nothing can be worked out"`
	Class    int     `json:"class"`
	Watts    float64 `json:"watts" doc:"of the device"`
	Drawn    float64 `json:"drawn" doc:"from the switch"`
	Volts    float64 `json:"volts" doc:"at the device"`
	Longest  float64 `json:"longest" doc:"cable that would still do"`
}

type estimated struct {
	Currency  string         `json:"currency"`
	Decimals  int            `json:"decimals" doc:"amounts are in the smallest unit, so many decimals down"`
	Labour    []estimateLine `json:"labour"`
	Material  []estimateLine `json:"material"`
	Subtotal  int64          `json:"subtotal"`
	Percent   int            `json:"allowance_percent"`
	Allowance int64          `json:"allowance"`
	Total     int64          `json:"total"`
	Notes     []string       `json:"notes"`
}

type estimateLine struct {
	Text    string `json:"text"`
	Minutes int64  `json:"minutes"`
	Amount  int64  `json:"amount"`
}

type finding struct {
	Rule     string `json:"rule"`
	Severity string `json:"severity"`
	Where    string `json:"where"`
	Position string `json:"position" doc:"file:line:column"`
	Measured string `json:"measured" doc:"what was found, with its limit"`
	Change   string `json:"change,omitempty" doc:"what would help"`
	Source   string `json:"source"`
}

// JSON writes all results. Lengths and places are in millimetres, money in
// millionths of the currency's unit but for the estimate.
func JSON(w io.Writer, res *work.Work) error {
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	if err := enc.Encode(resultsOf(res)); err != nil {
		return fmt.Errorf("writing results: %w", err)
	}
	return nil
}

func resultsOf(w *work.Work) results {
	res := w.Result
	out := results{
		Schema: Schema,
		Units:  map[string]string{"length": "mm", "money": "millionths of the currency's unit", "clock": "hh:mm of the day the work begins"},
		Job:    res.Job.Name, House: res.Job.House.Name,
		Drops: []drop{}, Holes: []hole{}, Reused: []reused{}, Cuts: []cable{}, Parts: []part{}, Labels: []label{}, Power: []device{}, Findings: []finding{},
		Order: orderOf(w), Estimate: estimateOf(w),
	}
	for i := range res.Routes {
		out.Drops = append(out.Drops, dropOf(res, &res.Routes[i]))
	}
	for i := range w.Fixes {
		out.Holes = append(out.Holes, foundHole(w, &w.Fixes[i]))
	}
	for i := range res.Reused {
		out.Reused = append(out.Reused, reusedOf(res, &res.Reused[i]))
	}
	c := res.Cost
	out.Cost = cost{c.Total, c.LowerBound, c.Together, res.Stopped, c.Proved, res.Job.Rates.Currency, map[string]int64{}}
	for _, t := range c.Terms {
		out.Cost.Terms[string(t.Term)] = t.Amount
	}
	for i := range w.Cuts.Cables {
		out.Cuts = append(out.Cuts, cableOf(w, &w.Cuts.Cables[i]))
	}
	for i := range w.Parts {
		l := &w.Parts[i]
		out.Parts = append(out.Parts, part{l.ID, l.Title, l.Unit, l.Need, l.Have, l.Buy, l.Later, l.Rule, l.Charge, l.Priced})
	}
	for i := range w.Labels {
		l := &w.Labels[i]
		out.Labels = append(out.Labels, label{l.Text, l.Kind.String(), l.Tag, l.Cable, l.Panel, l.Port, l.Where, l.Far, l.Later})
	}
	for i := range w.Devices {
		d := &w.Devices[i]
		x := device{Drop: res.Job.Drops[d.Drop].Tag, Cables: d.Cables, Supplied: d.Supply != nil}
		if s := d.Supply; s != nil {
			x.Class, x.Watts, x.Drawn, x.Volts, x.Longest = s.Class.Number, s.Watts, s.Drawn, s.DeviceVolts, s.Longest.Millimetres()
		}
		out.Power = append(out.Power, x)
	}
	for i := range res.Findings {
		out.Findings = append(out.Findings, findingOf(&res.Findings[i]))
	}
	return out
}

func dropOf(res *route.Result, r *route.Route) drop {
	d := &res.Job.Drops[r.Drop]
	out := drop{
		Tag: d.Tag, Kind: d.Kind.String(), Cable: d.Cable.ID, Count: d.Count, Later: d.Later, Routed: r.Blocked == nil,
		Moved: r.Moved.Millimetres(), Points: [][3]float64{}, Legs: []leg{}, Bends: r.Bends, Alone: r.Alone,
	}
	many := several(res.Job.House)
	if many {
		out.Level = levelID(res.Job.House, res.Job.House.LevelOf(d))
	}
	if r.Blocked != nil {
		out.ChangeAt = r.Blocked.Changes
		for _, b := range r.Blocked.Blocks {
			out.Changes = append(out.Changes, b.Change)
		}
		return out
	}
	place := mm3(r.Place)
	out.Place = &place
	for _, p := range r.Points {
		out.Points = append(out.Points, mm3(p))
	}
	for _, l := range r.Legs {
		x := leg{Kind: l.Kind.String(), Heading: l.Heading.String(), Length: l.Length.Millimetres()}
		if l.Hole >= 0 {
			x.Hole = res.Holes[l.Hole].ID
		}
		x.There = l.There
		if many && l.Space >= 0 {
			x.Space = res.Job.House.Spaces[l.Space].ID
		}
		out.Legs = append(out.Legs, x)
	}
	l := r.Lengths
	mm := measure.Length.Millimetres
	out.Lengths = &lengths{mm(l.Developed), mm(l.Closet), mm(l.Outlet), mm(l.Trim), mm(l.Sketch), mm(l.Allowance), mm(l.Cut)}
	return out
}

// boredHole is what the routes alone tell of a hole.
func boredHole(res *route.Result, h *route.Hole) hole {
	p := &res.Graph.Holes[h.Place]
	out := hole{
		ID: h.ID, Kind: p.Kind.String(), At: mm3(p.At), Along: p.Along.Millimetres(), Cables: h.Cables, Drops: tagList(res, h.Drops),
		Bundle: h.Bundle.Millimetres(), Diameter: h.Bit.Millimetres(), Count: h.Count,
		Largest: h.Largest.Millimetres(), Attic: p.FromSpace, Shield: h.Shield,
		Bores: []bore{}, Seal: []string{}, Above: []string{}, Tapes: []taped{},
	}
	if p.Wall >= 0 {
		out.Wall = res.Job.House.Walls[p.Wall].ID
	}
	if h := res.Job.House; several(h) {
		out.Level = levelID(h, holeLevel(res, p))
		if p.Space >= 0 {
			out.Space = h.Spaces[p.Space].ID
		}
	}
	return out
}

// foundHole adds how it is made and found.
func foundHole(w *work.Work, f *fix.Hole) hole {
	u := w.Job.House.Units
	out := boredHole(w.Result, &w.Holes[f.Index])
	out.Member, out.Bundle, out.Shield, out.Tie = f.Member, f.Bundle.Millimetres(), f.Shield, f.Tie
	out.Below, out.Above = f.Below.Text, append(out.Above, f.Above.Text...)
	for i := range f.Bores {
		b := &f.Bores[i]
		out.Bores = append(out.Bores, bore{b.Diameter.Millimetres(), b.Cables, b.Offset.Millimetres(), b.BitText(u), b.Bit.Need.Millimetres(), b.Bit.Why})
	}
	out.Seal = append(out.Seal, sealList(f)...)
	a := &f.Above
	out.Error, out.Tapes, out.Joists = foundBy(a)
	if b := f.Far; b != nil {
		out.Far = &farSide{Space: w.Job.House.Spaces[b.Space].ID, Found: b.Text}
		out.Far.Error, out.Far.Tapes, out.Far.Joists = foundBy(b)
	}
	return out
}

// foundBy is what a place is found by in a space.
func foundBy(a *fix.Above) (within *float64, tapes []taped, joists *joistCount) {
	tapes = []taped{}
	if a.Reached && a.Method != fix.ByNothing {
		e := a.Error.Millimetres()
		within = &e
	}
	if a.Fix != nil && a.Fix.Best != nil {
		b := a.Fix.Best
		tapes = append(tapes, taped{b.Marks[0].ID, b.Distance[0].Shown.Millimetres()}, taped{b.Marks[1].ID, b.Distance[1].Shown.Millimetres()})
	}
	if j := a.Joists; j != nil {
		joists = &joistCount{j.Mark.ID, j.Joists, j.Offset.Millimetres()}
	}
	return within, tapes, joists
}

func reusedOf(res *route.Result, u *route.Reuse) reused {
	out := reused{
		ID: u.ID, Kind: "hole", Through: u.Kind.String(), Along: u.Along.Millimetres(), At: mm3(u.At),
		Inside: u.Inside.Millimetres(), Before: u.Before, Cables: u.Cables, Drops: tagList(res, u.Drops),
	}
	if u.Conduit {
		out.Kind, out.Through = "conduit", ""
	}
	if u.Wall >= 0 {
		out.Wall = res.Job.House.Walls[u.Wall].ID
	}
	return out
}

func cableOf(w *work.Work, c *cut.Cable) cable {
	mm := measure.Length.Millimetres
	out := cable{c.ID, c.Pieces, mm(c.Cut), c.New, mm(c.Each), mm(c.Surplus), mm(c.Left), mm(c.Patch), mm(c.Waste), c.Proved, []spool{}}
	for i := range c.Spools {
		s := &c.Spools[i]
		x := spool{s.ID, s.New, mm(s.Length), mm(s.Left), s.Fate, []piece{}}
		for j := range s.Cuts {
			k := &s.Cuts[j]
			y := piece{Piece: k.Piece, Length: mm(k.Length), Used: mm(k.Used), Check: CheckText(s, k.Piece, w.Job.House.Units)}
			if k.Mark.Known {
				at := mm(k.Mark.At)
				y.Mark = &at
			}
			x.Cuts = append(x.Cuts, y)
		}
		out.Spools = append(out.Spools, x)
	}
	return out
}

func orderOf(w *work.Work) workOrder {
	t := w.Tasks
	out := workOrder{
		People: t.People, Start: t.Start.Hours(), End: t.End.Hours(), Climbs: t.Climbs, Changes: t.Changes, Minutes: t.Minutes,
		Proved: t.Proved, Fewest: t.ProvedChanges, Baseline: figures{t.Baseline.Climbs, t.Baseline.Changes, t.Baseline.Minutes},
		Visits: []visit{}, Deferred: append([]string{}, t.Deferred...),
	}
	if t.Sunset > 0 {
		out.Sunset = t.Sunset.String()
	}
	if t.Days > 1 {
		out.Days = t.Days
	}
	for i := range t.Visits {
		out.Visits = append(out.Visits, visitOf(w, &t.Visits[i]))
	}
	return out
}

func visitOf(w *work.Work, v *tasks.Visit) visit {
	out := visit{
		Number: v.Number, Person: v.Person, Place: v.Place.Title, Level: placeLevel(w.Job.House, v.Place), Climb: v.Climb,
		Day: dayOf(w.Tasks, v.Arrive), Arrive: v.Arrive.Hours(), Leave: v.Leave.Hours(), Carry: []string{}, Steps: []step{},
	}
	for _, item := range v.Carry {
		out.Carry = append(out.Carry, item.String())
	}
	for i := range v.Steps {
		s := &v.Steps[i]
		x := step{s.Number, s.Task.ID, s.Task.Kind.String(), s.Words, dayOf(w.Tasks, s.Start), s.Start.Hours(), s.End.Hours(), s.Together, tagList(w.Result, s.Task.Drops), []string{}}
		for _, h := range s.Task.Holes {
			x.Holes = append(x.Holes, w.Holes[h].ID)
		}
		out.Steps = append(out.Steps, x)
	}
	return out
}

// dayOf is the day of a clock in a job of several days, or 0.
func dayOf(t *tasks.Work, c order.Clock) int {
	if t.Days == 1 {
		return 0
	}
	return c.Day()
}

func estimateOf(w *work.Work) estimated {
	e := w.Estimate
	out := estimated{
		e.Currency, e.Decimals, []estimateLine{}, []estimateLine{}, e.Subtotal, e.Percent, e.Allowance, e.Total, append([]string{}, e.Notes...),
	}
	for _, l := range e.Labour {
		out.Labour = append(out.Labour, estimateLine(l))
	}
	for _, l := range e.Material {
		out.Material = append(out.Material, estimateLine(l))
	}
	return out
}

func findingOf(f *route.Finding) finding {
	rl, _ := work.Lookup(f.Rule)
	return finding{
		Rule: string(f.Rule), Severity: f.Severity.String(), Where: f.Where, Position: f.Pos.String(),
		Measured: f.Found, Change: f.Change, Source: rl.Source.String(),
	}
}

func mm3(p geom.Point3) [3]float64 {
	return [3]float64{p.X.Millimetres(), p.Y.Millimetres(), p.Z.Millimetres()}
}
