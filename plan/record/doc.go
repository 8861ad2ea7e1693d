// Package record keeps what was done on site: which cables were run, how long
// they are and how they tested, where holes were bored, what is left on spools.
//
// What comes in are the bytes of a record, entries to add, a table of the
// tester's, and a Plan: what was planned, as plain data. What goes out are
// entries, what is wrong with them, the record held against the plan, and what
// the next job starts from. The package never solves a job, and never changes a
// byte that is in a record: Add writes at the end and nowhere else.
//
// # The file
//
// A record is a log. It lies beside its job, and each line is one entry:
//
//	1 2026-03-31T08:02:11Z job name=Network input="job.toml 5f0c…" input="house.toml 91ab…" crc32c=0b5a1f2e
//	2 2026-03-31T14:40:00Z cable D1.2 state=run length=61ft marks=412ft,351ft wiremap=pass by="A. Fitter" crc32c=77d01c4a
//	3 2026-03-31T14:55:00Z hole H4 through="top plate" wall=east at="11ft 2in" diameter=3/4in cables=D1.1,D1.2 crc32c=e9a02b51
//	4 2026-03-31T16:10:00Z cable D1.2 replaces=2 state=run length=62ft crc32c=5c1f7790
//
// The number of the entry, when it was made (UTC), its kind, what it is about,
// its fields, and the CRC-32C (Castagnoli, as in RFC 3720, 12.1) of all before
// the last space. Values with anything but letters, digits and .,:/+- are in
// double quotes, as strconv.Quote writes them. Lengths are exact.
//
// # Why a log of lines
//
// It has to survive a crash at any moment, on any disk, and be read by people
// years later with any editor. A file that is written anew, such as TOML or
// JSON as a whole, puts all that was recorded at risk for one more entry, and a
// data base can't be read without its program. Of a file that only grows at its
// end a crash can spoil no more than the end. So:
//
//   - An entry needs no other to be read. It has everything: a hole its wall
//     and place, also where they are as planned.
//   - Add writes all of its entries at once, and returns when the disk has them
//     (fsync, of the folder too when the file is new). An entry counts as
//     recorded from then on.
//   - A line that is torn fails its checksum. It is told of and left out. It
//     stays in the file: the next entry starts on a new line, and has the number
//     that the torn one would have had, which never was acknowledged.
//   - A number that is missing means that a line was changed or lost later. That
//     is told as damage.
//   - A correction is a new entry that names the one it replaces.
//
// The lock of the file (where the system has one) keeps two programs from
// adding at the same time.
package record
