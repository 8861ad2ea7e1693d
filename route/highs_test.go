package route

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"slices"
	"strconv"
	"strings"
	"testing"

	"topplate/plan/measure"
	"topplate/plan/randomhouse"
)

// python is Debian's, which has scipy; another one on the path may not.
const python = "/usr/bin/python3"

// needScipy skips a test without scipy, or fails it where CI says that it must
// be there.
func needScipy(t *testing.T) {
	t.Helper()
	if err := exec.Command(python, "-c", "from scipy.optimize import milp").Run(); err != nil {
		if os.Getenv("TOPPLATE_REQUIRE") != "" {
			t.Fatalf("%s can't import scipy (Debian: python3-scipy): %v", python, err)
		}
		t.Skipf("not held against HiGHS: %s can't import scipy (Debian: python3-scipy): %v", python, err)
	}
}

// Where several holes are needed, and bundles may part for that, an integer programme
// of the whole graph finds no cheaper plan. The jobs are random ones, but all cables
// alike, so that a hole takes so many of them.
func TestSeveralHolesAgainstHiGHS(t *testing.T) {
	needScipy(t)
	for _, seed := range []uint64{48, 72, 73} {
		job := randomJob(t, seed, randomhouse.Options{Drops: 5})
		for i := range job.Drops {
			job.Drops[i].Cable, job.Drops[i].Count = job.Drops[0].Cable, 3+i%3
		}
		g, err := Build(job)
		if err != nil {
			t.Fatal(err)
		}
		best := planned(t, g)
		if gates := g.gates(job.Book(), reachedAll(g)); len(gates) == 0 {
			t.Errorf("seed %d: one hole is enough everywhere", seed)
		}
		if want := byHiGHS(t, g, holesPriced(t, g)); best.Cost != want || best.LowerBound > want {
			t.Errorf("seed %d: cost %d, bound %d; HiGHS finds %d", seed, best.Cost, best.LowerBound, want)
		}
	}
}

func reachedAll(g *Graph) []bool { return slices.Repeat([]bool{true}, len(g.Job.Drops)) }

// A jsonArc is an arc of a graph for the integer programme: what a hole costs there
// and takes, and how many holes go there, if prices have such steps.
type jsonArc struct {
	From     int    `json:"from"`
	To       int    `json:"to"`
	Heading  string `json:"heading"`
	Fixed    int64  `json:"fixed"`
	PerCable int64  `json:"per_cable"`
	Hole     int64  `json:"hole,omitempty"`
	Takes    int    `json:"takes,omitempty"`
	Holes    int    `json:"holes,omitempty"`
}

// holesPriced tells what the holes of every arc cost and take, for a job whose cables
// are all alike.
func holesPriced(t *testing.T, g *Graph) []jsonArc {
	t.Helper()
	all := 0
	for d := range g.Job.Drops {
		all += g.Job.Drops[d].Count
	}
	out := make([]jsonArc, len(g.Arcs))
	for i := range g.Arcs {
		if !g.stepped(i) {
			continue
		}
		x := &out[i]
		x.Hole = g.Arcs[i].bore()
		for n := 1; n <= all; n++ {
			beyond, crowded := g.beyondFor(g.Job.Book(), i, slices.Repeat([]measure.Length{g.thinnest()}, n))
			if crowded {
				break
			}
			if beyond == 0 {
				x.Takes = n
			}
			if x.Holes = int(beyond) + 1; x.Holes != (n+x.Takes-1)/x.Takes {
				t.Fatalf("arc %d: %d holes for %d cables, %d to a hole", i, x.Holes, n, x.Takes)
			}
		}
		if x.Takes == 0 {
			t.Fatalf("arc %d takes no cable", i)
		}
	}
	return out
}

// byHiGHS is the optimum of a graph, with steps in prices as told; nil stands for none.
func byHiGHS(t *testing.T, g *Graph, steps []jsonArc) int64 {
	t.Helper()
	type terminal struct {
		Node   int `json:"node"`
		Cables int `json:"cables"`
	}
	problem := struct {
		Root      int        `json:"root"`
		Bend      []int64    `json:"bend"`
		Arcs      []jsonArc  `json:"arcs"`
		Terminals []terminal `json:"terminals"`
	}{Root: g.Root, Bend: g.Bend, Arcs: make([]jsonArc, len(g.Arcs))}
	copy(problem.Arcs, steps)
	for i := range g.Arcs {
		a, x := &g.Arcs[i], &problem.Arcs[i]
		x.From, x.To, x.Heading, x.Fixed, x.PerCable = a.From, a.To, a.Heading.String(), a.Fixed(), a.PerCable()
	}
	for d, n := range g.Terminals {
		problem.Terminals = append(problem.Terminals, terminal{n, g.Job.Drops[d].Count})
	}
	input, err := json.Marshal([]any{problem})
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, "tree/testdata/optimum.py")
	cmd.Stdin, cmd.Stderr = bytes.NewReader(input), os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	want, err := strconv.ParseInt(strings.TrimSpace(string(out)), 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	return want
}
