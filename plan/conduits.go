package plan

import (
	"topplate/plan/cable"
	"topplate/plan/conduit"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/plan/source"
)

// Bounds of what a house file may say of conduits.
const (
	mostConduits = 200
	mostHeld     = 200 // cables of one kind in a conduit
	mostHolds    = 50  // kinds of cable in a conduit
)

// conduits reads [[conduit]].
func (l *houseLoader) conduits(root *source.Table) {
	ids := l.newNames("conduit")
	for _, t := range tables(root, "conduit", source.Optional, mostConduits) {
		c := Conduit{Pos: t.Pos(), Room: -1}
		c.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", c.ID)
		okBore := conduitBore(t, &c)
		holds, okHolds := heldCables(t)
		c.Holds = holds
		w, from, okWall := l.onWall(t)
		side, okSide := l.deviceSide(t, w, from)
		at, okAt := l.centre(t, w, facing{side, okSide})
		height, okHeight := length(t, "height", source.Required, boxHeights)
		c.Down = boolOr(t, "down", false)
		if !okBore || !okHolds || !okWall || !okAt || !okHeight || !okSide {
			continue
		}
		c.Wall, c.At, c.Height, c.Side = w, at, height, side
		if l.conduitFits(t, &c) {
			cautionFilled(t, &c)
			l.house.Conduits = append(l.house.Conduits, c)
		}
	}
}

// conduitBore reads how wide a conduit is: its kind and trade size, or its
// inside diameter.
func conduitBore(t *source.Table, c *Conduit) (ok bool) {
	if t.Has("inside") {
		for _, key := range []string{"kind", "trade"} {
			if t.Has(key) {
				t.Errorf(key, "found %s together with inside; want kind and trade, or inside alone", key)
			}
		}
		c.Inside, ok = length(t, "inside", source.Required, conduitBores)
		return ok
	}
	kind, okKind := t.Choice("kind", source.Required, conduit.Kinds()...)
	trade, okTrade := t.Choice("trade", source.Required, conduit.Trades()...)
	if !okKind || !okTrade {
		return false
	}
	size, ok := conduit.Lookup(kind, trade)
	if !ok {
		t.Errorf("trade", "found %s in trade size %s, which is not in the table; want its inside diameter, under inside", kind, trade)
		return false
	}
	c.Kind, c.Trade, c.Inside = kind, trade, size.Inside
	return true
}

// heldCables reads the diameters of the cables that are in a conduit or a chase
// already: by the name of their kind, or by their diameter.
func heldCables(t *source.Table) (holds []measure.Length, ok bool) {
	ok = true
	for _, h := range tables(t, "holds", source.Optional, mostHolds) {
		diameter, okCable := heldDiameter(h)
		count := intOr(h, "count", 1, mostHeld, 1)
		for range count {
			holds = append(holds, diameter)
		}
		ok = ok && okCable
	}
	return holds, ok
}

// heldDiameter reads one kind of cable in a conduit. A house knows only the
// kinds that are built in: those of a job are the job's.
func heldDiameter(h *source.Table) (measure.Length, bool) {
	if h.Has("diameter") {
		if h.Has("cable") {
			h.Errorf("cable", "found both cable and diameter; want one of them")
		}
		return length(h, "diameter", source.Required, jackets)
	}
	id, ok := h.Choice("cable", source.Required, cable.IDs()...)
	kind, _ := cable.Lookup(id)
	return kind.Diameter, ok
}

// conduitFits reports whether a conduit can be where it is said to be: in its
// wall, under the ceiling, and clear of what else is in the wall.
func (l *houseLoader) conduitFits(t *source.Table, c *Conduit) bool {
	wall := &l.house.Walls[c.Wall]
	if wall.Masonry {
		t.Errorf("wall", "found a conduit in masonry wall %s, which has no bays", wall.ID).Note(wall.here())
		return false
	}
	if ceiling := l.house.levelOf(c.Wall).Ceiling; c.Height > ceiling {
		t.Errorf("height", "found %s, which is above the ceiling at %s", exact(t.Units(), c.Height), exact(t.Units(), ceiling))
		return false
	}
	if c.Inside >= wall.StudDepth {
		t.Errorf("wall", "found a conduit of %s inside, which the studs of wall %s, %s deep, do not hide", l.house.text(c.Inside), wall.ID, l.house.text(wall.StudDepth)).
			Note(wall.here())
		return false
	}
	pipe := c.stretch()
	if !l.inWall(t, "at", c.Wall, pipe) || !l.clearOfWalls(t, "at", c.Wall, pipe, 0) {
		return false
	}
	return l.conduitFaces(t, c) && l.conduitEnds(t, c) && l.conduitOffOpenings(t, c) && l.conduitOffDevices(t, c) && l.conduitAlone(t, c)
}

