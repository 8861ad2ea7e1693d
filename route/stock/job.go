package stock

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"topplate/plan/measure"
)

// Limits of a job. They keep every sum within a measure.Length and the memory
// within reason; no job of an installer comes near them.
const (
	MaxItems  = 4_000             // pieces, and also spools
	MaxLength = measure.MaxParsed // of one piece or spool
	MaxMark   = 1_000_000_000     // number on a jacket
)

// DefaultSteps is the work allowed for each type of cable if a job names none:
// about a second.
const DefaultSteps = 100_000_000

// A Piece is one cable to cut.
type Piece struct {
	Tag    string         // unique in the job
	Type   string         // type of cable
	Group  string         // bundle it is pulled with; "" if it is pulled alone
	Length measure.Length // to cut, with all allowances; 0 < Length <= MaxLength
	// Excess is the part of Length that is cut off again once the cable is in
	// place. 0 <= Excess <= Length. It changes no plan, only what is reported
	// as left for patch cords.
	Excess measure.Length
}

// A Spool is cable in stock.
type Spool struct {
	Tag    string         // unique in the job
	Type   string         // type of cable
	Length measure.Length // left on it; 0 <= Length <= MaxLength
	Marks  *Marks         // numbers on the jacket; nil if unknown
}

// A Purchase says that new spools of a type can be had, any number of them.
type Purchase struct {
	Type   string
	Length measure.Length // 0 < Length <= MaxLength
}

// A Job is what is to be planned. The order of its lists has no meaning.
type Job struct {
	Pieces []Piece
	Spools []Spool
	Buy    []Purchase // at most one for a type; none for a type of which nothing can be bought
	// Usable is the shortest remainder that is worth keeping on its spool, and
	// Patch the shortest offcut that is kept for patch cords. If Patch is 0 or
	// not below Usable, no remainder is a patch remainder. Both are at least 0.
	Usable, Patch measure.Length
	// SetsFirst puts level 5 before level 4: equal cables stay together even if
	// remainders get shorter or more by that. Without it, only ties are used.
	SetsFirst bool
	// Steps limits the work for each type of cable. 0 means DefaultSteps.
	Steps int64
}

// An InputError says what is wrong with one field of a job.
type InputError struct {
	List  string // "pieces", "spools", "buy"; "" for a field of the job itself
	Tag   string // of the piece or spool, or the type that is bought
	Field string
	Msg   string // what was found and what is allowed
}

func (e *InputError) Error() string {
	if e.List == "" {
		return e.Field + ": " + e.Msg
	}
	return fmt.Sprintf("%s %q: %s: %s", e.List, e.Tag, e.Field, e.Msg)
}

// check finds all that is wrong with a job, in an order that does not depend
// on the order of its lists.
func check(j *Job) error {
	c := &checker{}
	for what, n := range map[string]int{"pieces": len(j.Pieces), "spools": len(j.Spools)} {
		if n > MaxItems {
			c.add("", "", what, "found %d, at most %d are allowed", n, MaxItems)
		}
	}
	c.within("", "", "usable", j.Usable, 0, MaxLength)
	c.within("", "", "patch", j.Patch, 0, MaxLength)
	if j.Steps < 0 {
		c.add("", "", "steps", "found %d, at least 0 is allowed", j.Steps)
	}
	c.pieces(j.Pieces)
	c.spools(j.Spools)
	c.purchases(j.Buy)
	slices.SortFunc(c.found, func(a, b *InputError) int {
		return cmp.Or(cmp.Compare(a.List, b.List), cmp.Compare(a.Tag, b.Tag), cmp.Compare(a.Field, b.Field), cmp.Compare(a.Msg, b.Msg))
	})
	errs := make([]error, len(c.found))
	for i, e := range c.found {
		errs[i] = e
	}
	return errors.Join(errs...)
}

type checker struct{ found []*InputError }

func (c *checker) add(list, tag, field, format string, args ...any) {
	c.found = append(c.found, &InputError{list, tag, field, fmt.Sprintf(format, args...)})
}

func (c *checker) within(list, tag, field string, l, least, most measure.Length) {
	if l < least || l > most {
		c.add(list, tag, field, "found %v, allowed are %v", l, measure.Range{Min: least, Max: most})
	}
}

// unique reports tags that are empty or used before.
func (c *checker) unique(list, field, tag string, seen map[string]bool) {
	if tag == "" {
		c.add(list, tag, field, "is empty")
	} else if seen[tag] {
		c.add(list, tag, field, "is used twice")
	}
	seen[tag] = true
}

func (c *checker) pieces(pieces []Piece) {
	seen := map[string]bool{}
	for _, p := range pieces {
		c.unique("pieces", "tag", p.Tag, seen)
		c.within("pieces", p.Tag, "length", p.Length, 1, MaxLength)
		c.within("pieces", p.Tag, "excess", p.Excess, 0, max(0, min(p.Length, MaxLength)))
	}
}

func (c *checker) spools(spools []Spool) {
	seen := map[string]bool{}
	for _, s := range spools {
		c.unique("spools", "tag", s.Tag, seen)
		c.within("spools", s.Tag, "length", s.Length, 0, MaxLength)
		if s.Marks != nil {
			c.marks(s.Tag, *s.Marks)
		}
	}
}

func (c *checker) marks(tag string, m Marks) {
	if m.Start < 0 || m.Start > MaxMark {
		c.add("spools", tag, "marks.start", "found %d, allowed are 0 to %d", m.Start, MaxMark)
	}
	c.within("spools", tag, "marks.unit", m.Unit, measure.Millimetre, MaxLength)
	if m.Wrap < 0 || m.Wrap > MaxMark || m.Wrap > 0 && m.Start >= m.Wrap {
		c.add("spools", tag, "marks.wrap", "found %d, allowed is 0, or a number above the start mark up to %d", m.Wrap, MaxMark)
	}
}

func (c *checker) purchases(buy []Purchase) {
	seen := map[string]bool{}
	for _, b := range buy {
		if seen[b.Type] {
			c.add("buy", b.Type, "type", "is listed twice; new spools of a type have one length")
		}
		seen[b.Type] = true
		c.within("buy", b.Type, "length", b.Length, 1, MaxLength)
	}
}
