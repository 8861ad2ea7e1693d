package sheet

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// An architect's scale of a/b inch to the foot is 1 to 12b/a.
func TestImperialScales(t *testing.T) {
	want := map[string]int64{
		"1″ = 1′-0″": 12, "3/4″ = 1′-0″": 16, "1/2″ = 1′-0″": 24, "3/8″ = 1′-0″": 32, "1/4″ = 1′-0″": 48,
		"3/16″ = 1′-0″": 64, "1/8″ = 1′-0″": 96, "3/32″ = 1′-0″": 128, "1/16″ = 1′-0″": 192, "1/32″ = 1′-0″": 384,
	}
	for _, s := range Scales(measure.Imperial) {
		if s.Den != want[s.Name] {
			t.Errorf("%s is 1:%d, want 1:%d", s.Name, s.Den, want[s.Name])
		}
	}
	for _, sys := range []measure.System{measure.Imperial, measure.Metric} {
		if !slices.IsSortedFunc(Scales(sys), func(a, b Scale) int { return int(a.Den - b.Den) }) {
			t.Errorf("the scales of system %d are not sorted", sys)
		}
	}
}

// The reductions of ISO 5455:1979, 5.1, are 1, 2 or 5 times a power of ten; 1:75
// is the one that is habit.
func TestMetricScales(t *testing.T) {
	for _, s := range Scales(measure.Metric) {
		d := s.Den
		for d%10 == 0 {
			d /= 10
		}
		if d != 1 && d != 2 && d != 5 && s.Den != 75 {
			t.Errorf("%s is not of ISO 5455", s.Name)
		}
	}
}

func TestScalePaper(t *testing.T) {
	quarter, fifty := Scale{"", 48}, Scale{"", 50}
	for _, c := range []struct {
		scale Scale
		real  measure.Length
		want  Paper
	}{
		{quarter, measure.Foot, Inch / 4},
		{quarter, 100 * measure.Foot, 25 * Inch},
		{quarter, measure.Inch / 16, 33}, // 33.07
		{fifty, measure.Metre, 20 * MM},
		{fifty, 25 * measure.Micrometre, 1}, // a half goes away from zero
		{fifty, -25 * measure.Micrometre, -1},
		{fifty, 24 * measure.Micrometre, 0},
		{fifty, measure.MaxParsed, 2_000_000 * MM},
	} {
		if got := c.scale.Paper(c.real); got != c.want {
			t.Errorf("%v at 1:%d is %d, want %d", c.real, c.scale.Den, got, c.want)
		}
	}
}

func TestScaleThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(append(Scales(measure.Imperial), Scales(measure.Metric)...)).Draw(t, "scale")
		p := Paper(rapid.Int64Range(-10_000_000, 10_000_000).Draw(t, "paper"))
		if got := s.Paper(s.Real(p)); got != p {
			t.Fatalf("%d at %s comes back as %d", p, s.Name, got)
		}
	})
}

// A house of 40 by 28 ft on 10 by 7 in is exactly 1/4 in to the foot; a
// nanometre more needs 3/16.
func TestFitScale(t *testing.T) {
	for _, c := range []struct {
		sys           measure.System
		width, height measure.Length
		paperWidth    Paper
		paperHeight   Paper
		want          int64
		ok            bool
	}{
		{measure.Imperial, 40 * measure.Foot, 28 * measure.Foot, 10 * Inch, 7 * Inch, 48, true},
		{measure.Imperial, 40*measure.Foot + 1, 28 * measure.Foot, 10 * Inch, 7 * Inch, 64, true},
		{measure.Imperial, 10 * measure.Foot, 28*measure.Foot + 1, 10 * Inch, 7 * Inch, 64, true},
		{measure.Metric, 12 * measure.Metre, 9 * measure.Metre, 250 * MM, 180 * MM, 50, true},
		{measure.Metric, 200 * measure.Metre, 9 * measure.Metre, 250 * MM, 180 * MM, 500, false},
		{measure.Metric, 0, 0, 250 * MM, 180 * MM, 10, true},
	} {
		s, ok := FitScale(c.sys, c.width, c.height, c.paperWidth, c.paperHeight)
		if s.Den != c.want || ok != c.ok {
			t.Errorf("%v by %v: 1:%d, %v; want 1:%d, %v", c.width, c.height, s.Den, ok, c.want, c.ok)
		}
	}
}

func TestView(t *testing.T) {
	m := measure.Metre
	house := geom.Rect{Min: geom.Point{X: 2 * m, Y: 1 * m}, Max: geom.Point{X: 12 * m, Y: 9 * m}}
	v, ok := FitView(measure.Metric, house, Bx(10*MM, 20*MM, 240*MM, 180*MM))
	if !ok || v.Scale.Den != 50 {
		t.Fatalf("scale 1:%d, %v; want 1:50", v.Scale.Den, ok)
	}
	if got, want := v.Box(house), BoxAround(Pt(130*MM, 110*MM), 200*MM, 160*MM); got != want {
		t.Errorf("the house lies in %v, want %v", got, want)
	}
	if got, want := v.Point(house.Min), Pt(30*MM, 190*MM); got != want {
		t.Errorf("its south-west corner is at %v, want the bottom left %v", got, want)
	}
	if got := v.Points([]geom.Point{house.Max}); len(got) != 1 || got[0] != Pt(230*MM, 30*MM) {
		t.Errorf("its north-east corner is at %v, want the top right", got)
	}
	if got := v.Length(m); got != 20*MM {
		t.Errorf("a metre is %d, want 20 mm", got)
	}
}
