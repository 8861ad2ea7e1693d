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
	// Weather: outside; where cable runs on along the wall, over a drip loop.
	Weather bool
	// Garage: the member bounds a room with a garage door; what separates it
	// from the house is closed as the local code asks.
	Garage bool
	Rules  []rule.ID
}

func (f *fixer) seal(h *Hole) Seal {
	var s Seal
	switch h.Kind {
	case route.PlateArc, route.CeilingArc, route.SoleArc:
		s = Seal{Fire: true, Air: !f.betweenStoreys(h) || f.house.OpenBelow(f.house.Spaces[h.Space], flat(h.At)), Rules: []rule.ID{rule.SealHoles}}
	case route.FloorArc:
		s = Seal{Fire: true, Rules: []rule.ID{rule.SealHoles, rule.FloorOpened}}
	case route.BlockArc:
		s = Seal{Fire: true, Rules: []rule.ID{rule.FireBlock, rule.SealHoles}}
	case route.PassArc:
		s = Seal{Fire: true, Air: true, Rules: []rule.ID{rule.SealHoles}}
	case route.WallArc:
		s = f.sealWall(&f.house.Walls[h.Wall])
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

// sealWall is what is closed where cable goes through a whole wall.
func (f *fixer) sealWall(w *plan.Wall) Seal {
	if w.Exterior {
		return Seal{Air: true, Weather: true, Rules: []rule.ID{rule.OutdoorEntry}}
	}
	return Seal{Fire: true, Rules: []rule.ID{rule.SealHoles}}
}

// betweenStoreys reports whether a hole opens into the floor between two storeys.
func (f *fixer) betweenStoreys(h *Hole) bool {
	if h.Space < 0 {
		return false
	}
	s := f.house.Spaces[h.Space]
	return s.Kind == plan.FloorSpace && s.Above >= 0
}

// besideGarage reports whether a garage is on either side of the member, or
// under it: below its ceiling or below the floor that the hole goes into. Its own
// eave and gable part it from nothing.
func (f *fixer) besideGarage(h *Hole) bool {
	if h.Kind == route.SoffitArc || h.Kind == route.GableArc {
		return false
	}
	if h.Wall < 0 && (h.Kind != route.FloorArc || f.garage(h.Room)) {
		return f.garage(h.Room)
	}
	if f.betweenStoreys(h) && f.garage(f.house.RoomOn(f.house.Spaces[h.Space].Below, flat(h.At))) {
		return true
	}
	if h.Wall < 0 {
		return false
	}
	w := &f.house.Walls[h.Wall]
	for _, side := range [2]plan.Side{plan.Left, plan.Right} {
		if f.garage(f.house.RoomBeside(w, h.Along, side)) {
			return true
		}
	}
	return false
}

// garage reports whether a room is used as one, or a garage door is in a wall of
// it.
func (f *fixer) garage(room int) bool {
	if room < 0 {
		return false
	}
	if f.house.Rooms[room].Use == "garage" {
		return true
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
