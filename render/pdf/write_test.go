package pdf_test

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"topplate/render/font"
	"topplate/render/pdf"
	"topplate/render/sheet"
)

// everything is a sheet with each kind of item, in each direction, some of
// them cut by a clip.
func everything() *sheet.Sheet {
	s := sheet.New("all", "Every kind of item", sheet.Format{Name: "small", Width: 60 * mm, Height: 45 * mm})
	s.Desc = "A sheet for a test."
	g := s.Group("things", "thing", "Things")
	g.Polygon(sheet.PenWall, sheet.Bx(5*mm, 5*mm, 20*mm, 10*mm).Corners(), sheet.Bx(6*mm, 6*mm, 18*mm, 8*mm).Corners())
	g.Line(sheet.PenCable, sheet.Pt(5*mm, 20*mm), sheet.Pt(25*mm, 20*mm))
	g.Polyline(sheet.PenDoor, sheet.Pt(5*mm, 22*mm), sheet.Pt(8*mm, 24_500), sheet.Pt(12*mm, 22*mm))
	g.Polyline(sheet.PenDoor)
	g.Circle(sheet.PenHole, sheet.Pt(30*mm, 10_500), 2*mm)
	g.Circle(sheet.PenSolid, sheet.Pt(36*mm, 10_500), 1500)
	g.Add(
		sheet.Arc{Pen: sheet.PenCable, Centre: sheet.Pt(40*mm, 20*mm), Radius: 5 * mm, Sweep: sheet.QuarterTurn},
		sheet.Arc{Pen: sheet.PenWall, Centre: sheet.Pt(52*mm, 20*mm), Radius: 5 * mm, Sweep: -sheet.FullTurn},
		sheet.Arc{Pen: sheet.PenWall, Centre: sheet.Pt(50*mm, 8*mm), Radius: 6 * mm, Start: 100 * sheet.Degree, Sweep: -130 * sheet.Degree, Pie: true},
		sheet.Arc{Pen: sheet.PenDoor, Centre: sheet.Pt(30*mm, 25*mm), Radius: 4 * mm, Start: -50 * sheet.Degree, Sweep: 300 * sheet.Degree},
	)
	clipped := g.Group("clipped", "", "")
	clipped.Clip = []sheet.Point{sheet.Pt(2*mm, 28*mm), sheet.Pt(14*mm, 30*mm), sheet.Pt(8*mm, 43*mm)}
	clipped.Polygon(sheet.PenSolid, sheet.Bx(0, 26*mm, 9*mm, 9*mm).Corners())
	clipped.Hatch(sheet.HatchMasonry, [][]sheet.Point{sheet.Bx(0, 26*mm, 20*mm, 18*mm).Corners()})
	clipped.Line(sheet.PenCable, sheet.Pt(0, 35*mm), sheet.Pt(20*mm, 35*mm))
	g.Line(sheet.PenCable, sheet.Pt(16*mm, 40*mm), sheet.Pt(58*mm, 40*mm))
	g.Line(sheet.PenCableHidden, sheet.Pt(16*mm, 43*mm), sheet.Pt(58*mm, 43*mm))
	g.Line(sheet.PenThick, sheet.Pt(18*mm, 36*mm), sheet.Pt(58*mm, 36*mm))
	g.Text(sheet.LetterTag, sheet.Pt(30*mm, 33*mm), sheet.Middle, `K1 & (K2) \ half`)
	g.Add(
		sheet.Text{Lettering: sheet.LetterRoom, At: sheet.Pt(38*mm, 36*mm), Align: sheet.Middle, Level: sheet.OnHalf, Halo: true, Words: "Halo"},
		sheet.Text{Lettering: sheet.LetterCode, At: sheet.Pt(55*mm, 26*mm), Align: sheet.End, Level: sheet.OnTop, Turn: sheet.QuarterTurn, Words: "12′\n6″"},
		sheet.Text{Lettering: sheet.LetterNote, At: sheet.Pt(20*mm, 30*mm), Turn: 30 * sheet.Degree, Words: "turned"},
	)
	g.Text(sheet.LetterNote, sheet.Pt(0, 0), sheet.Start, "\x00")
	return s
}

func TestSameSheetsSameBytes(t *testing.T) {
	first := written(t, "Set", append(samples(t), everything())...)
	for range 3 {
		if !bytes.Equal(first, written(t, "Set", append(samples(t), everything())...)) {
			t.Fatal("the same sheets give other bytes")
		}
	}
}

func TestRefusesWhatCannotBeDrawn(t *testing.T) {
	bad := everything()
	bad.Groups[0].Add(sheet.Line{Pen: 255})
	for name, sheets := range map[string][]*sheet.Sheet{
		"no sheet": nil, "nil": {nil}, "a pen that is not there": {everything(), bad},
	} {
		var b bytes.Buffer
		if err := pdf.Write(&b, "Set", sheets); err == nil || b.Len() != 0 {
			t.Errorf("%s: %d bytes are written, error %v", name, b.Len(), err)
		}
	}
}

