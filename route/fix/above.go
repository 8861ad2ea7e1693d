package fix

import (
	"fmt"
	"math"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/tape"
)

// An Above says how a place is found in the framing space that it opens into:
// from over the ceiling in an attic, and from under the joists in a crawl space
// or a room whose ceiling is open.
type Above struct {
	// Space is the framing space that it is found from, -1 if none is known, and At
	// what is taped to: the place, or of a hole between two spaces its end there.
	Space int
	At    geom.Point
	// Reached is true where a hand gets to the place; otherwise Why says what
	// is done instead, and only Zone and Clear are given.
	Reached bool
	Why     string
	Zone    route.Zone
	// Clear is the room for a body, zero or more: over the joists' tops under the
	// rafters, or under the joists.
	Clear measure.Length
	// Room is the one that it is worked on from under an open ceiling, -1 elsewhere.
	Room int
	// Hatch and Way are how one gets there, Hatch -1 where none is needed.
	Hatch int
	Way   []Step
	// Fix has the tapes, nil where nothing can be taped from.
	Fix    *tape.Answer
	Method Method
	// Faces are distances from the faces of two walls of Room, square to them.
	Faces []Distance
	// InLine is a wall of the storey on the other side of a floor that stands over
	// or under the hole in one line with its wall, -1 if there is none or the
	// place is reached.
	InLine int
	// Error is the expected one of the method: 95 % of tries are nearer.
	// AlongError is that along the wall, for a hole in a wall.
	Error, AlongError measure.Length
	// Joists counts them from a mark to the place, nil without a mark or where
	// the two are level with each other.
	Joists *JoistCount
	// Plate is what to look for under the insulation, empty for a ceiling, and
	// Buried how deep it lies there.
	Plate     string
	Buried    measure.Length
	Decked    bool // under boards, one of which is lifted
	Tolerance Tolerance
	// Height says in words how high the middle of a hole between two spaces is for
	// who works here, empty for others; Up is how far it is over the joists' undersides.
	Height string
	Up     measure.Length
	Probe  *Probe
	Text   []string
}

// A Method is how a place is found from above.
type Method uint8

// Methods.
const (
	ByNothing Method = iota // nothing can be taped from
	AtMark                  // the place is at a mark
	ByTapes                 // two distances
	ByJoists                // joists are counted, and one distance
	ByBearing               // one distance and an angle
	ByFaces                 // two distances square to faces of walls
)

var methodNames = [...]string{"from below only", "at a mark", "two tapes", "joists and one tape", "one tape and an angle", "from two walls' faces"}

func (m Method) String() string { return methodNames[m] }

// A Tolerance is how far the middle of the bores may be off. Along the wall it
// is half of what the free stretch of the plate leaves beside the bores.
// Across, half of what its width leaves beside the largest, less the edge that
// the rules keep; the plate is seen and felt there, so that a tape that is off
// across does no harm. In a ceiling, Across is half of what the joist bay
// leaves, and Along zero, since any will do.
type Tolerance struct{ Along, Across measure.Length }

// A Probe is a hint to push a stiff wire up through the ceiling beside the wall,
// or down through the floor, since the expected error along the wall is more than the plate forgives.
type Probe struct {
	Room int
	// From is the corner that the wire is measured from, as the hole is.
	From Distance
	// Behind is how far behind the wall's face the middle of the plate lies.
	Behind measure.Length
	Text   string
}

// above finds a place in the space that it opens into.
func (f *fixer) above(h *Hole, p *route.HolePlace) Above {
	at := flat(h.At)
	a := Above{Space: h.Space, At: at, Zone: route.NoZone, Room: -1, Hatch: -1, InLine: -1}
	s := f.site(h.Space)
	if s != nil && h.Kind != route.SoffitArc {
		a.Zone, a.Clear = s.reach.ZoneOver(at), s.clear(at)
	}
	if a.Why = f.notFromAbove(h, s, a.Zone); a.Why != "" {
		a.Text = append(a.Text, a.Why)
		if s != nil {
			a.InLine = s.inLine(h)
			a.Text = append(append(a.Text, s.inLineText(&a, h)...), s.mind(h)...)
		}
		return a
	}
	a.Reached = true
	a.Room = s.room(at)
	a.Hatch, a.Way, _ = s.ways.to(at)
	a.Tolerance = f.tolerance(h, p)
	s.tapes(h, &a)
	s.member(h, &a)
	f.probe(h, &a)
	a.Text = s.aboveText(h, &a)
	return a
}

// notFromAbove says why a place is not looked for in its space.
func (f *fixer) notFromAbove(h *Hole, s *site, zone route.Zone) string {
	switch {
	case h.Kind == route.StudArc:
		return "found and bored from below, behind the opened board"
	case h.Kind == route.JoistArc:
		return "found and bored from the room, behind the opened board"
	case h.Kind == route.WallArc:
		return "through the wall: found and bored from the room"
	case h.Kind == route.SoffitArc:
		return "outside of the walls: bored from below"
	case s == nil:
		return "bored from the room: what is behind it is not in the sketch"
	case zone <= route.Arm:
		return ""
	case h.Kind == route.GableArc:
		return "no hand gets there: bored from outside, and reached with rods"
	case s.closed(flat(h.At)):
		return s.closedText(h)
	case s.fromBelow():
		return "no hand gets there: bored down from the box, and reached with rods"
	}
	return "no hand gets there: bored from below, and reached with rods"
}

