package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/plan/source"
	"topplate/plan/survey"
)

// outerOf is the outer run of the base house, taped as said, with its middle
// wall and [house] with further keys.
func outerOf(run, house string) string {
	return `[house]
name = "Checked"
units = "imperial"
` + house + `

[[wall]]
id = "outer"
start = ["0ft", "0ft"]
run = "` + run + `"
names = ["south", "east", "north", "west"]
closes = true
face = "right"
exterior = true

[[wall]]
id = "middle"
start = { wall = "south", at = "14ft" }
run = "N 20ft"

`
}

func checkText(id, from, to, length string) string {
	return fmt.Sprintf("[[check]]\nid = %q\nfrom = { %s }\nto = { %s }\nlength = %q\n\n", id, from, to, length)
}

// The house of TestTwoRooms, with lengths that follow from it by hand: 30 ft
// by 20 ft outside, walls 5 in thick, so 350 in by 230 in inside; the bedroom
// is 160-3/4 in wide.
func TestDrawnChecks(t *testing.T) {
	tests := []struct{ from, to, want string }{
		{`wall = "south", end = "start"`, `wall = "south", end = "end"`, "30ft"},
		{`wall = "west"`, `wall = "east"`, "30ft"},
		{`wall = "west", side = "left"`, `wall = "east", side = "left"`, "350in"},
		{`wall = "east", side = "left"`, `wall = "west", side = "left"`, "350in"},
		{`wall = "west", side = "left"`, `wall = "middle", side = "left"`, "160-3/4in"},
		{`wall = "middle", side = "right"`, `wall = "east", side = "left"`, "184-3/4in"},
		{`wall = "north", side = "left"`, `wall = "south", side = "left"`, "230in"},
		{`wall = "south", end = "start", side = "left"`, `wall = "south", end = "end", side = "left"`, "350in"},
		{`wall = "south", end = "start", side = "left"`, `wall = "west", end = "start", side = "left"`, "230in"},
		{`wall = "south", end = "start", side = "right"`, `wall = "south", end = "end", side = "right"`, "30ft"},
		{`wall = "south", at = "4ft"`, `wall = "south", at = "6ft", from = "end"`, "20ft"},
		{`wall = "south", at = "10ft"`, `wall = "north", at = "10ft", from = "end"`, "20ft"},
		{`wall = "south", at = "10ft", side = "left"`, `wall = "north", at = "10ft", from = "end", side = "left"`, "230in"},
		{`wall = "south", at = "14ft"`, `wall = "middle", end = "end"`, "20ft"},
		{`wall = "middle", at = "5ft", side = "right"`, `wall = "east", at = "5ft"`, "15ft 9-3/4in"},
		// 3-4-5: 12 ft along, 16 ft up.
		{`wall = "south", at = "12ft"`, `wall = "west", at = "4ft"`, "20ft"},
	}
	for _, tt := range tests {
		h := houseOf(t, outerOf("E 30ft, N 20ft, W 30ft, S 20ft", "")+checkText("c", tt.from, tt.to, tt.want))
		if c := h.Checks[0]; c.Drawn != at(t, tt.want) || !c.Agrees {
			t.Errorf("from %s to %s: got %v, want %s", tt.from, tt.to, c.Drawn, tt.want)
		}
	}
}

const (
	seconds = 36*foot + 11*inch/16 // the diagonal of 30 ft by 20 ft: 36.0555 ft is 36 ft 0.67 in
)

// bothChecks is the two diagonals, taped right.
var bothChecks = checkText("rising", `wall = "south", end = "start"`, `wall = "north", end = "start"`, seconds.String()) +
	checkText("falling", `wall = "west", end = "start"`, `wall = "south", end = "end"`, seconds.String())

