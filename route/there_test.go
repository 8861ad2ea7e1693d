package route

import (
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// boredAs lists the places of a kind that a plan bores.
func boredAs(res *Result, kind ArcKind) (out []*HolePlace) {
	for _, h := range res.Holes {
		if p := &res.Graph.Holes[h.Place]; p.Kind == kind {
			out = append(out, p)
		}
	}
	return out
}

// dropsOnly is a job with these drops alone.
func dropsOnly(job *plan.Job, tags ...string) *plan.Job {
	j := *job
	j.Drops = slices.DeleteFunc(slices.Clone(job.Drops), func(d plan.Drop) bool { return !slices.Contains(tags, d.Tag) })
	return &j
}

// soleAt is a hole of 1 in that is there where a plan bores a bottom plate.
func soleAt(p *HolePlace) plan.Fixed {
	return plan.Fixed{ID: "old", Do: plan.FixedThere, Wall: p.Wall, At: p.Along, Bottom: true, Diameter: measure.Inch}
}

// near allows for what the price of cable is rounded by on every arc, to a
// millionth: an arc more or less is in other plans where lines cross.
func near(a, b int64) bool { return max(a-b, b-a) < 100 }

// Of the two storeys, G1 and G2 alone, each through a bottom plate from the
// basement: with the hole of one there the same ways cost less by what it takes to
// bore, 7 min of 90 USD an hour. It has room for 7 cables of 6 mm: 1 in less 1/4 in
// is 19.05 mm, seven round ones of 6 mm need 18. It is used with 5 in it, which
// leaves room for the two of each, and not with 6.
func TestBottomPlateThere(t *testing.T) {
	job := dropsOnly(sample(t, "two-storeys"), "G1", "G2")
	base := solved(t, job)
	soles := boredAs(base, SoleArc)
	if len(soles) != 2 {
		t.Fatalf("%d bottom plates bored, want 2", len(soles))
	}
	for _, p := range soles {
		f := soleAt(p)
		for cables, used := range map[int]bool{0: true, 5: true, 6: false} {
			f.Cables = cables
			res := solved(t, fixing(job, f))
			left := boredAs(res, SoleArc)
			if used != (len(left) == 1) || used != (len(res.Reused) == 1) {
				t.Errorf("with %d cables in it %d bottom plates are bored and %d holes used again", cables, len(left), len(res.Reused))
				continue
			}
			if used {
				const boring = 10_500_000
				u := &res.Reused[0]
				if !near(res.Cost.Total, base.Cost.Total-boring) || u.Kind != SoleArc || u.Before != cables || u.Cables != 2 || job.House.Spaces[u.Space].ID != "ground-joists" {
					t.Errorf("cost %d, want %d less than %d; used again: %+v", res.Cost.Total, boring, base.Cost.Total, u)
				}
				continue
			}
			// What is bored then is beside it: no nearer than both halves and 3/4 in.
			for _, h := range left {
				if h.Wall == f.Wall && dist(h.Along, f.At) < f.Diameter/2+3*measure.Inch/8 {
					t.Errorf("bored at %v, where the hole at %v is", h.Along, f.At)
				}
			}
		}
	}
}

// A cable goes down from a box under a window through the hole that is there in
// the bottom plate; a hole in the top plate of that bay can't be.
func TestBottomPlateUnderWindow(t *testing.T) {
	job := dropsOnly(sample(t, "two-storeys"), "G2")
	south := slices.IndexFunc(job.House.Walls, func(w plan.Wall) bool { return w.ID == "south" })
	study := slices.IndexFunc(job.House.Rooms, func(r plan.Room) bool { return r.ID == "study" })
	d := &job.Drops[0]
	d.Spot = plan.Spot{Room: study, Wall: south, Side: job.House.Walls[south].Out.Opposite(), At: 25 * measure.Foot, Height: 12 * measure.Inch}
	base := solved(t, job)
	soles := boredAs(base, SoleArc)
	if len(soles) != 1 || soles[0].Wall != south {
		t.Fatalf("bored: %+v", soles)
	}
	w := &job.House.Walls[south]
	if o := w.Openings[slices.IndexFunc(w.Openings, func(o plan.Opening) bool { return o.ID == "study-w1" })]; soles[0].Along <= o.Start || soles[0].Along >= o.End {
		t.Fatalf("bored at %v, not under study-w1", soles[0].Along)
	}
	f := soleAt(soles[0])
	res := solved(t, fixing(job, f))
	if len(res.Holes) != 0 || len(res.Reused) != 1 || res.Cost.Total >= base.Cost.Total {
		t.Errorf("%d holes bored, %d used again, cost %d; before %d", len(res.Holes), len(res.Reused), res.Cost.Total, base.Cost.Total)
	}
	f.Bottom = false
	if _, err := Solve(fixing(job, f)); err == nil || !strings.Contains(err.Error(), "study-w1 closes the bay") {
		t.Errorf("in the top plate: %v", err)
	}
}

// A pin in a bottom plate moves the hole, an avoided stretch is kept clear, and
// neither says anything of the top plate.
func TestBottomPlatePinnedAndAvoided(t *testing.T) {
	job := dropsOnly(sample(t, "two-storeys"), "G1")
	base := solved(t, job)
	p := boredAs(base, SoleArc)[0]
	pin := plan.Fixed{ID: "F", Wall: p.Wall, At: p.Along + 2*measure.Inch, Bottom: true}
	if got := boredAs(solved(t, fixing(job, pin)), SoleArc); len(got) != 1 || got[0].Along != pin.At {
		t.Errorf("pinned at %v, bored %+v", pin.At, got)
	}
	avoid := plan.Fixed{ID: "F", Do: plan.AvoidFixed, Wall: p.Wall, At: p.Along, Width: measure.Foot, Bottom: true}
	for _, h := range boredAs(solved(t, fixing(job, avoid)), SoleArc) {
		if h.Wall == p.Wall && dist(h.Along, p.Along) < 6*measure.Inch {
			t.Errorf("bored at %v, avoided at %v", h.Along, p.Along)
		}
	}
	for _, f := range []plan.Fixed{pin, avoid} {
		if f.Bottom = false; solved(t, fixing(job, f)).Cost.Total != base.Cost.Total {
			t.Errorf("%s in the top plate changes the way through the bottom plate", f.Do)
		}
	}
	pin.At = 20*measure.Foot + 2*measure.Inch // beside family-outlet, whose cable comes from below
	res := solved(t, fixing(job, pin))
	told := func(f Finding) bool {
		return f.Where == "G1" && f.Rule == rule.PowerBay && strings.Contains(f.Found, "F has the bottom plate of wall living-east bored at") && strings.Contains(f.Found, "family-outlet")
	}
	if routedDrops(res) != 0 || !slices.ContainsFunc(res.Findings, told) {
		t.Errorf("%d routed; %+v", routedDrops(res), res.Findings)
	}
}

// A bay without a box, whose both plates have holes, is gone through again: the
// way costs less by 7 and 8 min of 90 USD an hour for boring.
func TestBayThere(t *testing.T) {
	job := dropsOnly(sample(t, "two-storeys"), "S2")
	base := solved(t, job)
	sole, top := boredAs(base, SoleArc), boredAs(base, PlateArc)
	if len(sole) != 1 || len(top) != 1 || job.House.Walls[top[0].Wall].ID != "bath-north" {
		t.Fatalf("bored: %+v, %+v", sole, top)
	}
	other := soleAt(top[0])
	other.ID, other.Bottom = "older", false
	res := solved(t, fixing(job, soleAt(sole[0]), other))
	if boring := int64(22_500_000); !near(res.Cost.Total, base.Cost.Total-boring) || len(res.Reused) != 2 {
		t.Errorf("cost %d, before %d; used again %+v", res.Cost.Total, base.Cost.Total, res.Reused)
	}
}

// In a tower all cables go up through one bottom plate, whose bay has one box. If
// a hole there takes one cable it is not overfilled.
func TestTowerHoleIsNotOverfilled(t *testing.T) {
	job := towerJob(t, towerDrops)
	base := solved(t, job)
	for _, p := range boredAs(base, SoleArc) {
		f := soleAt(p)
		f.Diameter = inch(1, 2)
		res := solved(t, fixing(job, f))
		for _, u := range res.Reused {
			if u.Cables > 1 {
				t.Errorf("%d cables in a hole for one", u.Cables)
			}
		}
		if slices.ContainsFunc(res.Findings, func(f Finding) bool { return f.Rule == rule.PlateCapacity }) {
			t.Errorf("findings %+v", res.Findings)
		}
		f.Diameter = 2 * measure.Inch
		if res := solved(t, fixing(job, f)); res.Cost.Total >= base.Cost.Total || len(res.Reused) != 1 {
			t.Errorf("cost %d with a wide hole there, before %d", res.Cost.Total, base.Cost.Total)
		}
	}
}

// Having there what the cheapest plan bores in plates never makes it dearer, in
// houses of several levels.
func TestRandomPlatesThere(t *testing.T) {
	tried, cheaper := 0, 0
	for seed := uint64(0); seed < randomStoreys; seed += 3 {
		base := storeyResult(t, seed)
		holes := append(boredAs(base, SoleArc), boredAs(base, PlateArc)...)
		if len(holes) == 0 {
			continue
		}
		tried++
		p := holes[int(seed)%len(holes)]
		f := fixedAt(plan.FixedThere, "F", p)
		f.Bottom = p.Kind == SoleArc
		res := solved(t, fixing(base.Job, f))
		if routedDrops(res) < routedDrops(base) || routedDrops(res) == routedDrops(base) && res.Cost.LowerBound > base.Cost.Total {
			t.Errorf("seed %d: with a hole there in the %s at least %d, before %d", seed, p.Kind, res.Cost.LowerBound, base.Cost.Total)
		}
		if res.Cost.Total < base.Cost.LowerBound {
			cheaper++
		}
	}
	if tried < 10 || cheaper < tried/2 {
		t.Errorf("%d holes, %d made a plan cheaper", tried, cheaper)
	}
}

// Where nothing is under a wall no hole can be in its bottom plate, nor where a
// stud is.
func TestNoBottomPlateThere(t *testing.T) {
	job := dropsOnly(sample(t, "two-storeys"), "G1")
	wall := func(id string) int {
		return slices.IndexFunc(job.House.Walls, func(w plan.Wall) bool { return w.ID == id })
	}
	for _, tt := range []struct {
		wall string
		at   measure.Length
		want string
	}{
		{"wing-east", 6 * measure.Foot, "job.toml:1:2: fixed part old: found a hole at 6ft along wall wing-east, where the sketch has no attic, floor or crawl space that it opens into"},
		{"living-east", 22*measure.Foot + 11*measure.Inch, "where a stud is; want a place in a stud bay"},
		{"living-east", 25 * measure.Foot, "where family-way comes down to the plate"},
	} {
		f := plan.Fixed{ID: "old", Do: plan.FixedThere, Wall: wall(tt.wall), At: tt.at, Bottom: true, Diameter: measure.Inch}
		f.Pos.File, f.Pos.Line, f.Pos.Col = "job.toml", 1, 2
		if _, err := Solve(fixing(job, f)); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v", tt.wall, err)
		}
	}
}
