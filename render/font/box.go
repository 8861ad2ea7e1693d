package font

import "topplate/render/sheet"

// slack widens a box beyond the sum of the widths, in percent: renderers place
// characters on a grid of their own, and were seen to differ by up to 0.4 % in
// a browser.
const slack = 2

// BoxSize returns the size of the box that holds the ink of a line of text.
func BoxSize(l sheet.Lettering, s string) (width, height sheet.Paper) {
	w := Width(l, s)
	return w + w*slack/100, Rise(l, s) + Drop(l)
}

// Box returns the box that holds the ink of a text, whichever way the text is
// turned; it is loose around one that is not turned by quarter turns. A text
// without characters has a box of no size.
func Box(t sheet.Text) sheet.Box {
	base := t.Baseline()
	w := Width(t.Lettering, t.Words)
	if w == 0 {
		return sheet.Box{Min: base, Max: base}
	}
	left := [...]sheet.Paper{sheet.Start: 0, sheet.Middle: -w / 2, sheet.End: -w}[min(t.Align, sheet.End)]
	more := w * slack / 200
	from, to := left-more, left+w+more
	rise, drop := Rise(t.Lettering, t.Words), -Drop(t.Lettering)
	return sheet.Bounds(
		offset(base, t.Turn, from, rise), offset(base, t.Turn, to, rise),
		offset(base, t.Turn, from, drop), offset(base, t.Turn, to, drop),
	)
}

// offset returns the point that is along in the direction of reading from p,
// and up from the baseline.
func offset(p sheet.Point, turn sheet.Angle, along, up sheet.Paper) sheet.Point {
	return sheet.Polar(sheet.Polar(p, along, turn), up, turn+sheet.QuarterTurn)
}
