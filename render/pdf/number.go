package pdf

import (
	"strconv"
	"strings"

	"topplate/render/sheet"
)

// pointsPerMM is the number of points, of which an inch has 72, to a
// millimetre.
const pointsPerMM = 72 / 25.4

// millimetres is p in millimetres.
func millimetres(p sheet.Paper) float64 { return float64(p) / float64(sheet.MM) }

// num writes p in millimetres, exactly and as short as can be. The format
// knows no exponents.
func num(p sheet.Paper) string {
	sign := ""
	if p < 0 {
		sign, p = "-", -p
	}
	text := sign + strconv.FormatInt(int64(p/sheet.MM), 10)
	if rest := p % sheet.MM; rest != 0 {
		text += "." + strings.TrimRight(strconv.FormatInt(int64(rest+sheet.MM), 10)[1:], "0")
	}
	return text
}

func pair(p sheet.Point) string { return num(p.X) + " " + num(p.Y) }

// real writes a number that is no length on paper, with nine decimals.
func real(x float64) string { return strconv.FormatFloat(x, 'f', 9, 64) }

// colour writes the three parts of a colour, each from 0 to 1.
func colour(c sheet.Colour) string {
	r, g, b := c.RGB()
	part := func(v uint8) string { return strconv.FormatFloat(float64(v)/255, 'f', 4, 64) }
	return part(r) + " " + part(g) + " " + part(b)
}
