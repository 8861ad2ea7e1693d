package plan

import (
	"time"

	"topplate/plan/rule"
	"topplate/plan/source"
)

// A Site is where on the earth the house stands, and how its clocks are set.
type Site struct {
	// Known is false if the file does not tell; the rest is then zero.
	Known bool
	// Latitude and Longitude are in degrees, north and east positive.
	Latitude, Longitude float64
	// UTCOffset is how many minutes the clock is ahead of UTC on the day of
	// the job, daylight saving included. West of Greenwich it is negative.
	UTCOffset int
}

// A Default is the value of a key that is left out, with where it comes from.
type Default struct {
	Value  int64
	Source rule.Source
}

// DefaultAtticHot is how hot an attic gets in the sun, in thousandths of a
// degree Celsius. One field record is 154 degF, 68 degC.
var DefaultAtticHot = Default{60_000, rule.Source{
	Document: "air in an attic without vents, in the sun", Printed: "140 degF",
	AsQuotedBy: "a roofing trade association's page", Status: rule.AsQuoted,
}}

// site reads the keys of [house] about its place on the earth: all or none.
func (l *houseLoader) site(t *source.Table) {
	hot, ok := atticHeats.read(t, "attic_hot")
	l.house.AtticHot, l.house.AtticHotGiven = hot, ok
	if !ok {
		l.house.AtticHot = DefaultAtticHot.Value
	}
	need := source.Need(false)
	for _, key := range []string{"latitude", "longitude", "utc_offset"} {
		need = need || source.Need(t.Has(key))
	}
	if !need {
		return
	}
	latitude, okLatitude := t.Number("latitude", need, -90, 90)
	longitude, okLongitude := t.Number("longitude", need, -180, 180)
	offset, okOffset := utcOffset(t, "utc_offset")
	if okLatitude && okLongitude && okOffset {
		l.house.Site = Site{Known: true, Latitude: latitude, Longitude: longitude, UTCOffset: offset}
	}
}

// utcOffset reads minutes ahead of UTC, such as "-06:00".
func utcOffset(t *source.Table, key string) (minutes int, ok bool) {
	const want = `hours and minutes ahead of UTC in quotes, from "-12:00" to "+14:00", such as "-06:00"`
	if t.Kind(key) == source.KindNone {
		t.Errorf(key, "missing; want %s", want)
		return 0, false
	}
	text, ok := t.Text(key, source.Required)
	if !ok {
		return 0, false
	}
	at, err := time.Parse("-07:00", text)
	_, seconds := at.Zone()
	minutes = seconds / 60
	if err != nil || len(text) != len("-07:00") || minutes < -12*60 || minutes > 14*60 {
		t.Errorf(key, "found %.40q; want %s", text, want)
		return 0, false
	}
	return minutes, true
}

// clockTime reads a time of day as minutes after midnight, or gives otherwise
// if the key is left out.
func clockTime(t *source.Table, key string, otherwise int) int {
	const want = `a time of day as HH:MM in quotes, such as "08:00"`
	switch t.Kind(key) {
	case source.KindNone:
		return otherwise
	case source.KindTime:
		t.Errorf(key, "found a time without quotes; want %s", want)
		return otherwise
	}
	text, ok := t.Text(key, source.Optional)
	if !ok {
		return otherwise
	}
	at, err := time.Parse("15:04", text)
	if err != nil || len(text) != len("15:04") {
		t.Errorf(key, "found %.40q; want %s", text, want)
		return otherwise
	}
	return at.Hour()*60 + at.Minute()
}
