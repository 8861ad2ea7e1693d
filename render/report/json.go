package report

import (
	"encoding/json"
	"fmt"
	"io"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

// Schema names the shape of what JSON writes.
const Schema = "topplate-result/1"

type results struct {
	Schema   string            `json:"schema"`
	Units    map[string]string `json:"units"`
	Job      string            `json:"job"`
	House    string            `json:"house"`
	Drops    []drop            `json:"drops"`
	Holes    []hole            `json:"holes"`
	Cost     cost              `json:"cost"`
	Cuts     []cut             `json:"cuts"`
	Findings []finding         `json:"findings"`
}

type drop struct {
	Tag      string       `json:"tag"`
	Kind     string       `json:"kind"`
	Cable    string       `json:"cable"`
	Count    int          `json:"count"`
	Routed   bool         `json:"routed"`
	Place    *[3]float64  `json:"place,omitempty"`
	Moved    float64      `json:"moved"`
	Points   [][3]float64 `json:"points"`
	Legs     []leg        `json:"legs"`
	Bends    int          `json:"bends"`
	Lengths  *lengths     `json:"lengths,omitempty"`
	Alone    int64        `json:"alone"`
	Changes  []string     `json:"changes,omitempty"`
	ChangeAt int64        `json:"changes_price,omitempty"`
}

type leg struct {
	Kind    string  `json:"kind"`
	Heading string  `json:"heading"`
	Length  float64 `json:"length"`
	Hole    string  `json:"hole,omitempty"`
}

type lengths struct {
	Developed float64 `json:"developed"`
	Closet    float64 `json:"closet"`
	Outlet    float64 `json:"outlet"`
	Trim      float64 `json:"trim"`
	Sketch    float64 `json:"sketch"`
	Allowance float64 `json:"allowance"`
	Cut       float64 `json:"cut"`
}

type hole struct {
	ID       string     `json:"id"`
	Kind     string     `json:"kind"`
	At       [3]float64 `json:"at"`
	Wall     string     `json:"wall,omitempty"`
	Along    float64    `json:"along"`
	Cables   int        `json:"cables"`
	Drops    []string   `json:"drops"`
	Bundle   float64    `json:"bundle"`
	Diameter float64    `json:"diameter"`
	Count    int        `json:"count"`
	Largest  float64    `json:"largest"`
	Attic    bool       `json:"from_attic"`
	Shield   bool       `json:"shield"`
}

type cost struct {
	Total      int64            `json:"total"`
	LowerBound int64            `json:"lower_bound"`
	Together   int64            `json:"lower_bound_together"`
	Stopped    bool             `json:"stopped"`
	Proved     bool             `json:"proved"`
	Currency   string           `json:"currency"`
	Terms      map[string]int64 `json:"terms"`
}

type cut struct {
	Cable  string  `json:"cable"`
	Cables int     `json:"cables"`
	Length float64 `json:"length"`
}

type finding struct {
	Rule     string `json:"rule"`
	Severity string `json:"severity"`
	Where    string `json:"where"`
	Position string `json:"position"`
	Measured string `json:"measured"`
	Change   string `json:"change,omitempty"`
	Source   string `json:"source"`
}

// JSON writes all results. Lengths and places are in millimetres, money in
// millionths of the currency's unit.
func JSON(w io.Writer, res *route.Result) error {
	out := results{
		Schema: Schema,
		Units:  map[string]string{"length": "mm", "money": "millionths of the currency's unit"},
		Job:    res.Job.Name, House: res.Job.House.Name,
		Drops: []drop{}, Holes: []hole{}, Cuts: []cut{}, Findings: []finding{},
	}
	for i := range res.Routes {
		out.Drops = append(out.Drops, dropOf(res, &res.Routes[i]))
	}
	for i := range res.Holes {
		out.Holes = append(out.Holes, holeOf(res, &res.Holes[i]))
	}
	c := res.Cost
	out.Cost = cost{c.Total, c.LowerBound, c.Together, res.Stopped, c.Proved, res.Job.Rates.Currency, map[string]int64{}}
	for _, t := range c.Terms {
		out.Cost.Terms[string(t.Term)] = t.Amount
	}
	for _, t := range res.Tails {
		out.Cuts = append(out.Cuts, cut{t.Cable, t.Cables, t.Length.Millimetres()})
	}
	for i := range res.Findings {
		out.Findings = append(out.Findings, findingOf(&res.Findings[i]))
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	if err := enc.Encode(out); err != nil {
		return fmt.Errorf("writing results: %w", err)
	}
	return nil
}

func dropOf(res *route.Result, r *route.Route) drop {
	d := &res.Job.Drops[r.Drop]
	out := drop{
		Tag: d.Tag, Kind: d.Kind.String(), Cable: d.Cable.ID, Count: d.Count, Routed: r.Blocked == nil,
		Moved: r.Moved.Millimetres(), Points: [][3]float64{}, Legs: []leg{}, Bends: r.Bends, Alone: r.Alone,
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
		out.Legs = append(out.Legs, x)
	}
	l := r.Lengths
	mm := measure.Length.Millimetres
	out.Lengths = &lengths{mm(l.Developed), mm(l.Closet), mm(l.Outlet), mm(l.Trim), mm(l.Sketch), mm(l.Allowance), mm(l.Cut)}
	return out
}

func holeOf(res *route.Result, h *route.Hole) hole {
	p := &res.Graph.Holes[h.Place]
	out := hole{
		ID: h.ID, Kind: p.Kind.String(), At: mm3(p.At), Along: p.Along.Millimetres(), Cables: h.Cables,
		Bundle: h.Bundle.Millimetres(), Diameter: h.Bit.Millimetres(), Count: h.Count,
		Largest: h.Largest.Millimetres(), Attic: p.FromAbove, Shield: h.Shield,
	}
	if p.Wall >= 0 {
		out.Wall = res.Job.House.Walls[p.Wall].ID
	}
	for _, d := range h.Drops {
		out.Drops = append(out.Drops, res.Job.Drops[d].Tag)
	}
	return out
}

func findingOf(f *route.Finding) finding {
	rl, _ := rule.Lookup(f.Rule)
	return finding{
		Rule: string(f.Rule), Severity: f.Severity.String(), Where: f.Where, Position: f.Pos.String(),
		Measured: f.Found, Change: f.Change, Source: rl.Source.String(),
	}
}

func mm3(p geom.Point3) [3]float64 {
	return [3]float64{p.X.Millimetres(), p.Y.Millimetres(), p.Z.Millimetres()}
}
