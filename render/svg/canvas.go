package svg

import (
	"bufio"
	"encoding/xml"
	"io"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"topplate/render/font"
	"topplate/render/sheet"
)

// A canvas writes SVG elements. It stands between this package and the
// library, which escapes only the text of elements, writes numbers with a
// fixed count of decimals and drops the errors of its writer. Attributes come
// as names and values by turns; the names are constants of this package.
type canvas struct {
	lib *svgo.SVG
	out *bufio.Writer // keeps the first error and then writes no more
}

func newCanvas(w io.Writer) *canvas {
	out := bufio.NewWriter(w)
	return &canvas{svgo.New(out), out}
}

// finish writes what is still held back and returns the first error of all.
func (c *canvas) finish() error { return c.out.Flush() }

// open begins an element.
func (c *canvas) open(name string, attrs ...string) {
	c.raw("<" + name + attributes(attrs) + ">\n")
}

// empty writes an element that has nothing in it.
func (c *canvas) empty(name string, attrs ...string) {
	c.raw("<" + name + attributes(attrs) + "/>\n")
}

// shut ends the innermost element, which has the given name.
func (c *canvas) shut(name string) { c.raw("</" + name + ">\n") }

// words writes an element that has only text in it. Characters that cannot be
// seen are left out.
func (c *canvas) words(name, text string, attrs ...string) {
	c.raw("<" + name + attributes(attrs) + ">" + escape(font.Plain(text)) + "</" + name + ">\n")
}

// css writes a style sheet, which must not have characters that XML escapes.
func (c *canvas) css(rules []string) {
	c.raw("<style>\n" + strings.Join(rules, "\n") + "\n</style>\n")
}

// group begins a group; ungroup ends it.
func (c *canvas) group(attrs ...string) { c.lib.Group(pairs(attrs)...) }

func (c *canvas) ungroup() { c.lib.Gend() }

// path draws path data, which data has made.
func (c *canvas) path(data string, attrs ...string) { c.lib.Path(data, pairs(attrs)...) }

func (c *canvas) circle(centre sheet.Point, radius sheet.Paper, attrs ...string) {
	c.decimals(centre.X, centre.Y, radius)
	c.lib.Circle(millimetres(centre.X), millimetres(centre.Y), millimetres(radius), pairs(attrs)...)
}

func (c *canvas) text(at sheet.Point, words string, attrs ...string) {
	c.decimals(at.X, at.Y)
	c.lib.Text(millimetres(at.X), millimetres(at.Y), words, pairs(attrs)...)
}

// decimals sets the least count of decimals at which the lengths of one
// element are exact.
func (c *canvas) decimals(lengths ...sheet.Paper) {
	n := 0
	for _, l := range lengths {
		for n < 3 && l%tenths[n] != 0 {
			n++
		}
	}
	c.lib.Decimals = n
}

// tenths[n] is a unit of the last of n decimals of a millimetre.
var tenths = [...]sheet.Paper{sheet.MM, 100, 10}

func (c *canvas) raw(s string) { c.out.WriteString(s) }

// millimetres is p in millimetres. Written with three decimals it is exact
// again, since p stays far below 2^53.
func millimetres(p sheet.Paper) float64 { return float64(p) / float64(sheet.MM) }

// pairs writes attributes in the form that the library copies as they are.
func pairs(attrs []string) []string {
	out := make([]string, 0, len(attrs)/2)
	for i := 0; i+1 < len(attrs); i += 2 {
		if attrs[i+1] != "" {
			out = append(out, attrs[i]+`="`+escape(attrs[i+1])+`"`)
		}
	}
	return out
}

// attributes writes attributes, each after a space. One with an empty value is
// left out.
func attributes(attrs []string) string {
	var b strings.Builder
	for _, p := range pairs(attrs) {
		b.WriteString(" " + p)
	}
	return b.String()
}

// escape makes s safe in text and in attributes.
func escape(s string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(s)) // a strings.Builder never fails
	return b.String()
}
