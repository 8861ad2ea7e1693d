package cable

import (
	"slices"
	"strings"
	"testing"

	"topplate/plan/measure"
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
		if c.Title == "" || c.Diameter <= 0 || c.MinBendDiameters <= 0 || c.PricePerMetre <= 0 {
			t.Errorf("%s lacks something: %+v", id, c)
		}
		for _, part := range []string{"diameter: ", "bend: ", "price: "} {
			if !strings.Contains(c.Source, part) {
				t.Errorf("%s: source %q does not tell the %s", id, c.Source, part)
			}
		}
	}
	if _, ok := Lookup("no-such-cable"); ok {
		t.Error("Lookup found a cable that is not there")
	}
}

// The ids are written in users' files, and the first is the default.
func TestIDsAreKept(t *testing.T) {
	if got, want := strings.Join(IDs(), " "), "cat6 cat6-outdoor cat6a cat5e coax6 speaker2 speaker4"; got != want {
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
		// From memory.
		{"outdoor jackets are thicker, up to 6.6 mm", "cat6-outdoor", 6_000_000, 6_600_000, true},
		{"series 6 is 6.8 to 7.0 mm", "coax6", 6_800_000, 7_000_000, false},
		{"2-core 14 to 16 AWG", "speaker2", 6_000_000, 8_500_000, false},
		{"4-core 14 to 16 AWG", "speaker4", 7_500_000, 10_000_000, false},
	} {
		got, _ := Lookup(c.id)
		if got.Diameter < c.min || c.max < got.Diameter || got.FourPair != c.fourPair {
			t.Errorf("%s: %s is %v, four pairs %v", c.source, c.id, got.Diameter, got.FourPair)
		}
	}
}

// TIA01: four-pair cable bends to four diameters. By hand: 6.0 mm gives 24 mm,
// 8.6 mm gives 34.4 mm.
func TestBends(t *testing.T) {
	for id, want := range map[string]measure.Length{"cat6": 24_000_000, "cat6a": 34_400_000, "cat5e": 19_200_000} {
		c, _ := Lookup(id)
		if got := c.Diameter * measure.Length(c.MinBendDiameters); got != want {
			t.Errorf("%s bends to %v, want %v", id, got, want)
		}
	}
}
