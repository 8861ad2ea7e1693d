package main

import (
	"fmt"
	"math/big"
	"slices"
	"strconv"

	"topplate/plan"
	"topplate/plan/cable"
	"topplate/plan/connector"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/record"
	"topplate/route"
	"topplate/route/work"
)

// recordPlan is what a record is held against.
func recordPlan(w *work.Work) *record.Plan {
	res, job := w.Result, w.Job
	p := &record.Plan{
		Job: job.Name, Number: job.Number, By: job.By, Units: job.House.Units,
		Ports: job.Closet.Ports, Hours: w.Estimate.Minutes * 1000 / 60, CableKinds: cable.IDs(), Plugs: connector.IDs(),
	}
	for _, in := range job.Inputs {
		p.Inputs = append(p.Inputs, record.Input{Path: in.Path, SHA256: in.SHA256})
	}
	for i := range job.OwnCables {
		p.CableKinds = append(p.CableKinds, job.OwnCables[i].Type.ID)
	}
	for i := range job.OwnConnectors {
		p.Plugs = append(p.Plugs, job.OwnConnectors[i].Type.ID)
	}
	for i := range res.Routes {
		p.Cables = append(p.Cables, plannedCables(job, &res.Routes[i])...)
	}
	for i := range res.Holes {
		p.Holes = append(p.Holes, plannedHoles(res, &res.Holes[i])...)
	}
	p.Holes = append(p.Holes, holesThere(res)...)
	for i := range job.Spools {
		s := &job.Spools[i]
		p.Spools = append(p.Spools, record.PlannedSpool{ID: s.ID, Cable: s.Cable.ID, Left: s.Left, Marked: s.Marked, Mark: s.Mark, Down: s.Down})
	}
	for i := range job.House.Walls {
		w := &job.House.Walls[i]
		a, b := w.Along(w.Body.Min), w.Along(w.Body.Max)
		p.Walls = append(p.Walls, record.PlannedWall{ID: w.ID, From: min(a, b), To: max(a, b)})
	}
	for _, u := range job.Before.Ports {
		p.UsedPorts = append(p.UsedPorts, record.UsedPort{Origin: record.Origin{File: u.Pos.File, Line: u.Pos.Line, Number: u.Entry}, Cable: u.Cable, Port: u.Port})
	}
	return p
}

// plannedCables are the cables of one drop.
func plannedCables(job *plan.Job, r *route.Route) []record.PlannedCable {
	d := &job.Drops[r.Drop]
	out := make([]record.PlannedCable, d.Count)
	for i := range out {
		out[i] = record.PlannedCable{
			ID: cableName(d, i), Tag: d.Tag, Only: d.Count == 1, Later: d.Later, NoRoute: r.Blocked != nil,
			Kind: d.Cable.ID, Diameter: d.Cable.Diameter, Developed: r.Lengths.Developed, Cut: r.Lengths.Cut,
			Powered: d.Class > 0 || d.Watts > 0,
		}
		if len(r.Points) > 0 {
			out[i].Straight = straight(r.Points[0], r.Points[len(r.Points)-1])
		}
	}
	return out
}

// cableName is the tag of a drop and the number of its cable i, from 0.
func cableName(d *plan.Drop, i int) string { return d.Tag + "." + strconv.Itoa(i+1) }

// straight is the distance of two points, rounded down to the nanometre.
func straight(a, b geom.Point3) measure.Length {
	sum := new(big.Int)
	for _, l := range []measure.Length{b.X - a.X, b.Y - a.Y, b.Z - a.Z} {
		n := big.NewInt(int64(l))
		sum.Add(sum, n.Mul(n, n))
	}
	return measure.Length(sum.Sqrt(sum).Int64())
}

// plannedHoles are the holes at one place: one, or H3.1, H3.2 side by side
// along the wall about its middle.
func plannedHoles(res *route.Result, h *route.Hole) []record.PlannedHole {
	place := &res.Graph.Holes[h.Place]
	one := record.PlannedHole{ID: h.ID, Bore: boreOf(res, place, h.Bit), Largest: h.Largest}
	if h.Count <= 1 {
		one.Cables = cableNames(res, h.Drops)
		return []record.PlannedHole{one}
	}
	out := slices.Repeat([]record.PlannedHole{one}, h.Count)
	for i := range out {
		out[i].ID = fmt.Sprintf("%s.%d", h.ID, i+1)
		if one.Wall != "" {
			out[i].At += (h.Width-h.Bit)*measure.Length(i)/measure.Length(h.Count-1) - (h.Width-h.Bit)/2
		}
	}
	return out
}

// boreOf is a hole at a place. In a plate its height says nothing.
func boreOf(res *route.Result, p *route.HolePlace, diameter measure.Length) record.Bore {
	out := record.Bore{Through: p.Kind.String(), Diameter: diameter}
	if p.Wall >= 0 {
		out.Wall, out.At = res.Job.House.Walls[p.Wall].ID, p.Along
	}
	if !out.InPlate() {
		out.Pointed, out.Point = true, [3]measure.Length{p.At.X, p.At.Y, p.At.Z}
	}
	return out
}

// cableNames are the cables of some drops. It is never nil.
func cableNames(res *route.Result, drops []int) []string {
	out := []string{}
	for _, d := range drops {
		for i := range res.Job.Drops[d].Count {
			out = append(out, cableName(&res.Job.Drops[d], i))
		}
	}
	return out
}

// holesThere are the holes that are there and that cables are planned through.
func holesThere(res *route.Result) (out []record.PlannedHole) {
	for i := range res.Reused {
		u := &res.Reused[i]
		if u.Conduit {
			continue
		}
		out = append(out, record.PlannedHole{ID: u.ID, Bore: boreOf(res, &u.HolePlace, u.Inside), Cables: cableNames(res, u.Drops), There: u.Before})
	}
	return out
}
