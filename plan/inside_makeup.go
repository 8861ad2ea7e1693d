package plan

import (
	"slices"

	"topplate/plan/measure"
	"topplate/plan/source"
)

// A makeup says what the walls round rooms are made of.
type makeup struct {
	outers     []outerMake // the general one first
	inner      *run
	outerNames *source.Table // own names by those that are made
	partitions []partition
}

// A partition is a wall between two rooms that has a name or a make of its own.
type partition struct {
	run  *run
	id   string
	a, b int
	used bool
}

// between is what the wall between two rooms is made of.
func (m *makeup) between(a, b int) *run {
	if p := m.partition(a, b); p != nil {
		return p.run
	}
	return m.inner
}

func (m *makeup) partition(a, b int) *partition {
	i := slices.IndexFunc(m.partitions, func(p partition) bool { return p.a == a && p.b == b || p.a == b && p.b == a })
	if i < 0 {
		return nil
	}
	return &m.partitions[i]
}

// thick is how thick the finished walls of a run are.
func (r *run) thick() measure.Length {
	if r.shared.Exterior {
		return r.board + r.shared.StudDepth + r.clad
	}
	return 2*r.board + r.shared.StudDepth
}

// readMakeup reads [outer], [inner] and [[partition]]. It is nil if the
// partitions are not as they should be.
func (l *houseLoader) readMakeup(root *source.Table, ids *names) *makeup {
	inner, ok := root.Table("inner", source.Optional)
	if !ok {
		// Nothing in an empty table can be wrong.
		inner, _ = source.Parse(l.house.File, nil)
	}
	m := &makeup{inner: l.readMade(inner, "inner", false)}
	m.outers, ok = l.readOuters(root, ids)
	good := ok
	if outer := m.outers[0].run.t; outer.Has("names") {
		m.outerNames, _ = outer.Table("names", source.Optional)
	}
	for _, t := range tables(root, "partition", source.Optional, mostWalls) {
		r := &run{t: t, from: -1, face: "center", derived: true}
		l.readFrame(r)
		r.asUnless(t, m.inner)
		p := partition{run: r, a: -1, b: -1}
		p.id, _ = t.Name("id", source.Required)
		var ok bool
		p.a, p.b, ok = readPair(t, ids)
		if first := m.partition(p.a, p.b); ok && first != nil {
			t.Errorf("between", "found the wall between rooms %s and %s again", ids.ids[p.a], ids.ids[p.b]).Note(first.run.t.Pos(), "it is first here")
			ok = false
		}
		good = good && ok && p.id != ""
		m.partitions = append(m.partitions, p)
	}
	if !good {
		return nil
	}
	return m
}

// readPair reads the two rooms of a partition.
func readPair(t *source.Table, ids *names) (a, b int, ok bool) {
	items, ok := t.Texts("between", source.Required)
	if !ok {
		return -1, -1, false
	}
	if len(items) != 2 || items[0].Value == items[1].Value {
		t.Errorf("between", `found %s; want the two rooms that the wall is between, such as ["bed", "hall"]`, counted(len(items), "name"))
		return -1, -1, false
	}
	array, _ := t.Array("between", source.Required)
	a, okA := ids.index(array, "0", items[0].Value)
	b, okB := ids.index(array, "1", items[1].Value)
	return a, b, okA && okB
}

// readMade reads what outer or inner walls are made of.
func (l *houseLoader) readMade(t *source.Table, key string, exterior bool) *run {
	r := &run{t: t, id: key, from: -1, face: "center", derived: true}
	r.shared.Exterior = exterior
	l.readFrame(r)
	return r
}

// asUnless makes a run as another is, but for what its own table says. Of another
// frame it shares only what all walls have.
func (r *run) asUnless(t *source.Table, of *run) {
	w, o := &r.shared, &of.shared
	other := t.Has("frame") && w.Masonry != o.Masonry
	for _, k := range []struct {
		key string
		set func()
	}{
		{"bearing", func() { w.Bearing = o.Bearing }},
		{"insulated", func() { w.Insulated = o.Insulated }},
		{"frame", func() { w.StudDepth, w.Masonry = o.StudDepth, o.Masonry }},
		{"spacing", func() { w.Spacing = o.Spacing }},
		{"board", func() { r.board = of.board }},
		{"cladding", func() { r.clad = of.clad }},
		{"cladding_kind", func() { r.cladKind = of.cladKind }},
		{"top_plate", func() { w.TopPlates = o.TopPlates }},
		{"fire_blocks", func() { w.FireBlocks = o.FireBlocks }},
	} {
		general := k.key == "bearing" || k.key == "insulated" && !w.Exterior
		if !t.Has(k.key) && (general || !other) {
			k.set()
		}
	}
}

// thickest is how thick the thickest wall between rooms is.
func (m *makeup) thickest() measure.Length {
	thick := m.inner.thick()
	for i := range m.partitions {
		thick = max(thick, m.partitions[i].run.thick())
	}
	return thick
}