// failing takes n bytes and then fails.
type failing struct{ n int }

var errFull = errors.New("no space left")

func (f *failing) Write(p []byte) (int, error) {
	if f.n -= len(p); f.n < 0 {
		return 0, errFull
	}
	return len(p), nil
}

func TestReportsWriteErrors(t *testing.T) {
	set := []*sheet.Sheet{everything()}
	size := len(written(t, "Set", set...))
	for _, n := range []int{0, 1, size - 1} {
		if err := pdf.Write(&failing{n}, "Set", set); !errors.Is(err, errFull) {
			t.Errorf("after %d bytes of %d: error %v, want %v", n, size, err, errFull)
		}
	}
	if err := pdf.Write(&failing{size}, "Set", set); err != nil {
		t.Errorf("all bytes written, error %v", err)
	}
}

// Words that would do harm if they stood anywhere but in a string.
var hostile = []string{
	`) /OpenAction << /S /JavaScript /JS (app.alert(1)) >> (`,
	`\) >> endobj 9 0 obj << /S /Launch /F (x) >> endobj`,
	"endstream endobj xref trailer startxref %%EOF",
	"\r) >>\n/AA << >>",
	`(((((((`, `\`, `\\\)`, `)))))`,
	"bad \xff\xfe\xc3 UTF-8",
	"\u202Egnp.exe \u2066 \uFFFE \U0010FFFF 部屋 \U0001F600",
	"\x00\x01\r\n\t\x1b",
	strings.Repeat("(\\", 3000),
	"",
}

// harm is what no document may have outside of its strings (ISO 32000-1:2008,
// 12.6 on actions). Strings are in UTF-16, so that words from a user never
// look like this, and streams are compressed.
var harm = []string{"/JavaScript", "/OpenAction", "/Launch", "/SubmitForm", "/GoToR", "/RichMedia", "/AcroForm", "/Annots", "/URI", "/AA "}

func TestHostileWords(t *testing.T) {
	for _, words := range hostile {
		s := everything()
		s.Title, s.Desc, s.Lang = words, words, words
		g := s.Group(sheet.ID("g", words), words, words)
		g.Desc = words
		g.Text(sheet.LetterTag, sheet.Pt(10*mm, 10*mm), sheet.Start, words)
		g.Add(sheet.Text{Lettering: sheet.LetterCode, Halo: true, Words: words})
		document := written(t, words, s)
		for _, h := range harm {
			if bytes.Contains(document, []byte(h)) {
				t.Errorf("%q puts %s into the document", words, h)
			}
		}
		// What poppler says of a broken file fails in run.
		info := run(t, document, "pdfinfo", "in")
		if want := font.Plain(words); want != "" && !strings.Contains(info, "Title:           "+want+"\n") {
			t.Errorf("the title is not %q: %s", want, info)
		}
		if !strings.Contains(info, "JavaScript:      no") || !strings.Contains(info, "Form:            none") {
			t.Errorf("%q became active: %s", words, info)
		}
	}
}

func TestAnySheetIsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := func() sheet.Point {
			c := rapid.Int64Range(-int64(sheet.MaxCoordinate), int64(sheet.MaxCoordinate))
			return sheet.Pt(sheet.Paper(c.Draw(t, "x")), sheet.Paper(c.Draw(t, "y")))
		}
		angle := func(name string) sheet.Angle { return sheet.Angle(rapid.Int32().Draw(t, name)) }
		s := sheet.New("s", rapid.String().Draw(t, "title"), sheet.A4)
		s.Lang = rapid.String().Draw(t, "lang")
		g := s.Group("", "", "")
		for range rapid.IntRange(0, 5).Draw(t, "items") {
			inner := g.Group("", "c", "")
			inner.Clip = []sheet.Point{point(), point(), point()}
			inner.Polygon(sheet.PenWall, []sheet.Point{point(), point()}, nil)
			inner.Add(sheet.Arc{Centre: point(), Radius: 5 * mm, Start: angle("start"), Sweep: angle("sweep"), Pie: rapid.Bool().Draw(t, "pie")})
			inner.Add(sheet.Text{At: point(), Turn: angle("turn"), Level: sheet.OnHalf, Halo: true, Words: rapid.String().Draw(t, "words")})
		}
		if err := pdf.Write(io.Discard, rapid.String().Draw(t, "set"), []*sheet.Sheet{s}); err != nil {
			t.Fatal(err)
		}
	})
}

func BenchmarkWrite(b *testing.B) {
	set := samples(b)
	for b.Loop() {
		if err := pdf.Write(io.Discard, "Set", set); err != nil {
			b.Fatal(err)
		}
	}
}
