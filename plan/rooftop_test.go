package plan

import (
	"fmt"
	"strings"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/roof"
)

func TestParsePitch(t *testing.T) {
	for _, tt := range []struct {
		text string
		want roof.Pitch
		ok   bool
	}{
		{"5/12", roof.Pitch{Rise: 5, Run: 12}, true},
		{" 4 / 10 ", roof.Pitch{Rise: 4, Run: 10}, true},
		// The tangents of 22.5 and 45 degrees are √2 - 1 and 1.
		{"22.5deg", roof.Pitch{Rise: 414_214, Run: 1_000_000}, true},
		{"45°", roof.Pitch{Rise: 1_000_000, Run: 1_000_000}, true},
		{"5/0", roof.Pitch{Rise: 5}, false},
		{"5", roof.Pitch{}, false},
		{"-5/12", roof.Pitch{}, false},
		{"5/12in", roof.Pitch{}, false},
		{"NaNdeg", roof.Pitch{}, false},
		{"", roof.Pitch{}, false},
	} {
		if got, ok := parsePitch(tt.text); got != tt.want || ok != tt.ok {
			t.Errorf("%q: got %v %v, want %v %v", tt.text, got, ok, tt.want, tt.ok)
		}
	}
}

// TestGables looks at the roof over the middle of the west wall's plate, which
// is 1 in inside of its outer face: at the ridge under a gable, at the eave
// under a hip. The plates are 19 ft 10 in apart, and so the ridge is
// 119 in * 5/12 up.
func TestGables(t *testing.T) {
	ridge := (119*inch*5 + 6) / 12
	at := geom.Point{X: 1 * inch, Y: 10 * foot}
	for _, tt := range []struct {
		roof  string
		want  measure.Length
		gable []string
	}{
		{"kind = \"hip\"", 0, nil},
		{"kind = \"gable\"\ngables = [\"west\", \"east\"]", ridge, []string{"west", "east"}},
		{"kind = \"gable\"\ngables = [\"east\"]", 0, []string{"east"}},
	} {
		h := houseOf(t, "[roof]\n"+tt.roof+"\npitch = \"5/12\"\noverhang = \"16in\"\nrafter = \"2x6\"\n")
		if got := h.Roof.Surface.Height(at); got != tt.want {
			t.Errorf("%s: got %v over the west wall, want %v", tt.roof, got, tt.want)
		}
		for i := range h.Walls {
			want := strings.Contains(strings.Join(tt.gable, " "), h.Walls[i].ID)
			if h.Walls[i].Gable != want {
				t.Errorf("%s: wall %s: gable %v", tt.roof, h.Walls[i].ID, h.Walls[i].Gable)
			}
		}
	}
}

// TestGableOnPartOfASide puts a gable over one of two legs in line: the roof
// is told where it begins.
func TestGableOnPartOfASide(t *testing.T) {
	for _, run := range []string{"E 10ft, E 20ft, N 20ft, W 30ft, S 20ft", "W 10ft, W 20ft, N 20ft, E 30ft, S 20ft"} {
		house := strings.NewReplacer(
			"E 30ft, N 20ft, W 30ft, S 20ft", run, `["south"`, `["porch", "south"`, `wall = "south", at = "14ft"`, `wall = "south", at = "4ft"`,
			`kind = "hip"`, "kind = \"gable\"\ngables = [\"porch\"]", `["5ft", "10ft"]`, `["1ft", "10ft"]`,
		).Replace(complete(t, "", "testdata/base_house.toml"))
		if strings.HasPrefix(run, "W") {
			house = strings.NewReplacer(`face = "right"`, `face = "left"`, `["1ft", "10ft"]`, `["-1ft", "10ft"]`, `["20ft", "10ft"]`, `["-20ft", "10ft"]`).Replace(house)
		}
		h, list := LoadHouse("house.toml", []byte(house))
		if h == nil {
			t.Fatal(print(t, list))
		}
		// A cross gable 9 ft 11 in wide has its ridge in its middle, half of
		// that from either side, out to the plate. The plate is 1 in inside of
		// the corner and ends where the leg does, at 10 ft.
		x := (10*foot + inch) / 2
		if strings.HasPrefix(run, "W") {
			x = -x
		}
		got, want := h.Roof.Surface.Height(geom.Point{X: x, Y: 1 * inch}), (119*inch/2*5+6)/12
		if got != want {
			t.Errorf("%s: got %v over the porch, want %v", run, got, want)
		}
		if got := h.Roof.Surface.Height(geom.Point{X: 4 * x, Y: 1 * inch}); got != 0 {
			t.Errorf("%s: got %v over the rest of the side, want an eave", run, got)
		}
	}
}

