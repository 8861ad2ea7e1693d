package sheet

import (
	"math"
	"regexp"
	"slices"
	"testing"
)

var plainName = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

// widths is the series of ISO 128-2:2020 up to 1 mm.
var widths = []Paper{130, 180, 250, 350, 500, 700, 1000}

func TestPens(t *testing.T) {
	names := map[string]bool{}
	for p := range pens {
		s := p.Style()
		if !plainName.MatchString(s.Name) || names[s.Name] {
			t.Errorf("pen %d: name %q is not plain or not its own", p, s.Name)
		}
		names[s.Name] = true
		if s.Stroke != NoColour && !slices.Contains(widths, s.Width) {
			t.Errorf("pen %s: width %d is not in the series of ISO 128-2", s.Name, s.Width)
		}
		if s.Stroke == NoColour && s.Fill == NoColour {
			t.Errorf("pen %s draws nothing", s.Name)
		}
		if _, ok := elements[s.Type]; !ok {
			t.Errorf("pen %s: line type %d is not in the table", s.Name, s.Type)
		}
	}
	if got := Pen(200).Style(); got != PenThin.Style() {
		t.Errorf("a pen that is not in the table draws as %s", got.Name)
	}
}

// What a legend explains must be told apart in grey, and by those who see no
// difference of colour.
func TestNoMeaningByColourAlone(t *testing.T) {
	type look struct {
		width Paper
		line  LineType
		fill  Colour
	}
	seen := map[look]string{}
	for p := range pens {
		s := p.Style()
		if s.Meaning == "" {
			continue
		}
		l := look{s.Width, s.Type, s.Fill}
		if other := seen[l]; other != "" {
			t.Errorf("%s and %s differ by colour alone", other, s.Name)
		}
		seen[l] = s.Name
	}
}

// contrast is that of WCAG 2.2 with white: (1 + 0.05) / (luminance + 0.05).
func contrast(c Colour) float64 {
	linear := func(part uint8) float64 {
		v := float64(part) / 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	r, g, b := c.RGB()
	return 1.05 / (0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b) + 0.05)
}

// WCAG 2.2 asks for 3:1 of lines (1.4.11) and 4.5:1 of text (1.4.3). Black has
// 21:1 by definition; the 5.19:1 of the blue was measured with another program.
func TestContrast(t *testing.T) {
	if got := contrast(Black); math.Abs(got-21) > 0.001 {
		t.Errorf("black has %.3f", got)
	}
	if got := contrast(Blue); math.Abs(got-5.19) > 0.01 {
		t.Errorf("blue has %.3f", got)
	}
	for p := range pens {
		if s := p.Style(); s.Stroke != NoColour && contrast(s.Stroke) < 3 {
			t.Errorf("pen %s has a contrast of %.2f", s.Name, contrast(s.Stroke))
		}
	}
	for l := range letteringCount {
		if s := l.Style(); contrast(s.Colour) < 4.5 {
			t.Errorf("lettering %s has a contrast of %.2f", s.Name, contrast(s.Colour))
		}
	}
}

func TestHex(t *testing.T) {
	for c, want := range map[Colour]string{NoColour: "none", Black: "#000000", Blue: "#0072b2", White: "#ffffff"} {
		if got := c.Hex(); got != want {
			t.Errorf("%x is %s, want %s", uint32(c), got, want)
		}
	}
}

func TestLetterings(t *testing.T) {
	names := map[string]bool{}
	heights := []Paper{1800, 2500, 3500, 5000, 7000} // ISO 3098-1
	for l := range letteringCount {
		s := l.Style()
		if !plainName.MatchString(s.Name) || names[s.Name] {
			t.Errorf("lettering %d: name %q is not plain or not its own", l, s.Name)
		}
		names[s.Name] = true
		if !slices.Contains(heights, s.Height) || !slices.Contains(Faces(), s.Face) {
			t.Errorf("lettering %s: %d µm of face %d", s.Name, s.Height, s.Face)
		}
	}
	if got := Lettering(99).Style(); got != LetterNote.Style() {
		t.Errorf("a lettering that is not in the table looks like %s", got.Name)
	}
}

// Line types at a width of 0.5 mm: a dash is 12 times the width, a long dash 24
// times, a gap 3 times, a dot half (ISO 128-20:1996, from memory).
func TestDashes(t *testing.T) {
	for _, c := range []struct {
		line LineType
		want []Paper
	}{
		{Continuous, nil},
		{Dashed, []Paper{6000, 1500}},
		{DashedSpaced, []Paper{6000, 9000}},
		{LongDashedDotted, []Paper{12000, 1500, 250, 1500}},
		{Dotted, []Paper{250, 1500}},
		{LongDashedShortDashed, []Paper{12000, 1500, 3000, 1500}},
	} {
		if got := c.line.Dashes(500); !slices.Equal(got, c.want) {
			t.Errorf("line type %d: %v, want %v", c.line, got, c.want)
		}
	}
	for line := range elements {
		if len(line.Dashes(130))%2 != 0 {
			t.Errorf("line type %d does not end with a gap", line)
		}
	}
}

func TestHatches(t *testing.T) {
	type look struct {
		first, last Angle
		spacing     Paper
	}
	seen := map[look]string{}
	for h := range hatchCount {
		s := h.Style()
		l := look{s.Angles[0], s.Angles[len(s.Angles)-1], s.Spacing}
		if other := seen[l]; other != "" {
			t.Errorf("hatchings %s and %s look the same", other, s.Name)
		}
		seen[l] = s.Name
		if !plainName.MatchString(s.Name) || s.Meaning == "" || s.Spacing < minSpacing {
			t.Errorf("hatching %s: meaning %q, spacing %d", s.Name, s.Meaning, s.Spacing)
		}
	}
}

// Sizes in inches (ASME Y14.1) and millimetres (ISO 216).
func TestFormats(t *testing.T) {
	for _, c := range []struct {
		f             Format
		width, height Paper
	}{
		{Letter, 85 * Inch / 10, 11 * Inch},
		{Tabloid, 11 * Inch, 17 * Inch},
		{A4, 210 * MM, 297 * MM},
		{A3, 297 * MM, 420 * MM},
		{A3.Landscape(), 420 * MM, 297 * MM},
		{A3.Landscape().Landscape(), 420 * MM, 297 * MM},
	} {
		if c.f.Width != c.width || c.f.Height != c.height {
			t.Errorf("%s is %d by %d, want %d by %d", c.f.Name, c.f.Width, c.f.Height, c.width, c.height)
		}
	}
}