func TestCheckMessages(t *testing.T) {
	tests := []struct {
		name, run, house, checks string
		want                     []string // parts of what is said, in order
		not                      string
	}{
		{"agree", "E 30ft, N 20ft, W 30ft, S 20ft", "", bothChecks, nil, "check"},
		{
			"nearly", "E 30ft, N 20ft, W 30ft, S 20ft", "", checkText("c", `wall = "west"`, `wall = "east"`, "30ft 1/2in"),
			[]string{"warning: check[0].length: the check is 1/2in longer than the walls make it, 30ft: no more than the tape may be off"},
			"note",
		},
		{
			"check is wrong", "E 30ft, N 20ft, W 30ft, S 20ft", "", bothChecks + checkText("wide", `wall = "west"`, `wall = "east"`, "29ft"),
			[]string{"check[2].length: the check is 1ft shorter than the walls make it, 30ft: more than", "note: most doubtful is check wide, taped as 29ft; the rest makes it 30ft"},
			"cannot be told",
		},
		{
			"south is wrong, and closes", "E 31ft, N 20ft, W 30ft, S 20ft", `closing = "3ft"`, bothChecks,
			[]string{"the run ends 1ft east of its start", "note: most doubtful is wall south, taped as 31ft; the rest makes it 30ft"},
			"one of",
		},
		{
			"south is wrong, and does not close", "E 31ft, N 20ft, W 30ft, S 20ft", "", bothChecks,
			[]string{"error: wall[0].run: found a run that ends 1ft east of its start", "note: most doubtful is wall south, taped as 31ft; the rest makes it 30ft"},
			"one of",
		},
		{
			"nothing tells which", "E 31ft, N 20ft, W 30ft, S 20ft", "", "",
			[]string{"found a run that ends 1ft east", "one of 2 measurements that cannot be told apart: wall south", "wall north, taped as 30ft; the rest makes it 31ft"},
			"wall east",
		},
		{
			// The diagonals are as good in the mirror image.
			"the wrong way", "E 30ft, N 20ft, E 30ft, S 20ft", "", bothChecks,
			[]string{"found a run that ends 60ft east", "one of 2", "wall north, taped as 30ft; the rest makes it 30ft the other way"},
			"most doubtful",
		},
		{
			// The middle wall starts 14 ft along; a check says 13 ft.
			"the start of a wall", "E 30ft, N 20ft, W 30ft, S 20ft", "",
			checkText("a", `wall = "west"`, `wall = "middle"`, "13ft") + checkText("b", `wall = "middle"`, `wall = "east"`, "17ft"),
			[]string{"most doubtful is the start of middle on south, taped as 14ft; the rest makes it 13ft"},
			"one of",
		},
		{
			"no fit", "E 30ft, N 20ft, W 30ft, S 20ft", "", checkText("c", `wall = "south", end = "start"`, `wall = "north", end = "start"`, "1000ft"),
			[]string{"check[0].length: the check is 963ft 11-5/16in longer", "most doubtful is check c"},
			"panic",
		},
		{
			"not while in doubt", "E 31ft, N 20ft, W 30ft, S 20ft", "closing = \"3ft\"\nadjust = true", bothChecks,
			[]string{"house.adjust: the walls are not adjusted by least squares while a measurement is in doubt", "wall south is", "most doubtful is wall south"},
			"one of",
		},
	}
	for _, tt := range tests {
		_, list := LoadHouse("house.toml", []byte(complete(t, outerOf(tt.run, tt.house)+tt.checks, "testdata/base_house.toml")))
		rest := print(t, list)
		for _, part := range tt.want {
			_, after, ok := strings.Cut(rest, part)
			if !ok {
				t.Errorf("%s: not said: %q in\n%s", tt.name, part, rest)
			}
			rest = after
		}
		if strings.Contains(print(t, list), tt.not) {
			t.Errorf("%s: said %q:\n%s", tt.name, tt.not, print(t, list))
		}
	}
}

