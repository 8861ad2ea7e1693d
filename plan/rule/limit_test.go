package rule

import (
	"testing"

	"topplate/plan/measure"
)

// Published values, by their number in the project's table of values, in
// hand-made nanometres: 1 in is 25.4 mm is 25 400 000 nm.
func TestPublishedValues(t *testing.T) {
	for _, c := range []struct {
		number string
		id     LimitID
		want   int64
	}{
		{"IRC01, R602.6: bearing 0.40 of the width", StudBoreBearing, 40},
		{"IRC02, R602.6: non-bearing 0.60 of the width", StudBore, 60},
		{"IRC04, R602.6: 5/8 in, 15.875 mm", StudEdge, 15_875_000},
		{"IRC04 by analogy, R602.6: 5/8 in", PlateEdge, 15_875_000},
		{"IRC06, R602.6.1: tie if more than 0.50 of the width", PlateBore, 50},
		{"IRC13 and NEC04, P2603.2.1 and 300.4(A)(1): 1-1/4 in, 31.75 mm", PlateShield, 31_750_000},
		{"IRC19, R807.1: 22 in, 558.8 mm", HatchShort, 558_800_000},
		{"IRC19, R807.1: 30 in, 762 mm", HatchLong, 762_000_000},
		{"NEC01, 800.133(A)(2): 2 in, 50.8 mm", PowerParallel, 50_800_000},
		{"NEC16, 410.116(B): 3 in, 76.2 mm", HotLight, 76_200_000},
		{"TIA03, 568.2-D: 90 m", LinkLength, 90_000_000_000},
		{"HOL01: bundle + 1/4 in, 6.35 mm", HoleOverBundle, 6_350_000},
		{"SAF01, 40 CFR 745: before 1978", LeadYear, 1978},
		{"from memory: 2 in off a flue", HotFlue, 50_800_000},
		{"from memory: single-gang cut-out 2-1/4 in, 57.15 mm", BoxSingle, 57_150_000},
		{"from memory: double-gang cut-out 4 in", BoxDouble, 101_600_000},
		{"from memory: cut-out 3-3/4 in high, 95.25 mm", BoxHeight, 95_250_000},
		{"CON07, TIA-569: two 90° bends between pull points", PullTurns, 2},
		{"CON07, TIA-569: 100 ft (30 m), the smaller", PullLength, 30_000_000_000},
		{"TIA03, 568.2-D: 100 m", ChannelLength, 100_000_000_000},
		{"TIA03, 568.2-D: 10 m of cords", CordLength, 10_000_000_000},
		{"TIA05, 568-C.2 6.4.7: losses are given from 20 °C", RoomTemperature, 20},
		{"TSB-155: 55 m", TenGigabit, 55_000_000_000},
		{"NEC09, list of 1987: less than 0.25 in, 6.35 mm", LimitedUse, 6_350_000},
		{"NEC09, list of 1987: less than 6 mm", LimitedUseMetric, 6_000_000},
		{"NEC08, 800.48: 50 ft, 15.24 m", UnlistedInside, 15_240_000_000},
		{"725.144 (2020): above 60 W", BundleWatts, 60},
		{"IRC08, R502.8.1: a third of the depth", JoistBore, 3},
		{"IRC08, R502.8.1: 2 in, 50.8 mm", JoistEdge, 50_800_000},
		{"NEC07, 320.23: 6 ft, 1.8288 m", GuardStrip, 1_828_800_000},
		{"from memory, R408.4: 18 in by 24 in through a floor", CrawlShort, 457_200_000},
		{"from memory, R408.4: 18 in by 24 in through a floor", CrawlLong, 609_600_000},
		{"from memory: friction 0.5 of a jacket on timber", PullFriction, 50},
		{"from memory: 12 in from power is enough", PowerNear, 304_800_000},
		{"from memory: until about 1950", KnobAndTubeYear, 1950},
		{"common practice, no source: 10 m near power", PowerNearLength, 10_000_000_000},
		{"common practice, no source: 80 degrees is square", PowerSquare, 80},
		{"common practice, no source: fed in with 10 N", PullFeed, 10},
		{"common practice, no source: 60 degrees counts as crossing", PowerCrossing, 60},
		{"common practice, no source: 1/4 in off a stud", HoleToMember, 6_350_000},
		{"common practice, no source: 5 ft to stand, 1.524 m", ReachStand, 1_524_000_000},
	} {
		l, ok := LookupLimit(c.id)
		if !ok || l.Value != c.want {
			t.Errorf("%s: %s = %d, want %d", c.number, c.id, l.Value, c.want)
		}
	}
}

// The power distance satisfies both values that the clause prints, 50 mm and
// 2 in (NEC01).
func TestPowerDistanceIsTheLargerOfBothPrinted(t *testing.T) {
	got := NewBook(nil).Length(PowerParallel)
	if got < 50*measure.Millimetre || got < 2*measure.Inch {
		t.Errorf("PowerParallel = %v, less than 50 mm or 2 in", got)
	}
}

