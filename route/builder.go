package route

import (
	"cmp"
	"fmt"
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
	"topplate/route/network"
)

// A builder gathers the nodes and arcs of one graph.
type builder struct {
	job    *plan.Job
	house  *plan.House
	book   rule.Book
	prices price.Table
	// relax keeps the arcs that a rule forbids, at the price of the change
	// that would allow them.
	relax bool
	// metre is the price of a metre of cable: the mean over the cables of
	// the job, so that one price serves the whole network.
	metre int64

	cavities []*cavity      // by space
	fixed    []plan.Fixed   // by id
	by       []latticePoint // lattice lines besides

	bays     [][]Bay
	shafts   map[bayKey]*shaft
	conduits []*plan.Conduit // that some box can use
	nodes    []Node
	byKey    map[nodeKey]int
	arcs     []Arc
	holes    []HolePlace
	byHole   map[holeKey]int
	root     int
	terms    []int
	dead     map[int][]Block // by drop: what stops it for good
	shut     []Block         // what stops every drop at the closet
	later    []func()        // what is added once all lattices are laid
}

// A nodeKey tells nodes apart: owner is the drop of a terminal or a box.
type nodeKey struct {
	kind  NodeKind
	at    geom.Point3
	wall  int // of a lattice node, the space
	owner int
}

type holeKey struct {
	kind ArcKind
	at   geom.Point3
}

const noOwner = -1

func newBuilder(job *plan.Job, relax bool) *builder {
	h := job.House
	b := &builder{
		job: job, house: h, relax: relax,
		book:   job.Book(),
		prices: job.PriceTable(),
		shafts: map[bayKey]*shaft{}, byKey: map[nodeKey]int{}, byHole: map[holeKey]int{}, dead: map[int][]Block{},
		root: -1,
	}
	b.metre = meanCablePrice(job)
	b.fixed = fixedParts(job)
	for s := range h.Spaces {
		b.cavities = append(b.cavities, newCavity(b, s))
	}
	for w := range h.Walls {
		b.bays = append(b.bays, Bays(h, w))
	}
	return b
}

// meanCablePrice is in thousandths of the currency's unit per metre, rounded
// up.
func meanCablePrice(job *plan.Job) int64 {
	var sum, n int64
	for i := range job.Drops {
		d := &job.Drops[i]
		sum += int64(d.Count) * d.Cable.PricePerMetre
		n += int64(d.Count)
	}
	if n == 0 {
		return 0
	}
	return (sum + n - 1) / n
}

// node returns the node with this key, adding it if it is new.
func (b *builder) node(kind NodeKind, at geom.Point3, wall, owner int) int {
	key := nodeKey{kind, at, wall, owner}
	n, ok := b.byKey[key]
	if !ok {
		n = len(b.nodes)
		b.byKey[key] = n
		b.nodes = append(b.nodes, Node{Kind: kind, At: at, Wall: wall, Space: -1})
	}
	return n
}

// low and high are the lattice nodes at p.
func (b *cavity) low(p geom.Point) int {
	return b.latticeNode(LowNode, geom.Point3{X: p.X, Y: p.Y, Z: b.base})
}

func (b *cavity) high(p geom.Point) int {
	return b.latticeNode(HighNode, geom.Point3{X: p.X, Y: p.Y, Z: b.base + b.lifted()})
}

// latticeNode returns the node of this cavity's lattice, adding it if it is
// new.
func (b *cavity) latticeNode(kind NodeKind, at geom.Point3) int {
	key := nodeKey{kind, at, b.index, noOwner}
	n, ok := b.byKey[key]
	if !ok {
		n = len(b.nodes)
		b.byKey[key] = n
		b.nodes = append(b.nodes, Node{Kind: kind, At: at, Wall: -1, Space: b.index})
	}
	return n
}

// add takes an arc outside of all spaces into the graph.
func (b *builder) add(a Arc) {
	a.Space = -1
	b.take(a)
}

// take takes an arc into the graph, unless a rule forbids it and the graph is
// the one that is routed on. The price of a change is paid once.
func (b *builder) take(a Arc) {
	if len(a.Blocks) > 0 && !b.relax {
		return
	}
	for _, bl := range a.Blocks {
		a.Charges = append(a.Charges, Charge{Term: price.Change, Amount: bl.Price})
	}
	if a.From != a.To {
		b.arcs = append(b.arcs, a)
	}
}

// hole returns the index of a hole place, adding it if it is new.
func (b *builder) hole(h HolePlace) int {
	if h.Kind != PassArc {
		h.Beyond = -1
	}
	key := holeKey{h.Kind, h.At}
	n, ok := b.byHole[key]
	if !ok {
		n = len(b.holes)
		b.byHole[key] = n
		b.holes = append(b.holes, h)
	}
	return n
}

// once makes a charge of a term that is paid a whole number of times.
func (b *builder) once(t price.ID, n int64) Charge {
	return Charge{Term: t, Amount: n * b.prices.Each(t)}
}

