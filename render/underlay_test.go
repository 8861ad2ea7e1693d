package render_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"topplate/plan/source"
	"topplate/render"
	"topplate/render/sheet"
)

// withScans reads a job whose house has underlays, and for each of their files
// the same picture but for one dot.
func withScans(t testing.TB, tables string, read func(string) ([]byte, error)) func(string) ([]byte, error) {
	return func(path string) ([]byte, error) {
		if name := filepath.Base(path); strings.HasSuffix(name, ".png") {
			m := image.NewGray(image.Rect(0, 0, 200, 160))
			m.SetGray(0, 0, color.Gray{name[0]})
			var b bytes.Buffer
			if err := png.Encode(&b, m); err != nil {
				t.Fatal(err)
			}
			return b.Bytes(), nil
		}
		src, err := read(path)
		if strings.HasPrefix(filepath.Base(path), "house") {
			src = append(slices.Clone(src), tables...)
		}
		return src, err
	}
}

const (
	scanA = "\n[[underlay]]\nid = \"a\"\nfile = \"a.png\"\ndots = [[0, 160], [200, 160]]\nat = [[\"0ft\", \"0ft\"], [\"20ft\", \"0ft\"]]\n"
	scanB = "\n[[underlay]]\nid = \"b\"\nfile = \"b.png\"\nsheet = \"sketch\"\ndots = [[0, 0], [100, 0]]\nat = [[\"5ft\", \"0ft\"], [\"5ft\", \"10ft\"]]\n"
)

func picturesOn(s *sheet.Sheet) (all []sheet.Picture) {
	for item := range s.All() {
		if p, ok := item.(sheet.Picture); ok {
			all = append(all, p)
		}
	}
	return all
}

// Pictures are on the floor sheet and the check sheet of the floor, as they say,
// and on no other; they lie where their two points are, under all that is drawn,
// faint, and change nothing of it.
func TestUnderlays(t *testing.T) {
	plain := solveFile(t, "../samples/corner-house/job.toml")
	res := solve(t, "../samples/corner-house/job.toml", withScans(t, scanA+scanB, source.ReadFile))
	w := whole(t, res)
	for _, s := range append(everySheet(w), render.Sketch(res)...) {
		want := map[string]int{"floor": 1, "sketch": 2}[s.ID]
		got := picturesOn(s)
		if len(got) != want {
			t.Errorf("%s has %d pictures, want %d", s.ID, len(got), want)
		}
		if want == 0 {
			continue
		}
		// 20 ft over 200 dots, and so 16 ft up.
		foot := s.View.Scale.Paper(12 * 25_400_000)
		zero := s.View.Point(res.Job.House.Underlays[0].Place(0, 160))
		a := got[0]
		if d := a.TopRight.Sub(zero); a.BottomLeft != zero || abs(d.X-20*foot) > 20 || abs(d.Y+16*foot) > 20 {
			t.Errorf("%s: the first picture is at %v, %v; zero is at %v", s.ID, a.BottomLeft, a.TopRight, zero)
		}
		for i, g := range s.Groups {
			if g.ID == "underlays" && (g.Clip == nil || s.Groups[i+1].ID == "" || drawn(s.Groups[:i])) {
				t.Errorf("%s: the pictures are over what is drawn, or not clipped", s.ID)
			}
		}
		m, err := jpeg.Decode(bytes.NewReader(a.JPEG))
		if err != nil || m.Bounds().Dx() != a.Width || m.Bounds().Dy() != a.Height {
			t.Fatalf("%v, %v", m.Bounds(), err)
		}
		if got := m.(*image.Gray).GrayAt(100, 80).Y; got < 165 || got > 176 { // black with a third of its ink
			t.Errorf("black is drawn as %d", got)
		}
	}
	if n := len(render.Sheets(fixed(plain))); n != len(render.Sheets(fixed(res))) {
		t.Errorf("got %d sheets", n)
	}
	files := func(tables string) map[string]string {
		res := solve(t, "../samples/corner-house/job.toml", withScans(t, tables, source.ReadFile))
		all, err := render.Folder(whole(t, res), render.Also{Sketch: true})
		if err != nil {
			t.Fatal(err)
		}
		out := map[string]string{}
		for _, f := range all {
			out[f.Name] = string(f.Data)
		}
		return out
	}
	one, other, none := files(scanA+scanB), files(scanB+scanA), files("")
	for name, data := range one {
		if name != "manifest.json" && data != other[name] {
			t.Errorf("%s follows the order of the tables", name)
		}
		if strings.HasSuffix(name, ".dxf") && data != none[name] {
			t.Errorf("%s differs from that without pictures", name)
		}
		if strings.HasPrefix(name, "openings") && data != none[name] {
			t.Errorf("%s, which is for the homeowner, differs from that without pictures", name)
		}
	}
}

func abs(p sheet.Paper) sheet.Paper { return max(p, -p) }

// drawn reports whether groups have more than the frame and the column.
func drawn(groups []*sheet.Group) bool {
	return slices.ContainsFunc(groups, func(g *sheet.Group) bool { return g.ID == "house" || g.ID == "roof" })
}

// On tiles a picture is cut to what each of them shows.
func TestUnderlaysOnTiles(t *testing.T) {
	res := solve(t, "testdata/long-building/job.toml", withScans(t, scanA, source.ReadFile))
	tiles := 0
	for _, s := range render.Sketch(res) {
		for _, g := range s.Groups {
			if g.ID == "underlays" {
				tiles++
				if len(g.Clip) != 4 {
					t.Errorf("%s: the picture is not clipped", s.ID)
				}
			}
		}
		if err := s.Check(); err != nil {
			t.Error(err)
		}
	}
	if tiles < 2 {
		t.Errorf("pictures on %d sheets", tiles)
	}
}
