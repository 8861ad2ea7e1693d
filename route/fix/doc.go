// Package fix tells how each hole of a plan is made and how it is found on
// site.
//
// A solved route.Result comes in. Out goes one Hole for each of its holes: the
// member in words, the bits and how they get there, what the rules allow, what
// is sealed, and where the place is, from the room or from outside and from
// the framing space that it opens into. Lengths are exact; texts are in the house's units. The package
// decides nothing about the routes, reads and writes no files and draws
// nothing.
//
// From below a place is measured from faces that can be touched: the finished
// faces of the walls of the room that one works in, never the zero of the
// sketch. Left and right are those of somebody who faces the wall.
//
// In an attic it is measured along the joists' tops, from marks that a hand
// gets to there, from the corners of a hatch, and, where no insulation lies on
// them, from crossings of wall plates. In a crawl space and in a room whose
// ceiling is open it is measured along the joists' undersides, from what is seen
// from below, from a hatch, from the room's corners, and square to the faces of
// its walls, which stand in the same plan as those above. In a floor that is
// closed nothing is found: the hole is bored from the box, and a wall of the other
// storey that stands in line with it is named. A hole between two spaces is found
// from both: it is bored from the one with more room, and looked at first from the
// other. The expected errors are those
// that 95 % of tries stay within, if the sketch and the tape are as good as is
// said in Limits.
//
// How a hole is bored is common practice, no source, unless a rule is named.
package fix
