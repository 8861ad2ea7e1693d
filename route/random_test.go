package route

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"testing"

	"gonum.org/v1/gonum/graph"
	"gonum.org/v1/gonum/graph/iterator"
	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"

	"topplate/plan"
	"topplate/plan/randomhouse"
)

// randomHouses is how many houses each property is asked of.
const randomHouses = 200

func randomJob(t testing.TB, seed uint64, o randomhouse.Options) *plan.Job {
	t.Helper()
	job, list := plan.LoadJob("job.toml", randomhouse.Generate(seed, o).Read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatalf("seed %d, %+v: the sketch does not load", seed, o)
	}
	return job
}

// randomResults keeps the results of houses as they were made, for all tests.
var randomResults [randomHouses]*Result

func randomResult(t testing.TB, seed uint64) *Result {
	t.Helper()
	if randomResults[seed] == nil {
		randomResults[seed] = solved(t, randomJob(t, seed, randomhouse.Options{}))
	}
	return randomResults[seed]
}

// randomStoreys is how many houses of several levels each property is asked of.
const randomStoreys = 60

var storeyResults [randomStoreys]*Result

func storeyResult(t testing.TB, seed uint64) *Result {
	t.Helper()
	if storeyResults[seed] == nil {
		storeyResults[seed] = solved(t, randomJob(t, seed, randomhouse.Options{Levels: true}))
	}
	return storeyResults[seed]
}

// A decoded is the graph as a solver outside reads it.
type decoded struct {
	Nodes     []struct{ ID int }
	Arcs      []decodedArc
	Turns     [][3]int64
	Forbidden [][2]int `json:"forbidden_turns"`
	Root      int
	Terminals []struct {
		Tag          string
		Node, Cables int
	}
}

type decodedArc struct {
	From, To int
	Fixed    int64
	PerCable int64 `json:"per_cable"`
}

// A lineGraph is the exported graph for gonum. State 2a is arc a travelled
// from From to To, 2a+1 the other way; one state more is the start.
type lineGraph struct {
	*decoded
	cables int64
	leave  [][]int64 // by node: the states that begin there
	next   [][]step  // by state
}

// A step is to a state after another, with the price of the bend between them
// for each cable.
type step struct{ to, turn int64 }

func newLineGraph(d *decoded) *lineGraph {
	g := &lineGraph{decoded: d, leave: make([][]int64, len(d.Nodes)), next: make([][]step, 2*len(d.Arcs)+1)}
	for i, a := range d.Arcs {
		g.leave[a.From] = append(g.leave[a.From], int64(2*i))
		g.leave[a.To] = append(g.leave[a.To], int64(2*i+1))
	}
	turn := map[[2]int]int64{}
	for _, t := range d.Turns {
		turn[[2]int{int(t[0]), int(t[1])}] = t[2]
	}
	for _, f := range d.Forbidden {
		turn[f] = -1
	}
	for u := range g.next {
		for _, v := range g.leave[g.head(int64(u))] {
			a, b := u/2, int(v/2)
			// Pairs are listed once, in one order or the other.
			price := turn[[2]int{a, b}] + turn[[2]int{b, a}]
			if a != b && price >= 0 {
				g.next[u] = append(g.next[u], step{v, price})
			}
		}
	}
	return g
}

func (g *lineGraph) start() int64 { return int64(2 * len(g.Arcs)) }

// head is the node that a state ends at.
func (g *lineGraph) head(s int64) int {
	switch a := s / 2; {
	case s == g.start():
		return g.Root
	case s%2 == 0:
		return g.Arcs[a].To
	default:
		return g.Arcs[a].From
	}
}

// From, Edge and Weight are gonum's interfaces.
func (g *lineGraph) From(u int64) graph.Nodes {
	out := make([]graph.Node, len(g.next[u]))
	for i, s := range g.next[u] {
		out[i] = simple.Node(s.to)
	}
	return iterator.NewOrderedNodes(out)
}

