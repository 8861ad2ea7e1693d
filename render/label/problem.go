package label

import "topplate/render/sheet"

// A Side is where a text stands relative to the point it labels.
type Side uint8

// The sides.
const (
	Above Side = iota
	Right
	Left
	Below
	AboveRight
	AboveLeft
	BelowRight
	BelowLeft
)

// preferred are the sides from best to worst. People like a text above its
// point best (Bobak et al., arXiv 2407.11996, on ranking label positions); the
// rest is common practice.
var preferred = []Side{Above, Right, Left, Below, AboveRight, BelowRight, AboveLeft, BelowLeft}

// A Request asks for a place for one text. It labels one of: the polyline
// Along, if that has two points or more; the area Within, if that has a size;
// else the point Anchor.
type Request struct {
	ID            string // the caller's name for it; see Line.Owner
	Width, Height sheet.Paper

	// Anchor is the point that is labelled, and where a leader goes. For an
	// area it is where the middle of the text is best; for a polyline it is not
	// looked at.
	Anchor sheet.Point
	// Symbol is the ink of what stands at Anchor. The text keeps away from it
	// and a leader ends at its edge. The zero Box is no ink.
	Symbol sheet.Box
	// Along is a polyline, such as a cable. The text stands beside one of its
	// sides, best at the middle of the longest.
	Along []sheet.Point
	// Within is an area, such as a room, that the text must not leave. Only a
	// leader takes it out.
	Within sheet.Box

	Sides    []Side // allowed at a point, best first; empty means all, and places between
	Priority int    // the higher is placed rather than the lower; 0 to 100
	Turn     bool   // may stand turned, reading upwards, with its sides exchanged
	Leader   bool   // may move away on a leader
}

// A Line is a straight line that is drawn on the sheet.
type Line struct {
	A, B sheet.Point
	// A soft line may be struck through a text if there is no better place, as
	// by hatching. No hard line is.
	Soft bool
	// Owner is the ID of the requests whose texts may stand on the line. Empty
	// means none.
	Owner string
}

// A Problem is what Place solves.
type Problem struct {
	Frame    sheet.Box // that no text leaves
	Boxes    []sheet.Box
	Lines    []Line
	Requests []Request
	// Clear is the least distance between a text and another text, a box or the
	// thing it labels. Zero means DefaultClear.
	Clear sheet.Paper
	// MaxLeader is the greatest distance of a text on a leader from its anchor.
	// Zero means DefaultMaxLeader.
	MaxLeader sheet.Paper
}

// Defaults of a Problem; common practice, no source.
const (
	DefaultClear     = 600 * sheet.Micrometre
	DefaultMaxLeader = 60 * sheet.MM
)

// A Placement is the answer to a Request.
type Placement struct {
	ID     string
	Placed bool // false: there is no place, and the rest is zero
	Box    sheet.Box
	Turned bool // the text reads upwards
	// Leader goes from the edge of the box to what is labelled, in two points.
	// It is nil if the text stands beside it.
	Leader []sheet.Point
}

// Avoid adds what is drawn to the obstacles: texts as boxes, lines as hard
// lines, black areas as boxes. Lines of hatchings and zones are soft.
func (p *Problem) Avoid(items ...sheet.Item) {
	for _, item := range items {
		switch item := item.(type) {
		case *sheet.Group:
			for inner := range item.All() {
				p.Avoid(inner)
			}
		case sheet.Text:
			p.avoidText(item)
		case sheet.Line:
			p.avoidStrokes(item.Pen, item)
		case sheet.Poly:
			p.avoidStrokes(item.Pen, item)
		case sheet.Circle:
			p.avoidStrokes(item.Pen, item)
		case sheet.Arc:
			p.avoidStrokes(item.Pen, item)
		}
	}
}
