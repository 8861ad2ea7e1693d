package label

import (
	"topplate/render/font"
	"topplate/render/sheet"
)

func (p *Problem) avoidText(t sheet.Text) {
	if b := font.Box(t); b.Width() > 0 {
		p.Boxes = append(p.Boxes, b)
	}
}

func (p *Problem) avoidStrokes(pen sheet.Pen, item sheet.Item) {
	style := pen.Style()
	soft := pen == sheet.PenHatch || pen == sheet.PenZone
	for _, s := range item.Strokes() {
		if style.Fill == sheet.Black {
			p.Boxes = append(p.Boxes, sheet.Bounds(s...))
		}
		if style.Stroke == sheet.NoColour {
			continue
		}
		for i := 1; i < len(s); i++ {
			p.Lines = append(p.Lines, Line{A: s[i-1], B: s[i], Soft: soft})
		}
	}
}