// onceBy and eachBy make charges of a term that is paid by length.
func (b *builder) onceBy(t price.ID, l measure.Length) Charge {
	return Charge{Term: t, Amount: b.prices.PerMetre(t, l)}
}

func (b *builder) eachBy(t price.ID, l measure.Length) Charge {
	return Charge{Term: t, Amount: b.prices.PerMetre(t, l), PerCable: true}
}

// cable is what every arc costs each cable: the cable itself and pulling it.
func (b *builder) cable(l measure.Length) []Charge {
	return []Charge{
		{Term: price.Cable, Amount: price.ByLength(b.metre, l), PerCable: true},
		b.eachBy(price.Pull, l),
	}
}

// bend is the price of one bend of one cable at a node.
func (b *builder) bend(n Node) int64 {
	switch n.Kind {
	case PlateNode, SurfaceNode:
		return b.prices.Each(price.BendAtHole)
	default:
		return b.prices.Each(price.BendFree)
	}
}

// finish numbers everything in an order that does not depend on the files and
// hands the graph over.
func (b *builder) finish() (*Graph, error) {
	if err := b.checkExisting(); err != nil {
		return nil, err
	}
	g := &Graph{Job: b.job, Reach: b.cavities[0].reach, Bays: b.bays, dead: b.dead, shut: b.shut, crowded: b.prices.Each(price.ChangeCrowded)}
	for _, c := range b.cavities {
		g.Reaches = append(g.Reaches, c.reach)
	}
	g.Known = b.opened()
	toNew := b.sortNodes(g)
	b.sortHoles(g)
	g.Arcs = b.arcs
	for i := range g.Arcs {
		a := &g.Arcs[i]
		a.From, a.To = toNew[a.From], toNew[a.To]
		if a.From > a.To {
			a.From, a.To, a.Heading = a.To, a.From, a.Heading.Reverse()
		}
	}
	slices.SortStableFunc(g.Arcs, compareArcs)
	g.Root = toNew[b.root]
	for _, t := range b.terms {
		g.Terminals = append(g.Terminals, toNew[t])
	}
	g.Bend = make([]int64, len(g.Nodes))
	for i, n := range g.Nodes {
		g.Bend[i] = b.bend(n)
	}
	net, err := network.New(len(g.Nodes), plainArcs(g.Arcs), g.Bend)
	if err != nil {
		return nil, fmt.Errorf("route: %w", err)
	}
	g.Net = net
	return g, nil
}

// sortNodes numbers the nodes by height, then south to north, then west to
// east, and returns the new number of each old one.
func (b *builder) sortNodes(g *Graph) []int {
	order := make([]int, len(b.nodes))
	for i := range order {
		order[i] = i
	}
	owner := make([]int, len(b.nodes))
	for key, n := range b.byKey {
		owner[n] = key.owner
	}
	slices.SortFunc(order, func(i, j int) int {
		m, n := b.nodes[i], b.nodes[j]
		return cmp.Or(
			cmp.Compare(m.At.Z, n.At.Z), cmp.Compare(m.At.Y, n.At.Y), cmp.Compare(m.At.X, n.At.X),
			cmp.Compare(m.Kind, n.Kind), cmp.Compare(b.ownerTag(owner[i]), b.ownerTag(owner[j])),
			cmp.Compare(m.Wall, n.Wall), cmp.Compare(m.Space, n.Space))
	})
	toNew := make([]int, len(order))
	g.Nodes = make([]Node, 0, len(order))
	for newID, old := range order {
		toNew[old] = newID
		g.Nodes = append(g.Nodes, b.nodes[old])
	}
	return toNew
}

func (b *builder) ownerTag(owner int) string {
	if owner < 0 {
		return ""
	}
	return b.job.Drops[owner].Tag
}

// sortHoles numbers the holes by height and place, and renumbers them in the
// arcs.
func (b *builder) sortHoles(g *Graph) {
	order := make([]int, len(b.holes))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		p, q := b.holes[i], b.holes[j]
		return cmp.Or(cmp.Compare(p.At.Z, q.At.Z), cmp.Compare(p.At.Y, q.At.Y),
			cmp.Compare(p.At.X, q.At.X), cmp.Compare(p.Kind, q.Kind))
	})
	toNew := make([]int, len(order))
	for newID, old := range order {
		toNew[old] = newID
		g.Holes = append(g.Holes, b.holes[old])
	}
	for i := range b.arcs {
		if b.arcs[i].Hole >= 0 {
			b.arcs[i].Hole = toNew[b.arcs[i].Hole]
		}
	}
}

func compareArcs(a, c Arc) int {
	return cmp.Or(cmp.Compare(a.From, c.From), cmp.Compare(a.To, c.To),
		cmp.Compare(a.Kind, c.Kind), cmp.Compare(a.Heading, c.Heading))
}

func plainArcs(arcs []Arc) []network.Arc {
	out := make([]network.Arc, len(arcs))
	for i := range arcs {
		a := &arcs[i]
		out[i] = network.Arc{
			From: int32(a.From), To: int32(a.To), Heading: a.Heading,
			Fixed: a.Fixed(), PerCable: a.PerCable(),
		}
	}
	return out
}
