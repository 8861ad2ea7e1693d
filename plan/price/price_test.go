package price

import (
	"math"
	"math/big"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"topplate/plan/measure"
)

func TestTermRecords(t *testing.T) {
	wellFormed := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	seen := map[ID]bool{}
	for _, term := range Terms {
		if !wellFormed.MatchString(string(term.ID)) || seen[term.ID] {
			t.Errorf("id %q is not words joined by hyphens, or is used twice", term.ID)
		}
		seen[term.ID] = true
		if term.Title == "" || strings.HasSuffix(term.Title, ".") || !strings.HasSuffix(term.Doc, ".") {
			t.Errorf("%s: title %q, doc %q", term.ID, term.Title, term.Doc)
		}
		if strings.ContainsAny(term.Title+term.Doc, "|\n") {
			t.Errorf("%s breaks the page's table", term.ID)
		}
		switch {
		case term.Unit == Elsewhere && (term.Value != 0 || term.Max() != 0):
			t.Errorf("%s is priced elsewhere but has a value", term.ID)
		case term.Unit != Elsewhere && (term.Value <= 0 || term.Value >= term.Max()):
			t.Errorf("%s: default %d is not between 0 and %d", term.ID, term.Value, term.Max())
		}
		if strings.HasPrefix(string(term.ID), "change") && term.PerCable {
			t.Errorf("%s: a change is paid once", term.ID)
		}
	}
}

// The ids are written in users' files and in results, so they never change.
func TestIDsAreKept(t *testing.T) {
	want := "walk crawl arm-reach through-insulation cross-joist pull-cable bend bend-at-hole bore-plate-from-attic " +
		"bore-plate-from-box bore-sole-from-below bore-sole-from-box bore-fire-block bore-stud bore-joist bore-wall bore-masonry bore-floor bore-gable-wall lift-board rod-shot rod-push fish-conduit fish-bay out-of-back fish-chase pass-between-attics raceway raceway-round-door outside-run outside-anchors open-soffit cut-box-opening " +
		"cut-ceiling-hole mount-box patch-board move-place change-move-plate change-move-device change-move-power " +
		"change-longer-bit change-longer-rods change-baffle change-patching change-raceway change-crowded"
	if got := strings.Join(IDs(), " "); got != want {
		t.Errorf("IDs() = %s\nwant %s", got, want)
	}
	for _, id := range []ID{Cable, Change} {
		if term, ok := Lookup(id); !ok || term.Title == "" {
			t.Errorf("a breakdown can't print term %q", id)
		}
		if slices.Contains(IDs(), string(id)) {
			t.Errorf("%q has no value of its own, but a user may set it", id)
		}
	}
	if _, ok := Lookup("no-such-term"); ok {
		t.Error("Lookup found a term that is not there")
	}
}

// What the trade would laugh at, whatever the numbers are (common practice, no
// source).
func TestDefaultsAreInOrder(t *testing.T) {
	value := func(id ID) int64 {
		term, ok := Lookup(id)
		if !ok {
			t.Fatalf("no term %q", id)
		}
		return term.Value
	}
	for _, c := range [][2]ID{
		{Walk, CrawlTravel},
		{CrawlTravel, ArmTravel},
		{BendFree, BendAtHole},
		{BoreFromAbove, BoreFromBelow},
		{BoreStud, Patch},
		{CutBox, Patch},
	} {
		if value(c[0]) >= value(c[1]) {
			t.Errorf("%s is not cheaper than %s", c[0], c[1])
		}
	}
}

// Prices by hand. A cost unit is a millionth of the currency's unit.
func TestPrices(t *testing.T) {
	hour := int64(85_000) // 85 an hour
	b := NewTable(map[string]int64{"cross-joist": 1, "mount-box": 0, "change-move-plate": 7}, hour)
	for _, c := range []struct {
		what      string
		got, want int64
	}{
		// 8 min × 85/60 = 11.333 333 3…
		{"8 min each", b.Each(BoreFromAbove), 11_333_333},
		// 0.25 min × 85/60 = 0.354 166 6…, rounded up
		{"0.25 min each", NewTable(nil, hour).Each(CrossJoist), 354_167},
		// 0.001 min × 85/60 = 0.001 416 6…
		{"0.001 min each", b.Each(CrossJoist), 1_417},
		{"nothing", b.Each(MountBox), 0},
		// 0.007 min × 85/60 = 0.009 916 6…
		{"0.007 min each", b.Each(ChangeMovePlate), 9_917},
		{"250 each, whatever an hour costs", b.Each(ChangeMoveDevice), 250_000_000},
		// 0.3 min/m × 85/60 = 0.425/m
		{"1 m at 0.3 min", b.PerMetre(Walk, measure.Metre), 425_000},
		// 12 ft 6-1/2 in = 3.8227 m: × 0.425 = 1.624 647 5, a half, rounded up
		{"12ft 6-1/2in at 0.3 min", b.PerMetre(Walk, 12*measure.Foot+13*measure.Inch/2), 1_624_648},
		{"no way at all", b.PerMetre(CrawlTravel, 0), 0},
		// 100 km × 2 min × 85/60 = 283 333.333…
		{"100 km at 2 min", b.PerMetre(ArmTravel, 100_000*measure.Metre), 283_333_333_333},
		// 2.5 m × 60 = 150
		{"2.5 m of raceway", b.PerMetre(ChangeRaceway, 2500*measure.Millimetre), 150_000_000},
		// 18.4 m × 0.7 = 12.88
		{"18.4 m of cable at 0.7", ByLength(700, 18_400*measure.Millimetre), 12_880_000},
		// 1 nm × 0.5/m is half of a thousandth of a unit: 0; 1 mm is 500
		{"1 nm of cable", ByLength(500, 1), 0},
		{"1 mm of cable", ByLength(500, measure.Millimetre), 500},
		// 1 µm at 0.5/m is exactly half a cost unit, rounded up
		{"1 µm of cable", ByLength(500, measure.Micrometre), 1},
	} {
		if c.got != c.want {
			t.Errorf("%s: got %d, want %d", c.what, c.got, c.want)
		}
	}
}

