package route

import (
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// fixing is a job with these fixed parts, and nothing else changed.
func fixing(job *plan.Job, fixed ...plan.Fixed) *plan.Job {
	j := *job
	j.Fixed = fixed
	return &j
}

// fixedAt is a fixed hole at a place where a plan bores, of so wide a bore that
// everything fits if it is there.
func fixedAt(do plan.FixedDo, id string, p *HolePlace) plan.Fixed {
	return plan.Fixed{ID: id, Do: do, Wall: p.Wall, At: p.Along, Width: 12 * measure.Inch, Diameter: 5 * measure.Inch}
}

// bored lists the places in plates that a plan bores.
func bored(res *Result) []*HolePlace {
	var out []*HolePlace
	for _, h := range res.Holes {
		if p := &res.Graph.Holes[h.Place]; p.Kind == PlateArc {
			out = append(out, p)
		}
	}
	return out
}

func routedDrops(res *Result) int {
	n := 0
	for i := range res.Routes {
		if res.Routes[i].Blocked == nil {
			n++
		}
	}
	return n
}

// Avoiding a hole of the cheapest plan never makes it cheaper, having it there
// never dearer, and using just what it bores changes nothing. Bounds are
// compared where a plan is not proved, so that each line must hold.
func TestRandomFixedHoles(t *testing.T) {
	tried, dearer, cheaper := 0, 0, 0
	for seed := uint64(0); seed < randomHouses; seed += 4 {
		base := randomResult(t, seed)
		holes := bored(base)
		if len(holes) == 0 {
			continue
		}
		tried++
		p := holes[int(seed/4)%len(holes)]
		avoid := solved(t, fixing(base.Job, fixedAt(plan.AvoidFixed, "F", p)))
		there := solved(t, fixing(base.Job, fixedAt(plan.FixedThere, "F", p)))
		switch {
		case routedDrops(avoid) > routedDrops(base):
			t.Errorf("seed %d: with a hole avoided more drops are routed", seed)
		case routedDrops(avoid) == routedDrops(base) && avoid.Cost.Total < base.Cost.LowerBound:
			t.Errorf("seed %d: avoided %d, before at least %d", seed, avoid.Cost.Total, base.Cost.LowerBound)
		case routedDrops(avoid) == routedDrops(base) && avoid.Cost.LowerBound > base.Cost.Total:
			dearer++
		}
		for _, h := range bored(avoid) {
			if h.Wall == p.Wall && dist(h.Along, p.Along) < 6*measure.Inch {
				t.Errorf("seed %d: bored at %v, %v is avoided", seed, h.Along, p.Along)
			}
		}
		if routedDrops(there) < routedDrops(base) || routedDrops(there) == routedDrops(base) && there.Cost.LowerBound > base.Cost.Total {
			t.Errorf("seed %d: with the hole there at least %d, before %d", seed, there.Cost.LowerBound, base.Cost.Total)
		}
		if there.Cost.Total < base.Cost.LowerBound {
			cheaper++
		}
		// On a second look (see Solve) the lattices may differ, and so the plans.
		if len(bored(there)) >= len(holes) && there.Cost.Total >= base.Cost.LowerBound {
			t.Errorf("seed %d: %d holes bored although one is there, before %d", seed, len(bored(there)), len(holes))
		}
		var pins []plan.Fixed
		for i, h := range holes {
			pins = append(pins, fixedAt(plan.UseFixed, string(rune('A'+i)), h))
		}
		use := solved(t, fixing(base.Job, pins...))
		if routedDrops(use) == routedDrops(base) && use.Cost.Proved && base.Cost.Proved && use.Cost.Total != base.Cost.Total {
			t.Errorf("seed %d: with its own holes pinned the plan costs %d, before %d", seed, use.Cost.Total, base.Cost.Total)
		}
		if routedDrops(use) != routedDrops(base) {
			t.Errorf("seed %d: with its own holes pinned %d drops are routed, before %d", seed, routedDrops(use), routedDrops(base))
		}
	}
	if tried < 20 || dearer < tried/4 || cheaper < tried/2 {
		t.Errorf("only %d houses, %d dearer and %d cheaper", tried, dearer, cheaper)
	}
}

// A pin moves the hole to its place, and the order of fixed parts in the file
// changes nothing.
func TestPinnedHole(t *testing.T) {
	base := solved(t, starter(t))
	p := hole(t, base, "west")
	pin := fixedAt(plan.UseFixed, "F2", p)
	pin.At += measure.Inch
	far := fixedAt(plan.AvoidFixed, "F1", p)
	far.At += 3 * measure.Foot
	res := solved(t, fixing(base.Job, pin, far))
	if got := hole(t, res, "west"); got.Along != pin.At || got.Free >= p.Free {
		t.Errorf("bored at %v with %v free, want %v and less than %v", got.Along, got.Free, pin.At, p.Free)
	}
	other := solved(t, fixing(base.Job, far, pin))
	if a, c := outcome(res), outcome(other); !slices.Equal(a, c) {
		t.Errorf("%v\nin another order %v", a, c)
	}
}

// hole is the one that a plan bores in the plate of a wall.
func hole(t *testing.T, res *Result, wall string) *HolePlace {
	t.Helper()
	for _, p := range bored(res) {
		if res.Job.House.Walls[p.Wall].ID == wall {
			return p
		}
	}
	t.Fatalf("nothing is bored in wall %s", wall)
	return nil
}

// What is in the way of a pinned hole is named, at the pin's place in the
// file, and the other drops are planned. The west wall of the starter is
// taped from north to south: its studs stand on 16 in from its frame's end at
// 1 in, so that one has its centre at 161 in; r1 is at 154 in, its cable on the
// stud beside it; the window is from 72 to 120 in.
func TestPinInTheWay(t *testing.T) {
	const keys = "[[fixed]]\nid = \"F1\"\ndo = \"use\"\nwall = \"west\"\nat = \"%\"\n\n[tools]"
	for name, tt := range map[string]struct {
		at   string
		rule rule.ID
		want string
	}{
		"in a stud":       {"13ft 5in", rule.HoleToMemberRule, "where a stud is"},
		"beside a stud":   {"13ft 6in", rule.HoleToMemberRule, "where a stud is 1/4in beside the middle of the hole; 3/4in is needed"},
		"beside power":    {"13ft 3in", rule.PowerBay, "holds the cable of receptacle r1"},
		"under a window":  {"8ft 4in", rule.Window, "study-window closes the bay"},
		"in another bay":  {"15ft 1in", rule.FixedPart, "bored at 15ft 1in along it and nowhere else"},
		"out of all bays": {"0ft 2in", rule.HoleToMemberRule, "where a stud is"},
	} {
		t.Run(name, func(t *testing.T) {
			res := solved(t, starter(t, "[tools]", strings.ReplaceAll(keys, "%", tt.at)))
			if r := routeOf(t, res, "D1"); r.Blocked == nil {
				t.Fatalf("D1 has a route")
			}
			if routedDrops(res) != 2 {
				t.Errorf("%d drops are routed, want the two others", routedDrops(res))
			}
			for _, f := range res.Findings {
				if f.Rule == tt.rule && f.Where == "D1" && strings.Contains(f.Found, tt.want) && strings.HasSuffix(f.Pos.File, "job.toml") && strings.Contains(f.Change, "F1") {
					return
				}
			}
			t.Errorf("findings %+v, want %s: %s", res.Findings, tt.rule, tt.want)
		})
	}
}

// A hole that is there costs nothing to bore, is not listed to be bored, and
// takes what fits: two cables of 6 mm are 12 mm wide, 6.35 mm more is less
// than 3/4 in; three are 12.9 mm. It is not used for the two of D1 if one is
// in it already.
func TestExistingHole(t *testing.T) {
	job := starter(t)
	job.Drops = job.Drops[:2] // without the outdoor cable, which is thicker
	base := solved(t, job)
	p := hole(t, base, "west")
	f := fixedAt(plan.FixedThere, "F1", p)
	f.Diameter = inch(3, 4)
	for _, off := range []measure.Length{0, inch(1, 2)} {
		f.At = p.Along + off
		g, err := Build(fixing(base.Job, f))
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		for i := range g.Arcs {
			a := &g.Arcs[i]
			if a.There == nil {
				continue
			}
			n++
			if a.Capacity != 2 || a.Hole >= 0 || a.Fixed() != 0 || a.PerCable() == 0 || g.Nodes[a.To].At.Y != base.Job.House.Walls[p.Wall].PointAt(f.At).Y {
				t.Errorf("through the hole that is there: %+v", a)
			}
		}
		if n != 1 {
			t.Errorf("%d ways through a hole that is there", n)
		}
	}
	f.Cables = 1
	g, err := Build(fixing(base.Job, f))
	if err != nil {
		t.Fatal(err)
	}
	if slices.ContainsFunc(g.Arcs, func(a Arc) bool { return a.There != nil }) {
		t.Error("a full hole is used")
	}
	for at, want := range map[measure.Length]string{
		inch(161, 1): "job.toml:1:2: fixed part F1: found a hole at 13ft 5in along wall west, where a stud is",
		inch(100, 1): "study-window closes the bay",
	} {
		f.At, f.Pos.File, f.Pos.Line, f.Pos.Col = at, "job.toml", 1, 2
		if _, err := Solve(fixing(base.Job, f)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("a hole at %v: %v", at, err)
		}
	}
}

// laid calls f with every stretch of an arc in the attic that a plan uses.
func laid(res *Result, f func(a *Arc, p, q geom.Point)) {
	for i := range res.Routes {
		for _, k := range res.Routes[i].Arcs {
			switch a := &res.Graph.Arcs[k]; a.Kind {
			case AlongArc, BesideArc, AcrossArc:
				f(a, flat(res.Graph.Nodes[a.From].At), flat(res.Graph.Nodes[a.To].At))
			}
		}
	}
}

// longest is the longest straight stretch of a plan's bundles in the attic.
func longest(res *Result) (a, c geom.Point) {
	for _, b := range res.Bundles {
		for i := 1; i < len(b.Points); i++ {
			p, q := flat(b.Points[i-1]), flat(b.Points[i])
			if (b.Kind == AlongArc || b.Kind == AcrossArc) && geom.Dist(p, q) > geom.Dist(a, c) {
				a, c = p, q
			}
		}
	}
	return a, c
}

// A trunk along what the plan lays anyway costs each cable only; avoided, the
// plan keeps off it and crosses it; an avoided area is not entered.
func TestTrunksOfTheSamples(t *testing.T) {
	for _, name := range []string{"corner-house", "long-roof"} {
		base := solved(t, sample(t, name))
		a, c := longest(base)
		if geom.Dist(a, c) < 4*measure.Foot {
			t.Fatalf("%s: nothing to pin", name)
		}
		trunk := plan.Fixed{ID: "T", Wall: -1, Path: []geom.Point{a, c}, Width: measure.Foot}
		res := solved(t, fixing(base.Job, trunk))
		if res.Cost.Total >= base.Cost.LowerBound {
			t.Errorf("%s: %d with a trunk there, %d without", name, res.Cost.Total, base.Cost.LowerBound)
		}
		on := 0
		laid(res, func(arc *Arc, p, q geom.Point) {
			if beside(a, c, p, q, 1) {
				on++
				if arc.Fixed() != 0 {
					t.Errorf("%s: laying along the trunk costs %d", name, arc.Fixed())
				}
			}
		})
		if on == 0 {
			t.Errorf("%s: nothing is laid along the trunk", name)
		}
		trunk.Do = plan.AvoidFixed
		area := plan.Fixed{ID: "A", Wall: -1, Do: plan.AvoidFixed, Area: geom.Rect{Min: a, Max: c}.Canon().Outset(3 * measure.Inch)}
		for _, f := range []plan.Fixed{trunk, area} {
			res := solved(t, fixing(base.Job, f))
			if res.Cost.Total < base.Cost.LowerBound && routedDrops(res) == routedDrops(base) {
				t.Errorf("%s: avoiding %s is cheaper: %d, before %d", name, f.ID, res.Cost.Total, base.Cost.LowerBound)
			}
			laid(res, func(_ *Arc, p, q geom.Point) {
				if f.ID == "T" && beside(a, c, p, q, 6*measure.Inch) || geom.SegmentEntersRect(p, q, f.Area) {
					t.Errorf("%s: laid from %v to %v, which %s avoids", name, p, q, f.ID)
				}
			})
			for _, r := range res.Routes {
				if b := r.Blocked; b != nil && !slices.ContainsFunc(b.Blocks, func(b Block) bool { return strings.Contains(b.Change, "take fixed part "+f.ID) }) {
					t.Errorf("%s: blocked by %+v", name, b.Blocks)
				}
			}
		}
	}
}

func TestBeside(t *testing.T) {
	p := func(x, y int64) geom.Point { return geom.Point{X: measure.Length(x), Y: measure.Length(y)} }
	for _, tt := range []struct {
		a, c, p, q geom.Point
		half       measure.Length
		want       bool
	}{
		{p(0, 0), p(10, 0), p(3, 0), p(5, 0), 1, true},
		{p(10, 0), p(0, 0), p(12, 0), p(9, 0), 1, true},
		{p(0, 0), p(10, 0), p(10, 0), p(12, 0), 1, false},  // beyond its end
		{p(0, 0), p(10, 0), p(5, -1), p(5, 1), 1, false},   // across
		{p(0, 0), p(10, 0), p(3, 2), p(5, 2), 2, false},    // at its edge
		{p(0, 0), p(10, 0), p(3, 1), p(5, 1), 2, true},     // within
		{p(4, 0), p(4, 10), p(4, 3), p(4, 9), 1, true},     // along Y
		{p(4, 0), p(4, 10), p(0, 4), p(10, 4), 9, false},   // across it
		{p(4, 0), p(4, 10), p(6, 3), p(6, 9), 3, true},     // beside it
		{p(4, 0), p(4, 10), p(6, 11), p(6, 19), 3, false},  // past it
		{p(4, 0), p(4, 10), p(-6, 3), p(-6, 9), 10, false}, // at its edge
	} {
		if got := beside(tt.a, tt.c, tt.p, tt.q, tt.half); got != tt.want {
			t.Errorf("%+v: %v", tt, got)
		}
	}
}
