package cut

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/plan/rule"
	"topplate/route"
)

const (
	corner = "../../samples/corner-house/job.toml"
	long   = "../../samples/long-roof/job.toml"
	first  = "../../cmd/topplate/starter/job.toml"
)

// solved is the result of a job, with edits made to its text.
func solved(t testing.TB, path string, edits ...string) *route.Result {
	t.Helper()
	return solve(t, path, func(p string) ([]byte, error) {
		src, err := os.ReadFile(filepath.Clean(p))
		text := string(src)
		for i := 0; i < len(edits); i += 2 {
			text = strings.ReplaceAll(text, edits[i], edits[i+1])
		}
		return []byte(text), err
	})
}

func solve(t testing.TB, path string, read plan.FileReader) *route.Result {
	t.Helper()
	job, list := plan.LoadJob(path, read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatalf("%s does not load", path)
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

// with puts tables before [rates], the last but one table of every job here.
func with(tables string) []string { return []string{"[rates]", tables + "\n[rates]"} }

// written is a plan in one line for each spool.
func written(c *Cuts) string {
	var b strings.Builder
	for i := range c.Cables {
		k := &c.Cables[i]
		for _, s := range k.Spools {
			fmt.Fprintf(&b, "%s %s %v:", k.ID, s.ID, s.Length)
			for _, x := range s.Cuts {
				fmt.Fprintf(&b, " %s %v", x.Piece, x.Used)
				if x.Mark.Known {
					fmt.Fprintf(&b, " (%s)", x.Mark)
				}
				b.WriteByte(',')
			}
			fmt.Fprintf(&b, " left %v %s\n", s.Left, s.Fate)
		}
	}
	return b.String()
}

// The samples and the starter by hand. The lengths to cut are in
// testdata/*/schedule.txt: 3 x 63 + 49 + 2 x 46 + 2 x 41 + 2 x 39 = 490 ft and
// 60 + 59 = 119 ft; 13.5 + 2 x 12.5 + 12 + 2 x 10.5 = 71.5 m and 17 + 16 = 33 m.
// No spool is at hand, so one of each is bought: 1000 ft, or 305 m.
func TestSamples(t *testing.T) {
	for path, want := range map[string]string{
		corner: "cat6 new 1 1000ft: D1.1 63ft, D1.2 126ft, D1.3 189ft, D3.1 237ft, D2.1 283ft, D2.2 329ft, C1.1 370ft, C1.2 411ft, C2.1 450ft, C2.2 489ft, left 511ft kept\n" +
			"cat6-outdoor new 1 1000ft: S1.1 61ft, S2.1 118ft, left 882ft kept\n",
		long: "cat6 new 1 305000mm: W2.1 13500mm, W1.1 26000mm, W1.2 38500mm, C1.1 50500mm, W3.1 61000mm, W3.2 71500mm, left 233500mm kept\n" +
			"cat6-outdoor new 1 305000mm: S2.1 17000mm, S1.1 33000mm, left 272000mm kept\n",
		first: "cat6 new 1 1000ft: D1.1 45ft, D1.2 90ft, D2.1 117ft, left 883ft kept\n" +
			"cat6-outdoor new 1 1000ft: D3.1 33ft, left 967ft kept\n",
	} {
		res := solved(t, path)
		cuts, findings := Plan(res)
		if got := written(cuts); got != want || len(findings) > 0 {
			t.Errorf("%s: %v\n%swant\n%s", path, findings, got, want)
		}
		for i, tail := range res.Tails {
			c := &cuts.Cables[i]
			if c.ID != tail.Cable || c.Cut != tail.Length || c.Pieces != tail.Cables || c.New != 1 || c.Proved != "everything" {
				t.Errorf("%s: %+v, the routes ask for %+v", path, c, tail)
			}
		}
	}
}

// One spool of 120 ft for the 117 ft of the starter, its marks counting down
// from 120: D1.1 and D1.2 need 90 ft and D2.1 after them 27 ft. So D1 may take
// (120 - 27) / 2 = 46 ft 6 in a cable, up to mark 120 - 46 ft 6 in = 73 ft 6 in,
// and the set must end before mark 27. 3 ft are left, less than a metre.
func TestOneSpool(t *testing.T) {
	res := solved(t, first, with("[[spool]]\nid = \"S1\"\ncable = \"cat6\"\nmark = \"120ft\"\n")...)
	cuts, findings := Plan(res)
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	want := "cat6 S1 120ft: D1.1 45ft (75ft), D1.2 90ft (30ft), D2.1 117ft (3ft), left 3ft waste"
	if got := strings.SplitN(written(cuts), "\n", 2)[0]; got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	c := &cuts.Cables[0]
	if c.New != 0 || c.Opened() != 1 || c.Waste != 3*measure.Foot || c.Left != 0 {
		t.Errorf("%+v", c)
	}
	check := &c.Spools[0].Checks[0]
	if got, want := check.Words(measure.Imperial), "pull D1.1 and measure it: planned 45ft, check the way if it takes more; stop at 46ft 6in, mark 73ft 6in, since later cables need 27ft; then cut D1.2 equal to it"; got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	if check.EndMark.String() != "27ft" || c.Spools[0].Start.String() != "120ft" || c.Spools[0].End.String() != "3ft" {
		t.Errorf("%+v", check)
	}
	last := &c.Spools[0].Checks[1]
	if last.StopFirst != 30*measure.Foot || !strings.HasSuffix(last.Words(measure.Imperial), "stop at 30ft, mark 0in, the end of the spool") {
		t.Errorf("%+v: %s", last, last.Words(measure.Imperial))
	}
}

// Marks that count up, in metres, between two of them.
func TestMarksInMetres(t *testing.T) {
	res := solved(t, long, with("[[spool]]\nid = \"S1\"\ncable = \"cat6\"\nleft = \"80m\"\nmark = \"112.25m\"\ncounts = \"up\"\n")...)
	cuts, _ := Plan(res)
	want := "cat6 S1 80000mm: W2.1 13500mm (125.75m), W1.1 26000mm (138.25m), W1.2 38500mm (150.75m), C1.1 50500mm (162.75m), W3.1 61000mm (173.25m), W3.2 71500mm (183.75m), left 8500mm patch cords"
	if got := strings.SplitN(written(cuts), "\n", 2)[0]; got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	if c := &cuts.Cables[0]; c.Patch != 8500*measure.Millimetre {
		t.Errorf("%+v", c)
	}
}

// The facts of the trade: what is pulled too long is cut off and kept. The
// surplus of the starter's D3 by hand: 33 ft less its way, 10 ft, 1 ft and 1 ft.
func TestSurplus(t *testing.T) {
	res := solved(t, first)
	cuts, _ := Plan(res)
	for i := range res.Routes {
		if r := &res.Routes[i]; res.Job.Drops[r.Drop].Tag == "D3" {
			if want := 33*measure.Foot - r.Lengths.Developed - 12*measure.Foot; cuts.Cables[1].Surplus != want || want <= 0 {
				t.Errorf("surplus %v, want %v", cuts.Cables[1].Surplus, want)
			}
		}
	}
}

// A drop for later is not cut, is told, and is covered or not by what is left:
// D2 wants 27 ft, which 90 + 27 ft hold and 90 + 26 ft don't.
func TestLater(t *testing.T) {
	for left, covered := range map[string]bool{"117ft": true, "116ft": false} {
		edits := append(with("[[spool]]\nid = \"S1\"\ncable = \"cat6\"\nleft = \""+left+"\"\n"), "kind = \"ceiling point\"", "kind = \"ceiling point\"\nwhen = \"later\"")
		cuts, findings := Plan(solved(t, first, edits...))
		if cuts.Cables[0].Pieces != 2 || len(cuts.Later) != 1 || len(findings) > 0 {
			t.Fatalf("%+v, %v", cuts, findings)
		}
		if l := cuts.Later[0]; l.Tag != "D2" || l.Length != 27*measure.Foot || l.Covered != covered {
			t.Errorf("%s: %+v", left, l)
		}
	}
}

// A cable is 45 ft long: a new spool of 45 ft will do, one of 44 ft won't.
func TestNoSpoolLongEnough(t *testing.T) {
	if _, findings := Plan(solved(t, first, with("[buy]\ncat6 = \"45ft\"\n")...)); len(findings) > 0 {
		t.Errorf("45 ft: %v", findings)
	}
	cuts, findings := Plan(solved(t, first, with("[buy]\ncat6 = \"44ft\"\n")...))
	if len(findings) != 1 {
		t.Fatalf("findings %+v", findings)
	}
	f := findings[0]
	if f.Rule != NoSpool || f.Severity != rule.Stop || f.Where != "D1" || f.Pos.Line == 0 ||
		f.Found != "2 of cat6, 45ft each: the longest spool, at hand or to buy, has 44ft" ||
		f.Change != `cat6 = "45ft" under [buy], if such spools are sold, or a closet nearer by` {
		t.Errorf("%+v", f)
	}
	if c := &cuts.Cables[0]; c.Pieces != 1 || c.New != 1 {
		t.Errorf("the rest is not planned: %+v", c)
	}
}

// More cables than package stock takes are reported, and stop nothing else.
func TestTooManyCables(t *testing.T) {
	res := solved(t, first)
	res.Job.Drops[0].Count = 5000
	cuts, findings := Plan(res)
	if len(findings) != 1 || findings[0].Rule != NoSpool || findings[0].Pos.Line == 0 || len(cuts.Cables) != 0 {
		t.Errorf("%+v, %v", cuts, findings)
	}
}

func TestStrangeSpools(t *testing.T) {
	for tables, want := range map[string]string{
		"cable = \"coax6\"\nleft = \"90ft\"\n":                                  "note 90ft of coax6, which no drop of the job uses",
		"cable = \"cat6\"\nleft = \"100ft\"\nmark = \"90ft\"\n":                 "caution 100ft left, but the marks count down from 90ft and would end below zero",
		"cable = \"cat6\"\nleft = \"80ft\"\nmark = \"90ft\"\n":                  "note 80ft left, but the marks count down from 90ft: planned with 80ft",
		"cable = \"cat6\"\nleft = \"90ft\"\nmark = \"90ft\"\n":                  "",
		"cable = \"cat6\"\nleft = \"80ft\"\nmark = \"90ft\"\ncounts = \"up\"\n": "",
	} {
		_, findings := Plan(solved(t, first, with("[[spool]]\nid = \"S1\"\n"+tables)...))
		got := ""
		for _, f := range findings {
			got += f.Severity.String() + " " + f.Found
			if f.Where != "S1" || f.Pos.Line == 0 {
				t.Errorf("%+v", f)
			}
		}
		if got != want {
			t.Errorf("%q: %q, want %q", tables, got, want)
		}
	}
}

// On random houses with random spools: every cable that is run today is cut
// once and no other, no spool gives more than it has, every running number is
// the sum so far, what is cut and what is left make up the spools, and no fewer
// new spools could do.
func TestRandomHouses(t *testing.T) {
	for seed := range uint64(12) {
		res := solve(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{}).Read)
		dice := rand.New(rand.NewPCG(seed, 3))
		job := *res.Job
		res.Job = &job
		for n := range dice.IntN(5) {
			left := measure.Length(10+dice.IntN(200)) * measure.Foot
			job.Spools = append(job.Spools, plan.Spool{
				ID: fmt.Sprintf("S%d", n), Cable: job.Drops[0].Cable, Left: left, Marked: dice.IntN(2) == 0, Mark: left, Down: dice.IntN(2) == 0,
			})
		}
		job.Buy.Length = measure.Length(100+dice.IntN(400)) * measure.Foot
		cuts, _ := Plan(res)
		checkOnce(t, seed, res, cuts)
		for i := range cuts.Cables {
			checkSums(t, seed, &cuts.Cables[i])
		}
	}
}

func checkOnce(t *testing.T, seed uint64, res *route.Result, cuts *Cuts) {
	want := map[string]measure.Length{}
	for i := range res.Routes {
		r := &res.Routes[i]
		d := &res.Job.Drops[r.Drop]
		for n := 1; n <= d.Count && r.Blocked == nil && !d.Later; n++ {
			want[fmt.Sprintf("%s.%d", d.Tag, n)] = r.Lengths.Cut
		}
	}
	for i := range cuts.Cables {
		for _, s := range cuts.Cables[i].Spools {
			for _, c := range s.Cuts {
				if l, ok := want[c.Piece]; !ok || l != c.Length || res.Job.Drops[c.Drop].Cable.ID != cuts.Cables[i].ID {
					t.Errorf("seed %d: %+v is cut, want %v", seed, c, l)
				}
				delete(want, c.Piece)
			}
		}
	}
	if len(want) > 0 {
		t.Errorf("seed %d: not cut: %v", seed, want)
	}
}

func checkSums(t *testing.T, seed uint64, c *Cable) {
	var cut, stock, bought, left measure.Length
	for _, s := range c.Spools {
		var used measure.Length
		for _, x := range s.Cuts {
			used += x.Length
			down := measure.Length(1)
			if s.End.At < s.Start.At {
				down = -1
			}
			if x.Used != used || s.Start.Known && x.Mark.At != s.Start.At+down*used {
				t.Errorf("seed %d: %+v at %v of %+v", seed, x, used, s)
			}
		}
		if s.Left != s.Length-used || s.Left < 0 || len(s.Checks) > len(s.Cuts) {
			t.Errorf("seed %d: %+v", seed, s)
		}
		cut, left = cut+used, left+s.Left
		if s.New {
			bought += s.Length
		} else {
			stock += s.Length
		}
	}
	if c.Cut != cut || c.Left+c.Patch+c.Waste != left || bought != measure.Length(c.New)*c.Each || c.Surplus > c.Cut {
		t.Errorf("seed %d: %+v", seed, c)
	}
	if fewest := (cut - stock + c.Each - 1) / c.Each; measure.Length(c.New) < fewest || c.New > 0 && c.Proved == "nothing" {
		t.Errorf("seed %d: %d new spools, proved %s; %v are to cut, %v at hand", seed, c.New, c.Proved, cut, stock)
	}
}
