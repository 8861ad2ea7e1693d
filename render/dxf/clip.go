package dxf

import (
	"math"
	"slices"

	"topplate/render/sheet"
)

// cut returns the stretches of a polyline that lie inside an outline, to the
// micrometre.
func cut(line, outline []sheet.Point) [][]sheet.Point {
	var all [][]sheet.Point
	for i := 0; i+1 < len(line); i++ {
		for _, part := range cutSide(line[i], line[i+1], outline) {
			last := len(all) - 1
			if last >= 0 && all[last][len(all[last])-1] == part[0] {
				all[last] = append(all[last], part[1])
			} else {
				all = append(all, []sheet.Point{part[0], part[1]})
			}
		}
	}
	return all
}

// cutSide returns the stretches of the side from a to b that lie inside: it is
// cut wherever it crosses the outline, and of each piece, its middle decides.
func cutSide(a, b sheet.Point, outline []sheet.Point) [][2]sheet.Point {
	at := []float64{0, 1}
	for i, p := range outline {
		if t, ok := crossing(a, b, p, outline[(i+1)%len(outline)]); ok {
			at = append(at, t)
		}
	}
	slices.Sort(at)
	var parts [][2]sheet.Point
	for i := 0; i+1 < len(at); i++ {
		if at[i] < at[i+1] && inside(along(a, b, (at[i]+at[i+1])/2), outline) {
			parts = append(parts, [2]sheet.Point{along(a, b, at[i]), along(a, b, at[i+1])})
		}
	}
	return parts
}

// crossing returns how far along from a to b the side from p to q crosses.
func crossing(a, b, p, q sheet.Point) (float64, bool) {
	before, after := sheet.Turn(p, q, a), sheet.Turn(p, q, b)
	left, right := sheet.Turn(a, b, p), sheet.Turn(a, b, q)
	if (before < 0) == (after < 0) || (left < 0) == (right < 0) {
		return 0, false
	}
	return float64(before) / (float64(before) - float64(after)), true
}

// along is the point at t of the way from a to b.
func along(a, b sheet.Point, t float64) sheet.Point {
	d := b.Sub(a)
	return a.Add(sheet.Pt(part(d.X, t), part(d.Y, t)))
}

func part(p sheet.Paper, t float64) sheet.Paper { return sheet.Paper(math.Round(float64(p) * t)) }

// inside reports whether p lies in the outline: a line from it to the right
// crosses an odd number of sides.
func inside(p sheet.Point, outline []sheet.Point) bool {
	in := false
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y > p.Y) == (b.Y > p.Y) {
			continue
		}
		if turn := sheet.Turn(a, b, p); (turn > 0) == (b.Y > a.Y) {
			in = !in
		}
	}
	return in
}
