// Package font measures, cleans and splits the texts of a sheet, and hands the
// fonts to the back ends that embed them.
//
// In go a lettering or a face of package sheet and a string; out come lengths
// on paper, strings that can be drawn, boxes that hold the ink, or the bytes
// of a TrueType font. The faces are Go Regular, Go Bold and Go Mono. They have
// neither kerning nor ligatures, so the width of a text is the sum of the
// widths of its characters, in every back end alike.
//
// Everything here is safe for use by several goroutines. Nothing reads a file
// or asks what fonts the machine has.
package font
