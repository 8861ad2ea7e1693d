package svg

import (
	"image"
	"image/color"
	"image/png"
	"os"
	"testing"
)

// checkPicture looks at dots of the sheet that everything makes, at ten dots to
// the millimetre.
func checkPicture(t *testing.T, path string) {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	picture, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if got := picture.Bounds().Size(); got != image.Pt(600, 400) {
		t.Fatalf("the picture has %v dots, want 600 by 400", got)
	}
	for _, c := range []struct {
		what string
		x, y int
		want color.Gray
	}{
		{"paper", 590, 390, color.Gray{255}},
		{"edge of the wall", 150, 50, color.Gray{0}},
		{"fill of the wall", 150, 55, color.Gray{217}},
		{"hole in the wall", 150, 100, color.Gray{255}},
		{"cable", 150, 200, color.Gray{87}}, // the grey of blue
		{"circle", 320, 105, color.Gray{0}},
		{"inside of the circle", 300, 105, color.Gray{255}},
		{"swing, 45° up", 435, 165, color.Gray{0}},
		{"inside of a full arc, not filled", 500, 200, color.Gray{255}},
	} {
		got := color.GrayModel.Convert(picture.At(c.x, c.y)).(color.Gray)
		if d := int(got.Y) - int(c.want.Y); d < -60 || d > 60 {
			t.Errorf("%s at %d, %d is %d, want %d", c.what, c.x, c.y, got.Y, c.want.Y)
		}
	}
}
