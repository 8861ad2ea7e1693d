package check

import (
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/network"
	"topplate/route/pull"
)

// A pullWay is a route as straight pieces and square bends, from the closet.
type pullWay struct {
	path pull.Path
	// names are those of pieces without length that a hand gets at the cable
	// at, such as an opening on the way; "" for all others.
	names []string
	kinds []route.ArcKind // of what each piece lies in
}

// pullWay turns a route into what its cables are pulled through: open where a
// hand gets at the cable.
func (c *checker) pullWay(r *route.Route) *pullWay {
	g, way := c.res.Graph, &pullWay{}
	boxes := c.openBoxes(r)
	last := network.Free
	for i, a := range r.Arcs {
		arc := &g.Arcs[a]
		from, to := r.Nodes[i], r.Nodes[i+1]
		if tag := boxes[from]; tag != "" {
			way.add(pull.Piece{Open: true}, arc.Kind, "at the box of "+tag)
		}
		if arc.Length == 0 && arc.Hole < 0 {
			continue
		}
		heading := arc.Heading
		if arc.From != from {
			heading = heading.Reverse()
		}
		if last != network.Free && heading != network.Free && last != heading {
			way.add(pull.Bend(pull.Square), arc.Kind, "")
		}
		last = heading
		switch {
		case arc.Kind == route.ChaseArc:
			c.upChase(way, arc.Chase, g.Nodes[from].At, g.Nodes[to].At)
		case handAtEnds(arc.Kind):
			c.endOf(way, arc.Kind, from)
			way.straight(arc, &g.Nodes[from], &g.Nodes[to], false)
			c.endOf(way, arc.Kind, to)
		default:
			way.straight(arc, &g.Nodes[from], &g.Nodes[to], byHand(arc))
		}
	}
	return way
}

func (w *pullWay) add(p pull.Piece, kind route.ArcKind, name string) {
	w.path, w.names, w.kinds = append(w.path, p), append(w.names, name), append(w.kinds, kind)
}

// straight adds a straight piece, to the one before it if that goes on.
func (w *pullWay) straight(arc *route.Arc, from, to *route.Node, open bool) {
	rise := max(-arc.Length, min(to.At.Z-from.At.Z, arc.Length))
	if k := len(w.path) - 1; k >= 0 && w.kinds[k] == arc.Kind && w.path[k].Length > 0 && w.path[k].Open == open {
		w.path[k].Length += arc.Length
		w.path[k].Rise += rise
		return
	}
	w.add(pull.Piece{Length: arc.Length, Rise: rise, Open: open}, arc.Kind, "")
}

// byHand reports whether cable is laid by hand along an arc, so that one gets at
// it there: in a space within reach, on a wall's face, in a channel with a lid,
// outside, in a soffit whose strip is down, and where board is open.
func byHand(a *route.Arc) bool {
	switch a.Kind {
	case route.AlongArc, route.BesideArc, route.AcrossArc, route.StepArc:
		return a.Zone <= route.Arm
	case route.FaceArc, route.RacewayArc, route.OutsideArc, route.InSoffitArc, route.StudArc, route.JoistArc:
		return true
	}
	return false
}

// handAtEnds reports whether cable on such an arc may be got at where it begins or
// ends in a space, but not between.
func handAtEnds(k route.ArcKind) bool {
	return k == route.PassArc || k == route.BackArc || k == route.RodArc
}

// endOf adds a place to pull at where a node lies in a space within reach.
func (c *checker) endOf(way *pullWay, kind route.ArcKind, node int) {
	n := &c.res.Graph.Nodes[node]
	if n.Space >= 0 && c.res.Graph.Reaches[n.Space].ZoneOver(flat(n.At)) <= route.Arm {
		way.add(pull.Piece{Open: true}, kind, "")
	}
}

// upChase adds a stretch of a chase, with a place to pull at half the height of
// every room from which a hand gets into it.
func (c *checker) upChase(way *pullWay, chase *plan.Chase, from, to geom.Point3) {
	type stop struct {
		z    measure.Length
		room string
	}
	var stops []stop
	lo, hi := min(from.Z, to.Z), max(from.Z, to.Z)
	for _, i := range chase.Rooms {
		room := &c.house.Rooms[i]
		lvl := &c.house.Levels[room.Level]
		if z := lvl.Floor + lvl.Ceiling/2; lo < z && z < hi {
			stops = append(stops, stop{z, room.Name})
		}
	}
	slices.SortStableFunc(stops, func(a, b stop) int { return int(min(1, max(-1, a.z-b.z))) })
	if to.Z < from.Z {
		slices.Reverse(stops)
	}
	z := from.Z
	for _, s := range append(stops, stop{z: to.Z}) {
		way.add(pull.Piece{Length: max(s.z-z, z-s.z), Rise: s.z - z}, route.ChaseArc, "")
		if z = s.z; s.room != "" {
			way.add(pull.Piece{Open: true}, route.ChaseArc, "in the chase from "+s.room)
		}
	}
}

// openBoxes are the places, by node, where a route passes the opening of another
// drop's box that is cut today and open while cable is pulled.
func (c *checker) openBoxes(r *route.Route) map[int]string {
	if c.boxes == nil {
		c.findBoxes()
	}
	out := map[int]string{}
	for _, n := range r.Nodes {
		for _, d := range c.boxes[n] {
			if d != r.Drop {
				out[n] = c.job.Drops[d].Tag
				break
			}
		}
	}
	return out
}

// findBoxes notes the nodes behind every opening that is cut today: the box and
// the places in its bay at its height.
func (c *checker) findBoxes() {
	c.boxes = map[int][]int{}
	at := map[int]int{} // drop by the node of its box
	c.routed(func(r *route.Route, d *plan.Drop) {
		box := r.Nodes[len(r.Nodes)-2]
		if n := &c.res.Graph.Nodes[box]; d.Kind == plan.WallPlate && !d.Later && n.Kind == route.BoxNode && !c.house.Walls[n.Wall].Masonry {
			at[box] = r.Drop
			c.boxes[box] = append(c.boxes[box], r.Drop)
		}
	})
	for i := range c.res.Graph.Arcs {
		a := &c.res.Graph.Arcs[i]
		for _, ends := range [2][2]int{{a.From, a.To}, {a.To, a.From}} {
			if d, ok := at[ends[0]]; ok && a.Kind == route.SlantArc {
				c.boxes[ends[1]] = append(c.boxes[ends[1]], d)
			}
		}
	}
}

// nameAt is what a pull point is called, after its distance.
func (w *pullWay) nameAt(p pull.Place) string {
	// A place on a piece without length is given as the start of the next.
	for i := p.Piece; i >= 0 && p.At == 0; i-- {
		if i < len(w.path) && w.names[i] != "" {
			return " (" + w.names[i] + ")"
		}
		if i < p.Piece && (i >= len(w.path) || w.path[i].Length > 0) {
			break
		}
	}
	return ""
}

// help is what would make a stretch within the limits that is not: a place to
// pull at is made only where there is board between the cable and a room.
func (w *pullWay) help(e *pull.StuckError) string {
	last := min(e.To.Piece, len(w.path)-1)
	for i := e.From.Piece; i <= last; i++ {
		switch w.kinds[i] {
		case route.FishArc, route.SlantArc, route.ChaseArc, route.BlockArc:
			if w.path[i].Length > 0 {
				return "board opened beside one of the bends, and patched again, to feed the cable on"
			}
		}
	}
	return "a place for it with fewer bends on the way, or cable of its own for a harder pull"
}
