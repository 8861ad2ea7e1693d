package check

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/plan/rule"
	"topplate/plan/source"
	"topplate/route"
	"topplate/route/pull"
)

// NEC09: both numbers are printed. A CMX cable of 6.35 mm is too thick by both,
// one between them by the smaller, which is told as a note.
func TestLimitedUseBetweenTheTwoNumbers(t *testing.T) {
	for diameter, want := range map[string]rule.Severity{"6.35mm": rule.Caution, "6.349999mm": rule.Note, "6mm": rule.Note} {
		f := find(Findings(solved(t, camera("diameter = \""+diameter+"\"", "")...)), rule.LimitedCable)
		if f == nil || f.Severity != want || f.Where != "S1" || !strings.HasSuffix(f.Pos.File, "job.toml") {
			t.Errorf("%s: got %+v, want a %v", diameter, f, want)
		}
	}
}

// A cable that is not listed counts from where it comes in: its loop and trim
// at the panel and its way, without what is under the eave. 14.9 m passes and
// 15.3 m does not (worked for NEC08).
func TestUnlistedFromItsEntrance(t *testing.T) {
	unlisted := camera(thin+"\njacket = \"outdoor\"", "")
	res := solved(t, unlisted...)
	c := &checker{res: res, job: res.Job, house: res.Job.House, book: res.Job.Book()}
	r := &res.Routes[1]
	out := measure.Length(0)
	for i := len(r.Legs) - 1; r.Legs[i].Kind != route.RodArc; i-- {
		out += r.Legs[i].Length
	}
	// 10 ft of loop and 6 in of trim.
	if got, want := c.insideLength(r), 126*measure.Inch+r.Lengths.Developed-out; res.Job.Drops[r.Drop].Tag != "S1" || out <= 0 || got != want {
		t.Errorf("%v is inside, want %v", got, want)
	}
	for loop, want := range map[measure.Length]bool{149 * measure.Metre / 10: false, 153 * measure.Metre / 10: true} {
		job := *res.Job
		job.Slack.Closet += loop - c.insideLength(r)
		long := *res
		long.Job = &job
		if got := find(Findings(&long), rule.Unlisted) != nil; got != want {
			t.Errorf("%v inside: reported %v", loop, got)
		}
	}
}

// inside is a plate on the inner wall.
const inside = "[[drop]]\ntag = \"D1\"\nkind = \"wall plate\"\ncable = \"cat6a\"\nwall = \"middle\"\nside = \"left\"\nat = \"10ft 4in\"\nheight = \"14in\""

// A conduit that a route goes through is reported once, by package route. CON06:
// EMT 3/4 takes one cable of 0.340 in, 8.6 mm.
func TestConduitIsReportedOnce(t *testing.T) {
	full := strings.NewReplacer("%", "2", "east", "middle", "8ft", "10ft 4in", `"hall"`, `"study"`).Replace(pipe("EMT", "0.34in"))
	res := solved(t, edits([]string{house, full}, []string{job, inside},
		[]string{job, "[[fixed]]\nid = \"F2\"\ndo = \"avoid\"\nwall = \"middle\"\nat = \"10ft 4in\"\nwidth = \"18in\""})...)
	mine, used := find(Findings(res), rule.ConduitFill), find(res.Findings, rule.ConduitFill)
	if mine != nil || used == nil {
		t.Errorf("route has %+v, check has %+v", used, mine)
	}
}

// A hole that is there and used is sealed again like one that is bored.
func TestExistingHoleIsSealed(t *testing.T) {
	res := solved(t, edits([]string{job, inside}, []string{job, there("1in")})...)
	f := find(Findings(res), rule.SealHoles)
	if f == nil || !strings.Contains(f.Found, "F1") {
		t.Errorf("got %+v", f)
	}
}

