package dimension

import (
	"topplate/render/font"
	"topplate/render/sheet"
)

// raise places the texts that are wider than their parts on leaders, outside
// the chain.
//
// Texts that could get in each other's way form a cluster and stand like the
// two flights of a stair: those of the left half end at their leaders, those of
// the right half start there, and the nearer to the middle, the further out. So
// no leader passes through a text, and texts in one row lie on different sides
// of the cluster. Clusters have no place along the chain in common.
func (d *drafter) raise(notes []note) {
	for _, c := range clusters(notes) {
		d.cluster(c.notes)
	}
}

// A cluster is notes next to each other and the stretch of the chain that
// their texts can take, on whichever side of their leaders they stand.
type cluster struct {
	notes  []note
	lo, hi sheet.Paper
}

// clusters parts the notes, which come in order along the chain.
func clusters(notes []note) []cluster {
	var done []cluster
	for i, n := range notes {
		c := cluster{notes[i : i+1], n.at - n.width - clear, n.at + n.width + clear}
		for len(done) > 0 && done[len(done)-1].hi > c.lo {
			last := done[len(done)-1]
			done = done[:len(done)-1]
			first := i + 1 - len(last.notes) - len(c.notes)
			c = cluster{notes[first : i+1], min(last.lo, c.lo), max(last.hi, c.hi)}
		}
		done = append(done, c)
	}
	return done
}

func (d *drafter) cluster(notes []note) {
	for i, n := range notes {
		row := min(i, len(notes)-1-i)
		middle := n.at
		switch mirrored := len(notes) - 1 - i; {
		case i < mirrored:
			middle -= n.width / 2
		case i > mirrored:
			middle += n.width / 2
		}
		near, baseline := d.row(row, n.words)
		d.line(sheet.PenLeader, n.at, d.chain.Line, n.at, near)
		d.text(n.words, middle, baseline)
	}
}

// row returns where the near edge of a text in a row outside the chain is, and
// its baseline. If outside is above the chain, row 0 clears the texts that
// stand on the line; else it clears the ends of the extension lines.
func (d *drafter) row(row int, words string) (near, baseline sheet.Paper) {
	rise, drop := font.Rise(lettering, words), font.Drop(lettering)
	pitch := font.Rise(lettering, accented) + drop + 2*clear
	if d.outward < 0 {
		near = d.chain.Line - 2*clear - pitch*sheet.Paper(row+1)
		return near, near - drop
	}
	near = d.chain.Line + overshoot + clear + pitch*sheet.Paper(row)
	return near, near + rise
}

// accented is as tall as any text.
const accented = "É"
