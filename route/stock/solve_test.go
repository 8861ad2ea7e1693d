package stock

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"topplate/plan/measure"
)

const ft = measure.Foot

// A fataler is a *testing.T or a *rapid.T.
type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
}

// checkPlan holds a plan against its job: every piece once, no spool over-used,
// running numbers, totals, and the Score, all added up anew.
func checkPlan(t fataler, job Job, plan *Plan) {
	t.Helper()
	want := map[string]Piece{}
	for _, p := range job.Pieces {
		want[p.Tag] = p
	}
	take := func(p Piece) {
		if want[p.Tag] != p {
			t.Fatalf("piece %+v is planned twice, or is none of the job's", p)
		}
		delete(want, p.Tag)
	}
	for _, u := range plan.Unplaced {
		take(u.Piece)
		if (u.Reason == TooLong) != (u.Piece.Length > u.Longest) {
			t.Fatalf("%+v: wrong reason", u)
		}
	}
	pol := newPolicy(job.Usable, job.Patch)
	spools := 0
	for _, tp := range plan.Types {
		a, fresh := leftover{}, 0
		for _, s := range tp.Spools {
			used := measure.Length(0)
			for _, c := range s.Cuts {
				take(c.Piece)
				if used += c.Piece.Length; c.Used != used || c.Piece.Type != tp.Type {
					t.Fatalf("spool %v: cut %+v at running number %v", s.ID, c, used)
				}
			}
			if used > s.Length || s.Remainder != s.Length-used {
				t.Fatalf("spool %v: %v of %v used, remainder %v", s.ID, used, s.Length, s.Remainder)
			}
			a.add(pol, len(s.Cuts) > 0, s.Remainder)
			if s.ID.New > 0 {
				if fresh++; s.ID.New != fresh || len(s.Cuts) == 0 {
					t.Fatalf("new spool %v is out of order or not cut", s.ID)
				}
			} else {
				spools++
			}
			checkChecks(t, s)
		}
		got := tp.Score
		if (leftover{got.Waste, got.Patch, got.Longest, got.Opened}) != a || got.NewSpools != fresh {
			t.Fatalf("%+v, but spools add up to %+v, %d new", got, a, fresh)
		}
		if got.Compare(tp.Bound) < 0 && !job.SetsFirst {
			t.Fatalf("score %+v is below its bound %+v", got, tp.Bound)
		}
	}
	if len(want) > 0 || spools != len(job.Spools) {
		t.Fatalf("pieces left out %v, %d spools of %d", want, spools, len(job.Spools))
	}
	checkTotals(t, job, plan)
}

// checkChecks: after a set, what must remain and what may be used is the spool.
func checkChecks(t fataler, s SpoolPlan) {
	t.Helper()
	tags := 0
	for _, c := range s.Checks {
		n := measure.Length(1 + len(c.Equal))
		tags += int(n)
		if c.StopAfter+c.MustRemain != s.Length || c.StopFirst < c.Before ||
			c.Before+n*(c.StopFirst-c.Before) > c.StopAfter || c.Before+n*(c.StopFirst-c.Before+1) <= c.StopAfter {
			t.Fatalf("spool %v: %+v", s.ID, c)
		}
	}
	if tags != len(s.Cuts) {
		t.Fatalf("spool %v: checks name %d cables, %d are cut", s.ID, tags, len(s.Cuts))
	}
}

// checkTotals: all cable is cut, waste, for patch cords, or left.
func checkTotals(t fataler, job Job, plan *Plan) {
	t.Helper()
	sum := plan.Totals
	in, excess := sum.Bought, measure.Length(0)
	for _, s := range job.Spools {
		in += s.Length
	}
	for _, tp := range plan.Types {
		for _, s := range tp.Spools {
			for _, c := range s.Cuts {
				excess += c.Piece.Excess
			}
		}
	}
	if in != sum.Cut-excess+sum.Waste+sum.Patch+sum.Usable {
		t.Fatalf("%v of cable and %v excess, but %+v", in, excess, sum)
	}
}

