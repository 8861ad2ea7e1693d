package fix

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/route"
)

// An end is one side of a hole between two spaces.
type end struct {
	site  *site
	side  plan.Side  // of the wall
	stand geom.Point // where the cable comes to the wall
	at    geom.Point // on the wall's face, or as near to it as the space goes
}

// between finds a hole between two spaces from both: from the one that it is bored
// from, and from the other, where one looks first and where the bit comes out.
func (f *fixer) between(h *Hole) (near, far Above) {
	ends := f.ends(h)
	near, far = f.atWall(h, &ends[0]), f.atWall(h, &ends[1])
	if ends[1].site.closed(ends[1].at) {
		far = Above{Space: far.Space, At: far.At, Zone: route.NoZone, Room: -1, Hatch: -1, InLine: -1, Why: "the floor is closed: cable goes on with rods in the joist bay that is bored into"}
		far.Text = []string{far.Why}
		near.Text = append(near.Text, "into the joist bay there: feel with a wire whether it is open or blocked, and how far it is free")
		near.Text = append(near.Text, ends[1].site.knownNear(ends[1].at)...)
		return near, far
	}
	near.Text = append(near.Text, "before boring, look from the other side at what lies behind the place: pipes, ducts, wires and insulation")
	near.Text = append(near.Text, ends[1].site.knownNear(ends[1].at)...)
	far.Text = append(far.Text, "look here before it is bored "+ends[0].site.placeText(&near)+"; the bit comes out here")
	far.Text = append(far.Text, ends[1].site.knownNear(ends[1].at)...)
	return near, far
}

// ends are both sides of a hole between two spaces, first that from which it is
// bored.
func (f *fixer) ends(h *Hole) [2]end {
	w, place := &f.house.Walls[h.Wall], f.res.Holes[h.Index].Place
	var out [2]end
	for i := range f.res.Graph.Arcs {
		a := &f.res.Graph.Arcs[i]
		if a.Hole != place {
			continue
		}
		for _, n := range [2]int{a.From, a.To} {
			node := &f.res.Graph.Nodes[n]
			e := end{site: f.site(node.Space), stand: flat(node.At)}
			if geom.Dist(e.stand, w.FacePoint(h.Along, plan.Right)) < geom.Dist(e.stand, w.FacePoint(h.Along, plan.Left)) {
				e.side = plan.Right
			}
			e.at = e.site.upTo(e.stand, w.FacePoint(h.Along, e.side))
			if node.Space == h.Space {
				out[0] = e
			} else {
				out[1] = e
			}
		}
		break
	}
	return out
}

// upTo is the last point of the space on the way from p, which is in it, to q on a
// line along an axis.
func (s *site) upTo(p, q geom.Point) geom.Point {
	if s.space.Contains(q) {
		return q
	}
	best := p
	for _, o := range s.space.Edges() {
		for i, a := range o {
			edge := geom.Rect{Min: a, Max: o[(i+1)%len(o)]}.Canon()
			x := geom.Point{X: min(max(p.X, edge.Min.X), edge.Max.X), Y: min(max(p.Y, edge.Min.Y), edge.Max.Y)}
			if p.X == q.X {
				x.X = p.X
			} else {
				x.Y = p.Y
			}
			on := edge.Contains(x) && (geom.Rect{Min: p, Max: q}).Canon().Contains(x)
			if on && geom.Dist(x, q) < geom.Dist(best, q) {
				best = x
			}
		}
	}
	return best
}

// atWall finds an end of a hole in its space.
func (f *fixer) atWall(h *Hole, e *end) Above {
	s, g := e.site, *h
	g.At.X, g.At.Y, g.Space = e.at.X, e.at.Y, s.index
	a := Above{
		Reached: true, Zone: min(s.reach.ZoneOver(e.stand), s.reach.ZoneOver(e.at)), Clear: s.clear(e.stand),
		Space: s.index, At: e.at, Room: s.room(e.stand), InLine: -1,
	}
	a.Hatch, a.Way, _ = s.ways.to(e.at)
	s.tapes(&g, &a)
	// That it is at its own wall needs no tape.
	var faces []Distance
	for _, d := range a.Faces {
		if d.Wall != h.Wall {
			faces = append(faces, d)
		}
	}
	a.Faces = faces
	a.Height, a.Up = s.heightText(h), h.At.Z-s.space.Base
	a.Text = append(s.foundText(&g, &a), a.Height)
	return a
}

