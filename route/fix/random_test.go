package fix

import (
	"fmt"
	"os"
	"slices"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/route"
)

// randomHouses is how many houses each property is asked of.
const randomHouses = 20

// plainResults keeps the results of houses as they were made, for all tests.
var plainResults [randomHouses]*route.Result

func plainResult(t testing.TB, seed uint64) *route.Result {
	t.Helper()
	if plainResults[seed] == nil {
		plainResults[seed] = randomResult(t, seed, randomhouse.Options{})
	}
	return plainResults[seed]
}

func randomResult(t testing.TB, seed uint64, o randomhouse.Options) *route.Result {
	t.Helper()
	job, list := plan.LoadJob("job.toml", randomhouse.Generate(seed, o).Read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatalf("seed %d, %+v: the sketch does not load", seed, o)
	}
	return solved(t, job)
}

// What holds for the samples holds for every house.
func TestRandomHoles(t *testing.T) {
	seen := map[string]int{}
	for seed := range uint64(randomHouses) {
		res := plainResult(t, seed)
		holes := Holes(res)
		for i := range holes {
			h := &holes[i]
			checkHole(t, fmt.Sprintf("seed %d", seed), res, h)
			seen[h.Kind.String()]++
			seen[h.Above.Method.String()]++
			if h.Above.Probe != nil {
				seen["probe"]++
			}
			if len(h.Bores) > 1 {
				seen["side by side"]++
			}
		}
	}
	for _, what := range []string{"top plate", "fire block", "ceiling", "soffit", ByTapes.String(), "probe", "side by side"} {
		if seen[what] < 2 {
			t.Errorf("only %d times %s: %v", seen[what], what, seen)
		}
	}
}

// What holds for one storey holds for several, on basements and crawl spaces.
func TestRandomStoreys(t *testing.T) {
	seen := map[string]int{}
	for seed := range uint64(randomHouses) {
		res := randomResult(t, seed, randomhouse.Options{Levels: true})
		holes := Holes(res)
		for i := range holes {
			h := &holes[i]
			checkHole(t, fmt.Sprintf("seed %d with levels", seed), res, h)
			kind := "nothing"
			if h.Space >= 0 {
				kind = res.Job.House.Spaces[h.Space].Kind.String()
			}
			seen[fmt.Sprintf("%v, %s, reached %v", h.Kind, kind, h.Above.Reached)]++
		}
	}
	for _, what := range []string{"bottom plate, crawl space, reached true", "bottom plate, floor, reached false", "top plate, floor, reached false", "top plate, attic, reached true"} {
		if seen[what] < 2 {
			t.Errorf("only %d times %s: %v", seen[what], what, seen)
		}
	}
}

// invariant is what a mirror image must not change.
func invariant(h *Hole) string {
	var from []measure.Length
	for _, d := range h.Below.From {
		from = append(from, d.Length)
	}
	if h.Wall < 0 {
		slices.Sort(from)
	}
	a := &h.Above
	out := fmt.Sprint(h.Kind, h.Cables, h.Bundle, h.Width, h.Allowed, h.Shield, h.Tie, h.Seal, from, h.Below.Height, max(h.Below.Aside, -h.Below.Aside),
		a.Reached, a.Zone, a.Clear, a.Method, a.Buried, a.Decked, a.Tolerance, a.Probe != nil)
	for _, b := range h.Bores {
		out += fmt.Sprint(b.Cables, b.Diameter, b.Own, b.Bit)
	}
	return out
}

// A mirror image of a house, or the house turned, has the same holes with the
// same distances, bits and errors.
func TestRandomImages(t *testing.T) {
	same := 0
	for seed := range uint64(randomHouses / 2) {
		sym := 1 + geom.Symmetry(seed)%(geom.Symmetries-1)
		holes := Holes(plainResult(t, seed))
		for _, image := range Holes(randomResult(t, seed, randomhouse.Options{Symmetry: sym})) {
			// Which of two plans that cost the same is found may differ.
			k := slices.IndexFunc(holes, func(h Hole) bool {
				return h.Kind == image.Kind && h.At.Z == image.At.Z && sym.Apply(flat(h.At)) == flat(image.At) && slices.Equal(h.Drops, image.Drops)
			})
			if k < 0 {
				continue
			}
			same++
			h := &holes[k]
			if got, want := invariant(&image), invariant(h); got != want {
				t.Errorf("seed %d, symmetry %d, %s:\n%s\n%s", seed, sym, h.ID, want, got)
			}
			// Ellipses are rounded to the micrometre.
			if d := h.Above.Error - image.Above.Error; max(d, -d) > 5*measure.Micrometre {
				t.Errorf("seed %d, symmetry %d, %s: error %v and %v", seed, sym, h.ID, h.Above.Error, image.Above.Error)
			}
		}
	}
	if same < 35 {
		t.Errorf("only %d holes have an image", same)
	}
}

// The order of tables in the files changes nothing.
func TestOrderOfTables(t *testing.T) {
	for seed := range uint64(randomHouses / 4) {
		want := Holes(plainResult(t, seed))
		got := Holes(randomResult(t, seed, randomhouse.Options{Shuffle: seed + 1}))
		for i := range want {
			if w, g := words(&want[i]), words(&got[i]); w != g {
				t.Errorf("seed %d: %s\nwant %s", seed, g, w)
			}
		}
		storeys := Holes(randomResult(t, seed, randomhouse.Options{Levels: true}))
		for i, h := range Holes(randomResult(t, seed, randomhouse.Options{Levels: true, Shuffle: seed + 1})) {
			if w, g := words(&storeys[i]), words(&h); w != g {
				t.Errorf("seed %d with levels: %s\nwant %s", seed, g, w)
			}
		}
	}
}

// words are all texts of a hole.
func words(h *Hole) string {
	out := fmt.Sprint(h.ID, h.Member, h.Below.Text, h.Above.Text)
	for i := range h.Bores {
		out += h.Bores[i].BitText(measure.Metric) + h.Bores[i].Bit.Why
	}
	return out
}
