package connector

import (
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// Where the ranges come from. Makers' names are withheld.
var (
	sheets = rule.Source{Document: "a maker's data sheet of a part of the kind", Status: rule.Confirmed}
	memory = rule.Source{Document: "typical of the kind", Status: rule.FromMemory}
)

// span is a range in hundredths of a millimetre.
func span(lo, hi measure.Length) measure.Range {
	const hundredth = measure.Millimetre / 100
	return measure.Range{Min: lo * hundredth, Max: hi * hundredth}
}

// types is the table. The plugs for category 6A come in two widths of their
// wire guide. The sheet tells them apart at 1.1 mm and gives no other bound: the
// upper one of the wide guide is that of the jack beside it.
var types = []Type{
	{ID: "jack-5e", Title: "Jack, category 5e", FourPair: true, Thickest: 22, Thinnest: 26, Solid: true, Core: span(70, 110), Source: memory},
	{ID: "jack-6", Title: "Jack, category 6", FourPair: true, Thickest: 22, Thinnest: 24, Solid: true, Core: span(85, 145), Source: memory},
	{ID: "jack-6a", Title: "Jack, category 6A", FourPair: true, Thickest: 22, Thinnest: 26, Solid: true, Stranded: true, Core: span(85, 160), Source: sheets},
	{
		ID: "plug-5e", Title: "Plug, category 5e", Kind: Plug, FourPair: true, Thickest: 24, Thinnest: 26, Solid: true, Stranded: true,
		Core: span(80, 100), Jacket: span(450, 580), Source: memory,
	},
	{
		ID: "plug-6", Title: "Plug, category 6", Kind: Plug, FourPair: true, Thickest: 22, Thinnest: 28, Solid: true, Stranded: true,
		Jacket: span(550, 650), Source: sheets,
	},
	{
		ID: "pass-through-6", Title: "Pass-through plug, category 6", Kind: Plug, FourPair: true, Thickest: 23, Thinnest: 24, Solid: true, Stranded: true,
		Core: span(85, 110), Jacket: span(500, 650), PassThrough: true, Source: memory,
	},
	{
		ID: "plug-6a-narrow", Title: "Plug, category 6A, for insulation up to 1.1 mm", Kind: Plug, FourPair: true, Thickest: 22, Thinnest: 24, Solid: true, Stranded: true,
		Core: span(0, 110), Jacket: span(700, 950), Source: sheets,
	},
	{
		ID: "plug-6a-wide", Title: "Plug, category 6A, for insulation over 1.1 mm", Kind: Plug, FourPair: true, Thickest: 22, Thinnest: 24, Solid: true, Stranded: true,
		Core: span(110, 160), Jacket: span(700, 950), Source: sheets,
	},
	{ID: "coax-jack", Title: "Jack for coaxial cable, threaded", Thickest: 18, Thinnest: 20, Solid: true, Source: memory},
	{
		ID: "coax-plug", Title: "Plug for coaxial cable, series 6, compressed", Kind: Plug, Thickest: 18, Thinnest: 18, Solid: true,
		Core: span(440, 480), Jacket: span(650, 850), Source: memory,
	},
}
