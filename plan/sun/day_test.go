package sun

import (
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func dateOf(t *testing.T, s string) Date {
	t.Helper()
	at, err := time.Parse(time.DateOnly, s)
	if err != nil {
		t.Fatal(err)
	}
	return Date{at.Year(), at.Month(), at.Day()}
}

// clockOf reads hh:mm or hh:mm:ss as seconds.
func clockOf(t *testing.T, s string) int {
	t.Helper()
	total, unit := 0, 3600
	for _, part := range strings.Split(s, ":") {
		total += int(number(t, part)) * unit
		unit /= 60
	}
	return total
}

// The date line has no width: a metre east and west of it the sun is the same.
func TestDateLine(t *testing.T) {
	east, err := At(Date{2024, 7, 1}, Position{-17, 180}, 720)
	if err != nil {
		t.Fatal(err)
	}
	west, err := At(Date{2024, 7, 1}, Position{-17, -180}, 720)
	if err != nil {
		t.Fatal(err)
	}
	if east != west {
		t.Errorf("east %+v, west %+v", east, west)
	}
	if noon := east.Noon.String(); noon != "12:04" {
		// Equation of time on 1 July is about -4 minutes, so noon is 12:04.
		t.Errorf("noon at %s", noon)
	}
}

// At the poles the sun neither rises nor sets within a day; near the equinox
// refraction lets both poles see it.
func TestPoles(t *testing.T) {
	for _, c := range []struct {
		latitude float64
		month    time.Month
		want     Polar
	}{
		{90, time.June, PolarDay},
		{90, time.December, PolarNight},
		{-90, time.June, PolarNight},
		{-90, time.December, PolarDay},
	} {
		d, err := At(Date{2024, c.month, 21}, Position{c.latitude, 0}, 0)
		if err != nil {
			t.Fatal(err)
		}
		light := 0
		if c.want == PolarDay {
			light = 86400
		}
		if d.Polar != c.want || d.Light() != light {
			t.Errorf("latitude %g in %v: %+v, want %v with %d s of light", c.latitude, c.month, d, c.want, light)
		}
	}
}

func TestBadInput(t *testing.T) {
	good := Position{40, -80}
	for _, c := range []struct {
		date   Date
		p      Position
		offset int
		want   string
	}{
		{Date{2023, 2, 29}, good, 0, "there is no date 2023-02-29"},
		{Date{2023, 13, 1}, good, 0, "there is no date 2023-13-01"},
		{Date{0, 0, 0}, good, 0, "there is no date 0000-00-00"},
		{Date{1799, 12, 31}, good, 0, "year 1799"},
		{Date{2201, 1, 1}, good, 0, "year 2201"},
		{Date{2023, 1, 1}, Position{90.1, 0}, 0, "latitude 90.1"},
		{Date{2023, 1, 1}, Position{math.NaN(), 0}, 0, "latitude NaN"},
		{Date{2023, 1, 1}, Position{0, math.Inf(-1)}, 0, "longitude -Inf"},
		{Date{2023, 1, 1}, Position{0, math.NaN()}, 0, "longitude NaN"},
		{Date{2023, 1, 1}, good, -721, "offset of -721"},
		{Date{2023, 1, 1}, good, 841, "offset of 841"},
	} {
		if _, err := At(c.date, c.p, c.offset); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("At(%v, %v, %d): %v, want %q", c.date, c.p, c.offset, err, c.want)
		}
	}
}

func TestClockText(t *testing.T) {
	for _, c := range []struct {
		at     Clock
		text   string
		minute int
	}{
		{0, "00:00", 0},
		{59429, "16:30", 990},
		{59430, "16:31", 990},
		{86399, "00:00 (+1 day)", 1439},
		{86400 + 960, "00:16 (+1 day)", 1456},
		{-61, "23:59 (-1 day)", -2},
	} {
		if c.at.String() != c.text || c.at.Minute() != c.minute {
			t.Errorf("%d: %q and minute %d, want %q and %d", int(c.at), c.at, c.at.Minute(), c.text, c.minute)
		}
	}
	for p, want := range map[Polar]string{Usual: "usual day", PolarDay: "polar day", PolarNight: "polar night"} {
		if p.String() != want {
			t.Errorf("%v, want %s", p, want)
		}
	}
}

// What holds on every day and everywhere.
func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		days := rapid.IntRange(0, 146000).Draw(t, "days")
		date := addDays(Date{FirstYear, 1, 1}, days)
		p := Position{
			rapid.Float64Range(-90, 90).Draw(t, "latitude"),
			rapid.Float64Range(-180, 180).Draw(t, "longitude"),
		}
		offset := rapid.IntRange(-720, 840).Draw(t, "offset")
		d, err := At(date, p, offset)
		if err != nil {
			t.Fatal(err)
		}
		checkDay(t, d)
		// The same day by a clock an hour ahead reads an hour later.
		if later, err := At(date, p, min(offset+60, 840)); err == nil && d.Noon > 60 && d.Noon < 82740 && offset <= 780 {
			if diff := later.Sunset - d.Sunset; diff < 3599 || diff > 3601 {
				t.Fatalf("sunset moved by %d s", int(diff))
			}
		}
	})
}

func checkDay(t interface{ Fatalf(string, ...any) }, d Day) {
	if d.Noon < 0 || d.Noon >= 86400+1 {
		t.Fatalf("noon outside the date: %+v", d)
	}
	if d.Sunrise > d.Noon || d.Noon > d.Sunset || d.Light() > 86400+60 {
		t.Fatalf("out of order or too long: %+v", d)
	}
	if (d.Polar != Usual) != (!d.Rises && !d.Sets) {
		t.Fatalf("kind does not agree: %+v", d)
	}
}

// At the equator refraction and the sun's width add about seven minutes to
// twelve hours: 2 x 0.833 degrees at four minutes each, and a little for the
// slant of the sun's path.
func TestEquatorDay(t *testing.T) {
	total := 0
	for n := range 365 {
		d, err := At(addDays(Date{2023, 1, 1}, n), Position{0, 0}, 0)
		if err != nil {
			t.Fatal(err)
		}
		total += d.Light()
	}
	if mean := total / 365; mean < 12*3600+6*60 || mean > 12*3600+8*60 {
		t.Errorf("mean daylight %d s", mean)
	}
}

func FuzzAt(f *testing.F) {
	f.Add(2024, 6, 21, 40.0, -80.0, -300)
	f.Add(2024, 4, 18, 78.2, 15.6, 60)
	f.Add(2200, 12, 31, -90.0, 180.0, 840)
	f.Fuzz(func(t *testing.T, year, month, day int, latitude, longitude float64, offset int) {
		d, err := At(Date{year, time.Month(month), day}, Position{latitude, longitude}, offset)
		if err != nil {
			return
		}
		checkDay(t, d)
		_, _, _ = d.Sunrise.String(), d.Noon.String(), d.Sunset.String()
	})
}

func BenchmarkAt(b *testing.B) {
	for b.Loop() {
		if _, err := At(Date{2024, 6, 21}, Position{40, -80}, -300); err != nil {
			b.Fatal(err)
		}
	}
}
