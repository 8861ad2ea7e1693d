package tree

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"topplate/route/network"
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

type jsonArc struct {
	From     int32  `json:"from"`
	To       int32  `json:"to"`
	Heading  string `json:"heading"`
	Fixed    int64  `json:"fixed"`
	PerCable int64  `json:"per_cable"`
}

type jsonTerminal struct {
	Node   int32 `json:"node"`
	Cables int64 `json:"cables"`
}

type jsonProblem struct {
	Root      int32          `json:"root"`
	Bend      []int64        `json:"bend"`
	Arcs      []jsonArc      `json:"arcs"`
	Terminals []jsonTerminal `json:"terminals"`
}

func (s sketch) toJSON() jsonProblem {
	p := jsonProblem{Root: s.root, Bend: s.n.Bend}
	for h, back := range s.n.Twin {
		if int32(h) < back {
			p.Arcs = append(p.Arcs, jsonArc{s.n.Source[h], s.n.Target[h], s.n.Way[h].String(), s.n.Fixed[h], s.n.PerUnit[h]})
		}
	}
	for _, t := range s.terms {
		p.Terminals = append(p.Terminals, jsonTerminal(t))
	}
	return p
}

// withRods adds straight arcs over two places beside the lattice's own.
func withRods(s sketch, w, h int, rng *rand.Rand) sketch {
	var arcs []network.Arc
	for i, back := range s.n.Twin {
		if int32(i) < back {
			arcs = append(arcs, network.Arc{From: s.n.Source[i], To: s.n.Target[i], Heading: s.n.Way[i], Fixed: s.n.Fixed[i], PerCable: s.n.PerUnit[i]})
		}
	}
	for range w {
		a := rng.IntN(h)*w + rng.IntN(w-2)
		arcs = append(arcs, network.Arc{From: int32(a), To: int32(a + 2), Heading: network.East, Fixed: rng.Int64N(40), PerCable: 14 + rng.Int64N(16)})
	}
	n, err := network.New(s.n.Nodes(), arcs, s.n.Bend)
	if err != nil {
		panic(err)
	}
	return sketch{n, s.root, s.terms}
}

func TestSolveAgainstHiGHS(t *testing.T) {
	needScipy(t)
	var problems []jsonProblem
	var plans []Plan
	rng := rand.New(rand.NewPCG(3, 5))
	for run := range 30 {
		w, h := 6+run%4, 6
		n, root, terms := lattice(w, h, 3+run%5, uint64(run))
		s := sketch{n, root, terms}
		if run%3 == 2 {
			s = withRods(s, w, h, rng)
		}
		p, err := Solve(s.n, root, terms, Options{})
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, s, p)
		problems, plans = append(problems, s.toJSON()), append(plans, p)
	}
	input, err := json.Marshal(problems)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, "testdata/optimum.py")
	cmd.Stdin = bytes.NewReader(input)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Fields(string(out))
	if len(lines) != len(plans) {
		t.Fatalf("%d optima for %d problems", len(lines), len(plans))
	}
	for i, p := range plans {
		want, err := strconv.ParseInt(lines[i], 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		// With rods, the relaxation may leave a gap; see the package comment.
		if p.Cost != want || p.LowerBound > want || !p.Proved && i%3 != 2 {
			t.Errorf("problem %d: cost %d, bound %d, proved %v; HiGHS finds %d", i, p.Cost, p.LowerBound, p.Proved, want)
		}
	}
}
