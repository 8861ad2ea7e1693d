package pdf

import (
	"slices"

	"topplate/render/font"
	"topplate/render/sheet"
)

// A face is how the library knows a font. The names are those of the fonts in
// the SVG.
type face struct{ family, style string }

var faces = [...]face{
	sheet.Regular: {"PlanSans", ""},
	sheet.Bold:    {"PlanSans", "B"},
	sheet.Mono:    {"PlanMono", ""},
}

// textSize is the size in which all text is set before it is scaled: the
// library keeps two decimals of a size, and a matrix has as many as are wanted.
const textSize = 10

// haloWidth is the width of the white outline of a text with a halo, as in the
// SVG; half of it lies outside the letters.
const haloWidth = 1200 * sheet.Micrometre

// addFonts embeds the faces that the sheets use, in the order of their table.
// The library cuts them down to the characters that are written.
func (d *document) addFonts(sheets []*sheet.Sheet) {
	var used []sheet.Face
	for _, s := range sheets {
		for _, l := range s.Letterings() {
			used = append(used, l.Style().Face)
		}
	}
	slices.Sort(used)
	for _, f := range slices.Compact(used) {
		d.lib.AddUTF8FontFromBytes(faces[f].family, faces[f].style, slices.Clone(font.TTF(f)))
	}
}

// text writes one line of words, with its halo under it.
func (p *page) text(t sheet.Text) {
	style := t.Lettering.Style()
	words := font.Clean(style.Face, t.Words)
	if words == "" {
		return
	}
	em := millimetres(font.Size(t.Lettering))
	p.put("q", p.matrix(t, em), "cm")
	p.lib.SetFont(faces[style.Face].family, faces[style.Face].style, textSize)
	p.put(real(p.spread(t, words)), "Tc")
	if t.Halo {
		// Who takes the words out of the document is to find them once.
		p.put("/Span <</ActualText ()>> BDC 1 Tr 1 j [] 0 d", colour(sheet.White), "RG", real(millimetres(haloWidth)*textSize/em), "w")
		p.show(words)
		p.put("EMC 0 Tr")
	}
	p.put(colour(style.Colour), "rg")
	p.show(words)
	p.put("Q")
}

// show writes words from the origin of the matrix. The library measures down
// from the top of a page.
func (p *page) show(words string) {
	_, height := p.lib.GetPageSize()
	p.lib.Text(0, height, words)
}

// matrix maps text of textSize, with the baseline on the X axis and Y up, to
// the sheet. Polar is exact, which the trigonometry of a machine is not.
func (p *page) matrix(t sheet.Text, em float64) string {
	along := sheet.Polar(sheet.Point{}, sheet.MaxCoordinate, t.Turn)
	scale := em / textSize / float64(sheet.MaxCoordinate)
	a, b := real(float64(along.X)*scale), real(float64(along.Y)*scale)
	return a + " " + b + " " + b + " " + real(-float64(along.X)*scale) + " " + pair(start(t))
}

// start is the point of the baseline where the first character begins.
func start(t sheet.Text) sheet.Point {
	w := font.Width(t.Lettering, t.Words)
	back := [...]sheet.Paper{sheet.Start: 0, sheet.Middle: w / 2, sheet.End: w}[t.Align]
	return sheet.Polar(t.Baseline(), -back, t.Turn)
}

// spread is what to add to each character, in text of textSize: the library
// rounds the width of each to a thousandth of the size, and a long line would
// end too early or too late.
func (p *page) spread(t sheet.Text, words string) float64 {
	want := float64(font.Width(t.Lettering, t.Words)) / float64(font.Size(t.Lettering))
	got := float64(p.lib.GetStringSymbolWidth(words)) / 1000
	return (want - got) * textSize / float64(len([]rune(words)))
}
