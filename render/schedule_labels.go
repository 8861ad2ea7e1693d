package render

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"topplate/render/font"
	"topplate/render/sheet"
	"topplate/route/tags"
	"topplate/route/work"
)

// labelKinds are what labels are put on, in the order of their boxes.
var labelKinds = []tags.Kind{tags.ClosetEnd, tags.PanelPort, tags.DropEnd, tags.PlatePort}

// labelListing lists the labels of many cables: a row for each drop, with a box
// for each label.
func labelListing(w *work.Work) *listing {
	l := &listing{id: "list-labels", title: "Labels", columns: []column{
		{head: "label", lettering: smallTag, whole: true},
		{head: "where", lettering: small},
		{head: "in the closet", lettering: small, whole: true},
	}, intro: []string{"The labels of a drop are in one row, with a box for each in the order of the cables."}}
	most := map[int]int{}
	p := portion{}
	for rest := w.Labels; len(rest) > 0; {
		n := 1
		for n < len(rest) && rest[n].Drop == rest[0].Drop {
			n++
		}
		row := labelRow(rest[:n])
		for i, k := range labelKinds {
			boxes := 0
			for j := range rest[:n] {
				if rest[j].Kind == k {
					boxes++
				}
			}
			row = append(row, strconv.Itoa(boxes))
			most[i] = max(most[i], boxes)
		}
		when := rest[0].Row()[slices.Index(tags.Columns(), "when")]
		p.rows = append(p.rows, append(row, when))
		rest = rest[n:]
	}
	for i, k := range labelKinds {
		width := max(eachPitch(small)*sheet.Paper(most[i]), font.Width(letterHead, k.String()))
		l.columns = append(l.columns, column{head: k.String(), lettering: small, kind: toCount, width: width})
	}
	l.columns = append(l.columns, column{head: "when", lettering: small, whole: true})
	l.portions = []portion{p}
	l.sayOnce([]string{"when"})
	if name, _, ok := strings.Cut(w.Labels[0].Where, ", port "); ok && !slices.ContainsFunc(p.rows, func(row []string) bool { return !strings.HasPrefix(row[2], name+", port ") }) {
		l.intro[0] += " Ports are in: " + name + "."
		l.columns[2].head = "port"
		for _, row := range p.rows {
			row[2] = strings.TrimPrefix(row[2], name+", port ")
		}
	}
	return l
}

// labelRow is the row of the labels of a drop.
func labelRow(labels []tags.Label) []string {
	first, last := &labels[0], &labels[len(labels)-1]
	row := []string{first.Text, first.Far, first.Where}
	if first.Cable != last.Cable {
		row[0] += " to " + last.Text
		row[1] = strings.TrimSuffix(row[1], fmt.Sprintf(", %d of %d", first.Cable, last.Cable))
		row[2] += fmt.Sprintf(" to %d", last.Port)
	}
	return row
}
