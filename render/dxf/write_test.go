package dxf_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
	"topplate/render"
	"topplate/render/dxf"
	"topplate/render/sheet"
	"topplate/route"
	"topplate/route/fix"
	"topplate/route/work"
)

const mm = sheet.MM

// half is a view at 1:48 that puts a house point of 100 by 200 ft at 100, 100
// mm.
var half = sheet.View{
	Scale: sheet.Scale{Den: 48},
	From:  geom.Point{X: 100 * measure.Foot, Y: 200 * measure.Foot},
	To:    sheet.Pt(100*mm, 100*mm),
}

func written(t testing.TB, s *sheet.Sheet, o dxf.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := dxf.Write(&b, s, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// everything is a sheet with each kind of item.
func everything() *sheet.Sheet {
	s := sheet.New("all", "Every kind of item", sheet.A3)
	walls := s.Group("walls", "walls", "Walls")
	walls.Polygon(sheet.PenWall, half.Box(geom.Rect{Min: half.From, Max: half.From.Add(geom.Point{X: 12 * measure.Foot, Y: 6 * measure.Foot})}).Corners())
	walls.Group("", "", "").Line(sheet.PenCableHidden, sheet.Pt(100*mm, 100*mm), sheet.Pt(110*mm, 90*mm))
	symbols := s.Group("", "symbol", "")
	symbols.Polygon(sheet.PenSolid, sheet.Bx(10*mm, 10*mm, 4*mm, 2*mm).Corners())
	symbols.Polygon(sheet.PenSolid, sheet.Bx(10*mm, 10*mm, 4*mm, 2*mm).Corners()[1:])
	symbols.Polygon(sheet.PenMask, sheet.Bx(10*mm, 10*mm, 4*mm, 2*mm).Corners())
	symbols.Circle(sheet.PenSolid, sheet.Pt(20*mm, 20*mm), 2*mm)
	symbols.Circle(sheet.PenHole, sheet.Pt(30*mm, 20*mm), 3*mm)
	symbols.Polyline(sheet.PenHidden, sheet.Pt(0, 0), sheet.Pt(1*mm, 0), sheet.Pt(1*mm, 0), sheet.Pt(1*mm, 2*mm))
	symbols.Polyline(sheet.PenDoor, sheet.Pt(0, 0))
	symbols.Polyline(sheet.PenDoor)
	arcs := symbols.Group("", "arc", "")
	arcs.Add(
		sheet.Arc{Pen: sheet.PenSwing, Centre: sheet.Pt(40*mm, 40*mm), Radius: 5 * mm, Start: 30 * sheet.Degree, Sweep: sheet.QuarterTurn},
		sheet.Arc{Pen: sheet.PenSwing, Centre: sheet.Pt(60*mm, 40*mm), Radius: 5 * mm, Start: -20 * sheet.Degree, Sweep: -50 * sheet.Degree, Pie: true},
		sheet.Arc{Pen: sheet.PenSwing, Centre: sheet.Pt(80*mm, 40*mm), Radius: 5 * mm, Sweep: -2 * sheet.FullTurn},
	)
	clipped := s.Group("", "", "")
	clipped.Clip = sheet.Bx(10*mm, 60*mm, 10*mm, 10*mm).Corners()
	clipped.Line(sheet.PenCable, sheet.Pt(0, 65*mm), sheet.Pt(200*mm, 65*mm))
	clipped.Rect(sheet.PenThin, sheet.Bx(15*mm, 65*mm, 10*mm, 10*mm))
	clipped.Circle(sheet.PenHole, sheet.Pt(100*mm, 65*mm), mm)
	clipped.Text(sheet.LetterNote, sheet.Pt(15*mm, 62*mm), sheet.Start, "in")
	clipped.Text(sheet.LetterNote, sheet.Pt(5*mm, 62*mm), sheet.Start, "out")
	texts := s.Group("", "label", "")
	texts.Text(sheet.LetterCableTag, sheet.Pt(50*mm, 50*mm), sheet.End, "K1")
	texts.Add(sheet.Text{Lettering: sheet.LetterRoom, At: sheet.Pt(50*mm, 80*mm), Align: sheet.Middle, Level: sheet.OnHalf, Turn: sheet.QuarterTurn, Words: "12′ ½"})
	texts.Text(sheet.LetterNote, sheet.Pt(0, 0), sheet.Start, "\x00")
	return s
}

// drawings are all that is read back, by name.
func drawings(t *testing.T) map[string][]byte {
	t.Helper()
	noText := everything()
	noText.Groups = noText.Groups[:2]
	all := map[string][]byte{
		"inches":      written(t, everything(), dxf.Options{View: half}),
		"millimetres": written(t, everything(), dxf.Options{View: half, Units: measure.Metric}),
		"no text":     written(t, noText, dxf.Options{View: half}),
		"omit":        written(t, everything(), dxf.Options{View: half, Omit: []string{"walls", "arc"}}),
		"classes":     written(t, classSheet(), dxf.Options{View: half}),
		"words":       written(t, wordSheet(), dxf.Options{View: half}),
		"empty":       written(t, sheet.New("s", "Nothing", sheet.A4), dxf.Options{View: half}),
	}
	real, err := samples()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range real {
		u := s.job.House.Units
		all[s.name] = written(t, s.sheet, dxf.Options{View: sheet.View{Scale: scaleOf(t, s.sheet, u)}, Units: u, Omit: paper})
	}
	return all
}

func TestCountsPerLayer(t *testing.T) {
	f := readAll(t)["inches"]
	got := map[string]int{}
	for _, e := range f.Entities {
		got[e.Layer+" "+e.Type]++
	}
	want := map[string]int{
		"WALLS POLYLINE": 1, "WALLS LINE": 1,
		"SYMBOL SOLID": 2, "SYMBOL POLYLINE": 2, "SYMBOL CIRCLE": 1,
		"ARC ARC": 2, "ARC POLYLINE": 1, "ARC CIRCLE": 1,
		"SHEET LINE": 3, "SHEET TEXT": 1,
		"LABEL TEXT": 2,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	layers := []string{"0", "WALLS", "SYMBOL", "ARC", "SHEET", "LABEL"}
	if diff := cmp.Diff(layers, f.Layers[:len(layers)]); diff != "" {
		t.Errorf("layers: -want +got:\n%s", diff)
	}
}

// A wall of 12 by 6 ft at 100, 200 ft of the house is 144 by 72 in at 1200,
// 2400 in, and 3657.6 by 1828.8 mm; a micrometre of paper is 48 of the house.
func TestWallHasItsRealSize(t *testing.T) {
	for i, unit := range []float64{1, 25.4} {
		f := readAll(t)[[]string{"inches", "millimetres"}[i]]
		wall := f.Entities[0]
		want := [][2]float64{{1200, 2472}, {1344, 2472}, {1344, 2400}, {1200, 2400}}
		for j, p := range want {
			if off := math.Hypot(wall.Points[j][0]-p[0]*unit, wall.Points[j][1]-p[1]*unit); off > 0.002*unit {
				t.Errorf("unit of %g mm: corner %v, want %v", unit, wall.Points[j], p)
			}
		}
		if !wall.Closed || wall.Layer != "WALLS" || wall.Colour != 7 {
			t.Errorf("the wall is %+v", wall)
		}
		header := map[string]float64{"$INSUNITS": []float64{1, 4}[i], "$MEASUREMENT": float64(i), "$LUNITS": 2, "$LTSCALE": 1}
		if diff := cmp.Diff(header, f.Header); diff != "" {
			t.Errorf("header: -want +got:\n%s", diff)
		}
	}
}

// at is where a point of the sheet lies in the view half, in millimetres.
func at(x, y float64) [2]float64 {
	const foot = 304.8
	return [2]float64{100*foot + (x-100)*48, 200*foot - (y-100)*48}
}

func TestShapes(t *testing.T) {
	f := readAll(t)["millimetres"]
	of := func(layer, kind string, n int) entity {
		for _, e := range f.Entities {
			if e.Layer == layer && e.Type == kind {
				if n--; n < 0 {
					return e
				}
			}
		}
		t.Fatalf("no %s on %s", kind, layer)
		return entity{}
	}
	const k = 48.0 // millimetres of the house to one of paper
	for _, c := range []struct {
		name string
		got  entity
		want entity
	}{
		{"hidden cable", of("WALLS", "LINE", 0), entity{Linetype: "CABLE-HIDDEN", Colour: 5, Points: [][2]float64{at(100, 100), at(110, 90)}}},
		{"rectangle, the last two corners crosswise", of("SYMBOL", "SOLID", 0), entity{Colour: 7, Points: [][2]float64{at(10, 10), at(14, 10), at(10, 12), at(14, 12)}}},
		{"triangle, the last corner twice", of("SYMBOL", "SOLID", 1), entity{Colour: 7, Points: [][2]float64{at(14, 10), at(14, 12), at(10, 12), at(10, 12)}}},
		{"disc, a ring as wide as its radius", of("SYMBOL", "POLYLINE", 0), entity{
			Colour: 7, Points: [][2]float64{at(19, 20), at(21, 20)}, Bulges: []float64{1, 1}, Closed: true, Width: 2 * k,
		}},
		{"circle", of("SYMBOL", "CIRCLE", 0), entity{Colour: 7, Points: [][2]float64{at(30, 20)}, Radius: 3 * k}},
		{"polyline without its double point", of("SYMBOL", "POLYLINE", 1), entity{
			Linetype: "HIDDEN", Colour: 7, Points: [][2]float64{at(0, 0), at(1, 0), at(1, 2)}, Bulges: []float64{0, 0, 0},
		}},
		{"arc", of("ARC", "ARC", 0), entity{Colour: 7, Points: [][2]float64{at(40, 40)}, Radius: 5 * k, Start: 30, End: 120}},
		{"arc, drawn clockwise", of("ARC", "ARC", 1), entity{Colour: 7, Points: [][2]float64{at(60, 40)}, Radius: 5 * k, Start: 290, End: 340}},
		{"sides of the pie", of("ARC", "POLYLINE", 0), entity{
			Colour: 7, Bulges: []float64{0, 0, 0},
			Points: [][2]float64{at(60+5*cos(290), 40-5*sin(290)), at(60, 40), at(60+5*cos(340), 40-5*sin(340))},
		}},
		{"line, clipped", of("SHEET", "LINE", 0), entity{Colour: 5, Points: [][2]float64{at(10, 65), at(20, 65)}}},
		{"top of a rectangle, clipped", of("SHEET", "LINE", 1), entity{Colour: 7, Points: [][2]float64{at(15, 65), at(20, 65)}}},
		{"left side of it", of("SHEET", "LINE", 2), entity{Colour: 7, Points: [][2]float64{at(15, 70), at(15, 65)}}},
		{"text that is clipped", of("SHEET", "TEXT", 0), entity{Colour: 7, Points: [][2]float64{at(15, 62)}, Text: "in", Height: 2.5 * k}},
		{"text to the end", of("LABEL", "TEXT", 0), entity{Colour: 5, Text: "K1", Height: 2.5 * k, Align: 2, Points: [][2]float64{at(50, 50), at(50, 50)}}},
		{"text up the sheet, its middle on the line", of("LABEL", "TEXT", 1), entity{
			Colour: 7, Text: "12′ ½", Height: 3.5 * k, Rotation: 90, Align: 1, Points: [][2]float64{at(51.75, 80), at(51.75, 80)},
		}},
	} {
		c.want.Layer, c.want.Type = c.got.Layer, c.got.Type
		if c.got.Align != 0 {
			// Where the first letter begins depends on its font; it is before.
			if c.got.Points[0] == c.got.Points[1] {
				t.Errorf("%s starts where it ends", c.name)
			}
			c.got.Points[0] = c.want.Points[0]
		}
		if diff := cmp.Diff(c.want, c.got, near(k*0.001)); diff != "" {
			t.Errorf("%s: -want +got:\n%s", c.name, diff)
		}
	}
}

func sin(degrees float64) float64 { return math.Sin(degrees / 180 * math.Pi) }
func cos(degrees float64) float64 { return math.Cos(degrees / 180 * math.Pi) }

// near compares numbers with room for the rounding of the paper.
func near(slack float64) cmp.Option {
	return cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= slack })
}

// The dashes of the pen for hidden edges are 12 and 3 times its width of 0.25
// mm (ISO 128-20), so 144 and 36 mm at 1:48.
func TestDashesAreToScale(t *testing.T) {
	f := readAll(t)["millimetres"]
	if diff := cmp.Diff([]float64{144, -36}, f.Linetypes["HIDDEN"]); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	for _, e := range f.Entities {
		if _, ok := f.Linetypes[e.Linetype]; !ok && e.Linetype != "" && e.Linetype != "BYLAYER" {
			t.Errorf("%+v has a line type that is not in the table", e)
		}
	}
}

// The extents in the header are those of what ezdxf reads.
func TestExtents(t *testing.T) {
	f := readAll(t)["no text"]
	low, high := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, e := range f.Entities {
		r := e.Radius
		if e.Width > 0 {
			r = e.Width / 2
		}
		if e.Type == "ARC" {
			continue // lies inside of the others here
		}
		for _, p := range e.Points {
			for i := range p {
				low[i], high[i] = min(low[i], p[i]-r), max(high[i], p[i]+r)
			}
		}
	}
	for _, got := range [][2][2]float64{f.Extents, f.Limits} {
		if diff := cmp.Diff([2][2]float64{low, high}, got, near(1e-5)); diff != "" {
			t.Errorf("-want +got:\n%s", diff)
		}
	}
}

// paper are the classes of groups that belong to the sheet of paper.
var paper = []string{"frame", "column", "title-block", "scale", "north"}

// A sample is a sheet of a job as it is written to a drawing.
type sample struct {
	name  string
	job   *plan.Job
	sheet *sheet.Sheet
}

var samples = sync.OnceValues(func() ([]sample, error) {
	jobs, err := filepath.Glob("../../samples/*/job.toml")
	if err != nil {
		return nil, err
	}
	var all []sample
	for _, path := range jobs {
		job, list := plan.LoadJob(path, source.ReadFile)
		if list.HasErrors() {
			return nil, fmt.Errorf("%s does not load", path)
		}
		res, err := route.Solve(job)
		if err != nil {
			return nil, err
		}
		for _, s := range render.Sheets(&work.Work{Result: res, Fixes: fix.Holes(res)}) {
			if s.View == (sheet.View{}) {
				continue // a table has no place in the house
			}
			all = append(all, sample{path + " " + s.ID, job, s})
		}
	}
	return all, nil
})

// The real sheets: the audit finds nothing, each text is on its layer, and
// each wall is as large as in the house.
func TestSamples(t *testing.T) {
	all, err := samples()
	if err != nil || len(all) < 4 {
		t.Fatalf("%d sheets, %v", len(all), err)
	}
	for _, s := range all {
		f := readAll(t)[s.name]
		texts(t, s.sheet, f)
		if s.sheet.ID == "attic" {
			wallsAreAsLarge(t, f, s.job.House)
		}
	}
}

// scaleOf reads the scale that is printed on a sheet.
func scaleOf(t *testing.T, s *sheet.Sheet, u measure.System) sheet.Scale {
	t.Helper()
	for _, g := range s.Groups {
		for _, scale := range sheet.Scales(u) {
			if g.Title == "Scale "+scale.Name {
				return scale
			}
		}
	}
	t.Fatal("no scale is printed")
	return sheet.Scale{}
}

func texts(t *testing.T, s *sheet.Sheet, f file) {
	t.Helper()
	want, got := map[string]int{}, map[string]int{}
	var count func(g *sheet.Group, class string)
	count = func(g *sheet.Group, class string) {
		if g.Class != "" {
			class = g.Class
		}
		for _, item := range g.Items {
			switch item := item.(type) {
			case *sheet.Group:
				count(item, class)
			case sheet.Text:
				want[strings.ToUpper(class)]++
			}
		}
	}
	for _, g := range s.Groups {
		if !slices.Contains(paper, g.Class) {
			count(g, "")
		}
	}
	for _, e := range f.Entities {
		if e.Type == "TEXT" {
			got[e.Layer]++
		}
	}
	if diff := cmp.Diff(want, got); diff != "" || len(want) == 0 {
		t.Errorf("%s: texts per layer: -want +got:\n%s", s.ID, diff)
	}
}

// wallsAreAsLarge compares the outlines of the walls below an attic, which are
// drawn first on their layer, with the house.
func wallsAreAsLarge(t *testing.T, f file, h *plan.House) {
	t.Helper()
	unit := float64(measure.Inch)
	if h.Units == measure.Metric {
		unit = float64(measure.Millimetre)
	}
	// Two roundings to the micrometre on paper, at 1:100 at most.
	slack := 0.1 * float64(measure.Millimetre) / unit
	walls := 0
	for _, e := range f.Entities {
		if e.Layer != "WALLS" || e.Type != "POLYLINE" || walls == len(h.Walls) {
			continue
		}
		frame := h.Walls[walls].Frame
		walls++
		low, high := bounds(e.Points)
		want := [2]float64{float64(frame.Width()) / unit, float64(frame.Height()) / unit}
		if diff := cmp.Diff(want, [2]float64{high[0] - low[0], high[1] - low[1]}, near(slack)); diff != "" {
			t.Errorf("size of wall %d: -want +got:\n%s", walls, diff)
		}
	}
	if walls != len(h.Walls) || walls == 0 {
		t.Errorf("%d walls, want %d", walls, len(h.Walls))
	}
}

func bounds(points [][2]float64) (low, high [2]float64) {
	low, high = points[0], points[0]
	for _, p := range points {
		for i := range p {
			low[i], high[i] = min(low[i], p[i]), max(high[i], p[i])
		}
	}
	return low, high
}

var legalName = regexp.MustCompile(`^[A-Z0-9$_-]{1,31}$`)

// classes look alike, are reserved or can't be names.
var classes = []string{
	"wall", "WALL", "w all", "w/all", "w_all", "0", "sheet", "defpoints", "éé", "ee", "部屋", "\x00", "\r\n 0\r\n", " ", "$-_9",
	strings.Repeat("a", 40), strings.Repeat("a", 41), strings.Repeat("é", 40),
	"",
}

// classSheet has a line in a group of each class.
func classSheet() *sheet.Sheet {
	s := sheet.New("s", "Names", sheet.A4)
	for _, c := range classes {
		s.Group("", c, "").Line(sheet.PenThin, sheet.Pt(0, 0), sheet.Pt(mm, mm))
	}
	return s
}

func TestLayerNames(t *testing.T) {
	f := readAll(t)["classes"]
	seen := map[string]bool{}
	for _, e := range f.Entities {
		if !legalName.MatchString(e.Layer) || seen[e.Layer] || e.Layer == "0" || e.Layer == "DEFPOINTS" {
			t.Errorf("the layer %q is not legal, not free or used twice", e.Layer)
		}
		seen[e.Layer] = true
	}
	if len(seen) != len(classes) || !seen["WALL"] || !seen["SHEET"] {
		t.Errorf("%d layers, want %d: %v", len(seen), len(classes), seen)
	}
}

func TestOmit(t *testing.T) {
	f := readAll(t)["omit"]
	for _, e := range f.Entities {
		if e.Layer == "WALLS" || e.Layer == "ARC" {
			t.Errorf("%+v is not left out", e)
		}
	}
	if len(f.Entities) == 0 || slices.Contains(f.Layers, "WALLS") {
		t.Errorf("%d entities, layers %v", len(f.Entities), f.Layers)
	}
}

func TestEmptySheet(t *testing.T) {
	if f, ok := readAll(t)["empty"]; !ok || len(f.Entities) != 0 {
		t.Errorf("%v, %v", ok, f.Entities)
	}
}

func TestRefusesWhatCannotBeWritten(t *testing.T) {
	bad := everything()
	bad.Groups[0].Add(sheet.Line{Pen: 255})
	for name, c := range map[string]struct {
		s   *sheet.Sheet
		den int64
	}{"pen": {bad, 48}, "no scale": {everything(), 0}, "negative": {everything(), -1}, "too small": {everything(), 100_001}} {
		var b bytes.Buffer
		err := dxf.Write(&b, c.s, dxf.Options{View: sheet.View{Scale: sheet.Scale{Den: c.den}}})
		if err == nil || b.Len() != 0 {
			t.Errorf("%s: %d bytes, error %v", name, b.Len(), err)
		}
	}
}

// failing takes n bytes and then fails.
type failing struct{ n int }

var errFull = errors.New("no space left")

func (f *failing) Write(p []byte) (int, error) {
	if f.n -= len(p); f.n < 0 {
		return 0, errFull
	}
	return len(p), nil
}

func TestReportsWriteErrors(t *testing.T) {
	o := dxf.Options{View: half}
	size := len(written(t, everything(), o))
	for _, n := range []int{0, size / 2, size - 1} {
		if err := dxf.Write(&failing{n}, everything(), o); !errors.Is(err, errFull) {
			t.Errorf("after %d bytes of %d: error %v", n, size, err)
		}
	}
	if err := dxf.Write(&failing{size}, everything(), o); err != nil {
		t.Error(err)
	}
}

// Any sheet gives the same ASCII twice: lines by twos, the first a group code.
func TestAnySheetIsPairsOfLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := func() sheet.Point {
			c := rapid.Int64Range(-int64(sheet.MaxCoordinate), int64(sheet.MaxCoordinate))
			return sheet.Pt(sheet.Paper(c.Draw(t, "x")), sheet.Paper(c.Draw(t, "y")))
		}
		angle := func(name string) sheet.Angle { return sheet.Angle(rapid.Int32().Draw(t, name)) }
		s := sheet.New("s", "Any", sheet.A4)
		for range rapid.IntRange(0, 5).Draw(t, "items") {
			g := s.Group("", rapid.String().Draw(t, "class"), "")
			if rapid.Bool().Draw(t, "clipped") {
				g.Clip = []sheet.Point{point(), point(), point()}
			}
			g.Polygon(sheet.PenSolid, []sheet.Point{point(), point(), point(), point()})
			g.Add(sheet.Arc{Centre: point(), Radius: 5 * mm, Start: angle("start"), Sweep: angle("sweep"), Pie: true})
			g.Add(sheet.Text{At: point(), Turn: angle("turn"), Align: sheet.End, Words: rapid.String().Draw(t, "words")})
		}
		o := dxf.Options{View: sheet.View{Scale: sheet.Scale{Den: rapid.Int64Range(1, 100_000).Draw(t, "den")}}}
		var b, again bytes.Buffer
		if dxf.Write(&b, s, o) != nil || dxf.Write(&again, s, o) != nil || !bytes.Equal(b.Bytes(), again.Bytes()) {
			t.Fatal("not written, or not twice the same")
		}
		lines := strings.Split(b.String(), "\r\n")
		if len(lines)%2 != 1 || lines[len(lines)-1] != "" || lines[len(lines)-2] != "EOF" {
			t.Fatalf("%d lines", len(lines))
		}
		for i, line := range lines[:len(lines)-1] {
			code, err := strconv.Atoi(strings.TrimSpace(line))
			if i%2 == 0 && (err != nil || code < 0 || code > 73) {
				t.Fatalf("line %d is no group code: %q", i+1, line)
			}
			if len(line) > 255 || strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r > '~' }) {
				t.Fatalf("line %d: %q", i+1, line)
			}
		}
	})
}

func BenchmarkWrite(b *testing.B) {
	s := everything()
	for range 1000 {
		s.Groups[0].Line(sheet.PenCable, sheet.Pt(5*mm, 20*mm), sheet.Pt(25_123, 20_456))
	}
	for b.Loop() {
		if err := dxf.Write(io.Discard, s, dxf.Options{View: half}); err != nil {
			b.Fatal(err)
		}
	}
}
