// Package label finds places for texts on a sheet, so that no text overlaps
// another or is struck by a line it does not belong to.
//
// In goes a Problem: a frame, what is drawn already, and a Request for each
// text with its size and the thing it labels. Out comes a Placement for each
// Request: a box, and a leader line where the text had to move away. All
// lengths are on paper. The package never draws and never measures a text.
//
// What is guaranteed of the placements, whatever the input: boxes lie in the
// frame; no two come closer than Clear; none comes closer than that to a hard
// box, or than half of it to a hard line that is not its own; no leader comes
// closer than that to a placed text or to a point of another request, passes
// through a hard box or meets another leader, except where both end. A text for
// which there is no such place is reported as not placed: the caller lists it
// elsewhere. The same Problem gives the same placements on every machine.
//
// Placing labels at points so that most of them are free is NP-hard
// (Christensen, Marks and Shieber, ACM Transactions on Graphics 14(3), 1995).
// Place starts greedily, then searches by moves that put a text in and push
// others out, keeping the best it has seen. Texts that find no room beside what
// they label, and those around them, are then given places on leaders to choose
// from, and the same search goes on. Last, each text moves to the best place
// that is free or that others can make free.
package label
