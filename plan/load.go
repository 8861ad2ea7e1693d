package plan

import (
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// A houseLoader fills a House. Its parts run in the order in which they need
// each other, and each goes as far as it can after errors.
type houseLoader struct {
	list  *diag.List
	house *House
	std   defaults
	level Level

	runs      []*run
	wallNames *names
	roomNames *names
	kinds     []*names // of every kind of thing, in the order of reading
	badRun    bool     // the legs of some run are not known
	adjust    bool     // least squares spreads the errors
	adjustPos diag.Pos

	// placed is true once all walls are, so that places on them mean
	// something.
	placed bool
	legs   []leg
	outer  *ring // the run under the roof, nil if there is none

	outerFirst int // index of the first wall of that run

	insides []inside // rooms by their inside dimensions
	things  things   // what distances along walls may be measured from
}

// LoadHouse reads the text of a house file; name is what messages call it. The
// house is nil if there is any error, and the list has all that were found.
// Warnings come with a house.
func LoadHouse(name string, src []byte) (*House, *diag.List) {
	root, list := source.Parse(name, src)
	if root == nil {
		return nil, list
	}
	l := &houseLoader{list: list, house: &House{File: name}}
	l.wallNames, l.roomNames = l.newNames("wall"), l.newNames("room")
	l.header(root)
	l.levels(root)
	l.gatherThings(root)
	l.walls(root)
	l.rooms(root)
	l.openings(root)
	l.devices(root)
	l.attic(root)
	l.roof(root)
	l.hatches(root)
	l.obstacles(root)
	l.eaves(root)
	l.powerRuns(root)
	l.marks(root)
	l.conduits(root)
	l.underlays(root)
	l.cautionShared()
	root.Done()
	if list.HasErrors() {
		return nil, list
	}
	return l.house, list
}

// header reads [house].
func (l *houseLoader) header(root *source.Table) {
	h := l.house
	l.std = defaultsOf[measure.Imperial]
	h.Closes, h.SketchError = l.std.closing, l.std.sketchError
	h.AtticHot = DefaultAtticHot.Value
	t, ok := root.Table("house", source.Required)
	if !ok {
		return
	}
	h.Name, _ = t.Title("name", source.Required)
	h.Place = titleOr(t, "place")
	if units, _ := t.Choice("units", source.Required, "imperial", "metric"); units == "metric" {
		h.Units = measure.Metric
		l.std = defaultsOf[measure.Metric]
	}
	h.North = intOr(t, "north", 0, 359, 0)
	h.Built = intOr(t, "built", 1600, 2100, 0)
	h.SketchError = lengthOr(t, "sketch_error", sketchErrors, l.std.sketchError)
	h.Closes = lengthOr(t, "closing", closings, l.std.closing)
	l.adjust, l.adjustPos = boolOr(t, "adjust", false), t.ValuePos("adjust")
	l.site(t)
}

// levels reads the one [[level]].
func (l *houseLoader) levels(root *source.Table) {
	// What stands in for a level that can't be read keeps the checks of
	// heights from following it.
	l.level = Level{Ceiling: ceilings.Max, PlateTop: ceilings.Max + aboveCeiling.Max}
	for i, t := range tables(root, "level", source.Required, mostOthers) {
		level := Level{Pos: t.Pos()}
		level.ID, _ = t.Name("id", source.Required)
		level.Floor = lengthOr(t, "floor", floors, 0)
		ceiling, ok := length(t, "ceiling", source.Required, ceilings)
		if !ok {
			ceiling = l.level.Ceiling
		}
		plates := bound{measure.Range{Min: ceiling, Max: ceiling + aboveCeiling.Max}, aboveCeiling.why}
		level.Ceiling, level.PlateTop = ceiling, lengthOr(t, "plate_top", plates, ceiling+l.std.ceilingBoard)
		if i == 0 {
			l.level = level
			continue
		}
		t.Errorf("id", "found a second level; want one level in this release").Note(l.level.Pos, "the first level is here")
	}
	l.house.Levels = []Level{l.level}
}

// inside reports whether p is within the outer faces of the house.
func (h *House) inside(p geom.Point) bool { return h.OutsideOf.Contains(p) }
