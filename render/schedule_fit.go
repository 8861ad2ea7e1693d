package render

import (
	"math"
	"strings"

	"topplate/render/font"
	"topplate/render/sheet"
)

// fitColumns chooses the widths of the columns that are read from what is in
// them. If all cells fit on one line, they get that; else the widths make the
// sum of the squares of the cells' heights least, which keeps the tallest cell
// of each row low.
//
// A cell with a text of length W in a column of width w is about W/w lines of
// height h tall. The least sum of (W h / w)² at a given sum of widths has w in
// proportion to the cube root of the column's sum of (W h)², by Lagrange's
// multiplier. No column gets less than its widest word or more than its widest
// cell.
func fitColumns(columns []column, rows [][]string, width sheet.Paper) {
	room := width - columnGap*sheet.Paper(len(columns)-1)
	var read []int
	for i := range columns {
		if columns[i].kind == toRead {
			read = append(read, i)
		} else {
			room -= columns[i].width
		}
	}
	least, most, share := make([]sheet.Paper, len(read)), make([]sheet.Paper, len(read)), make([]float64, len(read))
	for k, i := range read {
		least[k], most[k], share[k] = needs(&columns[i], i, rows, room)
	}
	level := leveled(least, room)
	for k := range least {
		least[k] = min(least[k], level)
		most[k] = max(most[k], least[k])
	}
	for k, w := range shared(least, most, share, room) {
		columns[read[k]].width = w
		room -= w
	}
	widen(columns, max(room, 0))
}

// widen gives what is left over to the columns that are written in, or else to
// those of running text.
func widen(columns []column, over sheet.Paper) {
	var write, text []int
	for i := range columns {
		switch c := &columns[i]; {
		case c.kind == toFill:
			write = append(write, i)
		case c.kind == toRead && !c.whole:
			text = append(text, i)
		}
	}
	if write == nil {
		write = text
	}
	for _, i := range write {
		columns[i].width += over / sheet.Paper(len(write))
	}
}

// needs returns the widest word of a column and its widest line, and the cube
// root of the sum of the squares of its areas.
func needs(c *column, i int, rows [][]string, room sheet.Paper) (least, most sheet.Paper, share float64) {
	for word := range strings.FieldsSeq(c.head) {
		least = max(least, font.Width(letterHead, word))
	}
	most, least = font.Width(letterHead, c.head), min(least, room/3)
	sum := 0.0
	for _, row := range rows {
		area := 0.0
		for text := range strings.SplitSeq(row[i], "\n") {
			w := font.Width(c.lettering, text) + indentOf(row[i])
			most = max(most, w)
			area += float64(w) * float64(font.LineHeight(c.lettering))
			if c.whole {
				least = max(least, min(w, room/2))
				continue
			}
			for word := range strings.SplitSeq(font.Plain(text), " ") {
				least = max(least, min(font.Width(c.lettering, word)+indentOf(row[i]), room/3))
			}
		}
		sum += area * area
	}
	return max(least, narrowest), max(most, narrowest), math.Cbrt(sum)
}

// leveled is the height at which widths must be cut off to fit in the room
// together.
func leveled(widths []sheet.Paper, room sheet.Paper) sheet.Paper {
	return most(room, func(level sheet.Paper) bool {
		var sum sheet.Paper
		for _, w := range widths {
			sum += min(w, level)
		}
		return sum <= room
	})
}

// most is the largest number up to a limit for which a property holds that
// holds for all smaller ones, zero included.
func most(limit sheet.Paper, holds func(sheet.Paper) bool) sheet.Paper {
	lo, hi := sheet.Paper(0), max(limit, 0)
	for lo < hi {
		if mid := (lo + hi + 1) / 2; holds(mid) {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return lo
}

// shared divides the room in proportion to the shares, between bounds that fit
// in it.
func shared(least, upper []sheet.Paper, share []float64, room sheet.Paper) []sheet.Paper {
	at := func(k sheet.Paper) (widths []sheet.Paper, sum sheet.Paper) {
		for i := range share {
			w := max(least[i], min(upper[i], sheet.Paper(share[i]*float64(k)/float64(scaleOfShares))))
			widths = append(widths, w)
			sum += w
		}
		return widths, sum
	}
	k := most(scaleOfShares*1000, func(k sheet.Paper) bool {
		_, sum := at(k)
		return sum <= room
	})
	widths, _ := at(k)
	return widths
}

// scaleOfShares is the fineness at which shares are scaled.
const scaleOfShares = 1_000_000
