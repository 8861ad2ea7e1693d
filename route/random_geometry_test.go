package route

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// A surveyor looks at the routes of a house with nothing but the plan: studs,
// joists and distances are laid out again, the slow way.
type surveyor struct {
	res    *Result
	house  *plan.House
	book   rule.Book
	studs  [][]band // by wall
	faults []string
}

// A band is a closed stretch of one axis.
type band struct{ from, to measure.Length }

// cuts reports whether the band and the stretch from a to b have more than an
// end in common; a stretch without length counts as its one point.
func (s band) cuts(a, b measure.Length) bool {
	a, b = min(a, b), max(a, b)
	if a == b {
		return s.from < a && a < s.to
	}
	return max(s.from, a) < min(s.to, b)
}

func newSurveyor(res *Result) *surveyor {
	h := res.Job.House
	s := &surveyor{res: res, house: h, book: res.Job.Book()}
	for w := range h.Walls {
		s.studs = append(s.studs, s.layOut(w))
	}
	return s
}

func (s *surveyor) faultf(format string, args ...any) {
	s.faults = append(s.faults, fmt.Sprintf(format, args...))
}

// layOut is the solid parts of a wall's frame between the plates: the same
// rules as the package's doc comment, read again.
func (s *surveyor) layOut(w int) []band {
	wall := &s.house.Walls[w]
	a, b := wall.Along(wall.Frame.Min), wall.Along(wall.Frame.Max)
	a, b = min(a, b), max(a, b)
	t := wall.StudWidth
	solid := []band{{a, a + t}, {b - t, b}}
	for at := a + wall.Spacing; at < b; at += wall.Spacing {
		open := false
		for _, o := range wall.Openings {
			open = open || o.Sill == 0 && o.Start < at && at < o.End
		}
		if !open {
			solid = append(solid, band{at - t/2, at + t/2})
		}
	}
	for _, o := range wall.Openings {
		solid = append(solid, band{o.Start - 2*t, o.Start}, band{o.End, o.End + 2*t})
	}
	for v := range s.house.Walls {
		other := &s.house.Walls[v]
		if v == w || other.Level != wall.Level || other.AlongY() == wall.AlongY() || other.Body.Intersect(wall.Body).Empty() {
			continue
		}
		p, q := wall.Along(other.Frame.Min), wall.Along(other.Frame.Max)
		solid = append(solid, band{min(p, q) - t, max(p, q) + t})
	}
	return solid
}

// wallOf is the wall in whose frame a leg lies.
func (s *surveyor) wallOf(l *Leg) (int, bool) {
	for w := range s.house.Walls {
		r := s.house.Walls[w].Frame
		p, q := geom.Point{X: l.From.X, Y: l.From.Y}, geom.Point{X: l.To.X, Y: l.To.Y}
		mid := s.house.Walls[w].PointAt(s.house.Walls[w].Along(p))
		lvl := &s.house.Levels[s.house.Walls[w].Level]
		storey := lvl.Floor <= l.From.Z && l.From.Z <= lvl.Floor+lvl.PlateTop && lvl.Floor <= l.To.Z && l.To.Z <= lvl.Floor+lvl.PlateTop
		if l.Kind == SoleArc {
			storey = max(l.From.Z, l.To.Z) == lvl.Floor+PlateThickness
		}
		if r.Contains(p) && r.Contains(q) && mid == p && storey {
			return w, true
		}
	}
	return 0, false
}

