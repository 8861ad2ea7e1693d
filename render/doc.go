// Package render draws what was decided.
//
// A *work.Work comes in, a solved route.Result with what follows from it; the
// files of a job folder go out, as bytes; with the record of the job, those that
// show it as built. The package decides nothing about
// routes and never touches a disk.
//
// A sheet is first built as a display list (sub-package sheet) in whole
// micrometres of paper, and then turned into a file format by a back end (svg).
// Labels are asked for while the geometry is drawn and placed together at the
// end (label), so that no text overlaps another.
package render
