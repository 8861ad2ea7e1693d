package tidy

import (
	"cmp"
	"slices"
	"strings"
)

// A table is a table of the reference with its keys: what it is called first,
// then where it is, then how large, then the rest.
type table struct {
	name string
	keys []string
}

// madeKeys say what walls are made of that follow from rooms.
var madeKeys = []string{"frame", "thickness", "spacing", "board", "cladding", "cladding_kind", "bearing", "insulated", "top_plate", "fire_blocks"}

// reference is the order of tables and keys. Tables whose keys are the user's
// own have none here.
var reference = []table{
	{"", []string{"house", "include", "after"}},
	{"house", []string{
		"name", "place", "units", "north", "built", "sketch_error", "closing", "adjust",
		"latitude", "longitude", "utc_offset", "attic_hot",
	}},
	{"level", []string{"id", "floor", "ceiling", "plate_top"}},
	{"inside", []string{
		"id", "name", "level", "width", "depth", "walk", "at", "east_of", "north_of", "west_of", "south_of", "line", "line_of", "shift", "use", "ceiling",
	}},
	{"outer", append(append([]string{"level", "room", "side"}, madeKeys...), "names")},
	{"inner", madeKeys},
	{"partition", append([]string{"id", "between"}, madeKeys...)},
	{"wall", []string{
		"id", "level", "start", "run", "names", "closes", "face", "exterior", "frame", "thickness", "spacing", "board", "cladding", "cladding_kind",
		"bearing", "insulated", "top_plate", "fire_blocks",
	}},
	{"cladding", []string{"wall", "kind", "thickness"}},
	{"check", []string{"id", "from", "to", "length", "error"}},
	{"opening", []string{"id", "wall", "between", "kind", "at", "from", "width", "sill", "head", "hinge", "swing"}},
	{"device", []string{"id", "wall", "between", "at", "height", "kind", "side", "room", "feed"}},
	{"room", []string{"id", "name", "level", "at", "use", "ceiling"}},
	{"floor", []string{
		"id", "under", "over", "crawl", "area", "joists_run", "joist", "spacing", "first", "size", "depth", "width", "subfloor", "insulation",
	}},
	{"attic", []string{
		"id", "level", "roof", "area", "joists_run", "joist", "spacing", "first", "size", "depth", "width", "insulation", "decking",
	}},
	{"roof", []string{
		"id", "level", "area", "kind", "gables", "pitch", "overhang", "rafter", "heel", "chord", "spacing", "first_x", "first_y",
	}},
	{"hatch", []string{"id", "space", "room", "outside", "at", "size"}},
	{"obstacle", []string{"id", "kind", "space", "from", "to", "bottom", "top", "hot", "clearance"}},
	{"soffit", []string{"id", "wall", "at", "from", "width"}},
	{"baffle", []string{"id", "wall", "at", "from", "width"}},
	{"power", []string{"id", "space", "path", "circuits", "clear"}},
	{"mark", []string{"id", "kind", "space", "at", "seen"}},
	{"conduit", []string{"id", "wall", "between", "at", "from", "height", "room", "side", "down", "kind", "trade", "inside", "holds"}},
	{"chase", []string{"id", "from", "to", "levels", "down", "rooms", "holds", "hot"}},
	{"underlay", []string{"id", "level", "file", "sheet", "dots", "at"}},

	{"job", []string{"name", "number", "revision", "by", "date"}},
	{"closet", []string{"name", "room", "wall", "between", "side", "at", "from", "height", "width", "ceiling", "ports", "panel"}},
	{"drop", []string{
		"tag", "kind", "cable", "count", "note", "exposure", "room", "wall", "between", "side", "at", "level", "from", "height", "out", "shift", "when",
		"class", "watts", "end", "plug", "jack",
	}},
	{"fixed", []string{"id", "do", "space", "room", "wall", "plate", "at", "from", "to", "path", "diameter", "cables", "width"}},
	{"cable", []string{
		"id", "like", "title", "diameter", "gauge", "stranded", "conductor", "core", "bend", "pull", "mass",
		"resistance", "jacket", "sunlight", "cold", "hot", "screened", "price", "per",
	}},
	{"connector", []string{"id", "like", "title", "gauges", "solid", "stranded", "core", "jacket", "pass_through"}},
	{"spool", []string{"id", "cable", "left", "mark", "counts"}},
	{"buy", nil},
	{"crew", []string{"people", "start", "day"}},
	{"switch", []string{"watts", "volts"}},
	{"labels", []string{"scheme"}},
	{"have", nil},
	{"parts", nil},
	{"estimate", []string{"allowance"}},
	{"sheets", []string{"paper"}},
	{"tools", []string{"rods", "arm", "extension", "bits"}},
	{"allow", []string{"patching", "raceway", "outside"}},
	{"limits", nil},
	{"prices", nil},
	{"weights", []string{"openings", "crawling", "cable"}},
	{"rates", []string{"currency", "hour"}},
	{"slack", []string{"closet", "outlet", "trim", "percent", "round"}},
}

// tableRank is the place of a table in the reference, or -1.
func tableRank(name string) int {
	return slices.IndexFunc(reference, func(t table) bool { return t.name == name })
}

// sort puts tables and keys in order. Sorting is stable: what is of one rank
// keeps the order of the file, so that the tables of an array do, and tables
// inside of one stay behind it.
func (d *document) sort() {
	var unknown []string
	rank := map[string]int{}
	for i := range d.sections {
		root := firstPart(d.sections[i].name)
		if rank[root] = tableRank(root); rank[root] < 0 {
			if !slices.Contains(unknown, root) {
				unknown = append(unknown, root)
			}
			rank[root] = len(reference) + slices.Index(unknown, root)
		}
	}
	slices.SortStableFunc(d.sections, func(a, b section) int {
		return cmp.Compare(rank[firstPart(a.name)], rank[firstPart(b.name)])
	})
	for i := range d.sections {
		d.sections[i].sort()
	}
}

// sort puts the keys of one table in order.
func (s *section) sort() {
	i := tableRank(s.name)
	if i < 0 {
		return
	}
	keys := reference[i].keys
	rank := func(e entry) int {
		if k := slices.Index(keys, firstPart(e.key)); k >= 0 {
			return k
		}
		return len(keys)
	}
	slices.SortStableFunc(s.items, func(a, b entry) int { return cmp.Compare(rank(a), rank(b)) })
}

// firstPart is the first part of a dotted key, without quotes.
func firstPart(key string) string {
	part, _, _ := strings.Cut(key, ".")
	return strings.Trim(part, " \t\"'")
}
