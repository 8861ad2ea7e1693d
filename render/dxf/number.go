package dxf

import (
	"strconv"
	"strings"

	"topplate/plan/measure"
	"topplate/render/sheet"
)

// length writes what a length on paper is in the house.
func (d *drawing) length(p sheet.Paper) string { return d.real(d.View.Scale.Real(p)) }

// real writes a length of the house in the units of the drawing: millimetres
// exactly, inches to the millionth.
func (d *drawing) real(l measure.Length) string {
	if d.Units == measure.Metric {
		return millionths(int64(l / measure.Nanometre))
	}
	return millionths(microInches(int64(l / measure.Nanometre)))
}

// microInches converts from nanometres, of which 25.4 are a millionth of an
// inch, rounded to nearest.
func microInches(nm int64) int64 {
	if nm < 0 {
		return -microInches(-nm)
	}
	return (nm*10 + 127) / 254
}

// millionths writes n/1 000 000 with at least one decimal.
func millionths(n int64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	digits := strings.TrimRight(strconv.FormatInt(n%1_000_000+1_000_000, 10)[1:], "0")
	if digits == "" {
		digits = "0"
	}
	return sign + strconv.FormatInt(n/1_000_000, 10) + "." + digits
}

// degrees writes an angle from 0 up to 360 degrees, exactly.
func degrees(a sheet.Angle) string {
	a = (a%sheet.FullTurn + sheet.FullTurn) % sheet.FullTurn
	return millionths(int64(a) * 1_000_000 / int64(sheet.Degree))
}

// place is where a point of the sheet lies in the house, with Y up.
func (d *drawing) place(p sheet.Point) (x, y measure.Length) {
	off := p.Sub(d.View.To)
	return d.View.From.X + d.View.Scale.Real(off.X), d.View.From.Y - d.View.Scale.Real(off.Y)
}

// point writes a point: the codes of its parts are 10, 20 and 30, and n more.
func (d *drawing) point(t *tags, n int, p sheet.Point) {
	x, y := d.place(p)
	t.add(10+n, d.real(x))
	t.add(20+n, d.real(y))
	t.add(30+n, "0.0")
}

// flatPoint writes a point that has no height.
func (d *drawing) flatPoint(t *tags, p sheet.Point) {
	x, y := d.place(p)
	t.add(10, d.real(x))
	t.add(20, d.real(y))
}
