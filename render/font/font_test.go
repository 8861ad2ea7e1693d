package font

import (
	"bytes"
	"math"
	"sync"
	"testing"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"pgregory.net/rapid"

	"topplate/render/sheet"
)

// The signs that a sheet needs, all of which the fonts have.
const signs = "′″½¼¾⅛⅜⅝⅞×°²–—…≥≤±µ·•→←↑↓Ω√◊"

func TestFontsHaveWhatSheetsNeed(t *testing.T) {
	for _, f := range sheet.Faces() {
		for _, r := range signs + string(Substitute) + " \u00A0éüßÅñçŵŽłğ" {
			if !Has(f, r) {
				t.Errorf("%s has no %c %U", Family(f), r, r)
			}
		}
		for r := ' '; r <= '~'; r++ {
			if !Has(f, r) {
				t.Errorf("%s has no %c", Family(f), r)
			}
		}
		// What they lack; if this fails, the texts of sheets may use it.
		for _, r := range "⌀∅①⅓⅔△▽" {
			if Has(f, r) {
				t.Errorf("%s has %c %U, which was thought to be missing", Family(f), r, r)
			}
		}
	}
}

// The vertical measures against the fonts' own tables and outlines.
func TestVerticalMeasures(t *testing.T) {
	for _, f := range sheet.Faces() {
		parsed, err := sfnt.Parse(TTF(f))
		if err != nil {
			t.Fatal(err)
		}
		if got := parsed.UnitsPerEm(); got != unitsPerEm {
			t.Errorf("%s has %d units in its size, want %d", Family(f), got, unitsPerEm)
		}
		m, err := parsed.Metrics(new(sfnt.Buffer), unitsPerEm, font.HintingNone)
		if err != nil || m.CapHeight != fixed.Int26_6(capHeight) {
			t.Errorf("%s has capitals of %d, %v; want %d", Family(f), m.CapHeight, err, capHeight)
		}
		for r := '!'; r <= '~'; r++ {
			index, _ := parsed.GlyphIndex(new(sfnt.Buffer), r)
			b, _, err := parsed.GlyphBounds(new(sfnt.Buffer), index, unitsPerEm, font.HintingNone)
			tall := -b.Min.Y > letterTop && r != '$' // Rise looks at each character
			if err != nil || tall || b.Max.Y > letterBottom {
				t.Errorf("%s: %c reaches from %d to %d, %v", Family(f), r, -b.Max.Y, -b.Min.Y, err)
			}
		}
	}
}

// The widths against those that the PDF library reads from the same fonts, with
// a parser of its own; it rounds each to a thousandth of the size.
func TestWidthAgainstPDF(t *testing.T) {
	pdf := fpdf.New("P", "mm", "A4", "")
	for _, c := range []struct {
		l     sheet.Lettering
		style string
	}{{sheet.LetterNote, ""}, {sheet.LetterTag, "B"}, {sheet.LetterCode, "I"}} {
		pdf.AddUTF8FontFromBytes("go", c.style, TTF(c.l.Style().Face))
		pdf.SetFont("go", c.style, 10)
		pdf.SetFontUnitSize(float64(Size(c.l)) / float64(sheet.MM))
		for _, words := range []string{"H", "i", "AVATAR To Ty Va", "12′-6 1/2″ ½", "fi fl ffi", "Ω café ≤ 3"} {
			want := pdf.GetStringWidth(words) * float64(sheet.MM)
			slack := float64(len(words))*float64(Size(c.l))/2000 + 1
			if got := float64(Width(c.l, words)); math.Abs(got-want) > slack {
				t.Errorf("%q in %s is %.0f wide, want %.0f", words, c.l.Style().Name, got, want)
			}
		}
	}
}

func TestSize(t *testing.T) {
	if got := Size(sheet.LetterNote); got != 3459 {
		t.Errorf("capitals of 2.5 mm need a size of %d µm, want 2500·2048/1480 = 3459", got)
	}
}

// Sums of widths are right because nothing in the fonts moves characters
// together, and the characters of the mono face are all alike.
func TestNothingMovesCharactersTogether(t *testing.T) {
	if a, b := Width(sheet.LetterCode, "iiii"), Width(sheet.LetterCode, "WWWW"); a != b {
		t.Errorf("in the mono face iiii is %d and WWWW %d", a, b)
	}
	for _, f := range sheet.Faces() {
		for _, table := range []string{"kern", "GPOS", "GSUB"} {
			if bytes.Contains(TTF(f)[:300], []byte(table)) {
				t.Errorf("%s has a table %s: widths are no longer sums", Family(f), table)
			}
		}
	}
}

func TestWidthIsThatOfWhatIsDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "s")
		clean := Clean(sheet.Regular, s)
		if again := Clean(sheet.Regular, clean); again != clean {
			t.Fatalf("cleaning %q twice gives %q", clean, again)
		}
		if a, b := Width(sheet.LetterNote, s), Width(sheet.LetterNote, clean); a != b {
			t.Fatalf("%q is %d wide, cleaned %d", s, a, b)
		}
		for _, r := range clean {
			if !Has(sheet.Regular, r) || r < ' ' {
				t.Fatalf("%q has %U in it", clean, r)
			}
		}
	})
}

