package sheet

import (
	"math"
	"slices"
	"testing"
)

// A triple is three numbers that make a colour: linear light of the primaries
// of sRGB, XYZ, or L*a*b*.
type triple [3]float64

// A matrix takes one triple to another.
type matrix [3]triple

func (m matrix) of(v triple) (out triple) {
	for i, row := range m {
		out[i] = row[0]*v[0] + row[1]*v[1] + row[2]*v[2]
	}
	return out
}

// times is the matrix that does n first and then m.
func (m matrix) times(n matrix) (out matrix) {
	for i := range 3 {
		for j := range 3 {
			out[i][j] = m[i][0]*n[0][j] + m[i][1]*n[1][j] + m[i][2]*n[2][j]
		}
	}
	return out
}

// cofactors is the transpose of the matrix of cofactors.
func (m matrix) cofactors() (out matrix) {
	for i := range 3 {
		for j := range 3 {
			a, b := (i+1)%3, (i+2)%3
			c, d := (j+1)%3, (j+2)%3
			out[j][i] = m[a][c]*m[b][d] - m[a][d]*m[b][c]
		}
	}
	return out
}

// volume is the determinant: what becomes of a volume of colours.
func (m matrix) volume() (v float64) {
	for j, c := range m.cofactors() {
		v += m[0][j] * c[0]
	}
	return v
}

// inverse is by cofactors; m must have one.
func (m matrix) inverse() (out matrix) {
	out = m.cofactors()
	det := m.volume()
	for i := range 3 {
		for j := range 3 {
			out[i][j] /= det
		}
	}
	return out
}

// toXYZ is the matrix of sRGB (IEC 61966-2-1), for the white of D65.
var toXYZ = matrix{{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}}

