package render

import (
	"fmt"
	"slices"
	"strconv"

	"topplate/plan"
	"topplate/plan/geom"
	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route"
)

// An openingsSet is the sheets for the homeowner about one level: a plan with
// every opening in a finished surface, the table that says what becomes of each,
// and, on the last set of a house, a place to sign.
type openingsSet struct {
	res   *route.Result
	level int
	first bool // of the house's sets
	last  bool
	// levels are its level and, of the first set, those that have none.
	levels []int
	list   []opened
	plan   sheet.Box // for the house and its labels, on the first sheet
	pages  []openingsPage
}

// An openingsPage is a part of the table, and where it is drawn.
type openingsPage struct {
	rows []openingRow
	box  sheet.Box // the table's
}

// Room about the house on the plan, for numbers, and what the place to sign
// takes at the foot of the last sheet.
const (
	planRoom   = 9 * sheet.MM
	signHeight = 32 * sheet.MM
)

// openingsSets are the sets of a job, one for each level on which something is
// opened, from the lowest up; where nothing is, one for the closet's level.
func openingsSets(res *route.Result) []*openingsSet {
	list := openingsOf(res)
	var out []*openingsSet
	for _, level := range byHeight(res.Job.House) {
		from := slices.IndexFunc(list, func(o opened) bool { return o.level == level })
		if from < 0 {
			continue
		}
		to := from
		for to < len(list) && list[to].level == level {
			to++
		}
		out = append(out, &openingsSet{res: res, level: level, levels: []int{level}, list: list[from:to:to]})
	}
	if len(out) == 0 {
		level := levelOfCloset(res.Job)
		out = []*openingsSet{{res: res, level: level, levels: []int{level}}}
	}
	for level := range res.Job.House.Levels {
		if !slices.ContainsFunc(out, func(s *openingsSet) bool { return s.level == level }) {
			out[0].levels = append(out[0].levels, level)
		}
	}
	out[0].first, out[len(out)-1].last = true, true
	for _, s := range out {
		s.layOut()
	}
	return out
}

// signed is the room for the place to sign.
func (s *openingsSet) signed() sheet.Paper {
	if s.last {
		return signHeight
	}
	return 0
}

// layOut lays out the sheets: all on one, if the plan is not too small for it
// then; else the table has a sheet to itself; and if it is too long for that, it
// begins under the plan and goes on over further sheets.
func (s *openingsSet) layOut() {
	res := s.res
	area := newPage(res, "openings", "", "", 1, 1).area
	table := area.Inset(padding)
	rows := openingRows(s.list, s.roomName, table.Width())
	s.plan = area
	s.plan.Max.Y = table.Max.Y - s.signed() - rowsHeight(rows)
	if v, ok := s.fit(); ok && v.Scale.Den <= coarsest(res.Job.House.Units) {
		s.pages = []openingsPage{{rows, s.under(table)}}
		return
	}
	s.plan = area
	n := 0
	if rowsHeight(rows)+s.signed() > table.Height() {
		n = s.shareFirst(rows, table)
	}
	s.pages = []openingsPage{{rows[:n], s.under(table)}}
	s.paginate(rows[n:], table)
}

// shareFirst makes room under the plan, drawn as large as it can be, and
// returns the number of rows that fit there.
func (s *openingsSet) shareFirst(rows []openingRow, table sheet.Box) int {
	whole := s.plan
	v, _ := s.fit()
	s.plan.Max.Y = min(whole.Max.Y, whole.Min.Y+v.Length(s.real().Height())+2*planRoom+s.moreRings(v))
	n := fitting(rows, table.Max.Y-s.plan.Max.Y)
	if n == 0 {
		s.plan = whole
	}
	return n
}

// ringStep is what a ring with its neighbours' clearance takes.
const ringStep = 2*ringRadius + 2*sheet.MM

// moreRings is the room that numbers need above and below a plan that is so
// small that they don't find room side by side around it.
func (s *openingsSet) moreRings(v sheet.View) sheet.Paper {
	around := 2 * (v.Length(s.real().Width()) + v.Length(s.real().Height()))
	deep := (sheet.Paper(len(s.list))*ringStep + around - 1) / around
	return max(deep-1, 0) * 2 * ringStep
}