func TestClean(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"plain", "12′-6 1/2″", "12′-6 1/2″"},
		{"newline", "a\r\nb\tc", "a b c"},
		{"outer space", "  a  b ", "a b"},
		{"no-break space", "6\u00A01/2", "6\u00A01/2"},
		{"control characters", "a\x00\x1b[31mb\x7f", "a[31mb"},
		{"direction of writing", "a\u202Eb\u2066c\u200Fd", "abcd"},
		{"zero width", "a\u200Bb\uFEFFc\u00ADd", "abcd"},
		{"not in the fonts", "部屋", "□□"},
		{"emoji with a selector", "☠\uFE0Fx", "□x"},
		{"replacement character", "a\uFFFDb", "a□b"},
		{"bad UTF-8", "a\xff\xc3b", "ab"},
		{"line and paragraph separators", "a\u2028b\u2029c", "a b c"},
		{"private use", "a\uE000b", "ab"},
		{"combining mark", "e\u0301", "e□"},
		{"nothing", "\n\t", ""},
	} {
		want := c.want
		if c.name == "replacement character" && Has(sheet.Regular, '\uFFFD') {
			want = c.in
		}
		if got := Clean(sheet.Regular, c.in); got != want {
			t.Errorf("%s: %q gives %q, want %q", c.name, c.in, got, want)
		}
	}
}

func TestFit(t *testing.T) {
	l := sheet.LetterNote
	long := "Kitchen and dining"
	for _, c := range []struct {
		width sheet.Paper
		want  string
	}{
		{Width(l, long), long},
		{Width(l, "Kitchen an…"), "Kitchen an…"},
		{Width(l, "Kitchen an…") - 1, "Kitchen a…"},
		{Width(l, "Kitchen …"), "Kitchen…"},
		{Width(l, "…"), "…"},
		{Width(l, "…") - 1, ""},
		{0, ""},
		{-5, ""},
	} {
		if got := Fit(l, long, c.width); got != c.want {
			t.Errorf("in %d µm: %q, want %q", c.width, got, c.want)
		}
	}
	if got := Fit(l, "", -5); got != "" {
		t.Errorf("nothing fits as %q", got)
	}
}

func TestWrap(t *testing.T) {
	l := sheet.LetterNote
	for _, c := range []struct {
		words string
		width sheet.Paper
		want  []string
	}{
		{"", 9999, nil},
		{"one two three", Width(l, "one two"), []string{"one two", "three"}},
		{"one two three", Width(l, "one two") - 1, []string{"one", "two", "three"}},
		{"aaaa b", Width(l, "aa"), []string{"aa", "aa", "b"}},
		{"x aaaa", Width(l, "aaa"), []string{"x", "aaa", "a"}},
		{"éa", 1, []string{"é", "a"}},
		{"a\nb", 0, []string{"a", "b"}},
		{"at 3\u00A0m", Width(l, "at 3"), []string{"at", "3\u00A0m"}},
	} {
		got := Wrap(l, c.words, c.width)
		if len(got) != len(c.want) {
			t.Errorf("%q in %d: %q, want %q", c.words, c.width, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%q in %d: %q, want %q", c.words, c.width, got, c.want)
			}
		}
	}
}

func TestWrapKeepsAllWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOf(rapid.RuneFrom([]rune("ab cd é部"))).Draw(t, "s")
		width := sheet.Paper(rapid.IntRange(0, 30_000).Draw(t, "width"))
		var kept []rune
		for _, line := range Wrap(sheet.LetterNote, s, width) {
			if n := len([]rune(line)); n > 1 && Width(sheet.LetterNote, line) > width {
				t.Fatalf("line %q is wider than %d", line, width)
			}
			kept = append(kept, withoutSpace(line)...)
		}
		if string(kept) != string(withoutSpace(Clean(sheet.Regular, s))) {
			t.Fatalf("%q became %q", s, string(kept))
		}
	})
}

func withoutSpace(s string) []rune {
	var out []rune
	for _, r := range s {
		if r != ' ' {
			out = append(out, r)
		}
	}
	return out
}

// The metrics are shared by all goroutines.
func TestConcurrentUse(t *testing.T) {
	var wg sync.WaitGroup
	for i := range 8 {
		wg.Go(func() {
			for r := rune(0x100 * i); r < rune(0x100*i+0x200); r++ {
				Width(sheet.LetterTag, string(r))
			}
		})
	}
	wg.Wait()
}

func BenchmarkWidth(b *testing.B) {
	for b.Loop() {
		if Width(sheet.LetterDimension, "12′-6 1/2″") == 0 {
			b.Fatal("no width")
		}
	}
}
