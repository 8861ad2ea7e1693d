package route

import (
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
)

// opening is a hole that an earlier job left where a plan bores.
func opening(res *Result, p *HolePlace) plan.Opened {
	return plan.Opened{ID: "old", Through: p.Kind.String(), Wall: p.Wall, At: p.Along, Pointed: true, Point: p.At, Diameter: 5 * measure.Inch}
}

// after is a job with these holes from earlier ones.
func after(job *plan.Job, holes ...plan.Opened) *plan.Job {
	j := *job
	j.Before.Opened = holes
	return &j
}

// skirting is the job of TestRacewayAlongTheSkirting: through an inner wall.
func skirting(t *testing.T) *plan.Job {
	t.Helper()
	house := strings.Replace(cottage(false, ""), "[roof]\nkind = \"gable\"\ngables = [\"ground-w\", \"ground-e\"]\npitch = \"12/12\"", "[roof]\nkind = \"flat\"", 1)
	house = house[:strings.Index(house, "[[hatch]]")]
	house = strings.Replace(house, "rafter = \"2x6\"\n", "", 1)
	return jobIn(t, house, groundPanel+"[[drop]]\ntag = \"E\"\nkind = \"wall plate\"\nwall = \"ground-e\"\nside = \"left\"\nat = \"10ft\"\n[allow]\nraceway = true\n")
}

// A plan costs less by what it takes to make a hole, in minutes at so much an hour,
// if the hole is there: of each kind that is bored elsewhere than in a plate. What
// is not known of an old record is made good by the wall, if one height alone comes
// into question. If it is full, or elsewhere, the plan costs what it did, nothing is
// bored into it, and why it isn't used is told.
func TestOpenedHoles(t *testing.T) {
	for _, tt := range []struct {
		name          string
		job           *plan.Job
		kind          ArcKind
		minutes, hour int64
	}{
		{"split-level", sample(t, "split-level"), PassArc, 15, 85},
		{"split-level", sample(t, "split-level"), CeilingArc, 10, 85},
		{"plaster-house", sample(t, "plaster-house"), BlockArc, 12, 90},
		{"long-roof", sample(t, "long-roof"), GableArc, 20, 95},
		{"tower", towerJob(t, closedFloor+"\n[allow]\npatching = true\n"), JoistArc, 8, 60},
		{"cottage", skirting(t), WallArc, 10, 60},
	} {
		base := solved(t, tt.job)
		places := boredAs(base, tt.kind)
		if len(places) == 0 {
			t.Errorf("%s: no hole through the %s", tt.name, tt.kind)
			continue
		}
		o := opening(base, places[0])
		saved := tt.minutes * tt.hour * 1_000_000 / 60
		there := func(name string, o plan.Opened) {
			res := solved(t, after(tt.job, o))
			if len(res.Reused) != 1 || res.Reused[0].Kind != tt.kind || !near(res.Cost.Total, base.Cost.Total-saved) || len(res.Holes) >= len(base.Holes) || res.Graph.Known[0].Unused != "" {
				t.Errorf("%s, %s, %s: cost %d, want %d less than %d; used again %+v, known %+v", tt.name, tt.kind, name, res.Cost.Total, saved, base.Cost.Total, res.Reused, res.Graph.Known)
			}
		}
		unused := func(name string, o plan.Opened, why string) {
			res := solved(t, after(tt.job, o))
			if len(res.Reused) != 0 || !near(res.Cost.Total, base.Cost.Total) || !strings.Contains(res.Graph.Known[0].Unused, why) {
				t.Errorf("%s, %s, %s: cost %d, before %d; %+v", tt.name, tt.kind, name, res.Cost.Total, base.Cost.Total, res.Graph.Known)
			}
			for _, p := range boredAs(res, tt.kind) {
				beside := tt.kind == CeilingArc || !o.Pointed || max(dist(p.At.X, o.Point.X), dist(p.At.Y, o.Point.Y), dist(p.At.Z, o.Point.Z)) >= o.Diameter/2
				if !beside {
					t.Errorf("%s, %s, %s: bored at %v, where the hole is", tt.name, tt.kind, name, p.At)
				}
			}
		}
		there("as it is", o)
		full := o
		full.Diameter, full.Cables = measure.Inch, 40
		unused("full", full, "it has room for 0 more, and")
		far := o
		far.At, far.Point.X, far.Point.Y = o.At+6*measure.Inch, o.Point.X+6*measure.Inch, o.Point.Y+6*measure.Inch
		far.Diameter = measure.Inch
		unused("elsewhere", far, "no cable of this job can come through there")
		plain := o
		plain.Pointed = false
		if o.Wall >= 0 {
			there("of an old record", plain)
		} else {
			unused("of an old record", plain, "its record doesn't say where it is")
		}
	}
}

// Having there whatever the cheapest plan bores, one hole of each kind, never makes
// it dearer.
func TestRandomHolesThere(t *testing.T) {
	tried := map[ArcKind]int{}
	results := []*Result{}
	for seed := uint64(0); seed < randomHouses; seed += 25 {
		results = append(results, randomResult(t, seed))
	}
	for seed := uint64(0); seed < randomStoreys; seed += 12 {
		results = append(results, storeyResult(t, seed))
	}
	for i, base := range results {
		var holes []plan.Opened
		for _, h := range base.Holes {
			p := &base.Graph.Holes[h.Place]
			if p.Kind != PlateArc && p.Kind != SoleArc && !slices.ContainsFunc(holes, func(o plan.Opened) bool { return o.Through == p.Kind.String() }) {
				o := opening(base, p)
				o.ID = p.Kind.String()
				holes = append(holes, o)
				tried[p.Kind]++
			}
		}
		if len(holes) == 0 {
			continue
		}
		res := solved(t, after(base.Job, holes...))
		if routedDrops(res) < routedDrops(base) || routedDrops(res) == routedDrops(base) && res.Cost.LowerBound > base.Cost.Total {
			t.Errorf("house %d: with holes there at least %d, before %d", i, res.Cost.LowerBound, base.Cost.Total)
		}
	}
	if len(tried) < 3 {
		t.Errorf("only %v", tried)
	}
}
