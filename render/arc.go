package render

import "topplate/render/sheet"

// halfArc is how far an arc of a tape is drawn to either side of its hole, and
// widestArc the most that it turns there, for a hole close to its mark.
const (
	halfArc   = 6 * sheet.MM
	widestArc = 60 * sheet.Degree
)

// drawArc draws the short arc about a mark that a tape of length r on paper
// draws at the place of a hole, and returns it.
func drawArc(g *sheet.Group, mark, at sheet.Point, r sheet.Paper) sheet.Arc {
	// An arc of length s turns by s/r radians: 3667/64 of a degree are one.
	const radian = 3667
	half := widestArc
	if r > 0 {
		half = min(half, sheet.Angle(radian*halfArc/r))
	}
	a := sheet.Arc{Pen: sheet.PenTape, Centre: mark, Radius: r, Start: bearing(mark, at) - half, Sweep: 2 * half}
	g.Add(a)
	return a
}

// bearing is the direction from p to q on the sheet, to within 1/64 of a degree.
// It is found with whole numbers only, so that every machine draws the same.
func bearing(p, q sheet.Point) sheet.Angle {
	d := q.Sub(p)
	var quadrant sheet.Angle
	switch {
	case d.X > 0 && d.Y <= 0:
		quadrant = 0
	case d.X <= 0 && d.Y < 0:
		quadrant = sheet.QuarterTurn
	case d.X < 0:
		quadrant = sheet.HalfTurn
	case d.Y > 0:
		quadrant = sheet.HalfTurn + sheet.QuarterTurn
	}
	lo, hi := sheet.Angle(0), sheet.QuarterTurn-1
	for lo < hi {
		mid := (lo + hi + 1) / 2
		// Angles grow to the left of the way there, and Turn to the right.
		if sheet.Turn(sheet.Point{}, sheet.Polar(sheet.Point{}, sheet.MaxCoordinate, quadrant+mid), d) <= 0 {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return quadrant + lo
}
