package plan

import (
	"math"
	"regexp"
	"slices"
	"strconv"

	"topplate/plan/geom"
	"topplate/plan/roof"
	"topplate/plan/source"
)

// A top is a [roof] while it is not made.
type top struct {
	t     *source.Table
	roof  *Roof
	area  []geom.Rect
	under *Space // the first attic under it, nil if there is none
	level bool   // the file names its level
	ok    bool
}

// readRoofs reads what is said of the roofs that readAttics found.
func (l *houseLoader) readRoofs() {
	for _, r := range l.tops {
		l.readRoof(r)
	}
}

func (l *houseLoader) readRoof(r *top) {
	t := r.t
	kind, okKind := t.Choice("kind", source.Required, "hip", "gable", "flat")
	r.roof.Flat = kind == "flat"
	level, okLevel := l.levelOr(t, "level", 0)
	r.roof.Level, r.level = max(0, level), t.Has("level")
	r.area = areas(t)
	overhang, okOverhang := length(t, "overhang", source.Required, overhangs)
	r.roof.Overhang, r.roof.Width = overhang, l.std.studWidth
	r.ok = okKind && okLevel && okOverhang
	if r.roof.Flat {
		for _, key := range []string{"gables", "pitch", "rafter", "heel", "chord", "spacing", "first_x", "first_y"} {
			if t.Has(key) {
				t.Errorf(key, "found %s of a flat roof, which lies on the joists of its attic; want another kind of roof, or no %s", key, key)
			}
		}
		return
	}
	pitch, okPitch := l.pitch(t)
	r.roof.Pitch = pitch
	okFraming := l.roofFraming(t, r.roof)
	okGables := l.gables(t, kind)
	r.ok = r.ok && okPitch && okFraming && okGables
}

// pitches are the least and the greatest rise over run of a roof that is read
// (common practice, no source).
var pitches = struct{ lowest, steepest float64 }{1.0 / 12, 24.0 / 12}

var pitchRatio = regexp.MustCompile(`^\s*([0-9]{1,4})\s*/\s*([0-9]{1,4})\s*$`)

// pitch reads "5/12", rise over run, or an angle such as "22.5deg".
func (l *houseLoader) pitch(t *source.Table) (roof.Pitch, bool) {
	const want = `rise over run, such as "5/12", or an angle, such as "22.5deg"`
	if t.Kind("pitch") == source.KindNone {
		t.Errorf("pitch", "missing; want %s", want)
		return roof.Pitch{}, false
	}
	text, ok := t.Text("pitch", source.Required)
	if !ok {
		return roof.Pitch{}, false
	}
	p, ok := parsePitch(text)
	if !ok {
		t.Errorf("pitch", "found %.40q; want %s", text, want)
		return p, false
	}
	if s := float64(p.Rise) / float64(p.Run); s < pitches.lowest || s > pitches.steepest {
		t.Errorf("pitch", "found %.40q; want 1/12 to 24/12, about 5deg to 63deg", text)
		return p, false
	}
	return p, true
}

var pitchAngle = regexp.MustCompile(`^\s*([0-9]{1,2}(?:\.[0-9]{1,6})?)\s*(?:deg|°)\s*$`)

func parsePitch(text string) (roof.Pitch, bool) {
	if f := pitchRatio.FindStringSubmatch(text); f != nil {
		rise, _ := strconv.Atoi(f[1])
		run, _ := strconv.Atoi(f[2])
		return roof.Pitch{Rise: rise, Run: run}, run > 0
	}
	f := pitchAngle.FindStringSubmatch(text)
	if f == nil {
		return roof.Pitch{}, false
	}
	// The tangent of an angle is no fraction. A millionth of the run is far
	// below what anybody can measure of a roof.
	const run = 1_000_000
	degrees, _ := strconv.ParseFloat(f[1], 64)
	return roof.Pitch{Rise: int(math.Round(run * math.Tan(degrees*math.Pi/180))), Run: run}, true
}

// roofFraming reads what is under the roof: rafters, or trusses with a heel.
func (l *houseLoader) roofFraming(t *source.Table, r *Roof) bool {
	trussed := t.Has("heel") || t.Has("chord")
	if !trussed {
		depth, ok := lumberDepth(t, "rafter", source.Required, joistSizes, depths)
		r.Framing.Depth = depth
		return ok
	}
	if t.Has("rafter") {
		t.Errorf("rafter", "found a rafter together with a heel or a chord; want rafter for sawn rafters, or heel and chord for trusses")
		return false
	}
	heel, okHeel := length(t, "heel", source.Required, heels)
	chord, okChord := l.std.studDepth, true
	if t.Has("chord") {
		chord, okChord = lumberDepth(t, "chord", source.Required, joistSizes, depths)
	}
	r.Framing = roof.Framing{Kind: roof.Truss, Depth: chord, Heel: heel}
	return okHeel && okChord
}

// gables reads which outer walls end in a gable, and marks them.
func (l *houseLoader) gables(t *source.Table, kind string) bool {
	if kind != "gable" {
		if t.Has("gables") && kind == "hip" {
			t.Errorf("gables", `found gables of a hip roof; want kind = "gable", or no gables`)
		}
		return kind == "hip"
	}
	array, ok := t.Array("gables", source.Required)
	if !ok {
		return false
	}
	if len(array.Keys()) == 0 {
		t.Errorf("gables", `found none; want the walls under the gables, or kind = "hip"`)
		return false
	}
	for _, key := range array.Keys() {
		w, found := l.findWall(array, key, source.Required)
		if !found || !l.placed {
			ok = false
			continue
		}
		if !l.house.Walls[w].Exterior {
			array.Errorf(key, "found %q, which is not a wall of the outer run; want %s", l.house.Walls[w].ID, l.outerNames()).
				Note(l.house.Walls[w].here())
			ok = false
			continue
		}
		l.house.Walls[w].Gable = true
	}
	return ok
}

