package plan

import (
	"topplate/plan/connector"
	"topplate/plan/source"
)

// An Exposure says what may bring lightning or power lines onto a cable that
// goes out of doors.
type Exposure uint8

// Exposures of a soffit spot.
const (
	NotExposed    Exposure = iota // it stays on the same building
	Aerial                        // a part of it hangs in the air
	OtherBuilding                 // it goes on to another building
)

var exposureNames = [...]string{"none", "aerial", "other building"}

func (e Exposure) String() string { return exposureNames[e] }

// NoClass is the class of a drop whose device is not powered over its cable,
// or whose class is not known.
const NoClass = -1

// Bounds of the power of a drop: the classes of IEEE 802.3, and somewhat more
// than the 90 W that the highest of them may put in (as quoted by others).
const (
	highestClass = 8
	leastWatts   = 0.1
	mostWatts    = 100
)

// dropPower reads the power that the device at a drop takes from its cables.
func (l *jobLoader) dropPower(t *source.Table, d *Drop) {
	d.Class = intOr(t, "class", 0, highestClass, NoClass)
	if w, ok := t.Number("watts", source.Optional, leastWatts, mostWatts); ok {
		d.Watts = thousandths(w)
	}
	if d.Cable.FourPair {
		return
	}
	for _, key := range []string{"class", "watts"} {
		if t.Has(key) {
			t.Errorf(key, "found %s with cable %s; want it only with four-pair cable, which can carry power to a device", key, d.Cable.ID)
		}
	}
}

// dropEnd reads what is put on the far end of a drop's cables. A drop's plug or
// jack must be of the kind that its end is, and for cable of its kind.
func (l *jobLoader) dropEnd(t *source.Table, d *Drop, known bool) {
	d.End = connector.Plug
	if d.Kind == WallPlate {
		d.End = connector.Jack
	}
	if t.Has("plug") != t.Has("jack") {
		d.End = connector.Jack
		if t.Has("plug") {
			d.End = connector.Plug
		}
	}
	if word, ok := t.Choice("end", source.Optional, connector.Kinds()...); ok {
		d.End = connector.Jack
		if word == connector.Plug.String() {
			d.End = connector.Plug
		}
	}
	d.Connector, _ = connector.Usual(d.Cable.Category, d.End)
	for _, kind := range []connector.Kind{connector.Jack, connector.Plug} {
		l.dropConnector(t, d, kind)
	}
	exposure := choiceOr(t, "exposure", exposureNames[:]...)
	for e, name := range exposureNames {
		if name == exposure {
			d.Exposure = Exposure(e)
		}
	}
	only(t, "exposure", d.Kind == SoffitSpot || !known, `kind = "soffit spot"`)
}

// dropConnector reads the plug or the jack that a drop asks for.
func (l *jobLoader) dropConnector(t *source.Table, d *Drop, kind connector.Kind) {
	key := kind.String()
	if !t.Has(key) || l.badConnector {
		return
	}
	if d.End != kind {
		t.Errorf(key, "found a %s for an end with a %s; want one of them", key, d.End)
		return
	}
	id, ok := t.Choice(key, source.Optional, l.connectorIDs(kind)...)
	if !ok {
		return
	}
	c, _ := l.job.ConnectorType(id)
	if c.FourPair != d.Cable.FourPair || d.Cable.Category == "speaker" {
		t.Errorf(key, "found %s, which is not for cable %s", id, d.Cable.ID)
		return
	}
	d.Connector = c
}
