package sheet

// An Align says which point of a line of text its At is, along the line.
type Align uint8

// The three alignments.
const (
	Start Align = iota
	Middle
	End
)

// A Level says which height of a line of text its At is on.
type Level uint8

// The three levels. Half and Top are those of a capital letter, so that
// figures and capitals stand exactly in the middle of what they label.
const (
	OnBaseline Level = iota
	OnHalf
	OnTop
)

// A Text is one line of words. It has no line breaks: package font splits
// longer text.
type Text struct {
	Lettering Lettering
	At        Point
	Align     Align
	Level     Level
	Turn      Angle  // the direction of reading; QuarterTurn reads upwards
	Halo      bool   // a white outline keeps what is behind away from the words
	Words     string // any string; back ends draw what package font makes of it
}

// Baseline returns the point of the baseline at which the text is to be
// anchored by its Align. It is exact when Turn is a multiple of a quarter turn
// and the height of capitals is even.
func (t Text) Baseline() Point {
	h := t.Lettering.Style().Height
	switch t.Level {
	case OnHalf:
		return Polar(t.At, h/2, t.Turn-QuarterTurn)
	case OnTop:
		return Polar(t.At, h, t.Turn-QuarterTurn)
	}
	return t.At
}

// Strokes implements Item.
func (t Text) Strokes() [][]Point { return nil }

func (t Text) fault() string {
	switch {
	case int(t.Lettering) >= len(letterings):
		return "a text has a lettering that is not in the table"
	case t.Align > End || t.Level > OnTop:
		return "a text has an alignment or level that does not exist"
	}
	return pointFault(t.At)
}
