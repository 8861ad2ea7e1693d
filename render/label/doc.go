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
// box; none is struck by a hard line that is not its own; no leader passes
// through the box of a placed text, a hard box or another leader. A text for
// which there is no such place is reported as not placed: the caller lists it
// elsewhere. The same Problem gives the same placements on every machine.
//
// Placing labels at points so that most of them are free is NP-hard
// (Christensen, Marks and Shieber, ACM Transactions on Graphics 14(3), 1995).
// Place starts greedily, then searches by moves that put a text in and push
// others out, keeping the best it has seen, then moves each text to the best
// free place, and last sends those that found none out on leaders.
package label