// Published simulations of dichromats, on linear light: Machado, Oliveira and
// Fernandes, "A physiologically-based model for simulation of color vision
// deficiency", IEEE TVCG 15 (2009), severity 1.0, from the authors' page of
// matrices as kept in the library colorspacious; and, as a second opinion,
// Viénot, Brettel and Mollon, "Digital video colourmaps for checking the
// legibility of displays by dichromats" (1999), as kept in many programs. Grey
// is the luminance, as a printer without colours takes it.
var visions = []struct {
	name string
	see  matrix
}{
	{"full colour", matrix{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
	{"protanopia", matrix{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
	{"deuteranopia", matrix{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
	{"tritanopia", matrix{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}},
	{"protanopia, 1999", toLMS.inverse().times(matrix{{0, 2.02344, -2.52581}, {0, 1, 0}, {0, 0, 1}}).times(toLMS)},
	{"deuteranopia, 1999", toLMS.inverse().times(matrix{{1, 0, 0}, {0.494207, 0, 1.24827}, {0, 0, 1}}).times(toLMS)},
	{"grey", matrix{toXYZ[1], toXYZ[1], toXYZ[1]}},
}

var toLMS = matrix{{17.8824, 43.5161, 4.11935}, {3.45565, 27.1554, 3.86714}, {0.0299566, 0.184309, 1.46709}}

// light is the linear light of a part of a colour of sRGB, from 0 to 1.
func light(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func lightOf(c Colour) triple {
	r, g, b := c.RGB()
	return triple{light(float64(r) / 255), light(float64(g) / 255), light(float64(b) / 255)}
}

// clip brings what a screen cannot show to what it can.
func clip(v triple) triple {
	for i := range v {
		v[i] = max(0, min(1, v[i]))
	}
	return v
}

// lab is CIE 1976 L*a*b* of linear light, against the white of the matrix.
func lab(v triple) triple {
	white, xyz := toXYZ.of(triple{1, 1, 1}), toXYZ.of(v)
	var f triple
	for i := range f {
		f[i] = xyz[i] / white[i]
		if root := 6.0 / 29; f[i] > root*root*root {
			f[i] = math.Cbrt(f[i])
		} else {
			f[i] = f[i]/(3*root*root) + 4.0/29
		}
	}
	return triple{116*f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])}
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

// hue is the angle of a colour, in degrees from 0 to 360.
func hue(a, b float64) float64 {
	if a == 0 && b == 0 {
		return 0
	}
	return math.Mod(math.Atan2(b, a)*180/math.Pi+360, 360)
}

// distance is the colour difference CIEDE2000, by the steps of Sharma, Wu and
// Dalal, "The CIEDE2000 color-difference formula: implementation notes,
// supplementary test data, and mathematical observations" (2005).
func distance(p, q triple) float64 {
	pow7 := func(c float64) float64 { return math.Sqrt(math.Pow(c, 7) / (math.Pow(c, 7) + math.Pow(25, 7))) }
	g := (1 - pow7((math.Hypot(p[1], p[2])+math.Hypot(q[1], q[2]))/2)) / 2
	a1, a2 := (1+g)*p[1], (1+g)*q[1]
	c1, c2 := math.Hypot(a1, p[2]), math.Hypot(a2, q[2])
	h1, h2 := hue(a1, p[2]), hue(a2, q[2])
	dh, sum := h2-h1, h1+h2
	switch {
	case c1*c2 == 0:
		dh = 0
	case dh > 180:
		dh -= 360
	case dh < -180:
		dh += 360
	}
	middle := sum / 2
	switch {
	case c1*c2 == 0:
		middle = sum
	case math.Abs(h1-h2) > 180 && sum < 360:
		middle = (sum + 360) / 2
	case math.Abs(h1-h2) > 180:
		middle = (sum - 360) / 2
	}
	dl, dc, dH := q[0]-p[0], c2-c1, 2*math.Sqrt(c1*c2)*math.Sin(radians(dh)/2)
	l, c := (p[0]+q[0])/2, (c1+c2)/2
	t := 1 - 0.17*math.Cos(radians(middle-30)) + 0.24*math.Cos(radians(2*middle)) + 0.32*math.Cos(radians(3*middle+6)) - 0.20*math.Cos(radians(4*middle-63))
	sl := 1 + 0.015*(l-50)*(l-50)/math.Sqrt(20+(l-50)*(l-50))
	sc, sh := 1+0.045*c, 1+0.015*c*t
	turn := 30 * math.Exp(-(middle-275)/25*(middle-275)/25)
	rt := -math.Sin(radians(2*turn)) * 2 * pow7(c)
	dl, dc, dH = dl/sl, dc/sc, dH/sh
	return math.Sqrt(dl*dl + dc*dc + dH*dH + rt*dc*dH)
}

// apart is how different two colours look with a vision; no colour looks like
// the paper.
func apart(see matrix, a, b Colour) float64 {
	if a == NoColour {
		a = White
	}
	if b == NoColour {
		b = White
	}
	return distance(lab(clip(see.of(lightOf(a)))), lab(clip(see.of(lightOf(b)))))
}

// The arithmetic against what others published.
func TestColourArithmetic(t *testing.T) {
	// 0.2, 0.4, 0.6 of sRGB, from a calculator quoted by the library
	// colorspacious (its gold_values.py).
	got, want := lab(triple{light(0.2), light(0.4), light(0.6)}), triple{42.0099857768665, -0.147373964354935, -32.8445986139017}
	for i := range got {
		if math.Abs(got[i]-want[i]) > 0.02 {
			t.Errorf("L*a*b* is %v, want %v", got, want)
			break
		}
	}
	// Light, from the same.
	for v, want := range map[float64]float64{0.1: 0.010022825574869, 0.9: 0.787412289395617, 0.04: 0.00309597523219814} {
		if got := light(v); math.Abs(got-want) > 1e-12 {
			t.Errorf("the light of %v is %v, want %v", v, got, want)
		}
	}
	for _, v := range visions {
		for _, grey := range []float64{0.1, 0.5, 1} {
			// A dichromat sees greys as they are: rows of a matrix add up to
			// one, to within what the sources round.
			for _, part := range v.see.of(triple{grey, grey, grey}) {
				if math.Abs(part-grey) > 0.003 {
					t.Errorf("%s takes grey %v to %v", v.name, grey, part)
				}
			}
		}
	}
}

// Who sees with two kinds of cones sees a plane of colours, so the matrices for
// that have no volume (that of 2009 for tritanopia is not meant to be one); and
// the two models, made from different data, see the colours of Okabe and Ito's
// palette nearly alike. A number typed wrong in either would show.
func TestSimulationsAgree(t *testing.T) {
	byName := map[string]matrix{}
	for _, v := range visions {
		byName[v.name] = v.see
		if flat := v.name != "full colour" && v.name != "tritanopia"; flat != (math.Abs(v.see.volume()) < 1e-5) {
			t.Errorf("%s has a volume of %v", v.name, v.see.volume())
		}
	}
	for _, c := range []Colour{0xFFE69F00, 0xFF56B4E9, 0xFF009E73, 0xFFF0E442, Blue, 0xFFD55E00, 0xFFCC79A7} {
		for _, name := range []string{"protanopia", "deuteranopia"} {
			p, q := lab(clip(byName[name].of(lightOf(c)))), lab(clip(byName[name+", 1999"].of(lightOf(c))))
			if d := distance(p, q); d > 9 {
				t.Errorf("%s of %s: the two differ by %.1f", name, c.Hex(), d)
			}
		}
	}
}

// The test data of Sharma, Wu and Dalal (2005), table 1, all 34 pairs.
func TestColourDifference(t *testing.T) {
	for _, c := range [][7]float64{
		{50, 2.6772, -79.7751, 50, 0, -82.7485, 2.0425},
		{50, 3.1571, -77.2803, 50, 0, -82.7485, 2.8615},
		{50, 2.8361, -74.0200, 50, 0, -82.7485, 3.4412},
		{50, -1.3802, -84.2814, 50, 0, -82.7485, 1.0000},
		{50, -1.1848, -84.8006, 50, 0, -82.7485, 1.0000},
		{50, -0.9009, -85.5211, 50, 0, -82.7485, 1.0000},
		{50, 0, 0, 50, -1, 2, 2.3669},
		{50, -1, 2, 50, 0, 0, 2.3669},
		{50, 2.4900, -0.0010, 50, -2.4900, 0.0009, 7.1792},
		{50, 2.4900, -0.0010, 50, -2.4900, 0.0010, 7.1792},
		{50, 2.4900, -0.0010, 50, -2.4900, 0.0011, 7.2195},
		{50, 2.4900, -0.0010, 50, -2.4900, 0.0012, 7.2195},
		{50, -0.0010, 2.4900, 50, 0.0009, -2.4900, 4.8045},
		{50, -0.0010, 2.4900, 50, 0.0010, -2.4900, 4.8045},
		{50, -0.0010, 2.4900, 50, 0.0011, -2.4900, 4.7461},
		{50, 2.5, 0, 50, 0, -2.5, 4.3065},
		{50, 2.5, 0, 73, 25, -18, 27.1492},
		{50, 2.5, 0, 61, -5, 29, 22.8977},
		{50, 2.5, 0, 56, -27, -3, 31.9030},
		{50, 2.5, 0, 58, 24, 15, 19.4535},
		{50, 2.5, 0, 50, 3.1736, 0.5854, 1.0000},
		{50, 2.5, 0, 50, 3.2972, 0, 1.0000},
		{50, 2.5, 0, 50, 1.8634, 0.5757, 1.0000},
		{50, 2.5, 0, 50, 3.2592, 0.3350, 1.0000},
		{60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644},
		{63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630},
		{61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731},
		{35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645},
		{22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373},
		{36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146},
		{90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441},
		{90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381},
		{6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377},
		{2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082},
	} {
		p, q := triple{c[0], c[1], c[2]}, triple{c[3], c[4], c[5]}
		for _, got := range []float64{distance(p, q), distance(q, p)} {
			if math.Abs(got-c[6]) > 0.00006 {
				t.Errorf("from %v to %v it is %.4f, want %.4f", p, q, got, c[6])
			}
		}
	}
}

// clearlyApart is the difference from which two colours count as different by
// themselves: about ten times what is just seen side by side (common practice,
// no source).
const clearlyApart = 10

// meant are the pens that a legend explains.
func meant() (all []Pen) {
	for p := range pens {
		if p.Style().Meaning != "" {
			all = append(all, p)
		}
	}
	return all
}

// formsDiffer reports whether two pens are told apart without any look at
// lightness or colour: by the shape that they draw, by dashes, or by widths two
// steps of the series apart, which is the one to two of ISO 128-2 for lines that
// mean different things.
func formsDiffer(p, q Pen) bool {
	a, b := p.Style(), q.Style()
	step := func(w Paper) int { return slices.Index(widths, w) }
	apart := step(a.Width) - step(b.Width)
	return p.Shape() != q.Shape() || a.Type != b.Type || apart >= 2 || apart <= -2
}

// Every two pens that a legend explains differ in form, or so much in colour
// that all visions and a print in grey show it. The smallest difference among
// those that rest on colour is stated for each vision.
func TestPensAreToldApart(t *testing.T) {
	all := meant()
	for _, v := range visions {
		least, which := math.Inf(1), ""
		for i, p := range all {
			for _, q := range all[:i] {
				if formsDiffer(p, q) {
					continue
				}
				a, b := p.Style(), q.Style()
				d := max(apart(v.see, a.Stroke, b.Stroke), apart(v.see, a.Fill, b.Fill))
				if d < clearlyApart {
					t.Errorf("%s: %s and %s are alike in form and differ by %.1f in colour", v.name, a.Name, b.Name, d)
				}
				if d < least {
					least, which = d, a.Name+" and "+b.Name
				}
			}
		}
		t.Logf("%-19s the nearest that rest on colour are %s, %.1f apart", v.name+":", which, least)
	}
}

// The strokes keep apart from each other, and the fills from each other and
// from the paper, in every vision. The smallest differences, worked out with
// the simulations above, are stated here: a new colour must not lower them
// unseen.
func TestPalette(t *testing.T) {
	strokes, fills := map[Colour]bool{}, map[Colour]bool{White: true}
	for p := range pens {
		strokes[p.Style().Stroke], fills[p.Style().Fill] = true, true
	}
	delete(strokes, NoColour)
	delete(fills, NoColour)
	stated := map[string][2]float64{
		"full colour": {21.8, 10.2}, "protanopia": {21.8, 10.2}, "deuteranopia": {21.8, 10.2}, "tritanopia": {21.8, 10.2},
		"protanopia, 1999": {21.8, 10.2}, "deuteranopia, 1999": {21.8, 10.2}, "grey": {11.5, 10.2},
	}
	for _, v := range visions {
		for i, set := range []map[Colour]bool{strokes, fills} {
			least, which := math.Inf(1), ""
			for a := range set {
				for b := range set {
					if d := apart(v.see, a, b); a < b && d < least {
						least, which = d, a.Hex()+" and "+b.Hex()
					}
				}
			}
			if what := [...]string{"strokes", "fills"}[i]; math.Abs(least-stated[v.name][i]) > 0.1 || least < clearlyApart {
				t.Errorf("%s: the nearest %s are %s, %.2f apart; %.1f is stated", v.name, what, which, least, stated[v.name][i])
			}
		}
	}
}

// contrastOf is that of WCAG 2.2 between two colours: (L1 + 0.05) / (L2 + 0.05)
// with L the relative luminance, the lighter first.
func contrastOf(a, b Colour) float64 {
	p, q := toXYZ[1], lightOf(a)
	r := lightOf(b)
	l1, l2 := p[0]*q[0]+p[1]*q[1]+p[2]*q[2], p[0]*r[0]+p[1]*r[1]+p[2]*r[2]
	return (max(l1, l2) + 0.05) / (min(l1, l2) + 0.05)
}

// Words are read on white and on every fill that they may lie on: all but
// black (WCAG 2.2, 1.4.3: 4.5 to 1). Black on white has 21 by definition; that of
// #777777, 4.48, is the usual example of a grey that just fails.
func TestWordsAreRead(t *testing.T) {
	if got := contrastOf(Black, White); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white has %v", got)
	}
	if got := contrastOf(0xFF777777, White); math.Abs(got-4.48) > 0.005 {
		t.Errorf("#777777 on white has %v", got)
	}
	for l := range letteringCount {
		for p := range pens {
			fill := p.Style().Fill
			if fill == Black {
				continue
			}
			if fill == NoColour {
				fill = White
			}
			if got := contrastOf(l.Style().Colour, fill); got < 4.5 {
				t.Errorf("%s on the fill of %s has a contrast of %.2f", l.Style().Name, p.Style().Name, got)
			}
		}
	}
}