// outerNames lists the outer walls.
func (l *houseLoader) outerNames() string {
	var ids []string
	for i := range l.house.Walls {
		if l.house.Walls[i].Exterior {
			ids = append(ids, l.house.Walls[i].ID)
		}
	}
	return "one of " + quoted(ids)
}

// setRoofLevels finds on which level's plates each roof stands: the one that
// the file names, or the lowest of those whose attics are under it.
func (l *houseLoader) setRoofLevels() {
	levels := l.house.Levels
	for i, r := range l.tops {
		lowest := -1
		for _, a := range l.attics {
			if a.roof != i {
				continue
			}
			if r.under == nil {
				r.under = a.space
			}
			if lowest < 0 || levels[a.space.Below].Floor < levels[lowest].Floor {
				lowest = a.space.Below
			}
		}
		if lowest < 0 {
			lowest = l.highest()
		}
		if !r.level {
			r.roof.Level = lowest
		}
	}
}

// makeRoof finds the outline of a roof and makes its surface.
func (l *houseLoader) makeRoof(r *top) {
	h := l.house
	if l.placed && r.ok {
		l.roofOutline(r)
	}
	if r.roof.Flat {
		return
	}
	l.firstRafters(r)
	if r.roof.Outline == nil {
		return
	}
	o := &l.outers[r.roof.Level]
	r.roof.Framing.PlateWidth = h.Walls[o.first].StudDepth
	outline, gable, flush := o.ring.roofEdges(r.roof.Outline, func(leg int) bool { return h.Walls[o.first+leg].Gable })
	surface, err := roof.New(roof.Spec{Outline: outline, Gable: gable, Flush: flush, Pitch: r.roof.Pitch, Overhang: r.roof.Overhang, Framing: r.roof.Framing})
	if err != nil {
		r.t.Errorf("kind", "no roof can be made over the outer walls: %v", err)
		return
	}
	r.roof.Surface = surface
}

// roofOutline finds what a roof covers: the outline of its level, or its area
// of it, less what higher levels with roofs of their own take up.
func (l *houseLoader) roofOutline(r *top) {
	v := &l.house.Levels[r.roof.Level]
	if v.PlateLine == nil {
		r.t.Errorf("level", "found a roof on level %s, which has no outer walls", v.ID)
		return
	}
	area := v.area()
	if len(r.area) > 0 {
		area = geom.Intersect(area, l.atPlates(r.area))
	}
	for _, other := range l.tops {
		if w := &l.house.Levels[other.roof.Level]; w.Floor > v.Floor {
			area = geom.Subtract(area, w.area())
		}
	}
	area = geom.Unite(area)
	switch {
	case len(area.Outlines) == 0:
		r.t.Errorf("area", "found a roof over nothing of level %s", v.ID)
	case len(area.Outlines) > 1 || len(area.Holes) > 0:
		r.t.Errorf("area", "found a roof of %s with %s; want area to cut it into roofs of one outline each, such as [{ from = [x, y], to = [x, y] }]",
			counted(len(area.Outlines), "part"), counted(len(area.Holes), "hole"))
	default:
		r.roof.Outline = area.Outlines[0]
		if slices.Equal(r.roof.Outline, geom.Unite(v.area()).Outlines[0]) {
			r.roof.Outline = v.PlateLine
		}
	}
}

// cautionSameRoof reports roofs that cover one place.
func (l *houseLoader) cautionSameRoof() {
	for i, r := range l.tops {
		for _, s := range l.tops[:i] {
			if r.roof.Outline == nil || s.roof.Outline == nil || geom.Intersect(geom.AreaOf(r.roof.Outline), geom.AreaOf(s.roof.Outline)).Empty() {
				continue
			}
			r.t.Errorf("area", "found roof %s where roof %s is; want area to keep them apart", r.roof.ID, s.roof.ID).
				Note(s.roof.Pos, "%s is described here", s.roof.ID)
			break
		}
	}
}

// firstRafters reads where rafters stand on either axis. Those that are side
// by side with the joists stand on them unless the file says otherwise; the
// others are laid out from the middle of the roof.
func (l *houseLoader) firstRafters(r *top) {
	s, t := r.under, r.t
	if s == nil {
		s = &Space{Spacing: l.std.studSpacing}
	}
	r.roof.Spacing = lengthOr(t, "spacing", onCentre, s.Spacing)
	var b geom.Rect
	if r.roof.Outline != nil {
		b = r.roof.Outline.Bounds()
	}
	x, y := middle(b.Min.X, b.Max.X)+r.roof.Spacing/2, middle(b.Min.Y, b.Max.Y)+r.roof.Spacing/2
	if s.AlongY {
		x = s.First
	} else if r.under != nil {
		y = s.First
	}
	r.roof.FirstX = lengthOr(t, "first_x", coordinates, x)
	r.roof.FirstY = lengthOr(t, "first_y", coordinates, y)
}
