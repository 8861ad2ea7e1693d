// Package sheet is the display list of a drawing: what is on a sheet of paper
// and where, without saying in which file format.
//
// The code that draws a house puts lines, outlines, arcs and text into groups
// of a Sheet, with pens and lettering from the tables of this package. Back
// ends turn the Sheet into a file. Real lengths become lengths on paper in one
// place, View.
//
// Coordinates are whole micrometres of paper. The origin is the top left
// corner of the sheet, X goes right and Y goes down. Angles go the other way
// round, as a drafter measures them: counter-clockwise from three o'clock.
//
// The package knows no font: it can say where a text stands but not how wide it
// is. It never reads or writes a file, and it never panics on what is in a
// sheet: Sheet.Check names what a back end could not draw.
package sheet
