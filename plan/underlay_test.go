package plan

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"maps"
	"strings"
	"testing"

	"topplate/plan/geom"
)

func pngOf(t testing.TB, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func jpegOf(t testing.TB, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// underlaid loads a job in the base house with underlays and pictures.
func underlaid(t testing.TB, underlays string, pictures map[string][]byte) (*Job, string) {
	t.Helper()
	read := map[string]string{
		"jobs/job.toml":    complete(t, "house = \"../h/house.toml\"\n", "testdata/base_job.toml"),
		"h/house.toml":     complete(t, underlays, "testdata/base_house.toml"),
		"jobs/unused.toml": "",
	}
	for name, p := range pictures {
		read[name] = string(p)
	}
	j, list := LoadJob("jobs/job.toml", files(maps.Clone(read)))
	return j, print(t, list)
}

// Where points of a picture are, worked out by hand. The first is at a scale of
// 900 dots to 30 ft, that is 0.4 in to the dot. The second is turned by a quarter
// against the clock: right in the picture is north in the house, and down is
// east, at 1 in to the dot; it is given again by two points below each other. The
// last goes 300 east and 400 north in 500 in over
// 500 dots level: 0.6 in east and 0.8 in north for each dot to the right, and for
// each dot up 0.8 in west and 0.6 in north.
func TestUnderlayPlaces(t *testing.T) {
	blank := pngOf(t, image.NewGray(image.Rect(0, 0, 1000, 1000)))
	for _, c := range []struct {
		dots, at string
		x, y     int
		want     geom.Point
	}{
		{`[[100, 900], [1000, 900]]`, `[["0ft", "0ft"], ["30ft", "0ft"]]`, 0, 0, geom.Point{X: -40 * inch, Y: 360 * inch}},
		{`[[100, 900], [1000, 900]]`, `[["0ft", "0ft"], ["30ft", "0ft"]]`, 1000, 1000, geom.Point{X: 360 * inch, Y: -40 * inch}},
		{`[[0, 0], [100, 0]]`, `[["10ft", "0ft"], ["10ft", "100in"]]`, 0, 7, geom.Point{X: 127 * inch}},
		{`[[0, 0], [100, 0]]`, `[["10ft", "0ft"], ["10ft", "100in"]]`, 12, 7, geom.Point{X: 127 * inch, Y: 12 * inch}},
		{`[[0, 0], [0, 100]]`, `[["0ft", "0ft"], ["100in", "0ft"]]`, 12, 7, geom.Point{X: 7 * inch, Y: 12 * inch}},
		{`[[0, 500], [500, 500]]`, `[["0ft", "0ft"], ["300in", "400in"]]`, 10, 495, geom.Point{X: 2 * inch, Y: 11 * inch}},
	} {
		j, said := underlaid(t, "[[underlay]]\nid = \"u\"\nfile = \"u.png\"\ndots = "+c.dots+"\nat = "+c.at+"\n", map[string][]byte{"h/u.png": blank})
		if j == nil {
			t.Fatal(said)
		}
		u := &j.House.Underlays[0]
		if got := u.Place(c.x, c.y); got != c.want {
			t.Errorf("%s at %s: %d, %d is at %v, want %v", c.dots, c.at, c.x, c.y, got, c.want)
		}
		if u.Width != 1000 || u.Height != 1000 || u.Step != 1 || !u.OnFloor || !u.OnSketch {
			t.Errorf("the picture is %+v", u)
		}
		if in := j.Inputs[2]; in != (Input{"../h/u.png", sha256.Sum256(blank)}) || len(j.Inputs) != 3 {
			t.Errorf("inputs are %v", j.Inputs)
		}
	}
}

// A large picture is kept with the mean of some dots for one, on white paper.
func TestUnderlayIsReduced(t *testing.T) {
	m := image.NewNRGBA(image.Rect(0, 0, 3201, 5))
	for y := range 5 {
		for x := range 3201 {
			m.SetNRGBA(x, y, color.NRGBA{A: 255})
			if x%3 == 0 {
				m.SetNRGBA(x, y, color.NRGBA{R: 10, G: 20, B: 30, A: 0}) // the paper
			}
		}
	}
	p, err := readPicture(pngOf(t, m))
	if err != nil {
		t.Fatal(err)
	}
	if p.step != 3 || p.grey.Rect != image.Rect(0, 0, 1067, 2) || p.width != 3201 || p.height != 5 {
		t.Fatalf("got %v, step %d", p.grey.Rect, p.step)
	}
	for i, v := range p.grey.Pix {
		if v != 85 { // a third of 255
			t.Fatalf("dot %d is %d", i, v)
		}
	}
	for _, src := range [][]byte{
		jpegOf(t, image.NewGray(image.Rect(0, 0, 40, 30))), jpegOf(t, image.NewRGBA(image.Rect(0, 0, 40, 30))),
		pngOf(t, image.NewPaletted(image.Rect(0, 0, 40, 30), color.Palette{color.Black, color.White})),
	} {
		if p, err := readPicture(src); err != nil || p.grey.Rect != image.Rect(0, 0, 40, 30) || p.grey.Pix[77] > 3 {
			t.Errorf("%v, %v", p, err)
		}
	}
}

// exifOf puts an Exif segment with an orientation into a JPEG.
func exifOf(src []byte, order string, turn byte) []byte {
	tiff := []byte("MM\x00\x2a\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00" + string(turn) + "\x00\x00\x00\x00\x00\x00")
	if order == "II" {
		tiff = []byte("II\x2a\x00\x08\x00\x00\x00\x01\x00\x12\x01\x03\x00\x01\x00\x00\x00" + string(turn) + "\x00\x00\x00\x00\x00\x00\x00")
	}
	body := append([]byte("Exif\x00\x00"), tiff...)
	out := append([]byte{0xff, 0xd8, 0xff, 0xe1, 0, byte(len(body) + 2)}, body...)
	return append(out, src[2:]...)
}

func TestUnderlayFaults(t *testing.T) {
	good := pngOf(t, image.NewGray(image.Rect(0, 0, 400, 300)))
	photo := jpegOf(t, image.NewGray(image.Rect(0, 0, 400, 300)))
	huge := bytes.Clone(good)
	copy(huge[16:24], []byte{0, 0, 0x20, 0, 0, 0, 0x20, 0}) // 8192 by 8192, and a checksum that is off
	const table = "[[underlay]]\nid = \"u\"\nfile = \"u.png\"\ndots = [[0, 0], [300, 0]]\nat = [[\"0ft\", \"0ft\"], [\"30ft\", \"0ft\"]]\n"
	for _, c := range []struct {
		name, old, new string
		picture        []byte
		want           string
	}{
		{"good", "", "", good, ""},
		{"upright photo", "", "", exifOf(photo, "MM", 1), ""},
		{"turned photo", "", "", exifOf(photo, "MM", 6), `house.toml:3:8: error: underlay[0].file: found a photo that is turned by a mark in the file (Exif orientation 6)`},
		{"turned the other way", "", "", exifOf(photo, "II", 8), `(Exif orientation 8)`},
		{"none", "", "", nil, `house.toml:3:8: error: underlay[0].file: cannot read "h/u.png": there is no such file`},
		{"no picture", "", "", []byte("GIF89a"), `underlay[0].file: found a file that is no picture; want a PNG or a JPEG`},
		{"cut short", "", "", good[:len(good)/2], `found a broken picture (`},
		{"photo cut short", "", "", photo[:len(photo)/2], `found a broken picture (`},
		{"head alone", "", "", good[:20], `found a broken picture (`},
		{"too large", "", "", fixedSum(huge), `found a picture of 8192 by 8192 dots; want at most 25 million in all`},
		{"dot outside", "300, 0]", "401, 0]", good, `house.toml:4:8: error: underlay[0].dots: found the point [401, 0], which is not in the picture, of 400 by 300 dots`},
		{"far away", `["30ft", "0ft"]`, `["2000ft", "0ft"]`, good, `found a picture that would reach as far as`},
		{"one dot", "[0, 0], ", "", good, `underlay[0].dots: found 1 point; want two points`},
		{"near dots", "300, 0]", "9, 0]", good, `found two points less than 20 dots apart`},
		{"near places", `["30ft", "0ft"]`, `["2ft", "0ft"]`, good, `found two places less than 3ft apart`},
		{"three numbers", "300, 0]", "300, 0, 1]", good, `underlay[0].dots[1]: found 3 numbers; want a point of the picture`},
		{"no number", "300, 0]", `"a", 0]`, good, `underlay[0].dots[1][0]: found`},
		{"no dots", "dots = [[0, 0], [300, 0]]\n", "", good, `underlay[0].dots: missing; want two points`},
		{"flat dots", "[[0, 0], [300, 0]]", "[0, 0]", good, `underlay[0].dots[0]: found no point`},
		{"text for dots", "[[0, 0], [300, 0]]", `"x"`, good, `underlay[0].dots: found no array`},
		{"no place", "at = [", "or = [", good, `underlay[0].at: missing`},
		{"sheet", "file", "sheet = \"attic\"\nfile", good, `underlay[0].sheet: found "attic"; want "both", "floor" or "sketch"`},
		{"level", "file", "level = \"grond\"\nfile", good, `underlay[0].level: found "grond", which is no level`},
		{"no file", "file = \"u.png\"\n", "", good, `underlay[0].file: missing`},
	} {
		pictures := map[string][]byte{}
		if c.picture != nil {
			pictures["h/u.png"] = c.picture
		}
		j, said := underlaid(t, strings.Replace(table, c.old, c.new, 1), pictures)
		if (j != nil) != (c.want == "") || !strings.Contains(said, c.want) {
			t.Errorf("%s: loaded %v, said\n%swant %s", c.name, j != nil, said, c.want)
		}
	}
}

// fixedSum mends the checksum of the first chunk of a PNG.
func fixedSum(src []byte) []byte {
	sum := crcOf(src[12:29])
	copy(src[29:33], []byte{byte(sum >> 24), byte(sum >> 16), byte(sum >> 8), byte(sum)})
	return src
}

// crcOf is the checksum of PNG chunks (ISO/IEC 15948, annex D).
func crcOf(b []byte) uint32 {
	sum := ^uint32(0)
	for _, c := range b {
		sum ^= uint32(c)
		for range 8 {
			sum = sum>>1 ^ 0xedb88320*(sum&1)
		}
	}
	return ^sum
}

func FuzzReadPicture(f *testing.F) {
	photo := jpegOf(f, image.NewGray(image.Rect(0, 0, 20, 10)))
	for _, src := range [][]byte{photo, exifOf(photo, "II", 3), pngOf(f, image.NewGray(image.Rect(0, 0, 20, 10))), []byte("\xff\xd8\xff\xe1\x00\x04ab")} {
		f.Add(src)
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		p, err := readPicture(src)
		if err == nil && (p.grey == nil || p.step < 1 || max(p.grey.Rect.Dx(), p.grey.Rect.Dy()) > mostKeptSide) {
			t.Fatal(fmt.Sprint(p))
		}
	})
}
