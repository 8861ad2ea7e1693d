package font

import "topplate/render/sheet"

// A Line is one line of a Block.
type Line struct {
	Lettering sheet.Lettering
	Words     string
}

// A Block is lines of text below each other, such as the name of a room and
// its area.
type Block []Line

// Size returns the size of the box that holds the ink of the block.
func (b Block) Size() (width, height sheet.Paper) {
	for i, line := range b {
		w, _ := BoxSize(line.Lettering, line.Words)
		width = max(width, w)
		height += b.advance(i)
	}
	if len(b) > 0 {
		height += Drop(b[len(b)-1].Lettering)
	}
	return width, height
}

// advance is the distance from the baseline of the line before line i, or
// from the top of the block, to the baseline of line i. Small letters under a
// large line keep clear of its tails.
func (b Block) advance(i int) sheet.Paper {
	rise := Rise(b[i].Lettering, b[i].Words)
	if i == 0 {
		return rise
	}
	return max(LineHeight(b[i].Lettering), Drop(b[i-1].Lettering)+rise)
}

// In returns the lines of the block with their middles on the middle of a box
// of the block's size. If upward, they read from bottom to top, and the box
// has the size with its sides exchanged.
func (b Block) In(box sheet.Box, upward, halo bool) []sheet.Text {
	texts := make([]sheet.Text, 0, len(b))
	down := sheet.Paper(0)
	for i, line := range b {
		down += b.advance(i)
		t := sheet.Text{Lettering: line.Lettering, Align: sheet.Middle, Halo: halo, Words: line.Words}
		if upward {
			t.Turn, t.At = sheet.QuarterTurn, sheet.Pt(box.Min.X+down, box.Centre().Y)
		} else {
			t.At = sheet.Pt(box.Centre().X, box.Min.Y+down)
		}
		texts = append(texts, t)
	}
	return texts
}
