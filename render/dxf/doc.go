// Package dxf writes a sheet as a DXF drawing in real-world size.
//
// In goes a checked sheet.Sheet and the View that laid the house on it, out
// comes an ASCII file of release 12 (AC1009), the version that most programs
// read: the lines, arcs and words of the sheet, in millimetres or inches of
// the house, with the point of the house that View names From at its own
// coordinates, X to the east and Y to the north. The same sheet gives the same
// bytes.
//
// Groups of a class are on a layer of that name, in capitals. Each dashed pen
// is a line type of its name. Release 12 has no widths of lines, so they are
// left out; it has no fills but for three and four corners, so that larger
// areas are outlines, and what a white fill hides on paper is seen. A clip
// cuts lines; a text stays whole if the point that it hangs on lies inside.
//
// Group codes and their meanings are those of "Drawing Interchange and File
// Formats, Release 12" (1992), as kept at paulbourke.net/dataformats/dxf. That
// release has no way to say a unit of length. $INSUNITS and $MEASUREMENT, which
// later releases define, say it here: readers pass over what they don't know.
//
// The package never reads a file, and nothing in a drawing is a link, a script
// or a reference to another file.
package dxf
