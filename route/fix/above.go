package fix

import (
	"fmt"
	"math"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/tape"
)

// An Above says how a place is found in the attic.
type Above struct {
	// Reached is true where a hand gets to the place; otherwise Why says what
	// is done instead, and only Zone and Clear are given.
	Reached bool
	Why     string
	Zone    route.Zone
	// Clear is the room over the joists' tops under the rafters, zero or more.
	Clear measure.Length
	// Hatch and Way are how one gets there.
	Hatch int
	Way   []Step
	// Fix has the tapes, nil where nothing can be taped from.
	Fix    *tape.Answer
	Method Method
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
	Probe     *Probe
	Text      []string
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
)

var methodNames = [...]string{"from below only", "at a mark", "two tapes", "joists and one tape", "one tape and an angle"}

func (m Method) String() string { return methodNames[m] }

// A Tolerance is how far the middle of the bores may be off. Along the wall it
// is half of what the free stretch of the plate leaves beside the bores.
// Across, half of what its width leaves beside the largest, less the edge that
// the rules keep; the plate is seen and felt there, so that a tape that is off
// across does no harm. In a ceiling, Across is half of what the joist bay
// leaves, and Along zero, since any will do.
type Tolerance struct{ Along, Across measure.Length }

// A Probe is a hint to push a stiff wire up through the ceiling beside the wall,
// since the expected error along the wall is more than the plate forgives.
type Probe struct {
	Room int
	// From is the corner that the wire is measured from, as the hole is.
	From Distance
	// Behind is how far behind the wall's face the middle of the plate lies.
	Behind measure.Length
	Text   string
}

// above finds a place from the attic.
func (f *fixer) above(h *Hole, p *route.HolePlace) Above {
	at := flat(h.At)
	a := Above{
		Zone: f.res.Graph.Reach.ZoneOver(at), Hatch: -1,
		Clear: max(0, f.house.Roof.Surface.UnderRafter(at)-f.house.Attic.Depth),
	}
	if h.Kind == route.SoffitArc {
		a.Zone, a.Clear = route.NoZone, 0
	}
	if a.Why = f.notFromAbove(h, &a); a.Why != "" {
		a.Text = []string{a.Why}
		return a
	}
	a.Reached = true
	a.Hatch, a.Way, _ = f.ways.to(at)
	a.Tolerance = f.tolerance(h, p)
	f.tapes(h, &a)
	f.plate(h, &a)
	f.probe(h, &a)
	a.Text = f.aboveText(h, &a)
	return a
}

// notFromAbove says why a place is not looked for in the attic.
func (f *fixer) notFromAbove(h *Hole, a *Above) string {
	switch {
	case h.Kind == route.StudArc:
		return "found and bored from below, behind the opened board"
	case h.Kind == route.SoffitArc:
		return "outside of the walls: bored from below"
	case a.Zone > route.Arm && h.Kind == route.GableArc:
		return "no hand gets there: bored from outside, and reached with rods"
	case a.Zone > route.Arm:
		return "no hand gets there: bored from below, and reached with rods"
	}
	return ""
}

// tolerance is how far the bores may be off.
func (f *fixer) tolerance(h *Hole, p *route.HolePlace) Tolerance {
	spare := max(0, (p.Free-h.Width)/2)
	switch h.Kind {
	case route.CeilingArc:
		return Tolerance{Across: spare}
	case route.PlateArc, route.BlockArc:
		return Tolerance{Along: spare, Across: max(0, (p.MemberWidth-h.largest())/2-h.Allowed.Edge)}
	}
	return Tolerance{}
}

