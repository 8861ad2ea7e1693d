package render

import (
	"bytes"
	"image"
	"image/jpeg"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/render/sheet"
)

// How pictures under a drawing are written (common practice, no source): the
// blackest dot keeps a third of its ink, so that lines and words stand out.
const (
	underlayInk     = 33 // per cent
	underlayQuality = 80 // of a JPEG, of 100
)

// drawUnderlays draws the pictures that lie under a floor plan, or under the
// check sheet of one. It comes before all else, and nothing keeps clear of it.
func (d *drawing) drawUnderlays(on func(*plan.Underlay) bool) {
	all := slices.SortedFunc(slices.Values(d.res.Job.House.Underlays), func(a, b plan.Underlay) int { return strings.Compare(a.ID, b.ID) })
	widths := map[int]bool{}
	var g *sheet.Group
	for i := range all {
		u := &all[i]
		if u.Picture == nil {
			continue
		}
		p := underlayPicture(d.view, u, widths)
		if !on(u) {
			continue
		}
		if g == nil {
			g = d.sheet.Group("underlays", "underlay", "Pictures under the drawing")
			if g.Clip = d.area.Corners(); d.tile != nil {
				g.Clip = d.tile.window.Corners()
			}
		}
		pg := g.Group(sheet.ID("underlay", u.ID), "underlay", u.ID)
		pg.Add(p)
	}
}

// underlayPicture is a picture faint, where it belongs in a view. Each is of
// another width, by white dots at its right edge: a PDF needs that to be the
// same again.
func underlayPicture(v sheet.View, u *plan.Underlay, widths map[int]bool) sheet.Picture {
	size := u.Picture.Rect.Size()
	for widths[size.X] {
		size.X++
	}
	widths[size.X] = true
	faint := image.NewGray(image.Rectangle{Max: size})
	for y := range size.Y {
		for x := range size.X {
			dark := 0
			if (image.Point{x, y}).In(u.Picture.Rect) {
				dark = 255 - int(u.Picture.GrayAt(x, y).Y)
			}
			faint.Pix[y*faint.Stride+x] = uint8(255 - dark*underlayInk/100)
		}
	}
	var b bytes.Buffer
	// A picture in memory and of this size is always written.
	_ = jpeg.Encode(&b, faint, &jpeg.Options{Quality: underlayQuality})
	corner := func(x, y int) sheet.Point { return v.Point(u.Place(x*u.Step, y*u.Step)) }
	return sheet.Picture{
		JPEG: b.Bytes(), Width: size.X, Height: size.Y,
		TopLeft: corner(0, 0), TopRight: corner(size.X, 0), BottomLeft: corner(0, size.Y),
	}
}