// Three lengths of one width, 361, 360 and 360 in, of equal weight have a mean
// of 360-1/3 in; by the run alone the width is 360 in and 360/721 of the inch.
func TestAdjustByLeastSquares(t *testing.T) {
	width := checkText("wide", `wall = "west"`, `wall = "east"`, "30ft")
	run := "E 30ft 1in, N 20ft, W 30ft, S 20ft"
	for _, tt := range []struct {
		keys string
		want measure.Length
	}{
		{"adjust = true", 360*inch + 8_466_667},
		{"adjust = false", 360*inch + 12_682_386},
		{"", 360*inch + 12_682_386},
	} {
		h := houseOf(t, outerOf(run, tt.keys)+width)
		if got := wall(t, h, "south").B.X; got != tt.want {
			t.Errorf("%s: the south wall ends at %d nm, want %d", tt.keys, got, tt.want)
		}
		if c := h.Checks[0]; h.Adjusted != (tt.keys == "adjust = true") || c.Drawn != tt.want || !c.Agrees {
			t.Errorf("%s: adjusted %v, %+v", tt.keys, h.Adjusted, c)
		}
		checkHouse(t, h)
		// The middle wall went along: it starts 14 ft from the start of south.
		if got := wall(t, h, "middle").A; got != (geom.Point{X: 14 * foot}) {
			t.Errorf("%s: the middle wall starts at %v", tt.keys, got)
		}
	}
}

// A check that was taped better than the walls counts for more: 1/4 in against
// 1 in off, weights 16 to 1 and 1: (361 + 360 + 16*360.25)/18 in.
func TestWeightOfCheck(t *testing.T) {
	width := strings.TrimSpace(checkText("wide", `wall = "west"`, `wall = "east"`, "30ft 1/4in")) + "\nerror = \"1/4in\"\n"
	h := houseOf(t, outerOf("E 30ft 1in, N 20ft, W 30ft, S 20ft", "adjust = true")+width)
	want := measure.Length(math.Round((361 + 360 + 16*360.25) / 18 * float64(inch)))
	// A third of a tape's error is not a whole number of nanometres.
	if got := wall(t, h, "south").B.X; max(got-want, want-got) > 2 {
		t.Errorf("the south wall ends at %d nm, want %d", got, want)
	}
}

// netOf is the network of a house.
func netOf(t *testing.T, src string) *tapedNet {
	t.Helper()
	root, list := source.Parse("house.toml", []byte(src))
	if root == nil {
		t.Fatal(print(t, list))
	}
	l := newHouseLoader("house.toml", list)
	l.header(root)
	l.levels(root)
	l.readRuns(root)
	for _, r := range l.runs {
		l.readStart(r)
	}
	l.setLevels()
	net := l.newTapedNet(0, l.readChecks(root))
	if list.HasErrors() || net == nil {
		t.Fatal(print(t, list))
	}
	return net
}

// checkedHouse is a random house with a few lengths between ends of its walls,
// which are given a length in the network below.
func checkedHouse(rng *rand.Rand, seed uint64) string {
	s := randomhouse.Generate(seed, randomhouse.Options{})
	var b strings.Builder
	b.WriteString(s.House)
	walls := s.Model.Walls
	for i := range 4 + rng.IntN(5) {
		v, w := walls[rng.IntN(len(walls))].ID, walls[rng.IntN(len(walls))].ID
		if v == w {
			continue
		}
		b.WriteString("\n" + checkText(fmt.Sprintf("c%d", i), fmt.Sprintf(`wall = %q, end = "start"`, v), fmt.Sprintf(`wall = %q, end = "end"`, w), "10ft"))
	}
	return b.String()
}

// TestBlunderIsNamed makes sketches with errors of a good tape and one length
// that is a foot off, and counts how often that length is named. It counts the
// cases in which it can be: the length is checked at all, and the same blunder
// without other errors does not look nearly the same in another length. In at
// least 9 of 10 of those it has to be named.
func TestBlunderIsNamed(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	named, wrong, cases := 0, 0, 0
	for seed := range uint64(60) {
		clean := cleaned(t, netOf(t, checkedHouse(rng, seed)).net)
		if clean.Observations == nil {
			continue
		}
		for range 8 {
			k := rng.IntN(len(clean.Observations))
			blunder := foot
			if rng.IntN(2) == 0 {
				blunder = -foot
			}
			if !checkable(t, clean, k, blunder) {
				continue
			}
			noisy := withError(clean, k, blunder)
			for i := range noisy.Observations {
				o := &noisy.Observations[i]
				o.Length += measure.Length(rng.NormFloat64() * float64(o.Sigma))
			}
			a, err := survey.Adjust(noisy)
			if err != nil {
				t.Fatal(err)
			}
			cases++
			switch got := a.Doubtful(survey.Snooping); {
			case slices.Equal(got, []int{k}):
				named++
			default:
				wrong++
			}
		}
	}
	t.Logf("named in %d of %d cases", named, cases)
	if cases < 100 || named*10 < cases*9 {
		t.Errorf("named in %d of %d cases, not in %d", named, cases, wrong)
	}
}

