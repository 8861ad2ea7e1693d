package svg

import (
	"strings"
	"testing"

	"topplate/render/sheet"
)

// A picture is one element that carries its bytes: 8 by 4 dots over 4 mm to the
// right and 1 mm down, and over 1 mm to the left and 4 mm down.
func TestPicture(t *testing.T) {
	s := sheet.New("s", "S", sheet.A4)
	s.Group("g", "", "").Add(sheet.Picture{
		JPEG: []byte("<jpeg>"), Width: 8, Height: 4,
		TopLeft: sheet.Pt(10*mm, 20*mm), TopRight: sheet.Pt(14*mm, 21*mm), BottomLeft: sheet.Pt(9*mm, 24*mm),
	})
	const want = `<image width="8" height="4" preserveAspectRatio="none" transform="matrix(0.500000000 0.125000000 -0.250000000 1.000000000 10 20)" href="data:image/jpeg;base64,PGpwZWc+"/>`
	if got := written(t, s, Options{NoFonts: true}); !strings.Contains(got, want) {
		t.Errorf("%s\nis not in\n%s", want, got)
	}
}