// tolerance is how far the bores may be off.
func (f *fixer) tolerance(h *Hole, p *route.HolePlace) Tolerance {
	spare := max(0, (p.Free-h.Width)/2)
	switch h.Kind {
	case route.CeilingArc:
		return Tolerance{Across: spare}
	case route.PlateArc, route.SoleArc, route.BlockArc:
		return Tolerance{Along: spare, Across: max(0, (p.MemberWidth-h.largest())/2-h.Allowed.Edge)}
	}
	return Tolerance{}
}

// tapes finds the marks to tape from and picks the best method.
func (s *site) tapes(h *Hole, a *Above) {
	request := s.request(flat(h.At))
	fix, err := tape.Find(request)
	if err != nil {
		// A house beyond 1000 km does not load.
		return
	}
	a.Fix = fix
	var e *tape.Ellipse
	try := func(m Method, with *tape.Ellipse) {
		if e == nil || with.Within95 < e.Within95 {
			a.Method, e = m, with
		}
	}
	if fix.AtError != nil {
		try(AtMark, fix.AtError)
	}
	if a.Room >= 0 && !s.closed(flat(h.At)) {
		a.Faces = s.squareFaces(s.space.Below, flat(h.At))
	}
	if len(a.Faces) == 2 {
		square := request.Square(a.Faces[0].Length, a.Faces[1].Length)
		try(ByFaces, &square)
	}
	if fix.Best != nil && !fix.Best.Weak {
		try(ByTapes, &fix.Best.Error)
	}
	if e == nil && fix.Joist != nil && !fix.Joist.Weak {
		try(ByJoists, &fix.Joist.Error)
	}
	if e == nil && fix.Best != nil {
		try(ByTapes, &fix.Best.Error)
	}
	if e == nil && fix.Single != nil {
		try(ByBearing, &fix.Single.Error)
	}
	a.Joists = s.joistCount(flat(h.At), fix)
	if e == nil {
		return
	}
	a.Error = e.Within95
	if h.Wall >= 0 {
		a.AlongError = alongError(e, s.house.Walls[h.Wall].AlongY())
	}
}

// twoSided is the quantile of 95 % for an error along a line, Φ⁻¹(0.975).
const twoSided = 1.959963984540054

// alongError is the error along an axis that 95 % of tries stay within, rounded
// to the micrometre.
func alongError(e *tape.Ellipse, alongY bool) measure.Length {
	turn := e.Axis * math.Pi / 180
	if alongY {
		turn = math.Pi/2 - turn
	}
	sin, cos := math.Sincos(turn)
	sigma := math.Hypot(float64(e.Major)*cos, float64(e.Minor)*sin)
	return measure.Length(math.Round(sigma*twoSided/1000)) * measure.Micrometre
}

// member says what to look for.
func (s *site) member(h *Hole, a *Above) {
	at := flat(h.At)
	a.Decked = s.decked(at)
	if !a.Decked {
		a.Buried = s.space.Insulation
	}
	if h.Wall < 0 {
		return
	}
	w := &s.house.Walls[h.Wall]
	runs := "east and west"
	if w.AlongY() {
		runs = "north and south"
	}
	switch h.Kind {
	case route.PlateArc, route.BlockArc:
		a.Plate = fmt.Sprintf("the %s of wall %s, %s wide, which runs %s", s.plateName(h.Wall), w.ID, s.text(w.StudDepth), runs)
	case route.SoleArc:
		a.Plate = fmt.Sprintf("the boards under the bottom plate of wall %s, %s wide, which runs %s: its nails come through them", w.ID, s.text(w.StudDepth), runs)
	case route.GableArc:
		a.Plate = fmt.Sprintf("the wall under the gable, %s above its plate", s.text(h.At.Z-s.space.Base))
		a.Buried = 0
	}
}

// probe gives the hint with a wire where the expected error is too large.
func (f *fixer) probe(h *Hole, a *Above) {
	through := "up through the ceiling against"
	switch h.Kind {
	case route.PlateArc, route.BlockArc:
	case route.SoleArc:
		through = "down through the floor against the baseboard of"
	default:
		return
	}
	if a.Method != ByNothing && a.AlongError <= a.Tolerance.Along {
		return
	}
	b := &h.Below
	w := &f.house.Walls[h.Wall]
	behind := geom.Dist(w.FacePoint(h.Along, b.Side), w.PointAt(h.Along))
	a.Probe = &Probe{
		Room: b.Room, From: b.From[0], Behind: behind,
		Text: fmt.Sprintf("push a stiff wire %s wall %s, %s from the %s, and look for it: the middle of the plate is %s behind the face; close the hole again",
			through, w.ID, f.text(b.From[0].Length), b.From[0].Of, f.text(behind)),
	}
}
