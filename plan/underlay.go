package plan

import (
	"crypto/sha256"
	"image"
	"math"
	"path/filepath"
	"slices"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// An Underlay is a photo or a scan of a plan, drawn faint under the walls so
// that they can be held against it. Two of its points are known in the house;
// its scale, turn and place follow.
type Underlay struct {
	ID    string
	Pos   diag.Pos
	Level int    // the level whose floor it shows
	File  string // as the house file has it
	// OnFloor and OnSketch say which sheets it is on.
	OnFloor, OnSketch bool
	// Picture is in shades of grey, one dot for Step by Step dots of the file,
	// whose size is Width by Height. It is nil in a house without a job, since a
	// house file alone reads no others.
	Picture       *image.Gray
	Step          int
	Width, Height int

	t    *source.Table  // for what is found once the picture is read
	dots [2]image.Point // of the file, from its top left corner
	at   [2]geom.Point
}

// Bounds of underlays (common practice, no source). A scale is worth little
// from two points that are near each other.
const (
	mostUnderlays  = 10
	mostDotsAlong  = 50_000
	leastDotsApart = 20
	leastApart     = 3 * foot
	// besideHouse is how far a picture may reach beyond the walls.
	besideHouse = 200 * foot
)

var underlaySheets = []string{"both", "floor", "sketch"}

// underlays reads [[underlay]]. The pictures themselves are read with a job.
func (l *houseLoader) underlays(root *source.Table) {
	ids := l.newNames("underlay")
	for _, t := range tables(root, "underlay", source.Optional, mostUnderlays) {
		u := Underlay{Pos: t.Pos(), t: t}
		u.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", u.ID)
		level, okLevel := l.levelOr(t, "level", 0)
		u.Level = max(0, level)
		var okFile, okDots, okAt bool
		u.File, okFile = t.Title("file", source.Required)
		on := choiceOr(t, "sheet", underlaySheets...)
		u.OnFloor, u.OnSketch = on != "sketch", on != "floor"
		u.dots, okDots = dotPair(t, "dots")
		u.at, okAt = l.placePair(t, "at")
		if okLevel && okFile && okDots && okAt {
			l.house.Underlays = append(l.house.Underlays, u)
		}
	}
}

// twoPoints is the array of two points that stands for key.
func twoPoints(t *source.Table, key, example string) (*source.Table, bool) {
	want := "two points, such as " + example
	if t.Kind(key) != source.KindArray {
		if t.Has(key) {
			t.Errorf(key, "found no array; want %s", want)
		} else {
			t.Errorf(key, "missing; want %s", want)
		}
		return nil, false
	}
	array, _ := t.Array(key, source.Required)
	if n := len(array.Keys()); n != 2 {
		t.Errorf(key, "found %s; want %s", counted(n, "point"), want)
		return nil, false
	}
	return array, true
}

// dotPair reads two points of a picture.
func dotPair(t *source.Table, key string) (dots [2]image.Point, ok bool) {
	const example = "[[120, 840], [1530, 842]]: dots from the left and from the top of the picture"
	array, ok := twoPoints(t, key, example)
	if !ok {
		return dots, false
	}
	for i, k := range [2]string{"0", "1"} {
		if array.Kind(k) != source.KindArray {
			array.Errorf(k, "found no point; want two points, such as %s", example)
			return dots, false
		}
		p, _ := array.Array(k, source.Required)
		if n := len(p.Keys()); n != 2 {
			array.Errorf(k, "found %s; want a point of the picture, such as [120, 840]", counted(n, "number"))
			return dots, false
		}
		x, okX := p.Int("0", source.Required, 0, mostDotsAlong)
		y, okY := p.Int("1", source.Required, 0, mostDotsAlong)
		dots[i], ok = image.Pt(x, y), ok && okX && okY
	}
	if d := dots[1].Sub(dots[0]); ok && max(d.X, -d.X, d.Y, -d.Y) < leastDotsApart {
		t.Errorf(key, "found two points less than %d dots apart, which give no scale; want points far from each other", leastDotsApart)
		return dots, false
	}
	return dots, ok
}

// placePair reads two places in the house.
func (l *houseLoader) placePair(t *source.Table, key string) (at [2]geom.Point, ok bool) {
	array, ok := twoPoints(t, key, t.Example(`[["0ft", "0ft"], ["30ft", "0ft"]]`, `[["0m", "0m"], ["9m", "0m"]]`)+": where those of the picture are")
	if !ok {
		return at, false
	}
	for i, k := range [2]string{"0", "1"} {
		p, okPlace := l.spots().read(array, k)
		at[i], ok = p, ok && okPlace
	}
	if ok && geom.Dist(at[0], at[1]) < leastApart {
		t.Errorf(key, "found two places less than %s apart, which give no scale; want places far from each other", l.house.text(leastApart))
		return at, false
	}
	return at, ok
}

// Place is where a point of the picture is in the house: x and y are dots of the
// file from its top left corner.
func (u *Underlay) Place(x, y int) geom.Point {
	// A dot is p, its place z = z0 + (p - p0)(z1 - z0)/(p1 - p0), all complex
	// numbers, of which y counts down in the picture. Products are rounded before
	// sums on every machine.
	dx, dy := float64(u.dots[1].X-u.dots[0].X), -float64(u.dots[1].Y-u.dots[0].Y)
	zx, zy := float64(u.at[1].X-u.at[0].X), float64(u.at[1].Y-u.at[0].Y)
	px, py := float64(x-u.dots[0].X), -float64(y-u.dots[0].Y)
	norm := float64(dx*dx) + float64(dy*dy)
	ax, ay := (float64(zx*dx)+float64(zy*dy))/norm, (float64(zy*dx)-float64(zx*dy))/norm
	return u.at[0].Add(geom.Point{
		X: measure.Length(math.Round(float64(px*ax) - float64(py*ay))),
		Y: measure.Length(math.Round(float64(px*ay) + float64(py*ax))),
	})
}

// pictures reads the pictures of the house's underlays, from the folder of the
// house file, which the job calls name and is at the path house.
func (l *jobLoader) pictures(name, house string, read FileReader) {
	read = once(read)
	for i := range l.house.Underlays {
		u := &l.house.Underlays[i]
		path := u.File
		if !filepath.IsAbs(path) {
			path = filepath.Join(filepath.Dir(house), path)
		}
		src, err := read(path)
		if err != nil {
			l.list.Errorf(u.t.ValuePos("file"), u.t.Path("file"), "%v", err)
			continue
		}
		in := Input{inputName(name, u.File), sha256.Sum256(src)}
		if !slices.Contains(l.job.Inputs, in) {
			l.job.Inputs = append(l.job.Inputs, in)
		}
		p, err := readPicture(src)
		if err != nil {
			l.list.Errorf(u.t.ValuePos("file"), u.t.Path("file"), "%v", err)
			continue
		}
		u.Picture, u.Step, u.Width, u.Height = p.grey, p.step, p.width, p.height
		l.pictureFits(u)
	}
}

// inputName is what the job would call a file that its house names.
func inputName(house, file string) string {
	if filepath.IsAbs(file) {
		return filepath.ToSlash(file)
	}
	return filepath.ToSlash(filepath.Join(filepath.Dir(house), file))
}

// once reads each file once.
func once(read FileReader) FileReader {
	type result struct {
		src []byte
		err error
	}
	seen := map[string]result{}
	return func(path string) ([]byte, error) {
		r, ok := seen[path]
		if !ok {
			r.src, r.err = read(path)
			seen[path] = r
		}
		return r.src, r.err
	}
}

// pictureFits reports points that are not in the picture, and a picture that is
// far larger than the house.
func (l *jobLoader) pictureFits(u *Underlay) {
	pos, key := u.t.ValuePos("dots"), u.t.Path("dots")
	for _, p := range u.dots {
		if p.X > u.Width || p.Y > u.Height {
			l.list.Errorf(pos, key, "found the point [%d, %d], which is not in the picture, of %d by %d dots", p.X, p.Y, u.Width, u.Height)
			return
		}
	}
	near := l.house.Boundaries.Outset(besideHouse)
	for _, c := range [4][2]int{{0, 0}, {u.Width, 0}, {0, u.Height}, {u.Width, u.Height}} {
		if at := u.Place(c[0], c[1]); !near.Contains(at) {
			l.list.Errorf(pos, key, "found a picture that would reach as far as %s; want it within %s of the walls: look at dots and at", l.house.pointText(at), l.house.text(besideHouse))
			return
		}
	}
}
