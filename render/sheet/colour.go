package sheet

import "fmt"

// A Colour is an opaque sRGB colour, 0xFFRRGGBB. The zero Colour is none: no
// line, or no fill.
type Colour uint32

// The colours of all sheets. There are few, since no meaning may rest on
// colour: sheets are printed in grey and read by people who do not see the
// difference. Contrast with white by WCAG 2.2: black 21, blue 5.19, dark grey
// 8.4. The fills and the strokes keep apart in every vision that the tests
// simulate.
const (
	NoColour Colour = 0
	Black    Colour = 0xFF000000
	White    Colour = 0xFFFFFFFF
	// Blue is the blue of Okabe and Ito's palette for the colour-blind (2008).
	Blue Colour = 0xFF0072B2
	// DeepBlue is for words: they are read on every fill but black.
	DeepBlue  Colour = 0xFF004069
	DarkGrey  Colour = 0xFF4D4D4D
	MidGrey   Colour = 0xFFA8A8A8
	LightGrey Colour = 0xFFD0D0D0
)

// RGB returns the three parts of c.
func (c Colour) RGB() (r, g, b uint8) { return uint8(c >> 16), uint8(c >> 8), uint8(c) }

// Hex writes c as "#rrggbb", and NoColour as "none".
func (c Colour) Hex() string {
	if c == NoColour {
		return "none"
	}
	r, g, b := c.RGB()
	return fmt.Sprintf("#%02x%02x%02x", r, g, b)
}
