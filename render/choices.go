package render

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/route"
)

// Sizes of the parts of the sheet that compares plans: what the figures take
// at its foot, what the name of a plan takes over its sketch, and what the
// labels take around the house.
const (
	figuresHeight = 38 * sheet.MM
	figuresNames  = 62 * sheet.MM
	sketchName    = 9 * sheet.MM
	sketchRoom    = 10 * sheet.MM
)

// choicesSheet draws the plans that a job can be done by, each as a small plan
// of the attic, with their figures in a table below. Holes have no numbers
// here: each plan would count its own.
func choicesSheet(res *route.Result, plans []route.Choice, number, of int) *sheet.Sheet {
	h := res.Job.House
	desc := fmt.Sprintf("%d plans for the same drops in %s, side by side, with what each costs, opens and asks to be crawled.", len(plans), h.Name)
	d := &drawing{page: newPage(res, "choices", "Plans to choose from", desc, number, of)}
	foot := d.area
	foot.Min.Y = foot.Max.Y - figuresHeight
	d.figures(plans, foot)
	d.heading("Plans to choose from")
	d.paragraph(sheet.LetterSmall, "No plan here is better than another in cost, openings in finished surfaces and crawling at once. "+report.Shown(plans, res))
	levels := levelsOf(plans)
	boxes := d.cells(len(plans), len(levels), roofBounds(h), foot.Min.Y)
	fits := true
	for i := range plans {
		for k, level := range levels {
			d.view, fits = sheet.FitView(h.Units, roofBounds(h), boxes[i][k])
			if fits {
				d.sketch(i, &plans[i], level, boxes[i][k])
			}
		}
	}
	if fits {
		d.scaleBar(true)
		d.legend(d.dropSymbols()[:3]...)
	} else {
		d.paragraph(sheet.LetterSmall, "The house is too large to be drawn so often on one sheet.")
	}
	d.listUnplaced()
	d.cautions()
	return d.sheet
}

// levelsOf are the levels that an installer comes to in any of some plans, from
// the lowest up.
func levelsOf(plans []route.Choice) []int {
	h := plans[0].Result.Job.House
	return slices.DeleteFunc(byHeight(h), func(level int) bool {
		return len(h.Levels) > 1 && !slices.ContainsFunc(plans, func(c route.Choice) bool { return passed(c.Result, level) })
	})
}

// cells divides the drawing area above foot among the levels of some plans, by
// plan and level: each plan beside or below the last, its levels the other way,
// whichever gives the larger scale. The cells are for the houses alone.
func (d *drawing) cells(plans, levels int, real geom.Rect, foot sheet.Paper) [][]sheet.Box {
	u := d.res.Job.House.Units
	divide := func(beside bool) [][]sheet.Box {
		across, down := levels, plans
		if beside {
			across, down = plans, levels
		}
		w, t := d.area.Width()/sheet.Paper(across), (foot-d.area.Min.Y)/sheet.Paper(down)
		out := make([][]sheet.Box, plans)
		for i := range plans {
			for k := range levels {
				x, y := sheet.Paper(k), sheet.Paper(i)
				if beside {
					x, y = y, x
				}
				b := sheet.Bx(d.area.Min.X+w*x, d.area.Min.Y+t*y, w, t).Inset(sketchRoom)
				b.Min.Y += sketchName
				out[i] = append(out[i], b)
			}
		}
		return out
	}
	beside, above := divide(true), divide(false)
	one, _ := sheet.FitView(u, real, beside[0][0])
	two, _ := sheet.FitView(u, real, above[0][0])
	if two.Scale.Den < one.Scale.Den {
		return above
	}
	return beside
}

// cellID and cellTitle name the drawing of one plan's level.
func cellID(h *plan.House, name string, level int) string {
	if len(h.Levels) == 1 {
		return sheet.ID("plan", name)
	}
	return sheet.ID("plan-"+name, h.Levels[level].ID)
}

func cellTitle(h *plan.House, title string, level int) string {
	if len(h.Levels) == 1 {
		return title
	}
	return levelName(h, level) + ", " + title
}

// sketch draws a level of one plan on a sheet of its own, so that its labels are
// placed in its part of the paper, and takes over what is on it.
func (d *drawing) sketch(i int, c *route.Choice, level int, box sheet.Box) {
	h := c.Result.Job.House
	id := cellID(h, string(rune('a'+i)), level)
	title := cellTitle(h, fmt.Sprintf("Plan %c: %s", 'A'+i, report.BestAt(c)), level)
	area := sheet.Box{Min: box.Min.Sub(sheet.Pt(sketchRoom, sketchRoom)), Max: box.Max.Add(sheet.Pt(sketchRoom, sketchRoom))}
	s := &drawing{page: &page{res: c.Result, sheet: &sheet.Sheet{}, area: area}, view: d.view, scope: levelScope(level), plainHatches: true}
	s.drawWallsBelow()
	s.drawRoof(true)
	s.drawHatches()
	s.drawRoutes(true)
	s.drawCloset()
	s.drawHoles()
	s.drawDrops(false)
	s.asks = slices.DeleteFunc(s.asks, func(a ask) bool { return strings.HasPrefix(a.id, "hole-") || strings.HasPrefix(a.id, "bundle-") })
	s.placeLabels()
	d.unplaced = append(d.unplaced, s.unplaced...)
	g := d.sheet.Group(id, "plan", title)
	at := sheet.Pt(area.Min.X+sketchRoom, area.Min.Y)
	g.Text(sheet.LetterHeading, at, sheet.Start, font.Fit(sheet.LetterHeading, title, area.Width()-sketchRoom))
	for _, part := range s.sheet.Groups {
		g.Add(withPrefix(id, part))
	}
}

// withPrefix is a group with longer ids, as ids are unique on a sheet.
func withPrefix(prefix string, g *sheet.Group) *sheet.Group {
	out := *g
	if g.ID != "" {
		out.ID = prefix + "-" + g.ID
	}
	out.Items = slices.Clone(g.Items)
	for i, item := range out.Items {
		if inner, ok := item.(*sheet.Group); ok {
			out.Items[i] = withPrefix(prefix, inner)
		}
	}
	return &out
}

// figures writes the table that compares the plans.
func (d *drawing) figures(plans []route.Choice, box sheet.Box) {
	g := d.sheet.Group("figures", "figures", "Figures of the plans")
	g.Line(sheet.PenRule, box.Min, sheet.Pt(box.Max.X, box.Min.Y))
	width := (box.Width() - figuresNames - 2*padding) / sheet.Paper(len(plans))
	y := box.Min.Y + sheet.MM
	for i, row := range report.ChoicesTable(plans) {
		l := sheet.LetterNote
		if i == 0 {
			l = sheet.LetterTag
		}
		y += font.LineHeight(l) + sheet.MM/2
		x, room := box.Min.X+padding, figuresNames
		for _, cell := range row {
			g.Text(l, sheet.Pt(x, y), sheet.Start, font.Fit(l, cell, room-2*sheet.MM))
			x += room
			room = width
		}
	}
}
