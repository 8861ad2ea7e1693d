package sheet

import "iter"

// A Group is a part of the drawing with a name. Items are drawn in order, the
// last on top. It grows by its methods until it is handed to a back end; it is
// not safe for use by several goroutines.
type Group struct {
	ID    string // unique in the sheet, made by ID, or empty
	Class string // what kind of thing it is, such as "wall"; may be empty
	Title string // shown when the pointer rests on it; may be empty
	Desc  string // a longer description; may be empty
	// Clip, if not empty, is a simple outline; what lies outside is not drawn.
	Clip  []Point
	Items []Item
}

// Add appends items.
func (g *Group) Add(items ...Item) { g.Items = append(g.Items, items...) }

// Group appends an empty group and returns it.
func (g *Group) Group(id, class, title string) *Group {
	child := &Group{ID: id, Class: class, Title: title}
	g.Add(child)
	return child
}

// Line appends the line from a to b.
func (g *Group) Line(p Pen, a, b Point) { g.Add(Line{p, a, b}) }

// Polyline appends an open polyline.
func (g *Group) Polyline(p Pen, points ...Point) {
	g.Add(Poly{Pen: p, Rings: [][]Point{points}})
}

// Polygon appends closed outlines with even-odd fill.
func (g *Group) Polygon(p Pen, rings ...[]Point) {
	g.Add(Poly{Pen: p, Rings: rings, Closed: true})
}

// Rect appends the outline of b.
func (g *Group) Rect(p Pen, b Box) { g.Polygon(p, b.Corners()) }

// Circle appends a circle.
func (g *Group) Circle(p Pen, centre Point, radius Paper) {
	g.Add(Circle{p, centre, radius})
}

// Hatch appends the hatching of the rings, as one item.
func (g *Group) Hatch(h Hatch, rings [][]Point, gaps ...Box) {
	if lines := HatchLines(h, rings, gaps...); len(lines) > 0 {
		g.Add(Poly{Pen: h.Style().Pen, Rings: lines})
	}
}

// Text appends a line of words that starts, is centred or ends at a point of
// its baseline.
func (g *Group) Text(l Lettering, at Point, a Align, words string) {
	g.Add(Text{Lettering: l, At: at, Align: a, Words: words})
}

// Strokes implements Item.
func (g *Group) Strokes() [][]Point {
	var strokes [][]Point
	for item := range g.All() {
		strokes = append(strokes, item.Strokes()...)
	}
	return strokes
}

// All visits the items of g and of the groups in it in the order of drawing,
// but not the groups themselves.
func (g *Group) All() iter.Seq[Item] {
	return func(yield func(Item) bool) { g.visit(yield) }
}

func (g *Group) visit(yield func(Item) bool) bool {
	for _, item := range g.Items {
		if child, ok := item.(*Group); ok {
			if !child.visit(yield) {
				return false
			}
		} else if !yield(item) {
			return false
		}
	}
	return true
}

func (g *Group) fault() string {
	for _, p := range g.Clip {
		if f := pointFault(p); f != "" {
			return f
		}
	}
	return ""
}
