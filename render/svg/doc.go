// Package svg writes a sheet as an SVG document.
//
// In goes a checked sheet.Sheet, out come bytes that are the same for the same
// sheet on every machine: one element to a line, numbers in millimetres, text
// as text, hatching as lines. One user unit is one millimetre of paper. The
// document has no scripts, no links, no comments and no pattern or marker
// elements, which renderers draw differently. Words from the user are escaped
// wherever they stand.
//
// The file canvas.go is the only one in the program that knows the library
// that writes the elements.
package svg
