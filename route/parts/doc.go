// Package parts lists what a job needs besides tools, with the rule behind each
// count.
//
// A solved route.Result comes in with its cut plan and its labels. Out goes a
// list of lines: the part, how many are needed today and why, how many are at
// hand, how many to buy, and what they cost; and findings where the job names
// a part that is none, or a part has no price. The package decides no route
// and no cut, reads and writes no file, and draws nothing.
//
// # Words
//
// A part is a record of the catalogue, with an id that [have] in a job file
// uses. A gang is the width of one switch in a box. An insert is what fills an
// opening of a plate: a jack, a blank, or posts for speaker cable. The drops
// for later count under Later only; what they share with today's counts today.
//
// # Prices
//
// A price is for one unit of a part, in thousandths of the currency's unit, of
// whatever currency the job has. All prices and all allowances of the catalogue
// are common practice without a source: they are to be replaced by one's own.
// What is charged for a line is all that is needed, also from stock; what is
// spent is only what is to be bought. Cable is charged by the length that is
// cut and bought by the spool. Drill bits are tools and charged to nobody.
package parts
