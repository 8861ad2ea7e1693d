// Package randomhouse makes houses and jobs in them at random, for the tests
// of other packages.
//
// What comes in is a seed and options; what goes out is a Sketch: the text of
// a house file and of a job file that load without errors, and the abstract
// model they were written from. The same seed and options give the same bytes.
// Only tests import this package, and it never reads a file or checks a house.
package randomhouse
