package fix

import (
	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

// A Hole is one place that is bored, with all that is known of it. Indices are
// those of the house, the job and the result it was made from, -1 for none.
type Hole struct {
	ID    string        // as route.Hole
	Index int           // in Result.Holes
	Kind  route.ArcKind // of the arcs that have holes: PlateArc, SoleArc, BlockArc, StudArc, JoistArc, CeilingArc, SoffitArc, GableArc, WallArc or PassArc
	// At is the middle of the place, of all holes side by side together.
	At    geom.Point3
	Wall  int
	Along measure.Length // along Wall
	Room  int            // of a hole in a ceiling or in a joist over one
	Level int            // from whose rooms it is bored
	// Space is the framing space that it is looked for in, -1 if none is known.
	Space int
	// Member says in words what is bored: "double top plate of wall east".
	Member string
	Drops  []int // whose cables go through, in the order of their tags
	Cables int
	Bundle measure.Length // diameter of the thickest bundle
	Bores  []Bore         // side by side, from the wall's start to its end
	Width  measure.Length // of all of them, gaps counted
	// Opens is the house's soffit opening that the place is in, so that nothing
	// is cut, or -1.
	Opens   int
	Allowed Allowed
	Shield  bool // a steel plate is wanted over the face of the wood
	// Tie is true where a plate of an outer or bearing wall is cut by more than
	// half of its width, so that a metal tie is wanted across it.
	Tie   bool
	Seal  Seal
	Below Below
	Above Above
	// Far is how a hole between two spaces is found from the one that it is not bored
	// from, nil for others.
	Far *Above
}

// A Bore is one hole of those that are side by side.
type Bore struct {
	Cables int
	Bundle measure.Length // a circle of this diameter surely encloses its cables
	// Diameter is the bit's, 0 where nothing fits. It is one of the job's own
	// sizes if Own is true, the next trade size otherwise.
	Diameter measure.Length
	Own      bool
	// Offset is how far the middle of the bore is from that of the place:
	// along the wall, or for a ceiling along the joists.
	Offset measure.Length
	At     geom.Point
	Bit    Bit
}

// Allowed is what the rules allow at a place.
type Allowed struct {
	Rules  []rule.ID
	Limits []rule.LimitID
	// Largest is the largest hole. In board it is the free room between the
	// framing, and no rule.
	Largest measure.Length
	// Edge is the least wood that must be left beside a hole, Left what the
	// largest bore leaves; both are zero where no wood is bored.
	Edge, Left measure.Length
}

// Holes tells of every hole of a result, in its order. It takes time in
// proportion to the holes, the square of the marks, and the lattices of the
// spaces that they are in.
func Holes(res *route.Result) []Hole {
	f := newFixer(res)
	out := make([]Hole, 0, len(res.Holes))
	for i := range res.Holes {
		out = append(out, f.hole(i))
	}
	return out
}

// A fixer has what all holes of a result share.
type fixer struct {
	res   *route.Result
	job   *plan.Job
	house *plan.House
	book  rule.Book
	sites []*site       // by space, nil before they are asked for
	boxes map[int][]int // nodes of boxes, by the node in their bay, nil before they are asked for
}

func newFixer(res *route.Result) *fixer {
	h := res.Job.House
	return &fixer{res: res, job: res.Job, house: h, book: res.Job.Book(), sites: make([]*site, len(h.Spaces))}
}

func (f *fixer) text(l measure.Length) string { return f.house.Units.Format(l) }

func flat(p geom.Point3) geom.Point { return geom.Point{X: p.X, Y: p.Y} }

func (f *fixer) hole(i int) Hole {
	r := &f.res.Holes[i]
	p := &f.res.Graph.Holes[r.Place]
	h := Hole{
		ID: r.ID, Index: i, Kind: p.Kind, At: p.At, Wall: p.Wall, Along: p.Along, Room: p.Room,
		Level: f.levelOf(p), Space: f.spaceOf(p), Drops: r.Drops, Cables: r.Cables, Opens: f.opens(p),
	}
	h.Member = f.member(&h)
	f.boreAt(&h, r, p)
	open := f.openingOf(r.Place, p)
	f.chooseBits(&h, p, open)
	f.allow(&h, r, p)
	h.Seal = f.seal(&h)
	h.Below = f.below(&h, open)
	if h.Kind == route.PassArc {
		near, far := f.between(&h)
		h.Above, h.Far = near, &far
		return h
	}
	h.Above = f.above(&h, p)
	return h
}

// opens is the soffit opening that a soffit hole is in, or -1.
func (f *fixer) opens(p *route.HolePlace) int {
	for i := range f.house.Soffits {
		if s := &f.house.Soffits[i]; p.Kind == route.SoffitArc && s.Wall == p.Wall && s.Start <= p.Along && p.Along <= s.End {
			return i
		}
	}
	return -1
}

// boreAt lays the bores side by side about the middle of the place: with the
// job's bits, or, where these will not do, with the trade's.
func (f *fixer) boreAt(h *Hole, r *route.Hole, p *route.HolePlace) {
	bores, width, own := r.Bores, r.Width, r.Bit > 0
	if !own {
		var cables []measure.Length
		for _, d := range h.Drops {
			for range f.job.Drops[d].Count {
				cables = append(cables, f.job.Drops[d].Cable.Diameter)
			}
		}
		bits := append(tradeBits(f.house.Units), f.job.Tools.Bits...)
		bores, width, _ = route.Bores(bits, f.book, r.Largest, cables)
	}
	h.Width = width
	at := -width / 2
	for _, b := range bores {
		h.Bundle = max(h.Bundle, b.Bundle)
		bore := Bore{Cables: b.Cables, Bundle: b.Bundle, Diameter: b.Bit, Own: own || f.isOwn(b.Bit), Offset: at + b.Bit/2}
		bore.At = f.beside(p, bore.Offset)
		h.Bores = append(h.Bores, bore)
		at += b.Bit + f.book.Length(rule.HoleToMember)
	}
}

func (f *fixer) isOwn(diameter measure.Length) bool {
	for _, b := range f.job.Tools.Bits {
		if b.Diameter == diameter {
			return true
		}
	}
	return false
}

// beside is the point at an offset from a place: along its wall, or, in a
// ceiling, along the joists, where nothing is in the way.
func (f *fixer) beside(p *route.HolePlace, offset measure.Length) geom.Point {
	at := flat(p.At)
	alongY, rising := true, true
	if p.Wall >= 0 {
		w := &f.house.Walls[p.Wall]
		alongY, rising = w.AlongY(), w.Heading().Rising()
	} else if p.Space >= 0 {
		alongY = f.house.Spaces[p.Space].AlongY
	}
	if !rising {
		offset = -offset
	}
	if alongY {
		at.Y += offset
	} else {
		at.X += offset
	}
	return at
}

// largest is the diameter of the largest bore.
func (h *Hole) largest() measure.Length {
	var out measure.Length
	for _, b := range h.Bores {
		out = max(out, b.Diameter)
	}
	return out
}

// inWood reports whether a member of the frame is bored.
func (h *Hole) inWood() bool {
	return h.Kind == route.PlateArc || h.Kind == route.SoleArc || h.Kind == route.BlockArc || h.Kind == route.StudArc
}

// allowInJoist says what the rules allow in a joist.
func (f *fixer) allowInJoist(h *Hole, p *route.HolePlace) {
	a := &h.Allowed
	a.Rules, a.Limits = []rule.ID{rule.JoistBored}, []rule.LimitID{rule.JoistBore, rule.JoistEdge}
	a.Edge = f.book.Length(rule.JoistEdge)
	if most := h.largest(); most > 0 {
		a.Left = (p.MemberWidth - most) / 2
	}
}

// allow says what the rules allow, and what steel is wanted.
func (f *fixer) allow(h *Hole, r *route.Hole, p *route.HolePlace) {
	h.Allowed.Largest = r.Largest
	if h.Kind == route.JoistArc {
		f.allowInJoist(h, p)
		return
	}
	if !h.inWood() {
		h.Allowed.Rules = []rule.ID{rule.HoleToMemberRule}
		h.Allowed.Limits = []rule.LimitID{rule.HoleToMember}
		return
	}
	w, edge := &f.house.Walls[p.Wall], rule.PlateEdge
	a := &h.Allowed
	switch {
	case h.Kind == route.StudArc && w.Bearing:
		edge = rule.StudEdge
		a.Rules, a.Limits = []rule.ID{rule.StudBoreRule}, []rule.LimitID{rule.StudBoreBearing, edge}
	case h.Kind == route.StudArc:
		edge = rule.StudEdge
		a.Rules, a.Limits = []rule.ID{rule.StudBoreRule}, []rule.LimitID{rule.StudBore, edge}
	default:
		a.Rules, a.Limits = []rule.ID{rule.PlateCapacity}, []rule.LimitID{rule.PlateBore, edge}
	}
	a.Edge = f.book.Length(edge)
	if h.largest() == 0 {
		return
	}
	a.Left = (p.MemberWidth - h.largest()) / 2
	if h.Shield = a.Left < f.book.Length(rule.PlateShield); h.Shield {
		a.Rules, a.Limits = append(a.Rules, rule.Shield), append(a.Limits, rule.PlateShield)
	}
	// The published share is meant, also where the job allows more.
	h.Tie = h.Kind == route.PlateArc && (w.Exterior || w.Bearing) &&
		h.largest() > p.MemberWidth*measure.Length(value(LeastTie))/100
}
