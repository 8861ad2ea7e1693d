// Package check holds a finished plan against the rules that routes are not
// laid by: pulls and bends, lengths in the heat, cables and their places,
// plugs and jacks, power to devices, and what is to be sealed, guarded or
// looked at on the spot.
//
// A solved job comes in. Findings go out, each with what was measured, its
// limit, the place in the file, and the nearest way out. Every limit is a
// record of package rule, or a property of a cable, plug or conduit as the job
// gives it. What package route finds itself is not found again here.
//
// The package changes nothing, reads and writes no files, and finds no
// compliance: the local code and the licensed trades decide. It never panics on
// a result of route.Solve. It takes time in proportion to the legs of all
// routes times the things in the framing spaces.
package check
