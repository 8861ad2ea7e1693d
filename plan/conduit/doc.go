// Package conduit holds the pipes that cable is pulled through, as data: how
// wide they are inside, and how full they may be.
//
// A kind with its trade size comes in, or an inside diameter with the
// diameters of cables; a diameter, a count, or yes or no goes out. Nothing here
// knows where a pipe is. Whether the shares of the table hold for a cable at
// all depends on how the local code classes it: communications cable is
// excepted, and one reading puts Class 2 data cable under them. They are used
// as advice.
package conduit
