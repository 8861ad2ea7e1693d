// Package stock plans how cables are cut from spools.
//
// What comes in is a Job: the spools in stock, partly used, of several types
// of cable, the pieces to cut, and for each type the length of a new spool, if
// any may be bought. What goes out is a Plan: for every spool its cuts in
// order, with the marks to expect on the jacket, where to stop and check, and
// what is left; for every group how it is pulled; and what could not be
// planned. The package knows nothing of files, houses or graphs.
//
// # Words
//
// A piece is one cable as it is cut. A group is a bundle that is pulled
// together; the pieces of a group that have one type and one length are a set
// of equal cables. The remainder of a spool is what is left after the job. It
// is usable if it has the job's usable length, a patch remainder if it has at
// least the patch length, and waste if it is shorter, as far as the spool was
// cut in this job. The running number is the length used of a spool so far.
//
// # Which plan is best
//
// Types of cable don't touch each other. For each, plans are compared by their
// Score, level by level, and only a tie goes on to the next level:
//
//  1. fewest pieces not cut. Some may have to be left out if nothing can be
//     bought, or if they are longer than a new spool: then it is the longest
//     of these, of equal ones the first by group and tag.
//  2. fewest new spools.
//  3. least waste, then least length in patch remainders.
//  4. longest piece of cable left on one spool, in whole usable lengths, then
//     fewest spools that are cut: few and long remainders. Started spools are
//     so used up before others, and nobody hunts for an inch.
//  5. fewest splits: a set of equal cables that comes off n spools has n-1.
//
// If a job says SetsFirst, level 5 comes before level 4.
//
// # How it is found and proved
//
// Level 1 needs a search for one number only: replacing a piece by a shorter
// one never makes a plan impossible, so the shortest pieces are cut.
//
// Level 2 is bin packing with bins of several sizes. Its bounds are the bound
// L2 of Martello and Toth ("Lower bounds and reduction procedures for the bin
// packing problem", Discrete Applied Math. 28, 1990), extended to spools of
// several lengths, and the linear programme over cutting patterns of Gilmore
// and Gomory ("A linear programming approach to the cutting-stock problem",
// Operations Research 9, 1961). That is solved in floating point, but the
// bound is computed anew in whole numbers from its prices, so that it holds
// whatever was rounded (as in Held, Cook and Sewell, "Maximum-weight stable
// sets and safe lower bounds for graph coloring", 2012). Plans come from
// best-fit decreasing, from rounding the linear programme, and from an
// exhaustive search that completes one spool at a time. L3, which applies L2
// after reductions, is not used: its reductions hold for equal bins only.
//
// Levels 3 and 4 depend on no more than the load of each spool. The search
// decides first which spools shall end usable, then fills one spool after
// another, always with loads that a subset of the pieces still there adds up
// to. Its bound takes each spool by itself. See skeleton and filler.
//
// Level 5 keeps sets whole where that costs nothing above: it searches again
// with whole sets in place of pieces, first all, then one more at a time. It is
// proved where no set is split but those that are longer than any spool.
//
// All work is limited by counting steps, never by a clock, so equal input gives
// equal output. A Plan says how far it is proved and gives a bound below which
// no plan can be; where the steps ran out it says so by claiming less.
package stock
