package svg

import (
	"strconv"
	"strings"

	"topplate/render/sheet"
)

// num writes p in millimetres, exactly and as short as can be: "12", "0.35",
// "-0.5". There is no negative zero.
func num(p sheet.Paper) string {
	sign := ""
	if p < 0 {
		sign, p = "-", -p
	}
	whole, rest := p/sheet.MM, p%sheet.MM
	text := sign + strconv.FormatInt(int64(whole), 10)
	if rest == 0 {
		return text
	}
	digits := strconv.FormatInt(int64(rest+sheet.MM), 10)[1:]
	return text + "." + strings.TrimRight(digits, "0")
}

func pair(p sheet.Point) string { return num(p.X) + " " + num(p.Y) }

// degrees writes an angle as SVG measures it, clockwise, exactly.
func degrees(a sheet.Angle) string {
	return strconv.FormatFloat(-float64(a)/float64(sheet.Degree)+0, 'f', -1, 64)
}

// ringData is the path data of polylines.
func ringData(rings [][]sheet.Point, closed bool) string {
	var b strings.Builder
	for _, ring := range rings {
		if len(ring) == 0 {
			continue
		}
		b.WriteString("M" + pair(ring[0]))
		for i, p := range ring[1:] {
			b.WriteString(step(ring[i], p))
		}
		if closed {
			b.WriteByte('Z')
		}
	}
	return b.String()
}

// step is the path data of the side from p to q.
func step(p, q sheet.Point) string {
	switch {
	case p.Y == q.Y:
		return "H" + num(q.X)
	case p.X == q.X:
		return "V" + num(q.Y)
	}
	return "L" + pair(q)
}

// arcData is the path data of an arc that is not a full circle. It goes in two
// parts, neither more than half a turn, so that an arc of nearly a full turn
// does not collapse.
func arcData(a sheet.Arc) string {
	first, last := a.Ends()
	sweep := "0"
	if a.Sweep < 0 {
		sweep = "1"
	}
	radius := num(a.Radius)
	part := func(to sheet.Point) string {
		return "A" + radius + " " + radius + " 0 0 " + sweep + " " + pair(to)
	}
	data := "M" + pair(first) + part(a.Middle()) + part(last)
	if a.Pie {
		data += "L" + pair(a.Centre) + "Z"
	}
	return data
}
