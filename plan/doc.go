// Package plan turns the files that an installer wrote, a house and a job in
// it, into a checked model.
//
// What comes in is the text of a job file and, through a function that reads a
// file by its name, of the house file that it names. What goes out is a Job
// with its House, or errors: all that can be found in both files at once, each
// with its place. The package never routes a cable or draws a line, and never
// opens a file itself.
//
// # Coordinates and units
//
// Every length is a measure.Length, a whole number of nanometres. X runs to
// house east and Y to house north, along the walls; House.North turns the
// arrow of a drawing and nothing else. Heights are above the finished floor of
// the level, in the attic above the top of the ceiling board. A distance along
// a wall is measured on its taped line from its start. Left and right of a
// wall are those of somebody who walks from its start to its end.
//
// # Words
//
//   - run: walls as they were taped one after the other, each of them a leg
//   - stud: upright of a wall; bay: the hollow between two studs
//   - plate: the timber along the top and the bottom of a wall
//   - joist: what carries the ceiling; rafter, top chord: what carries the roof
//   - rough opening: the hole in the framing for a door or a window
//   - board: gypsum board or plaster; cladding: all that is outside of the studs
//   - eave: the lower edge of a roof; overhang: how far it is beyond the plate;
//     soffit: the underside of the overhang; baffle: what closes a rafter bay
//     at the eave
//   - drop: one or more cables to one place; closet: where all cables end
//
// # The house file
//
//	[house]
//	name = "Corner house"
//	units = "imperial"                # or "metric": what defaults and texts use
//
//	[[level]]
//	id = "ground"
//	ceiling = "8ft"
//
//	[[wall]]                          # one run
//	id = "outer"
//	start = ["0ft", "0ft"]            # or { wall = "south", at = "14ft" }
//	run = "E 30ft, N 20ft, W 30ft, S 20ft"
//	names = ["south", "east", "north", "west"]
//	closes = true
//	face = "right"                    # of the finished wall, where the tape ran
//	exterior = true
//
//	[[opening]]
//	id = "front"
//	wall = "south"
//	kind = "door"
//	at = "5ft"                        # near edge, along the wall
//	width = "38in"
//	head = "82-1/2in"
//
//	[[room]]
//	id = "living"
//	name = "Living room"
//	at = ["20ft", "10ft"]             # any point in it; the walls give its outline
//
//	[attic]
//	joists_run = "N"
//	joist = "sawn"                    # or "truss"
//	spacing = "16in"
//	first = "16in"                    # centre of one joist
//	size = "2x6"
//
//	[roof]
//	kind = "hip"                      # or "gable", with gables = ["west", "east"]
//	pitch = "5/12"
//	overhang = "16in"
//	rafter = "2x6"
//
//	[[hatch]]
//	id = "hatch"
//	room = "living"
//	at = { room = "living", east = "3ft", north = "5ft" }
//	size = ["22in", "30in"]
//
// There may also be [[device]], [[obstacle]], [[soffit]], [[baffle]],
// [[power]] and [[mark]].
//
// # The job file
//
//	house = "house.toml"              # from the folder of the job file
//
//	[job]
//	name = "Network"
//
//	[closet]
//	name = "Panel"
//	room = "living"
//	wall = "south"
//	at = "2ft"                        # from the room's left corner, facing the wall
//	height = "5ft"
//	ports = 12
//
//	[[drop]]
//	tag = "A1"
//	kind = "wall plate"               # or "ceiling point", "soffit spot"
//	room = "living"
//	wall = "east"
//	at = "6ft"
//	count = 2
//
// There may also be [tools], [allow], [limits], [prices], [rates] and [slack].
//
// # What a loaded Job promises
//
// Every name refers to something: an index is in range, or -1 where its
// comment says so. Walls have a length and run along an axis, bodies touch
// where walls meet and overlap only in corners. Openings are in their walls
// and apart. Exactly one run of exterior walls closes, and the roof stands on
// it. Rooms are closed, and no two are one. The hatch is under the roof, the
// closet is in its room. A place of a drop is on its wall, off every opening
// and device, under the ceiling. Nothing that is computed depends on the order
// of tables in a file.
package plan