// conduitFaces finds the room that c opens to, and reports whether it is the
// one that the file names, if it names one.
func (l *houseLoader) conduitFaces(t *source.Table, c *Conduit) bool {
	wall := &l.house.Walls[c.Wall]
	c.Room = l.house.RoomBeside(wall, c.At, c.Side)
	if !t.Has("room") {
		return true
	}
	named, _ := l.roomNames.find(t, "room", source.Required)
	if named == c.Room {
		return true
	}
	t.Errorf("room", "found room %s, but at %s the %s side of wall %s faces %s", l.house.Rooms[named].ID, l.house.text(c.At), c.Side, wall.ID, l.house.roomText(c.Room)).
		Note(l.house.Rooms[named].Pos, "%s is here", l.house.Rooms[named].ID)
	return false
}

// conduitEnds reports whether there is a space at the end of c.
func (l *houseLoader) conduitEnds(t *source.Table, c *Conduit) bool {
	w := &l.house.Walls[c.Wall]
	if len(l.house.Spaces[0].Outlines) == 0 {
		return true // the spaces are not known
	}
	key, way, space := "wall", "up into the space over", l.house.SpaceOver(w.Level, w.PointAt(c.At))
	if c.Down {
		key, way, space = "down", "down into the space under", l.house.SpaceUnder(w.Level, w.PointAt(c.At))
	}
	if space >= 0 {
		return true
	}
	t.Errorf(key, "found a conduit %s wall %s, where the file has none: no attic, no floor and no crawl space", way, w.ID).
		Note(w.here())
	return false
}

// goes is the stretch of heights through which c goes, on its level.
func (c *Conduit) goes() extent {
	if c.Down {
		return extent{0, c.Height}
	}
	return extent{c.Height, ceilings.Max + aboveCeiling.Max}
}

// way says which way c goes from its box.
func (c *Conduit) way() string {
	if c.Down {
		return "down"
	}
	return "up"
}

// stretch is what the bore of c takes up along its wall.
func (c *Conduit) stretch() extent { return extent{c.At - c.Inside/2, c.At + c.Inside/2} }

// conduitOffOpenings reports whether nothing opens the wall where c goes up.
func (l *houseLoader) conduitOffOpenings(t *source.Table, c *Conduit) bool {
	wall := &l.house.Walls[c.Wall]
	for i := range wall.Openings {
		o := &wall.Openings[i]
		if c.stretch().overlap(extent{o.Start, o.End}) > 0 && c.goes().overlap(extent{o.Sill, o.Head}) > 0 {
			t.Errorf("at", "found a conduit at %s along wall %s from %s above the floor %s, which goes through opening %s", l.house.text(c.At), wall.ID, l.house.text(c.Height), c.way(), o.ID).
				Note(o.Pos, "%s goes from %s to %s along the wall", o.ID, l.house.text(o.Start), l.house.text(o.End))
			return false
		}
	}
	return true
}

// conduitOffDevices reports whether no device on the same side is where c
// opens or goes up. A device takes up a single-gang box.
func (l *houseLoader) conduitOffDevices(t *source.Table, c *Conduit) bool {
	wall, book := &l.house.Walls[c.Wall], rule.NewBook(nil)
	box := book.Length(rule.BoxSingle)
	for i := range wall.Devices {
		d := &wall.Devices[i]
		in := extent{d.At - box/2, d.At + box/2}
		if d.Side == c.Side && c.stretch().overlap(in) > 0 && c.goes().overlap(extent{d.Height, d.Height}) > -book.Length(rule.BoxHeight) {
			t.Errorf("at", "found a conduit at %s along wall %s from %s above the floor %s, which goes through the %s %s", l.house.text(c.At), wall.ID, l.house.text(c.Height), c.way(), d.Kind, d.ID).
				Note(d.Pos, "%s is at %s, %s above the floor", d.ID, l.house.text(d.At), l.house.text(d.Height))
			return false
		}
	}
	return true
}

// conduitAlone reports whether no conduit before c is in its place.
func (l *houseLoader) conduitAlone(t *source.Table, c *Conduit) bool {
	for i := range l.house.Conduits {
		b := &l.house.Conduits[i]
		if b.Wall == c.Wall && b.stretch().overlap(c.stretch()) > 0 && b.goes().overlap(c.goes()) > 0 {
			t.Errorf("at", "found a conduit at %s along wall %s, where conduit %s is", l.house.text(c.At), l.house.Walls[c.Wall].ID, b.ID).
				Note(b.Pos, "%s is at %s, %s inside", b.ID, l.house.text(b.At), l.house.text(b.Inside))
			return false
		}
	}
	return true
}

// cautionFilled warns of a conduit that is said to hold more than it should.
func cautionFilled(t *source.Table, c *Conduit) {
	if conduit.Fits(c.Inside, c.Holds) {
		return
	}
	share := conduit.ShareOf(len(c.Holds))
	t.Warnf("holds", "this conduit is %d %% full with %s, more than %d %% (%s)",
		conduit.Filled(c.Inside, c.Holds), counted(len(c.Holds), "cable"), share.Percent, share.Source)
}