// anyJob draws jobs of several types with short lengths.
func anyJob(t *rapid.T) Job {
	length := func(most int) measure.Length {
		return ft * measure.Length(rapid.IntRange(0, most).Draw(t, "l"))
	}
	kind := rapid.SampledFrom([]string{"a", "b"})
	job := Job{Usable: length(6), Patch: length(4), SetsFirst: rapid.Bool().Draw(t, "sets first"), Steps: 2_000_000}
	for i := range rapid.IntRange(0, 4).Draw(t, "spools") {
		job.Spools = append(job.Spools, Spool{Tag: fmt.Sprint("s", i), Type: kind.Draw(t, "type"), Length: length(40)})
	}
	for i := range rapid.IntRange(0, 14).Draw(t, "pieces") {
		job.Pieces = append(job.Pieces, Piece{
			Tag: fmt.Sprint("p", i), Type: kind.Draw(t, "type"), Length: ft + length(14),
			Group: rapid.SampledFrom([]string{"", "g", "h"}).Draw(t, "group"), Excess: length(1),
		})
	}
	if rapid.Bool().Draw(t, "buy") {
		job.Buy = append(job.Buy, Purchase{"a", ft + length(30)})
	}
	return job
}

func TestPlansAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		plan, err := Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, job, plan)
	})
}

func TestOrderOfInputHasNoMeaning(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		first, err := Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
		r.Shuffle(len(job.Pieces), func(i, k int) { job.Pieces[i], job.Pieces[k] = job.Pieces[k], job.Pieces[i] })
		r.Shuffle(len(job.Spools), func(i, k int) { job.Spools[i], job.Spools[k] = job.Spools[k], job.Spools[i] })
		second, err := Solve(job)
		if err != nil || !reflect.DeepEqual(first, second) {
			t.Fatalf("%+v\n%+v\n%v", first, second, err)
		}
	})
}

// One spool more leaves every plan possible, with a longest remainder that is
// no shorter. Pieces that were impossible may become possible, so these count
// first.
func TestMoreStockIsNeverWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		job.SetsFirst = false
		before, err := Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		more := job
		more.Spools = append([]Spool{{Tag: "more", Type: "a", Length: ft * measure.Length(rapid.IntRange(0, 40).Draw(t, "more"))}}, job.Spools...)
		after, err := Solve(more)
		if err != nil {
			t.Fatal(err)
		}
		if len(after.Unplaced) > len(before.Unplaced) {
			t.Fatalf("%d unplaced, before %d", len(after.Unplaced), len(before.Unplaced))
		}
		if len(after.Unplaced) < len(before.Unplaced) || len(before.Types) == 0 || before.Types[0].Type != "a" {
			return
		}
		a, b := after.Types[0], before.Types[0]
		a.Score.Splits, b.Score.Splits, a.Score.Uncut, b.Score.Uncut = 0, 0, 0, 0
		if a.Proved >= Remainders && b.Proved >= Remainders && a.Score.Compare(b.Score) > 0 {
			t.Fatalf("%+v, before %+v", a.Score, b.Score)
		}
	})
}

func TestImpossiblePieceIsNamed(t *testing.T) {
	job := Job{
		Spools: []Spool{{Tag: "s", Type: "a", Length: 100 * ft}},
		Pieces: []Piece{{Tag: "long", Type: "a", Length: 101 * ft}, {Tag: "ok", Type: "a", Length: 100 * ft}, {Tag: "other", Type: "b", Length: ft}},
	}
	plan, err := Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, job, plan)
	want := []Unplaced{{job.Pieces[0], TooLong, 100 * ft}, {job.Pieces[2], TooLong, 0}}
	if !reflect.DeepEqual(plan.Unplaced, want) || plan.Types[0].Score.Uncut != 0 {
		t.Errorf("%+v, want %+v", plan.Unplaced, want)
	}
}

