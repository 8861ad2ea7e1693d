package cable

import (
	"math"
	"slices"
	"strings"
	"testing"

	"topplate/plan/measure"
	"topplate/plan/rule"
)

func TestRecords(t *testing.T) {
	ids := IDs()
	if len(ids) != len(types) {
		t.Fatalf("IDs() lists %d of %d types", len(ids), len(types))
	}
	for i, id := range ids {
		if slices.Contains(ids[:i], id) {
			t.Errorf("id %q is used twice", id)
		}
		c, ok := Lookup(id)
		if !ok || c.ID != id {
			t.Errorf("Lookup(%q) = %q, %v", id, c.ID, ok)
		}
		if c.Title == "" || c.Category == "" || c.MinBendDiameters <= 0 || c.PricePerMetre <= 0 || c.MaxPull <= 0 || c.Mass <= 0 || c.Resistance <= 0 {
			t.Errorf("%s lacks something: %+v", id, c)
		}
		if c.Conductor <= 0 || c.Core <= c.Conductor || c.Diameter <= c.Core || c.Hot <= c.Cold || !slices.Contains(Jackets(), string(c.Jacket)) {
			t.Errorf("%s contradicts itself: %+v", id, c)
		}
		if c.FourPair != (c.Conductors == 8) || c.FourPair != strings.HasPrefix(c.Title, "Category "+c.Category) {
			t.Errorf("%s: %d conductors of category %s, four pairs %v", id, c.Conductors, c.Category, c.FourPair)
		}
		for p, s := range c.Sources {
			if (s == rule.Source{}) || s.Status != rule.CommonPractice && s.Document == "" {
				t.Errorf("%s: the source of its %v is not told", id, Property(p))
			}
		}
	}
	if _, ok := Lookup("no-such-cable"); ok {
		t.Error("Lookup found a cable that is not there")
	}
}

// Copper weighs 8.96 g/cm³: a cable is heavier than its conductors, and lighter
// than if all of it were copper.
func TestMassOfCopper(t *testing.T) {
	const density = 8.96 // mg/mm³
	for _, c := range types {
		solid, _ := Solid(c.Gauge)
		section := func(d measure.Length) float64 { return math.Pi / 4 * d.Millimetres() * d.Millimetres() }
		least := density * 1000 * section(solid) * float64(c.Conductors)
		if got := float64(c.Mass); got < least*1.1 || got > 0.5*density*1000*section(c.Diameter) {
			t.Errorf("%s weighs %.0f mg/m, of which %.0f is copper", c.ID, got, least)
		}
	}
}

// The ids are written in users' files, and the first is the default.
func TestIDsAreKept(t *testing.T) {
	if got, want := strings.Join(IDs(), " "), "cat6 cat6-outdoor cat6a cat5e coax6 speaker2 speaker4 cat6-plenum cat6a-screened cat6-burial"; got != want {
		t.Errorf("IDs() = %q, want %q", got, want)
	}
}

func TestPublishedDiameters(t *testing.T) {
	for _, c := range []struct {
		source   string
		id       string
		min, max measure.Length
		fourPair bool
	}{
		// A maker's table of riser cable, brand withheld, rounded to 0.1 mm.
		{"0.189 in (4.8 mm)", "cat5e", 4_800_000, 4_800_000, true},
		{"0.200-0.236 in (5.1-6.0 mm), thickest", "cat6", 6_000_000, 6_000_000, true},
		{"0.340 in (8.6 mm)", "cat6a", 8_600_000, 8_600_000, true},
		{"0.307 in (7.8 mm)", "cat6a-screened", 7_800_000, 7_800_000, true},
		// From memory.
		{"outdoor jackets are thicker, up to 6.6 mm", "cat6-outdoor", 6_000_000, 6_600_000, true},
		{"series 6 is 6.8 to 7.0 mm", "coax6", 6_800_000, 7_000_000, false},
		{"2-core 14 to 16 AWG", "speaker2", 6_000_000, 8_500_000, false},
		{"4-core 14 to 16 AWG", "speaker4", 7_500_000, 10_000_000, false},
		{"filled cable 7 to 8 mm", "cat6-burial", 7_000_000, 8_000_000, true},
	} {
		got, _ := Lookup(c.id)
		if got.Diameter < c.min || c.max < got.Diameter || got.FourPair != c.fourPair {
			t.Errorf("%s: %s is %v, four pairs %v", c.source, c.id, got.Diameter, got.FourPair)
		}
	}
}

