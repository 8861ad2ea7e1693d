package parts

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan"
	"topplate/plan/connector"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/cut"
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

// listed is the list of a result with all that it may be given.
func listed(res *route.Result) ([]Line, []route.Finding) {
	cuts, _ := cut.Plan(res)
	labels, _ := tags.Labels(res)
	return List(res, Given{Cuts: cuts, Labels: labels})
}

// counts is what is needed of every part.
func counts(lines []Line) map[string]int64 {
	out := map[string]int64{}
	for i := range lines {
		out[lines[i].ID] = lines[i].Need
	}
	return out
}

func line(t *testing.T, lines []Line, id string) Line {
	t.Helper()
	i := slices.IndexFunc(lines, func(l Line) bool { return l.ID == id })
	if i < 0 {
		return Line{}
	}
	return lines[i]
}

// The lists of the samples and the starter, counted by hand from the job files
// and the schedules in testdata.
//
// Corner house: D1 has 3 cables, D2 2 and D3 1, each to a plate of one gang; C1
// and C2 have 2 cables with plugs each, S1 and S2 one. Jacks: 6 + 12 at the
// panel, and 10 % of 18 = 2 more. Plugs: 6, and 20 % = 2 more. 16 ports want a
// panel of 24. Holes: H1, H5 and H4 in plates, H3 bored twice: 5 x 30 ml. Labels:
// 12 cables x 2 ends + 12 ports at the panel + 6 in plates = 42. D1 and D2 are
// in outer walls.
//
// Long roof: W1 2, W2 1, W3 2 cables; C1, S1, S2 one each with a plug. Jacks: 5 +
// 8, and 2 more; plugs: 3, and 2 at least. Ceilings: the closet's, bored
// twice, and C1's. S1 is in the soffit and S2 goes through the gable wall. Labels:
// 16 + 8 + 5.
func TestSamples(t *testing.T) {
	for path, want := range map[string]map[string]int64{
		corner: {
			"cat6": 1, "cat6-outdoor": 1, "box-gasket": 2, "bracket-1-gang": 3, "ceiling-bracket": 2,
			"plate-1-gang-1-port": 1, "plate-1-gang-2-port": 1, "plate-1-gang-3-port": 1, "jack-6": 20, "panel-24-port": 1, "plug-6": 8,
			"air-sealant": 1, "fire-sealant": 1, "soffit-bushing": 2, "weather-sealant": 1,
			"cable-strap": 19, "label": 42, "pull-string": 1, "tape-roll": 1,
		},
		long: {
			"cat6": 1, "cat6-outdoor": 1, "box-gasket": 2, "bracket-1-gang": 3, "ceiling-bracket": 1, "ceiling-bushing": 1,
			"plate-1-gang-1-port": 1, "plate-1-gang-2-port": 2, "jack-6": 15, "panel-12-port": 1, "plug-6": 5,
			"air-sealant": 1, "fire-sealant": 1, "soffit-bushing": 1, "wall-sleeve": 1, "weather-sealant": 1,
			"cable-strap": 20, "label": 29, "pull-string": 1, "tape-roll": 1,
		},
		first: {
			"cat6": 1, "cat6-outdoor": 1, "box-gasket": 1, "bracket-1-gang": 1, "ceiling-bracket": 1,
			"plate-1-gang-2-port": 1, "jack-6": 7, "panel-12-port": 1, "plug-6": 4,
			"air-sealant": 1, "fire-sealant": 1, "soffit-bushing": 1, "weather-sealant": 1,
			"cable-strap": 6, "label": 14, "pull-string": 1, "tape-roll": 1,
		},
	} {
		lines, findings := listed(solved(t, path))
		if diff := cmp.Diff(want, counts(lines)); diff != "" || len(findings) > 0 {
			t.Errorf("%s: %v\n-want +got:\n%s", path, findings, diff)
		}
	}
}

