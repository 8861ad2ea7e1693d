package render

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"topplate/render/font"
	"topplate/render/label"
	"topplate/render/sheet"
)

// Letters for labels without room: the radius of the ring around one, and how
// often labels that have lost their place to others get one too.
const (
	keyRadius = 1700 * sheet.Micrometre
	keyTries  = 4
)

// keyLost lets those labels without a place that a letter would make smaller
// have one, and those that have one go before all but tags. It reports whether there
// are any.
func (d *drawing) keyLost(places []label.Placement) (done bool) {
	for i := range places {
		a := &d.asks[i]
		if places[i].Placed || a.ring {
			continue
		}
		if a.keyed {
			if a.priority < tagPriority-1 {
				a.priority, done = tagPriority-1, true
			}
			continue
		}
		if w, h := a.size(); w*h > 2*keyRadius*2*keyRadius*3/2 {
			a.keyed, done = true, true
		}
	}
	return done
}

// letterKeys gives the letters in the order of the labels that have a place.
func (d *drawing) letterKeys(places []label.Placement) {
	n := 0
	for i := range d.asks {
		if a := &d.asks[i]; a.keyed && places[i].Placed {
			a.key = letterOf(n)
			n++
		}
	}
}

// letterOf is a to z, then aa to az, ba and so on.
func letterOf(n int) string {
	if n < 26 {
		return string(rune('a' + n))
	}
	return letterOf(n/26-1) + letterOf(n%26)
}

// drawKey draws a letter in its ring.
func drawKey(g *sheet.Group, c sheet.Point, key string) {
	g.Circle(sheet.PenThin, c, keyRadius)
	g.Add(sheet.Text{Lettering: sheet.LetterSmallTag, At: c, Align: sheet.Middle, Level: sheet.OnHalf, Words: key})
}

// An unplaced is a label that found no place on the drawing: the letter that
// stands for it there, if one does, the name of what it belongs to, and all of
// it in words.
type unplaced struct {
	priority         int
	key, name, words string
}

// listUnplaced writes the labels that found no place on the drawing: what the
// letters stand for, and then those that have none, tags first.
func (d *drawing) listUnplaced() {
	var keyed, lost []unplaced
	for _, u := range d.unplaced {
		if u.key != "" {
			keyed = append(keyed, u)
		} else {
			lost = append(lost, u)
		}
	}
	slices.SortStableFunc(lost, func(a, b unplaced) int { return cmp.Compare(b.priority, a.priority) })
	d.listWords("Letters on the drawing:", keyed)
	d.listWords("No room on the drawing for:", lost)
}

// listWords writes labels behind a title: in full, or if there is no room by
// their names, as many as there is room for.
func (d *drawing) listWords(title string, all []unplaced) {
	if len(all) == 0 {
		return
	}
	said := func(n int, word func(u *unplaced) string) string {
		var out []string
		for i := range all[:n] {
			out = append(out, word(&all[i]))
		}
		text := title + " " + strings.Join(out, "; ")
		if n < len(all) {
			text += fmt.Sprintf("; and %d more", len(all)-n)
		}
		return text + "."
	}
	full := func(u *unplaced) string { return strings.TrimSpace(u.key + " " + u.words) }
	short := func(u *unplaced) string { return strings.TrimSpace(u.key + " " + u.name) }
	room := d.foot() - d.next
	text := said(len(all), full)
	for n := len(all); n >= 0 && d.paragraphHeight(sheet.LetterSmall, text) > room; n-- {
		text = said(n, short)
	}
	if d.paragraphHeight(sheet.LetterSmall, text) <= room {
		d.paragraph(sheet.LetterSmall, text)
	}
}

// name is the name of what a label belongs to.
func (a *ask) name() string {
	if a.of != "" || len(a.block) == 0 {
		return a.listed()
	}
	return font.Block(a.block[:1])[0].Words
}
