package stock

import (
	"encoding/binary"
	"errors"
	"fmt"
	"reflect"
	"testing"

	"topplate/plan/measure"
)

func TestMarks(t *testing.T) {
	for _, c := range []struct {
		name  string
		marks Marks
		used  measure.Length
		want  Reading
		below bool
	}{
		{"up", Marks{Start: 347, Unit: ft}, 52*ft + 6*measure.Inch, Reading{399, 6 * measure.Inch}, false},
		{"down", Marks{Start: 347, Unit: ft, Down: true}, 52*ft + 6*measure.Inch, Reading{295, 6 * measure.Inch}, false},
		{"metres", Marks{Start: 10, Unit: measure.Metre}, 305 * measure.Metre, Reading{315, 0}, false},
		{"down to 0", Marks{Start: 50, Unit: ft, Down: true}, 50 * ft, Reading{0, 0}, false},
		{"below 0", Marks{Start: 50, Unit: ft, Down: true}, 50*ft + 1, Reading{}, true},
		{"far below 0", Marks{Start: 0, Unit: measure.Millimetre, Down: true}, MaxLength, Reading{}, true},
		{"wraps up", Marks{Start: 9990, Unit: ft, Wrap: 10000}, 25 * ft, Reading{15, 0}, false},
		{"wraps down", Marks{Start: 5, Unit: ft, Down: true, Wrap: 1000}, 25*ft + 1, Reading{980, 1}, false},
		{"nothing used", Marks{Start: 7, Unit: ft, Down: true}, 0, Reading{7, 0}, false},
	} {
		got, err := c.marks.At(c.used)
		var below *BelowZeroError
		if got != c.want || errors.As(err, &below) != c.below {
			t.Errorf("%s: %+v, %v; want %+v", c.name, got, err, c.want)
		}
	}
}

// onePlace is a single spool of 500 ft with three cables to one place, two to
// another, and one alone.
func onePlace() Job {
	job := Job{
		Spools: []Spool{{Tag: "s", Type: "a", Length: 500 * ft, Marks: &Marks{Start: 620, Unit: ft, Down: true}}},
		Usable: 40 * ft, Patch: 8 * ft,
	}
	for i, l := range []measure.Length{90, 90, 90, 60, 60, 30} {
		p := Piece{Tag: fmt.Sprint("p", i), Type: "a", Group: "far", Length: l * ft, Excess: ft}
		switch l {
		case 60:
			p.Group, p.Excess = "near", 9*ft
		case 30:
			p.Group, p.Excess = "", 0
		}
		job.Pieces = append(job.Pieces, p)
	}
	return job
}

// By hand: 3x90 + 2x60 + 30 = 420 of 500 ft. While the first of the three is
// pulled, the later pieces need 150 ft, so the three may use 350, and each
// 116 ft 8 in. The marks count down from 620.
func TestOneSpoolSequence(t *testing.T) {
	job := onePlace()
	plan, err := Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, job, plan)
	s := plan.Types[0].Spools[0]
	want := []Check{
		{
			First: "p0", Equal: []string{"p1", "p2"}, Before: 0, StopFirst: 116*ft + 8*measure.Inch, StopAfter: 350 * ft, MustRemain: 150 * ft,
			StopFirstMark: &Reading{504, 8 * measure.Inch}, StopAfterMark: &Reading{270, 0},
		},
		{
			First: "p3", Equal: []string{"p4"}, Before: 270 * ft, StopFirst: 370 * ft, StopAfter: 470 * ft, MustRemain: 30 * ft,
			StopFirstMark: &Reading{250, 0}, StopAfterMark: &Reading{150, 0},
		},
		{
			First: "p5", Before: 390 * ft, StopFirst: 500 * ft, StopAfter: 500 * ft,
			StopFirstMark: &Reading{120, 0}, StopAfterMark: &Reading{120, 0},
		},
	}
	if !reflect.DeepEqual(s.Checks, want) {
		t.Errorf("got  %+v\nwant %+v", s.Checks, want)
	}
	// The three came out at 100 ft each: 300 used, 170 may be, 85 for either.
	if got := want[1].StopFrom(300 * ft); got != 385*ft {
		t.Errorf("StopFrom(300 ft) = %v, want 385ft", got)
	}
	if got := want[1].StopFrom(480 * ft); got != 470*ft {
		t.Errorf("StopFrom(480 ft) = %v, want 470ft", got)
	}
	var marks []int64
	for _, c := range s.Cuts {
		marks = append(marks, c.Mark.Number)
	}
	if fmt.Sprint(marks) != "[530 440 350 290 230 200]" || *s.Mark != (Reading{200, 0}) || s.MarkFault != nil {
		t.Errorf("marks %v, end %v, fault %v", marks, s.Mark, s.MarkFault)
	}
	// 80 ft stay; of the excess, 2x9 ft is kept for patch cords and 3x1 isn't.
	if sum := plan.Totals; sum != (Totals{Cut: 420 * ft, Waste: 3 * ft, Patch: 18 * ft, Usable: 80 * ft}) || s.Keeping != Usable {
		t.Errorf("totals %+v", sum)
	}
	pull := []Pull{
		{"far", []PullPart{{s.ID, []string{"p0", "p1", "p2"}}}},
		{"near", []PullPart{{s.ID, []string{"p3", "p4"}}}},
	}
	if !reflect.DeepEqual(plan.Pulls, pull) {
		t.Errorf("pulls %+v", plan.Pulls)
	}
}