func (g *lineGraph) Edge(u, v int64) graph.Edge {
	return simple.Edge{F: simple.Node(u), T: simple.Node(v)}
}

func (g *lineGraph) Weight(u, v int64) (w float64, ok bool) {
	for _, s := range g.next[u] {
		if a := &g.Arcs[v/2]; s.to == v {
			return float64(a.Fixed + g.cables*(a.PerCable+s.turn)), true
		}
	}
	return 0, false
}

// cheapest is the price of the cheapest way from the root to each node that
// is asked for, by gonum's Dijkstra. Prices are below 2^53, so floats are
// exact.
func (g *lineGraph) cheapest(nodes []int) map[int]int64 {
	tree := path.DijkstraFrom(simple.Node(g.start()), g)
	out := map[int]int64{}
	for _, n := range nodes {
		for _, s := range g.leave[n] {
			// Arriving is leaving the other way round.
			w := tree.WeightTo(s ^ 1)
			if best, ok := out[n]; w < 1<<53 && (!ok || int64(w) < best) {
				out[n] = int64(w)
			}
		}
	}
	return out
}

// What is routed costs what gonum finds on the exported graph, and what is
// blocked has no way there.
func TestRandomCostsAgainstGonum(t *testing.T) {
	routed := 0
	for seed := range uint64(randomHouses) {
		routed += againstGonum(t, fmt.Sprintf("seed %d", seed), randomResult(t, seed))
	}
	if routed < 3*randomHouses {
		t.Errorf("only %d drops have routes in %d houses", routed, randomHouses)
	}
}

// The same holds over several levels.
func TestStoreyCostsAgainstGonum(t *testing.T) {
	routed := 0
	for seed := range uint64(randomStoreys) {
		routed += againstGonum(t, fmt.Sprintf("seed %d", seed), storeyResult(t, seed))
	}
	if routed < randomStoreys {
		t.Errorf("only %d drops have routes in %d houses", routed, randomStoreys)
	}
}

// The same holds for every drop of the samples.
func TestSampleCostsAgainstGonum(t *testing.T) {
	for name, drops := range map[string]int{
		"corner-house": 7, "long-roof": 6, "two-storeys": 10, "split-level": 8, "plaster-house": 7, "masonry-bungalow": 8,
	} {
		if routed := againstGonum(t, name, solved(t, sample(t, name))); routed != drops {
			t.Errorf("%s: %d of %d drops have routes", name, routed, drops)
		}
	}
}

// againstGonum compares the price of every drop by itself with gonum's, and
// returns how many drops have a route.
func againstGonum(t *testing.T, name string, res *Result) (routed int) {
	t.Helper()
	var buf bytes.Buffer
	if err := res.Graph.WriteJSON(&buf); err != nil {
		t.Fatal(err)
	}
	var d decoded
	if err := json.Unmarshal(buf.Bytes(), &d); err != nil {
		t.Fatal(err)
	}
	byCables := map[int][]int{}
	for _, term := range d.Terminals {
		byCables[term.Cables] = append(byCables[term.Cables], term.Node)
	}
	g := newLineGraph(&d)
	for cables, nodes := range byCables {
		g.cables = int64(cables)
		best := g.cheapest(nodes)
		for i := range d.Terminals {
			term, r := &d.Terminals[i], &res.Routes[i]
			if term.Cables != cables {
				continue
			}
			want, ok := best[term.Node]
			if ok != (r.Blocked == nil) || ok && r.Alone != want {
				t.Errorf("%s: %s costs %d, gonum says %d; blocked %v, reached %v", name, term.Tag, r.Alone, want, r.Blocked != nil, ok)
			}
			if ok {
				routed++
			} else if b := r.Blocked; b != nil && (len(b.Blocks) == 0 || b.Blocks[len(b.Blocks)-1].Found == "" || b.Blocks[len(b.Blocks)-1].Change == "") {
				t.Errorf("%s: nothing is said of what stops %s: %+v", name, term.Tag, b)
			}
		}
	}
	return routed
}
