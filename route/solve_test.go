package route

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// starter is the two-room house that `topplate new` writes, with edits made to
// its files: pairs of old and new text.
func starter(t testing.TB, edits ...string) *plan.Job {
	t.Helper()
	read := func(path string) ([]byte, error) {
		src, err := os.ReadFile(filepath.Join("../cmd/topplate/starter", filepath.Base(path)))
		text := string(src)
		for i := 0; i < len(edits); i += 2 {
			text = strings.ReplaceAll(text, edits[i], edits[i+1])
		}
		return []byte(text), err
	}
	job, list := plan.LoadJob("job.toml", read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("the starter does not load")
	}
	return job
}

func solved(t testing.TB, job *plan.Job) *Result {
	t.Helper()
	res, err := Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

func routeOf(t testing.TB, res *Result, tag string) *Route {
	t.Helper()
	for i := range res.Routes {
		if res.Job.Drops[res.Routes[i].Drop].Tag == tag {
			return &res.Routes[i]
		}
	}
	t.Fatalf("no drop %s", tag)
	return nil
}

func inch(n, d int64) measure.Length { return measure.Inch * measure.Length(n) / measure.Length(d) }

// The ceiling point of the starter, by hand. The closet is 7 ft from the south
// corner of the hall, whose face is 5 in (1 cladding, 3-1/2 stud, 1/2 board)
// from the line: 7 ft 5 in = 89 in along the middle wall. Studs stand on 16 in
// from the south frame's face at 4-1/2 in, so the bay is 85-1/4 to 99-3/4 in
// and its hole at 92-1/2 in.
//
//	in the bay, sideways       92-1/2 - 89 =          3-1/2
//	panel 60 to plate 93-5/8 (96 + 5/8 - 3)          33-5/8
//	through the double plate                          3
//	up to the joists' tops                            5-1/2
//	over the joists, 168 to 85 (5 + 80)              83
//	down                                              5-1/2
//	along the joist, 92-1/2 to 89 (5 + 84)            3-1/2
//	through the ceiling board                           5/8
//	sum                                             138-1/4  = 11 ft 6-1/4 in
//
// With 10 ft and 1 ft of loops, twice 6 in of trim and 1 in for the sketch:
// 283-1/4 in; 5 % more is 297.4 in, rounded up to whole feet 25 ft.
func TestLengthsByHand(t *testing.T) {
	job := starter(t)
	job.Drops = job.Drops[1:2] // by itself, so that it shares no hole
	res := solved(t, job)
	r := routeOf(t, res, "D2")
	want := []measure.Length{inch(7, 2), inch(269, 8), inch(3, 1), inch(11, 2), inch(83, 1), inch(11, 2), inch(7, 2), inch(5, 8)}
	var got []measure.Length
	for _, l := range r.Legs {
		got = append(got, l.Length)
	}
	if len(got) != len(want) {
		t.Fatalf("legs %v, want %v", r.Legs, want)
	}
	// The leg along the joist may as well come first: the price is the same.
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("legs %v, want %v", got, want)
	}
	if r.Lengths.Developed != inch(553, 4) || r.Lengths.Cut != 25*measure.Foot {
		t.Errorf("developed %v, cut %v; want 11ft 6-1/4in, 25ft", r.Lengths.Developed, r.Lengths.Cut)
	}
}

// 18.4 m + 3.0 + 0.3 + 2 x 0.15 = 22.0 m, 5 % more 23.1 m (arithmetic on the
// habits of BICSI's manual, as quoted by a trade magazine, for the loops).
func TestCutLengthWorkedExample(t *testing.T) {
	g := &Graph{Job: &plan.Job{House: &plan.House{}, Drops: make([]plan.Drop, 1)}, Arcs: []Arc{{Length: 184 * measure.Metre / 10}}}
	g.Job.Slack = plan.Slack{Closet: 3 * measure.Metre, Outlet: 3 * measure.Metre / 10, Trim: 15 * measure.Centimetre, Percent: 5, Round: measure.Centimetre}
	if got := lengthsOf(g, 0, []int{0}).Cut; got != 231*measure.Metre/10 {
		t.Errorf("cut length %v, want 23.1 m", got)
	}
}