// paginate puts the rows on further sheets, and leaves room to sign on the
// last.
func (s *openingsSet) paginate(rows []openingRow, table sheet.Box) {
	for {
		n := fitting(rows, table.Height())
		s.pages = append(s.pages, openingsPage{rows[:n], table})
		if rows = rows[n:]; len(rows) > 0 {
			continue
		}
		last := s.pages[len(s.pages)-1].rows
		if rowsHeight(last)+s.signed() <= table.Height() {
			return
		}
		// The last row goes over to the sheet that is signed.
		s.pages[len(s.pages)-1].rows = last[:len(last)-1]
		rows = last[len(last)-1:]
	}
}

// under is what of the table's box lies under the plan.
func (s *openingsSet) under(table sheet.Box) sheet.Box {
	table.Min.Y = s.plan.Max.Y
	return table
}

// real is what the plan shows: the walls, and the roof's edge if anything is
// opened there.
func (s *openingsSet) real() geom.Rect {
	h := s.res.Job.House
	r := levelBounds(h, s.level)
	if n := len(s.list); n > 0 && s.list[n-1].room < 0 {
		for _, roof := range h.Roofs {
			if roof.Level == s.level {
				r = unionOf(r, roof.Outline.Bounds().Outset(roof.Overhang))
			}
		}
	}
	return r
}

// levelBounds is the smallest rectangle around the walls of a level.
func levelBounds(h *plan.House, level int) geom.Rect {
	if len(h.Levels) == 1 {
		return h.Boundaries
	}
	var r geom.Rect
	none := true
	for i := range h.Walls {
		w := &h.Walls[i]
		switch {
		case w.Level != level:
		case none:
			r, none = w.Body, false
		default:
			r = unionOf(r, w.Body)
		}
	}
	return r
}

// fit is the view of the house in the plan's box.
func (s *openingsSet) fit() (sheet.View, bool) {
	return sheet.FitView(s.res.Job.House.Units, s.real(), s.plan.Inset(planRoom))
}

func (s *openingsSet) roomName(room int) string {
	if room < 0 {
		return "Outside"
	}
	return s.res.Job.House.Rooms[room].Name
}

// sheets draws the set; number is that of its first sheet among of.
func (s *openingsSet) sheets(number, of int) []*sheet.Sheet {
	h := s.res.Job.House
	out := []*sheet.Sheet{s.planSheet(number, of)}
	for i := 1; i < len(s.pages); i++ {
		n := i + 1
		desc := fmt.Sprintf("The table of openings in %s%s goes on: where each is, how large, what is put over it and whether it is closed again.", h.Name, levelClause(h, s.level))
		title := fmt.Sprintf("Openings%s, page %d", levelTitle(h, s.level), n)
		p := newPage(s.res, partID(h, levelID(h, "openings", s.level), n), title, desc, number+i, of)
		p.heading(title)
		p.paragraph(sheet.LetterNote, "The numbers are those on the plan, on the first page.")
		s.finish(p, i)
		out = append(out, p.sheet)
	}
	return out
}

// planSheet draws the sheet with the plan.
func (s *openingsSet) planSheet(number, of int) *sheet.Sheet {
	h := s.res.Job.House
	desc := fmt.Sprintf("Plan of %s%s with %s in finished surfaces, and a table of where each is, how large, what is put over it and whether it is closed again.",
		h.Name, levelClause(h, s.level), counted(len(s.list), "opening", "openings"))
	d := &drawing{page: newPage(s.res, levelID(h, "openings", s.level), "Where openings will be"+levelTitle(h, s.level), desc, number, of), scope: levelScope(s.level)}
	d.view, _ = s.fit()
	d.sheet.View = d.view
	d.drawStairs()
	d.drawRoof(false)
	d.drawWalls()
	d.drawChannels()
	d.scaleBar(true)
	whole := d.area
	d.area = s.plan
	d.numberOpenings(s.list)
	d.namePlainRooms()
	d.placeLabels()
	d.area = whole
	d.drawTreads()
	d.explainOpenings(s)
	d.listUnplaced()
	d.openingsLegend(s.list)
	s.finish(d.page, 0)
	return d.sheet
}

