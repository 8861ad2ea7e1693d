package geom

// A Symmetry is one of the eight ways to lay a plan on itself that keep its
// axes axes: the four quarter turns, each as it is or mirrored. What is right
// for a house is right for its mirror image, so tests ask every question
// eight times.
type Symmetry uint8

// Symmetries is how many there are: 0 to Symmetries-1, 0 changing nothing.
const Symmetries Symmetry = 8

// Apply returns where p goes. A direction goes the way of a point at that
// offset from the origin.
func (s Symmetry) Apply(p Point) Point {
	if s&1 != 0 {
		p.X = -p.X
	}
	if s&2 != 0 {
		p.Y = -p.Y
	}
	if s&4 != 0 {
		p.X, p.Y = p.Y, p.X
	}
	return p
}

// Mirrors reports whether s turns left into right.
func (s Symmetry) Mirrors() bool { return (s^s>>1^s>>2)&1 != 0 }

// Rect returns where r goes.
func (s Symmetry) Rect(r Rect) Rect {
	if r.Empty() {
		return r
	}
	return Rect{s.Apply(r.Min), s.Apply(r.Max)}.Canon()
}

// Polygon returns where p goes, run so that a counter-clockwise outline stays
// one. Its first vertex stays first.
func (s Symmetry) Polygon(p Polygon) Polygon {
	moved := make(Polygon, len(p))
	for i, a := range p {
		moved[i] = s.Apply(a)
	}
	if s.Mirrors() {
		return moved.Reverse()
	}
	return moved
}
