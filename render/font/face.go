package font

import (
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"topplate/render/sheet"
)

// Vertical measures that are the same in all three faces, in 2048ths of the
// size; the tests read them from the fonts. The height of capitals is exact.
// No letter without an accent rises above letterTop, and none reaches below
// letterBottom.
const (
	unitsPerEm   = 2048
	capHeight    = 1480
	letterTop    = 1604
	letterBottom = 432
)

// TTF returns the TrueType file of a face. It must not be changed.
func TTF(f sheet.Face) []byte {
	switch f {
	case sheet.Bold:
		return gobold.TTF
	case sheet.Mono:
		return gomono.TTF
	}
	return goregular.TTF
}

// Family returns the name of the font as it is installed on a machine.
func Family(f sheet.Face) string {
	if f == sheet.Mono {
		return "Go Mono"
	}
	return "Go"
}

// A glyph is what is needed of one character, in 2048ths of the size.
type glyph struct {
	advance int64
	top     int64 // height of the ink above the baseline
	missing bool
}

// A metrics holds the glyphs of a face that have been asked for.
type metrics struct {
	mu     sync.Mutex
	font   *sfnt.Font
	buf    sfnt.Buffer
	glyphs map[rune]glyph
}

// faces are loaded when first used. The fonts are compiled in, so that a font
// that cannot be read is a fault of the build.
var faces = [...]func() *metrics{
	sheet.Regular: sync.OnceValue(func() *metrics { return load(sheet.Regular) }),
	sheet.Bold:    sync.OnceValue(func() *metrics { return load(sheet.Bold) }),
	sheet.Mono:    sync.OnceValue(func() *metrics { return load(sheet.Mono) }),
}

func load(f sheet.Face) *metrics {
	parsed, err := sfnt.Parse(TTF(f))
	if err != nil {
		panic("font: " + Family(f) + ": " + err.Error())
	}
	return &metrics{font: parsed, glyphs: map[rune]glyph{}}
}

func (m *metrics) glyph(r rune) glyph {
	m.mu.Lock()
	defer m.mu.Unlock()
	g, ok := m.glyphs[r]
	if !ok {
		g = m.read(r)
		m.glyphs[r] = g
	}
	return g
}

// read measures r at a size of 2048 pixels without hinting, where a pixel is a
// unit of the font.
func (m *metrics) read(r rune) glyph {
	index, err := m.font.GlyphIndex(&m.buf, r)
	if err != nil || index == 0 {
		return glyph{missing: true}
	}
	const size = fixed.Int26_6(unitsPerEm)
	bounds, advance, err := m.font.GlyphBounds(&m.buf, index, size, font.HintingNone)
	if err != nil {
		return glyph{missing: true}
	}
	return glyph{advance: int64(advance), top: int64(-bounds.Min.Y)}
}

// metricsOf returns the metrics of f, and those of Regular for a face that
// does not exist.
func metricsOf(f sheet.Face) *metrics {
	if int(f) >= len(faces) {
		f = sheet.Regular
	}
	return faces[f]()
}

// Has reports whether face f can draw r.
func Has(f sheet.Face, r rune) bool { return !metricsOf(f).glyph(r).missing }
