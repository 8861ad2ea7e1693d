package svg

import (
	"encoding/base64"
	"strconv"

	"topplate/render/sheet"
)

// picture draws a picture, which is part of the file: one dot is one unit
// before it is laid on the sheet.
func (d *document) picture(p sheet.Picture) {
	across, down := p.TopRight.Sub(p.TopLeft), p.BottomLeft.Sub(p.TopLeft)
	part := func(l sheet.Paper, dots int) string {
		return strconv.FormatFloat(millimetres(l)/float64(dots), 'f', 9, 64) + " "
	}
	d.empty("image",
		"width", strconv.Itoa(p.Width), "height", strconv.Itoa(p.Height), "preserveAspectRatio", "none",
		"transform", "matrix("+part(across.X, p.Width)+part(across.Y, p.Width)+part(down.X, p.Height)+part(down.Y, p.Height)+pair(p.TopLeft)+")",
		"href", "data:image/jpeg;base64,"+base64.StdEncoding.EncodeToString(p.JPEG))
}
