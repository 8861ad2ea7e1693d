package sun

import (
	"math"
	"time"
)

const (
	minutesPerDay    = 1440
	minutesPerDegree = 4         // the earth turns a degree in four minutes
	unixEpoch        = 2440587.5 // Julian day of 1970-01-01, 0 h UTC
	j2000            = 2451545.0 // Julian day of 2000-01-01, 12 h
	daysPerCentury   = 36525.0
)

// julianDay is the Julian day at 0 h UTC of date.
func julianDay(date Date) float64 {
	t := time.Date(date.Year, date.Month, date.Day, 0, 0, 0, 0, time.UTC)
	return unixEpoch + float64(t.Unix())/86400
}

// limit tells whether the sun crosses the horizon.
type limit int

const (
	within limit = iota
	alwaysUp
	alwaysDown
)

// solarNoon is the time of the sun's transit in minutes after midnight, which
// is given as a Julian day. It is brought into the date, because a clock may
// be half a day and more from the sun (islands near the date line).
func solarNoon(midnight float64, p Position, offset int) float64 {
	mean := 720 - minutesPerDegree*p.Longitude + float64(offset)
	noon := intoDay(mean)
	for range 4 {
		_, equation := sunAt(midnight + noon/minutesPerDay)
		noon = intoDay(mean - equation)
	}
	return noon
}

// intoDay adds or takes whole days so that minutes fall within the date.
func intoDay(minutes float64) float64 {
	return minutes - minutesPerDay*math.Floor(minutes/minutesPerDay)
}

// event is the rise (side -1) or set (side +1) that belongs to noon, in
// minutes after midnight. NOAA makes two passes, with the sun's place at noon
// and then at the first result. Here the passes go on until they agree, which
// matters where the sun grazes the horizon; where no crossing is near, the
// last pass is kept.
func event(midnight, noon float64, p Position, side float64) (float64, limit) {
	_, atNoon := sunAt(midnight + noon/minutesPerDay)
	at, state := noon, within
	for range 25 {
		declination, equation := sunAt(midnight + at/minutesPerDay)
		var hour float64
		hour, state = hourAngle(p.Latitude, declination)
		next := noon + atNoon - equation + side*minutesPerDegree*hour
		if state != within {
			// The equation of time must not push an event that does not
			// happen over the end of the day.
			next = noon + side*minutesPerDegree*hour
		}
		if math.Abs(next-at) < 0.001 {
			return next, state
		}
		at = next
	}
	return at, state
}

// hourAngle is how far, in degrees of the earth's turn, the sun is from its
// highest point when it crosses the horizon: 0 where it never rises, 180 where
// it never sets. Compared without dividing, so that the poles need no care.
func hourAngle(latitude, declination float64) (float64, limit) {
	sinLat, cosLat := math.Sincos(radians(latitude))
	sinDec, cosDec := math.Sincos(radians(declination))
	above := math.Cos(radians(Zenith)) - sinLat*sinDec
	circle := cosLat * cosDec
	switch {
	case above >= circle:
		return 0, alwaysDown
	case above <= -circle:
		return 180, alwaysUp
	}
	return degrees(math.Acos(above / circle)), within
}

// sunAt gives the sun's declination in degrees and the equation of time in
// minutes at a Julian day. Source: NOAA solar calculator after Meeus,
// Astronomical Algorithms, chapters 22, 25 and 28 (chapter numbers from
// memory).
func sunAt(day float64) (declination, equation float64) {
	t := (day - j2000) / daysPerCentury
	longitude := 280.46646 + t*(36000.76983+0.0003032*t)
	anomaly := 357.52911 + t*(35999.05029-0.0001537*t)
	eccentricity := 0.016708634 - t*(0.000042037+0.0000001267*t)

	m := radians(anomaly)
	centre := math.Sin(m)*(1.914602-t*(0.004817+0.000014*t)) +
		math.Sin(2*m)*(0.019993-0.000101*t) +
		math.Sin(3*m)*0.000289
	node := radians(125.04 - 1934.136*t)
	apparent := radians(longitude + centre - 0.00569 - 0.00478*math.Sin(node))

	arcseconds := 21.448 - t*(46.8150+t*(0.00059-t*0.001813))
	obliquity := radians(23 + (26+arcseconds/60)/60 + 0.00256*math.Cos(node))
	declination = degrees(math.Asin(math.Sin(obliquity) * math.Sin(apparent)))

	y := math.Tan(obliquity / 2)
	y *= y
	l, e := radians(longitude), eccentricity
	equation = minutesPerDegree * degrees(y*math.Sin(2*l)-2*e*math.Sin(m)+
		4*e*y*math.Sin(m)*math.Cos(2*l)-
		0.5*y*y*math.Sin(4*l)-1.25*e*e*math.Sin(2*m))
	return declination, equation
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }
func degrees(radians float64) float64 { return radians * 180 / math.Pi }