// Worked examples of the table of values, section 1, done by hand there.
func TestWorkedExamples(t *testing.T) {
	b := NewBook(nil)
	share := func(width measure.Length, id LimitID) measure.Length {
		return width * measure.Length(b.Value(id)) / 100
	}
	const w2x4, w2x6 = 7 * measure.Inch / 2, 11 * measure.Inch / 2 // PS 20, FRM01
	for _, c := range []struct {
		what      string
		got, want measure.Length
	}{
		{"IRC05: 2x4 bearing stud, 1.40 in", share(w2x4, StudBoreBearing), 140 * measure.Inch / 100},
		{"IRC05: 2x6 bearing stud, 2.20 in", share(w2x6, StudBoreBearing), 220 * measure.Inch / 100},
		{"2x4 other stud, 2.10 in", share(w2x4, StudBore), 210 * measure.Inch / 100},
		{"IRC06: 2x4 plate without a tie, 1.75 in", share(w2x4, PlateBore), 175 * measure.Inch / 100},
		{"2x4 centred by 5/8 in alone, 2.25 in", w2x4 - 2*b.Length(StudEdge), 225 * measure.Inch / 100},
		{"HOL03: 2x4 without a shield plate, 1.00 in", w2x4 - 2*b.Length(PlateShield), measure.Inch},
		{"2x6 without a shield plate, 3.00 in", w2x6 - 2*b.Length(PlateShield), 3 * measure.Inch},
	} {
		if c.got != c.want {
			t.Errorf("%s: got %v", c.what, c.got)
		}
	}
}

func TestLimitPrint(t *testing.T) {
	for _, c := range []struct {
		limit            Limit
		imperial, metric string
	}{
		{Limit{Value: 2 * inch}, "2in (51 mm)", "51 mm (2in)"},
		{Limit{Value: 5 * inch / 8}, "5/8in (16 mm)", "16 mm (5/8in)"},
		{Limit{Value: 90 * metre}, "295ft 3-5/16in (90.000 m)", "90.000 m (295ft 3-5/16in)"},
		{Limit{Value: 0}, "0in (0 mm)", "0 mm (0in)"},
		{Limit{Unit: Percent, Value: 50}, "50 %", "50 %"},
		{Limit{Unit: Degrees, Value: 60}, "60°", "60°"},
		{Limit{Unit: Count, Value: 1978}, "1978", "1978"},
		{Limit{Unit: Newtons, Value: 10}, "10 N", "10 N"},
		{Limit{Unit: Watts, Value: 60}, "60 W", "60 W"},
		{Limit{Unit: Celsius, Value: 20}, "20 °C", "20 °C"},
	} {
		if got := c.limit.Print(measure.Imperial); got != c.imperial {
			t.Errorf("imperial: got %q, want %q", got, c.imperial)
		}
		if got := c.limit.Print(measure.Metric); got != c.metric {
			t.Errorf("metric: got %q, want %q", got, c.metric)
		}
	}
}

func TestAllowed(t *testing.T) {
	l, _ := LookupLimit(PlateBore)
	if got, want := l.Allowed(measure.Imperial), "10 % to 60 %"; got != want {
		t.Errorf("PlateBore: got %q, want %q", got, want)
	}
	l, _ = LookupLimit(PowerParallel)
	if got, want := l.Allowed(measure.Metric), "0 mm (0in) to 610 mm (2ft)"; got != want {
		t.Errorf("PowerParallel: got %q, want %q", got, want)
	}
}

func TestSourceString(t *testing.T) {
	for _, c := range []struct {
		source Source
		want   string
	}{
		{Source{Status: CommonPractice}, "common practice, no source"},
		{Source{Status: SetByUser}, "set for this job"},
		{Source{Document: "Code", Edition: "2018", Clause: "R1.2", Status: Confirmed}, "Code 2018, R1.2"},
		{Source{Document: "Code", Clause: "R1.2", AsQuotedBy: "a city", Status: AsQuoted}, "Code, R1.2, as quoted by a city"},
		{Source{Document: "Code", Status: FromMemory}, "Code, from memory"},
		{Source{Document: "Code", Clause: "R1.2", AsQuotedBy: "a city", Status: Derived}, "derived from Code, R1.2, as quoted by a city"},
	} {
		if got := c.source.String(); got != c.want {
			t.Errorf("%+v: got %q, want %q", c.source, got, c.want)
		}
	}
}

func TestClearanceOf(t *testing.T) {
	for kind, want := range map[string]LimitID{"light": HotLight, "flue": HotFlue, "chimney": HotFlue} {
		if got, ok := ClearanceOf(kind); got != want || !ok {
			t.Errorf("ClearanceOf(%q) = %q, %v; want %q", kind, got, ok, want)
		}
	}
	for _, kind := range []string{"duct", "tank", "unit", "", "piano"} {
		if got, ok := ClearanceOf(kind); ok {
			t.Errorf("ClearanceOf(%q) = %q; cable may lie against it", kind, got)
		}
	}
}