// Words and money of the starter by hand. Jacks: 2 at the plate + 4 at the
// panel, and 10 % of 6 is one more: 7 x 4.50 = 31.50. Cable: 117 ft are 35.6616 m,
// at 0.70 a metre 24.963 12; a spool of 1000 ft is 304.8 m, 213.36. Straps: 22 ft
// 8 in in the attic at one every 4 ft: 6 x 0.25.
func TestStarterWordsAndMoney(t *testing.T) {
	lines, _ := listed(solved(t, first))
	for _, want := range []struct {
		id, rule      string
		charge, spend int64
	}{
		{"jack-6", "2 at drops + 4 at the panel + 1 to spare (10 per cent, at least 1); the trim of 6in at each end does for 6 terminations", 31_500_000, 31_500_000},
		{"plug-6", "2 at drops + 2 to spare (20 per cent, at least 2); the trim of 6in at each end does for 6 terminations", 2_800_000, 2_800_000},
		{"cat6", "3 cables, 117ft to cut; 1 new of 1000ft", 24_963_120, 213_360_000},
		{"fire-sealant", "2 holes in plates and blocks x 30 ml = 60 ml, 300 ml to a tube", 11_000_000, 11_000_000},
		{"cable-strap", "22ft 8in of bundles within reach in the attic, one every 4ft", 1_500_000, 1_500_000},
		{"panel-12-port", "12 ports at the closet, 4 used", 25_000_000, 25_000_000},
		{"bracket-1-gang", "D1: 2 of 4 to a gang", 2_000_000, 2_000_000},
		{"soffit-bushing", "1 hole in soffits", 2_000_000, 2_000_000},
		{"label", "4 cables, both ends and all ports", 2_100_000, 2_100_000},
	} {
		l := line(t, lines, want.id)
		if l.Rule != want.rule || l.Charge != want.charge || l.Spend != want.spend {
			t.Errorf("%s: %q, charge %d, spend %d", want.id, l.Rule, l.Charge, l.Spend)
		}
	}
}

// with puts tables before [rates] of the starter.
func with(tables string) []string { return []string{"[rates]", tables + "\n[rates]"} }

// 7 jacks are needed: 3 at hand leave 4 to buy, 9 leave none. The spool at hand
// is not bought either.
func TestHave(t *testing.T) {
	res := solved(t, first, with("[have]\njack-6 = 3\nplug-6 = 9\nblank-insert = 4\n\n[[spool]]\nid = \"S1\"\ncable = \"cat6\"\nleft = \"200ft\"\n")...)
	lines, findings := listed(res)
	if len(findings) > 0 {
		t.Error(findings)
	}
	for id, want := range map[string][3]int64{"jack-6": {7, 3, 4}, "plug-6": {4, 9, 0}, "cat6": {1, 1, 0}} {
		if l := line(t, lines, id); [3]int64{l.Need, l.Have, l.Buy} != want || l.Spend != l.Buy*l.Price*1000 {
			t.Errorf("%+v, want need, have and buy %v", l, want)
		}
	}
	if l := line(t, lines, "jack-6"); l.Charge != 31_500_000 {
		t.Errorf("jacks from stock are charged too: %d", l.Charge)
	}
}