// Without a patch length, nothing is kept for patch cords.
func TestNoPatchCords(t *testing.T) {
	job := onePlace()
	job.Patch = 0
	plan, err := Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	if sum := plan.Totals; sum.Patch != 0 || sum.Waste != 21*ft {
		t.Errorf("totals %+v", sum)
	}
}

// Marks that count down from 400 don't cover 500 ft on the spool.
func TestMarksThatPassZeroAreReported(t *testing.T) {
	job := onePlace()
	job.Spools[0].Marks.Start = 400
	plan, err := Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	s := plan.Types[0].Spools[0]
	if s.MarkFault == nil || s.MarkFault.Covers != 400*ft || s.MarkFault.Needed != 500*ft {
		t.Fatalf("fault %v", s.MarkFault)
	}
	if s.Mark != nil || s.Cuts[4].Mark == nil || s.Cuts[5].Mark != nil {
		t.Errorf("marks %v %v %v", s.Mark, s.Cuts[4].Mark, s.Cuts[5].Mark)
	}
}

// Remainders of 3, 10 and 50 ft, with patch cords from 8 ft and usable from 40.
func TestWhatBecomesOfRemainders(t *testing.T) {
	for rest, want := range map[measure.Length]Keeping{0: Empty, 3: Waste, 7: Waste, 8: Patch, 39: Patch, 40: Usable, 50: Usable} {
		job := Job{
			Usable: 40 * ft, Patch: 8 * ft,
			Spools: []Spool{{Tag: "s", Type: "a", Length: (100 + rest) * ft}},
			Pieces: []Piece{{Tag: "p", Type: "a", Length: 100 * ft}},
		}
		plan, err := Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, job, plan)
		if got := plan.Types[0].Spools[0].Keeping; got != want {
			t.Errorf("remainder of %d ft: %v, want %v", rest, got, want)
		}
	}
}

// Two sets fit two spools whole; dealt by length alone they need not stay so.
func TestEqualCablesStayTogether(t *testing.T) {
	job := Job{Usable: 10 * ft, Spools: []Spool{{Tag: "x", Type: "a", Length: 210 * ft}, {Tag: "y", Type: "a", Length: 310 * ft}}}
	for i, g := range []string{"k", "l", "k", "l", "l"} {
		job.Pieces = append(job.Pieces, Piece{Tag: fmt.Sprint(i), Type: "a", Group: g, Length: 100 * ft})
	}
	plan, err := Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range plan.Pulls {
		if len(p.Parts) != 1 {
			t.Errorf("group %s comes from %d spools", p.Group, len(p.Parts))
		}
	}
}

// Level 4 keeps 305 ft whole by parting the set; SetsFirst does not.
func TestSetsFirst(t *testing.T) {
	job := Job{Usable: 5 * ft, Spools: []Spool{{Tag: "x", Type: "a", Length: 100 * ft}, {Tag: "y", Type: "a", Length: 105 * ft}, {Tag: "z", Type: "a", Length: 305 * ft}}}
	for i := range 4 {
		job.Pieces = append(job.Pieces, Piece{Tag: fmt.Sprint(i), Type: "a", Group: "g", Length: 45 * ft})
	}
	for _, c := range []struct {
		first  bool
		splits int
		opened int
	}{{false, 1, 2}, {true, 0, 1}} {
		job.SetsFirst = c.first
		plan, err := Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, job, plan)
		if s := plan.Types[0]; s.Score.Splits != c.splits || s.Score.Opened != c.opened {
			t.Errorf("sets first %v: %+v, proved %v", c.first, s.Score, s.Proved)
		}
	}
}

// FuzzSolve reads numbers from bytes: no input may panic, hang, or yield a plan
// that does not add up.
func FuzzSolve(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte("0123456789abcdef0123456789abcdef0123456789abcdef"))
	f.Add([]byte{0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0x7f, 0x80, 1, 2, 3, 4, 5, 6, 7, 8, 9})
	f.Fuzz(func(t *testing.T, data []byte) {
		next := func() measure.Length {
			if len(data) == 0 {
				return 1
			}
			wide := data[0]%4 == 0
			data = data[1:]
			if wide && len(data) >= 8 {
				n := int64(binary.LittleEndian.Uint64(data))
				data = data[8:]
				return measure.Length(n)
			}
			if len(data) == 0 {
				return 0
			}
			n := int8(data[0])
			data = data[1:]
			return measure.Length(n)
		}
		job := Job{Usable: next(), Patch: next(), Steps: 300_000, SetsFirst: next()%2 == 0}
		if next() > 0 {
			job.Buy = []Purchase{{"a", next()}}
		}
		for i := 0; len(data) > 0 && i < 40; i++ {
			if next()%3 == 0 {
				m := &Marks{Start: int64(next()), Unit: next() * measure.Millimetre, Down: i%2 == 0, Wrap: int64(next())}
				job.Spools = append(job.Spools, Spool{Tag: fmt.Sprint(i), Type: "a", Length: next(), Marks: m})
				continue
			}
			job.Pieces = append(job.Pieces, Piece{Tag: fmt.Sprint(i), Type: "a", Group: fmt.Sprint(i / 3), Length: next(), Excess: next() / 2})
		}
		plan, err := Solve(job)
		if err == nil {
			checkPlan(t, job, plan)
		}
	})
}
