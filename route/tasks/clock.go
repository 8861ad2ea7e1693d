package tasks

import (
	"fmt"
	"time"

	"topplate/plan/diag"
	"topplate/plan/rule"
	"topplate/plan/sun"
	"topplate/route"
	"topplate/route/order"
)

// A clock is the limits of a day.
type clock struct {
	start  order.Clock
	places map[string]*Place
	// sunset and cool are 0 if there is no limit.
	sunset, cool order.Clock
	// shift is the day of work of a job of several, nil if it is done on one.
	shift *order.Shift
	most  int // minutes of the longest way in the morning
}

// task is t as package order takes it.
func (c clock) task(t *Task) order.Task {
	out := order.Task{ID: t.ID, Place: t.Place, Needs: t.Needs, Minutes: t.Minutes, Hands: t.Hands, Helper: t.Helper}
	if c.at(t, Outside) {
		out.NotAfter = c.sunset
	}
	if c.at(t, Attic) {
		out.PreferBefore = c.cool
	}
	return out
}

// at reports whether a task or its helper is at a place of a kind.
func (c clock) at(t *Task, k PlaceKind) bool {
	return c.places[t.Place].Kind == k || t.Helper != "" && c.places[t.Helper].Kind == k
}

// clock finds the limits of the job's day and notes what is not known.
func (s *site) clock(today []way, w *Work) clock {
	c := clock{start: order.Clock(s.job.Crew.Start), places: s.titles}
	date, ok := s.date()
	if !ok {
		return c
	}
	c.cool = order.Clock(value(atticCool))
	outdoor := false
	for i := range today {
		outdoor = outdoor || s.placeOf(today[i].drop) == outside
	}
	place := s.job.House.Site
	switch {
	case !outdoor:
	case !place.Known:
		w.note(DateWithoutPlace, route.Finding{
			Pos: diag.Pos{File: s.job.House.File}, Where: s.job.Date,
			Found:  "the job has a date, but the house has no place on the earth: sunset is not known, and no limit is kept for work outside",
			Change: "give latitude, longitude and utc_offset in [house]",
		})
	default:
		s.sunset(date, w, &c)
	}
	return c
}

// date is the job's, if it has one.
func (s *site) date() (time.Time, bool) {
	date, err := time.Parse("2006-01-02", s.job.Date)
	return date, err == nil
}

// sunset finds the limit for outdoor work.
func (s *site) sunset(date time.Time, w *Work, c *clock) {
	d, err := s.daylight(date)
	if d.Polar == sun.PolarNight {
		w.note(AfterSunset, route.Finding{
			Pos: diag.Pos{File: s.job.File}, Where: s.job.Date,
			Found: "the sun does not rise that day", Change: "lamps for the work outside, or another day for it",
		})
	}
	if err != nil || !d.Sets {
		return
	}
	c.sunset = order.Clock(max(d.Sunset.Minute(), 1))
	w.Sunset = c.sunset
}

func (s *site) daylight(date time.Time) (sun.Day, error) {
	place := s.job.House.Site
	return sun.At(
		sun.Date{Year: date.Year(), Month: date.Month(), Day: date.Day()},
		sun.Position{Latitude: place.Latitude, Longitude: place.Longitude}, place.UTCOffset,
	)
}

// note adds a finding of one of this package's rules.
func (w *Work) note(id rule.ID, f route.Finding) {
	for i := range Rules {
		if r := &Rules[i]; r.ID == id {
			f.Rule, f.Severity = id, r.Severity
		}
	}
	w.Notes = append(w.Notes, f)
}

// noteBroken tells of each drop with work outside after sunset, once, the
// latest of it.
func (s *site) noteBroken(w *Work, d *day) {
	index := map[string]*Task{}
	for _, t := range w.Tasks {
		index[t.ID] = t
	}
	latest := map[int]order.Broken{}
	for _, b := range d.broken {
		for _, drop := range index[whole(b.ID)].Drops {
			if b.End > latest[drop].End {
				latest[drop] = b
			}
		}
	}
	for i := range s.res.Routes {
		drop := s.res.Routes[i].Drop
		b, ok := latest[drop]
		if !ok {
			continue
		}
		w.note(AfterSunset, route.Finding{
			Pos: s.job.Drops[drop].Pos, Where: s.job.Drops[drop].Tag,
			Found:  fmt.Sprintf("work outside would end at %s; the sun sets at %s", b.End, b.NotAfter),
			Change: fmt.Sprintf("start earlier than %s, bring a second person, or mark %s for later", w.Start, s.job.Drops[drop].Tag),
		})
	}
}

// noteLongDay tells of a day that is too long.
func (s *site) noteLongDay(w *Work) {
	most := int(value(longDay) / 1000)
	long := fmt.Sprintf("; more than %d h is a long day", most/60)
	found := fmt.Sprintf("the work takes %d h %d min and ends at %s", w.Minutes/60, w.Minutes%60, w.End)
	switch several := w.Days > 1; {
	case several && s.job.Crew.Day > most:
		found = fmt.Sprintf("%s, in days of up to %d h %d min%s", found, s.job.Crew.Day/60, s.job.Crew.Day%60, long)
	case several:
		found += ", more than one day"
	case w.Minutes <= most:
		return
	default:
		found += long
	}
	w.note(LongDay, route.Finding{
		Pos: diag.Pos{File: s.job.File}, Where: s.job.Name,
		Found:  found,
		Change: "a second person, or some drops for another day",
	})
}
