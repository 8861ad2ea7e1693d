package fix

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/route"
)

// A Way is how a bit gets to a member.
type Way uint8

// Ways.
const (
	FromAttic   Way = iota // from above, by hand
	FromBox                // up or down the bay, in through an opening in the wall's face
	FromRoom               // straight up through the ceiling
	FromOutside            // through the soffit, or a wall under a gable
	FromBay                // sideways, behind opened board
	FromCrawl              // up, from under the joists, in a crawl space
	FromUnder              // up, from a room whose ceiling is open
	FromJoists             // down, from a room whose ceiling is open, between the joists
)

var wayNames = [...]string{
	"from the attic", "from the box", "from the room", "from outside", "from the opened bay",
	"from the crawl space", "from the room below", "from between the joists",
}

func (w Way) String() string { return wayNames[w] }

// A Bit is what a hole is bored with.
type Bit struct {
	Way Way
	// Need is how deep the bit must reach from where it goes in.
	Need measure.Length
	// Index is the job's bit that does it, -1 if none of its size reaches; it
	// reaches Reach, with the extension if Extended is true.
	Index    int
	Flexible bool
	Extended bool
	Reach    measure.Length
	// Why says why it is bored this way, and with such a bit.
	Why string
}

// An approach is one way to a member.
type approach struct {
	way  Way
	need measure.Length
	room measure.Length // for a straight bit and its drill; 0 for no limit
	bent bool           // only a flexible bit gets round the corner
	why  string
}

// chooseBits finds the way and the bit for every bore: the first way that one
// of the job's bits serves, or the first at all.
func (f *fixer) chooseBits(h *Hole, p *route.HolePlace, open *Opening) {
	ways := f.approaches(h, p, open)
	for i := range h.Bores {
		bore := &h.Bores[i]
		bore.Bit = f.bitFor(bore, &ways[0])
		for k := 1; k < len(ways) && bore.Bit.Index < 0; k++ {
			if b := f.bitFor(bore, &ways[k]); b.Index >= 0 {
				bore.Bit = b
			}
		}
	}
}

// approaches lists the ways to a member, the best first; there is always one.
func (f *fixer) approaches(h *Hole, p *route.HolePlace, open *Opening) []approach {
	switch h.Kind {
	case route.CeilingArc:
		return []approach{{way: FromRoom, need: p.Reach, why: "a finished face is cut from the side that is seen"}}
	case route.SoffitArc:
		if h.Opens >= 0 {
			return []approach{{way: FromOutside, why: "the soffit opens there; only its panel or strip may want a hole"}}
		}
		return []approach{{way: FromOutside, why: "a finished face is cut from the side that is seen"}}
	case route.GableArc:
		w := &f.house.Walls[p.Wall]
		a := approach{way: FromOutside, need: w.StudDepth + w.Boards[w.Out], why: "no hand gets to the wall from the attic"}
		if p.FromSpace {
			a.way, a.why = FromAttic, "a hand gets to the wall from the attic, and the hole comes out where it is wished"
		}
		a.why += throughCladding(w)
		return []approach{a}
	case route.StudArc:
		w := &f.house.Walls[p.Wall]
		return []approach{{way: FromBay, need: w.StudWidth, why: "the board is opened and patched there"}}
	case route.FloorArc:
		return []approach{{way: FromRoom, need: p.Reach, why: "down beside the wall, between the joists: the channel covers it"}}
	case route.JoistArc:
		s := f.house.Spaces[p.Space]
		return []approach{{way: FromBay, need: s.Width, room: s.Spacing - s.Width, why: "the ceiling is opened and patched there; in the middle of the joist's depth"}}
	case route.WallArc, route.PassArc:
		return []approach{f.throughWall(p)}
	case route.SoleArc:
		return f.downward(h, p, open)
	case route.PlateArc, route.BlockArc:
		return f.upright(h, p, open)
	}
	return []approach{{way: FromRoom, need: p.Reach, why: "from the side that a hand gets to"}}
}

