package estimate

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan"
	"topplate/plan/price"
	"topplate/plan/randomhouse"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/cut"
	"topplate/route/parts"
	"topplate/route/tags"
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

// estimated is the estimate of a result with its usual hours.
func estimated(t testing.TB, res *route.Result) (*Estimate, []route.Finding) {
	t.Helper()
	cuts, _ := cut.Plan(res)
	labels, _ := tags.Labels(res)
	lines, _ := parts.List(res, parts.Given{Cuts: cuts, Labels: labels})
	hours, err := Usual(res)
	if err != nil {
		t.Fatal(err)
	}
	return Of(res, lines, hours)
}

// page is an estimate as text.
func page(e *Estimate) string {
	var b strings.Builder
	for _, r := range e.Rows() {
		fmt.Fprintf(&b, "%s|%s|%s\n", r.Text, r.Time, r.Amount)
	}
	return b.String()
}

// The corner house by hand, at 85 USD an hour.
//
// Minutes, from the prices of the terms and testdata/corner-house: 3 boxes and
// 2 ceilings at 10, 7 places at 8: 106; one soffit at 20; three holes from the
// attic at 8 and two from below at 18: 60; the terms of laying and pulling, of
// which the schedule has 0.14 + 30.82 + 15.21 + 7.44 + 37.06 + 23.23 + 45.33 +
// 25.31 = 184.54 USD: 130.3; 18 jacks at 6, 6 plugs at 5, 12 cables at 2.5: 168;
// 12 tests at 3; 15 to set up; 7 drops at 5 and 15 to clear up: 50.
//
// Material: 490 ft at 0.70 a metre are 104.5464, 119 ft at 1.00 are 36.2712; 2
// gaskets at 0.80, 3 brackets at 2, 2 at 3.50, 3 plates at 1.50; 20 jacks at 4.50,
// a panel at 35, 8 plugs at 0.70; 11 + 6; 2 bushings at 2, 8; 19
// straps at 0.25, 42 labels at 0.15, 12 + 3.
func TestCornerHouse(t *testing.T) {
	e, findings := estimated(t, solved(t, corner))
	want := `Setting up|15 min|21.25 USD
Cutting openings, fitting boxes and plates|1 h 46 min|150.17 USD
Opening and closing soffits|20 min|28.33 USD
Boring holes in the framing, and sealing them|1 h 00 min|85.00 USD
Laying and pulling cable|2 h 10 min|184.17 USD
Jacks and plugs, labels|2 h 48 min|238.00 USD
Testing every cable|36 min|51.00 USD
Clearing up|50 min|70.83 USD
Work together|9 h 45 min|828.75 USD
Cable||140.30 USD
Boxes and plates||19.10 USD
Jacks, plugs and panel||130.60 USD
Sealing and protection||17.00 USD
Out of doors||12.00 USD
Sundries||26.05 USD
Material together||345.05 USD
Work and material||1,173.80 USD
Allowance, 10 %||117.38 USD
Total||1,291.18 USD
`
	if diff := cmp.Diff(want, page(e)); diff != "" || len(findings) > 0 {
		t.Errorf("%v\n-want +got:\n%s", findings, diff)
	}
	if e.Notes[0] != "Work is 9 h 45 min at 85.00 USD an hour for each person who works." {
		t.Errorf("%q", e.Notes)
	}
}

// Minutes of the routes are those that the plan is priced by: at the job's rate
// they come to the same money, but for the rounding of each price.
func TestMinutesAgreeWithPrices(t *testing.T) {
	for _, path := range []string{corner, long, first} {
		res := solved(t, path)
		hours, err := Usual(res)
		if err != nil {
			t.Fatal(err)
		}
		minutes := map[price.ID]int64{}
		for _, w := range hours.Work {
			minutes[w.Term] += w.Thousandths
		}
		checked := 0
		for _, s := range res.Cost.Terms {
			if s.Term == price.Cable || s.Term == price.Shift {
				continue
			}
			want := float64(s.Amount) * 60 / float64(res.Job.Rates.Hour)
			if got := float64(minutes[s.Term]); got < want-1.5 || got > want+1.5 {
				t.Errorf("%s: %s takes %v thousandths of a minute, its price stands for %v", path, s.Term, got, want)
			}
			checked++
		}
		if checked < 8 || minutes[price.Shift] != 0 {
			t.Errorf("%s: %d terms, %d of moving", path, checked, minutes[price.Shift])
		}
	}
}