// The low-voltage plate sits on the far side of the stud space from the
// receptacle (common practice, no source). The bay ends at 160-1/4 in along the
// west wall, where the receptacle's cable runs; a 2-1/4 in box kept 2 in from
// it has its middle at 157-1/8 in at most, 1-7/8 in from the wished 159.
func TestPlateBesideReceptacle(t *testing.T) {
	res := solved(t, starter(t))
	r := routeOf(t, res, "D1")
	if r.Moved != inch(15, 8) {
		t.Errorf("D1 moved by %v, want 1-7/8in", r.Moved)
	}
	res = solved(t, starter(t, `shift = "12in"`, `shift = "0in"`))
	r = routeOf(t, res, "D1")
	if r.Blocked == nil {
		t.Fatal("without a shift D1 has a route beside the receptacle's cable")
	}
	found := res.Findings[0]
	if found.Rule != rule.PowerBay || found.Severity != rule.Stop || !strings.Contains(found.Found, "r1") || !strings.Contains(found.Change, "move the plate of D1 by") {
		t.Errorf("finding %+v does not name the receptacle and a move of the plate", found)
	}
	if !strings.HasSuffix(found.Pos.File, "house.toml") || found.Pos.Line == 0 {
		t.Errorf("finding is at %v, not at the receptacle in house.toml", found.Pos)
	}
}

// Each rule that can block a drop is named when it is what blocks it, with a
// change that would help.
func TestWhatBlocks(t *testing.T) {
	longWay := []string{`rods = "15ft"`, `rods = "2ft"`}
	baffle := []string{"[[mark]]", "[[baffle]]\nid = \"b1\"\nwall = \"east\"\nat = \"0ft\"\nwidth = \"16ft\"\n\n[[mark]]"}
	for name, c := range map[string]struct {
		edits []string
		drop  string
		rule  rule.ID
		words string
	}{
		"rods too short":    {longWay, "D3", rule.RodLength, "bring rods"},
		"a baffle":          {baffle, "D3", rule.EaveBaffle, "take baffle b1 out"},
		"bits too short":    {[]string{`extension = "54in"`, `extension = "0in"`}, "D1", rule.BitReach, "bit or extension"},
		"a joist, no shift": {[]string{`west = "6ft 8in", south = "7ft"`, `west = "7ft 7in", south = "7ft"`, `shift = "8in"`, `shift = "0in"`}, "D2", rule.BoxFit, "across the joists"},
	} {
		t.Run(name, func(t *testing.T) {
			res := solved(t, starter(t, c.edits...))
			r := routeOf(t, res, c.drop)
			if r.Blocked == nil {
				t.Fatalf("%s has a route", c.drop)
			}
			for _, b := range r.Blocked.Blocks {
				if b.Rule == c.rule && strings.Contains(b.Change, c.words) {
					return
				}
			}
			t.Errorf("blocked by %+v, want %s", r.Blocked.Blocks, c.rule)
		})
	}
}

// The plan for all drops is proved cheapest on the starter, its terms add up
// to its total, and it shares: it costs less than the drops one by one.
func TestPlanIsProvedCheapest(t *testing.T) {
	res := solved(t, starter(t))
	var terms, alone int64
	for _, s := range res.Cost.Terms {
		terms += s.Amount
	}
	for i := range res.Routes {
		alone += res.Routes[i].Alone
	}
	if !res.Cost.Proved || terms != res.Cost.Total || res.Cost.Total >= alone {
		t.Errorf("cost %+v, terms %d, alone %d", res.Cost, terms, alone)
	}
}

// The terms of an explanation add up to its total; what the drops add, with
// what they share counted once, is not above the plan; no other allowed way is
// cheaper, and a rule that really bars a better way is named.
func TestExplain(t *testing.T) {
	res := solved(t, sample(t, "corner-house"))
	for i := range res.Routes {
		tag := res.Job.Drops[res.Routes[i].Drop].Tag
		e, err := Explain(res, tag)
		if err != nil {
			t.Fatal(err)
		}
		var sum int64
		for _, term := range e.Terms {
			sum += term.Amount
		}
		if sum != e.Total || e.Total > e.Route.Alone+res.Cost.Total {
			t.Errorf("%s: terms add up to %d, total %d", tag, sum, e.Total)
		}
		for _, a := range e.Dearer {
			if a.More < 0 {
				t.Errorf("%s: a way without %s is allowed and %d cheaper", tag, a.Without, -a.More)
			}
		}
	}
	e, err := Explain(res, "S1")
	if err != nil {
		t.Fatal(err)
	}
	named := false
	for _, a := range e.Barred {
		for _, b := range a.Blocks {
			named = named || b.Rule == rule.EaveBaffle
		}
	}
	if !named {
		t.Errorf("S1 is in the next rafter bay because of a baffle, but %+v does not name it", e.Barred)
	}
	if _, err := Explain(res, "nobody"); err == nil {
		t.Error("a drop that is not there is explained")
	}
}

func BenchmarkSolveStarter(b *testing.B) {
	job := starter(b)
	for b.Loop() {
		solved(b, job)
	}
}