// throughWall is the way through a wall from face to face.
func (f *fixer) throughWall(p *route.HolePlace) approach {
	w := &f.house.Walls[p.Wall]
	a := approach{way: FromRoom, need: min(w.Body.Width(), w.Body.Height()), why: "square through the wall, clear of studs, wires and pipes"}
	switch {
	case p.UnderWall(f.house):
		return approach{way: f.site(p.Space).byHand(), need: p.Reach, why: "through the blocking under the wall, where the joist bay is not open already"}
	case p.Kind == route.PassArc && p.Space >= 0:
		a.way = f.site(p.Space).byHand()
	case w.Exterior:
		a.why = "through the wall to the outside, falling outwards, clear of studs, wires and pipes"
	}
	if w.Masonry {
		a.why += "; with a bit for masonry"
	} else if p.Kind == route.WallArc {
		a.why += throughCladding(w)
	}
	return a
}

// throughCladding says how an outer wall's cladding is bored, if it is known.
func throughCladding(w *plan.Wall) string {
	if w.Masonry || !w.Exterior || w.Cladding.ID == "" {
		return ""
	}
	return "; through the " + w.Cladding.ID + " " + w.Cladding.Bore
}

// downward lists the ways to a bottom plate and the floor under it.
func (f *fixer) downward(h *Hole, p *route.HolePlace, open *Opening) []approach {
	var out []approach
	s := f.site(h.Space)
	if p.FromSpace && s != nil {
		a := approach{way: s.byHand(), need: s.space.Subfloor + route.PlateThickness, room: s.space.Depth}
		a.why = "up between the joists: what lies under the floor is seen first"
		if f.house.Walls[p.Wall].Exterior {
			a.why += "; over the foundation a drill has only the joists' depth"
		} else {
			a.room += s.clear(flat(p.At))
		}
		out = append(out, a)
	}
	if open != nil {
		out = append(out, approach{way: FromBox, need: max(p.Reach, open.Height+f.floor(h.Level)-p.At.Z), bent: true, why: f.whyDown(h, p, s)})
	}
	if len(out) == 0 {
		out = append(out, approach{way: FromBay, need: p.Reach, why: "no opening over it is known"})
	}
	return out
}

// whyDown says why a bottom plate is bored from the box.
func (f *fixer) whyDown(h *Hole, p *route.HolePlace, s *site) string {
	const needs = "; down the bay, with a long flexible bit"
	switch {
	case p.FromSpace:
		return "no bit of the job bores it from below" + needs
	case s == nil || s.closed(flat(p.At)):
		return "the floor is closed from below" + needs
	case s.reach.ZoneOver(flat(p.At)) > route.Arm:
		return "no hand gets under the floor there" + needs
	}
	return fmt.Sprintf("%s under the joists, a drill needs %s", f.text(s.clear(flat(p.At))), f.text(f.book.Length(rule.DrillRoom))) + needs
}

// upright lists the ways to a top plate or a fire block.
func (f *fixer) upright(h *Hole, p *route.HolePlace, open *Opening) []approach {
	plate := p
	if h.Kind == route.BlockArc {
		plate = f.plateOver(p)
	}
	var out []approach
	if plate != nil && plate.FromSpace {
		a := approach{way: FromAttic, need: measure.Length(f.house.Walls[p.Wall].TopPlates) * route.PlateThickness}
		if s := f.site(plate.Space); s != nil {
			a.room = s.under(flat(p.At))
			if s.fromBelow() {
				a.way = FromJoists
			}
		}
		a.why = "there is room for a drill over the plate"
		if h.Kind == route.BlockArc {
			a.need = f.plateTop(p.Wall) - p.At.Z + route.PlateThickness/2
			a.why = "down through the hole in the plate to the fire block, which needs a long bit"
		}
		out = append(out, a)
	}
	if open != nil {
		a := approach{way: FromBox, need: max(p.At.Z-open.z, open.z-p.At.Z), bent: true, why: f.whyBelow(h, p, plate)}
		if h.Kind == route.BlockArc {
			a.need += route.PlateThickness / 2
		}
		out = append(out, a)
	}
	if sole := f.boredAt(route.SoleArc, p); sole != nil && sole.FromSpace {
		if s := f.site(sole.Space); s != nil {
			out = append(out, f.upFromUnder(h, p, s))
		}
	}
	if h.Kind == route.BlockArc {
		slices.SortStableFunc(out, func(a, b approach) int { return cmp.Compare(a.need, b.need) })
	}
	if len(out) == 0 {
		out = append(out, approach{way: FromBay, need: p.Reach, why: "no opening under it is known"})
	}
	return out
}

