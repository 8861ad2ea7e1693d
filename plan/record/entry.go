package record

import (
	"crypto/sha256"
	"slices"
	"time"

	"topplate/plan/measure"
)

// A Kind is what an entry is about.
type Kind uint8

// Kinds of entry.
const (
	StartKind Kind = iota // which job the record is of, as the first entry
	CableKind
	HoleKind
	SpoolKind
	NoteKind
)

var kindNames = [...]string{"job", "cable", "hole", "spool", "note"}

func (k Kind) String() string { return kindNames[k] }

// An Entry is one line of a record. Of Start, Cable, Hole and Spool the one of
// its Kind is meant.
type Entry struct {
	Number   int // from 1
	Line     int // in the file, from 1; 0 before it is written
	When     time.Time
	Kind     Kind
	ID       string // of the cable, such as D1.2, the hole or the spool; empty for others
	Replaces int    // number of the entry that this one corrects, 0 if none
	Anyway   bool   // recorded although the check found it impossible
	By       string
	Note     string

	Start Start
	Cable Cable
	Hole  Hole
	Spool Spool
}

// A Start says which job a record is of, and the files that it was read from
// then: the job's own first, that of its house second.
type Start struct {
	Name, Number string
	Inputs       []Input
}

// An Input is a file that a job was read from.
type Input struct {
	Path   string
	SHA256 [sha256.Size]byte
}

// A State is what became of a cable.
type State uint8

// States of a cable.
const (
	Run State = iota
	Deferred
	NotRun
)

var stateNames = []string{"run", "deferred", "not run"}

func (s State) String() string { return stateNames[s] }

// A WireMap is what the tester said of the order of the conductors.
type WireMap uint8

// Results of a wire map.
const (
	Untested WireMap = iota
	Pass
	Fail
)

var wireMapNames = []string{"untested", "pass", "fail"}

func (w WireMap) String() string { return wireMapNames[w] }

// A Cable is what became of one cable. Zero means that a value is not known.
type Cable struct {
	State  State
	Length measure.Length // measured, from end to end
	// Marks are what is printed on the jacket at both ends, if Marked.
	Marked  bool
	Marks   [2]measure.Length
	Plug    string // what is on the far end
	Port    int    // at the panel
	WireMap WireMap
	Speed   int64 // of the link, Mb/s
	Watts   int64 // at the device, thousandths of a watt
	Volts   int64 // at the device, thousandths of a volt
	Hours   int64 // of work, thousandths of an hour
}

// Measures reports whether c has anything that only a cable that was run can
// have.
func (c *Cable) measures() bool {
	return c.Length != 0 || c.Marked || c.WireMap != Untested || c.Speed != 0 || c.Watts != 0 || c.Volts != 0 || c.Port != 0 || c.Plug != ""
}

// ByMarks is the length between the marks, which may count up or down.
func (c *Cable) ByMarks() measure.Length {
	return max(c.Marks[0]-c.Marks[1], c.Marks[1]-c.Marks[0])
}

// A Hole is a hole as it was bored.
type Hole struct {
	Bore
	Cables []string // of this job, through it
	There  int      // cables of other jobs in it before
}

// A Bore is what a hole is without the cables in it.
type Bore struct {
	Through string         // what it goes through, as the plan calls it: "top plate"
	Wall    string         // empty for one that is in no wall
	At      measure.Length // along the wall
	// Pointed says whether Point is known: where it was planned, in the house's
	// frame. Of one in a wall only the height counts, since At is measured.
	Pointed  bool
	Point    [3]measure.Length // X, Y and height over the zero point
	Diameter measure.Length
}

// What holes in plates go through.
const (
	TopPlate    = "top plate"
	BottomPlate = "bottom plate"
)

// InPlate reports whether a hole is in a plate.
func (b *Bore) InPlate() bool { return b.Through == TopPlate || b.Through == BottomPlate }

// A Spool is what is left on a spool.
type Spool struct {
	Cable  string // its kind
	Left   measure.Length
	Marked bool
	Mark   measure.Length // printed at the free end
	Down   bool           // the marks get smaller as cable is drawn off
}

// Current are the entries that hold: those that no other replaces, and of a
// spool the last.
func Current(entries []Entry) []Entry {
	replaced := map[int]bool{}
	last := map[string]int{}
	for i := range entries {
		e := &entries[i]
		replaced[e.Replaces] = true
		if e.Kind == SpoolKind {
			if n := last[e.ID]; n != 0 {
				replaced[n] = true
			}
			last[e.ID] = e.Number
		}
	}
	return slices.DeleteFunc(slices.Clone(entries), func(e Entry) bool { return replaced[e.Number] })
}

// find is the entry of a kind about a thing, the last one if there are more.
func find(entries []Entry, k Kind, id string) (*Entry, bool) {
	for i := len(entries) - 1; i >= 0; i-- {
		if entries[i].Kind == k && entries[i].ID == id {
			return &entries[i], true
		}
	}
	return nil, false
}
