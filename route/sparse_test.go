package route

import (
	"math"
	"slices"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/randomhouse"
)

// sparsely runs f with a lattice whose lines are laid about single things only,
// however small the house.
func sparsely(f func()) { latticeUpTo(0, f) }

// wholly runs f with a lattice of lines from end to end, however large the
// building.
func wholly(f func()) { latticeUpTo(math.MaxInt, f) }

func latticeUpTo(most int, f func()) {
	defer func(most int) { mostCrossings = most }(mostCrossings)
	mostCrossings = most
	f()
}

// fewHouses is how many houses the slower properties are asked of.
const fewHouses = 60

// No leg goes through what is in its way on a lattice laid in parts either.
func TestRandomRoutesOnASparseLattice(t *testing.T) {
	sparsely(func() {
		for seed := range uint64(fewHouses) {
			routesInTheirPlaces(t, seed, solved(t, randomJob(t, seed, randomhouse.Options{})))
		}
	})
}

// A lattice laid in parts has no place and no way of a better zone than the
// whole one: the zone of a way is the worst of all crossings of all lines that
// it passes.
func TestSparseZonesAreTheWorstOfWhole(t *testing.T) {
	ways, longer := 0, 0
	for seed := range uint64(randomHouses) {
		job := randomJob(t, seed, randomhouse.Options{})
		whole, err := Build(job)
		if err != nil {
			t.Fatal(err)
		}
		sparsely(func() {
			part, err := Build(job)
			if err != nil {
				t.Fatal(err)
			}
			r := part.Reach
			if len(r.zone) >= len(whole.Reach.zone) {
				t.Errorf("seed %d: %d crossings of %d are laid", seed, len(r.zone), len(whole.Reach.zone))
			}
			for k := range int32(len(r.zone)) {
				if z := whole.Reach.zoneOf(r.point(k)); r.zone[k] < z {
					t.Errorf("seed %d: %v is %v, and on the whole lattice %v", seed, r.point(k), r.zone[k], z)
				}
				for _, way := range []stretch{r.east[k], r.north[k]} {
					if way.to < 0 || way.zone > Arm {
						continue
					}
					passed, z := worstBetween(whole.Reach, r.point(k), r.point(way.to))
					if ways++; passed > 2 {
						longer++
					}
					if way.zone < z {
						t.Errorf("seed %d: from %v to %v is %v, and on the whole lattice %v", seed, r.point(k), r.point(way.to), way.zone, z)
					}
				}
			}
		})
	}
	if longer < ways/10 {
		t.Errorf("only %d of %d ways pass a line that is not laid there", longer, ways)
	}
}

// worstBetween is the worst zone of the crossings from p to q, and how many
// they are.
func worstBetween(r *Reach, p, q geom.Point) (passed int, z Zone) {
	u, v := r.axes.uv(p)
	on := r.onLineOfV(v)
	if to, _ := r.axes.uv(q); to == u {
		on = r.onLineOfU(u)
	}
	for _, k := range on {
		if (geom.Rect{Min: p, Max: q}).Contains(r.point(k)) {
			passed, z = passed+1, max(z, r.zone[k])
		}
	}
	return passed, z
}

// A plan on a lattice laid in parts is no more than 1 % dearer than on the
// whole one, in buildings of eight times the size of a house.
func TestSparsePlansAreAlmostAsCheap(t *testing.T) {
	for seed := range uint64(3) {
		job := school(t, seed, 8, 70)
		var whole *Result
		wholly(func() { whole = solved(t, job) })
		sparsely(func() {
			part := solved(t, job)
			if part.routed() != whole.routed() {
				t.Errorf("seed %d: %d drops are routed, %d on the whole lattice", seed, part.routed(), whole.routed())
			}
			// Prices are rounded arc by arc, so fewer arcs may come to a little less.
			rounding := whole.Cost.Total / 100_000
			if part.Cost.Total > whole.Cost.Total+whole.Cost.Total/100 || part.Cost.Total < whole.Cost.LowerBound-rounding {
				t.Errorf("seed %d: the plan costs %d, on the whole lattice %d, bound %d", seed, part.Cost.Total, whole.Cost.Total, whole.Cost.LowerBound)
			}
			t.Logf("seed %d: %d and %d nodes, %+.3f %%", seed, len(part.Graph.Nodes), len(whole.Graph.Nodes),
				100*float64(part.Cost.Total-whole.Cost.Total)/float64(whole.Cost.Total))
		})
	}
}

// Twice the floor area with twice the drops has about twice the crossings, not
// four times as many.
func TestLatticeGrowsWithTheArea(t *testing.T) {
	size := func(area float64, drops int) int {
		g, err := Build(school(t, 4, area, drops))
		if err != nil {
			t.Fatal(err)
		}
		return len(g.Arcs)
	}
	var sizes []int
	for _, n := range []int{12, 24, 48} {
		sizes = append(sizes, size(float64(n), 8*n))
	}
	for i := range sizes[1:] {
		if ratio := float64(sizes[i+1]) / float64(sizes[i]); ratio > 2.8 {
			t.Errorf("twice the area has %.1f times the arcs: %v", ratio, sizes)
		}
	}
	if !slices.IsSorted(sizes) {
		t.Errorf("arcs: %v", sizes)
	}
	t.Log(sizes)
}
