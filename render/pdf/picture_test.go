package pdf_test

import (
	"bytes"
	"image"
	"image/draw"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"topplate/render/sheet"
	"topplate/render/svg"
)

// The document and the SVG of a sheet give the same picture, by cairo and by
// poppler's own painter. Poppler makes lines that are thinner than a dot
// stronger, in either, and librsvg does not: so some dots differ. The shares
// that may are twice what was seen.
func TestPictureIsThatOfTheSVG(t *testing.T) {
	last := len(samples(t)) - 1
	for _, c := range []struct {
		sheet   *sheet.Sheet
		program string
		dpi     string
		share   float64
	}{
		{samples(t)[0], "pdftocairo", "100", 0.01},
		{everything(), "pdftocairo", "254", 0.001},
		{samples(t)[last], "pdftoppm", "100", 0.02},
	} {
		a, b := picturePDF(t, c.program, c.sheet, c.dpi), pictureSVG(t, c.sheet, c.dpi)
		dark, differ, total := compare(t, a, b)
		t.Logf("%s by %s: %.4f %% of %d dots differ, %.1f %% are dark", c.sheet.ID, c.program, 100*float64(differ)/float64(total), total, 100*float64(dark)/float64(total))
		if float64(differ) > c.share*float64(total) {
			t.Errorf("%s by %s: %d of %d dots differ, want at most a share of %g", c.sheet.ID, c.program, differ, total, c.share)
		}
		if dark < total/100 {
			t.Errorf("%s: only %d of %d dots are dark: is anything drawn?", c.sheet.ID, dark, total)
		}
	}
}

// Fills have the same tone: over squares of two millimetres, the means differ
// by a fraction of the step from white to light grey, which is 38.
func TestFillsAreThoseOfTheSVG(t *testing.T) {
	const side, most = 20, 9
	a, b := picturePDF(t, "pdftocairo", everything(), "254"), pictureSVG(t, everything(), "254")
	worst := 0
	for y := 0; y+side <= min(len(a), len(b)); y += side {
		for x := 0; x+side <= min(len(a[0]), len(b[0])); x += side {
			p, q := a.mean(x, y, side), b.mean(x, y, side)
			off := max(abs(p[0]-q[0]), abs(p[1]-q[1]), abs(p[2]-q[2]))
			worst = max(worst, off)
			if off > most {
				t.Errorf("at %d, %d mm the mean is %v, want %v", x/10, y/10, p, q)
			}
		}
	}
	t.Logf("means differ by %d at most", worst)
}

// mean is the mean of a square of dots.
func (m raster) mean(x, y, side int) dot {
	var sum dot
	for _, row := range m[y : y+side] {
		for _, d := range row[x : x+side] {
			for i := range sum {
				sum[i] += d[i]
			}
		}
	}
	for i := range sum {
		sum[i] /= side * side
	}
	return sum
}

// A raster is a picture as rows of dots.
type raster [][]dot

type dot [3]int

func (d dot) darkest() int { return min(d[0], d[1], d[2]) }

// compare counts the dots of a that are dark, those that differ, and all. A
// dot differs if no dot next to it in the other picture is like it, so that an
// edge may lie half a dot aside.
func compare(t *testing.T, a, b raster) (dark, differ, total int) {
	t.Helper()
	if abs(len(a)-len(b)) > 1 || abs(len(a[0])-len(b[0])) > 1 {
		t.Fatalf("the pictures have %d by %d and %d by %d dots", len(a[0]), len(a), len(b[0]), len(b))
	}
	for y := 1; y < min(len(a), len(b))-1; y++ {
		for x := 1; x < min(len(a[0]), len(b[0]))-1; x++ {
			p, q := a[y][x], b[y][x]
			if p.darkest() < 128 {
				dark++
			}
			if p != q && (!p.near(b, x, y) || !q.near(a, x, y)) {
				differ++
			}
			total++
		}
	}
	return dark, differ, total
}

// near reports whether m has a dot like d at x, y or next to it.
func (d dot) near(m raster, x, y int) bool {
	const third = 85 // of the way between black and white
	for _, row := range m[y-1 : y+2] {
		for _, e := range row[x-1 : x+2] {
			if max(abs(d[0]-e[0]), abs(d[1]-e[1]), abs(d[2]-e[2])) <= third {
				return true
			}
		}
	}
	return false
}

func abs(x int) int { return max(x, -x) }

func picturePDF(t *testing.T, program string, s *sheet.Sheet, dpi string) raster {
	t.Helper()
	out := filepath.Join(t.TempDir(), "out")
	run(t, written(t, "Set", s), program, "-r", dpi, "-png", "-singlefile", "in", out)
	return picture(t, out+".png")
}

func pictureSVG(t *testing.T, s *sheet.Sheet, dpi string) raster {
	t.Helper()
	rsvg := tool(t, "rsvg-convert")
	var b bytes.Buffer
	if err := svg.Write(&b, s, svg.Options{}); err != nil {
		t.Fatal(err)
	}
	in := filepath.Join(t.TempDir(), "in.svg")
	if err := os.WriteFile(in, b.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	out := in + ".png"
	if text, err := exec.Command(rsvg, "-d", dpi, "-p", dpi, in, "-o", out).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, text)
	}
	return picture(t, out)
}

func picture(t *testing.T, path string) raster {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	m, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	size := m.Bounds().Size()
	flat := image.NewRGBA(image.Rect(0, 0, size.X, size.Y))
	draw.Draw(flat, flat.Bounds(), m, m.Bounds().Min, draw.Src)
	out := make(raster, size.Y)
	for y := range out {
		for x := range size.X {
			c := flat.Pix[y*flat.Stride+4*x:]
			out[y] = append(out[y], dot{int(c[0]), int(c[1]), int(c[2])})
		}
	}
	return out
}
