// Package tags names the ends of the cables of a job, so that either end of a
// cable tells where the other one is.
//
// A solved route.Result comes in. Out go labels: one for each end of each
// cable, one for each port that is used at the panel, and one for each port of
// a plate; and findings where the panel is too small or two cables would have
// one label. The package never draws or prints a label and never reads or
// writes a file: a sheet and a table of values are made from what it returns.
//
// # Which port
//
// Cables with a plug or jack get the ports of the closet's panel in the order
// of their drops' tags, then of their numbers within the drop. Drops for later
// and drops without a route keep their ports, so that no label changes on the
// day that they are run. Cables that end under screws are numbered after all
// others: they need a number to be told apart, but no port.
//
// # What is on a label
//
// Both ends of a cable and both of its ports have one text, made from the
// scheme of the job. ANSI/TIA-606 asks for such an identifier at both ends of
// a cable and at its ports, on the cable within 12 in (300 mm) of the end of
// the jacket (all from memory). Numbers of ports are written with as many
// digits as the largest needs, so that a list in the order of texts is in the
// order of ports.
package tags
