package render

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"topplate/plan"
	"topplate/plan/rule"
	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
)

// explainOpenings says in the column what the sheet is for, what is drilled
// out of sight, and what to do before the work begins.
func (d *drawing) explainOpenings(s *openingsSet) {
	d.heading("What this sheet shows")
	d.paragraph(sheet.LetterNote, s.onLevel()+openingsCount(s.list)+" Left and right are as you stand facing the wall. A mark such as "+s.sampleMark()+" is on the other sheets too."+s.tableFollows())
	if n := unseen(d.res); n > 0 && s.first {
		where := "inside walls and under the attic floor"
		if len(d.res.Job.House.Levels) > 1 {
			where = "inside walls and floors on all levels"
		}
		d.paragraph(sheet.LetterNote, fmt.Sprintf("Out of sight, %s, %s drilled in the wood as well. Nothing of that is seen in a room.",
			where, counted(n, "hole is", "holes are")))
	}
	switch inside, outside := channels(d.res, s.level); {
	case inside && outside:
		d.paragraph(sheet.LetterNote, "Some cable stays in sight: in a channel on the walls, and outside along the house, where the plan shows it.")
	case inside:
		d.paragraph(sheet.LetterNote, "Some cable stays in sight: in a channel on the walls, where the plan shows it.")
	case outside:
		d.paragraph(sheet.LetterNote, "Some cable stays in sight: outside along the house, where the plan shows it.")
	}
	if words := notPlanned(d.res, s.levels); words != "" {
		d.heading("Not planned yet")
		d.paragraph(sheet.LetterNote, words)
	}
	if len(s.list) > 0 {
		d.heading("Before the work begins")
		d.paragraph(sheet.LetterNote, beforehand(s))
	}
}

// onLevel says which level the sheet is about, in a house of several.
func (s *openingsSet) onLevel() string {
	if len(s.res.Job.House.Levels) == 1 {
		return ""
	}
	words := "This sheet is about the level called " + levelName(s.res.Job.House, s.level) + ". "
	if !s.last {
		words += "The numbers go on with the next level up; the place to sign is on the last of these sheets. "
	}
	return words
}

// sampleMark is the mark of the first drop on the level, or of the job.
func (s *openingsSet) sampleMark() string {
	drops := s.res.Job.Drops
	return drops[max(0, slices.IndexFunc(drops, func(d plan.Drop) bool { return s.res.Job.House.LevelOf(&d) == s.level }))].Tag
}

// tableFollows says where to look for the table, if it is not on the sheet with
// the plan.
func (s *openingsSet) tableFollows() string {
	switch {
	case len(s.pages) == 1:
		return ""
	case len(s.pages[0].rows) == 0:
		return " The table is on the next page."
	case !s.last:
		return " The table goes on, on the next page."
	}
	return " The table goes on, and the place to sign is on page " + strconv.Itoa(len(s.pages)) + "."
}

// openingsCount says how many openings there are.
func openingsCount(list []opened) string {
	if len(list) == 0 {
		return "No surface that you see is opened."
	}
	rooms, outside := roomsOpened(list)
	var where []string
	if rooms > 0 {
		where = append(where, counted(len(list)-outside, "opening", "openings")+" in "+counted(rooms, "room", "rooms"))
	}
	if outside > 0 {
		where = append(where, strconv.Itoa(outside)+" outside")
	}
	return "Every place where a surface that you see is opened for the cables: " + listed(where) + "."
}

// beforehand says what to clear, and where there will be a ladder.
func beforehand(s *openingsSet) string {
	var overhead, hatches []string
	for i := range s.list {
		if o := &s.list[i]; o.kind != openWall && o.kind != openAgain && o.kind != openThrough && o.kind != openFloor {
			overhead = append(overhead, strconv.Itoa(o.number))
		}
	}
	for i := range s.res.Job.House.Hatches {
		x := &s.res.Job.House.Hatches[i]
		if room := x.Room; room >= 0 && s.res.Job.House.Rooms[room].Level == s.level && (len(s.res.Job.House.Spaces) == 1 || used(s.res, x.Space)) {
			hatches = append(hatches, s.roomName(room))
		}
	}
	words := "Please clear an arm's length in front of each number. Cutting makes dust: cover or take away what is near."
	if len(overhead) > 0 {
		words += " A ladder stands at " + listed(overhead) + "."
	}
	if len(hatches) > 0 {
		words += " Keep the way to the attic hatch free: " + listed(slices.Compact(hatches)) + "."
	}
	return words
}