// Every term that is work is in a group of its own, and no term in two.
func TestGroups(t *testing.T) {
	var all []price.ID
	for _, g := range groups {
		all = append(all, g.terms...)
	}
	for _, term := range price.Terms {
		n := 0
		for _, id := range all {
			if id == term.ID {
				n++
			}
		}
		want := 0
		if isWork(term) && !strings.HasPrefix(string(term.ID), "change-") {
			want = 1
		}
		if n != want {
			t.Errorf("%s is in %d groups", term.ID, n)
		}
	}
	for _, h := range Habits() {
		if !slices.Contains(all, h.ID) || h.Title == "" || h.Thousandths <= 0 {
			t.Errorf("%+v is in no group", h)
		}
	}
	slices.Sort(all)
	if n := len(all); len(slices.Compact(all)) != n {
		t.Error("a term is in two groups")
	}
}

// The rules of the packages that the estimate rests on are complete, and no id
// is used twice.
func TestRules(t *testing.T) {
	seen := map[rule.ID]bool{}
	for _, r := range slices.Concat(tags.Rules, cut.Rules, parts.Rules, Rules) {
		if r.ID == "" || seen[r.ID] || r.Title == "" || r.Text == "" || r.Source == (rule.Source{}) {
			t.Errorf("%+v", r)
		}
		seen[r.ID] = true
	}
}

// Work that no group names is not lost.
func TestOtherWork(t *testing.T) {
	res := solved(t, first)
	var hours Hours
	hours.Add("feeding-the-cat", 89_500) // rounded up to 90 minutes
	hours.Add("nothing", 0)
	e, _ := Of(res, nil, hours)
	if len(e.Labour) != 1 || e.Labour[0] != (Line{"Other work", 90, 12750}) || len(hours.Work) != 1 {
		t.Errorf("%+v", e)
	}
}

// Without a rate the hours are told all the same.
func TestNoRate(t *testing.T) {
	free, findings := estimated(t, solved(t, first, "hour = 85", "hour = 0"))
	if len(findings) != 1 || findings[0].Rule != NoRate || free.LabourSum != 0 || free.MaterialSum == 0 {
		t.Errorf("%+v, %v", free, findings)
	}
	if free.Minutes == 0 {
		t.Error("no hours without a rate")
	}
}

// Drops for later and without a way are named and not counted.
func TestLeftOut(t *testing.T) {
	all, _ := estimated(t, solved(t, first))
	e, findings := estimated(t, solved(t, first, "kind = \"ceiling point\"", "kind = \"ceiling point\"\nwhen = \"later\""))
	if len(findings) > 0 || !slices.Contains(e.Notes, "Left for another day, and not in the sums: D2.") || e.Minutes >= all.Minutes || e.MaterialSum >= all.MaterialSum {
		t.Errorf("%+v, %v", e, findings)
	}
	// No rod reaches the eave: the camera has no way.
	e, findings = estimated(t, solved(t, first, "rods = \"15ft\"", "rods = \"1ft\""))
	if len(findings) == 0 || findings[0].Rule != NotCounted || findings[0].Pos.Line == 0 || !strings.Contains(strings.Join(e.Notes, "\n"), "Not possible as planned, and not in the sums: "+findings[0].Where) {
		t.Errorf("%+v, %v", e.Notes, findings)
	}
}

func TestUnpriced(t *testing.T) {
	res := solved(t, first)
	e, _ := Of(res, []parts.Line{{Part: parts.Part{ID: "thing"}, Need: 3}, {Part: parts.Part{ID: "later"}, Later: 1}}, Hours{})
	if !slices.Contains(e.Notes, "Without a price, and not in the sums: 3 thing.") || e.Total != 0 {
		t.Errorf("%+v", e)
	}
}

