package stock

import (
	"cmp"

	"topplate/plan/measure"
)

// A Plan is how all pieces of a job are cut.
type Plan struct {
	Types    []TypePlan // by type; every type that has a piece or a spool
	Unplaced []Unplaced // by type, then longest first
	Pulls    []Pull     // by group; every group with a planned piece
	Totals   Totals
}

// A Reason says why a piece could not be planned.
type Reason int

const (
	// TooLong means that no spool in stock and no new one is long enough for
	// the piece: it is impossible.
	TooLong Reason = iota + 1
	// NoneLeft means that a spool would be long enough, but what is on the
	// spools doesn't suffice for all pieces and no more can be bought.
	NoneLeft
)

// An Unplaced piece is not in the plan.
type Unplaced struct {
	Piece   Piece
	Reason  Reason
	Longest measure.Length // longest spool there is or can be bought; 0 if none
}

// A TypePlan is how the pieces of one type of cable are cut.
type TypePlan struct {
	Type  string
	Score Score
	// Bound is a lower bound: no plan has a Score below it. Up to the level of
	// Proved it equals Score. If the job says SetsFirst, Bound holds for
	// Score.Splits and for the level Remainders each by itself.
	Bound  Score
	Proved Level
	Spools []SpoolPlan // stock by length and tag, then new ones; those not cut as well
	Totals Totals
}

// A Level is one step in the comparison of plans, from the first.
type Level int

// Nothing and the five levels, in the order of the package comment.
const (
	Nothing    Level = iota
	Cut              // fewest pieces left out
	Bought           // fewest new spools
	Wasted           // least waste, least patch remainders
	Remainders       // longest remainder, fewest spools cut
	Together         // fewest splits: the plan is the best in every respect
)

func (l Level) String() string {
	return [...]string{"nothing", "pieces cut", "new spools", "waste", "remainders", "everything"}[l]
}

// A Score is what a plan is judged by. It counts only pieces that are not
// impossible.
type Score struct {
	Uncut     int            // pieces left out
	NewSpools int            // spools to buy
	Waste     measure.Length // remainders of cut spools below the patch length
	Patch     measure.Length // remainders of cut spools from the patch length to below the usable length
	// Longest is the longest piece of cable that stays on a spool, cut or not, if
	// it is usable: in whole usable lengths, or in nanometres if that is 0. More
	// is better.
	Longest int64
	Opened  int // spools that are cut, new ones too: each may leave a remainder
	Splits  int // over all sets of equal cables, the spools they come from beyond the first
}

// Compare is negative if s is the better score, positive if o is, else 0.
func (s Score) Compare(o Score) int {
	return cmp.Or(
		cmp.Compare(s.Uncut, o.Uncut), cmp.Compare(s.NewSpools, o.NewSpools),
		cmp.Compare(s.Waste, o.Waste), cmp.Compare(s.Patch, o.Patch),
		cmp.Compare(o.Longest, s.Longest), cmp.Compare(s.Opened, o.Opened),
		cmp.Compare(s.Splits, o.Splits))
}

// proved is the last level up to which s equals its bound.
func (s Score) proved(bound Score) Level {
	switch {
	case s.Uncut != bound.Uncut:
		return Nothing
	case s.NewSpools != bound.NewSpools:
		return Cut
	case s.Waste != bound.Waste || s.Patch != bound.Patch:
		return Bought
	case s.Longest != bound.Longest || s.Opened != bound.Opened:
		return Wasted
	case s.Splits != bound.Splits:
		return Remainders
	}
	return Together
}

// Totals add up what happens to cable.
type Totals struct {
	Bought measure.Length // on new spools
	Cut    measure.Length // into pieces
	Waste  measure.Length // remainders and excess that nobody keeps
	Patch  measure.Length // remainders and excess kept for patch cords
	Usable measure.Length // left on spools after the job
}

func (t *Totals) add(o Totals) {
	t.Bought += o.Bought
	t.Cut += o.Cut
	t.Waste += o.Waste
	t.Patch += o.Patch
	t.Usable += o.Usable
}

// A SpoolID names a spool in stock by its tag, or a new one by its number from
// 1 on, counted for each type.
type SpoolID struct {
	Type string
	Tag  string // "" for a new spool
	New  int    // 0 for a spool in stock
}

// A Keeping says what becomes of a remainder.
type Keeping int

// What becomes of a remainder. A spool that the job does not cut stays Usable,
// however short it is.
const (
	Empty  Keeping = iota // nothing is left
	Waste                 // shorter than the patch length
	Patch                 // kept for patch cords
	Usable                // stays on its spool
)

// A SpoolPlan is what happens to one spool.
type SpoolPlan struct {
	ID        SpoolID
	Length    measure.Length // before the job
	Cuts      []CutStep      // in the order of cutting
	Checks    []Check        // one for each set in Cuts, in the same order
	Remainder measure.Length
	Keeping   Keeping
	Mark      *Reading        // at the free end after the job; nil if marks are unknown or pass 0
	MarkFault *BelowZeroError // marks that count down don't suffice for the length of the spool
	Totals    Totals
}

// A CutStep is one cut.
type CutStep struct {
	Piece Piece
	Used  measure.Length // running number after the cut
	Mark  *Reading       // to expect at the cut; nil if marks are unknown or pass 0
}

// A Check is for pulling a set of equal cables straight off the spool: the
// first is pulled, its real length is taken, the others are cut equal to it.
// It says where to stop because the rest of the job needs what is left.
type Check struct {
	First  string   // tag of the cable that is pulled and measured
	Equal  []string // tags of those cut equal to it
	Before measure.Length
	// StopFirst is the running number at which to stop pulling the first:
	// beyond it, the others of the set and all later pieces are no longer
	// sure. It holds if the running number before the set is Before; at another
	// one, ask StopFrom.
	StopFirst measure.Length
	// StopAfter is the running number that may not be exceeded after the set.
	StopAfter measure.Length
	// MustRemain is the length that later pieces of the spool need.
	MustRemain    measure.Length
	StopFirstMark *Reading
	StopAfterMark *Reading
}

// StopFrom is StopFirst for a running number before the set other than
// planned, because earlier cables came out longer or shorter. If it is below
// used, what is left does not suffice even now.
func (c Check) StopFrom(used measure.Length) measure.Length {
	if used > c.StopAfter {
		return c.StopAfter
	}
	return used + (c.StopAfter-used)/measure.Length(1+len(c.Equal))
}

// A Pull is how the cables of one group come off their spools.
type Pull struct {
	Group string
	// Parts has one entry for each spool: to pull the group at once, as many
	// spools must stand side by side. Cables of a part with several tags can't
	// come off their spool at once: the first is measured, and the others are
	// cut before the pull.
	Parts []PullPart
}

// A PullPart is the cables of a group that come off one spool, in the order
// of cutting.
type PullPart struct {
	Spool SpoolID
	Tags  []string
}
