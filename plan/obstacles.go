package plan

import (
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/plan/source"
)

// hotByKind are the kinds of obstacle, and which are hot unless the file says
// otherwise.
var hotByKind = map[string]bool{"duct": false, "chimney": true, "flue": true, "tank": false, "light": true, "unit": false}

// obstacles reads [[obstacle]].
func (l *houseLoader) obstacles(root *source.Table) {
	ids := l.newNames("obstacle")
	for _, t := range tables(root, "obstacle", source.Optional, mostOthers) {
		o := Obstacle{Pos: t.Pos()}
		o.ID, _ = t.Name("id", source.Required)
		ids.add(t, "id", o.ID)
		o.Kind, _ = t.Choice("kind", source.Required, "duct", "chimney", "flue", "tank", "light", "unit")
		area, okArea := rect(t)
		space, okSpace := l.spaceOr(t)
		o.Space = space
		s := l.house.Spaces[space]
		in, low := inAttic, measure.Length(0)
		switch {
		case s.Kind == CrawlSpace:
			in, low = inCrawl, -s.Clear
		case s.Kind == FloorSpace && s.Below >= 0:
			in = inCrawl // a beam or a duct may hang under open joists
		}
		o.Bottom = lengthOr(t, "bottom", in, low)
		top, okTop := length(t, "top", source.Required, in)
		o.Hot = boolOr(t, "hot", hotByKind[o.Kind])
		o.ByRule = !t.Has("clearance")
		o.Clearance = lengthOr(t, "clearance", clearances, clearanceBy(rule.NewBook(nil), o.Kind))
		if okTop && top <= o.Bottom {
			t.Errorf("top", "found a top at %s; want it above the bottom at %s", exact(t.Units(), top), exact(t.Units(), o.Bottom))
		}
		o.Area, o.Top = area, top
		if okArea && okSpace && l.inSpace(t, "from", s, area, "an obstacle") {
			l.house.Obstacles = append(l.house.Obstacles, o)
		}
	}
}

// clearanceBy is the distance that a book asks for round a kind of obstacle.
func clearanceBy(book rule.Book, kind string) measure.Length {
	if id, ok := rule.ClearanceOf(kind); ok {
		return book.Length(id)
	}
	return 0
}
