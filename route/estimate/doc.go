// Package estimate says what a job costs, on one page for the homeowner.
//
// A solved route.Result comes in with the list of its parts and the hours of
// its work. Out goes an Estimate: lines of labour and of material, the
// allowance, the total, and in plain words what the sums rest on; and findings
// where something is left out of them. The package plans nothing, reads and
// writes no file, and draws nothing. It knows no tax.
//
// # Rounding
//
// So that a reader can do the sums again from what is printed, every line is
// rounded first, and all sums are sums of rounded lines: the minutes of a line
// of labour to the nearest whole minute, and every amount to the nearest of the
// currency's smallest unit, halves up. The allowance is a percentage of the
// rounded subtotal.
package estimate