// inWall checks a leg inside a wall: between the plates, in one bay, off
// openings and headers.
func (s *surveyor) inWall(l *Leg) {
	w, ok := s.wallOf(l)
	if !ok {
		s.faultf("%v is in no wall", l)
		return
	}
	wall := &s.house.Walls[w]
	floor := s.house.Levels[wall.Level].Floor
	base := floor + s.house.Levels[wall.Level].PlateTop
	a, b := wall.Along(geom.Point{X: l.From.X, Y: l.From.Y}), wall.Along(geom.Point{X: l.To.X, Y: l.To.Y})
	lo, hi := min(l.From.Z, l.To.Z), max(l.From.Z, l.To.Z)
	under := base - measure.Length(wall.TopPlates)*PlateThickness
	switch {
	case l.Kind == SoleArc:
		if space := s.house.Spaces[l.Space]; lo != space.Base || hi != floor+PlateThickness || space.Above != wall.Level {
			s.faultf("%v does not go from the top of the bottom plate of %s to the underside of the joists of %s", l, wall.ID, space.ID)
		}
		return
	case l.Kind == PlateArc && (lo != under || hi != base || s.house.Spaces[l.Space].Below != wall.Level):
		s.faultf("%v goes from %v to %v, the plate from %v to %v", l, lo, hi, under, base)
	case l.Kind != PlateArc && (lo < floor+PlateThickness || hi > under):
		s.faultf("%v is not between the plates of %s", l, wall.ID)
	}
	for _, o := range wall.Openings {
		// Over the opening is its header; the sill under it is one plate thick.
		if (band{o.Start, o.End}).cuts(a, b) && hi > floor+o.Sill-PlateThickness {
			s.faultf("%v goes through opening %s of %s", l, o.ID, wall.ID)
		}
	}
	crossed := 0
	for _, stud := range s.studs[w] {
		if stud.cuts(a, b) {
			crossed++
		}
	}
	if l.Kind == StudArc {
		if crossed == 0 {
			s.faultf("%v bores no stud", l)
		}
	} else if crossed > 0 {
		s.faultf("%v goes through a stud of %s", l, wall.ID)
	}
}

// joistBodies are the joists that stand on the plates, across them.
func (s *surveyor) joistBodies(a *plan.Space) []band {
	box := a.Bounds()
	lo, hi := box.Min.Y, box.Max.Y
	if a.AlongY {
		lo, hi = box.Min.X, box.Max.X
	}
	var plate measure.Length
	for i := range s.house.Walls {
		if w := &s.house.Walls[i]; w.Exterior && w.Level == max(a.Below, 0) {
			plate = max(plate, w.StudDepth)
		}
	}
	var out []band
	for c := a.First - a.Spacing*((a.First-lo)/a.Spacing+2); c < hi; c += a.Spacing {
		if c-a.Width/2 >= lo+plate && c+a.Width/2 <= hi-plate {
			out = append(out, band{c - a.Width/2, c + a.Width/2})
		}
	}
	return out
}

func (s *surveyor) across(a *plan.Space, p geom.Point3) measure.Length {
	if a.AlongY {
		return p.X
	}
	return p.Y
}

// inAttic checks a leg over the ceiling.
func (s *surveyor) inAttic(l *Leg, fromSoffit bool) {
	p, q := geom.Point{X: l.From.X, Y: l.From.Y}, geom.Point{X: l.To.X, Y: l.To.Y}
	a := s.house.Spaces[l.Space]
	if !fromSoffit {
		s.inOutline(l, p, q)
	}
	low := min(l.From.Z, l.To.Z) == a.Base && l.Kind != AcrossArc
	z := measure.Length(0)
	if !low && a.Kind == plan.AtticSpace {
		z = a.Depth
	}
	byHand := func(x geom.Point) bool { return s.house.OpenBelow(a, x) || s.house.BesideOpen(a, x) }
	if a.Kind == plan.FloorSpace && l.Kind != RodArc && (!byHand(p) || !byHand(q)) {
		s.faultf("%v is laid where no hand gets into floor %s", l, a.ID)
	}
	for i := range s.house.Obstacles {
		o := &s.house.Obstacles[i]
		if o.Space != l.Space || z < o.Bottom-o.Clearance || z >= o.Top+o.Clearance {
			continue
		}
		if enters(p, q, o.Area, o.Clearance) {
			s.faultf("%v enters %s %s or its clearance", l, o.Kind, o.ID)
		}
	}
	for i := range s.house.Hatches {
		if s.house.Hatches[i].Space == l.Space && enters(p, q, s.house.Hatches[i].Area, 0) {
			s.faultf("%v enters the hatch", l)
		}
	}
	webs := a.Kind == plan.FloorSpace && a.Joist == plan.Truss && l.Kind == RodArc
	if low && l.To.Z == l.From.Z && !webs || l.Kind == StepArc {
		for _, j := range s.joistBodies(a) {
			if j.cuts(s.across(a, l.From), s.across(a, l.To)) {
				s.faultf("%v goes through a joist from %v to %v", l, j.from, j.to)
			}
		}
	}
	if l.Kind != StepArc {
		s.besidePower(l, p, q)
	}
}

