package sheet

// A Format is a size of paper.
type Format struct {
	Name          string
	Width, Height Paper
}

// Letter and Tabloid are sizes A and B of ASME Y14.1 (8.5 by 11 in, 11 by
// 17 in), A4 and A3 those of ISO 216. All stand upright.
var (
	Letter  = Format{"Letter", 215_900, 279_400}
	Tabloid = Format{"Tabloid", 279_400, 431_800}
	A4      = Format{"A4", 210_000, 297_000}
	A3      = Format{"A3", 297_000, 420_000}
)

// Landscape returns f lying on its long side.
func (f Format) Landscape() Format {
	f.Width, f.Height = max(f.Width, f.Height), min(f.Width, f.Height)
	return f
}
