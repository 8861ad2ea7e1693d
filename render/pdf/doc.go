// Package pdf writes the sheets of a job as one PDF document.
//
// In go checked sheets, out come bytes that are the same for the same sheets:
// a page for each sheet, of its exact size, with lines, fills and clips as
// vectors and words as text in the embedded Go fonts, cut down to the glyphs
// that are used. The content of a page is written in millimetres from its top
// left corner, to the micrometre, as the SVG of the same sheet is. Each page
// has a bookmark.
//
// The document has no date of its making, no random id, no script, no action,
// no link, no attached file and no form. Words from the user stand only in
// strings, which cannot end early.
//
// The operators and the structure are those of ISO 32000-1:2008. The library
// lays out objects, fonts and the table of references; it rounds lengths to a
// hundredth of a point, so that everything drawn goes around its own path
// functions.
package pdf
