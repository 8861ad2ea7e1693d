package sun

import (
	"fmt"
	"math"
	"time"
)

// Zenith is the angle in degrees between the zenith and the sun's centre at
// rise and set. Source: NOAA solar calculator, calculation details.
const Zenith = 90.833

// FirstYear and LastYear bound the dates that At takes. Meeus's short series
// for the sun is good to about 0.01 degrees near the year 2000 and drifts
// slowly; within these years the error stays under a minute of time.
const (
	FirstYear = 1800
	LastYear  = 2200
)

// A Date is a day of the Gregorian calendar on the clock of the place.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// A Position is a point on the earth.
type Position struct {
	Latitude  float64 // degrees, north positive, -90 to 90
	Longitude float64 // degrees, east positive, -180 to 180
}

// A Clock is a time in whole seconds after the midnight that begins a date.
// It may be negative or beyond 24 hours: in a far northern summer the sun
// sets after midnight.
type Clock int

// Minute is the whole minute that c falls in, counted from midnight.
func (c Clock) Minute() int { return int(math.Floor(float64(c) / 60)) }

// String is c to the nearest minute as hh:mm, with the day told when it is
// not the date's own: "00:16 (+1 day)".
func (c Clock) String() string {
	minute := int(math.Floor(float64(c)/60 + 0.5))
	day := int(math.Floor(float64(minute) / minutesPerDay))
	minute -= day * minutesPerDay
	text := fmt.Sprintf("%02d:%02d", minute/60, minute%60)
	if day != 0 {
		text += fmt.Sprintf(" (%+d day)", day)
	}
	return text
}

// A Day is the daylight around one solar noon. Sunrise and Sunset always
// bound the daylight: where the sun doesn't set they are twelve hours before
// and after noon, where it doesn't rise both are noon.
type Day struct {
	Sunrise, Noon, Sunset Clock
	Rises, Sets           bool // false where that event does not happen
	Polar                 Polar
}

// Polar tells whether a day has a night.
type Polar int

// The kinds of day.
const (
	Usual      Polar = iota // the sun rises or sets, or both
	PolarDay                // the sun does not set
	PolarNight              // the sun does not rise
)

// String names the kind.
func (p Polar) String() string {
	switch p {
	case PolarDay:
		return "polar day"
	case PolarNight:
		return "polar night"
	default:
		return "usual day"
	}
}

// Light is the length of the daylight in seconds, 0 to 86 400.
func (d Day) Light() int { return int(d.Sunset - d.Sunrise) }

// At gives the day whose solar noon falls on date, by a clock that is offset
// minutes ahead of UTC (west is negative, -720 to 840). It fails when the date
// does not exist or is outside FirstYear to LastYear, and when position or
// offset is out of range or not a number. Constant time.
func At(date Date, p Position, offset int) (Day, error) {
	if err := check(date, p, offset); err != nil {
		return Day{}, err
	}
	midnight := julianDay(date) - float64(offset)/minutesPerDay
	noon := solarNoon(midnight, p, offset)
	rise, riseLimit := event(midnight, noon, p, -1)
	set, setLimit := event(midnight, noon, p, +1)
	d := Day{
		Sunrise: seconds(rise),
		Noon:    seconds(noon),
		Sunset:  seconds(set),
		Rises:   riseLimit == within,
		Sets:    setLimit == within,
	}
	switch {
	case d.Rises || d.Sets:
	case riseLimit == alwaysUp:
		d.Polar = PolarDay
	default:
		d.Polar = PolarNight
	}
	return d, nil
}

func check(date Date, p Position, offset int) error {
	t := time.Date(date.Year, date.Month, date.Day, 0, 0, 0, 0, time.UTC)
	if y, m, d := t.Date(); y != date.Year || m != date.Month || d != date.Day {
		return fmt.Errorf("sun: there is no date %04d-%02d-%02d", date.Year, int(date.Month), date.Day)
	}
	if date.Year < FirstYear || date.Year > LastYear {
		return fmt.Errorf("sun: year %d is not within %d to %d", date.Year, FirstYear, LastYear)
	}
	// Written so that NaN fails too.
	if !(p.Latitude >= -90 && p.Latitude <= 90) {
		return fmt.Errorf("sun: latitude %g is not within -90 to 90 degrees", p.Latitude)
	}
	if !(p.Longitude >= -180 && p.Longitude <= 180) {
		return fmt.Errorf("sun: longitude %g is not within -180 to 180 degrees", p.Longitude)
	}
	if offset < -12*60 || offset > 14*60 {
		return fmt.Errorf("sun: offset of %d minutes from UTC is not within -720 to 840", offset)
	}
	return nil
}

func seconds(minutes float64) Clock { return Clock(math.Round(minutes * 60)) }