// tapes finds the marks to tape from and picks the best method.
func (f *fixer) tapes(h *Hole, a *Above) {
	fix, err := tape.Find(f.request(flat(h.At)))
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
	a.Joists = f.joistCount(flat(h.At), fix)
	if e == nil {
		return
	}
	a.Error = e.Within95
	if h.Wall >= 0 {
		a.AlongError = alongError(e, f.house.Walls[h.Wall].AlongY())
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

// plate says what to look for.
func (f *fixer) plate(h *Hole, a *Above) {
	at := flat(h.At)
	a.Decked = f.decked(at)
	if !a.Decked {
		a.Buried = f.house.Attic.Insulation
	}
	switch h.Kind {
	case route.PlateArc, route.BlockArc:
		w := &f.house.Walls[h.Wall]
		runs := "east and west"
		if w.AlongY() {
			runs = "north and south"
		}
		a.Plate = fmt.Sprintf("the %s of wall %s, %s wide, which runs %s", f.plateName(h.Wall), w.ID, f.text(w.StudDepth), runs)
	case route.GableArc:
		a.Plate = fmt.Sprintf("the wall under the gable, %s above its plate", f.text(h.At.Z-f.base))
		a.Buried = 0
	}
}

// probe gives the hint with a wire where the expected error is too large.
func (f *fixer) probe(h *Hole, a *Above) {
	wood := h.Kind == route.PlateArc || h.Kind == route.BlockArc
	if !wood || a.Method != ByNothing && a.AlongError <= a.Tolerance.Along {
		return
	}
	b := &h.Below
	w := &f.house.Walls[h.Wall]
	behind := geom.Dist(w.FacePoint(h.Along, b.Side), w.PointAt(h.Along))
	a.Probe = &Probe{
		Room: b.Room, From: b.From[0], Behind: behind,
		Text: fmt.Sprintf("push a stiff wire up through the ceiling against wall %s, %s from the %s, and look for it: the middle of the plate is %s behind the face; close the hole again",
			w.ID, f.text(b.From[0].Length), b.From[0].Of, f.text(behind)),
	}
}

// aboveText puts it in sentences.
func (f *fixer) aboveText(h *Hole, a *Above) []string {
	out := []string{f.wayText(a.Hatch, a.Way), fmt.Sprintf("%s, %s clear over the joists", a.Zone, f.text(a.Clear))}
	out = append(out, f.fixText(a)...)
	if a.Joists != nil {
		out = append(out, f.joistText(a.Joists))
	}
	if a.Plate != "" {
		out = append(out, "look for "+a.Plate)
	}
	switch {
	case a.Decked:
		out = append(out, "lift a board of the decking")
	case a.Buried > 0:
		out = append(out, fmt.Sprintf("under %s of insulation", f.text(a.Buried)))
	}
	if h.Kind == route.CeilingArc {
		out = append(out, "bored from the room; up here the cable goes down")
	}
	if a.Probe != nil {
		out = append(out, a.Probe.Text)
	}
	return out
}

// fixText says what to tape.
func (f *fixer) fixText(a *Above) []string {
	if a.Fix == nil {
		return nil
	}
	var out []string
	switch a.Method {
	case AtMark:
		out = append(out, "at "+f.markName(*a.Fix.At))
	case ByTapes:
		p := a.Fix.Best
		out = append(out, fmt.Sprintf("%s from %s and %s from %s, on the %s of the way from the first to the second",
			f.text(p.Distance[0].Shown), f.markName(p.Marks[0]), f.text(p.Distance[1].Shown), f.markName(p.Marks[1]), p.Side))
		if c := a.Fix.Check; c != nil {
			out = append(out, fmt.Sprintf("check: %s from %s", f.text(c.Distance.Shown), f.markName(c.Mark)))
		}
	case ByJoists:
		j := a.Fix.Joist
		out = append(out, fmt.Sprintf("%s from %s", f.text(j.Distance.Shown), f.markName(j.Mark)))
	case ByBearing:
		s := a.Fix.Single
		out = append(out, fmt.Sprintf("%s from %s, %s", f.text(s.Distance.Shown), f.markName(s.Mark), f.offsetText(s.East, s.North)))
	default:
		return []string{a.Fix.Verdict.String()}
	}
	return append(out, fmt.Sprintf("within %s, 95 tries in 100", f.text(a.Error)))
}

// offsetText is a way east and north, in words.
func (f *fixer) offsetText(east, north measure.Length) string {
	x, y := "east", "north"
	if east < 0 {
		x, east = "west", -east
	}
	if north < 0 {
		y, north = "south", -north
	}
	return fmt.Sprintf("%s %s and %s %s of it", f.text(east), x, f.text(north), y)
}
