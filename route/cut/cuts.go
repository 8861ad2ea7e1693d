package cut

import (
	"fmt"
	"strconv"
	"strings"

	"topplate/plan/measure"
)

// Cuts are the cut plan of a job.
type Cuts struct {
	Cables []Cable // by id; every kind that is cut, or of which a spool is at hand
	Later  []Later // by tag
}

// A Cable is how the pieces of one kind of cable are cut.
type Cable struct {
	ID     string
	Pieces int
	Cut    measure.Length // all pieces together
	// New spools of the length Each are bought.
	New  int
	Each measure.Length
	// Surplus, of the length in Cut, is cut off in place if the sketch is
	// right.
	Surplus measure.Length
	// Left is what stays on the spools, ends too short to keep left out: those
	// are Patch, if they make patch cords, or Waste.
	Left, Patch, Waste measure.Length
	// Proved says in what respects no plan is better: "nothing", "pieces cut",
	// "new spools", "waste", "remainders" or "everything", each with all before
	// it.
	Proved string
	Spools []Spool // those at hand by length and name, then new ones
}

// Opened is the number of spools at hand that are cut.
func (c *Cable) Opened() int {
	n := 0
	for i := range c.Spools {
		if !c.Spools[i].New && len(c.Spools[i].Cuts) > 0 {
			n++
		}
	}
	return n
}

// A Spool is what happens to one spool.
type Spool struct {
	ID     string // as the job names it, or "new 1"
	New    bool
	Length measure.Length // before the job
	Cuts   []Cut          // in the order of cutting
	Checks []Check        // one for each set of equal cables, in the same order
	Left   measure.Length
	Fate   string // of what is left: "none", "waste", "patch cords", "kept"
	Start  Mark   // at the free end before the job
	End    Mark   // and after it
}

// A Cut is one cut.
type Cut struct {
	Piece  string // D1.2
	Drop   int    // index in Job.Drops
	Number int    // of the cable in its drop, from 1
	Length measure.Length
	Used   measure.Length // running number after the cut
	Mark   Mark           // to expect at the cut
}

// A Check says where to stop while a set of equal cables is pulled.
type Check struct {
	First string   // the piece that is pulled and measured
	Equal []string // those that are cut equal to it
	// Planned is the length of each. StopFirst is how much of the first may
	// come off the spool at most, if the spool is then at the running number
	// Before.
	Planned, StopFirst, Before measure.Length
	// Rest is what later pieces of the spool need.
	Rest measure.Length
	// StopMark is the mark at which to stop the first, EndMark the one that
	// may not be passed by the whole set.
	StopMark, EndMark Mark
}

// Words tell one what to do, lengths in his units.
func (c *Check) Words(units measure.System) string {
	var b strings.Builder
	fmt.Fprintf(&b, "pull %s and measure it: planned %s, check the way if it takes more", c.First, units.Format(c.Planned))
	fmt.Fprintf(&b, "; stop at %s", units.Format(c.StopFirst))
	if c.StopMark.Known {
		fmt.Fprintf(&b, ", mark %s", c.StopMark)
	}
	switch {
	case c.Rest > 0:
		fmt.Fprintf(&b, ", since later cables need %s", units.Format(c.Rest))
	case len(c.Equal) > 0:
		b.WriteString(", since its equals come off the same spool")
	default:
		b.WriteString(", the end of the spool")
	}
	if len(c.Equal) > 0 {
		fmt.Fprintf(&b, "; then cut %s equal to it", strings.Join(c.Equal, ", "))
	}
	return b.String()
}

// A Mark is a length printed on a jacket, counted from the maker's zero. It is
// not known of a new spool, of one whose mark the job does not tell, and where
// it would be below zero.
type Mark struct {
	Known bool
	At    measure.Length
	Units measure.System
}

// String writes a mark as it is read: feet and inches, or metres. A mark that is
// not known is empty.
func (m Mark) String() string {
	switch {
	case !m.Known:
		return ""
	case m.Units == measure.Imperial:
		return m.At.String()
	}
	text := strconv.FormatInt(int64(m.At/measure.Metre), 10)
	if mm := m.At % measure.Metre / measure.Millimetre; mm > 0 {
		text += "." + strings.TrimRight(fmt.Sprintf("%03d", mm), "0")
	}
	return text + "m"
}

// A Later is a drop that is not cut today.
type Later struct {
	Tag    string
	Drop   int
	Cable  string
	Count  int
	Length measure.Length // of each cable
	// Covered is true if what is left after today is enough for its cables,
	// and for those of all other drops that are covered.
	Covered bool
}
