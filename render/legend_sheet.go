package render

import (
	"topplate/render/sheet"
	"topplate/route"
)

// seeLegend is the id of a group, without items, of sheets whose column has no
// room for a legend.
const seeLegend = "see-legend"

// legendSheet explains the lines and symbols of all sheets that have no room
// for a legend of their own. It is nil where each has one.
func legendSheet(res *route.Result, sheets []*sheet.Sheet) *sheet.Sheet {
	var used []*sheet.Sheet
	for _, s := range sheets {
		for _, g := range s.Groups {
			if g.ID == seeLegend {
				used = append(used, s)
			}
		}
	}
	if len(used) == 0 {
		return nil
	}
	d := &drawing{page: newPageAs(res, "legend", "Legend", "What the lines and symbols of the sheets mean.", "legend"), scope: everywhere}
	g := d.sheet.Group("samples", "samples", "Lines and symbols")
	width := (d.area.Width() - 3*padding) / 2
	box := sheet.Bx(d.area.Min.X+padding, d.area.Min.Y+padding, width, 6*sheet.MM)
	for _, s := range d.allSymbols(used) {
		if box.Max.Y > d.area.Max.Y-padding {
			box = sheet.Bx(box.Max.X+padding, d.area.Min.Y+padding, width, box.Height())
		}
		s.row(g, box)
		box.Min.Y, box.Max.Y = box.Max.Y, box.Max.Y+box.Height()
	}
	d.cautions()
	return d.sheet
}

// allSymbols are the pens that some sheets use, and all symbols.
func (d *drawing) allSymbols(used []*sheet.Sheet) []legendSymbol {
	together := &sheet.Sheet{}
	for _, s := range used {
		together.Groups = append(together.Groups, s.Groups...)
	}
	out := penSymbols(together.Pens())
	for _, more := range [][]legendSymbol{d.dropSymbols(), d.floorSymbols(), hatchSymbols(), fixSymbols, elevationKind.symbols[:1], elevationKind.symbols[2:]} {
		out = append(out, more...)
	}
	return out
}
