package pdf

import (
	"strings"

	"topplate/render/sheet"
)

// A page is a sheet that is being written.
type page struct {
	*document
	height sheet.Paper
	pen    sheet.Pen // whose look is set, if ready
	ready  bool
}

// put writes operators into the content of the page.
func (p *page) put(parts ...string) { p.lib.RawWriteStr(strings.Join(parts, " ")) }

// draw writes the sheet. From the first operator on, one unit is a millimetre
// and the origin is the top left corner.
func (p *page) draw(s *sheet.Sheet) {
	k := real(pointsPerMM)
	p.put("q", k, "0 0 -"+k, "0", real(millimetres(s.Height)*pointsPerMM), "cm")
	p.put("2 M") // the limit of mitres of the SVG
	for _, g := range s.Groups {
		p.group(g)
	}
	p.put("Q")
}

func (p *page) group(g *sheet.Group) {
	if len(g.Clip) > 0 {
		p.put("q", ringPath([][]sheet.Point{g.Clip}, true), "W n")
		defer p.unclip()
	}
	for _, item := range g.Items {
		p.item(item)
	}
}

// unclip ends a clip. The look of lines is again what it was before the clip,
// which no one has noted.
func (p *page) unclip() {
	p.put("Q")
	p.ready = false
}

func (p *page) item(item sheet.Item) {
	switch item := item.(type) {
	case *sheet.Group:
		p.group(item)
	case sheet.Line:
		p.paint(item.Pen, ringPath([][]sheet.Point{{item.A, item.B}}, false), false)
	case sheet.Poly:
		p.paint(item.Pen, ringPath(item.Rings, item.Closed), item.Closed)
	case sheet.Circle:
		p.paint(item.Pen, arcPath(fullArc(item)), true)
	case sheet.Arc:
		p.paint(item.Pen, arcPath(item), item.Pie)
	case sheet.Text:
		p.text(item)
	case sheet.Picture:
		p.picture(item)
	}
}

// paint draws a path with a pen. An open line is not filled, even if the pen
// fills outlines.
func (p *page) paint(pen sheet.Pen, path string, fills bool) {
	s := pen.Style()
	operator := ""
	switch fills = fills && s.Fill != sheet.NoColour; {
	case fills && s.Stroke != sheet.NoColour:
		operator = "B*"
	case fills:
		operator = "f*"
	case s.Stroke != sheet.NoColour:
		operator = "S"
	}
	if path == "" || operator == "" {
		return
	}
	p.take(pen)
	p.put(path, operator)
}

// take sets the look of a pen, unless it is set.
func (p *page) take(pen sheet.Pen) {
	if p.ready && p.pen == pen {
		return
	}
	p.pen, p.ready = pen, true
	s := pen.Style()
	if s.Fill != sheet.NoColour {
		p.put(colour(s.Fill), "rg")
	}
	if s.Stroke == sheet.NoColour {
		return
	}
	var dashes []string
	for _, d := range s.Dashes() {
		dashes = append(dashes, num(d))
	}
	p.put(colour(s.Stroke), "RG", num(s.Width), "w", "["+strings.Join(dashes, " ")+"] 0 d")
}
