package tasks

import (
	"slices"

	"topplate/plan/measure"
	"topplate/route/order"
)

// street is the level that one comes to from outside: the one whose floor is
// nearest to the house's zero.
func (s *site) street() int {
	best := 0
	for i := range s.job.House.Levels {
		if s.offStreet(i) < s.offStreet(best) {
			best = i
		}
	}
	return best
}

func (s *site) offStreet(level int) measure.Length {
	f := s.job.House.Levels[level].Floor
	return max(f, -f)
}

// wayInto is the level from which one gets into a space: that of the room of
// its hatch, from outside the street's. The lowest counts if it has several.
func (s *site) wayInto(space int) int {
	h := s.job.House
	best := -1
	for i := range h.Hatches {
		x := &h.Hatches[i]
		if x.Space != space {
			continue
		}
		level := s.street()
		if x.Room >= 0 {
			level = h.Rooms[x.Room].Level
		}
		if best < 0 || h.Levels[level].Floor < h.Levels[best].Floor {
			best = level
		}
	}
	if best < 0 {
		return max(h.Spaces[space].Below, 0)
	}
	return best
}

// storeys is how many storeys up or down it is from one level to another. A few
// steps count as one.
func (s *site) storeys(a, b int) int {
	h := s.job.House
	if h.Levels[a].Floor > h.Levels[b].Floor {
		a, b = b, a
	}
	rise := h.Levels[b].Floor - h.Levels[a].Floor
	if rise == 0 {
		return 0
	}
	storey := h.Levels[a].PlateTop
	return max(1, int((rise+storey/2)/storey))
}

// arrival is how long it takes to get to a place from another on its level.
func arrival(p *Place) int {
	id := toRoom
	switch p.Kind {
	case Attic:
		id = toAttic
	case Crawl:
		id = toCrawl
	case Outside:
		id = toOutside
	}
	return int(value(id) / 1000)
}

// stairsBetween are the ways between the places of a job that are not on one
// level; people come to the street's.
func (s *site) stairsBetween(job *order.Job) []order.Way {
	var out []order.Way
	for i := range job.Places {
		to := s.titles[job.Places[i].Name]
		add := func(from string, level int) {
			if n := s.storeys(level, to.Level); n > 0 {
				out = append(out, order.Way{From: from, To: to.Key, Minutes: arrival(to) + n*int(value(stairs)/1000)})
			}
		}
		if from := s.titles[job.From]; from == nil {
			add(job.From, s.street())
		} else if !slices.ContainsFunc(job.Places, func(p order.Place) bool { return p.Name == from.Key }) {
			add(from.Key, from.Level)
		}
		for j := range job.Places {
			from := s.titles[job.Places[j].Name]
			add(from.Key, from.Level)
		}
	}
	return out
}
