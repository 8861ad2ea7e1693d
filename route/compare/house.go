package compare

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/route"
)

// A Thing is something of the house that is not the same.
type Thing struct {
	Kind string
	ID   string // empty if the house has only one
	How  How
	// Moved is how far it moved: along its wall, if it is in one; the end that
	// moved farther, of a wall or a power cable; the corner that moved less, of
	// an area, so that one that only grew has not moved.
	Moved  measure.Length
	Values []Value
	// Area is the rectangle around it in plan, if Placed.
	Area   [2]geom.Rect
	Placed [2]bool
}

// A thing is something of one house, as it is compared.
type thing struct {
	kind       string
	rank       int // of its kind
	id         string
	place      []geom.Point
	least      bool // the point that moved least tells how far it moved
	properties []property
	area       geom.Rect
	placed     bool
}

// A key is what things of two houses are matched by.
type key struct {
	rank int
	id   string
}

func compareKeys(a, b key) int { return cmp.Or(cmp.Compare(a.rank, b.rank), compareTags(a.id, b.id)) }

// compareTags orders tags and ids as people do, and tells D1 from D01.
func compareTags(a, b string) int { return cmp.Or(route.CompareTags(a, b), cmp.Compare(a, b)) }

// houses compares the houses.
func (d *Difference) houses() {
	var all [2][]thing
	var keys [2][]key
	several := false
	for _, p := range d.Plans {
		several = several || len(p.Job.House.Spaces) > 1 || len(p.Job.House.Roofs) > 1
	}
	for side, p := range d.Plans {
		all[side] = thingsOf(p.Job.House, several)
		for i := range all[side] {
			keys[side] = append(keys[side], key{all[side][i].rank, all[side][i].id})
		}
	}
	d.Outline = !slices.EqualFunc(outlines(d.Plans[0].Job.House), outlines(d.Plans[1].Job.House), slices.Equal[geom.Polygon])
	for _, in := range pairs(keys[0], keys[1], compareKeys) {
		x := Thing{How: howOf(in)}
		for side, i := range in {
			if i >= 0 {
				t := &all[side][i]
				x.Kind, x.ID, x.Area[side], x.Placed[side] = t.kind, t.id, t.area, t.placed
			}
		}
		if x.How == Changed {
			a, b := &all[0][in[0]], &all[1][in[1]]
			x.Moved, x.Values = moved(a, b), differing(a.properties, b.properties)
			if x.Moved == 0 && len(x.Values) == 0 {
				continue
			}
		}
		d.House = append(d.House, x)
	}
}

// moved is how far a thing moved, 0 if that can't be told from its points.
func moved(a, b *thing) measure.Length {
	if len(a.place) != len(b.place) || len(a.place) == 0 {
		return 0
	}
	least, most := geom.Dist(a.place[0], b.place[0]), measure.Length(0)
	for i := range a.place {
		by := geom.Dist(a.place[i], b.place[i])
		least, most = min(least, by), max(most, by)
	}
	if a.least {
		return least
	}
	return most
}

// fromLeast is an outline that starts at its corner farthest to the south-west.
func fromLeast(p geom.Polygon) geom.Polygon {
	if len(p) == 0 {
		return p
	}
	first := 0
	for i := range p {
		if compareFlat(p[i], p[first]) < 0 {
			first = i
		}
	}
	return slices.Concat(p[first:], p[:first])
}

// outlines are those of all levels, from the lowest up.
func outlines(h *plan.House) []geom.Polygon {
	levels := slices.Clone(h.Levels)
	slices.SortFunc(levels, func(a, b plan.Level) int { return cmp.Or(cmp.Compare(a.Floor, b.Floor), compareTags(a.ID, b.ID)) })
	var out []geom.Polygon
	for i := range levels {
		out = append(out, fromLeast(levels[i].OutsideOf))
	}
	return out
}

// A list gathers the things of a house.
type list struct {
	h *plan.House
	// several is true if one of the houses has several spaces or roofs, so that
	// they go by their ids.
	several bool
	out     []thing
}

func thingsOf(h *plan.House, several bool) []thing {
	l := &list{h: h, several: several}
	l.whole()
	for i := range h.Spaces {
		l.space(h.Spaces[i])
	}
	for i := range h.Roofs {
		l.roof(h.Roofs[i])
	}
	for i := range h.Levels {
		x := &h.Levels[i]
		l.add(thing{kind: "level", rank: 1, id: x.ID, properties: []property{
			l.length("floor", x.Floor), l.length("ceiling", x.Ceiling), l.length("top of the plate", x.PlateTop),
		}})
	}
	for i := range h.Walls {
		l.wall(&h.Walls[i])
	}
	for i := range h.Rooms {
		l.add(thing{kind: "room", rank: 5, id: h.Rooms[i].ID, area: h.Rooms[i].Bounds, placed: true, properties: []property{
			said("name", h.Rooms[i].Name), said("level", h.Levels[h.Rooms[i].Level].ID), said("use", h.Rooms[i].Use), yes("open ceiling", h.Rooms[i].Open),
		}})
	}
	l.inSpaces()
	l.alongWalls()
	l.chases()
	return l.out
}

func (l *list) add(t thing) { l.out = append(l.out, t) }

func (l *list) length(what string, x measure.Length) property {
	return property{what, x, l.h.Units.Format(x)}
}

func said(what, text string) property              { return property{what, text, text} }
func number[N int | int64](w string, n N) property { return property{w, n, fmt.Sprint(n)} }
func yes(what string, b bool) property             { return said(what, yesNo(b)) }

