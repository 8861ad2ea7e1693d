// Package plan turns the files that an installer wrote, a house and a job in
// it, into a checked model.
//
// What comes in is the text of a job file and, through a function that reads a
// file by its name, of the house file and the others that it names. What goes out is a Job
// with its House, or errors: all that can be found in all of them at once, each
// with its place. The package never routes a cable or draws a line, and never
// opens a file itself.
//
// # Coordinates and units
//
// Every length is a measure.Length, a whole number of nanometres. X runs to
// house east and Y to house north, along the walls; House.North turns the
// arrow of a drawing and nothing else. Heights are above the finished floor of
// the level, in a space above the undersides of its joists. A distance along
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
//   - conduit: a pipe in a wall for cables; its trade size is a name, not a
//     diameter
//   - end: the plug or the jack on the far end of a drop's cables
//   - drop: one or more cables to one place; closet: where all cables end
//
// # The house file
//
// Most keys have a default. The smallest house needs [house] with name and
// units, a [[level]] with id and ceiling, one [[wall]] that closes and is
// exterior, a [[room]], [attic], [roof] and a [[hatch]].
//
//	[house]
//	name = "Corner house"
//	place = "A town"
//	units = "imperial"                # or "metric": what defaults and texts use
//	north = 15                        # bearing of house north, degrees
//	built = 1965
//	sketch_error = "1in"              # of one taped length
//	closing = "6in"                   # most that a run may miss its start by
//	adjust = false                    # true: least squares over walls and checks
//	latitude = 39.5                   # degrees, north and east positive
//	longitude = -98.25
//	utc_offset = "-06:00"             # of the clock on the day of the job
//	attic_hot = "140F"                # or "60C"; the most that it gets
//
//	[[level]]
//	id = "ground"
//	floor = "0ft"
//	ceiling = "8ft"
//	plate_top = "8ft 5/8in"
//
//	[[wall]]                          # one run of walls
//	id = "outer"
//	start = ["0ft", "0ft"]
//	run = "E 30ft, N 20ft, W 30ft, S 20ft"
//	names = ["south", "east", "north", "west"]
//	closes = true
//	face = "right"                    # of the finished wall, where the tape ran
//	exterior = true                   # one closed run is, and carries the roof
//	cladding = "1in"                  # and sheathing, outside of the studs
//	cladding_kind = "wood"            # or "vinyl", "metal", "fiber cement", "stucco", "brick", "stone"
//
//	[[wall]]
//	id = "middle"
//	start = { wall = "south", at = "14ft" }
//	run = "N 20ft"                    # to the line of north
//	frame = "2x4"                     # or a length
//	spacing = "16in"
//	board = "1/2in"
//	bearing = true                    # default: as exterior
//	insulated = false                 # default: as exterior
//	top_plate = "single"              # or "double"
//	fire_blocks = ["4ft"]
//
//	[[cladding]]                      # of an outer wall that is clad otherwise
//	wall = "south"
//	kind = "brick"
//	thickness = "5-1/8in"             # brick, the gap behind it, and sheathing
//
//	[[check]]                         # a length taped to see whether walls are right
//	id = "diagonal"
//	from = { wall = "south", end = "start" } # or at = "2ft", from = "start"; side = "left"
//	to = { wall = "north", end = "start" }   # for its finished face
//	length = "36ft 11/16in"
//	error = "1in"                     # how far off it may be; as sketch_error
//
//	[[check]]
//	id = "bed-width"
//	from = { wall = "west", side = "left" } # no end or at: square between walls
//	to = { wall = "middle", side = "left" }
//	length = "13ft 4-3/4in"
//
//	[[opening]]
//	id = "front"
//	wall = "south"
//	kind = "door"                     # "window", "passage", "garage door"
//	at = "5ft"                        # near edge, along the wall
//	from = "start"                    # or "end"
//	width = "38in"
//	head = "82-1/2in"                 # a window needs sill, too
//	hinge = "end"                     # the end of the opening
//	swing = "left"                    # the side of the wall
//
//	[[opening]]
//	id = "through"
//	between = ["bed", "living"]       # the wall between rooms, from the first of them
//	kind = "passage"
//	at = "2ft 3in left of R1"         # from another thing on the wall, see below
//	width = "3ft"
//	head = "82in"
//
//	[[device]]
//	id = "R1"
//	wall = "middle"
//	at = "4ft"                        # its centre
//	height = "12in"
//	kind = "receptacle"               # "switch", "light", "panel"
//	side = "left"                     # or room = "living"
//	feed = "up"                       # "down", "both": where its cable runs
//
//	[[room]]
//	id = "bed"
//	name = "Bedroom"
//	at = ["5ft", "10ft"]              # any point in it; walls give the outline
//
//	[[room]]
//	id = "living"
//	name = "Living room"
//	at = ["20ft", "10ft"]
//
//	[attic]
//	joists_run = "N"                  # or "E"
//	joist = "sawn"                    # or "truss", "i-joist"
//	spacing = "16in"
//	first = "16in"                    # centre of one joist, on the axis across
//	size = "2x6"                      # or depth = "5-1/2in"
//	width = "1-1/2in"
//	insulation = "10in"
//	decking = [{ from = ["10ft", "8ft"], to = ["20ft", "12ft"] }]
//
//	[roof]
//	kind = "gable"                    # or "hip", without gables
//	gables = ["west", "east"]
//	pitch = "5/12"                    # or "22.5deg"
//	overhang = "16in"
//	rafter = "2x6"                    # or heel = "4in" and chord = "2x4"
//	spacing = "16in"
//	first_x = "16in"                  # of the rafters of faces that rise along Y
//	first_y = "10ft 8in"              # and along X
//
//	[[hatch]]
//	id = "hatch"
//	room = "bed"
//	at = { room = "bed", east = "3ft", north = "5ft" }  # its centre
//	size = ["22in", "30in"]
//
//	[[obstacle]]
//	id = "flue"
//	kind = "flue"                     # "duct", "chimney", "tank", "light", "unit"
//	from = ["22ft", "9ft"]
//	to = ["23ft", "10ft"]
//	bottom = "0ft"
//	top = "10ft"
//	hot = true
//	clearance = "2in"
//
//	[[soffit]]                        # opens without cutting
//	id = "vent"
//	wall = "south"
//	at = "8ft"
//	width = "8ft"
//
//	[[baffle]]                        # closes rafter bays at the eave
//	id = "baffle"
//	wall = "north"
//	at = "2ft"
//	from = "end"
//	width = "4ft"
//
//	[[power]]
//	id = "P1"
//	path = [["2ft", "10ft"], ["28ft", "10ft"], ["28ft", "2ft"]]
//	circuits = 2
//	clear = "3in"                     # cable keeps so far beside it, if that is more than by the rules
//
//	[[mark]]
//	id = "lamp"
//	kind = "light box"                # "vent", "corner", "pipe", "nail"
//	at = { room = "living", west = "7ft", south = "9ft" }
//	seen = "both"                     # from "above", from "below"
//
//	[[conduit]]                       # a pipe, up through the plate into the attic
//	id = "C1"
//	wall = "east"
//	at = "16ft"                       # its middle, along the wall
//	from = "start"                    # or "end"
//	height = "12in"                   # where it opens into a box in the wall's face
//	room = "living"                   # or side = "left"
//	kind = "EMT"                      # "ENT", "PVC-40"
//	trade = "3/4"                     # "1/2", "1", "1-1/4"; or inside = "0.824in" alone
//	holds = [{ cable = "cat6", count = 2 }] # or diameter = "6mm"
//
//	[[underlay]]                      # a photo or a scan under the plan, to hold it against
//	id = "scan"
//	level = "ground"                  # on whose floor sheet it is; default: the first
//	file = "scan.png"                 # or a JPEG, from the folder of the house file
//	sheet = "both"                    # "floor", "sketch"
//	dots = [[60, 200], [360, 200]]    # two of its points, from its left and its top
//	at = [["0ft", "0ft"], ["30ft", "0ft"]] # where they are in the house
//
// # Rooms by inside dimensions
//
// Instead of walls a house file may have its rooms as [[inside]], from finished
// face to finished face: one at a point, each other one beside another, with the
// wall between them. Walls are made round them: one closed run of outer walls,
// which carries the roof, and the walls between neighbours. An inner wall is
// called by its rooms in the order of the alphabet, "bed-hall", or as its
// [[partition]] says; an outer wall by where it looks, "south", or where there are
// several "south.1" and so on, from the west and then from the south.
//
// In a house of several levels a room is on the level that it names, on that of
// the room beside which it is, or on the first of the file, and walls are made
// for each level by itself. Those of the first are called as above, outer walls
// of any other with the level before it, "upper-south". A room may be in line
// with one on another level, or at = { room = "bed", west = "0ft", south = "4ft" },
// so far from the faces of one, negative beyond them.
//
// A room that is no rectangle has the walk round its walls instead of width and
// depth, from any inside corner and either way round, as a run of walls that
// closes; at is then the corner where the walk starts. Beside another room it is
// moved up to it until faces that are across from each other are a wall apart,
// so that a room fits into the corner of another. Faces are in line by the
// farthest of them. Two rooms with several walls between them have "bed-hall.1"
// and so on, from the west and then from the south.
//
// Outer walls are all alike, as [outer] says, or differ: each [[outer]] is for the
// walls on its level, along its room, that look to its side, or for all. Where
// several fit, one that names a room goes before one that names a level, and that
// before one that names a side alone. What it leaves out is as of its level, if
// that has an [[outer]] to itself, or as of all. Inner faces stay in line; where the
// make of a wall changes between two rooms is halfway between them.
//
// A gap between rooms may differ from the thickness of the wall by sketch_error,
// and is then shared by both faces; what overlaps or leaves more is an error.
// [[wall]] and [[room]] may be there, too, for what stands free.
//
//	[house]
//	name = "Three rooms"
//	units = "imperial"
//
//	[[level]]
//	id = "ground"
//	ceiling = "8ft"
//
//	[[inside]]
//	id = "kitchen"
//	name = "Kitchen"
//	level = "ground"
//	width = "12ft"                    # east to west
//	depth = "10ft"                    # south to north
//	at = ["0ft", "0ft"]               # the south-west inside corner
//	use = "kitchen"                   # as of a [[room]], and so ceiling
//
//	[[inside]]
//	id = "bed"
//	name = "Bedroom"
//	width = "14ft"
//	depth = "14ft 4-1/2in"
//	east_of = "kitchen"               # "west_of", "north_of", "south_of"
//	line = "south"                    # faces in line, or "north"; "west", "east"
//
//	[[inside]]
//	id = "hall"
//	name = "Hall"
//	width = "12ft"
//	depth = "4ft"
//	north_of = "kitchen"
//	line = "west"
//	line_of = "kitchen"               # the room that it is in line with
//	shift = "0in"                     # from that line, north or east
//
//	[[inside]]
//	id = "bath"
//	name = "Bathroom"
//	walk = "E 10ft, N 8ft, W 4ft, N 6ft 4-1/2in, W 6ft, S 14ft 4-1/2in"
//	east_of = "bed"
//
//	[[outer]]                         # of the outer walls, as of a [[wall]]; [outer] if there is one
//	frame = "2x4"                     # or "masonry" with a thickness
//	spacing = "16in"
//	board = "1/2in"
//	cladding = "1in"
//	cladding_kind = "vinyl"
//	bearing = true
//	insulated = true
//	top_plate = "double"
//	fire_blocks = ["4ft"]
//	names = { "south.1" = "street" }  # instead of what they are called
//
//	[[outer]]                         # of some of them, all else as the first
//	room = "bed"                      # along a room
//	side = "south"                    # that look south; or level = "ground"
//	cladding = "4-1/2in"
//
//	[inner]                           # of the walls between rooms
//	frame = "2x4"
//
//	[[partition]]                     # one of them that has a name or more
//	id = "spine"
//	between = ["bed", "kitchen"]
//	bearing = true                    # all else as [inner]
//
//	[[check]]                         # the diagonal of a room
//	id = "kitchen"
//	from = { room = "kitchen", corner = "northwest" } # "southwest", "southeast", "northeast"
//	to = { room = "kitchen", corner = "southeast" }
//	length = "15ft 7-7/16in"
//
//	[[check]]
//	id = "bath"
//	from = { room = "bath", corner = 4 } # of its walk, whose start is 1
//	to = { room = "bath", corner = "southwest" } # the one that is farthest to the south-west
//	length = "10ft"
//
//	[attic]
//	joists_run = "N"
//	joist = "sawn"
//	spacing = "16in"
//	first = "16in"
//	size = "2x6"
//
//	[roof]
//	kind = "hip"
//	pitch = "5/12"
//	overhang = "16in"
//	rafter = "2x6"
//
//	[[hatch]]
//	id = "hatch"
//	room = "hall"
//	at = { room = "hall", west = "3ft", north = "2ft" }
//	size = ["22in", "30in"]
//
// # Places along a wall
//
// A distance along a wall, the key at of all that is on one and of the start of
// a run, but not of a [[check]], is measured from where its key from says, or in
// the same text from another thing on the wall:
//
//   - at = "2ft 3in left of door1"
//   - at = "5in right of wall hall"
//   - at = "1ft before south.door1"
//   - at = "1ft beyond conduit C1"
//
// The other thing is an opening (its near edge counts), a device or a conduit
// (its middle), or a wall that meets this one (its finished face); the word for
// what it is may stand before its name, and the name of the wall with a point.
// Left and right are those of somebody who faces the wall from the room or the
// side of what is placed, and for a soffit or a baffle from out of doors. Before
// and beyond are towards the start and the end of the wall. Of an opening, a
// soffit or a baffle the near edge is placed, of all else the middle.
//
// Instead of wall, an [[opening]], [[device]], [[conduit]], [[drop]] or [closet]
// may say between = ["bed", "hall"]: the one wall that has these rooms on its
// two sides, faced from the first of them, which is then the room or the side.
//
// # A house of several levels
//
// Levels lie over one another, or beside one another at different heights. A
// wall is on the level that its run names, on that of the wall on which it
// starts, or on the first of the file. Walls join, cross and bound rooms only
// on one level, and a [[check]] is of one level.
//
// What lies between joists is a space: an attic, a floor, a crawl space. A floor
// is where the level that it carries lies over the one below, less the stairs;
// its joists and boards fill the height between the plates below and the floor
// above, within half an inch. An attic is where its level lies under its roof,
// less the levels that stand in it. A roof covers the outline of its level, or
// an area of it, less higher levels that have a roof of their own; where it is
// cut off from the outer walls it ends like a gable without an overhang. Under a
// flat roof [attic] says which joists carry it.
//
//	[house]
//	name = "Two storeys"
//	units = "imperial"
//
//	[[level]]                         # the first is that of all that names none
//	id = "ground"
//	ceiling = "8ft"
//	plate_top = "8ft 5/8in"
//
//	[[level]]
//	id = "basement"
//	floor = "-8ft 6in"
//	ceiling = "7ft 7in"
//	plate_top = "7ft 7-5/8in"
//
//	[[level]]
//	id = "upper"
//	floor = "8ft 10-5/8in"
//	ceiling = "8ft"
//	plate_top = "8ft 5/8in"
//
//	[[wall]]
//	id = "outer"
//	level = "ground"
//	start = ["0ft", "0ft"]
//	run = "E 40ft, N 24ft, W 40ft, S 24ft"
//	names = ["south", "east", "north", "west"]
//	closes = true
//	face = "right"
//	exterior = true                   # one closed run of each level is
//
//	[[wall]]
//	id = "foundation"
//	level = "basement"
//	start = ["1in", "1in"]
//	run = "E 20ft, N 23ft 10in, W 20ft, S 23ft 10in"
//	names = ["f-south", "f-east", "f-north", "f-west"]
//	closes = true
//	face = "right"
//	exterior = true
//	frame = "masonry"                 # nothing is fished in it
//	thickness = "8in"                 # without boards, which are "0in" unless said
//
//	[[wall]]
//	id = "top"
//	level = "upper"
//	start = ["0ft", "0ft"]
//	run = "E 26ft, N 24ft, W 26ft, S 24ft"
//	names = ["u-south", "u-east", "u-north", "u-west"]
//	closes = true
//	face = "right"
//	exterior = true
//
//	[[wall]]
//	id = "hall"
//	start = { wall = "north", at = "14ft" } # and so on the level of north
//	run = "S 9ft, W 4ft, N 9ft"
//	names = ["hall-east", "hall-south", "hall-west"]
//
//	[[wall]]
//	id = "landing"
//	level = "upper"
//	start = { wall = "u-north", at = "4ft" }
//	run = "S 9ft, E 4ft"
//	names = ["landing-west", "landing-south"]
//
//	[[wall]]
//	id = "wardrobe"
//	level = "upper"
//	start = { wall = "u-west", at = "16ft" }
//	run = "E 3ft, S 4ft"
//	names = ["wardrobe-north", "wardrobe-east"]
//
//	[[wall]]
//	id = "wardrobe-south"
//	level = "upper"
//	start = { wall = "u-west", at = "20ft" }
//	run = "E 3ft"
//
//	[[room]]
//	id = "living"
//	name = "Living room"
//	at = ["20ft", "10ft"]
//
//	[[room]]
//	id = "stairs"
//	name = "Stairs"
//	at = ["24ft", "20ft"]
//	use = "stairs"                    # over one another, they open the floor between
//
//	[[room]]
//	id = "cellar"
//	name = "Cellar"
//	level = "basement"
//	at = ["10ft", "10ft"]
//	use = "storage"                   # "garage", "closet", "bath", "kitchen", "laundry", "mechanical", "room"
//	ceiling = "open"                  # or "board": its joists are got at from below
//
//	[[room]]
//	id = "bed"
//	name = "Bedroom"
//	level = "upper"
//	at = ["10ft", "10ft"]
//
//	[[room]]
//	id = "landing"
//	name = "Landing"
//	level = "upper"
//	at = ["24ft", "20ft"]
//	use = "stairs"
//
//	[[room]]
//	id = "wardrobe"
//	name = "Wardrobe"
//	level = "upper"
//	at = ["2ft", "6ft"]
//	use = "closet"
//
//	[[floor]]                         # the joists between two levels
//	id = "between"
//	under = "upper"                   # the level it carries
//	over = "ground"                   # the level on whose plates it lies
//	joists_run = "N"
//	joist = "sawn"                    # "i-joist", "truss"
//	spacing = "16in"
//	first = "16in"
//	size = "2x10"                     # or depth = "9-1/4in"
//	width = "1-1/2in"
//	subfloor = "3/4in"
//	insulation = "0in"
//
//	[[floor]]
//	id = "over-cellar"
//	under = "ground"
//	over = "basement"
//	joists_run = "N"
//	joist = "i-joist"
//	spacing = "16in"
//	first = "16in"
//	depth = "9-1/2in"
//
//	[[floor]]
//	id = "crawl"
//	under = "ground"
//	crawl = "26in"                    # instead of over: from the ground to the joists
//	area = [{ from = ["20ft 1in", "0ft"], to = ["40ft", "24ft"] }] # of the level's outline
//	joists_run = "N"
//	joist = "sawn"
//	spacing = "16in"
//	first = "16in"
//	size = "2x10"
//
//	[[attic]]
//	id = "high"
//	level = "upper"                   # whose ceiling it lies on; default: the highest
//	roof = "main"
//	joists_run = "N"
//	joist = "sawn"
//	spacing = "16in"
//	first = "16in"
//	size = "2x6"
//
//	[[attic]]
//	id = "low"
//	level = "ground"
//	roof = "lean"
//	area = [{ from = ["26ft", "0ft"], to = ["40ft", "24ft"] }]
//	joists_run = "E"
//	joist = "sawn"
//	spacing = "16in"
//	first = "16in"
//	size = "2x6"
//
//	[[roof]]                          # the attic under the first is the main one
//	id = "main"
//	level = "upper"                   # on whose plates it stands; default: its attic's
//	kind = "gable"                    # "hip", "flat"
//	gables = ["u-west", "u-east"]
//	pitch = "6/12"
//	overhang = "16in"
//	rafter = "2x6"
//
//	[[roof]]
//	id = "lean"
//	level = "ground"
//	area = [{ from = ["26ft", "0ft"], to = ["40ft", "24ft"] }]
//	kind = "hip"
//	pitch = "3/12"
//	overhang = "12in"
//	rafter = "2x6"
//
//	[[hatch]]
//	id = "up"
//	space = "high"                    # default: the main attic
//	room = "bed"
//	at = { room = "bed", east = "8ft", south = "8ft" }
//	size = ["22in", "30in"]
//
//	[[hatch]]
//	id = "knee"
//	space = "low"
//	room = "bed"                      # through a low wall: the strip of space behind it
//	at = ["27ft", "12ft"]
//	size = ["24in", "24in"]
//
//	[[hatch]]
//	id = "crawl-door"
//	space = "crawl"
//	outside = true                    # instead of room, or with it
//	at = ["38ft", "12ft"]
//	size = ["30in", "30in"]
//
//	[[obstacle]]
//	id = "main-duct"
//	kind = "duct"
//	space = "crawl"
//	from = ["21ft", "4ft"]
//	to = ["38ft", "5ft"]
//	bottom = "-14in"                  # under the joists
//	top = "0in"
//
//	[[power]]
//	id = "P1"
//	space = "over-cellar"
//	path = [["2ft", "10ft"], ["18ft", "10ft"]]
//
//	[[mark]]
//	id = "pipe"
//	kind = "pipe"
//	at = { room = "living", west = "2ft", south = "3ft" } # in the space over the room
//	seen = "both"
//
//	[[mark]]
//	id = "vent"
//	kind = "vent"
//	space = "crawl"
//	at = ["30ft", "20ft"]
//	seen = "above"
//
//	[[conduit]]
//	id = "C1"
//	wall = "east"
//	at = "4ft"
//	height = "12in"
//	room = "living"
//	down = true                       # through the floor, into the space under it
//	inside = "1in"
//
//	[[chase]]                         # a hollow that goes straight up
//	id = "K1"
//	from = ["1ft", "5ft"]             # corners of its inside
//	to = ["2ft", "6ft"]
//	levels = ["upper"]                # or the lowest and the highest
//	down = true                       # and into the space under the lowest
//	rooms = ["wardrobe"]              # from which a hand gets into it
//	holds = [{ cable = "coax6" }]
//	hot = false                       # true: a flue is in it
//
// # Checks
//
// A [[check]] is a length between two places on walls. A place is the start or
// the end of a wall's taped line, or along it; with side it is on the finished
// face there, and where the wall turns into the next of its run in the corner
// of both faces. At a free end it is where the tape ended. A check between two
// parallel walls, without a place, is taped square to them. A place may also be an
// inside corner of a room by inside dimensions.
//
// All lengths of walls, the places where runs start on others and the checks
// make one network (package survey): walls keep their directions, every length
// is as good as sketch_error, a check as its error, and that is three standard
// deviations. Its least-squares adjustment tests each length; the most doubtful
// is named, or all that can't be told apart, where a run does not close or a
// check differs from the walls by more than chance. Checks do not move walls,
// unless adjust is true and nothing is in doubt: then all walls are where least
// squares has them, and not where each run closes by itself.
//
// Of rooms by inside dimensions the network has what was taped: widths, depths and
// legs of walks. Walls between rooms are as thick as they are made, and rooms
// where the file says, each as good as sketch_error.
//
// # The job file
//
//	house = "house.toml"              # from the folder of the job file
//	include = ["my/defaults.toml"]    # and so these; a later one wins, the job last
//
//	[job]
//	name = "Network"
//	number = "17"
//	revision = "A"
//	by = "A. Fitter"
//	date = 2026-03-31
//
//	[closet]
//	name = "Panel"
//	room = "living"
//	wall = "middle"
//	at = "2ft"                        # from the room's left corner, facing the wall
//	height = "5ft"
//	width = "14in"
//	ports = 12                        # or ceiling = [x, y] instead of a wall
//	panel = "A"                       # what labels call it
//
//	[[drop]]
//	tag = "A1"
//	kind = "wall plate"
//	cable = "cat6"
//	count = 2
//	note = "under the desk"
//	room = "bed"
//	wall = "west"                     # or between, instead of both
//	at = "6ft"                        # or from another thing on the wall
//	from = "left"                     # or "right"
//	height = "12in"
//	shift = "8in"                     # it may be moved by
//
//	[[drop]]
//	tag = "A2"
//	kind = "wall plate"
//	wall = "east"
//	side = "left"                     # along the wall instead of from a corner
//	at = "4ft"
//	from = "start"                    # or "end"
//
//	[[drop]]
//	tag = "A3"
//	kind = "ceiling point"
//	at = { room = "living", east = "6ft", north = "6ft" }
//	when = "later"                    # or "now"
//	class = 4                         # of power over the cable, IEEE 802.3, 0 to 8
//	watts = 13.5                      # that the device takes at most
//	end = "plug"                      # or "jack", which wall plates have
//	plug = "pass-through-6"           # or jack = "jack-6", which end = "jack" has
//
//	[[drop]]
//	tag = "A4"
//	kind = "soffit spot"
//	cable = "cat6-sun"                # the job's own, below
//	exposure = "none"                 # "aerial", "other building"
//	wall = "south"
//	at = "10ft"
//	out = "7in"                       # from the finished wall
//
//	[[drop]]
//	tag = "A5"
//	kind = "ceiling point"
//	at = ["20ft", "5ft"]
//	level = "ground"                  # where several levels have a room there
//
//	[[fixed]]                         # bore here, and nowhere else in this wall
//	id = "F1"
//	do = "use"                        # "avoid", "there"
//	room = "bed"
//	wall = "west"                     # a hole in a plate of it
//	plate = "top"                     # or "bottom", over a floor or a crawl space
//	at = "6ft 8in"                    # or from its start or end, without room
//
//	[[fixed]]
//	id = "F2"
//	do = "there"                      # used if it takes all that may come through; else bored beside
//	wall = "east"
//	at = "4ft"
//	diameter = "3/4in"
//	cables = 1                        # in it already
//
//	[[fixed]]
//	id = "F3"
//	do = "avoid"                      # no hole's middle is within half the width
//	wall = "middle"
//	at = "9ft"
//	width = "12in"
//
//	[[fixed]]
//	id = "F4"
//	do = "use"                        # a trunk: laying along it costs each cable only
//	space = "attic"                   # default: the main attic; of an area, too
//	path = [["15ft", "4ft"], ["15ft", "12ft"], ["20ft", "12ft"]]
//
//	[[fixed]]
//	id = "F5"
//	do = "avoid"                      # an area, which no cable enters
//	from = ["24ft", "15ft"]
//	to = ["28ft", "18ft"]
//
//	[[cable]]                         # as a built-in one, but for what is said
//	id = "cat6-sun"
//	like = "cat6-outdoor"             # "cat6", "cat6a", "cat5e", "coax6", "speaker2", ...
//	title = "Category 6 for the wall outside"
//	diameter = "6.2mm"                # over the jacket
//	gauge = 23                        # the conductor follows from it
//	stranded = false
//	conductor = "0.57mm"              # bare
//	core = "1.05mm"                   # over its insulation
//	bend = 4                          # least inside radius, in diameters
//	pull = "25lbf"                    # or "110N", at most
//	mass = "40kg/km"                  # "g/m", "lb/1000ft"
//	resistance = "6.7ohm/100m"        # "ohm/km", "ohm/1000ft": of one conductor, 20 degC
//	jacket = "CMX"                    # "CM", "CMR", "CMP", "CATV", "CL2", "CL3", "outdoor"
//	sunlight = true
//	cold = "-40C"                     # or "-40F"
//	hot = "60C"
//	screened = false
//	price = 210                       # of so much of it
//	per = "1000ft"                    # or of "1m"
//
//	[[connector]]                     # as a built-in one, but for what is said
//	id = "plug-mine"
//	like = "plug-6"                   # "jack-6", "plug-6a-wide", "pass-through-6", ...
//	title = "Plug from the red box"
//	gauges = [23, 24]                 # from the thickest to the thinnest
//	solid = true
//	stranded = false
//	core = ["0.9mm", "1.1mm"]         # over the insulation of a conductor
//	jacket = ["5.5mm", "6.5mm"]       # of a plug only, as pass_through
//	pass_through = false
//
//	[[spool]]                         # at hand
//	id = "S1"
//	cable = "cat6"
//	left = "412ft"                    # or as the mark tells, where it counts down
//	mark = "412ft"                    # printed at the free end, in feet or metres
//	counts = "down"                   # or "up": the mark, as cable is drawn off
//
//	[buy]                             # the length of a new spool, by cable
//	cat6-sun = "500ft"
//
//	[crew]
//	people = 1                        # or 2
//	start = "08:00"
//	day = "8h"                        # what takes longer is spread over several days
//
//	[switch]
//	watts = 120                       # for all ports together
//	volts = 53.5
//
//	[labels]                          # fields panel, port, room, tag, n, floor, job
//	scheme = "{panel}{port}-{tag}.{n}"
//
//	[have]                            # parts at hand, by the name in the list of parts
//	jack-6 = 10
//
//	[parts]                           # own prices, for one of each
//	jack-6 = 6.5
//
//	[estimate]
//	allowance = 10                    # per cent
//
//	[sheets]
//	paper = "tabloid"                 # "letter", "a4", "a3"
//
//	[tools]
//	rods = "18ft"
//	arm = "26in"
//	extension = "18in"
//	bits = [{ size = "3/4in", reach = "54in", flexible = true }, { size = "1in", reach = "6in" }]
//
//	[allow]
//	patching = false
//	raceway = false                   # channels on the faces of rooms, and from storey to storey
//	outside = false                   # cable along the outer walls under the eave
//
//	[limits]                          # by the id of a limit in package rule
//	plate-bore = 40
//
//	[prices]                          # by the id of a term in package price
//	bend = 0.5
//
//	[weights]                         # what counts more than it costs, or less
//	openings = 2                      # in finished surfaces
//	crawling = 1.5                    # and work at arm's length
//	cable = 1                         # and pulling it
//
//	[rates]
//	currency = "USD"
//	hour = 95
//
//	[slack]
//	closet = "12ft"
//	outlet = "12in"
//	trim = "6in"
//	percent = 5
//	round = "1ft"
//
// # An included file
//
// What a user takes from job to job is kept in files of his own. Such a file
// has any of the tables [[cable]], [[connector]], [buy], [crew], [labels],
// [parts], [estimate], [sheets], [tools], [limits], [prices], [weights],
// [rates] and [slack], and nothing else; it includes no others. Files are read
// in the order of include, the job last, and of two values for one key the one
// read later holds; bits of [tools] are one value, and so is a whole [[cable]]
// or [[connector]] of one id. Job.Settings tells where each value is from.
//
//	[[cable]]                         # the job file has one of this id, which holds
//	id = "cat6-sun"
//	like = "cat6-outdoor"
//
//	[labels]
//	scheme = "{panel}{port}"
//
//	[limits]
//	power-parallel = "4in"            # holds, since the job says nothing of it
//	plate-bore = 45                   # does not
//
//	[rates]
//	currency = "USD"
//	hour = 90
//
//	[slack]
//	closet = "8ft"
//
// # What a loaded Job promises
//
// Every name refers to something: an index is in range, or -1 where its comment
// says so. Walls have a length and run along an axis, bodies touch where walls
// of a level meet and overlap only in corners. Openings are in their walls and
// apart. Exactly one run of exterior walls closes on each level with rooms.
// Rooms are closed, no two of a level are one, and levels do not overlap. Roofs
// stand on outer walls, no two in one place. Every space has an outline within
// that of the levels below and above it, and no two spaces lie on one ceiling
// or under one floor in one place; the joists and boards of a floor meet the
// level over it. Walls of a level high over the ground stand on a level below
// or near one. A hatch is over or under its attic or crawl space and leads to a
// room beside it or out of doors, the closet is in its room. A place of a drop
// is on its wall, off every opening and device, under the ceiling; its plug or
// jack is for its kind of cable. A fixed hole is on its wall, one in a bottom
// plate over a space and at no door, the legs of a
// trunk run along the axes over the house. A conduit is in its wall, off
// openings, devices and other conduits, and ends in a space. A chase is within
// the outer walls of its levels and off stairs. No place, hole or conduit is in
// masonry. The scheme of labels tells cables apart. Nothing that is computed
// depends on the order of tables in a file, but for the first [[level]], the
// first [[roof]] and the first [[attic]] under it, which stand for what a key
// leaves out.
package plan
