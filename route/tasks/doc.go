// Package tasks makes the order of work out of a solved job: what is done
// where, by how many hands, in how many minutes, and what is carried there.
//
// In comes a route.Result. Out comes a Work: numbered visits to places with
// their tasks and clock times, the same figures for doing the job drop after
// drop, what is left for another day, and notes on the clock. The package
// decides no route and no hole, cuts no spool, and reads and prints nothing.
//
// Words. A place is an attic, a crawl space, a room, the closet or outside; a
// drop in the closet's room is at the closet, and the joists over a room without
// a ceiling are worked on from that room. A drop is run today unless the job
// marks it for later. Cables are cut at the spool to their planned length,
// carried as coils to where they are laid first, lowered or fed up into the
// closet, laid from there, trunk before branches, and brought to each drop. A
// stretch is a way at one place that the same cables take and that is laid by
// hand. A passage is a part of a way where no hand gets at the cable: in a wall,
// through a floor, on a rod. A pass brings cables through a passage from one
// place where they are laid to the next.
//
// Hands. With two people, work at two places at once is one task: one feeds,
// one catches (Task.Helper). One person alone does it as two or three tasks, one
// at each place, so that every climb it costs is counted.
//
// Minutes are the job's own cost terms, so that the order of work and the price
// of the plan are about the same work; a term that covers several tasks is
// divided between them (see shares). Work without a term has a record in this
// package. Each task's sum is rounded up to a whole minute.
//
// Days. A job that takes longer than its crew works on one day is spread over
// several, which follow each other: sunset and the cool of the attic come on
// each, and all go home at night. Clock times go on over midnight
// (order.Clock). A task that no day is long enough for is done in parts; no
// other goes on overnight.
//
// Large jobs are worked in lots of neighbouring places, one lot after the other:
// what package order promises then holds for each lot.
package tasks
