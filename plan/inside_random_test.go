package plan

import (
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// thickInside is an inner wall of the imperial defaults: a 2x4 and two boards.
const thickInside = 7*inch/2 + 2*(inch/2)

// cut cuts a rectangle into rooms with walls in between, no side of them below 3
// ft.
func cut(rng *rand.Rand, r geom.Rect, depth int) []geom.Rect {
	w, d := r.Width(), r.Height()
	alongY := w > d
	size := d
	if alongY {
		size = w
	}
	if depth == 0 || size < 8*foot {
		return []geom.Rect{r}
	}
	at := 3*foot + measure.Length(rng.Int64N(int64((size-7*foot)/inch)))*inch
	a, b := r, r
	if alongY {
		a.Max.X, b.Min.X = r.Min.X+at, r.Min.X+at+thickInside
	} else {
		a.Max.Y, b.Min.Y = r.Min.Y+at, r.Min.Y+at+thickInside
	}
	return append(cut(rng, a, depth-1), cut(rng, b, depth-1)...)
}

// insideTables writes rooms, the first at a point and each other one beside one
// before it. ok is false if one is beside none.
func insideTables(rng *rand.Rand, rooms []geom.Rect) (tables []string, ok bool) {
	for i, r := range rooms {
		text := fmt.Sprintf("[[inside]]\nid = \"r%d\"\nname = \"Room %d\"\nwidth = %q\ndepth = %q\n", i, i, r.Width(), r.Height())
		if i == 0 {
			tables = append(tables, text+fmt.Sprintf("at = [%q, %q]\n", r.Min.X, r.Min.Y))
			continue
		}
		var places []string
		for j, s := range rooms[:i] {
			line := "south"
			if rng.IntN(2) == 0 {
				line = "north"
			}
			k := rng.IntN(i)
			of := fmt.Sprintf("line_of = \"r%d\"\n", k)
			if rng.IntN(2) == 0 {
				of, k = "", j
			}
			onY := fmt.Sprintf("line = %q\nshift = %q\n%s", line, map[string]measure.Length{"south": r.Min.Y - rooms[k].Min.Y, "north": r.Max.Y - rooms[k].Max.Y}[line], of)
			onX := fmt.Sprintf("line = \"west\"\nshift = %q\n%s", r.Min.X-rooms[k].Min.X, of)
			switch {
			case r.Min.X == s.Max.X+thickInside:
				places = append(places, fmt.Sprintf("east_of = \"r%d\"\n", j)+onY)
			case r.Max.X+thickInside == s.Min.X:
				places = append(places, fmt.Sprintf("west_of = \"r%d\"\n", j)+onY)
			case r.Min.Y == s.Max.Y+thickInside:
				places = append(places, fmt.Sprintf("north_of = \"r%d\"\n", j)+onX)
			case r.Max.Y+thickInside == s.Min.Y:
				places = append(places, fmt.Sprintf("south_of = \"r%d\"\n", j)+onX)
			}
		}
		if len(places) == 0 {
			return nil, false
		}
		tables = append(tables, text+places[rng.IntN(len(places))])
	}
	return tables, true
}

// Random rooms, in a rectangle and with a part of it left out, come out of the
// file as they were written, whatever the order of their tables.
func TestInsideOfRandomRooms(t *testing.T) {
	base := complete(t, "# WITHOUT wall room hatch\n", "testdata/base_house.toml")
	loaded, odd, close := 0, 0, 0
	for seed := range uint64(150) {
		rng := rand.New(rand.NewPCG(seed, 9))
		whole := geom.Rect{Max: geom.Point{X: measure.Length(20+rng.IntN(40)) * foot, Y: measure.Length(15+rng.IntN(30)) * foot}}
		rooms := cut(rng, whole, 1+rng.IntN(4))
		if len(rooms) > 3 && rng.IntN(2) == 0 {
			k := rng.IntN(len(rooms))
			rooms = slices.Delete(rooms, k, k+1)
		}
		tables, ok := insideTables(rng, rooms)
		if !ok {
			continue
		}
		hatch := "[[hatch]]\nid = \"hatch\"\nroom = \"r0\"\nat = { room = \"r0\", west = \"18in\", south = \"18in\" }\nsize = [\"22in\", \"30in\"]\n"
		h, list := LoadHouse("house.toml", []byte(base+"\n"+strings.Join(tables, "\n")+"\n"+hatch))
		if h == nil {
			text := print(t, list)
			if strings.Contains(text, "that rooms enclose") || strings.Contains(text, "which no wall joins") {
				continue
			}
			if strings.Contains(text, "are out of line there") {
				close++
				continue
			}
			t.Fatalf("seed %d: %s%s", seed, text, strings.Join(tables, "\n"))
		}
		loaded++
		if len(h.OutsideOf) > 4 {
			odd++
		}
		checkHouse(t, h)
		for i, r := range rooms {
			if got := h.Rooms[i]; got.Bounds != r || len(got.Outline) != 4 {
				t.Fatalf("seed %d: room %d is %v, want %v\n%s", seed, i, got.Outline, r, strings.Join(tables, "\n"))
			}
		}
		rng.Shuffle(len(tables), func(i, j int) { tables[i], tables[j] = tables[j], tables[i] })
		again, list := LoadHouse("house.toml", []byte(base+"\n"+hatch+"\n"+strings.Join(tables, "\n")))
		if again == nil {
			t.Fatalf("seed %d: %s", seed, print(t, list))
		}
		if diff := cmp.Diff(describe(h), describe(again)); diff != "" {
			t.Fatalf("seed %d, in another order (-first +second)\n%s", seed, diff)
		}
	}
	t.Logf("%d houses, %d of them no rectangles, and %d with faces nearly in line", loaded, odd, close)
	if loaded < 80 || odd < 20 || close > 5 {
		t.Errorf("only %d houses, %d of them no rectangles", loaded, odd)
	}
}

// A house of rooms with places measured from each other, changed a little at
// random, loads to what the package promises or has an error.
func TestMutationsOfInside(t *testing.T) {
	var files [2]string
	for i, name := range [2]string{"testdata/inside_house.toml", "testdata/inside_walks.toml"} {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		room := [2]string{"kitchen", "living"}[i]
		files[i] = string(src) + "\n" + checkText("c", `room = "bed", corner = "northwest"`, `room = "`+room+`", corner = "southeast"`, "20ft")
	}
	rng := rand.New(rand.NewPCG(5, 6))
	loaded := 0
	for i := range 6000 {
		mutated := mutate(rng, files[i%2])
		h, list := LoadHouse("house.toml", []byte(mutated))
		if (h == nil) != list.HasErrors() {
			t.Fatalf("house %v, errors %v\n%s", h != nil, list.HasErrors(), mutated)
		}
		if h != nil {
			checkHouse(t, h)
			loaded++
		}
		if t.Failed() {
			t.Fatal(mutated)
		}
	}
	if loaded < 100 {
		t.Errorf("only %d of the files loaded", loaded)
	}
}

// As many rooms as are read take seconds at most.
func BenchmarkInside(b *testing.B) {
	base := complete(b, "# WITHOUT wall room hatch\n", "testdata/base_house.toml")
	var src strings.Builder
	src.WriteString(base + "\n[[hatch]]\nid = \"hatch\"\nroom = \"r0\"\nat = { room = \"r0\", west = \"18in\", south = \"18in\" }\nsize = [\"22in\", \"30in\"]\n")
	for i := range mostRooms {
		x, y := measure.Length(i%20)*(8*foot+thickInside), measure.Length(i/20)*(8*foot+thickInside)
		fmt.Fprintf(&src, "\n[[inside]]\nid = \"r%d\"\nname = \"R\"\nwidth = \"8ft\"\ndepth = \"8ft\"\nat = [%q, %q]\n", i, x, y)
	}
	for b.Loop() {
		if h, list := LoadHouse("house.toml", []byte(src.String())); h == nil {
			b.Fatal(print(b, list))
		}
	}
}
