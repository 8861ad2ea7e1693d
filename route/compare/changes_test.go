package compare_test

// A change is what is edited and what has to be told of it, and what follows
// for routes and holes.
type change struct {
	name, folder  string
	edits         []edit
	told, follows []string
}

const house, job = "house.toml", "job.toml"

var changes = []change{
	{
		name: "drop added", folder: starter, edits: []edit{{job, "[tools]", "[[drop]]\ntag = \"D4\"\nkind = \"ceiling point\"\nat = { room = \"hall\", west = \"2ft 8in\", south = \"5ft\" }\nshift = \"8in\"\n\n[tools]"}},
		told:    []string{"drop D4 added 0in 0in"},
		follows: []string{`top plate changed by 0in, size false, cables [4 5], there ""`, `ceiling added by 0in, size false, cables [0 1], there ""`},
	},
	{
		name: "drop with more cables", folder: starter, edits: []edit{{job, "count = 2", "count = 3"}},
		told:    []string{"drop D1 changed 0in 0in cables: 2 > 3"},
		follows: []string{`top plate changed by 0in, size false, cables [4 5], there ""`, `top plate changed by 0in, size true, cables [2 3], there ""`},
	},
	{
		name: "drop for later", folder: starter, edits: []edit{{job, "note = \"camera\"", "note = \"camera\"\nwhen = \"later\""}},
		told: []string{"drop D3 changed 0in 0in for later: no > yes"},
	},
	{
		name: "drop of another cable", folder: starter, edits: []edit{{job, "cable = \"cat6\"\nshift = \"8in\"", "cable = \"cat6a\"\nshift = \"8in\""}},
		told:    []string{"drop D2 changed 0in 0in cable: cat6 > cat6a connector: plug-6 > plug-6a-wide"},
		follows: []string{`ceiling changed by 0in, size true, cables [1 1], there ""`, `top plate changed by 0in, size true, cables [4 4], there ""`},
	},
	{
		name: "drop wished higher", folder: starter, edits: []edit{{job, "height = \"14in\"", "height = \"18in\""}},
		told:    []string{"drop D1 changed 4in 4in"},
		follows: []string{`route D1 another way true, cut -1ft`},
	},
	{
		name: "drop wished farther south", folder: starter, edits: []edit{{job, "west = \"6ft 8in\", south = \"7ft\"", "west = \"6ft 8in\", south = \"5ft\""}},
		told:    []string{"drop D2 changed 2ft 2ft"},
		follows: []string{`route D2 another way true, cut 0in`, `ceiling changed by 2ft, size false, cables [1 1], there ""`},
	},
	{
		name: "drop without a route", folder: starter, edits: []edit{{job, `rods = "15ft"`, `rods = "2ft"`}},
		told:    []string{"job rods: 15ft > 2ft", "drop D1 changed 0in 0in route: routed > no allowed route", "drop D3 changed 0in 0in route: routed > no allowed route"},
		follows: []string{`route D2 another way true, cut -2ft`, `soffit gone by 0in, size false, cables [1 0], there ""`, `top plate changed by 1ft 4in, size true, cables [4 1], there ""`, `top plate gone by 0in, size false, cables [2 0], there ""`},
	},
	{
		name: "longer loops", folder: starter, edits: []edit{{job, "[rates]", "[slack]\ncloset = \"13ft\"\n\n[rates]"}},
		told:    []string{"job loop at the closet: 10ft > 13ft"},
		follows: []string{`route D1 another way false, cut 3ft`, `route D2 another way false, cut 3ft`, `route D3 another way false, cut 4ft`},
	},
	{
		name: "dearer hour", folder: starter, edits: []edit{{job, "hour = 85", "hour = 90"}},
		told: []string{"job rate of an hour: 85 > 90"},
	},
	{
		name: "own price", folder: starter, edits: []edit{{job, "[rates]", "[prices]\npatch-board = 99\n\n[rates]"}},
		told: []string{"job price patch-board: 90 minutes each > 99 minutes each"},
	},
	{
		name: "closet higher", folder: starter, edits: []edit{{job, "height = \"5ft\"", "height = \"5ft 1in\""}},
		told:    []string{"job place of the closet: 7ft 5in along wall middle on the right, 5ft up > 7ft 5in along wall middle on the right, 5ft 1in up"},
		follows: []string{`route D1 another way true, cut 0in`, `route D2 another way true, cut 0in`, `route D3 another way true, cut 0in`},
	},
	{
		name: "window moved", folder: starter, edits: []edit{{house, "at = \"6ft\"\nwidth = \"4ft\"", "at = \"5ft\"\nwidth = \"4ft\""}},
		told: []string{"opening study-window changed 1ft"},
	},
	{
		name: "window wider", folder: starter, edits: []edit{{house, "width = \"4ft\"\nsill", "width = \"3ft\"\nsill"}},
		told: []string{"opening study-window changed 0in width: 4ft > 3ft"},
	},
	{
		name: "window closed up", folder: starter, edits: []edit{{house, "[[opening]]\nid = \"study-window\"\nwall = \"west\"\nkind = \"window\"\nat = \"6ft\"\nwidth = \"4ft\"\nsill = \"3ft\"\nhead = \"6ft 10in\"", ""}},
		told: []string{"opening study-window gone 0in"},
	},
	{
		name: "obstacle added", folder: starter, edits: []edit{{house, "[[mark]]", "[[obstacle]]\nid = \"pipe\"\nkind = \"duct\"\nfrom = [\"2ft\", \"2ft\"]\nto = [\"3ft\", \"3ft\"]\ntop = \"8in\"\n\n[[mark]]"}},
		told: []string{"obstacle pipe added 0in"},
	},
	{
		name: "obstacle shorter, another moved", folder: corner, edits: []edit{{house, "from = [\"3ft 6in\", \"19ft\"]\nto = [\"4ft 2in\", \"19ft 8in\"]", "from = [\"3ft 6in\", \"18ft\"]\nto = [\"4ft 2in\", \"18ft 8in\"]"}, {house, "to = [\"29ft 4in\", \"31ft\"]", "to = [\"29ft 4in\", \"30ft\"]"}},
		told:    []string{"obstacle light-1 changed 1ft", "obstacle supply changed 0in depth: 13ft > 12ft"},
		follows: []string{`route C2 another way true, cut -3ft`, `route D1 another way true, cut -3ft`, `route D2 another way true, cut 0in`, `route S1 another way true, cut -3ft`},
	},
	{
		name: "device moved", folder: starter, edits: []edit{{house, "at = \"12ft 10in\"", "at = \"12ft 9in\""}},
		told:    []string{"device r1 changed 1in", "drop D1 changed 1-7/8in 0in"},
		follows: []string{`route D1 another way true, cut 0in`, `top plate changed by 7/8in, size false, cables [2 2], there ""`},
	},
	{
		name: "mark moved", folder: starter, edits: []edit{{house, "south = \"11ft\" }", "south = \"10ft\" }"}},
		told: []string{"mark hall-light changed 1ft"},
	},
	{
		name: "more insulation", folder: starter, edits: []edit{{house, "insulation = \"8in\"", "insulation = \"9in\""}},
		told: []string{"attic  changed 0in insulation: 8in > 9in"},
	},
	{
		name: "power cable moved", folder: starter, edits: []edit{{house, "[\"4ft\", \"11ft\"]]", "[\"5ft\", \"11ft\"]]"}},
		told: []string{"power cable p1 changed 1ft"},
	},
	{
		name: "wall moved", folder: starter, edits: []edit{{house, "at = \"14ft\"", "at = \"13ft 11in\""}, {house, "west = \"3ft 2in\"", "west = \"3ft 3in\""}},
		told:    []string{"wall middle changed 1in"},
		follows: []string{`route D1 another way true, cut 0in`, `route D2 another way true, cut 0in`, `route D3 another way true, cut 0in`},
	},
	{
		name: "house longer", folder: starter, edits: []edit{{house, "E 24ft, N 16ft, W 24ft, S 16ft", "E 25ft, N 16ft, W 25ft, S 16ft"}},
		told:    []string{"outline", "wall east changed 1ft", "wall north changed 1ft", "wall south changed 1ft", "drop D3 changed 1ft 1ft"},
		follows: []string{`route D3 another way true, cut 1ft`},
	},
	{
		name: "hole used again", folder: starter, edits: []edit{{job, "[tools]", "[[fixed]]\nid = \"old\"\ndo = \"there\"\nwall = \"middle\"\nat = \"6ft 4-1/2in\"\ndiameter = \"1in\"\n\n[tools]"}},
		told:    []string{"job fixed old:  > there, 6ft 4-1/2in along wall middle, 1in, cables in it: 0"},
		follows: []string{`top plate gone by 0in, size false, cables [4 0], there "old"`},
	},
}

// secondJob makes another job of the corner house's.
var secondJob = []edit{
	{job, "west = \"15ft 6in\", north = \"6ft 6in\"", "west = \"12ft 6in\", north = \"6ft 6in\""},
	{job, "count = 3\nshift", "count = 4\nshift"},
	{job, "tag = \"D3\"\nkind = \"wall plate\"\nroom = \"living\"\nwall = \"spine\"\nat = \"5ft 10in\"\nheight = \"4ft 6in\"", "tag = \"D4\"\nkind = \"wall plate\"\nroom = \"bed-one\"\nwall = \"north\"\nat = \"3ft\"\nheight = \"14in\""},
	{house, "to = [\"29ft 4in\", \"31ft\"]", "to = [\"29ft 4in\", \"26ft\"]"},
}
