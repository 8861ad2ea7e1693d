package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"topplate/render/sheet"
)

const mm = sheet.MM

func written(t testing.TB, s *sheet.Sheet, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, s, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// everything is a sheet with each kind of item.
func everything() *sheet.Sheet {
	s := sheet.New("all", "Every kind of item", sheet.Format{Name: "small", Width: 60 * mm, Height: 40 * mm})
	s.Desc = "A sheet for a test."
	g := s.Group(sheet.ID("wall", "W 1"), "wall", "Wall W 1")
	g.Desc = "Between kitchen & hall."
	g.Polygon(sheet.PenWall, sheet.Bx(5*mm, 5*mm, 20*mm, 10*mm).Corners(), sheet.Bx(6*mm, 6*mm, 18*mm, 8*mm).Corners())
	g.Line(sheet.PenCable, sheet.Pt(5*mm, 20*mm), sheet.Pt(25*mm, 20*mm))
	g.Polyline(sheet.PenDoor, sheet.Pt(5*mm, 22*mm), sheet.Pt(8*mm, 24_500))
	g.Polyline(sheet.PenDoor)
	g.Circle(sheet.PenHole, sheet.Pt(30*mm, 10_500), 2*mm)
	g.Add(
		sheet.Arc{Pen: sheet.PenSwing, Centre: sheet.Pt(40*mm, 20*mm), Radius: 5 * mm, Sweep: sheet.QuarterTurn},
		sheet.Arc{Pen: sheet.PenWall, Centre: sheet.Pt(50*mm, 20*mm), Radius: 5 * mm, Sweep: sheet.FullTurn},
	)
	clipped := g.Group("clipped", "", "")
	clipped.Clip = sheet.Bx(0, 30*mm, 10*mm, 10*mm).Corners()
	clipped.Hatch(sheet.HatchMasonry, [][]sheet.Point{sheet.Bx(0, 30*mm, 3*mm, 3*mm).Corners()})
	g.Text(sheet.LetterTag, sheet.Pt(30*mm, 30*mm), sheet.Middle, "K1 & <K2>")
	g.Add(sheet.Text{
		Lettering: sheet.LetterCode, At: sheet.Pt(40*mm, 30*mm), Align: sheet.End, Level: sheet.OnHalf,
		Turn: sheet.QuarterTurn, Halo: true, Words: "12′\n6″",
	})
	g.Text(sheet.LetterNote, sheet.Pt(0, 0), sheet.Start, "\x00")
	return s
}

// The whole file, so that a change of what is written is seen. UPDATE_GOLDEN=1
// writes it anew.
func TestGolden(t *testing.T) {
	got := written(t, everything(), Options{NoFonts: true})
	path := filepath.Join("testdata", "everything.svg")
	if os.Getenv("UPDATE_GOLDEN") != "" {
		if err := os.WriteFile(path, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("the file differs (-want +got)\n%s", diff)
	}
}

// An element is one that the decoder has seen.
type element struct {
	name  string
	attrs map[string]string
	text  string
}

// elements reads a file as strictly as can be and checks what all files
// promise: known elements only, no script, no link, ids that are their own.
func elements(t testing.TB, file string) []element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(file))
	var all []element
	var open []int
	ids := map[string]bool{}
	for {
		token, err := d.Token()
		if err == io.EOF {
			return all
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, file)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			checkElement(t, e, ids)
			open = append(open, len(all))
			all = append(all, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				all[open[len(open)-1]].text += string(token)
			}
		case xml.Comment, xml.Directive:
			t.Errorf("there is a comment or directive: %q", token)
		}
	}
}

var known = " svg title desc metadata style g path circle text clipPath "

var knownAttrs = " xmlns width height viewBox role aria-labelledby lang id class d clip-path x y cx cy r text-anchor transform "

func checkElement(t testing.TB, e element, ids map[string]bool) {
	t.Helper()
	if !strings.Contains(known, " "+e.name+" ") {
		t.Errorf("there is an element %s", e.name)
	}
	for name, value := range e.attrs {
		if !strings.Contains(knownAttrs, " "+name+" ") {
			t.Errorf("%s has an attribute %s=%q", e.name, name, value)
		}
	}
	if id := e.attrs["id"]; id != "" {
		if ids[id] {
			t.Errorf("the id %q is used twice", id)
		}
		ids[id] = true
	}
}

