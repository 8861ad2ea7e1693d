package dxf

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"

	"topplate/plan/measure"
	"topplate/render/sheet"
)

// Options says what of a sheet is written, and how large.
type Options struct {
	// View is how the sheet shows a plane of the house.
	View sheet.View
	// Units of the drawing: inches or millimetres.
	Units measure.System
	// Omit names the classes of groups that are left out with all that is in
	// them, such as the border of the sheet.
	Omit []string
}

// maxReduction bounds the scale of a view. At this scale the largest sheet
// shows two thousand kilometres, and lengths stay far from overflowing.
const maxReduction = 100_000

// Write writes the sheet. It returns what Check says of the sheet, or that the
// view has no scale from 1:1 to 1:100 000, before anything is written, or the
// first error of w. It takes time in proportion to the items of the sheet, and
// within a clip, to their sides times those of the clip.
func Write(w io.Writer, s *sheet.Sheet, o Options) error {
	if err := s.Check(); err != nil {
		return err
	}
	if o.View.Scale.Den < 1 || o.View.Scale.Den > maxReduction {
		return fmt.Errorf("dxf: a scale of 1:%d cannot be written; 1:1 to 1:%d can", o.View.Scale.Den, maxReduction)
	}
	d := drawing{Options: o, layers: newLayers(), out: &tags{}}
	for _, g := range s.Groups {
		d.group(g, noClass, nil)
	}
	out := bufio.NewWriter(w) // keeps the first error and then writes no more
	out.WriteString(d.head())
	out.WriteString(d.out.String())
	var end tags
	end.add(0, "ENDSEC")
	end.add(0, "EOF")
	out.WriteString(end.String())
	if err := out.Flush(); err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	return nil
}

// tags are groups in the words of the format: a code and a value, a line each.
type tags struct{ strings.Builder }

func (t *tags) add(code int, value string) { fmt.Fprintf(t, "%3d\r\n%s\r\n", code, value) }

func (t *tags) whole(code, value int) { t.add(code, fmt.Sprintf("%6d", value)) }

// A drawing is a sheet that is being written.
type drawing struct {
	Options
	out    *tags // the entities so far
	layers *layers
	pens   []sheet.Pen // with dashes, that were used
	bounds sheet.Box   // of what was written, on paper
	drawn  bool
}

// head writes what goes before the entities, which tell what it is to have.
func (d *drawing) head() string {
	var t tags
	section := func(name string) {
		t.add(0, "SECTION")
		t.add(2, name)
	}
	section("HEADER")
	d.variables(&t)
	t.add(0, "ENDSEC")
	section("TABLES")
	d.lineTypes(&t)
	d.layerTable(&t)
	d.styles(&t)
	t.add(0, "ENDSEC")
	section("BLOCKS")
	t.add(0, "ENDSEC")
	section("ENTITIES")
	return t.String()
}

// Values of $INSUNITS.
const (
	unitInch = 1
	unitMM   = 4
)

// decimalUnits is the value of $LUNITS for decimal numbers.
const decimalUnits = 2

func (d *drawing) variables(t *tags) {
	variable := func(name string) { t.add(9, name) }
	whole := func(name string, value int) {
		variable(name)
		t.whole(70, value)
	}
	variable("$ACADVER")
	t.add(1, "AC1009")
	unit, metric := unitInch, 0
	if d.Units == measure.Metric {
		unit, metric = unitMM, 1
	}
	whole("$INSUNITS", unit)
	whole("$MEASUREMENT", metric)
	whole("$LUNITS", decimalUnits)
	whole("$LUPREC", 4)
	low, high := sheet.Pt(d.bounds.Min.X, d.bounds.Max.Y), sheet.Pt(d.bounds.Max.X, d.bounds.Min.Y)
	for _, v := range []struct {
		name string
		at   sheet.Point
	}{{"$EXTMIN", low}, {"$EXTMAX", high}} {
		variable(v.name)
		d.point(t, 0, v.at)
	}
	for _, v := range []struct {
		name string
		at   sheet.Point
	}{{"$LIMMIN", low}, {"$LIMMAX", high}} {
		variable(v.name)
		d.flatPoint(t, v.at)
	}
	variable("$LTSCALE")
	t.add(40, "1.0")
	variable("$TEXTSTYLE")
	t.add(7, textStyle)
}

// table writes the frame of a table around its entries.
func table(t *tags, name string, entries int, write func()) {
	t.add(0, "TABLE")
	t.add(2, name)
	t.whole(70, entries)
	write()
	t.add(0, "ENDTAB")
}

// continuous is the line type without dashes, which every drawing has.
const continuous = "CONTINUOUS"

func (d *drawing) lineTypes(t *tags) {
	slices.Sort(d.pens)
	pens := slices.Compact(d.pens)
	table(t, "LTYPE", 1+len(pens), func() {
		d.lineType(t, continuous, "solid line", nil)
		for _, p := range pens {
			s := p.Style()
			d.lineType(t, lineTypeName(p), escape(s.Meaning), s.Dashes())
		}
	})
}

func lineTypeName(p sheet.Pen) string { return strings.ToUpper(p.Style().Name) }

// lineType writes an entry of the table: strokes are positive, gaps negative.
func (d *drawing) lineType(t *tags, name, meaning string, dashes []sheet.Paper) {
	const alignA = 65 // the only alignment there is
	t.add(0, "LTYPE")
	t.add(2, name)
	t.whole(70, 0)
	t.add(3, meaning)
	t.whole(72, alignA)
	t.whole(73, len(dashes))
	total := sheet.Paper(0)
	for _, l := range dashes {
		total += l
	}
	t.add(40, d.length(total))
	for i, l := range dashes {
		if i%2 == 1 {
			l = -l
		}
		t.add(49, d.length(l))
	}
}

func (d *drawing) layerTable(t *tags) {
	table(t, "LAYER", 1+len(d.layers.order), func() {
		for _, name := range append([]string{layerZero}, d.layers.order...) {
			t.add(0, "LAYER")
			t.add(2, name)
			t.whole(70, 0)
			t.whole(62, indexBlack)
			t.add(6, continuous)
		}
	})
}

// textStyle is the one style of text. It has the font that every reader of the
// format has, since none can be embedded: words are wider or narrower than on
// the sheet, but start, are centred or end at the same place.
const textStyle = "STANDARD"

func (d *drawing) styles(t *tags) {
	table(t, "STYLE", 1, func() {
		t.add(0, "STYLE")
		t.add(2, textStyle)
		t.whole(70, 0)
		t.add(40, "0.0") // any height
		t.add(41, "1.0")
		t.add(50, "0.0")
		t.whole(71, 0)
		t.add(42, "1.0")
		t.add(3, "txt")
		t.add(4, "")
	})
}
