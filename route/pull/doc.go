// Package pull estimates how hard a cable pulls through a path, and says where
// to stop and pull it out on the way.
//
// A path of straight pieces and bends comes in, with the mass and friction of
// what is pulled and the tension it is fed with; the tension after every piece
// goes out, for a pull from either end, and the fewest pull points with which
// no stretch exceeds the limits given. The package holds no limits and no
// coefficients of its own: they come with the request, where their sources are
// known. It never reads files and never panics.
//
// # The formulas
//
// Over a straight piece of length L that rises by h, with the horizontal run
// r = √(L² - h²), a cable of mass m per metre and friction μ gains
//
//	T2 = T1 + m·g·(μ·r + h)
//
// which is T1 + L·W·(sin θ + μ·cos θ) up a slope of θ, T1 + L·W·μ on the level,
// and T1 + L·W straight up. Round a bend of θ radians, whatever its radius, it
// is multiplied:
//
//	T2 = T1·e^(μ·θ)
//
// (the capstan equation of Euler and Eytelwein; both as in published guides to
// pulling cable in conduit). There is one deviation: going down, the guides
// let the weight take tension off without end. Here the tension never falls
// below what the cable is fed with, since whoever feeds it holds it back. That
// is the cautious side, and it makes the fewest pull points provable: see
// Points.
//
// The weight of the cable on a bend itself is left out, as the guides do. A
// planned tension is an estimate: friction in timber is known to no better
// than a third.
package pull
