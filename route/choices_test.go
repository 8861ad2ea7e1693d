package route

import (
	"slices"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/price"
)

// threeWays is the starter with a vent strip in the soffit over the east wall,
// 2 ft from where the camera is wished, and with soffits cut in five minutes:
// cutting is then cheaper than going to the strip.
func threeWays(t testing.TB, edits ...string) *plan.Job {
	t.Helper()
	return starter(t, append([]string{
		"shift = \"16in\"\nnote = \"camera\"", "shift = \"4ft\"\nnote = \"camera\"",
		"[rates]", "[prices]\nopen-soffit = 5\n\n[rates]",
		"[[hatch]]", "[[soffit]]\nid = \"vent\"\nwall = \"east\"\nat = \"10ft\"\nwidth = \"3ft\"\n\n[[hatch]]",
	}, edits...)...)
}

func choices(t testing.TB, job *plan.Job) []Choice {
	t.Helper()
	out, err := Choices(job)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Three plans that differ, by hand. The panel in the middle wall at X = 14 ft
// feeds a trunk west, which all plans have in common: 9 ft 11-1/4 in over the
// joists to X = 4 ft 3/4 in, and 8-3/4 in more to where the rod begins, beside
// it along a joist to the desk at Y = 3 ft 7-1/2 in and to the ceiling point
// at Y = 7 ft 5 in.
//
//	cheapest: bay at Y = 6 ft 4-1/2 in. To the desk 2 ft 9 in, to the ceiling
//	point 1 ft 1/2 in; to the camera, where it is wished at Y = 8 ft, 6 ft 7 in
//	east and 1 ft 7-1/2 in north, the rest by rod. Openings: the box, the
//	ceiling hole and the soffit.
//
//	fewest openings: bay at Y = 7 ft 8-1/2 in. To the desk 4 ft 1 in, to the
//	ceiling point 3-1/2 in; to the strip at Y = 10 ft 1-1/2 in 2 ft 5 in north
//	and 5 ft 11-1/4 in east. The soffit is not cut.
//
//	least crawling: as the cheapest, but the camera is moved to Y = 5 ft
//	10-1/2 in: 6 in south and 5 ft 4 in east, the rest by a longer rod shot.
func TestThreeWays(t *testing.T) {
	in := func(quarters ...int64) (l measure.Length) {
		for _, q := range quarters {
			l += measure.Length(q) * measure.Inch / 4
		}
		return l
	}
	trunk := in(477, 35) // 119-1/4 in and 8-3/4 in
	want := []struct {
		best     Criterion
		openings int
		crawled  measure.Length
	}{
		{Cheapest, 3, trunk + in(4*33, 50, 4*79, 78)},
		{FewestOpenings, 2, trunk + in(4*49, 14, 4*29, 285)},
		{LeastCrawling, 3, trunk + in(4*33, 50, 4*6, 4*64)},
	}
	got := choices(t, threeWays(t))
	if len(got) != len(want) {
		t.Fatalf("%d plans, want %d", len(got), len(want))
	}
	for i, w := range want {
		c := &got[i]
		if !slices.Equal(c.Best, []Criterion{w.best}) || c.Openings != w.openings || c.Crawled != w.crawled || c.Bored != 2 {
			t.Errorf("plan %d: %v with %+v, want %+v with 2 holes bored", i, c.Best, c.Figures, w)
		}
		if c.Cost != c.Result.Cost.Total || c.Cost < got[0].Cost {
			t.Errorf("plan %d costs %d, its terms %d, the cheapest %d", i, c.Cost, c.Result.Cost.Total, got[0].Cost)
		}
	}
	// The cable is what the routes say is cut, twice for the desk.
	for i := range got {
		var sum measure.Length
		for _, r := range got[i].Result.Routes {
			sum += r.Lengths.Cut * measure.Length(got[i].Result.Job.Drops[r.Drop].Count)
		}
		if got[i].Cable != sum {
			t.Errorf("plan %d: %v of cable, its routes %v", i, got[i].Cable, sum)
		}
	}
}

// Every plan is priced at the job's own prices: its terms are those of the
// arcs of a graph that was built for the job itself.
func TestChoicesAreAtTheJobsPrices(t *testing.T) {
	job := threeWays(t)
	g, err := Build(job)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range choices(t, job) {
		used := map[int]bool{}
		var soffits, boxes int64
		for _, r := range c.Result.Routes {
			for _, a := range r.Arcs {
				for _, ch := range g.Arcs[a].Charges {
					if !used[a] && ch.Term == price.OpenSoffit {
						soffits += ch.Amount
					}
					if !used[a] && ch.Term == price.CutBox {
						boxes += ch.Amount
					}
				}
				used[a] = true
			}
		}
		for _, term := range c.Result.Cost.Terms {
			// 5 and 10 minutes at 85 an hour.
			if term.Term == price.OpenSoffit && (term.Amount != soffits || soffits != 7_083_333) ||
				term.Term == price.CutBox && (term.Amount != boxes || boxes != 14_166_667) {
				t.Errorf("%v: %s is %d", c.Best, term.Term, term.Amount)
			}
		}
		if c.Result.Job != job {
			t.Errorf("%v is the plan of another job", c.Best)
		}
	}
}

// A single ceiling point that may not be moved leaves nothing to choose.
func TestOnePlanIsBestInAll(t *testing.T) {
	job := starter(t)
	job.Drops = job.Drops[1:2]
	job.Drops[0].Shift = 0
	got := choices(t, job)
	if len(got) != 1 || !slices.Equal(got[0].Best, []Criterion{Cheapest, FewestOpenings, LeastCrawling}) {
		t.Errorf("%d plans, the first %v", len(got), got[0].Best)
	}
}

// A job whose labour costs nothing has the same choices of openings.
func TestChoicesWithFreeLabour(t *testing.T) {
	fewest := func(cs []Choice) (n int) {
		n = cs[0].Openings
		for i := range cs {
			n = min(n, cs[i].Openings)
		}
		return n
	}
	if got := fewest(choices(t, threeWays(t, "hour = 85", "hour = 0"))); got != 2 {
		t.Errorf("fewest openings: %d, want 2", got)
	}
	// Nor do the highest rate and price get in the way of the search.
	dear := threeWays(t, "hour = 85", "hour = 100000", "open-soffit = 5", "open-soffit = 5\ncut-box-opening = 600")
	if got := fewest(choices(t, dear)); got != 2 {
		t.Errorf("fewest openings at a high rate: %d, want 2", got)
	}
}

func TestUndominated(t *testing.T) {
	plan := func(cost int64, openings int, crawled measure.Length) Choice {
		return Choice{Result: &Result{}, Figures: Figures{Cost: cost, Openings: openings, Crawled: crawled, Cable: 100}}
	}
	a, b, c := plan(1000, 5, 500), plan(1100, 4, 600), plan(1200, 5, 400)
	for _, tt := range []struct {
		name  string
		plans []Choice
		want  []int
	}{
		{"all of them differ", []Choice{a, b, c}, []int{0, 1, 2}},
		{"dearer with as many openings and more crawling", []Choice{a, plan(1001, 5, 501), c}, []int{0, 2}},
		{"the same figures three times", []Choice{a, a, a}, []int{0}},
		{"the cheapest is beaten in all, as it may be where no proof was found", []Choice{a, plan(999, 5, 500), b}, []int{1, 2}},
		{"1 % dearer and 2 % less crawling is the same plan", []Choice{a, b, plan(1010, 5, 490)}, []int{0, 1}},
		{"3 % less crawling is another", []Choice{a, b, plan(1010, 5, 485)}, []int{0, 1, 2}},
	} {
		got := different(undominated(slices.Clone(tt.plans)))
		var want []Choice
		for _, i := range tt.want {
			want = append(want, tt.plans[i])
		}
		if !slices.EqualFunc(got, want, func(a, b Choice) bool { return a.Figures == b.Figures }) {
			t.Errorf("%s: got %+v", tt.name, got)
		}
	}
	// Other holes make another plan, whatever the figures are.
	d := plan(1001, 5, 499)
	d.Result = &Result{Holes: []Hole{{Place: 3, Count: 1}}}
	if got := different(undominated([]Choice{a, d})); len(got) != 2 {
		t.Errorf("a plan with other holes was dropped")
	}
}

// A plan that leaves out a drop is no choice, however cheap it is.
func TestComplete(t *testing.T) {
	all := Choice{Result: &Result{Routes: make([]Route, 2)}, Figures: Figures{Cost: 9}}
	part := Choice{Result: &Result{Routes: []Route{{}, {Blocked: &Blocked{}}}}, Figures: Figures{Cost: 1}}
	if got := complete([]Choice{part, all, part}); len(got) != 1 || got[0].Cost != 9 {
		t.Errorf("got %d plans", len(got))
	}
	if got := complete([]Choice{part, part}); len(got) != 2 {
		t.Errorf("%d of two plans that serve the same drops", len(got))
	}
}

// What all plans have in common names none of them.
func TestNamed(t *testing.T) {
	got := named([]Choice{{Figures: Figures{Cost: 1, Openings: 4, Crawled: 9}}, {Figures: Figures{Cost: 2, Openings: 4, Crawled: 8}}})
	if !slices.Equal(got[0].Best, []Criterion{Cheapest}) || !slices.Equal(got[1].Best, []Criterion{LeastCrawling}) {
		t.Errorf("got %v and %v", got[0].Best, got[1].Best)
	}
}

// Weights move the plan the way they say, and no cost that is printed.
func TestWeights(t *testing.T) {
	preferred := func(weights string) *Result {
		r, err := Preferred(threeWays(t, "[rates]", weights+"\n[rates]"))
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	even := preferred("")
	if want := choices(t, threeWays(t))[0]; FiguresOf(even) != want.Figures || !even.Cost.Proved {
		t.Errorf("without weights: %+v, the cheapest %+v", FiguresOf(even), want.Figures)
	}
	of := FiguresOf(even)
	for _, tt := range []struct {
		weights string
		less    func(f Figures) bool
	}{
		{"[weights]\nopenings = 10", func(f Figures) bool { return f.Openings < of.Openings }},
		{"[weights]\ncrawling = 10", func(f Figures) bool { return f.Crawled < of.Crawled }},
		{"[weights]\ncable = 10", func(f Figures) bool { return f.Cable < of.Cable }},
	} {
		r := preferred(tt.weights)
		f := FiguresOf(r)
		if !tt.less(f) || f.Cost <= of.Cost {
			t.Errorf("%s: %+v, without %+v", tt.weights, f, of)
		}
		if r.Cost.LowerBound != even.Cost.LowerBound || r.Cost.Proved {
			t.Errorf("%s: bound %d and proved %v, the cheapest plan has bound %d", tt.weights, r.Cost.LowerBound, r.Cost.Proved, even.Cost.LowerBound)
		}
		if r.Job.Drops[0].Cable != even.Job.Drops[0].Cable {
			t.Errorf("%s: the job's cable has another price", tt.weights)
		}
	}
}

// No plan for any weights has fewer openings or less crawling than the plan
// that is named for it, nor costs less than the cheapest.
func TestNoWeightsBeatTheChoices(t *testing.T) {
	cs := choices(t, threeWays(t))
	for _, w := range []string{"openings = 3", "openings = 10\ncrawling = 10", "crawling = 3", "cable = 4", "openings = 0.1\ncrawling = 5\ncable = 0.1"} {
		r, err := Preferred(threeWays(t, "[rates]", "[weights]\n"+w+"\n[rates]"))
		if err != nil {
			t.Fatal(err)
		}
		if f := FiguresOf(r); f.Cost < cs[0].Cost || f.Openings < cs[1].Openings || f.Crawled < cs[2].Crawled {
			t.Errorf("%s gives %+v, the choices are %+v, %+v, %+v", w, f, cs[0].Figures, cs[1].Figures, cs[2].Figures)
		}
	}
}
