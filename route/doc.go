// Package route decides how the cables of a job go.
//
// A checked plan.Job comes in. Out go the physical Graph of everything an
// installer could do with a cable in that house, and a Result: the route of
// every drop, the holes, lengths, bundles, costs and findings. The package
// never reads or writes a file and never draws.
//
// Vocabulary. A node is a place a cable can be; an arc is a thing an installer
// does. A bay is the hollow between two studs, a shaft a bay that a box opens
// into, a port a place where cable enters the attic. In the attic a lattice of
// lines runs along and across the joists, with a node between the joists and
// one over them at each crossing. A zone says how a place can be worked at:
// standing, crawling, at arm's length, or with a rod only.
//
// Prices are whole cost units, millionths of the currency's unit. An arc has a
// part that is paid once however many cables use it and a part that each cable
// pays; bends are paid by each cable. Lengths are exact; no price ever changes
// a reported length.
//
// Numbers of nodes, arcs and holes follow their place in the house, never the
// order of a file or of a map, so the same sketch gives the same bytes.
package route
