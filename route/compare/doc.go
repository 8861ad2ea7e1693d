// Package compare says what changed between two plans of jobs, on one house or
// on two versions of it.
//
// Two worked jobs come in, A and B. Out goes a Difference: what of the house, of
// the job, of the drops, their routes and the holes is only in one of them or is
// not the same in both; the figures of both; and what of the way in the attic is
// only in one. In all that is told twice, 0 is A and 1 is B. The package decides
// nothing, reads and writes no file, and draws nothing.
//
// # What is taken to be the same
//
// Drops are the same if they have the same tag; things of the house if they are
// of one kind and have the same id. A hole is known by its place, never by its
// number: in the same member of the same wall, within the stretch that is free
// for it there. What is left over after that is matched with the nearest of its
// kind that is no farther than Near. Routes are the same if they have the same
// corners. Places count from the zero point of each house: what is measured along
// a wall does not move with the wall.
//
// B against A is the mirror of A against B.
package compare