// cleaned gives every length of a network the value that its places have, and
// leaves out checks between places that are one or nearly.
func cleaned(t *testing.T, n survey.Network) survey.Network {
	t.Helper()
	n.Observations = slices.DeleteFunc(slices.Clone(n.Observations), func(o survey.Observation) bool {
		return o.Along == survey.Straight && geom.Dist(place(o.From, n.Near), place(o.To, n.Near)) < 3*foot
	})
	for i := range n.Observations {
		o := &n.Observations[i]
		p, q := place(o.From, n.Near), place(o.To, n.Near)
		o.Length = []measure.Length{q.X - p.X, q.Y - p.Y, geom.Dist(p, q)}[o.Along]
	}
	return n
}

func withError(n survey.Network, k int, by measure.Length) survey.Network {
	n.Observations = slices.Clone(n.Observations)
	n.Observations[k].Length += by
	return n
}

// checkable reports whether an error in one length, alone, shows well in it
// and less in all others.
func checkable(t *testing.T, clean survey.Network, k int, blunder measure.Length) bool {
	t.Helper()
	a, err := survey.Adjust(withError(clean, k, blunder))
	if err != nil {
		t.Fatal(err)
	}
	own := math.Abs(a.Outcomes[k].Standardised)
	for i, o := range a.Outcomes {
		if i != k && math.Abs(o.Standardised) > 0.9*own {
			return false
		}
	}
	return a.Outcomes[k].Redundancy > 0.05
}

// What least squares makes of a house does not depend on the order of tables.
func TestOrderOfChecksDoesNotMatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(23, 24))
	src := complete(t, outerOf("E 30ft 1in, N 20ft 3/8in, W 30ft, S 20ft", "adjust = true")+bothChecks+
		checkText("room", `wall = "west", side = "left"`, `wall = "middle", side = "left"`, "13ft 5in"), "testdata/base_house.toml")
	load := func(src string) []string {
		h, list := LoadHouse("house.toml", []byte(src))
		if h == nil || !h.Adjusted {
			t.Fatal(print(t, list))
		}
		out := describe(h)
		for _, c := range h.Checks {
			out = append(out, fmt.Sprintf("%s %v %v %v", c.ID, c.Length, c.Drawn, c.Agrees))
		}
		return out
	}
	want := load(src)
	for range 20 {
		if diff := cmp.Diff(want, load(shuffleTables(rng, src))); diff != "" {
			t.Fatal(diff)
		}
	}
}

// By hand, in the house of TestTwoRooms: the diagonal goes from the zero point
// to the far corner, 30 ft by 20 ft; the check between the west wall and the
// middle one is drawn halfway up the west wall, which is walked from the north.
func TestCheckEnds(t *testing.T) {
	h := houseOf(t, checkText("diagonal", `wall = "south", end = "start"`, `wall = "north", end = "start"`, "36ft 11/16in")+
		checkText("width", `wall = "west"`, `wall = "east"`, "30ft"))
	want := map[string][4]string{"diagonal": {"0ft", "0ft", "30ft", "20ft"}, "width": {"0ft", "10ft", "30ft", "10ft"}}
	for _, c := range h.Checks {
		w := want[c.ID]
		if a, b := (geom.Point{X: at(t, w[0]), Y: at(t, w[1])}), (geom.Point{X: at(t, w[2]), Y: at(t, w[3])}); c.A != a || c.B != b {
			t.Errorf("check %s goes from %v to %v, want %v to %v", c.ID, c.A, c.B, a, b)
		}
	}
	if len(h.Checks) != len(want) {
		t.Errorf("found %d checks, want %d", len(h.Checks), len(want))
	}
}
