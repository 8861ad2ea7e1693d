package fix

import (
	"topplate/plan"
	"topplate/plan/rule"
	"topplate/route"
)

// A Seal is what is closed again round the cables of a hole.
type Seal struct {
	// Fire: with an approved material that resists flame and smoke, since the
	// hole is at a ceiling line or in a fire block.
	Fire bool
	// Air: tightly, since warm air and moisture would pass.
	Air bool
	// Weather: outside, under a drip loop.
	Weather bool
	// Garage: the member bounds a room with a garage door; what separates it
	// from the house is closed as the local code asks.
	Garage bool
	Rules  []rule.ID
}

func (f *fixer) seal(h *Hole) Seal {
	var s Seal
	switch h.Kind {
	case route.PlateArc, route.CeilingArc:
		s = Seal{Fire: true, Air: true, Rules: []rule.ID{rule.SealHoles}}
	case route.BlockArc:
		s = Seal{Fire: true, Rules: []rule.ID{rule.FireBlock, rule.SealHoles}}
	case route.SoffitArc:
		s = Seal{Weather: true, Rules: []rule.ID{rule.OutdoorEntry}}
	case route.GableArc:
		s = Seal{Air: true, Weather: true, Rules: []rule.ID{rule.OutdoorEntry}}
	}
	if s.Garage = f.besideGarage(h); s.Garage {
		s.Rules = append(s.Rules, rule.FireSeparation)
	}
	return s
}

// besideGarage reports whether a room with a garage door is on either side of
// the member, or under it.
func (f *fixer) besideGarage(h *Hole) bool {
	if h.Wall < 0 {
		return f.garage(h.Room)
	}
	w := &f.house.Walls[h.Wall]
	for _, side := range [2]plan.Side{plan.Left, plan.Right} {
		if f.garage(f.house.RoomBeside(w, h.Along, side)) {
			return true
		}
	}
	return false
}

// garage reports whether a garage door is in a wall of the room.
func (f *fixer) garage(room int) bool {
	if room < 0 {
		return false
	}
	for i := range f.house.Walls {
		w := &f.house.Walls[i]
		for _, o := range w.Openings {
			for _, side := range [2]plan.Side{plan.Left, plan.Right} {
				if o.Kind == plan.GarageDoor && f.house.RoomBeside(w, (o.Start+o.End)/2, side) == room {
					return true
				}
			}
		}
	}
	return false
}
