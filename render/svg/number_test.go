package svg

import (
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"topplate/render/sheet"
)

func TestNum(t *testing.T) {
	for _, c := range []struct {
		p    sheet.Paper
		want string
	}{
		{0, "0"},
		{-0, "0"},
		{1, "0.001"},
		{-1, "-0.001"},
		{50, "0.05"},
		{500, "0.5"},
		{-500, "-0.5"},
		{1000, "1"},
		{279_400, "279.4"},
		{-12_050, "-12.05"},
		{10_000_000, "10000"},
	} {
		if got := num(c.p); got != c.want {
			t.Errorf("%d is %s, want %s", c.p, got, c.want)
		}
	}
}

func TestNumReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.Int64Range(-10_000_000, 10_000_000).Draw(t, "p")
		v, err := strconv.ParseFloat(num(sheet.Paper(p)), 64)
		if err != nil || v != float64(p)/1000 {
			t.Fatalf("%d is written %s, which reads %v, %v", p, num(sheet.Paper(p)), v, err)
		}
	})
}

func TestDegrees(t *testing.T) {
	for _, c := range []struct {
		a    sheet.Angle
		want string
	}{{0, "0"}, {sheet.QuarterTurn, "-90"}, {-30 * sheet.Degree, "30"}, {1, "-0.015625"}} {
		if got := degrees(c.a); got != c.want {
			t.Errorf("%d is %s, want %s", c.a, got, c.want)
		}
	}
}

func TestPathData(t *testing.T) {
	pt := sheet.Pt
	for _, c := range []struct{ name, got, want string }{
		{"line", ringData([][]sheet.Point{{pt(0, 0), pt(1500, 2000)}}, false), "M0 0L1.5 2"},
		{"along the axes", ringData([][]sheet.Point{{pt(0, 0), pt(1000, 0), pt(1000, -500)}}, false), "M0 0H1V-0.5"},
		{"two rings", ringData([][]sheet.Point{{pt(0, 0), pt(9, 9)}, {}, {pt(1, 1), pt(2, 3)}}, true), "M0 0L0.009 0.009ZM0.001 0.001L0.002 0.003Z"},
		{"nothing", ringData(nil, true), ""},
		{
			"quarter, counter-clockwise", arcData(sheet.Arc{Radius: 10_000, Sweep: sheet.QuarterTurn}),
			"M10 0A10 10 0 0 0 7.071 -7.071A10 10 0 0 0 0 -10",
		},
		{
			"pie, clockwise", arcData(sheet.Arc{Radius: 10_000, Sweep: -sheet.HalfTurn, Pie: true}),
			"M10 0A10 10 0 0 1 0 10A10 10 0 0 1 -10 0L0 0Z",
		},
	} {
		if c.got != c.want {
			t.Errorf("%s: %s, want %s", c.name, c.got, c.want)
		}
	}
}
