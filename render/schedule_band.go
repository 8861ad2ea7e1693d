package render

import (
	"topplate/render/font"
	"topplate/render/sheet"
)

// Sizes of the band over a portion: a frame with a solid tab at its left end,
// which shows in any print.
const (
	bandHeight = 7 * sheet.MM
	bandTab    = 3 * sheet.MM
)

// bandStrip is a band with a name on the left and an aside on the right, or
// below it if there is no room for both side by side.
func bandStrip(name, aside string, width sheet.Paper) strip {
	room := width - bandTab - 4*sheet.MM
	under := font.Width(sheet.LetterHeading, name)+font.Width(sheet.LetterTag, aside)+4*sheet.MM > room
	height := bandHeight
	if under {
		height += font.LineHeight(sheet.LetterTag)
	}
	return strip{height: height + sheet.MM/2, draw: func(g *sheet.Group, at sheet.Point) {
		box := sheet.Bx(at.X, at.Y, width, height)
		g.Polyline(sheet.PenMedium, append(box.Corners(), box.Min)...)
		g.Rect(sheet.PenSolid, sheet.Bx(box.Min.X, box.Min.Y, bandTab, height))
		x, y := box.Min.X+bandTab+2*sheet.MM, box.Min.Y+bandHeight/2
		g.Add(sheet.Text{Lettering: sheet.LetterHeading, At: sheet.Pt(x, y), Level: sheet.OnHalf, Words: font.Fit(sheet.LetterHeading, name, room)})
		right := sheet.Text{Lettering: sheet.LetterTag, At: sheet.Pt(box.Max.X-2*sheet.MM, y), Align: sheet.End, Level: sheet.OnHalf, Words: font.Fit(sheet.LetterTag, aside, room)}
		if under {
			right.At, right.Align = sheet.Pt(x, box.Max.Y-font.LineHeight(sheet.LetterTag)*3/4), sheet.Start
		}
		g.Add(right)
	}}
}
