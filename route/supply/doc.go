// Package supply works out power over a data cable: what reaches the device at
// its end, and whether that is enough; and how much longer a hot cable counts.
//
// The class of a device, its watts, the volts at the switch and the legs of
// the cable with their conductors and temperatures come in. Volts, amperes and
// watts go out, with what is wrong, the longest cable that would serve, and
// what the ports of a switch take together. The package holds the classes of
// IEEE 802.3, the wire gauge and the rise of loss with heat as data with their
// sources. It never reads files and never panics, and it finds no
// compliance: the standards are sold, and the numbers are as others quote
// them.
//
// # The circuit
//
// A device takes a constant power P at whatever voltage it gets. With V at the
// switch and the loop resistance R the current solves V·I - I²·R = P:
//
//	I = (V - √(V² - 4·R·P)) / 2R
//
// the smaller root, at which the device starts. There is none when V² < 4·R·P.
//
// One pairset is two conductors in parallel out and two back, so its loop
// resistance is that of a single conductor once along the cable; two pairsets
// halve it. What contacts and unequal pairs add is not known and left out.
package supply
