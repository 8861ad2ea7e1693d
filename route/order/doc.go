// Package order puts the tasks of a job into the order that is best on site:
// the fewest changes between attics, crawl spaces, rooms and outside, then the shortest time.
//
// In comes a Job: tasks with a place, prerequisites, minutes, one pair of hands
// or two, and clock limits; the places; one person or two. Out comes a Result:
// visits with a start and an end for every task, the same for the order the
// job would have been done in otherwise, and how much of it is proved. The
// package knows nothing of cables, reads and prints nothing, and its answer
// does not depend on the order of the input.
//
// Words. A visit is a stay of one person at one place. A change is a person's
// move from one place of work to another; a person's first arrival is not one.
// A climb is an arrival at a place that is marked Climb, the first included.
//
// What is best, the first that differs deciding:
//
//  1. Late: minutes that tasks end after their NotAfter, summed. 0 if possible.
//  2. Changes, both people's together.
//  3. Past: minutes that tasks end after their PreferBefore, summed. It stands
//     before time because it is about heat in the attic.
//  4. Minutes from the start to the end of the last task.
//
// A job of several days (Job.Shift) has the same places, changes and wishes: a
// clock limit holds on each day, a task is begun on the first day on which it
// can be ended, by its limit where any day allows that, and who takes up work
// in the morning where it was left in the evening has not changed place, but
// climbs again.
//
// What is still equal is decided by a fixed rule that looks at IDs and names
// only; tasks of a visit that may be swapped freely stand in order of ID.
//
// How it is found. If only changes count, a person who stands at a place does
// best to do there all that can be done: a larger set of finished tasks at the
// same place after as many changes is never worse. So only the closed sets
// matter, the sets of tasks done when nothing more can be done where the
// people stand, and a search over them (A*, with a lower bound from chains of
// prerequisites) is exact. For one person without clock limits that is the
// whole answer, since walking is all that differs in time. With clock limits
// or with two people the same search is the bound inside a second one, over
// single tasks with their clock times, which a beam search supplies with a
// good order first. Both stop after a stated number of steps, so the time is
// bounded and the answer the same on every machine; Result.Proved tells
// whether the end was reached, and Result.Bound what no order can beat. With
// several days a later moment can be the better one, since it is cool again;
// so there the second search is left to the beam, and mostly only changes are
// proved.
//
// Cost. The first search visits closed sets, few in a house; the second is
// exponential in the worst case (scheduling with prerequisites on two machines
// is NP-hard), which is what the limit is for.
package order
