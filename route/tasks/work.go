package tasks

import (
	"topplate/plan/price"
	"topplate/route"
	"topplate/route/order"
)

// A Kind says what is done in a task.
type Kind uint8

// Kinds of task, about in the order in which they come at a place.
const (
	SetUp     Kind = iota // lay out tools and spools at the closet
	Mark                  // find what is behind the board, mark the opening
	Open                  // cut an opening, take a soffit down
	Bore                  // bore a hole
	Cut                   // cut a drop's cables to length at the spool
	Tag                   // tag both ends of a drop's cables
	Ready                 // alone: leave a tape or the rods where the other end is found
	Shoot                 // a rod shot
	Feed                  // the bundle into the closet
	Lay                   // lay cables along a stretch
	Pass                  // bring cables on from one place where they are laid to the next
	Fish                  // bring a drop's cables to its opening
	Draw                  // alone: draw in what was lowered or pushed
	Seal                  // seal a hole
	Mount                 // mount a box or bracket
	Terminate             // jacks or plugs at the drop
	Panel                 // jacks at the panel
	Test                  // test each link
	Finish                // fit the plate or the device
	Power                 // patch a device in and see it work
	Close                 // close a soffit
	Patch                 // close an opening in board
	Clean                 // clean up and collect the tools
)

var kindNames = [...]string{
	"set up", "mark", "open", "bore", "cut", "tag", "ready", "shoot", "feed", "lay", "pass", "fish", "draw", "seal", "mount",
	"terminate", "panel", "test", "finish", "power", "close", "patch", "clean",
}

func (k Kind) String() string { return kindNames[k] }

// A Part is one term or record that a task's minutes are made of.
type Part struct {
	Term        price.ID // of package price, or of a Record
	Thousandths int64    // of a minute
}

// A Task is a piece of work at one place.
type Task struct {
	ID      string
	Kind    Kind
	Place   string   // key of a Place
	Helper  string   // where the second person stands, empty if there is none
	Needs   []string // IDs of tasks that come before, sorted
	Hands   int      // 1 or 2
	Minutes int      // Parts, rounded up
	Parts   []Part   // in the order of their terms' names
	Drops   []int    // indices in Job.Drops that it is about
	Cables  int      // of those drops
	Holes   []int    // indices in Result.Holes that it bores, seals or goes through
	// Bores is true if the task makes its Holes.
	Bores bool
	// Words say what is to be done, HelperWords what the second person does.
	Words, HelperWords string
	// Carry is what has to be at Place for it, HelperCarry at Helper.
	Carry, HelperCarry []Item
}

// An Item is something to carry. Count is 0 for a tool, of which one does.
type Item struct {
	What  string
	Count int
}

// A PlaceKind is one of the five kinds of place.
type PlaceKind uint8

// Kinds of place.
const (
	Attic PlaceKind = iota
	Closet
	Room
	Outside
	Crawl
)

var placeNames = [...]string{"attic", "closet", "room", "outside", "crawl space"}

func (k PlaceKind) String() string { return placeNames[k] }

// A Place is where people work.
type Place struct {
	// Key is "attic", "crawl space", "closet", "outside", or "room " and its id;
	// that of an attic or a crawl space has its id, too, if there are several.
	Key   string
	Title string // as it is printed
	Kind  PlaceKind
	Room  int // index in House.Rooms, -1 if it is none
	Level int // index in House.Levels: its own, or the one that leads to it
}

// A Step is one task as one person does it.
type Step struct {
	Number string // "4.2": the second step of the fourth visit
	Task   *Task
	Words  string // of this person
	// Start and End are on the clock. Together: both people are in it.
	Start, End order.Clock
	Together   bool
	// Helps is true for the person at Task.Helper.
	Helps bool
}

// A Visit is a stay of one person at one place.
type Visit struct {
	Number        int // from 1
	Person        int // 1 or 2
	Place         *Place
	Climb         bool // a way up into an attic, or down into a crawl space
	Arrive, Leave order.Clock
	Steps         []Step
	Carry         []Item // to this visit, tools first, each by name
}

// Figures are what an order of work comes to.
type Figures struct {
	Climbs  int // ways up into attics and down into crawl spaces
	Changes int // changes of place, summed over people
	Minutes int // from the start to the end of the last task, of each day
	Late    int // minutes of tasks beyond their limits on the clock, summed
}

// A Work is a job's order of work.
type Work struct {
	People     int
	Start, End order.Clock
	Days       int         // on which there is work: those that End counts
	Sunset     order.Clock // 0 if it is not known; the earliest of its days
	Tasks      []*Task     // by ID
	Visits     []Visit
	Figures
	// Lots is how many parts a large job is worked in, one after the other.
	Lots int
	// Proved is set when no order of these tasks is better, ProvedChanges when
	// none has fewer changes of place (after the least lateness), of each lot.
	Proved, ProvedChanges bool
	// Baseline is doing one drop after the other, each in its own best order.
	Baseline Figures
	// Deferred is what is left for another day, in words.
	Deferred []string
	Notes    []route.Finding
}

// Saved is what the order saves against drop after drop.
func (w *Work) Saved() Figures {
	b, f := w.Baseline, w.Figures
	return Figures{b.Climbs - f.Climbs, b.Changes - f.Changes, b.Minutes - f.Minutes, b.Late - f.Late}
}