// ISO 4217: a yen has no smaller unit, a dinar of Kuwait a thousand, a dollar a
// hundred. From memory.
func TestMoney(t *testing.T) {
	for _, c := range []struct {
		currency string
		units    int64
		want     string
	}{
		{"USD", 1_234_567_895_000, "1,234,567.90 USD"},
		{"USD", 5_000, "0.01 USD"},
		{"USD", 4_999, "0.00 USD"},
		{"JPY", 1_499_999, "1 JPY"},
		{"JPY", 12_345_500_000, "12,346 JPY"},
		{"KWD", 1_234_500, "1.235 KWD"},
		{"NZD", 999_995_000, "1,000.00 NZD"},
	} {
		e := Estimate{Currency: c.currency, Decimals: decimals(c.currency)}
		if got := e.Money(minor(c.units, e.Decimals)); got != c.want {
			t.Errorf("%d of %s is %q, want %q", c.units, c.currency, got, c.want)
		}
	}
	for minutes, want := range map[int64]string{0: "0 min", 59: "59 min", 60: "1 h 00 min", 125: "2 h 05 min", 6000: "100 h 00 min"} {
		if got := Duration(minutes); got != want {
			t.Errorf("%d minutes are %q, want %q", minutes, got, want)
		}
	}
}

// What is printed adds up to the last coin: the lines to the sums, the sums to
// the total, each line of labour from its printed minutes at the rate, and the
// allowance from the subtotal, all again in exact fractions.
func TestAddsUp(t *testing.T) {
	dice := rand.New(rand.NewPCG(4, 4))
	res := solved(t, first)
	for range 300 {
		job := *res.Job
		job.Rates = plan.Rates{Currency: []string{"USD", "JPY", "KWD"}[dice.IntN(3)], Hour: int64(dice.IntN(200_000))}
		job.Allowance = dice.IntN(101)
		var hours Hours
		for _, id := range price.IDs() {
			hours.Add(price.ID(id), int64(dice.IntN(500_000)))
		}
		var lines []parts.Line
		for n := range 20 {
			lines = append(lines, parts.Line{Part: parts.Part{ID: strconv.Itoa(n), Group: parts.Group(dice.IntN(7))}, Charge: int64(dice.IntN(500_000_000))})
		}
		changed := *res
		changed.Job = &job
		e, _ := Of(&changed, lines, hours)
		checkSums(t, &job, e)
		if len(e.Rows()) > 30 || len(e.Notes) > 10 {
			t.Errorf("%d rows and %d notes on one page", len(e.Rows()), len(e.Notes))
		}
	}
}

func checkSums(t *testing.T, job *plan.Job, e *Estimate) {
	t.Helper()
	var labour, material, minutes int64
	for _, l := range e.Labour {
		exact := big.NewRat(l.Minutes*job.Rates.Hour, 60*1000)
		for range e.Decimals {
			exact.Mul(exact, big.NewRat(10, 1))
		}
		if got, _ := strconv.ParseInt(exact.FloatString(0), 10, 64); got != l.Amount {
			t.Errorf("%+v at %d an hour is %s", l, job.Rates.Hour, exact.FloatString(3))
		}
		labour, minutes = labour+l.Amount, minutes+l.Minutes
	}
	for _, l := range e.Material {
		material += l.Amount
	}
	allowance, _ := strconv.ParseInt(big.NewRat(e.Subtotal*int64(job.Allowance), 100).FloatString(0), 10, 64)
	if labour != e.LabourSum || material != e.MaterialSum || minutes != e.Minutes || labour+material != e.Subtotal || allowance != e.Allowance || e.Total != e.Subtotal+e.Allowance {
		t.Errorf("%+v does not add up", e)
	}
}

// On random houses the estimate adds up, is nothing only where nothing can be run, and does not
// depend on the order of the files.
func TestRandomHouses(t *testing.T) {
	for seed := range uint64(6) {
		res := solve(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{}).Read)
		e, _ := estimated(t, res)
		checkSums(t, res.Job, e)
		again, _ := estimated(t, solve(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{Shuffle: 3}).Read))
		if diff := cmp.Diff(e, again); diff != "" {
			t.Errorf("seed %d:\n%s", seed, diff)
		}
		if runs := len(todays(res)) > 0; runs != (e.LabourSum > 0) || runs != (e.Total > e.Subtotal) {
			t.Errorf("seed %d: %+v", seed, e)
		}
	}
}
