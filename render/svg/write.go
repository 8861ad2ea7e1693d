package svg

import (
	"fmt"
	"io"

	"topplate/render/font"
	"topplate/render/sheet"
)

// Options says how to write.
type Options struct {
	// NoFonts leaves the fonts out: the file is small and easy to compare, but
	// looks right only where the Go fonts are installed.
	NoFonts bool
}

// Write writes the sheet. It returns what Check says of the sheet, before
// anything is written, or the first error of w.
func Write(w io.Writer, s *sheet.Sheet, o Options) error {
	if err := s.Check(); err != nil {
		return err
	}
	d := document{canvas: newCanvas(w), sheet: s}
	d.write(o)
	if err := d.finish(); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	return nil
}

// A document is a sheet that is being written.
type document struct {
	*canvas
	sheet *sheet.Sheet
	clips int // clip paths so far
}

func (d *document) write(o Options) {
	s := d.sheet
	d.raw("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
	d.open("svg",
		"xmlns", "http://www.w3.org/2000/svg",
		"width", num(s.Width)+"mm", "height", num(s.Height)+"mm",
		"viewBox", "0 0 "+num(s.Width)+" "+num(s.Height),
		"role", "img", "aria-labelledby", d.labels(),
		"xml:lang", s.Lang, "lang", s.Lang, "id", s.ID)
	d.words("title", s.Title, "id", s.TitleID())
	if s.Desc != "" {
		d.words("desc", s.Desc, "id", s.DescID())
	}
	if !o.NoFonts {
		d.words("metadata", notice)
	}
	d.css(styleRules(s, o))
	d.path(ringData([][]sheet.Point{s.Box().Corners()}, true), "class", penClass(sheet.PenMask))
	for _, g := range s.Groups {
		d.drawGroup(g)
	}
	d.shut("svg")
}

// labels lists the ids of the elements that name and describe the sheet.
func (d *document) labels() string {
	if d.sheet.Desc == "" {
		return d.sheet.TitleID()
	}
	return d.sheet.TitleID() + " " + d.sheet.DescID()
}

func (d *document) drawGroup(g *sheet.Group) {
	clip := ""
	if len(g.Clip) > 0 {
		clip = d.clip(g.Clip)
	}
	d.group("id", g.ID, "class", g.Class, "clip-path", clip)
	if g.Title != "" {
		d.words("title", g.Title)
	}
	if g.Desc != "" {
		d.words("desc", g.Desc)
	}
	for _, item := range g.Items {
		d.draw(item)
	}
	d.ungroup()
}

// clip defines a clip path and returns the reference to it. Its id starts with
// that of the title, as no group's does.
func (d *document) clip(outline []sheet.Point) string {
	d.clips++
	id := fmt.Sprintf("%s-clip-%d", d.sheet.TitleID(), d.clips)
	d.open("clipPath", "id", id)
	d.path(ringData([][]sheet.Point{outline}, true))
	d.shut("clipPath")
	return "url(#" + id + ")"
}

func (d *document) draw(item sheet.Item) {
	switch item := item.(type) {
	case *sheet.Group:
		d.drawGroup(item)
	case sheet.Line:
		d.poly(item.Pen, [][]sheet.Point{{item.A, item.B}}, false)
	case sheet.Poly:
		d.poly(item.Pen, item.Rings, item.Closed)
	case sheet.Circle:
		d.circle(item.Centre, item.Radius, "class", penClass(item.Pen))
	case sheet.Arc:
		d.arc(item)
	case sheet.Text:
		d.drawText(item)
	case sheet.Picture:
		d.picture(item)
	}
}

func (d *document) poly(pen sheet.Pen, rings [][]sheet.Point, closed bool) {
	data := ringData(rings, closed)
	if data == "" {
		return
	}
	d.path(data, "class", outlineClass(pen, closed))
}

// outlineClass is the class of what pen draws. An open line is not filled,
// even if the pen fills outlines.
func outlineClass(pen sheet.Pen, closed bool) string {
	if closed || pen.Style().Fill == sheet.NoColour {
		return penClass(pen)
	}
	return penClass(pen) + " open"
}

func (d *document) arc(a sheet.Arc) {
	if a.Full() {
		d.circle(a.Centre, a.Radius, "class", outlineClass(a.Pen, a.Pie))
		return
	}
	d.path(arcData(a), "class", outlineClass(a.Pen, a.Pie))
}

// anchors are the values of text-anchor; the first is the default.
var anchors = [...]string{sheet.Start: "", sheet.Middle: "middle", sheet.End: "end"}

func (d *document) drawText(t sheet.Text) {
	words := font.Clean(t.Lettering.Style().Face, t.Words)
	if words == "" {
		return
	}
	at := t.Baseline()
	class, turn := letteringClass(t.Lettering), ""
	if t.Halo {
		class += " halo"
	}
	if t.Turn != 0 {
		turn = "rotate(" + degrees(t.Turn) + " " + pair(at) + ")"
	}
	d.text(at, words, "class", class, "text-anchor", anchors[t.Align], "transform", turn)
}
