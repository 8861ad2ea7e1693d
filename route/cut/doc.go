// Package cut says how the cables of a job come off their spools.
//
// A solved route.Result comes in. Out go, for every spool, its cuts in order
// with the marks to expect on the jacket, where to stop and check, and what is
// left; how many new spools are bought; which drops are left for another day;
// and findings where no spool is long enough, a spool is of no use, or a mark
// contradicts what is left. Package route/stock plans the cuts; this package
// asks it for the pieces that the routes need and puts its answer in the words
// of the job. It reads and writes no file and draws nothing.
//
// # Words
//
// A piece is one cable as it is cut, named by its drop and its number there:
// D1.2. The cables of a drop are pulled together. The running number is the
// length drawn off a spool so far. Surplus is what is cut off a cable in place
// if the sketch is right: what was added for its error, for waste and by
// rounding up. It is kept for patch cords and not counted as waste.
//
// # Pulling first and measuring
//
// Equal cables from one spool are not cut to the number on paper. The first is
// pulled and its true length taken, and the others are cut equal to it (common
// practice, no source). Each Check has the running number at which to stop the
// first: beyond it, what is left would not suffice for the others and for all
// later pieces of the spool.
package cut
