package pdf_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"strings"
	"testing"

	"topplate/render/pdf"
	"topplate/render/sheet"
)

// quarters is a picture of some width whose quarters are black, grey, grey and
// white from the top left.
func quarters(t testing.TB, width int) []byte {
	t.Helper()
	m := image.NewGray(image.Rect(0, 0, width, 48))
	for y := range 48 {
		for x := range width {
			m.SetGray(x, y, color.Gray{uint8(x*2/width)*110 + uint8(y/24)*145})
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// photos is a sheet with a picture that lies level and one that is turned by a
// quarter against the clock and clipped.
func photos(t testing.TB) *sheet.Sheet {
	s := sheet.New("photos", "Photos", sheet.Format{Name: "small", Width: 60 * mm, Height: 40 * mm})
	g := s.Group("g", "underlay", "Photos")
	g.Add(sheet.Picture{
		JPEG: quarters(t, 64), Width: 64, Height: 48,
		TopLeft: sheet.Pt(5*mm, 5*mm), TopRight: sheet.Pt(21*mm, 5*mm), BottomLeft: sheet.Pt(5*mm, 17*mm),
	})
	clipped := g.Group("clipped", "", "")
	clipped.Clip = sheet.Bx(30*mm, 10*mm, 20*mm, 20*mm).Corners()
	clipped.Add(sheet.Picture{
		JPEG: quarters(t, 80), Width: 80, Height: 48,
		TopLeft: sheet.Pt(30*mm, 34*mm), TopRight: sheet.Pt(30*mm, 10*mm), BottomLeft: sheet.Pt(50*mm, 34*mm),
	})
	g.Line(sheet.PenCable, sheet.Pt(5*mm, 38*mm), sheet.Pt(55*mm, 38*mm))
	return s
}

// Pictures are where they belong, in the PDF and in the SVG, and what is drawn
// after them is where it would be without.
func TestPictures(t *testing.T) {
	a, b := picturePDF(t, "pdftocairo", photos(t), "254"), pictureSVG(t, photos(t), "254")
	for _, m := range []struct {
		name string
		raster
	}{{"PDF", a}, {"SVG", b}} {
		for _, c := range []struct {
			what string
			x, y int // tenths of a millimetre, of the middle of two by two
			want int
		}{
			{"top left", 80, 80, 0},
			{"top right", 180, 80, 110},
			{"bottom left", 80, 140, 145},
			{"bottom right", 180, 140, 255},
			{"turned: top left is at the lower left", 330, 270, 0},
			{"turned: top right is at the upper left", 330, 130, 110},
			{"turned: bottom left is at the lower right", 470, 270, 145},
			{"turned: bottom right is at the upper right", 470, 130, 255},
			{"turned: clipped", 330, 320, 255},
			{"paper", 250, 80, 255},
		} {
			got := m.mean(c.x-10, c.y-10, 20)
			if abs(got[0]-c.want) > 4 || got[0] != got[1] || got[1] != got[2] {
				t.Errorf("%s, %s: %v, want %d", m.name, c.what, got, c.want)
			}
		}
		if got := m.mean(100, 379, 2); got[0] > 80 {
			t.Errorf("%s: the line under the pictures is %v", m.name, got)
		}
	}
	_, differ, total := compare(t, a, b)
	if differ > total/500 {
		t.Errorf("%d of %d dots differ", differ, total)
	}
}

// The same pictures give the same bytes, and two that differ and are of one
// width, of which the library would take either first, are refused.
func TestPicturesAreInOrder(t *testing.T) {
	first := written(t, "Set", photos(t), everything())
	for range 20 {
		if !bytes.Equal(first, written(t, "Set", photos(t), everything())) {
			t.Fatal("the bytes differ")
		}
	}
	if n := strings.Count(string(written(t, "Set", photos(t))), "/Subtype /Image"); n != 2 {
		t.Errorf("the document has %d pictures, want 2", n)
	}
	s := photos(t)
	other := quarters(t, 64)
	other[len(other)-3] ^= 1
	s.Groups[0].Add(sheet.Picture{JPEG: other, Width: 64, Height: 48, TopRight: sheet.Pt(1, 0), BottomLeft: sheet.Pt(0, 1)})
	var b bytes.Buffer
	if err := pdf.Write(&b, "Set", []*sheet.Sheet{s}); err == nil || b.Len() > 0 {
		t.Errorf("two pictures of one width are written: %v", err)
	}
}
