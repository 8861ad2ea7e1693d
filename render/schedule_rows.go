package render

import (
	"topplate/render/font"
	"topplate/render/sheet"
)

// add fills a run with a portion.
func (r *run) add(p *portion, columns []column, width, pad sheet.Paper) {
	if p.name != "" {
		r.lead = append(r.lead, bandStrip(p.name, p.aside, width))
		r.fresh = append(r.fresh, bandStrip(p.name, p.aside, width))
		r.again = append(r.again, bandStrip(p.name+", continued", p.aside, width))
	}
	for _, c := range p.carry {
		r.rows = append(r.rows, c.strips(width)...)
	}
	for _, words := range p.words {
		for i, line := range font.Wrap(sheet.LetterNote, glued(words), width-hanging) {
			r.rows = append(r.rows, indented(line, hanging*sheet.Paper(min(i, 1))))
		}
	}
	if len(r.rows) > 0 {
		r.rows = append(r.rows, gapStrip(sheet.MM/2))
	}
	for k, cells := range p.rows {
		w := newRow(p.lettered(columns), cells)
		w.pad = pad
		if k < len(p.each) && p.each[k] != nil {
			number := ""
			if p.numbers != nil {
				number = p.numbers[k]
			}
			w.tickEach(number, p.each[k])
		}
		if p.asides == nil {
			r.rows = append(r.rows, w.strip())
			continue
		}
		w.ruled = false
		aside := newRow([]column{{lettering: small, width: width}}, []string{glued(p.asides[k])})
		aside.pad = densePad
		r.rows = append(r.rows, over(w.strip(), aside.strip()))
	}
}

// over is a strip over another, which stay together on a page if they can.
func over(upper, lower strip) strip {
	return strip{
		height: upper.height + lower.height,
		draw: func(g *sheet.Group, at sheet.Point) {
			upper.draw(g, at)
			lower.draw(g, at.Add(sheet.Pt(0, upper.height)))
		},
		split: func(room sheet.Paper) (strip, strip) {
			if upper.height <= room {
				return upper, lower
			}
			first, rest := upper.split(room)
			return first, over(rest, lower)
		},
	}
}

// indented is a line of a paragraph.
func indented(words string, indent sheet.Paper) strip {
	s := wordStrip(sheet.LetterNote, words)
	return strip{height: s.height, draw: func(g *sheet.Group, at sheet.Point) { s.draw(g, at.Add(sheet.Pt(indent, 0))) }}
}