// inOutline checks that a level leg stays within the plates, at steps of an
// inch.
func (s *surveyor) inOutline(l *Leg, p, q geom.Point) {
	n := measure.Length(1) + geom.Dist(p, q)/measure.Inch
	for i := range n + 1 {
		at := geom.Point{X: p.X + (q.X-p.X)/n*i, Y: p.Y + (q.Y-p.Y)/n*i}
		if !s.house.Spaces[l.Space].Contains(at) {
			s.faultf("%v is out of the house at %v", l, at)
			return
		}
	}
}

// enters reports whether the leg from p to q along an axis has more than its
// edge in common with r widened by d.
func enters(p, q geom.Point, r geom.Rect, d measure.Length) bool {
	return band{r.Min.X - d, r.Max.X + d}.cuts(p.X, q.X) && band{r.Min.Y - d, r.Max.Y + d}.cuts(p.Y, q.Y)
}

// besidePower checks that a leg which does not cross a power run keeps away
// from it, in floating point, to a tenth of a millimetre.
func (s *surveyor) besidePower(l *Leg, p, q geom.Point) {
	limit := s.book.Length(rule.PowerParallel).Millimetres()
	for i := range s.house.PowerRuns {
		run := &s.house.PowerRuns[i]
		if run.Space != l.Space {
			continue
		}
		for k := 1; k < len(run.Path); k++ {
			c, d := run.Path[k-1], run.Path[k]
			a, b := vector(p, q), vector(c, d)
			cos := math.Abs(a[0]*b[0]+a[1]*b[1]) / math.Hypot(a[0], a[1]) / math.Hypot(b[0], b[1])
			if math.Acos(min(cos, 1))*180/math.Pi > float64(s.book.Value(rule.PowerCrossing))-0.001 {
				continue
			}
			if dist := apart(p, q, c, d); dist < limit-0.1 {
				s.faultf("%v is %.1f mm from power run %s", l, dist, run.ID)
			}
		}
	}
}

func vector(p, q geom.Point) [2]float64 {
	return [2]float64{(q.X - p.X).Millimetres(), (q.Y - p.Y).Millimetres()}
}

// apart is how far two segments are apart, in millimetres.
func apart(p, q, c, d geom.Point) float64 {
	if side(p, q, c)*side(p, q, d) < 0 && side(c, d, p)*side(c, d, q) < 0 {
		return 0
	}
	return min(toSegment(p, c, d), toSegment(q, c, d), toSegment(c, p, q), toSegment(d, p, q))
}

func side(p, q, c geom.Point) float64 {
	a, b := vector(p, q), vector(p, c)
	return a[0]*b[1] - a[1]*b[0]
}

func toSegment(c, p, q geom.Point) float64 {
	a, b := vector(p, q), vector(p, c)
	t := max(0, min(1, (a[0]*b[0]+a[1]*b[1])/(a[0]*a[0]+a[1]*a[1])))
	return math.Hypot(b[0]-t*a[0], b[1]-t*a[1])
}