// finish draws a page's part of the table, the cautions, and on the last page
// the place to sign.
func (s *openingsSet) finish(p *page, i int) {
	if len(s.pages[i].rows) > 0 {
		drawOpeningRows(p.sheet, s.pages[i].rows, s.pages[i].box)
	}
	if s.last && i == len(s.pages)-1 {
		p.placeToSign(s.list)
	}
	p.plainCautions()
}

// drawChannels draws where cable is in sight.
func (d *drawing) drawChannels() {
	var g *sheet.Group
	for i := range d.res.Bundles {
		b := &d.res.Bundles[i]
		points := flatten(b.Points)
		if !inSight(b.Kind) || len(points) < 2 || !d.scope.hasBundle(d.res, b) {
			continue
		}
		if g == nil {
			g = d.sheet.Group("channels", "routes", "Cable in sight")
		}
		g.Polyline(sheet.PenCableSurface, d.view.Points(points)...)
	}
}

// namePlainRooms asks for the name of each room in its middle, smaller where
// the room is too small for it.
func (d *drawing) namePlainRooms() {
	h := d.res.Job.House
	for i := range h.Rooms {
		r := &h.Rooms[i]
		if r.Level != d.scope.level {
			continue
		}
		in := d.view.Box(largestRect(r.Outline))
		l := sheet.LetterRoom
		if w, _ := font.BoxSize(l, r.Name); w > in.Width()-2*sheet.MM {
			l = sheet.LetterNote
		}
		d.ask(ask{
			id: "room-" + r.ID, at: d.view.Point(r.At), within: in, priority: 15, leader: true,
			block: font.Block{{Lettering: l, Words: r.Name}},
		})
	}
}

// numberOpenings draws the openings and numbers them room by room, each number
// in the room of its opening. A number that finds no place there, and the
// numbers' neighbours, wait for placeLabels.
func (d *drawing) numberOpenings(list []opened) {
	boxes := d.drawOpened(list)
	for i := 0; i < len(list); {
		n := i + 1
		for n < len(list) && list[n].room == list[i].room {
			n++
		}
		d.keepTo(list[i].room)
		d.askNumbers(list[i:n], boxes[i:n])
		d.placeLabels()
		d.sheet.Groups[len(d.sheet.Groups)-1].ID = "numbers-" + strconv.Itoa(list[i].number)
		d.taken, d.asks = nil, nil
		i = n
	}
	homeless := d.unplaced
	d.unplaced = nil
	for _, u := range homeless {
		if n, err := strconv.Atoi(u.words); err == nil {
			k := n - list[0].number
			d.askNumbers(list[k:k+1], boxes[k:k+1])
		}
	}
}

// keepTo takes all other rooms, so that labels keep out of them, and what is
// around the house, unless room is -1.
func (d *drawing) keepTo(room int) {
	h := d.res.Job.House
	for i := range h.Rooms {
		if i != room && h.Rooms[i].Level == d.scope.level {
			d.take(d.view.Box(largestRect(h.Rooms[i].Outline)))
		}
	}
	if room < 0 {
		return
	}
	in, all := d.view.Box(levelBounds(h, d.scope.level)), d.area
	d.take(
		sheet.Box{Min: all.Min, Max: sheet.Pt(all.Max.X, in.Min.Y)}, sheet.Box{Min: sheet.Pt(all.Min.X, in.Max.Y), Max: all.Max},
		sheet.Box{Min: all.Min, Max: sheet.Pt(in.Min.X, all.Max.Y)}, sheet.Box{Min: sheet.Pt(in.Max.X, all.Min.Y), Max: all.Max},
	)
}

// askNumbers asks for the numbers of some openings, whose symbols lie in boxes.
func (d *drawing) askNumbers(list []opened, boxes []sheet.Box) {
	for i, box := range boxes {
		number := strconv.Itoa(list[i].number)
		d.ask(ask{
			id: "place-" + number, at: box.Centre(), symbol: box, priority: 40, leader: true, ring: true,
			block: font.Block{{Lettering: sheet.LetterTag, Words: number}},
		})
	}
}

// roomsOpened counts the rooms with openings, and the openings out of doors.
func roomsOpened(list []opened) (rooms, outside int) {
	for i := range list {
		switch {
		case list[i].room < 0:
			outside++
		case i == 0 || list[i-1].room != list[i].room:
			rooms++
		}
	}
	return rooms, outside
}