func TestRafters(t *testing.T) {
	for _, tt := range []struct {
		attic, keys    string
		firstX, firstY string
		kind           roof.Kind
		depth, heel    string
	}{
		// Rafters that run beside the joists stand on them. The others are laid
		// out with a bay in the middle: half of 20 ft and of 30 ft, and 8 in.
		{"joists_run = \"N\"", "rafter = \"2x8\"", "20in", "10ft 8in", roof.Rafter, "7-1/4in", "0in"},
		{"joists_run = \"E\"", "rafter = \"2x8\"", "15ft 8in", "20in", roof.Rafter, "7-1/4in", "0in"},
		{"joists_run = \"E\"", "heel = \"4in\"\nfirst_x = \"1ft\"", "1ft", "20in", roof.Truss, "3-1/2in", "4in"},
		{"joists_run = \"N\"", "heel = \"4in\"\nchord = \"2x6\"\nfirst_y = \"1ft\"", "20in", "1ft", roof.Truss, "5-1/2in", "4in"},
	} {
		h := houseOf(t, "[attic]\n"+tt.attic+"\njoist = \"sawn\"\nspacing = \"16in\"\nfirst = \"20in\"\nsize = \"2x6\"\n\n"+
			"[roof]\nkind = \"hip\"\npitch = \"5/12\"\noverhang = \"16in\"\n"+tt.keys+"\n")
		r := h.Roof
		if r.FirstX != at(t, tt.firstX) || r.FirstY != at(t, tt.firstY) || r.Spacing != 16*inch || r.Width != 3*inch/2 {
			t.Errorf("%s, %s: got rafters from %v and %v, %v apart", tt.attic, tt.keys, r.FirstX, r.FirstY, r.Spacing)
		}
		if want := (roof.Framing{Kind: tt.kind, Depth: at(t, tt.depth), PlateWidth: 7 * inch / 2, Heel: at(t, tt.heel)}); r.Framing != want {
			t.Errorf("%s, %s: got %+v, want %+v", tt.attic, tt.keys, r.Framing, want)
		}
	}
}

// largeHouse is a house with as many walls and rooms as are read: rows of
// cells between long walls, and stubs in them.
func largeHouse(rows, cells, stubs int) string {
	var b strings.Builder
	width, depth := cells*5, rows*5
	b.WriteString("[house]\nname = \"Large\"\nunits = \"imperial\"\n[[level]]\nid = \"ground\"\nceiling = \"8ft\"\n")
	fmt.Fprintf(&b, "[[wall]]\nid = \"outer\"\nstart = [\"0ft\", \"0ft\"]\nrun = \"E %dft, N %dft, W %dft, S %dft\"\ncloses = true\nexterior = true\n", width, depth, width, depth)
	for r := range rows {
		if r > 0 {
			fmt.Fprintf(&b, "[[wall]]\nid = \"row%d\"\nstart = [\"0ft\", \"%dft\"]\nrun = \"E %dft\"\n", r, r*5, width)
		}
		for c := range cells {
			if c > 0 {
				fmt.Fprintf(&b, "[[wall]]\nid = \"cell%d-%d\"\nstart = [\"%dft\", \"%dft\"]\nrun = \"N 5ft\"\n", r, c, c*5, r*5)
			}
			fmt.Fprintf(&b, "[[room]]\nid = \"room%d-%d\"\nname = \"Room\"\nat = [\"%dft 1in\", \"%dft\"]\n", r, c, c*5+1, r*5+1)
		}
	}
	for s := range stubs {
		x, y := s%(cells*rows)%cells*5, s%(cells*rows)/cells*5
		fmt.Fprintf(&b, "[[wall]]\nid = \"stub%d\"\nstart = [\"%dft %din\", \"%dft\"]\nrun = \"N 2ft 1in\"\n", s, x+2+s/(cells*rows), s%10, y)
	}
	b.WriteString("[attic]\njoists_run = \"N\"\njoist = \"sawn\"\nspacing = \"16in\"\nfirst = \"0in\"\nsize = \"2x6\"\n")
	b.WriteString("[roof]\nkind = \"hip\"\npitch = \"5/12\"\noverhang = \"16in\"\nrafter = \"2x6\"\n")
	b.WriteString("[[hatch]]\nid = \"hatch\"\nroom = \"room0-0\"\nat = [\"1ft\", \"1ft\"]\nsize = [\"24in\", \"24in\"]\n")
	return b.String()
}

func TestLargestHouse(t *testing.T) {
	h, list := LoadHouse("house.toml", []byte(largeHouse(20, 15, 600)))
	if h == nil {
		t.Fatal(print(t, list))
	}
	if len(h.Walls) < 900 || len(h.Rooms) != 300 {
		t.Errorf("got %d walls and %d rooms", len(h.Walls), len(h.Rooms))
	}
	_, list = LoadHouse("house.toml", []byte(largeHouse(20, 16, 1000)))
	got := print(t, list)
	for _, want := range []string{"found 1320 of them; at most 1000 are read", "found 320 of them; at most 300 are read"} {
		if !strings.Contains(got, want) {
			t.Errorf("not said: %s\n%s", want, got)
		}
	}
}

func BenchmarkLoadHouse(b *testing.B) {
	for _, bm := range []struct{ name, src string }{
		{"two rooms", seeds(b, "house")[0]},
		{"largest", largeHouse(20, 15, 600)},
	} {
		b.Run(bm.name, func(b *testing.B) {
			for b.Loop() {
				if h, list := LoadHouse("house.toml", []byte(bm.src)); h == nil {
					b.Fatal(print(b, list))
				}
			}
		})
	}
}
