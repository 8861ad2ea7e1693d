package parts

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/connector"
	"topplate/plan/rule"
)

// A note gathers a part with the tags that want it.
type note struct {
	part Part
	n    int64
	why  []string
}

// notes gathers parts that several drops want.
type notes map[string]*note

func (ns notes) add(p Part, n int64, why string) {
	if n == 0 {
		return
	}
	if ns[p.ID] == nil {
		ns[p.ID] = &note{part: p}
	}
	ns[p.ID].n += n
	ns[p.ID].why = append(ns[p.ID].why, why)
}

// into adds what was gathered, in any order: a count does not depend on it.
func (ns notes) into(w wants) {
	for _, n := range ns {
		w.add(n.part, n.n, strings.Join(n.why, "; "))
	}
}

// places counts boxes, plates and housings.
func (l *lister) places(w wants, s scope) {
	ns := notes{}
	for _, r := range s.routes {
		switch d := l.drop(r); d.Kind {
		case plan.WallPlate:
			l.wallPlate(ns, d)
		case plan.CeilingPoint:
			ns.add(l.of("ceiling-bracket"), 1, d.Tag)
			l.housing(ns, d)
		default:
			l.housing(ns, d)
		}
	}
	if n := len(s.routes); n > 0 && l.job.Closet.Ceiling {
		ns.add(l.of("ceiling-bushing"), 1, "the closet's ceiling")
	}
	ns.into(w)
}

// wallPlate wants a bracket and a plate for a drop.
func (l *lister) wallPlate(ns notes, d *plan.Drop) {
	perGang := int(l.book.Value(rule.CablesPerGang))
	gangs := int(up(int64(d.Count), int64(perGang)))
	ns.add(bracketPart(gangs), 1, fmt.Sprintf("%s: %d of %d to a gang", d.Tag, d.Count, perGang))
	if wall := &l.job.House.Walls[d.Spot.Wall]; wall.Exterior || wall.Insulated {
		ns.add(l.of("box-gasket"), 1, d.Tag+" in wall "+wall.ID)
	}
	if d.End == connector.Plug {
		ns.add(brushPart(gangs), 1, d.Tag+": cables with plugs pass through")
		return
	}
	ports := platePorts(gangs, d.Count)
	ns.add(platePart(gangs, ports), 1, fmt.Sprintf("%s: %d of %d used", d.Tag, d.Count, ports))
	ns.add(l.of("blank-insert"), int64(ports-d.Count), fmt.Sprintf("%s: %d ports, %d used", d.Tag, ports, d.Count))
}

// platePorts is the ports of the smallest plate of so many gangs that is sold
// with enough of them. If none is, a plate is named that is not in the
// catalogue.
func platePorts(gangs, ports int) int {
	for _, s := range plates {
		if s.gangs == gangs && s.ports >= ports {
			return s.ports
		}
	}
	return ports
}

// housing wants housings for the jacks of a place that has no wall plate: full
// ones of the largest size, and the smallest that takes the rest.
func (l *lister) housing(ns notes, d *plan.Drop) {
	if d.End != connector.Jack {
		return
	}
	for size, n := range split(housings, d.Count) {
		ns.add(housingPart(size), int64(n), fmt.Sprintf("%s: %s", d.Tag, counted(int64(d.Count), "jack")))
	}
}

// split takes n ports in the fewest pieces, then with the fewest unused ports:
// so many of the largest size as are filled, and one more for the rest. Sizes
// rise. It returns how many of each size.
func split(sizes []sized, n int) map[int]int {
	out := map[int]int{}
	largest := sizes[len(sizes)-1].ports
	if full := n / largest; full > 0 {
		out[largest] = full
	}
	if rest := n % largest; rest > 0 {
		i := slices.IndexFunc(sizes, func(s sized) bool { return s.ports >= rest })
		out[sizes[i].ports]++
	}
	return out
}

// rising lists the keys of m.
func rising[K cmp.Ordered, V any](m map[K]V) []K { return slices.Sorted(maps.Keys(m)) }
