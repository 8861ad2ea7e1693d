package render

import (
	"slices"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/render/sheet"
)

// A reached is where in a space one can stand, crawl and reach by hand, each
// with what is better, as outlines of which an odd number is around a place.
type reached struct{ all, stand, crawl, arm []geom.Polygon }

// zones are where one can work in the space that is drawn, by the clear height
// alone.
func (d *drawing) zones() reached {
	h, s := d.res.Job.House, d.space()
	switch {
	case s.Roof >= 0:
		return d.underRoof(s, h.Roofs[s.Roof])
	case s.Kind == plan.CrawlSpace:
		return d.openUnder(s, areaOf(s))
	}
	var open []geom.Area
	for i := range h.Rooms {
		if r := &h.Rooms[i]; r.Open && r.Level == s.Below {
			open = append(open, geom.Area{Outlines: []geom.Polygon{r.Outline}, Holes: r.Holes})
		}
	}
	return d.openUnder(s, geom.Intersect(geom.Unite(open...), areaOf(s)))
}

// underRoof are the zones of an attic, from the clear height over the joists.
func (d *drawing) underRoof(s *plan.Space, r *plan.Roof) reached {
	h, job := d.res.Job.House, d.res.Job
	book := job.Book()
	over := s.Depth + s.Lift
	crawlAt := book.Length(rule.ReachCrawl)
	rise := job.Tools.ArmReach * measure.Length(r.Pitch.Rise) / measure.Length(r.Pitch.Run)
	armAt := max(book.Length(rule.ReachArmHeight), crawlAt-rise)
	inside := s.Edges()
	within := func(at measure.Length) []geom.Polygon {
		contour := r.Surface.ClearContour(at + over)
		if len(inside) == 1 && slices.Equal(inside[0], h.Levels[r.Level].PlateLine) {
			return contour // all of the roof is over the space
		}
		a := geom.Intersect(geom.Area{Outlines: contour}, areaOf(s))
		return slices.Concat(a.Outlines, a.Holes)
	}
	return reached{inside, within(book.Length(rule.ReachStand)), within(crawlAt), within(armAt)}
}

// openUnder are the zones of a space that is worked on from below in a part of
// it: from the room there, or from the ground.
func (d *drawing) openUnder(s *plan.Space, part geom.Area) reached {
	book := d.res.Job.Book()
	clear := s.Clear
	if s.Kind != plan.CrawlSpace && s.Below >= 0 {
		clear = s.Base - d.res.Job.House.Levels[s.Below].Floor
	}
	rings := slices.Concat(part.Outlines, part.Holes)
	out := reached{all: s.Edges()}
	for _, z := range []struct {
		at measure.Length
		to *[]geom.Polygon
	}{{book.Length(rule.ReachStand), &out.stand}, {book.Length(rule.ReachCrawl), &out.crawl}, {book.Length(rule.ReachArmHeight), &out.arm}} {
		if clear >= z.at {
			*z.to = rings
		}
	}
	return out
}

// drawZones hatches what is worked at in each way, denser where it is worse,
// and leaves gaps for the labels.
func (d *drawing) drawZones(gaps []sheet.Box) {
	z := d.zones()
	g := d.zoneGroup
	ring := func(sets ...[]geom.Polygon) [][]sheet.Point {
		var out [][]sheet.Point
		for _, set := range sets {
			for _, p := range set {
				out = append(out, d.view.Points(p))
			}
		}
		return out
	}
	g.Hatch(sheet.HatchCrawl, ring(z.crawl, z.stand), gaps...)
	g.Hatch(sheet.HatchReach, ring(z.arm, z.crawl), gaps...)
	g.Hatch(sheet.HatchRod, ring(z.all, z.arm), gaps...)
	for _, set := range [][]geom.Polygon{z.stand, z.crawl, z.arm} {
		for _, r := range ring(set) {
			g.Polygon(sheet.PenThin, r)
		}
	}
	if d.tile != nil {
		d.tile.cutGroup(g)
	}
}