func TestUnknownNames(t *testing.T) {
	res := solved(t, first, with("[have]\njack6 = 3\ncat6 = 1\nzebra = 1\n")...)
	own := map[string]plan.Override{"labell": {Value: 10}, "jack-6": {Value: 5_000}}
	lines, findings := List(res, Given{Prices: own})
	var got []string
	for _, f := range findings {
		got = append(got, fmt.Sprintf("%d %s %s: %s; %s", f.Pos.Line, f.Severity, f.Where, f.Found, f.Change))
	}
	want := []string{
		`64 caution cat6: 1 of "cat6" are at hand, which is no part; a [[spool]] of it, with what is left on it`,
		`63 caution jack6: 3 of "jack6" are at hand, which is no part; "jack-6", which is the nearest name`,
		`65 caution zebra: 1 of "zebra" are at hand, which is no part; a name from the list of parts`,
		`0 caution labell: there is a price for "labell", which is no part; "label", which is the nearest name`,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	if l := line(t, lines, "jack-6"); l.Charge != 35_000_000 || l.Source.Status != rule.SetByUser {
		t.Errorf("own price: %+v", l)
	}
}

// Twenty cables want five gangs, for which no bracket and no plate has a usual
// price; the rest is planned. Named under [have] they are known all the same.
func TestPartWithoutPrice(t *testing.T) {
	res := solved(t, first, "count = 2", "count = 20", "ports = 12", "ports = 24", "[rates]", "[have]\nbracket-5-gang = 1\n\n[rates]")
	res.Routes = slices.Clone(res.Routes)
	res.Routes[0].Blocked = nil // a bay is too narrow for it; here it is counted
	lines, findings := List(res, Given{})
	var got []string
	for _, f := range findings {
		if f.Rule != NoPrice || f.Severity != rule.Note {
			t.Errorf("%+v", f)
		}
		got = append(got, f.Where)
	}
	if !slices.Equal(got, []string{"bracket-5-gang", "plate-5-gang-20-port"}) {
		t.Errorf("without a price: %v", got)
	}
	if l := line(t, lines, "bracket-5-gang"); l.Need != 1 || l.Buy != 0 || l.Charge != 0 {
		t.Errorf("%+v", l)
	}
	// 20 + 22 at the panel, 10 % of 42 is 5; 24 ports.
	if l := line(t, lines, "jack-6"); l.Need != 20+22+5 || line(t, lines, "panel-24-port").Need != 1 {
		t.Errorf("%+v", l)
	}
}

// Five cables: two gangs, a plate of 6, one blank. Common practice, no source.
func TestBlanks(t *testing.T) {
	ns := notes{}
	res := solved(t, first)
	l := newLister(res, Given{})
	d := res.Job.Drops[0]
	d.Count = 5
	l.wallPlate(ns, &d)
	w := wants{}
	ns.into(w)
	got := map[string]int64{}
	for id := range w {
		got[id] = w[id].n
	}
	want := map[string]int64{"bracket-2-gang": 1, "plate-2-gang-6-port": 1, "blank-insert": 1, "box-gasket": 1}
	if !maps.Equal(got, want) || w["blank-insert"].why != "D1: 6 ports, 5 used" {
		t.Errorf("%v, want %v", w, want)
	}
}

// Fewest panels, then fewest ports, against all ways to buy up to four panels.
func TestSplitAgainstBruteForce(t *testing.T) {
	for n := 1; n <= 150; n++ {
		got := [2]int{}
		for size, k := range split(panels, n) {
			got[0] += k
			got[1] += size * k
		}
		best := [2]int{99, 0}
		for a := range 5 {
			for b := range 5 {
				for c := range 5 {
					v := [2]int{a + b + c, 12*a + 24*b + 48*c}
					if v[1] >= n && (v[0] < best[0] || v[0] == best[0] && v[1] < best[1]) {
						best = v
					}
				}
			}
		}
		if got != best {
			t.Errorf("%d ports: %v, want %v", n, got, best)
		}
	}
}

// Drops for later count under Later only. Without D1 the starter wants 2 jacks
// at the panel and 1 to spare; with it 6 and 1.
func TestLater(t *testing.T) {
	lines, _ := listed(solved(t, first, "count = 2", "count = 2\nwhen = \"later\""))
	for id, want := range map[string][2]int64{"jack-6": {3, 4}, "plug-6": {4, 0}, "bracket-1-gang": {0, 1}, "fire-sealant": {1, 0}, "label": {6, 8}} {
		if l := line(t, lines, id); [2]int64{l.Need, l.Later} != want {
			t.Errorf("%s: %d today and %d later, want %v", id, l.Need, l.Later, want)
		}
	}
	if l := line(t, lines, "bracket-1-gang"); l.Rule != "for later: D1: 2 of 4 to a gang" || l.Buy != 0 {
		t.Errorf("%+v", l)
	}
}

// A camera on another building: protection at both ends. In the air: at one.
func TestSurge(t *testing.T) {
	for exposure, want := range map[string]int64{"none": 0, "aerial": 1, "other building": 2} {
		lines, _ := listed(solved(t, first, "cable = \"cat6-outdoor\"", "cable = \"cat6-outdoor\"\nexposure = \""+exposure+"\""))
		if l := line(t, lines, "surge-data"); l.Need != want || l.Charge != want*35_000_000 {
			t.Errorf("%s: %+v", exposure, l)
		}
	}
}

// Speaker cable ends in posts at a plate, and in no port.
func TestSpeaker(t *testing.T) {
	lines, _ := listed(solved(t, first, "cable = \"cat6\"\ncount = 2", "cable = \"speaker4\"\ncount = 2"))
	for id, want := range map[string]int64{"post-insert-4": 2, "jack-6": 3, "plate-1-gang-2-port": 1, "label": 8 + 2 + 2} {
		if l := line(t, lines, id); l.Need != want {
			t.Errorf("%s: %d, want %d", id, l.Need, want)
		}
	}
}

// A hole that no bit of the job fits. Three cables of 6 mm bundle to 12.93 mm
// (2.154701 x 6); 1/4 in more is 19.28 mm: 7/8 in is the smallest size that is
// larger than that, 3/4 in being 19.05 mm. Where the wood allows only 1/2 in, that
// takes one cable of 6 mm and 1/4 in over; 3/8 in takes none.
func TestBits(t *testing.T) {
	res := solved(t, first)
	for largest, want := range map[measure.Length]string{
		7 * measure.Inch / 4: "long-bit-7-8in", measure.Inch / 2: "long-bit-1-2in", 3 * measure.Inch / 8: "",
	} {
		res.Holes = []route.Hole{{ID: "H1", Place: res.Holes[0].Place, Drops: []int{0, 1}, Cables: 3, Largest: largest, Count: 1}}
		res.Graph.Holes[res.Holes[0].Place].FromSpace = false
		lines, _ := List(res, Given{})
		got := ""
		for i := range lines {
			if l := &lines[i]; l.Group == Bits {
				got += l.ID
				if l.Charge != 0 || l.Spend == 0 || l.Rule != "no bit of the job fits H1" {
					t.Errorf("%+v", l)
				}
			}
		}
		if got != want {
			t.Errorf("largest %v: %q, want %q", largest, got, want)
		}
	}
}

// A 2 in hole in a plate of 3-1/2 in takes more than half of an outer wall's
// width: a tie, and plates on both faces. 1-3/4 in is just half.
func TestStrapsAndShields(t *testing.T) {
	res := solved(t, first)
	i := slices.IndexFunc(res.Holes, func(h route.Hole) bool {
		p := &res.Graph.Holes[h.Place]
		return p.Kind == route.PlateArc && res.Job.House.Walls[p.Wall].Exterior && p.MemberWidth == 7*measure.Inch/2
	})
	if i < 0 {
		t.Fatal("no hole in an outer wall")
	}
	for bit, want := range map[measure.Length]int64{2 * measure.Inch: 1, 7 * measure.Inch / 4: 0} {
		res.Holes[i].Bit, res.Holes[i].Shield, res.Holes[i].Count = bit, true, 2
		lines, _ := List(res, Given{})
		if l := line(t, lines, "plate-strap"); l.Need != want {
			t.Errorf("%v: %d ties, want %d", bit, l.Need, want)
		}
		if l := line(t, lines, "shield-plate"); l.Need != 4 || l.Rule != res.Holes[i].ID+": 2 holes x 2 faces" {
			t.Errorf("%+v", l)
		}
	}
}

// A plug that the job describes costs what the one does that it is like, and is
// known under [have]: D2 has one and 2 to spare, 1 is at hand.
func TestOwnConnector(t *testing.T) {
	res := solved(t, first,
		"[rates]", "[[connector]]\nid = \"plug-mine\"\nlike = \"plug-6\"\ntitle = \"Plug from the red box\"\n\n[have]\nplug-mine = 1\n\n[rates]",
		"kind = \"ceiling point\"", "kind = \"ceiling point\"\nplug = \"plug-mine\"")
	lines, findings := listed(res)
	l := line(t, lines, "plug-mine")
	if len(findings) > 0 || l.Title != "Plug from the red box" || l.Price != 700 || l.Need != 3 || l.Buy != 2 {
		t.Errorf("%+v, %v", l, findings)
	}
}

// Eleven holes, of which one was there already, want two tubes; ten want one.
func TestHolesThatAreThere(t *testing.T) {
	res := solved(t, first)
	i := slices.IndexFunc(res.Holes, func(h route.Hole) bool { return res.Graph.Holes[h.Place].Kind == route.PlateArc })
	res.Holes = []route.Hole{res.Holes[i]}
	res.Holes[0].Count = 10
	for reused, want := range map[int]int64{0: 1, 1: 2} {
		res.Reused = make([]route.Reuse, reused)
		for k := range res.Reused {
			res.Reused[k].Kind, res.Reused[k].Drops = route.PlateArc, []int{0}
		}
		lines, _ := List(res, Given{})
		if l := line(t, lines, "fire-sealant"); l.Need != want {
			t.Errorf("%d there: %+v", reused, l)
		}
	}
}

// Ids are written in users' files: each once, and such that TOML needs no
// quotes round them. No price and no habit is without its source.
func TestCatalogue(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range Catalogue(&plan.Job{}) {
		if seen[p.ID] || strings.Trim(p.ID, "abcdefghijklmnopqrstuvwxyz0123456789-") != "" || p.Title == "" || p.Unit == "" {
			t.Errorf("%+v", p)
		}
		if p.Priced != (p.Price > 0) || p.Priced != (p.Source.Status == rule.CommonPractice) {
			t.Errorf("%+v", p)
		}
		seen[p.ID] = true
	}
	for _, id := range connector.IDs() {
		if connectorPrices[id] == 0 || !seen[id] {
			t.Errorf("%s has no price", id)
		}
	}
	for _, h := range Habits() {
		known := h.Source.Status == rule.CommonPractice || h.Source.Document != ""
		if h.ID == "" || h.Title == "" || h.Value <= 0 || h.Unit == "" || !known {
			t.Errorf("%+v", h)
		}
	}
}

// On random houses with a random stock: what is bought is what is missing and
// never negative; brackets are as many as wall plates, inserts as many as
// openings, labels as many as were made; and the order of the files changes
// nothing.
func TestRandomHouses(t *testing.T) {
	for seed := range uint64(8) {
		dice := rand.New(rand.NewPCG(seed, 5))
		var all [2][]Line
		for k, o := range []randomhouse.Options{{}, {Shuffle: 9}} {
			res := solve(t, "job.toml", randomhouse.Generate(seed, o).Read)
			all[k], _ = listed(res)
			if k == 0 {
				checkCounts(t, seed, res, all[k])
				checkStock(t, seed, res, all[k], dice)
			}
		}
		if diff := cmp.Diff(all[0], all[1]); diff != "" {
			t.Errorf("seed %d:\n%s", seed, diff)
		}
	}
}

func checkCounts(t *testing.T, seed uint64, res *route.Result, lines []Line) {
	walls, atWalls, cables := int64(0), int64(0), int64(0)
	for i := range res.Routes {
		d := &res.Job.Drops[res.Routes[i].Drop]
		if res.Routes[i].Blocked != nil || d.Later {
			continue
		}
		cables += int64(d.Count)
		if d.Kind == plan.WallPlate {
			walls++
			atWalls += int64(d.Count)
		}
	}
	brackets, openings, ends := int64(0), int64(0), int64(0)
	for i := range lines {
		l := &lines[i]
		var gangs, ports int64
		switch {
		case strings.HasPrefix(l.ID, "bracket-"):
			brackets += l.Need
		case l.Group == Places && strings.HasPrefix(l.ID, "plate-"):
			_, _ = fmt.Sscanf(l.ID, "plate-%d-gang-%d-port", &gangs, &ports)
			openings += ports * l.Need
		case l.ID == "blank-insert":
			openings -= l.Need
		case strings.HasPrefix(l.ID, "jack-") || strings.HasPrefix(l.ID, "plug-"):
			ends += l.Need
		}
	}
	if brackets != walls || openings != atWalls || ends < 2*cables || ends > 2*cables+(2*cables)*20/100+4 {
		t.Errorf("seed %d: %d brackets for %d plates, %d openings for %d cables, %d ends for %d cables", seed, brackets, walls, openings, atWalls, ends, cables)
	}
}

func checkStock(t *testing.T, seed uint64, res *route.Result, lines []Line, dice *rand.Rand) {
	job := *res.Job
	for i := range lines {
		if lines[i].Group != Cable && dice.IntN(2) == 0 {
			job.Have = append(job.Have, plan.Stock{Part: lines[i].ID, Count: dice.IntN(20)})
		}
	}
	stocked := *res
	stocked.Job = &job
	after, findings := listed(&stocked)
	if len(findings) > 0 || len(after) != len(lines) {
		t.Errorf("seed %d: %v", seed, findings)
	}
	for i := range after {
		a, b := &after[i], &lines[i]
		if a.Need != b.Need || a.Buy != max(0, a.Need-a.Have) || a.Buy > b.Buy || a.Charge != b.Charge || a.Spend > b.Spend || a.Need < 0 || a.Later < 0 || a.Need+a.Later == 0 {
			t.Errorf("seed %d: %+v, without stock %+v", seed, a, b)
		}
	}
}

// In the house of three levels by hand, from the legs of its routes. From the
// basement: one shared leg of 1 ft 9-1/4 in and one of 1 ft 5-1/2 in, and C1's of
// 7 ft 1-1/4 in and 12 ft 6 in under open joists are 22 ft 10 in, 5 hooks at 60 in
// (ANSI/TIA-569, from memory); 3 holes in bottom and top plates and one in the top
// plate under the attic, 30 ml each. Through the crawl space, 17 ft 10-1/4 in,
// 8 ft 4-3/4 in and 13 ft 9-1/4 in: 40 ft 1/4 in, 9 hooks.
func TestPartsOfSeveralLevels(t *testing.T) {
	const levels = "../tasks/testdata/levels/"
	for _, c := range []struct {
		file  string
		hooks int64
		words map[string]string
	}{
		{"job.toml", 5, map[string]string{
			"cable-hook":   "22ft 10in of bundles under open joists, one every 5ft",
			"fire-sealant": "4 holes in plates, blocks and floors x 30 ml = 120 ml, 300 ml to a tube",
		}},
		{"crawl.toml", 9, map[string]string{"cable-hook": "40ft 1/4in of bundles under open joists, one every 5ft"}},
	} {
		lines, _ := listed(solved(t, levels+c.file))
		if got := line(t, lines, "cable-hook").Need; got != c.hooks {
			t.Errorf("%s: %d hooks, by hand %d", c.file, got, c.hooks)
		}
		for id, want := range c.words {
			if got := line(t, lines, id).Rule; got != want {
				t.Errorf("%s: %q, want %q", c.file, got, want)
			}
		}
	}
}

// A cable from a panel on the north wall out through it and along it to a camera on the
// same wall, where the soffit is shut. It hangs in two loops, of two clips each. What lies
// along brick has an anchor to every clip; the hole wants a bit for masonry. Along wood
// none of that.
func TestAlongBrick(t *testing.T) {
	edits := []string{
		"[house]\n", "[[baffle]]\nid = \"shut\"\nwall = \"north\"\nat = \"6ft\"\nwidth = \"8ft\"\n[[cladding]]\nwall = \"north\"\nkind = \"KIND\"\n[house]\n",
		"wall = \"middle\"\nat = \"7ft\"\nheight = \"5ft\"", "wall = \"north\"\nat = \"5ft\"\nheight = \"5ft\"",
		"wall = \"east\"\nat = \"8ft\"", "wall = \"north\"\nat = \"10ft\"", "[tools]", "[allow]\noutside = true\n[tools]",
		"tag = \"D1\"", "when = \"later\"\ntag = \"D1\"", "tag = \"D2\"", "when = \"later\"\ntag = \"D2\"",
	}
	for kind, hard := range map[string]bool{"brick": true, "stucco": true, "wood": false, "vinyl": false, "fiber cement": false} {
		edits[1] = strings.Replace(edits[1], "KIND", kind, 1)
		res := solved(t, first, edits...)
		edits[1] = strings.Replace(edits[1], kind, "KIND", 1)
		lines, _ := listed(res)
		got := counts(lines)
		clips := got["outdoor-clip"]
		want := map[string]int64{"drip-clip": 4, "wall-sleeve": 1}
		if hard {
			want["wall-anchor"], want["masonry-bit-3-4in"] = clips, 1
		}
		for _, id := range []string{"drip-clip", "wall-sleeve", "wall-anchor", "masonry-bit-3-4in"} {
			if got[id] != want[id] || clips < 3 {
				t.Errorf("%s: %d of %s, %d clips; want %d", kind, got[id], id, clips, want[id])
			}
		}
	}
}