// Where the job does not tell the budget of the switch, what it must have is
// noted: 2 ports of class 4, which keep 30 W each (POE01).
func TestBudgetNotTold(t *testing.T) {
	res := solved(t, `end = "jack"`, "end = \"jack\"\nclass = 4\ncount = 2")
	f := find(Findings(res), rule.SwitchBudget)
	if f == nil || f.Severity != rule.Note || !strings.Contains(f.Found, "2 ports") || !strings.Contains(f.Found, "60.0 W") {
		t.Errorf("got %+v", f)
	}
	f = find(Findings(solved(t, edits(powered("class = 4\nwatts = 13\ncount = 2"), instead("watts = 500", "watts = 59.9"))...)), rule.SwitchBudget)
	if f == nil || f.Severity != rule.Note {
		t.Errorf("of 59.9 W 60 can't be kept: got %+v", f)
	}
}

// The worked examples of voltage drop: the volts that arrive, and the watts
// that are lost. The cable is as long as they say, at one temperature, without
// cords.
func TestWorkedVoltageDrops(t *testing.T) {
	for _, tt := range []struct {
		source      string
		gauge, warm string
		class       string
		length      measure.Length
		volts, lost float64
	}{
		{"POE05: 45 m of 23 AWG at 20 °C, 25.5 W from 50 V", "23", "20", "4", 45 * measure.Metre, 48.417, 0.834},
		{"POE06: 90 m of 24 AWG at 20 °C, 25.5 W from 50 V", "24", "20", "4", 90 * measure.Metre, 45.778, 2.352},
		{"30 m of 23 AWG at 50 °C, 51 W from 50 V on four pairs", "23", "50", "6", 30 * measure.Metre, 48.830, 1.222},
	} {
		res := solved(t, edits(powered("class = "+tt.class), ownCable("cat6", "gauge = "+tt.gauge),
			limit("cord-length = \"0m\"\nroom-temperature = "+tt.warm), instead("sketch_error", "attic_hot = \""+tt.warm+"C\"\nsketch_error"))...)
		res.Routes[0].Lengths.Cut = tt.length
		s := Devices(res)[0].Supply
		if s == nil || s.Length != tt.length || math.Abs(s.DeviceVolts-tt.volts) > 0.002 || math.Abs(s.Lost-tt.lost) > 0.002 {
			t.Errorf("%s: got %+v", tt.source, s)
		}
	}
}

// Cords count with the thinnest conductor of horizontal cable: 10 m of 9.38
// ohm/100 m (AWG02, from memory) are 0.938 ohm in a loop of two pairs.
func TestCordsCount(t *testing.T) {
	without := Devices(solved(t, edits(powered("class = 4"), limit(`cord-length = "0m"`))...))
	with := Devices(solved(t, powered("class = 4")...))
	if got := with[0].Supply.Ohms - without[0].Supply.Ohms; math.Abs(got-0.938) > 1e-5 || with[0].Cables != 1 {
		t.Errorf("10 m of cords have %v ohm", got)
	}
}

// A device that tells its watts only is of the lowest class that allows them
// (POE02: class 3 allows 12.95 W, class 4 25.5 W).
func TestClassFromWatts(t *testing.T) {
	for watts, want := range map[string]int{"12.95": 3, "12.96": 4, "3.84": 1, "71.3": 8} {
		d := Devices(solved(t, powered("watts = "+watts)...))
		if len(d) != 1 || d[0].Supply == nil || d[0].Supply.Class.Number != want {
			t.Errorf("%s W: got %+v, want class %d", watts, d, want)
		}
	}
	if d := Devices(solved(t)); len(d) != 0 {
		t.Errorf("a drop without a device: %+v", d)
	}
}