// Typical diameters over the insulation: 24 AWG category 5e 0.85-0.95 mm,
// 23 AWG category 6 1.0-1.1 mm, category 6A 1.1-1.35 mm (from memory); the
// largest that ANSI/TIA-568-B.2 allows is 1.22 mm, as quoted by two makers'
// specifications.
func TestCores(t *testing.T) {
	for category, want := range map[string][2]measure.Length{"5e": {850_000, 950_000}, "6": {1_000_000, 1_100_000}, "6A": {1_100_000, 1_350_000}} {
		for _, c := range types {
			if c.Category == category && (c.Core < want[0] || want[1] < c.Core || c.Core > 1_220_000) {
				t.Errorf("%s: a core of %v", c.ID, c.Core)
			}
		}
	}
}

// TIA01: four-pair cable bends to four diameters. By hand: 6.0 mm gives 24 mm,
// 8.6 mm gives 34.4 mm. TIA02: it is pulled with 110 N at most.
func TestBendsAndPulls(t *testing.T) {
	for id, want := range map[string]measure.Length{"cat6": 24_000_000, "cat6a": 34_400_000, "cat5e": 19_200_000} {
		c, _ := Lookup(id)
		if got := c.Diameter * measure.Length(c.MinBendDiameters); got != want {
			t.Errorf("%s bends to %v, want %v", id, got, want)
		}
		if c.MaxPull != 110_000 {
			t.Errorf("%s is pulled with %d mN", id, c.MaxPull)
		}
	}
}

// AWG01: published wire tables give, for gauges 22, 23, 24 and 26, a diameter
// of 0.644, 0.573, 0.511 and 0.405 mm, and 52.9, 66.8, 84.2 and 133.9 ohm/km.
// All others are held against the formula of ASTM B258.
func TestWireTables(t *testing.T) {
	for _, row := range []struct {
		gauge    int
		mm, ohms float64
	}{{22, 0.644, 52.9}, {23, 0.573, 66.8}, {24, 0.511, 84.2}, {26, 0.405, 133.9}} {
		d, ok := Solid(row.gauge)
		if !ok || math.Abs(d.Millimetres()-row.mm) > 0.0005 {
			t.Errorf("gauge %d is %v, want %v mm", row.gauge, d, row.mm)
		}
		if got := float64(CopperResistance(d)) / 1000; math.Abs(got-row.ohms) > 0.1 {
			t.Errorf("gauge %d has %v ohm/km, want %v", row.gauge, got, row.ohms)
		}
	}
	for n := ThickestGauge; n <= ThinnestGauge; n++ {
		d, ok := Solid(n)
		if want := 0.127 * math.Pow(92, float64(36-n)/39); !ok || math.Abs(d.Millimetres()-want) > 1e-6 {
			t.Errorf("gauge %d is %v, want %v mm", n, d, want)
		}
	}
	for _, none := range []int{-1, 0, ThickestGauge - 1, ThinnestGauge + 1} {
		if d, ok := Solid(none); ok || d != 0 {
			t.Errorf("gauge %d is %v", none, d)
		}
		if d, r := FromGauge(none, true); d != 0 || r != 0 {
			t.Errorf("gauge %d is %v with %d", none, d, r)
		}
	}
}

// The conductors of the built-in cables: 23 AWG has 6.68 ohm/100 m (values of
// AWG01), and a solid category cable stays below the 9.38 ohm/100 m of
// ANSI/TIA-568.2-D (AWG02, from memory). Seven strands that have the copper of
// 0.511 mm are 0.579 mm thick: each is 0.193 mm, and three lie side by side.
func TestConductors(t *testing.T) {
	c, _ := Lookup("cat6")
	if c.Resistance < 66_700 || 66_850 < c.Resistance || c.Conductor != 573_323 {
		t.Errorf("cat6: %d µohm/m, %v", c.Resistance, c.Conductor)
	}
	for _, c := range types {
		if c.FourPair && (c.Resistance > 93_800 || c.Stranded) {
			t.Errorf("%s: %d µohm/m, stranded %v", c.ID, c.Resistance, c.Stranded)
		}
	}
	solid, r := FromGauge(24, false)
	bundle, same := FromGauge(24, true)
	if r != same || solid != 510_559 || math.Abs(bundle.Millimetres()-3*0.511/math.Sqrt(7)) > 0.001 {
		t.Errorf("24 AWG: %v and %v, %d and %d", solid, bundle, r, same)
	}
}

func TestJackets(t *testing.T) {
	for _, j := range Jackets() {
		if got := Jacket(j).Listed(); got != (j != "outdoor") {
			t.Errorf("%s is listed: %v", j, got)
		}
	}
}
