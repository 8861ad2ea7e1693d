package conduit

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"topplate/plan/measure"
	"topplate/plan/rule"
)

// inches are thousandths of an inch as nanometres, by hand: 25 400 each.
func inches(n int64) measure.Length { return measure.Length(n * 25_400) }

// CON02 to CON04, and the trade size 1/2 of the same table.
func TestPublishedDiameters(t *testing.T) {
	trades := []string{"1/2", "3/4", "1", "1-1/4"}
	if got := Trades(); !slices.Equal(got, trades) {
		t.Fatalf("Trades() = %q", got)
	}
	if got, want := Kinds(), []string{"EMT", "ENT", "PVC-40"}; !slices.Equal(got, want) {
		t.Fatalf("Kinds() = %q, want %q", got, want)
	}
	for kind, want := range map[string][4]int64{
		"EMT":    {622, 824, 1049, 1380},
		"ENT":    {560, 760, 1000, 1340},
		"PVC-40": {602, 804, 1029, 1360},
	} {
		for i, trade := range trades {
			s, ok := Lookup(kind, trade)
			if !ok || s.Inside != inches(want[i]) || s.Kind != kind || s.Trade != trade || s.Title == "" || s.Source.Clause != "Chapter 9, Table 4" {
				t.Errorf("%s %s: got %+v, %v, want %d thousandths", kind, trade, s, ok, want[i])
			}
		}
	}
	if len(Sizes) != 12 {
		t.Errorf("there are %d sizes", len(Sizes))
	}
	for _, none := range [][2]string{{"EMT", "2"}, {"emt", "1"}, {"", ""}} {
		if s, ok := Lookup(none[0], none[1]); ok {
			t.Errorf("Lookup(%q) = %+v", none, s)
		}
	}
}

// The published total areas of Chapter 9, Table 4, in square inches to three
// decimals: π/4 of the diameter squared must round to them.
func TestPublishedAreas(t *testing.T) {
	for kind, want := range map[string][4]float64{
		"EMT":    {0.304, 0.533, 0.864, 1.496},
		"ENT":    {0.246, 0.454, 0.785, 1.410},
		"PVC-40": {0.285, 0.508, 0.832, 1.453},
	} {
		for i, trade := range Trades() {
			s, _ := Lookup(kind, trade)
			d := s.Inside.Millimetres() / 25.4
			// 0.532 by arithmetic is printed as 0.533 for EMT 3/4.
			if got := math.Pi / 4 * d * d; math.Abs(got-want[i]) > 0.001 {
				t.Errorf("%s %s: %.4f in², want %.3f", kind, trade, got, want[i])
			}
		}
	}
}

// CON01: Chapter 9, Table 1.
func TestShares(t *testing.T) {
	for cables, want := range map[int]int64{-1: 53, 0: 53, 1: 53, 2: 31, 3: 40, 4: 40, 100: 40} {
		if got := ShareOf(cables); got.Percent != want || got.Source.Status != rule.AsQuoted {
			t.Errorf("%d cables: %+v, want %d %%", cables, got, want)
		}
	}
}

// CON05, CON06 and the row of 0.236 in, worked out apart from this program
// from Tables 1 and 4; the first row is a maker's own table as well.
func TestCounts(t *testing.T) {
	for _, tt := range []struct {
		cable int64
		kind  string
		want  [3]int // 3/4, 1, 1-1/4
	}{
		{236, "EMT", [3]int{4, 7, 13}},
		{236, "ENT", [3]int{4, 7, 12}},
		{250, "EMT", [3]int{4, 7, 12}},
		{250, "ENT", [3]int{3, 6, 11}},
		{340, "EMT", [3]int{1, 3, 6}}, // two of them would take up 34.1 %, more than 31 %
		{340, "ENT", [3]int{1, 3, 6}},
	} {
		for i, trade := range []string{"3/4", "1", "1-1/4"} {
			s, _ := Lookup(tt.kind, trade)
			d := inches(tt.cable)
			if got := Count(s.Inside, d); got != tt.want[i] {
				t.Errorf("%d thousandths in %s %s: %d, want %d", tt.cable, tt.kind, trade, got, tt.want[i])
			}
			if n := tt.want[i]; !Fits(s.Inside, slices.Repeat([]measure.Length{d}, n)) || Fits(s.Inside, slices.Repeat([]measure.Length{d}, n+1)) {
				t.Errorf("%d thousandths in %s %s: Fits disagrees with %d", tt.cable, tt.kind, trade, n)
			}
		}
	}
}

// Just under and over a share, by hand: 53 % of 100² is 5300, 31 % is 3100, and
// 40 % is 4000, which is 60² + 16² + 12² exactly.
func TestFitsAtTheEdge(t *testing.T) {
	for _, tt := range []struct {
		inside    measure.Length
		diameters []measure.Length
		want      bool
	}{
		{100, nil, true},
		{0, nil, true},
		{0, []measure.Length{1}, false},
		{-100, []measure.Length{1}, false},
		{100, []measure.Length{72}, true},  // 5184 of 5300
		{100, []measure.Length{73}, false}, // 5329
		{100, []measure.Length{55, 8}, true},
		{100, []measure.Length{55, 9}, false}, // 3025 + 81 is 3106 of 3100
		{100, []measure.Length{60, 16, 12}, true},
		{100, []measure.Length{60, 16, 13}, false},
		{1000 * measure.Metre, []measure.Length{720 * measure.Metre}, true},
		{1000 * measure.Metre, []measure.Length{728*measure.Metre + 12*measure.Millimetre}, false},
	} {
		if got := Fits(tt.inside, tt.diameters); got != tt.want {
			t.Errorf("Fits(%d, %d) = %v", tt.inside, tt.diameters, got)
		}
	}
}

func TestCountOfNothing(t *testing.T) {
	for _, tt := range [][2]measure.Length{{0, 1}, {1, 0}, {-1, 1}, {1, -1}, {10, 9}} {
		if got := Count(tt[0], tt[1]); got != 0 {
			t.Errorf("Count(%d, %d) = %d", tt[0], tt[1], got)
		}
	}
	if got := Count(measure.MaxParsed, 1); got != mostCounted {
		t.Errorf("a nanometre counts %d times", got)
	}
}

func TestFilled(t *testing.T) {
	emt, _ := Lookup("EMT", "3/4")
	for _, tt := range []struct {
		cables int
		want   int
	}{{0, 0}, {1, 18}, {2, 35}} { // 17.03 and 34.05 %: CON06
		if got := Filled(emt.Inside, slices.Repeat([]measure.Length{inches(340)}, tt.cables)); got != tt.want {
			t.Errorf("%d cables fill %d %%, want %d", tt.cables, got, tt.want)
		}
	}
}

// Count is what Fits allows, and one cable less always fits.
func TestCountIsTheMostThatFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		inside := measure.Length(rapid.Int64Range(1, 400).Draw(t, "inside"))
		d := measure.Length(rapid.Int64Range(20, 400).Draw(t, "diameter"))
		n := 0
		for Fits(inside, slices.Repeat([]measure.Length{d}, n+1)) {
			n++
		}
		if got := Count(inside, d); got != n {
			t.Fatalf("Count(%d, %d) = %d, want %d", inside, d, got, n)
		}
	})
}