// What is beside a leg agrees with points tried every millimetre along it: the
// power segment passes over them sideways, nearer than the limit.
func TestBesideAgainstPoints(t *testing.T) {
	const mm = measure.Millimetre
	r := rand.New(rand.NewPCG(4, 3))
	coordinate := func() measure.Length { return measure.Length(r.IntN(400)) * mm }
	for range 300 {
		p, a, b := geom.Point{X: coordinate(), Y: coordinate()}, geom.Point{X: coordinate(), Y: coordinate()}, geom.Point{X: coordinate(), Y: coordinate()}
		q := geom.Point{X: coordinate(), Y: p.Y}
		if r.IntN(3) == 0 {
			b.Y = a.Y
		}
		near := coordinate() / 2
		n := 0
		for x := min(p.X, q.X); x < max(p.X, q.X); x += mm {
			mid := float64(x + mm/2)
			part := (mid - float64(a.X)) / float64(b.X-a.X)
			y := float64(a.Y) + part*float64(b.Y-a.Y)
			if a.X != b.X && 0 < part && part < 1 && math.Abs(y-float64(p.Y)) < float64(near) {
				n++
			}
		}
		flipped := [2]measure.Length{}
		for i, turn := range []func(geom.Point) geom.Point{func(p geom.Point) geom.Point { return p }, flip} {
			if s, ok := beside(turn(p), turn(q), turn(a), turn(b), near); ok {
				flipped[i] = s.Max - s.Min
			}
		}
		if p != q && (max(flipped[0]-measure.Length(n)*mm, measure.Length(n)*mm-flipped[0]) > 2*mm || flipped[0] != flipped[1]) {
			t.Fatalf("%v %v beside %v %v within %v: %v, by points %d mm", p, q, a, b, near, flipped, n)
		}
	}
}

func TestCovered(t *testing.T) {
	got := covered([]measure.Range{{Min: 5, Max: 9}, {Min: 0, Max: 4}, {Min: 1, Max: 3}, {Min: 3, Max: 6}, {Min: 20, Max: 21}})
	if got != 10 {
		t.Errorf("got %d, want 0 to 9 and 20 to 21", got)
	}
}

// The samples and random houses are checked without a panic, the same way
// twice, worst first; every finding has a rule, a place and a way out unless
// it is a note, and a drop's is at the drop.
func TestManyJobs(t *testing.T) {
	jobs := []*plan.Job{}
	for _, name := range []string{"corner-house", "long-roof"} {
		j, list := plan.LoadJob("../../samples/"+name+"/job.toml", source.ReadFile)
		if list.HasErrors() {
			t.Fatal(name)
		}
		jobs = append(jobs, j)
	}
	for seed := range uint64(6) {
		jobs = append(jobs, randomJob(t, seed, randomhouse.Options{}), randomJob(t, seed, randomhouse.Options{Levels: true}))
	}
	for _, j := range jobs {
		res, err := route.Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		got := Findings(res)
		if again := Findings(res); !reflect.DeepEqual(got, again) {
			t.Errorf("%s: not the same twice", j.File)
		}
		for i, f := range got {
			r, ok := rule.Lookup(f.Rule)
			if !ok || f.Pos.Line == 0 || f.Where == "" || f.Found == "" || f.Change == "" && r.Severity != rule.Note || i > 0 && f.Severity < got[i-1].Severity {
				t.Errorf("%s: %+v", j.File, f)
			}
			for k := range j.Drops {
				if d := &j.Drops[k]; d.Tag == f.Where && d.Pos != f.Pos {
					t.Errorf("%s: %s is at %v, its finding at %v", j.File, d.Tag, d.Pos, f.Pos)
				}
			}
		}
	}
}