// foundText says where one works, what is taped and what is looked for at a wall.
func (s *site) foundText(h *Hole, a *Above) []string {
	over := "over"
	if s.fromBelow() {
		over = "under"
	}
	out := []string{
		s.thereText(h, a), fmt.Sprintf("%s, %s clear %s the joists", a.Zone, s.text(a.Clear), over),
		fmt.Sprintf("on the face of wall %s", s.house.Walls[h.Wall].ID),
	}
	out = append(out, s.fixText(a)...)
	if a.Method != ByFaces && len(a.Faces) > 0 {
		out = append(out, s.facesText(a.Faces))
	}
	if a.Method != ByFaces && a.Joists != nil {
		out = append(out, s.joistText(a.Joists))
	}
	return out
}

// heightText says how high the middle of a hole in a wall is for who works in the
// space.
func (s *site) heightText(h *Hole) string {
	up := h.At.Z - s.space.Base
	switch {
	case up < 0:
		return fmt.Sprintf("its middle %s below the joists' undersides", s.text(-up))
	case up == 0:
		return "its middle level with the joists' undersides"
	case up < s.space.Depth:
		return fmt.Sprintf("its middle in the joists' depth, %s over their undersides", s.text(up))
	}
	return fmt.Sprintf("its middle %s over the joists' tops", s.text(up-s.space.Depth))
}

// placeText says from where a hole is bored.
func (s *site) placeText(a *Above) string {
	if a.Room >= 0 {
		return "from " + s.house.Rooms[a.Room].Name
	}
	return "from the " + s.spaceName()
}

// betweenText names what a wall is between.
func (f *fixer) betweenText(h *Hole) string {
	var names []string
	for _, e := range f.ends(h) {
		name := e.site.placeText(&Above{Room: e.site.room(e.stand)})
		names = append(names, strings.TrimPrefix(name, "from "))
	}
	return strings.Join(names, " and ")
}

// In is the hole as it is found from a space, false if it is not looked for there.
func (h *Hole) In(space int) (Hole, bool) {
	if h.Far == nil || h.Far.Space != space {
		out := *h
		if h.Far != nil {
			out.At.X, out.At.Y = h.Above.At.X, h.Above.At.Y
		}
		return out, h.Space == space
	}
	out := *h
	out.Above, out.Space = *h.Far, space
	out.At.X, out.At.Y = h.Far.At.X, h.Far.At.Y
	return out, true
}

// FoundText is how a hole is found in the spaces that it opens into, a line for each
// thing to do: in the one that it is bored from, and in the other, if there is one.
func (h *Hole) FoundText() []string {
	if h.Far == nil {
		return h.Above.Text
	}
	out := append(slices.Clone(h.Above.Text), "on the other side, "+h.Far.Text[0])
	return append(out, h.Far.Text[1:]...)
}

// belowPass finds a hole between two spaces from the room with open joists on a
// side of it, facing its wall; from where there is none it is not found.
func (f *fixer) belowPass(h *Hole) Below {
	b := Below{Room: -1, Wall: h.Wall, Height: h.At.Z - f.floor(h.Level), Text: "from no room: it is found from the spaces on both sides"}
	w := &f.house.Walls[h.Wall]
	for _, e := range f.ends(h) {
		room := e.site.room(e.stand)
		if room < 0 || f.house.Rooms[room].Level != w.Level || b.Room >= 0 || b.Height >= f.house.Levels[w.Level].PlateTop {
			continue
		}
		b.Room, b.Side = room, e.side
		b.From = []Distance{f.nearestCorner(h.Wall, e.side, h.Along)}
		b.Text = f.belowText(h, &b)
	}
	return b
}
