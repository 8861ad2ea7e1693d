package route

import (
	"encoding/json"
	"fmt"
	"io"

	"topplate/plan/geom"
)

// exported is the routing problem as JSON, with all that a solver outside
// needs.
type exported struct {
	Schema    string            `json:"schema"`
	Units     map[string]string `json:"units"`
	Nodes     []exportedNode    `json:"nodes"`
	Arcs      []exportedArc     `json:"arcs"`
	Turns     [][3]int64        `json:"turns"`
	Forbidden [][2]int          `json:"forbidden_turns"`
	Root      int               `json:"root"`
	Terminals []exportedDrop    `json:"terminals"`
}

type exportedNode struct {
	ID   int        `json:"id"`
	At   [3]float64 `json:"at"`
	Kind string     `json:"kind"`
}

type exportedArc struct {
	ID       int     `json:"id"`
	From     int     `json:"from"`
	To       int     `json:"to"`
	Kind     string  `json:"kind"`
	Length   float64 `json:"length"`
	Fixed    int64   `json:"fixed"`
	PerCable int64   `json:"per_cable"`
	Capacity int     `json:"capacity,omitempty"`
}

type exportedDrop struct {
	Tag    string `json:"tag"`
	Node   int    `json:"node"`
	Cables int    `json:"cables"`
}

// GraphSchema names the shape of what WriteJSON writes.
const GraphSchema = "topplate-graph/1"

// WriteJSON writes the graph. Arcs may be travelled both ways; turns lists
// pairs of arcs that share a node with the price per cable of the bend between
// them, forbidden_turns the pairs between which a cable would double back. A
// cable takes no arc twice in a row.
func (g *Graph) WriteJSON(w io.Writer) error {
	e := exported{
		Schema: GraphSchema,
		Units: map[string]string{
			"at": "mm", "length": "mm",
			"fixed": "millionths of the currency's unit, paid once", "per_cable": "millionths of the currency's unit, per cable",
			"turns": "[arc, arc, millionths of the currency's unit, per cable]",
		},
		Root: g.Root, Turns: [][3]int64{}, Forbidden: [][2]int{},
	}
	for i, n := range g.Nodes {
		e.Nodes = append(e.Nodes, exportedNode{i, millimetres(n.At), n.Kind.String()})
	}
	for i := range g.Arcs {
		a := &g.Arcs[i]
		e.Arcs = append(e.Arcs, exportedArc{i, a.From, a.To, a.Kind.String(), a.Length.Millimetres(), a.Fixed(), a.PerCable(), a.Capacity})
	}
	g.exportTurns(&e)
	for _, d := range tagOrder(g.Job) {
		e.Terminals = append(e.Terminals, exportedDrop{g.Job.Drops[d].Tag, g.Terminals[d], g.Job.Drops[d].Count})
	}
	enc := json.NewEncoder(w)
	if err := enc.Encode(e); err != nil {
		return fmt.Errorf("route: writing the graph: %w", err)
	}
	return nil
}

func (g *Graph) exportTurns(e *exported) {
	n := g.Net
	for v := range g.Nodes {
		for a := n.First[v]; a < n.First[v+1]; a++ {
			for b := a + 1; b < n.First[v+1]; b++ {
				pair := [2]int{int(n.ArcOf[a]), int(n.ArcOf[b])}
				switch bend, ok := n.Turn(n.Twin[a], b); {
				case !ok:
					e.Forbidden = append(e.Forbidden, pair)
				case bend && g.Bend[v] > 0:
					e.Turns = append(e.Turns, [3]int64{int64(pair[0]), int64(pair[1]), g.Bend[v]})
				}
			}
		}
	}
}

func millimetres(p geom.Point3) [3]float64 {
	return [3]float64{p.X.Millimetres(), p.Y.Millimetres(), p.Z.Millimetres()}
}
