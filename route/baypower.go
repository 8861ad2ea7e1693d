package route

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// feed is where the power cable of a device runs: on the nearer stud of its
// bay.
func feed(d *plan.Device, bay *Bay) measure.Length {
	if d.At-bay.Start <= bay.End-d.At {
		return bay.Start
	}
	return bay.End
}

// devices calls f for each device in the bay.
func devices(w *plan.Wall, bay *Bay, f func(d *plan.Device)) {
	for i := range w.Devices {
		if d := &w.Devices[i]; bay.Start <= d.At && d.At <= bay.End {
			f(d)
		}
	}
}

// feeds are the stretches of the bay too near to power that goes up it, or comes
// up into it from below its bottom plate, for something of that half width.
func (b *builder) feeds(w *plan.Wall, bay *Bay, bottom bool, half measure.Length) []span {
	var out []span
	devices(w, bay, func(d *plan.Device) {
		if fedThrough(d, bottom) {
			out = append(out, around(feed(d, bay), b.book.Length(rule.PowerParallel)+half))
		}
	})
	return out
}

// fedThrough reports whether the power cable of a device goes through the bottom
// plate of its bay, or through the top plate.
func fedThrough(d *plan.Device, bottom bool) bool {
	if bottom {
		return d.Down
	}
	return d.Up
}

// feedBlocks says which power leaves no room for a hole in a plate of the bay.
func (b *builder) feedBlocks(w *plan.Wall, bay *Bay, bottom bool) []Block {
	var out []Block
	devices(w, bay, func(d *plan.Device) {
		if !fedThrough(d, bottom) {
			return
		}
		p := w.PointAt(d.At)
		out = append(out, Block{
			Rule: rule.PowerBay, Pos: d.Pos, At: geom.Point3{X: p.X, Y: p.Y, Z: d.Height},
			Found: fmt.Sprintf("the bay is %s wide and holds the cable of %s %s; %s is to be kept from it",
				b.text(bay.End-bay.Start), d.Kind, d.ID, b.text(b.book.Length(rule.PowerParallel))),
			Change: fmt.Sprintf("move %s %s (a licensed electrician's work)", d.Kind, d.ID),
			Price:  b.prices.Each(price.ChangeMoveDevice),
		})
	})
	return out
}
