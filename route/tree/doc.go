// Package tree finds the cheapest plan for all terminals of a network
// together.
//
// What comes in is a network, its root and the terminals with their numbers
// of cables. What goes out is a path for every terminal, the cost of all of
// them, where the fixed price of an arc counts once over all paths, and a
// lower bound that no plan can be below. The package knows nothing of walls
// or attics and never touches files.
//
// # What is solved
//
// A state is a half-arc that a cable is about to travel towards the root. By
// L(S, g) we denote the least cost for the cables of a set S of terminals, q
// in all, to be together and about to travel g. Then
//
//	L(S, h) = min of
//	    L(S, g) + Fixed(g) + q (PerUnit(g) + bend(g, h))  over all g before h,
//	    L(A, h) + L(S without A, h)                       over all A within S,
//
// and the answer is L(all, root), where the root stands for a last state.
// This is the dynamic programme of Dreyfus and Wagner ("The Steiner problem
// in graphs", Networks 1, 1971) as extended to concave costs by Erickson,
// Monma and Veinott ("Send-and-split method for minimum-concave-cost network
// flows", Math. Operations Research 12, 1987), on the graph whose nodes are
// half-arcs.
//
// # Why its answer is the optimum
//
// Price the fixed part of an arc for both ways of travelling apart. Then a
// plan is a flow from the terminals to the root on the graph of half-arcs.
// The price of g for q cables, Fixed(g) if q > 0 and PerUnit(g) q, is concave
// in q, that of a turn is linear.
//
//  1. A concave cost has its least value at an extreme point of the flows,
//     and without capacities the arcs in use there are a tree: cables that
//     meet stay together. Cut where its branches meet, the tree is one way of
//     applying the recursion, at exactly its cost. So L(all, root) is not
//     above the optimum.
//  2. Every way of applying the recursion gives a path to every terminal, and
//     what it pays for is not below the price of these paths: where two
//     branches overlap the fixed price was paid twice. So L(all, root) is not
//     below the optimum.
//
// It remains to show that an arc whose fixed price would be paid twice, once
// for either way, is not in use both ways in some optimal plan. Let cables A
// travel a longest stretch of arcs from u to v that cables B travel from v to
// u, and B arrive at v with x, A leave v with y, A arrive at u with x', B
// leave u with y'. Either B could follow A from v on, or A could follow B
// from u on. No arc is opened by that. Added up over both changes, per cable,
// the stretch is saved twice, and so are the bends at its ends, but for those
// of the turns from x to y and from x' to y'. If these cost no more than the
// bends they replace, one of the changes makes the plan no dearer, and paths
// shorter. (If A or B is the same cable, leave out its loop.) The argument
// breaks down where x and y are distinct arcs of the same heading out of v,
// as the turn is then forbidden; and where the stretch has no heading at v,
// so that no bends are saved, but x and y differ.
//
// Solve therefore relaxes the problem at these two kinds of node: there it
// takes no price for bends, or allows the turn, at no more than what the stretch
// saves at that end: its own price once, and two bends unless it is straight on
// from x and y. The optimum of
// the relaxed problem is a lower bound for the problem itself, and if the
// plan found makes no use of the relaxation, the plan is optimal. Otherwise
// Solve solves the problem without the relaxation as well, and what it can't
// prove it does not claim.
//
// # Where it stops
//
// Limits on the length or the bends of one path are not part of the problem. A
// Plan says Proved only if its cost, added up anew on the network, is its lower
// bound.
//
// Prices that are not concave, such as a second hole after so many cables, are
// Steps. Point 1 fails for them: it may pay that cables part, to use two holes,
// and meet again. Steps only add to prices, so a bound that leaves them out
// holds. Counted in the programme by sets they give the cheapest plan among
// those whose paths stay together from where they meet to the root, as long as
// two sets pay apart no less than at once (point 2). For the others, Through says
// what a plan costs at least that has a given number of cables at one place, and
// Detours say roughly, and quickly, where that can't pay.
//
// # How it is searched
//
// Labels (S, g) are settled in the order of cost plus a bound of what is
// still to pay, and only up to the cost of the best plan known. The bound is
// a dual solution: every terminal is given a share of every fixed price and
// pays for its own cheapest path. See dual, search and router. It is made by ascent,
// which a plan that is known guides, and where that isn't enough tightened by steps
// of a subgradient method: a bound that is twice as close takes a small part of the
// labels.
//
// Where a plan and a bound are known, the same dual tells what no cheaper plan
// travels, see OpenBelow, as reduced costs do in any linear programme. What is left
// is often a small part of the network, on which finer duals and all further
// searches are quick. Where an arc can't be travelled both ways any more, nothing
// is relaxed at its ends.
package tree