// plainCaution are the standing cautions in a homeowner's words.
var plainCaution = map[rule.ID]string{
	rule.LocalCode:      "Your town may ask for a permit or a licence. Its rules come first.",
	rule.LiveWires:      "Wires and pipes are looked for before every cut. Work on power is for a licensed electrician.",
	rule.FireSeparation: "To a garage or another home they must be closed as the local code asks. Say which walls are such.",
	rule.Ladder:         "Keep children and pets away from ladders, and do not stand under the attic while somebody works there.",
	rule.AtticHeat:      "An attic in the sun is dangerously hot. Work there may be put off to a cooler hour.",
	rule.LeadPaint: "In a house of this age, or of an age not known, it is taken to hold lead until it is tested. " +
		"Keep children and pregnant women away until all is cleaned. A federal rule holds for paid work on larger areas.",
	rule.SealHoles:    "What is drilled in the wood at the top of a wall is closed around the cable, so that fire finds no way up.",
	rule.TrussNever:   "The roof's frame is not drilled or cut: cables are laid over it.",
	rule.OutdoorEntry: "The gap where it comes out is sealed. Protection against lightning may be asked for by the local code.",
	rule.OldHouse:     "Old loose insulation may hold asbestos. If any is found, work there stops and trained professionals are called.",
}

// plainCautions writes the job's cautions in plain words, large or small; where
// there is no room for that, the titles of the last of them.
func (p *page) plainCautions() {
	p.keep = 0
	p.heading("Please know")
	var full, titles []string
	for _, id := range agedFirst(p.res.Cautions) {
		rl, ok := rule.Lookup(id)
		if !ok {
			continue
		}
		words := plainCaution[id]
		if words == "" {
			words = firstSentence(rl.Text)
		}
		full = append(full, rl.Title+": "+lowerFirst(words))
		titles = append(titles, rl.Title+".")
	}
	if p.printed(sheet.LetterNote, append(slices.Clone(full), report.Deference)) {
		return
	}
	for n := len(full); n > 0; n-- {
		words := slices.Clone(full[:n])
		if n < len(full) {
			words = append(words, "Ask also about: "+strings.Join(titles[n:], " "))
		}
		if p.printed(sheet.LetterSmall, append(words, report.Deference)) {
			return
		}
	}
	p.paragraph(sheet.LetterSmall, leastCautions(titles, p.rest))
}

// agedFirst puts what holds for old houses before what holds for all.
func agedFirst(ids []rule.ID) []rule.ID {
	out := slices.Clone(ids)
	slices.SortStableFunc(out, func(a, b rule.ID) int {
		p, _ := rule.Lookup(a)
		q, _ := rule.Lookup(b)
		return cmp.Compare(q.BuiltBefore, p.BuiltBefore)
	})
	return out
}

// printed writes texts in the column if there is room for all of them.
func (p *page) printed(l sheet.Lettering, texts []string) bool {
	var need sheet.Paper
	for _, words := range texts {
		need += p.paragraphHeight(l, words)
	}
	if p.next+need > p.foot() {
		return false
	}
	for _, words := range texts {
		p.paragraph(l, words)
	}
	return true
}

// lowerFirst is a text that goes on after a colon.
func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

// placeToSign draws, at the foot of the drawing area, what is signed and the
// lines for it.
func (p *page) placeToSign(list []opened) {
	g := p.sheet.Group("sign", "sign", "Place to sign")
	box := p.area.Inset(padding)
	box.Min.Y = box.Max.Y - signHeight + padding
	g.Line(sheet.PenRule, box.Min, sheet.Pt(box.Max.X, box.Min.Y))
	y := box.Min.Y + sheet.MM + font.LineHeight(sheet.LetterTag)
	g.Text(sheet.LetterTag, sheet.Pt(box.Min.X, y), sheet.Start, "Seen before the work begins")
	words := "I have seen where the openings will be, how large each one is, and what is put over it or closes it. " +
		"Nothing else that I see is to be opened. If a place has to move, I am asked before it is cut."
	if slices.ContainsFunc(list, func(o opened) bool { return o.kind == openAgain || o.kind == openBoard }) {
		words += " Matching paint for what is closed again comes from the owner or is chosen with the owner."
	}
	for _, line := range font.Wrap(sheet.LetterNote, words, box.Width()) {
		y += font.LineHeight(sheet.LetterNote)
		g.Text(sheet.LetterNote, sheet.Pt(box.Min.X, y), sheet.Start, line)
	}
	x := box.Min.X
	foot := box.Max.Y - 2*sheet.MM
	for _, f := range [...]struct {
		name  string
		share sheet.Paper
	}{{"Name", 38}, {"Date", 20}, {"Signature", 42}} {
		w := box.Width() * f.share / 100
		g.Text(sheet.LetterNote, sheet.Pt(x, foot), sheet.Start, f.name)
		from := x + font.Width(sheet.LetterNote, f.name) + 2*sheet.MM
		g.Line(sheet.PenThin, sheet.Pt(from, foot), sheet.Pt(x+w-4*sheet.MM, foot))
		x += w
	}
}