func TestInputErrorsAllAtOnce(t *testing.T) {
	job := Job{
		Usable: -1, Patch: MaxLength + 1, Steps: -1,
		Pieces: []Piece{{Tag: "p", Length: 0}, {Tag: "p", Length: 2, Excess: 3}, {Length: math.MaxInt64}},
		Spools: []Spool{{Tag: "s", Length: -1, Marks: &Marks{Start: -1, Wrap: -2}}},
		Buy:    []Purchase{{"a", 1}, {"a", math.MinInt64}},
	}
	_, err := Solve(job)
	var all []string
	for _, e := range err.(interface{ Unwrap() []error }).Unwrap() {
		var in *InputError
		if !errors.As(e, &in) {
			t.Fatal(e)
		}
		all = append(all, in.List+"/"+in.Tag+"/"+in.Field)
	}
	want := []string{
		"//patch", "//steps", "//usable", "buy/a/length", "buy/a/type",
		"pieces//length", "pieces//tag", "pieces/p/excess", "pieces/p/length", "pieces/p/tag",
		"spools/s/length", "spools/s/marks.start", "spools/s/marks.unit", "spools/s/marks.wrap",
	}
	if !reflect.DeepEqual(all, want) {
		t.Errorf("got  %q\nwant %q", all, want)
	}
}

// houseJob is an invented job: pieces of 20 to 200 ft in whole feet, one to
// four equal ones for a place, spools partly used.
func houseJob(pieces, spools int) Job {
	r := rand.New(rand.NewPCG(uint64(pieces), 1))
	job := Job{Usable: 25 * ft, Patch: 7 * ft, Buy: []Purchase{{"a", 1000 * ft}}}
	for i := range spools {
		job.Spools = append(job.Spools, Spool{Tag: fmt.Sprint("s", i), Type: "a", Length: ft * measure.Length(50+r.IntN(950))})
	}
	for g := 0; len(job.Pieces) < pieces; g++ {
		l := ft * measure.Length(20+r.IntN(180))
		for range min(1+r.IntN(4), pieces-len(job.Pieces)) {
			job.Pieces = append(job.Pieces, Piece{Tag: fmt.Sprint("p", len(job.Pieces)), Type: "a", Group: fmt.Sprint("g", g), Length: l})
		}
	}
	return job
}

// House jobs are proved down to the waste.
func TestHouseJobs(t *testing.T) {
	for _, size := range [][2]int{{12, 1}, {12, 2}, {20, 3}, {30, 4}, {45, 6}, {60, 8}, {60, 1}} {
		job := houseJob(size[0], size[1])
		plan, err := Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, job, plan)
		if got := plan.Types[0]; got.Proved < Wasted {
			t.Errorf("%d pieces, %d spools: %+v, bound %+v, proved %v", size[0], size[1], got.Score, got.Bound, got.Proved)
		}
	}
}

// With the steps gone, there is still a plan, and it claims less.
func TestFewStepsClaimLess(t *testing.T) {
	job := houseJob(60, 8)
	job.Steps = 1
	plan, err := Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, job, plan)
	if got := plan.Types[0].Proved; got >= Remainders {
		t.Errorf("proved %v with one step", got)
	}
}

func BenchmarkSolve(b *testing.B) {
	for _, size := range [][2]int{{12, 2}, {60, 8}, {300, 8}} {
		b.Run(fmt.Sprint(size[0]), func(b *testing.B) {
			job := houseJob(size[0], size[1])
			for b.Loop() {
				plan, err := Solve(job)
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(plan.Types[0].Proved), "level")
			}
		})
	}
}

// As many pieces and spools as are allowed, all of different lengths, take no
// more than the steps do.
func TestLargestJobEnds(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	job := Job{Usable: ft, Buy: []Purchase{{"a", 1000 * ft}}, Steps: 10_000_000}
	for i := range MaxItems {
		job.Pieces = append(job.Pieces, Piece{Tag: fmt.Sprint(i), Type: "a", Group: fmt.Sprint(i / 3), Length: 1 + measure.Length(r.Int64N(int64(200*ft)))})
		job.Spools = append(job.Spools, Spool{Tag: fmt.Sprint(i), Type: "a", Length: measure.Length(r.Int64N(int64(2000 * ft)))})
	}
	plan, err := Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, job, plan)
}