// A room is a garage if it is called so or a garage door opens into it. Found
// are the hole in the plate between it and the hall, its ceiling, and boxes on its
// side; not H3, in the plate of its outer wall, which parts it from nothing (R302.6
// of the International Residential Code: from the residence and its attic).
func TestGarage(t *testing.T) {
	door := []string{house, "[[opening]]\nid = \"big\"\nwall = \"north\"\nkind = \"garage door\"\nat = \"%\"\nwidth = \"8ft\"\nhead = \"7ft\""}
	inDoor := func(at string) []string { return []string{house, strings.Replace(door[1], "%", at, 1)} }
	plate := desk(`at = "2ft 8in"`)
	for name, tt := range map[string]struct {
		edits []string
		where []string
	}{
		// The north wall runs west from the hall; the middle wall meets it.
		"a door into the hall":  {inDoor("1ft"), []string{"H1", "Hall cabinet"}},
		"a door into the study": {edits(inDoor("11ft"), plate), []string{"H1", "H2", "D1"}},
		"a name":                {edits(instead(`name = "Study"`, `name = "GARAGE"`), plate), []string{"H1", "H2", "D1"}},
		"an id":                 {instead(`"study"`, `"garage-2"`), []string{"H1", "H2"}},
		"none":                  {plate, nil},
	} {
		t.Run(name, func(t *testing.T) {
			var got []string
			for _, f := range Findings(solved(t, tt.edits...)) {
				if f.Rule == rule.GarageParting {
					got = append(got, f.Where)
				}
			}
			slices.Sort(got)
			slices.Sort(tt.where)
			if !slices.Equal(got, tt.where) {
				t.Errorf("found at %v, want %v", got, tt.where)
			}
		})
	}
}

// pathOf is what the cables of route i are pulled through.
func pathOf(res *route.Result, i int) pull.Path {
	c := &checker{res: res, job: res.Job, house: res.Job.House, book: res.Job.Book()}
	return c.pullWay(&res.Routes[i]).path
}

// The pieces of the base's way, by hand: see trials. A hand gets at the cable
// along the joist, over the joists, and on the steps between them.
func TestPullPath(t *testing.T) {
	const half, eighth = measure.Inch / 2, measure.Inch / 8
	want := pull.Path{
		pull.Straight(7*half, 0), pull.Straight(269*eighth, 269*eighth), pull.Straight(6*half, 6*half), pull.Bend(pull.Square),
		{Length: 7 * half, Open: true},
		pull.Bend(pull.Square),
		{Length: 11 * half, Rise: 11 * half, Open: true},
		pull.Bend(pull.Square),
		{Length: 166 * half, Open: true},
		pull.Bend(pull.Square),
		{Length: 11 * half, Rise: -11 * half, Open: true},
		pull.Straight(5*eighth, -5*eighth),
	}
	if got := pathOf(solved(t), 0); !reflect.DeepEqual(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// Nobody gets at a cable on the way of a rod, though a hand takes its end.
func TestRodIsClosed(t *testing.T) {
	res := solved(t, camera(thin, "")...)
	rods := 0
	for i := range res.Routes {
		var lengths []measure.Length
		for _, p := range pathOf(res, i) {
			if p.Open {
				lengths = append(lengths, p.Length)
			}
		}
		for _, leg := range res.Routes[i].Legs {
			if leg.Kind == route.RodArc {
				rods++
				if leg.Zone > route.Arm || slices.Contains(lengths, leg.Length) {
					t.Errorf("the rod of %v is open: %v", leg.Length, lengths)
				}
			}
		}
	}
	if rods == 0 {
		t.Error("no rod is used")
	}
}

// A drop without a route is held against what needs none: its plug, not its
// bends, pulls, lengths or power.
func TestBlockedDrop(t *testing.T) {
	res := solved(t, edits(laid[rule.NoHiddenWay], ownCable("cat6", "diameter = \"12.7mm\"\nbend = 7"),
		instead(`end = "jack"`, "plug = \"plug-6\"\nclass = 4"), limit("channel-length = \"1m\""))...)
	if got := rulesOf(Findings(res)); res.Routes[0].Blocked == nil || !slices.Equal(got, []rule.ID{rule.PlugJacket}) {
		t.Errorf("got %v", got)
	}
	if d := Devices(res); len(d) != 1 || d[0].Supply != nil {
		t.Errorf("its device is supplied: %+v", d)
	}
}
