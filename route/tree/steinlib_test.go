package tree

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"topplate/route/network"
)

// steinlib is where instances of SteinLib (Koch, Martin and Voss, "SteinLib:
// an updated library on Steiner tree problems in graphs", 2001) lie, if at
// all: they have no licence that lets them be kept here.
const steinlib = "../../../shared/steinlib"

// readSTP reads the parts of the .stp format that describe a graph and its
// terminals. Each terminal gets a leaf of its own, as other paths may pass
// the node it stands for; the first is the root.
func readSTP(path string) (*network.Network, int32, []Terminal, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, 0, nil, err
	}
	defer f.Close()
	var arcs []network.Arc
	var at []int32
	nodes := 0
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		words := strings.Fields(lines.Text())
		var num [4]int64
		for i := 1; i < len(words) && i < len(num); i++ {
			num[i], _ = strconv.ParseInt(words[i], 10, 64)
		}
		switch {
		case len(words) == 2 && words[0] == "Nodes":
			nodes = int(num[1])
		case len(words) >= 4 && words[0] == "E":
			arcs = append(arcs, network.Arc{From: int32(num[1] - 1), To: int32(num[2] - 1), Heading: network.Free, Fixed: num[3]})
		case len(words) == 2 && words[0] == "T":
			at = append(at, int32(num[1]-1))
		}
	}
	if len(at) == 0 {
		return nil, 0, nil, fmt.Errorf("%s: no terminals", path)
	}
	var terms []Terminal
	for i, v := range at[1:] {
		leaf := int32(nodes + i)
		arcs = append(arcs, network.Arc{From: v, To: leaf, Heading: network.Free})
		terms = append(terms, Terminal{leaf, 1})
	}
	n, err := network.New(nodes+len(terms), arcs, make([]int64, nodes+len(terms)))
	return n, at[0], terms, err
}

// steinlibWork keeps the test short; class B, which is small, gets all.
const steinlibWork = 20_000_000

// A class is what was found for one class of instances.
type class struct {
	runs, proved, best int
	gap, bound         float64 // sums of parts of the optimum
}

func (c *class) add(p Plan, optimum int64) {
	c.runs++
	c.gap += float64(p.Cost-optimum) / float64(optimum)
	c.bound += float64(optimum-p.LowerBound) / float64(optimum)
	if p.Proved {
		c.proved++
	}
	if p.Cost == optimum {
		c.best++
	}
}

func TestSteinLib(t *testing.T) {
	table, err := os.ReadFile(filepath.Join(steinlib, "optima.tsv"))
	if err != nil {
		t.Skipf("no instances of SteinLib beside the repository: %v", err)
	}
	classes := map[string]*class{"B": {}, "C": {}, "I080": {}}
	for _, line := range strings.Split(strings.TrimSpace(string(table)), "\n")[1:] {
		f := strings.Split(line, "\t")
		c := classes[filepath.Dir(f[0])]
		optimum, err := strconv.ParseInt(f[4], 10, 64)
		if err != nil || c == nil {
			continue
		}
		n, root, terms, err := readSTP(filepath.Join(steinlib, f[0]))
		if err != nil {
			t.Fatal(err)
		}
		opt := Options{Work: steinlibWork}
		if c == classes["B"] {
			opt.Work = DefaultWork
		}
		p, err := Solve(n, root, terms, opt)
		if err != nil {
			t.Fatal(err)
		}
		c.add(p, optimum)
		if p.Cost < optimum || p.LowerBound > optimum || len(terms) <= 12 && !p.Proved {
			t.Errorf("%s with %d terminals: cost %d, bound %d, proved %v; the optimum is %d", f[0], len(terms)+1, p.Cost, p.LowerBound, p.Proved, optimum)
		}
	}
	for name, most := range map[string]float64{"B": 0, "C": 0.01, "I080": 0.02} {
		c := classes[name]
		runs := float64(max(c.runs, 1))
		t.Logf("%s: %d of %d proved, %d optimal, mean gap %.3f %%, mean bound %.3f %% below", name, c.proved, c.runs, c.best, 100*c.gap/runs, 100*c.bound/runs)
		if c.gap/runs > most {
			t.Errorf("%s: mean gap %.3f %%, want %g %% at most", name, 100*c.gap/runs, 100*most)
		}
	}
}
