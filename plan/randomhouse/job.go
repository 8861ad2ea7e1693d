package randomhouse

import "fmt"

func (w *writer) job() *file {
	m := w.m
	f := &file{head: "house = \"house.toml\"\n\n"}
	f.add("[job]", str("name", "Random job"))
	closet := []string{str("name", "Closet"), "ports = 48"}
	if m.CeilingCloset {
		closet = append(closet, str("room", m.Rooms[m.Closet.Room].ID), w.spot("ceiling", m.Closet.Room, m.Closet.Point))
	} else {
		closet = append(closet, w.fromCorner(m.Closet)...)
	}
	f.add("[closet]", closet...)
	for i := range m.Drops {
		w.drop(f, &m.Drops[i])
	}
	w.stackDrops(f)
	f.add("[tools]", length("rods", m.Rods), `extension = "24in"`)
	if m.Patching {
		f.add("[allow]", "patching = true")
	}
	return f
}

func (w *writer) drop(f *file, d *Drop) {
	lines := []string{str("tag", d.Tag), str("kind", d.Kind), str("cable", d.Cable), fmt.Sprintf("count = %d", d.Count), length("shift", d.Shift)}
	if d.Later {
		lines = append(lines, str("when", "later"))
	}
	switch d.Kind {
	case "wall plate":
		lines = append(lines, w.fromCorner(d.Place)...)
	case "ceiling point":
		lines = append(append(lines, w.spot("at", d.Room, d.Point)), w.onStack(str("level", "ground"))...)
	default:
		lines = append(lines, str("wall", w.m.Walls[d.Wall].ID), length("at", d.At), length("out", d.Out))
	}
	f.add("[[drop]]", lines...)
}
