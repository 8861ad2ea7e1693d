package sheet

// A Picture is a raster picture in shades of grey, such as a photo, laid on the
// sheet by three of its corners: it may be scaled and turned.
type Picture struct {
	// JPEG is the picture as a baseline JPEG of one component, Width by Height
	// dots.
	JPEG          []byte
	Width, Height int
	// TopLeft, TopRight and BottomLeft are where its corners are.
	TopLeft, TopRight, BottomLeft Point
}

// Strokes implements Item. A picture has none: what is drawn lies over it.
func (p Picture) Strokes() [][]Point { return nil }

// Corners returns its outline, from the top left.
func (p Picture) Corners() []Point {
	right := p.TopRight.Sub(p.TopLeft)
	return []Point{p.TopLeft, p.TopRight, p.BottomLeft.Add(right), p.BottomLeft}
}

func (p Picture) fault() string {
	for _, c := range p.Corners() {
		if f := pointFault(c); f != "" {
			return f
		}
	}
	a, b := p.TopRight.Sub(p.TopLeft), p.BottomLeft.Sub(p.TopLeft)
	if len(p.JPEG) == 0 || p.Width <= 0 || p.Height <= 0 || a.X*b.Y == a.Y*b.X {
		return "a picture has no dots or no size"
	}
	return ""
}
