package fix

import (
	"fmt"

	"topplate/route"
)

// member says in words what is bored.
func (f *fixer) member(h *Hole) string {
	switch h.Kind {
	case route.PlateArc:
		return fmt.Sprintf("%s of wall %s", f.plateName(h.Wall), f.house.Walls[h.Wall].ID)
	case route.SoleArc:
		return fmt.Sprintf("bottom plate of wall %s and the floor under it", f.house.Walls[h.Wall].ID)
	case route.BlockArc:
		return fmt.Sprintf("fire block in wall %s", f.house.Walls[h.Wall].ID)
	case route.FloorArc:
		return "floor" + f.inRoom(h.Room)
	case route.JoistArc:
		return "joist over the ceiling" + f.inRoom(h.Room)
	case route.PassArc:
		if f.res.Graph.Holes[f.res.Holes[h.Index].Place].UnderWall(f.house) {
			return fmt.Sprintf("blocking, if there is any, under wall %s between %s", f.house.Walls[h.Wall].ID, f.betweenText(h))
		}
		return fmt.Sprintf("wall %s between %s", f.house.Walls[h.Wall].ID, f.betweenText(h))
	case route.WallArc:
		return fmt.Sprintf("wall %s, from face to face", f.house.Walls[h.Wall].ID)
	case route.StudArc:
		return fmt.Sprintf("stud of wall %s", f.house.Walls[h.Wall].ID)
	case route.GableArc:
		return fmt.Sprintf("wall under the gable over wall %s", f.house.Walls[h.Wall].ID)
	case route.SoffitArc:
		if h.Opens >= 0 {
			return fmt.Sprintf("soffit along wall %s, which opens there (%s)", f.house.Walls[h.Wall].ID, f.house.Soffits[h.Opens].ID)
		}
		return fmt.Sprintf("soffit along wall %s", f.house.Walls[h.Wall].ID)
	}
	if h.Wall >= 0 {
		return fmt.Sprintf("%s of wall %s", h.Kind, f.house.Walls[h.Wall].ID)
	}
	return "ceiling board" + f.inRoom(h.Room)
}

func (f *fixer) plateName(wall int) string {
	if f.house.Walls[wall].TopPlates > 1 {
		return "double top plate"
	}
	return "top plate"
}

// inRoom is " of Study", or nothing where there is no room.
func (f *fixer) inRoom(room int) string {
	if room < 0 {
		return ""
	}
	return " of " + f.house.Rooms[room].Name
}
