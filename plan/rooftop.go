package plan

import (
	"math"
	"regexp"
	"strconv"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/roof"
	"topplate/plan/source"
)

// roof reads [roof] and builds it over the outer walls.
func (l *houseLoader) roof(root *source.Table) {
	t, ok := root.Table("roof", source.Required)
	if !ok {
		return
	}
	r := l.house.Roof
	r.Pos = t.Pos()
	kind, okKind := t.Choice("kind", source.Required, "hip", "gable")
	pitch, okPitch := l.pitch(t)
	overhang, okOverhang := length(t, "overhang", source.Required, overhangs)
	okFraming := l.roofFraming(t, r)
	okGables := l.gables(t, kind)
	r.Pitch, r.Overhang, r.Width = pitch, overhang, l.std.studWidth
	r.Spacing = lengthOr(t, "spacing", onCentre, l.house.Attic.Spacing)
	l.firstRafters(t, r)
	if okKind && okPitch && okOverhang && okFraming && okGables && l.placed {
		l.build(t, r)
	}
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
	if l.placed {
		r.Framing.PlateWidth = l.house.Walls[l.outerFirst].StudDepth
	}
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
	r.Framing = roof.Framing{Kind: roof.Truss, Depth: chord, PlateWidth: r.Framing.PlateWidth, Heel: heel}
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
		if w < l.outerFirst || w >= l.outerFirst+len(l.outer.legs) {
			array.Errorf(key, "found %q, which is not a wall of the outer run; want %s", l.house.Walls[w].ID, l.outerNames()).
				Note(l.house.Walls[w].Pos, "%s is taped here", l.house.Walls[w].ID)
			ok = false
			continue
		}
		l.house.Walls[w].Gable = true
	}
	return ok
}

// outerNames lists the walls of the outer run.
func (l *houseLoader) outerNames() string {
	return "one of " + quoted(l.wallNames.ids[l.outerFirst:l.outerFirst+len(l.outer.legs)])
}

// firstRafters reads where rafters stand on either axis. Those that are side
// by side with the joists stand on them unless the file says otherwise; the
// others are laid out from the middle of the house.
func (l *houseLoader) firstRafters(t *source.Table, r *Roof) {
	b, a := l.house.PlateLine.Bounds(), l.house.Attic
	x, y := middle(b.Min.X, b.Max.X)+r.Spacing/2, middle(b.Min.Y, b.Max.Y)+r.Spacing/2
	if a.AlongY {
		x = a.First
	} else {
		y = a.First
	}
	r.FirstX = lengthOr(t, "first_x", coordinates, x)
	r.FirstY = lengthOr(t, "first_y", coordinates, y)
}

// build makes the roof.
func (l *houseLoader) build(t *source.Table, r *Roof) {
	outline, gable := l.outer.roofEdges(func(leg int) bool { return l.house.Walls[l.outerFirst+leg].Gable })
	surface, err := roof.New(roof.Spec{Outline: outline, Gable: gable, Pitch: r.Pitch, Overhang: r.Overhang, Framing: r.Framing})
	if err != nil {
		t.Errorf("kind", "no roof can be made over the outer walls: %v", err)
		return
	}
	r.Surface = surface
}

// roofEdges is the outer face of the frames with a vertex wherever a gable
// begins or ends, and which of its edges are gables.
func (r *ring) roofEdges(isGable func(leg int) bool) (outline geom.Polygon, gable []bool) {
	corners := r.outline(frame)
	for k, side := range r.sides {
		outline, gable = append(outline, corners[k]), append(gable, isGable(side[0]))
		for i, leg := range side[1:] {
			if g := isGable(leg); g != gable[len(gable)-1] {
				outline, gable = append(outline, r.between(side[i], leg)), append(gable, g)
			}
		}
	}
	return outline, gable
}

// between is the point of the outer face of the frames where two legs in line
// meet.
func (r *ring) between(i, j int) geom.Point {
	p, q := &r.legs[i], &r.legs[j]
	at := measure.Length(0)
	for _, c := range [2]measure.Length{p.taped.lo, p.taped.hi} {
		if c == q.taped.lo || c == q.taped.hi {
			at = c
		}
	}
	if p.heading.AlongY() {
		return geom.Point{X: r.outerFace(i, frame), Y: at}
	}
	return geom.Point{X: at, Y: r.outerFace(i, frame)}
}