// route checks every leg of a route.
func (s *surveyor) route(r *Route) {
	fromSoffit := false
	if n := len(r.Legs); n > 1 {
		fromSoffit = r.Legs[n-1].Kind == SoffitArc
	}
	at := s.res.Graph.Nodes[r.Nodes[0]].At
	var sum measure.Length
	for i := range r.Legs {
		l := &r.Legs[i]
		sum += l.Length
		if l.Length < 0 {
			s.faultf("%v is shorter than nothing", l)
		}
		if l.From != at && i > 0 {
			s.faultf("%v does not begin where the leg before it ends", l)
		}
		at = l.To
		switch l.Kind {
		case SlantArc, FishArc, BlockArc, PlateArc, SoleArc, StudArc:
			s.inWall(l)
		case AlongArc, BesideArc, StepArc, AcrossArc:
			s.inAttic(l, false)
		case RodArc:
			s.inAttic(l, fromSoffit && i == len(r.Legs)-2)
		}
	}
	if sum != r.Lengths.Developed {
		s.faultf("the legs of %s come to %v, its developed length is %v", s.res.Job.Drops[r.Drop].Tag, sum, r.Lengths.Developed)
	}
	for _, n := range r.Nodes[1 : len(r.Nodes)-1] {
		if k := s.res.Graph.Nodes[n].Kind; k == RootNode || k == TerminalNode {
			s.faultf("the route of %s passes through another %s", s.res.Job.Drops[r.Drop].Tag, k)
		}
	}
}

// box checks where a drop ends: no further than its shift, clear of studs, of
// joists, and of power in the wall.
func (s *surveyor) box(r *Route) {
	d := &s.res.Job.Drops[r.Drop]
	if r.Moved > d.Shift {
		s.faultf("%s is moved by %v, it may be moved by %v", d.Tag, r.Moved, d.Shift)
	}
	switch d.Kind {
	case plan.WallPlate:
		s.wallBox(d, r.Place)
	case plan.CeilingPoint:
		half := s.book.Length(rule.CeilingBox) / 2
		a := s.house.Spaces[s.house.SpaceOver(s.house.Rooms[d.Room].Level, geom.Point{X: r.Place.X, Y: r.Place.Y})]
		for _, j := range s.joistBodies(a) {
			if u := s.across(a, r.Place); j.cuts(u-half, u+half) {
				s.faultf("the box of %s meets a joist", d.Tag)
			}
		}
	}
}

func (s *surveyor) wallBox(d *plan.Drop, place geom.Point3) {
	w := &s.house.Walls[d.Spot.Wall]
	at := w.Along(geom.Point{X: place.X, Y: place.Y})
	half := s.book.Length(rule.BoxSingle) / 2
	if int64(d.Count) > s.book.Value(rule.CablesPerGang) {
		half = s.book.Length(rule.BoxDouble) / 2
	}
	for _, stud := range s.studs[d.Spot.Wall] {
		if stud.cuts(at-half, at+half) {
			s.faultf("the box of %s meets a stud", d.Tag)
		}
	}
	for i := range w.Devices {
		dev := &w.Devices[i]
		high := max(dev.Height, d.Spot.Height)-min(dev.Height, d.Spot.Height) < s.book.Length(rule.BoxHeight)
		box := s.book.Length(rule.BoxSingle) / 2
		if high && (band{dev.At - box, dev.At + box}).cuts(at-half, at+half) {
			s.faultf("the box of %s is in device %s", d.Tag, dev.ID)
		}
	}
}