// Against math/big, for everything a user may set and 100 km.
func TestPricesAreExact(t *testing.T) {
	nearest := func(num, den *big.Int) *big.Int { // floor(num/den + 1/2)
		n := new(big.Int).Add(new(big.Int).Lsh(num, 1), den)
		return n.Div(n, new(big.Int).Lsh(den, 1))
	}
	rapid.Check(t, func(t *rapid.T) {
		hour := rapid.Int64Range(0, 10_000_000).Draw(t, "hour")
		term := rapid.SampledFrom(Terms).Filter(func(t Term) bool { return t.Unit != Elsewhere }).Draw(t, "term")
		value := rapid.Int64Range(0, term.Max()).Draw(t, "value")
		l := rapid.Int64Range(0, int64(100_000*measure.Metre)).Draw(t, "length")
		table := NewTable(map[string]int64{string(term.ID): value}, hour)

		num, den, got := big.NewInt(value), big.NewInt(1), int64(0)
		switch term.Unit {
		case MinutesEach:
			num.Mul(num, big.NewInt(hour))
			den.SetInt64(60)
			got = table.Each(term.ID)
		case MoneyEach:
			num.Mul(num, big.NewInt(1000))
			got = table.Each(term.ID)
		case MinutesPerMetre:
			num.Mul(num, big.NewInt(hour)).Mul(num, big.NewInt(l))
			den.SetInt64(60 * 1_000_000_000)
			got = table.PerMetre(term.ID, measure.Length(l))
		case MoneyPerMetre:
			num.Mul(num, big.NewInt(l))
			den.SetInt64(1_000_000)
			got = table.PerMetre(term.ID, measure.Length(l))
		}
		if want := nearest(num, den); want.Cmp(big.NewInt(got)) != 0 {
			t.Fatalf("%s = %d thousandths at %d an hour over %d nm: got %d, want %d", term.ID, value, hour, l, got, want)
		}
	})
}

// No number makes a price negative, and many of the highest still add up.
func TestPricesAreCutOff(t *testing.T) {
	most := NewTable(map[string]int64{"walk": math.MaxInt64, "mount-box": math.MaxInt64, "change-raceway": math.MaxInt64}, math.MaxInt64)
	for what, got := range map[string]int64{
		"minutes each":       most.Each(MountBox),
		"minutes per metre":  most.PerMetre(Walk, math.MaxInt64),
		"money per metre":    most.PerMetre(ChangeRaceway, math.MaxInt64),
		"cable":              ByLength(math.MaxInt64, math.MaxInt64),
		"a product too long": ByLength(1<<40, 1<<62),
	} {
		if got != prohibitive {
			t.Errorf("%s: got %d, want %d", what, got, int64(prohibitive))
		}
		if 100*got/100 != got {
			t.Errorf("%s: a hundred of %d overflow", what, got)
		}
	}
}

func TestTableDoesNotChangeTheDefaults(t *testing.T) {
	before := slices.Clone(Terms)
	NewTable(map[string]int64{"walk": 1, "cable": 5, "no-such-term": 9}, 1000)
	if !slices.Equal(before, Terms) {
		t.Error("making a table changed the defaults")
	}
}

func TestTablePanicsOnMistakesInTheProgram(t *testing.T) {
	table := NewTable(nil, 85_000)
	for name, f := range map[string]func(){
		"no such term":           func() { table.Each("no-such-term") },
		"length by the piece":    func() { table.Each(Walk) },
		"piece by length":        func() { table.PerMetre(MountBox, measure.Metre) },
		"heading":                func() { table.Each(Change) },
		"priced by its own type": func() { table.PerMetre(Cable, measure.Metre) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			f()
		}()
	}
}

func TestPage(t *testing.T) {
	page := NewTable(map[string]int64{"walk": 1_250}, 85_500).Page(func(id ID) string { return map[ID]string{"walk": "set at home"}[id] })
	for _, want := range []string{
		"Labour is minutes at 85.5 an hour. Every default is common practice, no source: set your own.",
		"| walk | Getting about where one can stand | 1.25 minutes per metre | set at home | once for all cables | Laying a bundle while walking on the joists or on decking. |",
		"| cable | The cable itself | priced elsewhere |  | by each cable | ",
		"| change-raceway | Change: a surface raceway | 60 money per metre |  | once for all cables | ",
	} {
		if !strings.Contains(page, want+"\n") && !(strings.HasSuffix(want, "| ") && strings.Contains(page, want)) {
			t.Errorf("page lacks %q:\n%s", want, page)
		}
	}
	if got, want := strings.Count(page, "\n|"), len(Terms)+2; got != want {
		t.Errorf("page has %d rows, want %d", got, want)
	}
}

func TestThousandths(t *testing.T) {
	for n, want := range map[int64]string{0: "0", 1: "0.001", 20: "0.02", 1_000: "1", 1_250: "1.25", 85_000: "85", 10_010: "10.01"} {
		if got := thousandths(n); got != want {
			t.Errorf("thousandths(%d) = %q, want %q", n, got, want)
		}
	}
}

func BenchmarkPerMetre(b *testing.B) {
	table := NewTable(nil, 85_000)
	for b.Loop() {
		table.PerMetre(CrawlTravel, 12*measure.Foot)
	}
}