// whole is the house itself.
func (l *list) whole() {
	h := l.h
	l.add(thing{kind: "house", properties: []property{
		{"units", h.Units, unitNames[h.Units]},
		number("north", h.North), number("built", h.Built),
		l.length("error of the sketch", h.SketchError),
		{"site", h.Site, siteText(h.Site)},
		{"heat of the attic", h.AtticHot, fmt.Sprintf("%d °C", h.AtticHot/1000)},
	}})
}

var unitNames = map[measure.System]string{measure.Imperial: "imperial", measure.Metric: "metric"}

func siteText(s plan.Site) string {
	if !s.Known {
		return "not known"
	}
	return fmt.Sprintf("%g, %g, %+d min of UTC", s.Latitude, s.Longitude, s.UTCOffset)
}

func (l *list) point(p geom.Point) string {
	return l.h.Units.Format(p.X) + " east " + l.h.Units.Format(p.Y) + " north"
}

// wall is a wall with what is in it. Its frame follows from its ends and its
// depth.
func (l *list) wall(w *plan.Wall) {
	var blocks []string
	for _, b := range w.FireBlocks {
		blocks = append(blocks, l.h.Units.Format(b))
	}
	slices.Sort(blocks)
	l.add(thing{kind: "wall", rank: 2, id: w.ID, place: []geom.Point{w.A, w.B}, area: w.Body, placed: true, properties: []property{
		said("level", l.h.Levels[w.Level].ID), l.length("studs", w.StudDepth), l.length("spacing", w.Spacing), l.length("width of a stud", w.StudWidth),
		number("top plates", w.TopPlates), yes("masonry", w.Masonry), yes("exterior", w.Exterior), said("clad with", w.Cladding.ID), yes("bearing", w.Bearing), yes("insulated", w.Insulated),
		said("fire blocks", strings.Join(blocks, ", ")), l.length("board on the left", w.Boards[plan.Left]), l.length("board on the right", w.Boards[plan.Right]),
	}})
	for i := range w.Openings {
		o := &w.Openings[i]
		l.add(thing{
			kind: "opening", rank: 3, id: o.ID, place: along(o.Start), area: strip(w, o.Start, o.End), placed: true,
			properties: []property{
				said("kind", o.Kind.String()), said("wall", w.ID), l.length("width", o.End-o.Start), l.length("sill", o.Sill),
				l.length("head", o.Head), yes("hinge at the end", o.HingeEnd), said("swing", o.Swing.String()),
			},
		})
	}
	for i := range w.Devices {
		x := &w.Devices[i]
		l.add(thing{
			kind: "device", rank: 4, id: x.ID, place: along(x.At), area: around(w.FacePoint(x.At, x.Side)), placed: true,
			properties: []property{
				said("kind", x.Kind), said("wall", w.ID), l.length("height", x.Height), said("side", x.Side.String()),
				yes("feed from above", x.Up), yes("feed from below", x.Down),
			},
		})
	}
}

// along is a place on a wall's line, which does not move with the wall.
func along(at measure.Length) []geom.Point { return []geom.Point{{X: at}} }

// strip is a part of a wall's body.
func strip(w *plan.Wall, from, to measure.Length) geom.Rect {
	a, b := w.FacePoint(from, plan.Left), w.FacePoint(to, plan.Right)
	return geom.Rect{Min: a, Max: b}.Canon()
}

// around is a small square about a point, which stands for something without
// a size: 3 in, about that of a box.
func around(p geom.Point) geom.Rect {
	return geom.Rect{Min: p, Max: p}.Outset(3 * measure.Inch / 2)
}

func corners(r geom.Rect) []geom.Point { return []geom.Point{r.Min, r.Max} }

func bounds(path []geom.Point) geom.Rect {
	r := geom.Rect{Min: path[0], Max: path[0]}
	for _, p := range path[1:] {
		r.Min = geom.Point{X: min(r.Min.X, p.X), Y: min(r.Min.Y, p.Y)}
		r.Max = geom.Point{X: max(r.Max.X, p.X), Y: max(r.Max.Y, p.Y)}
	}
	return r
}

// alongWalls is what is measured along walls and is not in them.
func (l *list) alongWalls() {
	h := l.h
	for i := range h.Soffits {
		x := &h.Soffits[i]
		w := &h.Walls[x.Wall]
		l.add(thing{
			kind: "soffit opening", rank: 10, id: x.ID, place: along(x.Start), area: strip(w, x.Start, x.End), placed: true,
			properties: []property{said("wall", w.ID), l.length("width", x.End-x.Start)},
		})
	}
	for i := range h.Baffles {
		x := &h.Baffles[i]
		w := &h.Walls[x.Wall]
		l.add(thing{
			kind: "baffle", rank: 11, id: x.ID, place: along(x.Start), area: strip(w, x.Start, x.End), placed: true,
			properties: []property{said("wall", w.ID), l.length("width", x.End-x.Start)},
		})
	}
	for i := range h.Conduits {
		x := &h.Conduits[i]
		w := &h.Walls[x.Wall]
		var holds []string
		for _, c := range x.Holds {
			holds = append(holds, h.Units.Format(c))
		}
		slices.Sort(holds)
		l.add(thing{
			kind: "conduit", rank: 14, id: x.ID, place: along(x.At), area: around(w.FacePoint(x.At, x.Side)), placed: true,
			properties: []property{
				said("wall", w.ID), l.length("height", x.Height), said("side", x.Side.String()), l.length("inside", x.Inside),
				said("holds", strings.Join(holds, ", ")), yes("down", x.Down),
			},
		})
	}
}