// hole checks what is bored. That more cables go through than fit is a finding
// of its own.
func (s *surveyor) hole(h *Hole) {
	place := &s.res.Graph.Holes[h.Place]
	gap := s.book.Length(rule.HoleToMember)
	full := slices.ContainsFunc(s.res.Findings, func(f Finding) bool { return f.Rule == rule.PlateCapacity && f.Where == h.ID })
	if full || place.Kind != PlateArc && place.Kind != SoleArc {
		return
	}
	a := s.house.Spaces[place.Space]
	wall := &s.house.Walls[place.Wall]
	p := geom.Point{X: place.At.X, Y: place.At.Y}
	edge := min(p.X-wall.Frame.Min.X, wall.Frame.Max.X-p.X)
	if !wall.AlongY() {
		edge = min(p.Y-wall.Frame.Min.Y, wall.Frame.Max.Y-p.Y)
	}
	if edge-h.Bit/2 < s.book.Length(rule.PlateEdge) {
		s.faultf("hole %s of %v leaves %v to the edge of the plate", h.ID, h.Bit, edge-h.Bit/2)
	}
	half := h.Width / 2
	at := wall.Along(p)
	for _, stud := range s.studs[place.Wall] {
		if (band{stud.from - gap, stud.to + gap}).cuts(at-half, at+half) {
			s.faultf("hole %s meets a stud of %s", h.ID, wall.ID)
		}
	}
	// Joists on the plate, across it or along it.
	u := s.across(a, place.At)
	across := wall.StudDepth/2 - s.book.Length(rule.PlateEdge)
	if wall.AlongY() != a.AlongY {
		across = half
	} else {
		across = min(across, h.Bit/2)
	}
	for _, j := range s.joistBodies(a) {
		if (band{j.from - gap, j.to + gap}).cuts(u-across, u+across) {
			s.faultf("hole %s in %s meets a joist", h.ID, wall.ID)
		}
	}
	if a.Roof >= 0 && wall.Exterior && !wall.Gable && s.house.Roofs[a.Roof].Level == wall.Level {
		s.underRafters(h, wall, place, half+gap)
	}
}

func (s *surveyor) underRafters(h *Hole, wall *plan.Wall, place *HolePlace, half measure.Length) {
	x, first := place.At.X, s.house.Roof.FirstX
	if wall.AlongY() {
		x, first = place.At.Y, s.house.Roof.FirstY
	}
	for n := (x-first)/s.house.Roof.Spacing - 2; n <= (x-first)/s.house.Roof.Spacing+2; n++ {
		c := first + n*s.house.Roof.Spacing
		if (band{c - s.house.Roof.Width/2, c + s.house.Roof.Width/2}).cuts(x-half, x+half) {
			s.faultf("hole %s in %s meets a rafter", h.ID, wall.ID)
		}
	}
}

// No leg goes through what is in its way, and holes keep their distances.
func TestRandomRoutesInTheirPlaces(t *testing.T) {
	for seed := range uint64(randomHouses) {
		routesInTheirPlaces(t, seed, randomResult(t, seed))
	}
}

func routesInTheirPlaces(t *testing.T, seed uint64, res *Result) {
	t.Helper()
	s := newSurveyor(res)
	for i := range s.res.Routes {
		if s.res.Routes[i].Blocked == nil {
			s.route(&s.res.Routes[i])
			s.box(&s.res.Routes[i])
		}
	}
	for i := range s.res.Holes {
		s.hole(&s.res.Holes[i])
	}
	if len(s.faults) > 0 {
		t.Errorf("seed %d:\n%s", seed, strings.Join(s.faults, "\n"))
	}
}

// The same holds for houses of several levels.
func TestRandomRoutesOnSeveralLevels(t *testing.T) {
	kinds, routed := map[ArcKind]int{}, 0
	for seed := range uint64(randomStoreys) {
		res := storeyResult(t, seed)
		routesInTheirPlaces(t, seed, res)
		for i := range res.Routes {
			if res.Routes[i].Blocked == nil {
				routed++
			}
			for _, l := range res.Routes[i].Legs {
				kinds[l.Kind]++
			}
		}
	}
	t.Logf("%d drops routed; legs by kind %v", routed, kinds)
	if kinds[SoleArc] == 0 || kinds[PlateArc] == 0 {
		t.Error("no route goes from one level to another")
	}
}

// And for the samples, all of which have a way for every drop.
func TestSampleRoutesInTheirPlaces(t *testing.T) {
	for i, name := range []string{"corner-house", "long-roof", "two-storeys", "split-level", "plaster-house", "masonry-bungalow", "small-office"} {
		res := solved(t, sample(t, name))
		routesInTheirPlaces(t, uint64(i), res)
		if res.Stops() {
			t.Errorf("%s has a finding that stops", name)
		}
	}
}
