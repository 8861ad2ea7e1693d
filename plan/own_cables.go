package plan

import (
	"strconv"

	"topplate/plan/cable"
	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/plan/source"
)

// An OwnCable is a kind of cable that the job describes.
type OwnCable struct {
	Pos  diag.Pos
	Like string // id of the built-in kind that it takes the rest from
	Type cable.Type
}

// Bounds of what a job may say of its own cables and connectors.
const (
	mostOwn   = 100 // of each
	mostBend  = 30  // diameters
	mostPrice = 100_000
)

// pricedLengths is the range of what a cable's price is for.
var pricedLengths = between(1*foot, 20_000*foot, "the length that a price is for")

// bySelf is the source of what a job says itself.
var bySelf = rule.Source{Status: rule.SetByUser}

// cables reads [[cable]]: kinds like a built-in one, but for what is said.
func (l *jobLoader) cables(root *source.Table) {
	ids := names{kind: "cable"}
	for _, t := range tables(root, "cable", source.Optional, mostOwn) {
		own := OwnCable{Pos: t.Pos()}
		id, _ := t.Name("id", source.Required)
		ids.add(t, "id", id)
		if _, taken := cable.Lookup(id); taken {
			t.Errorf("id", "found %q, which is built in; want an id of your own, with like = %q", id, id)
		}
		like, ok := t.Choice("like", source.Required, cable.IDs()...)
		if !ok {
			askAllKeys(t)
			like = cable.IDs()[0]
		}
		own.Like = like
		own.Type, _ = cable.Lookup(like)
		own.Type.ID = id
		if ok {
			ownCable(t, &own.Type)
		}
		l.ownCable(own)
	}
}

// ownCable takes up a kind of cable, in the place of one of an earlier file
// that has its id.
func (l *jobLoader) ownCable(c OwnCable) {
	l.origin("cable", c.Type.ID, c.Pos)
	for i := range l.job.OwnCables {
		if c.Type.ID != "" && l.job.OwnCables[i].Type.ID == c.Type.ID {
			l.job.OwnCables[i] = c
			return
		}
	}
	l.job.OwnCables = append(l.job.OwnCables, c)
}

// own puts a value that was read into its place, and says that it is the
// user's.
func own[T any](c *cable.Type, p cable.Property, to *T) func(T, bool) {
	return func(v T, ok bool) {
		if ok {
			*to, c.Sources[p] = v, bySelf
		}
	}
}

// ownCable reads what is not as in the kind that c is like.
func ownCable(t *source.Table, c *cable.Type) {
	if title, ok := t.Title("title", source.Optional); ok {
		c.Title = title
	}
	ownConductor(t, c)
	own(c, cable.OfDiameter, &c.Diameter)(length(t, "diameter", source.Optional, jackets))
	own(c, cable.OfCore, &c.Core)(length(t, "core", source.Optional, cores))
	own(c, cable.OfBend, &c.MinBendDiameters)(t.Int("bend", source.Optional, 1, mostBend))
	own(c, cable.OfPull, &c.MaxPull)(forces.read(t, "pull"))
	own(c, cable.OfMass, &c.Mass)(masses.read(t, "mass"))
	jacket, ok := t.Choice("jacket", source.Optional, cable.Jackets()...)
	own(c, cable.OfJacket, &c.Jacket)(cable.Jacket(jacket), ok)
	own(c, cable.OfSunlight, &c.Sunlight)(t.Bool("sunlight", source.Optional))
	own(c, cable.OfScreen, &c.Screened)(t.Bool("screened", source.Optional))
	own(c, cable.OfTemperature, &c.Cold)(temperatures.read(t, "cold"))
	own(c, cable.OfTemperature, &c.Hot)(temperatures.read(t, "hot"))
	own(c, cable.OfPrice, &c.PricePerMetre)(cablePrice(t))
	checkCable(t, c)
}

// ownConductor reads the conductor. What its gauge gives goes for what is not
// said, since a resistance that is not of that gauge would mislead.
func ownConductor(t *source.Table, c *cable.Type) {
	gauge, okGauge := t.Int("gauge", source.Optional, cable.ThickestGauge, cable.ThinnestGauge)
	stranded, okStranded := t.Bool("stranded", source.Optional)
	if !okGauge {
		gauge = c.Gauge
	}
	if !okStranded {
		stranded = c.Stranded
	}
	if okGauge || okStranded && stranded != c.Stranded {
		*c = c.WithGauge(gauge, stranded)
	}
	own(c, cable.OfGauge, &c.Gauge)(gauge, okGauge)
	own(c, cable.OfConductor, &c.Conductor)(length(t, "conductor", source.Optional, cores))
	own(c, cable.OfResistance, &c.Resistance)(resistances.read(t, "resistance"))
}

// cablePrice reads a price and the length that it is for, a metre unless that
// is said, as thousandths per metre.
func cablePrice(t *source.Table) (int64, bool) {
	per := lengthOr(t, "per", pricedLengths, measure.Metre)
	if !t.Has("price") && t.Has("per") {
		t.Errorf("per", "found per without price; want the price of that length")
	}
	price, ok := t.Number("price", source.Optional, 0, mostPrice)
	return thousandths(price / per.Metres()), ok
}

// checkCable reports a cable that contradicts itself, at a key that is there.
func checkCable(t *source.Table, c *cable.Type) {
	if c.Core <= c.Conductor {
		t.Errorf(present(t, "core", "conductor", "gauge", "stranded"), "found a conductor of %s in insulation of %s over all; want the insulation thicker", exact(t.Units(), c.Conductor), exact(t.Units(), c.Core))
	}
	if c.Diameter <= c.Core {
		t.Errorf(present(t, "diameter", "core"), "found a jacket of %s over conductors of %s; want the jacket thicker", exact(t.Units(), c.Diameter), exact(t.Units(), c.Core))
	}
	if c.Hot <= c.Cold {
		t.Errorf(present(t, "hot", "cold"), "found a range of temperature from %s to %s; want hot above cold", celsiusText(c.Cold), celsiusText(c.Hot))
	}
}

// present is the first of some keys that is there, or the first of them.
func present(t *source.Table, keys ...string) string {
	for _, key := range keys {
		if t.Has(key) {
			return key
		}
	}
	return keys[0]
}

// cableIDs are the kinds of cable that the job can use: its own go last.
func (l *jobLoader) cableIDs() []string {
	ids := cable.IDs()
	for i := range l.job.OwnCables {
		if id := l.job.OwnCables[i].Type.ID; id != "" {
			ids = append(ids, id)
		}
	}
	return ids
}

// cableOr reads the kind of a cable under key, or gives the built-in first one.
func (l *jobLoader) cableOr(t *source.Table, key string, need source.Need) cable.Type {
	id, ok := t.Choice(key, need, l.cableIDs()...)
	if !ok {
		id = cable.IDs()[0]
	}
	c, _ := l.job.Cable(id)
	return c
}

// Cable returns the kind of cable with this id, built in or the job's own.
func (j *Job) Cable(id string) (cable.Type, bool) {
	if c, ok := cable.Lookup(id); ok {
		return c, true
	}
	for i := range j.OwnCables {
		if c := j.OwnCables[i].Type; c.ID == id {
			return c, true
		}
	}
	return cable.Type{}, false
}

// celsiusText writes thousandths of a degree Celsius as a file has them.
func celsiusText(t int64) string {
	return strconv.FormatFloat(float64(t)/1000, 'f', -1, 64) + "C"
}