// upFromUnder is the way to a top plate or a fire block through the hole in the
// bottom plate.
func (f *fixer) upFromUnder(h *Hole, p *route.HolePlace, s *site) approach {
	a := approach{
		way: s.byHand(), need: p.At.Z - f.floor(h.Level) + s.space.Subfloor,
		room: s.clear(flat(p.At)) + s.space.Depth,
		why:  "up through the hole in the bottom plate, which needs a long bit",
	}
	if h.Kind == route.BlockArc {
		a.need += route.PlateThickness / 2
	}
	return a
}

// plateOver is the place in the plate over a fire block's, nil if none is
// known.
func (f *fixer) plateOver(p *route.HolePlace) *route.HolePlace {
	for i := range f.res.Graph.Holes {
		q := &f.res.Graph.Holes[i]
		if q.Kind == route.PlateArc && q.Wall == p.Wall && q.Along == p.Along {
			return q
		}
	}
	return nil
}

// whyBelow says why a plate or a block is bored from the box.
func (f *fixer) whyBelow(h *Hole, p, plate *route.HolePlace) string {
	if h.Kind == route.BlockArc {
		return "a fire block closes the bay, which needs a long flexible bit"
	}
	at, s := flat(p.At), f.site(h.Space)
	switch {
	case s == nil:
		return "it needs a long flexible bit"
	case plate.FromSpace && s.fromBelow():
		return "no bit of the job bores it from between the joists"
	case plate.FromSpace:
		return "no bit of the job bores it from the attic"
	case s.closed(at):
		return "no hand gets to the plate: the hollow over it is closed; it needs a long flexible bit"
	case s.fromBelow():
		return "no hand gets to the top of the plate; it needs a long flexible bit"
	case s.reach.ZoneOver(at) > route.Arm:
		return fmt.Sprintf("no hand gets to the plate from the attic: under the low eave or out of reach, %s under the rafters; it needs a long flexible bit", f.text(s.under(at)))
	}
	return fmt.Sprintf("the eave is low: %s over the plate, a drill needs %s; it needs a long flexible bit", f.text(s.under(at)), f.text(f.book.Length(rule.DrillRoom)))
}

// bitFor chooses the job's bit for a bore: a straight one before a flexible
// one before one with the extension, and the shortest that reaches of each.
func (f *fixer) bitFor(b *Bore, a *approach) Bit {
	out := Bit{Way: a.way, Need: a.need, Index: -1, Why: a.why}
	type kind struct{ flexible, extended bool }
	for _, k := range []kind{{false, false}, {true, false}, {true, true}} {
		if !k.flexible && a.bent || k.extended && f.job.Tools.Extension == 0 {
			continue
		}
		for i, bit := range f.job.Tools.Bits {
			reach := bit.Reach
			if k.extended {
				reach += f.job.Tools.Extension
			}
			tall := !k.flexible && a.room > 0 && reach+length(DrillHead) > a.room
			if bit.Diameter != b.Diameter || bit.Flexible != k.flexible || reach < a.need || tall {
				continue
			}
			if out.Index < 0 || reach < out.Reach {
				out.Index, out.Reach, out.Flexible, out.Extended = i, reach, k.flexible, k.extended
			}
		}
		if out.Index >= 0 {
			return out
		}
	}
	return out
}

// BitText says in a line what a bore is made with, in the units of the house:
// "3/4in flexible bit with extension, reaches 9ft, needs 6ft 10in, from the
// box".
func (b *Bore) BitText(units interface {
	Format(measure.Length) string
},
) string {
	if b.Diameter == 0 {
		return "no bit makes a hole for these cables here"
	}
	parts := []string{units.Format(b.Diameter) + " "}
	switch {
	case b.Bit.Extended:
		parts[0] += "flexible bit with the extension"
	case b.Bit.Index >= 0 && b.Bit.Flexible:
		parts[0] += "flexible bit"
	case b.Bit.Index >= 0:
		parts[0] += "straight bit"
	default:
		parts[0] += "bit"
	}
	switch {
	case !b.Own:
		parts = append(parts, "the next trade size: none of the job's bits will do")
	case b.Bit.Index < 0:
		parts = append(parts, "none of the job's of that size serves")
	default:
		parts = append(parts, "reaches "+units.Format(b.Bit.Reach))
	}
	if b.Bit.Need > 0 {
		parts = append(parts, "needs "+units.Format(b.Bit.Need))
	}
	return strings.Join(append(parts, b.Bit.Way.String()), ", ")
}
