package pdf_test

import (
	"encoding/xml"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/render/font"
	"topplate/render/sheet"
)

// Poppler shares no code with what writes the document.

const pointsPerMM = 72 / 25.4

// Poppler prints two decimals of a point.
func TestPagesHaveTheSizeOfTheSheets(t *testing.T) {
	small, large := everything(), everything()
	large.Width, large.Height = 431_800, 279_400
	set := append(samples(t), small, large)
	info := run(t, written(t, "Réunion ½", set...), "pdfinfo", "-f", "1", "-l", "99", "in")
	for _, want := range []string{
		"Title:           Réunion ½\n", "CreationDate:    Sat Jan  1 00:00:00 2000", "ModDate:         Sat Jan  1 00:00:00 2000",
		"Floor plan of ", fmt.Sprintf("Pages:           %d\n", len(set)), "Encrypted:       no\n",
	} {
		if !strings.Contains(info, want) {
			t.Errorf("no %q in\n%s", want, info)
		}
	}
	sizes := regexp.MustCompile(`Page +\d+ size: +([\d.]+) x ([\d.]+) pts`).FindAllStringSubmatch(info, -1)
	if len(sizes) != len(set) {
		t.Fatalf("%d sizes, want %d", len(sizes), len(set))
	}
	for i, s := range set {
		w, h := number(t, sizes[i][1])/pointsPerMM, number(t, sizes[i][2])/pointsPerMM
		if math.Abs(w-float64(s.Width)/1000) > 0.005 || math.Abs(h-float64(s.Height)/1000) > 0.005 {
			t.Errorf("page %d is %.3f mm by %.3f mm, want %d µm by %d µm", i+1, w, h, s.Width, s.Height)
		}
	}
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// Fonts are embedded, with a table that gives characters for glyphs, and only
// those that are used.
func TestFontsAreEmbedded(t *testing.T) {
	for _, c := range []struct {
		set  []*sheet.Sheet
		want []string
	}{
		{samples(t), []string{"utf8plansans", "utf8plansansB"}},
		{[]*sheet.Sheet{everything()}, []string{"utf8planmono", "utf8plansans", "utf8plansansB"}},
		{[]*sheet.Sheet{sheet.New("s", "Nothing", sheet.A4)}, nil},
	} {
		var names []string
		for _, line := range strings.Split(run(t, written(t, "Set", c.set...), "pdffonts", "in"), "\n") {
			if f := strings.Fields(line); strings.HasPrefix(line, "utf8") {
				names = append(names, f[0])
				if !strings.Contains(line, "CID TrueType      Identity-H       yes no  yes") {
					t.Errorf("not embedded with its characters: %s", line)
				}
			}
		}
		slices.Sort(names)
		if !slices.Equal(names, c.want) {
			t.Errorf("fonts %v, want %v", names, c.want)
		}
	}
	set := samples(t)
	if n := len(written(t, "Set", set...)) / len(set); n > 15_000 {
		t.Errorf("%d bytes to a sheet: fonts are not cut down", n)
	}
}

func TestBookmarks(t *testing.T) {
	a, b := everything(), everything()
	a.Title, b.Title, b.Height = "Étage 部屋 \U0001F600", "Attic (2)", 46*mm
	out := run(t, written(t, "Set", a, b), "pdftohtml", "-xml", "-i", "-stdout", "in")
	for i, title := range []string{a.Title, b.Title} {
		if want := fmt.Sprintf(`<item page="%d">%s</item>`, i+1, title); !strings.Contains(out, want) {
			t.Errorf("no %s in\n%s", want, out)
		}
	}
}

// Each text of the sheets comes out of the document, and no character comes
// out that is not in them: halos don't write twice.
func TestEveryTextIsFound(t *testing.T) {
	set := append(samples(t), everything())
	document := written(t, "Set", set...)
	for i, s := range set {
		n := strconv.Itoa(i + 1)
		found := squeeze(run(t, document, "pdftotext", "-raw", "-f", n, "-l", n, "in", "-"))
		var all strings.Builder
		for item := range s.All() {
			text, ok := item.(sheet.Text)
			if !ok {
				continue
			}
			words := squeeze(font.Clean(text.Lettering.Style().Face, text.Words))
			all.WriteString(words)
			if !strings.Contains(found, words) && text.Turn%sheet.QuarterTurn == 0 {
				t.Errorf("page %s: no %q", n, words)
			}
		}
		if a, b := sorted(all.String()), sorted(found); a != b {
			t.Errorf("page %s: the characters are\n%s, want\n%s", n, b, a)
		}
	}
}

// squeeze takes out what poppler may put between words.
func squeeze(s string) string {
	return strings.Map(func(r rune) rune {
		if r <= ' ' || r == '\u00A0' {
			return -1
		}
		return r
	}, s)
}

func sorted(s string) string {
	r := []rune(s)
	slices.Sort(r)
	return string(r)
}

// A mark is an element of the SVG that cairo makes of a page, in points.
type mark struct {
	name  string
	attrs map[string]string
}

func marks(t *testing.T, document []byte, page int) []mark {
	t.Helper()
	n := strconv.Itoa(page)
	out := run(t, document, "pdftocairo", "-svg", "-f", n, "-l", n, "in", "-")
	var all []mark
	d := xml.NewDecoder(strings.NewReader(out))
	depth := 0
	for {
		token, err := d.Token()
		if err != nil {
			return all
		}
		switch e := token.(type) {
		case xml.StartElement:
			if e.Name.Local == "defs" {
				depth++
			}
			m := mark{e.Name.Local, map[string]string{}}
			for _, a := range e.Attr {
				m.attrs[a.Name.Local] = a.Value
			}
			if depth == 0 {
				all = append(all, m)
			}
		case xml.EndElement:
			if e.Name.Local == "defs" {
				depth--
			}
		}
	}
}

// Each glyph stands where the sheet says, to 0.05 mm: that is where the SVG
// has it too, since a browser adds the same widths.
func TestGlyphsStandWhereTheSheetSays(t *testing.T) {
	set := onWholePoints(append(samples(t), everything(), longLines()))
	document := written(t, "Set", set...)
	worst := 0.0
	for i, s := range set {
		want := glyphs(s)
		var got [][2]float64
		for _, m := range marks(t, document, i+1) {
			if m.name == "use" {
				got = append(got, [2]float64{number(t, m.attrs["x"]) / pointsPerMM, number(t, m.attrs["y"]) / pointsPerMM})
			}
		}
		if len(got) != len(want) || len(want) < 20 {
			t.Errorf("page %d has %d glyphs, want %d", i+1, len(got), len(want))
			continue
		}
		for j, w := range want {
			off := math.Hypot(got[j][0]-w[0], got[j][1]-w[1])
			worst = max(worst, off)
			if off > 0.05 {
				t.Errorf("page %d: glyph %d at %.3f, want %.3f mm", i+1, j, got[j], w)
				break
			}
		}
	}
	t.Logf("glyphs are off by %.4f mm at most", worst)
}

// longLines has lines of one letter each, whose width the library rounds the
// same way every time.
func longLines() *sheet.Sheet {
	s := sheet.New("long", "Long lines", sheet.A4)
	y := 10 * mm
	for _, l := range []sheet.Lettering{sheet.LetterRoom, sheet.LetterTitle, sheet.LetterCode} {
		for _, letter := range "aeimnt0" {
			s.Group("", "", "").Text(l, sheet.Pt(10*mm, y), sheet.Start, strings.Repeat(string(letter), 60))
			y += 10 * mm
		}
	}
	return s
}

// onWholePoints puts sheets on paper of 17 by 17 in: cairo rounds a page to
// whole points and shrinks or moves what is on it, unless there is nothing to
// round.
func onWholePoints(set []*sheet.Sheet) []*sheet.Sheet {
	var all []*sheet.Sheet
	for _, s := range set {
		whole := *s
		whole.Width, whole.Height = 17*sheet.Inch, 17*sheet.Inch
		all = append(all, &whole)
	}
	return all
}

// glyphs lists where the characters of a sheet begin, in millimetres.
func glyphs(s *sheet.Sheet) [][2]float64 {
	var all [][2]float64
	for item := range s.All() {
		t, ok := item.(sheet.Text)
		if !ok {
			continue
		}
		words := font.Clean(t.Lettering.Style().Face, t.Words)
		width := float64(font.Width(t.Lettering, words))
		x := map[sheet.Align]float64{sheet.Start: 0, sheet.Middle: -width / 2, sheet.End: -width}[t.Align]
		base := t.Baseline()
		sin, cos := math.Sincos(float64(t.Turn) / float64(sheet.HalfTurn) * math.Pi)
		for i := range words {
			at := x + float64(font.Width(t.Lettering, words[:i]))
			// A space before the end is cleaned away when it is last.
			if strings.HasSuffix(words[:i], " ") {
				at = x + float64(font.Width(t.Lettering, words[:i]+"|")-font.Width(t.Lettering, "|"))
			}
			all = append(all, [2]float64{(float64(base.X) + at*cos) / 1000, (float64(base.Y) - at*sin) / 1000})
		}
	}
	return all
}

// Ten feet at a quarter of an inch to the foot are two and a half inches, 180
// points; ten metres at 1:50 are 200 mm.
func TestLengthsAreToScale(t *testing.T) {
	for _, c := range []struct {
		den    int64
		length measure.Length
		points float64
	}{
		{48, 10 * measure.Foot, 180},
		{50, 10 * measure.Metre, 200 * pointsPerMM},
	} {
		s := sheet.New("s", "Line", sheet.Tabloid)
		v := sheet.View{Scale: sheet.Scale{Den: c.den}, To: sheet.Pt(20*mm, 100*mm)}
		s.Group("g", "", "").Line(sheet.PenCable, v.Point(geom.Point{}), v.Point(geom.Point{X: c.length}))
		s.Groups[0].Line(sheet.PenCable, v.Point(geom.Point{}), v.Point(geom.Point{Y: c.length / 10}))
		lines := strokes(t, written(t, "Set", s))
		if len(lines) != 2 {
			t.Fatalf("%d lines", len(lines))
		}
		across, up := lines[0], lines[1]
		if math.Abs(across[2]-across[0]-c.points) > 0.01 || across[1] != across[3] {
			t.Errorf("1:%d: the line runs %v points, want %.2f", c.den, across, c.points)
		}
		if math.Abs(up[1]-up[3]-c.points/10) > 0.01 || up[0] != up[2] {
			t.Errorf("1:%d: the line runs %v points, want %.2f upwards", c.den, up, c.points/10)
		}
		if math.Abs(across[0]-20*pointsPerMM) > 0.01 || math.Abs(across[1]-100*pointsPerMM) > 0.01 {
			t.Errorf("the line starts at %.3f, %.3f points, want 20 and 100 mm", across[0], across[1])
		}
	}
}

var straight = regexp.MustCompile(`^M ([-\d.]+) ([-\d.]+) L ([-\d.]+) ([-\d.]+) *$`)

// strokes are the straight lines of the first page, in points from its top
// left corner.
func strokes(t *testing.T, document []byte) [][4]float64 {
	t.Helper()
	var lines [][4]float64
	for _, m := range marks(t, document, 1) {
		f := straight.FindStringSubmatch(m.attrs["d"])
		if f == nil {
			continue
		}
		var line [4]float64
		for i := range line {
			line[i] = number(t, f[i+1])
		}
		lines = append(lines, placed(t, line, m.attrs["transform"]))
	}
	return lines
}

// placed applies a matrix of SVG.
func placed(t *testing.T, line [4]float64, transform string) [4]float64 {
	t.Helper()
	inner, ok := strings.CutPrefix(transform, "matrix(")
	if !ok {
		return line
	}
	var m []float64
	for _, f := range strings.FieldsFunc(strings.TrimSuffix(inner, ")"), func(r rune) bool { return r == ',' || r == ' ' }) {
		m = append(m, number(t, f))
	}
	for i := 0; i < 4; i += 2 {
		x, y := line[i], line[i+1]
		line[i], line[i+1] = m[0]*x+m[2]*y+m[4], m[1]*x+m[3]*y+m[5]
	}
	return line
}
