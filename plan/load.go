package plan

import (
	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// A houseLoader fills a House. Its parts run in the order in which they need
// each other, and each goes as far as it can after errors.
type houseLoader struct {
	list  *diag.List
	house *House
	std   defaults

	runs       []*run
	levelNames *names
	wallNames  *names
	roomNames  *names
	spaceNames *names
	roofNames  *names
	kinds      []*names // of every kind of thing, in the order of reading
	badRun     bool     // the legs of some run are not known
	adjust     bool     // least squares spreads the errors
	adjustPos  diag.Pos

	// placed is true once all walls are, so that places on them mean
	// something.
	placed bool
	legs   []leg
	outers []outer // by level

	attics  []*attic
	tops    []*top
	floors  []*floor
	spaceAt []int // in House.Spaces, by the order of names

	insides []inside // rooms by their inside dimensions
	inNames names    // of them
	things  things   // what distances along walls may be measured from
}

// LoadHouse reads the text of a house file; name is what messages call it. The
// house is nil if there is any error, and the list has all that were found.
// Warnings come with a house.
func LoadHouse(name string, src []byte) (*House, *diag.List) {
	h, _, list := loadHouse(name, src)
	return h, list
}

// loadHouse is LoadHouse, and tells the units of a house with errors, too.
func loadHouse(name string, src []byte) (*House, measure.System, *diag.List) {
	root, list := source.Parse(name, src)
	if root == nil {
		return nil, measure.Imperial, list
	}
	l := newHouseLoader(name, list)
	l.header(root)
	l.levels(root)
	l.gatherThings(root)
	l.walls(root)
	l.rooms(root)
	l.openings(root)
	l.devices(root)
	l.readAttics(root)
	l.readRoofs()
	l.readFloors(root)
	l.makeSpaces()
	l.stack()
	l.hatches(root)
	l.obstacles(root)
	l.eaves(root)
	l.powerRuns(root)
	l.marks(root)
	l.conduits(root)
	l.chases(root)
	l.underlays(root)
	l.cautionShared()
	root.Done()
	if list.HasErrors() {
		return nil, l.house.Units, list
	}
	return l.house, l.house.Units, list
}

func newHouseLoader(name string, list *diag.List) *houseLoader {
	l := &houseLoader{list: list, house: &House{File: name, Attic: &Space{Above: -1}, Roof: &Roof{}}}
	l.wallNames, l.roomNames = l.newNames("wall"), l.newNames("room")
	l.levelNames, l.spaceNames, l.roofNames = l.newNames("level"), l.newNames("space"), l.newNames("roof")
	return l
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
	if units, _ := t.Choice("units", source.Required, "imperial", "metric"); units == "metric" {
		h.Units = measure.Metric
		l.std = defaultsOf[measure.Metric]
		root.Speak(measure.Metric)
	}
	h.Name, _ = t.Title("name", source.Required)
	h.Place = titleOr(t, "place")
	h.North = intOr(t, "north", 0, 359, 0)
	h.Built = intOr(t, "built", 1600, 2100, 0)
	h.SketchError = lengthOr(t, "sketch_error", sketchErrors, l.std.sketchError)
	h.Closes = lengthOr(t, "closing", closings, l.std.closing)
	l.adjust, l.adjustPos = boolOr(t, "adjust", false), t.ValuePos("adjust")
	l.site(t)
}