// The inputs that broke the library when it was tried, and others in their
// spirit. Each goes wherever words can come from a user.
var hostile = []string{
	`<script>alert(1)</script>`,
	`"><script>alert(1)</script>`,
	`' onload='alert(1)`,
	`" onload="alert(1)`,
	`data-id="a" onload="x"`,
	`fill:red"><script>x</script>`,
	`fill:url(data:x;a=b)`,
	`font-family:"DejaVu Sans"`,
	`]]>`,
	`<![CDATA[x]]>`,
	`<!-- x -->`,
	`--><svg onload=x>`,
	`<?xml version="1.0"?>`,
	`<!DOCTYPE svg [<!ENTITY a "b">]>&a;`,
	`&amp; &lt; &#x3c;script&#x3e; &a;`,
	`javascript:alert(1)`,
	`</text></g></svg><svg>`,
	`a=b`,
	"\x00\x01\x08\x0b\x1f\x7f",
	"bad \xff\xfe\xc3 UTF-8",
	"line\nbreak\rand\ttab",
	"\u202Egnp.exe \u2066 \uFFFE \uFFFF \U0010FFFF",
	`%s%n %[1]d`,
	strings.Repeat("<", 3000),
}

func TestHostileWords(t *testing.T) {
	for _, words := range hostile {
		s := sheet.New(sheet.ID("s", words[:min(20, len(words))]), words, sheet.A4)
		s.Desc, s.Lang = words, words
		g := s.Group(sheet.ID("g", words), words, words)
		g.Desc = words
		g.Text(sheet.LetterTag, sheet.Pt(10*mm, 10*mm), sheet.Start, words)
		g.Text(sheet.LetterCode, sheet.Pt(10*mm, 20*mm), sheet.Start, words)
		file := written(t, s, Options{})
		for _, e := range elements(t, file) {
			for name := range e.attrs {
				if strings.HasPrefix(name, "on") {
					t.Errorf("%q became the attribute %s", words, name)
				}
			}
		}
		if strings.Contains(strings.ToLower(file), "<script") {
			t.Errorf("%q became a script", words)
		}
	}
}

func FuzzWords(f *testing.F) {
	for _, words := range hostile {
		f.Add(words)
	}
	f.Fuzz(func(t *testing.T, words string) {
		s := sheet.New("s", words, sheet.A4)
		s.Lang = words
		s.Group(sheet.ID("g", words), words, words).Text(sheet.LetterTag, sheet.Pt(0, 0), sheet.Start, words)
		if n := len(elements(t, written(t, s, Options{NoFonts: true}))); n < 5 || n > 7 {
			t.Errorf("%q makes %d elements", words, n)
		}
	})
}

func TestAccessibleName(t *testing.T) {
	for _, c := range []struct{ desc, labels string }{{"", "all-title"}, {"What it shows.", "all-title all-desc"}} {
		s := everything()
		s.Desc = c.desc
		all := elements(t, written(t, s, Options{NoFonts: true}))
		root := all[0].attrs
		if root["role"] != "img" || root["aria-labelledby"] != c.labels || root["lang"] != "en" {
			t.Errorf("root is %v, want it labelled by %s", root, c.labels)
		}
		for i, id := range strings.Fields(c.labels) {
			if e := all[1+i]; e.attrs["id"] != id || e.text == "" {
				t.Errorf("element %d is %v, want %s", 1+i, e, id)
			}
		}
		if root["width"] != "60mm" || root["height"] != "40mm" || root["viewBox"] != "0 0 60 40" {
			t.Errorf("size is %v: one unit is not one millimetre", root)
		}
	}
}

// The names in the style sheet and the name of the embedded font are the same,
// and only faces that are used are embedded.
func TestFontsAreEmbedded(t *testing.T) {
	file := written(t, everything(), Options{})
	for _, want := range []string{
		"@font-face{font-family:PlanSans;font-weight:700;src:url(data:font/ttf;base64,",
		"@font-face{font-family:PlanMono;font-weight:400;src:url(data:font/ttf;base64,",
		"font-family:PlanSans, Go, 'DejaVu Sans', sans-serif;", "Bigelow",
	} {
		if !strings.Contains(file, want) {
			t.Errorf("no %q in the file", want)
		}
	}
	if strings.Contains(file, "@font-face{font-family:PlanSans;font-weight:400") {
		t.Error("a face without a character is embedded")
	}
	if strings.Contains(written(t, everything(), Options{NoFonts: true}), "base64") {
		t.Error("a font is embedded though none is wanted")
	}
}

