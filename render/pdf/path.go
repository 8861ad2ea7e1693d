package pdf

import (
	"math"
	"strings"

	"topplate/render/sheet"
)

// ringPath is the path of polylines. Rings without a point leave no trace.
func ringPath(rings [][]sheet.Point, closed bool) string {
	var parts []string
	for _, ring := range rings {
		for i, q := range ring {
			operator := "l"
			if i == 0 {
				operator = "m"
			}
			parts = append(parts, pair(q), operator)
		}
		if closed && len(ring) > 0 {
			parts = append(parts, "h")
		}
	}
	return strings.Join(parts, " ")
}

func fullArc(c sheet.Circle) sheet.Arc {
	return sheet.Arc{Centre: c.Centre, Radius: c.Radius, Sweep: sheet.FullTurn}
}

// arcPath is the path of an arc, closed if it is a full circle or a pie.
func arcPath(a sheet.Arc) string {
	sweep := max(-sheet.FullTurn, min(sheet.FullTurn, a.Sweep))
	start := a.Start % sheet.FullTurn
	parts := []string{pair(sheet.Polar(a.Centre, a.Radius, start)), "m"}
	n := pieces(sweep)
	for i := range n {
		from, to := start+sweep*sheet.Angle(i)/n, start+sweep*sheet.Angle(i+1)/n
		parts = append(parts, curve(a.Centre, a.Radius, from, to))
	}
	switch {
	case a.Full():
		parts = append(parts, "h")
	case a.Pie:
		parts = append(parts, pair(a.Centre), "l h")
	}
	return strings.Join(parts, " ")
}

// pieces is the number of curves that an arc is drawn with, each at most an
// eighth of a turn: such a curve leaves the circle by less than five parts in
// a million of the radius.
func pieces(sweep sheet.Angle) sheet.Angle {
	const eighth = sheet.FullTurn / 8
	return max(1, (max(sweep, -sweep)+eighth-1)/eighth)
}

// curve is one Bézier curve along a circle. Its inner control points lie on
// the tangents at its ends, 4/3·tan(t/4) radii away for the angle t (a result
// of plane geometry: the middle of the curve then lies on the circle).
func curve(centre sheet.Point, radius sheet.Paper, from, to sheet.Angle) string {
	k := 4.0 / 3 * math.Tan(float64(to-from)/float64(sheet.FullTurn)*math.Pi/2)
	on := func(at sheet.Angle, k float64) sheet.Point {
		along := sheet.Polar(sheet.Point{}, radius, at+sheet.QuarterTurn)
		p := sheet.Polar(centre, radius, at)
		return p.Add(sheet.Pt(scaled(along.X, k), scaled(along.Y, k)))
	}
	return pair(on(from, k)) + " " + pair(on(to, -k)) + " " + pair(on(to, 0)) + " c"
}

func scaled(p sheet.Paper, k float64) sheet.Paper {
	return sheet.Paper(math.Round(float64(p) * k))
}