func TestSameSheetSameBytes(t *testing.T) {
	first := written(t, everything(), Options{})
	for range 5 {
		if written(t, everything(), Options{}) != first {
			t.Fatal("the same sheet gives other bytes")
		}
	}
}

func TestOneElementToALine(t *testing.T) {
	for i, line := range strings.Split(written(t, everything(), Options{NoFonts: true}), "\n") {
		if n := strings.Count(line, "<") - strings.Count(line, "</"); n > 1 {
			t.Errorf("line %d has %d elements: %s", i+1, n, line)
		}
		if strings.Contains(line, "NaN") || strings.Contains(line, "Inf") || strings.Contains(line, "-0 ") || strings.Contains(line, `"-0"`) {
			t.Errorf("line %d has a number that is none: %s", i+1, line)
		}
	}
}

func TestRefusesWhatCannotBeDrawn(t *testing.T) {
	s := everything()
	s.Groups[0].Add(sheet.Line{Pen: 255})
	var b bytes.Buffer
	if err := Write(&b, s, Options{}); err == nil || b.Len() != 0 {
		t.Errorf("%d bytes are written, error %v", b.Len(), err)
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
	size := len(written(t, everything(), Options{}))
	for _, n := range []int{0, 1, size / 2, size - 1} {
		if err := Write(&failing{n}, everything(), Options{}); !errors.Is(err, errFull) {
			t.Errorf("after %d bytes of %d: error %v, want %v", n, size, err, errFull)
		}
	}
	if err := Write(&failing{size}, everything(), Options{}); err != nil {
		t.Errorf("all bytes written, error %v", err)
	}
}

func TestAnySheetIsWellFormed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := func() sheet.Point {
			c := rapid.Int64Range(-int64(sheet.MaxCoordinate), int64(sheet.MaxCoordinate))
			return sheet.Pt(sheet.Paper(c.Draw(t, "x")), sheet.Paper(c.Draw(t, "y")))
		}
		s := sheet.New("s", rapid.String().Draw(t, "title"), sheet.A4)
		g := s.Group("", "", "")
		for i := range rapid.IntRange(0, 9).Draw(t, "items") {
			inner := g.Group(sheet.ID("g", fmt.Sprint(i)), "c", rapid.String().Draw(t, "group"))
			inner.Polygon(sheet.PenWall, []sheet.Point{point(), point(), point()})
			inner.Add(sheet.Arc{Centre: point(), Radius: 5 * mm, Start: sheet.Angle(rapid.Int32().Draw(t, "start")), Sweep: sheet.Angle(rapid.Int32().Draw(t, "sweep"))})
			inner.Add(sheet.Text{At: point(), Turn: sheet.Angle(rapid.Int32().Draw(t, "turn")), Level: sheet.OnHalf, Words: rapid.String().Draw(t, "words")})
		}
		var b bytes.Buffer
		if err := Write(&b, s, Options{NoFonts: true}); err != nil {
			t.Fatal(err)
		}
		d := xml.NewDecoder(&b)
		for {
			if _, err := d.Token(); err == io.EOF {
				return
			} else if err != nil {
				t.Fatal(err)
			}
		}
	})
}

// A renderer draws the sheet at its size: 60 by 40 mm at 254 dots to the inch,
// which is 10 to the millimetre, are 600 by 400 dots.
func TestRendererAgreesOnTheSize(t *testing.T) {
	rsvg, err := exec.LookPath("rsvg-convert")
	switch {
	case err == nil:
	case os.Getenv("TOPPLATE_REQUIRE") != "":
		t.Fatal("no rsvg-convert, and TOPPLATE_REQUIRE is set")
	default:
		t.Skip("no rsvg-convert: the file is not rendered")
	}
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in.svg"), filepath.Join(dir, "out.png")
	if err := os.WriteFile(in, []byte(written(t, everything(), Options{})), 0o666); err != nil {
		t.Fatal(err)
	}
	if text, err := exec.Command(rsvg, "-d", "254", "-p", "254", in, "-o", out).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, text)
	}
	checkPicture(t, out)
}

func BenchmarkWrite(b *testing.B) {
	s := everything()
	for range 1000 {
		s.Groups[0].Line(sheet.PenCable, sheet.Pt(5*mm, 20*mm), sheet.Pt(25_123, 20_456))
	}
	for b.Loop() {
		if err := Write(io.Discard, s, Options{NoFonts: true}); err != nil {
			b.Fatal(err)
		}
	}
}
