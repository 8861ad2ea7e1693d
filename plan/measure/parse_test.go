package measure

import (
	"errors"
	"fmt"
	"math/big"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// Conversions are from NIST Handbook 44, Appendix C, section 4: 1 inch is
// 25.4 mm exactly, 1 foot is 0.3048 m exactly. 12 ft 6-1/2 in is then
// 3657.6 + 152.4 + 12.7 = 3822.7 mm.
func TestParse(t *testing.T) {
	tests := []struct {
		text string
		nm   Length
	}{
		{"12ft 6-1/2in", 3_822_700_000},
		{`12' 6 1/2"`, 3_822_700_000},
		{`12'-6 1/2"`, 3_822_700_000},
		{"12′-6 1/2″", 3_822_700_000},
		{"12′ 6½″", 3_822_700_000},
		{"12ft6-½in", 3_822_700_000},
		{"12 ft 6.5 in", 3_822_700_000},
		{"  12ft\t6 - 1/2in ", 3_822_700_000},
		{"12ft\u00a06-1/2in", 3_822_700_000},
		{"12ft", 3_657_600_000},
		{"12ft 0in", 3_657_600_000},
		{"12ft 1/2in", 3_670_300_000},
		{"12ft 11-63/64in", 3_962_003_125},
		{"12.5ft", 3_810_000_000},
		{"12.5'", 3_810_000_000},
		{"150in", 3_810_000_000},
		{"3.81m", 3_810_000_000},
		{"381cm", 3_810_000_000},
		{"3810mm", 3_810_000_000},
		{"3.810 m", 3_810_000_000},
		{"6-1/2in", 165_100_000},
		{`6-1/2"`, 165_100_000},
		{`6½"`, 165_100_000},
		{"6.5in", 165_100_000},
		{"1/2in", 12_700_000},
		{".5in", 12_700_000},
		{"½in", 12_700_000},
		{"¼in", 6_350_000},
		{"¾in", 19_050_000},
		{"⅛in", 3_175_000},
		{"⅜in", 9_525_000},
		{"⅝in", 15_875_000},
		{"⅞in", 22_225_000},
		{"0/2in", 0},
		{"1/64in", 396_875},
		{"1/10in", 2_540_000},
		{"5.5in", 139_700_000},
		{"0.00001in", 254},
		{"0.000001mm", 1},
		{"0.000000001m", 1},
		{"0.500000000000000in", 12_700_000},
		{"0in", 0},
		{"-0mm", 0},
		{"-12ft 6-1/2in", -3_822_700_000},
		{"−1/2in", -12_700_000},
		{"100000m", MaxParsed},
		{"-100000m", -MaxParsed},
	}
	for _, tt := range tests {
		got, err := Parse(tt.text)
		if err != nil || got != tt.nm {
			t.Errorf("Parse(%q) = %d nm, %v; want %d nm", tt.text, got, err, tt.nm)
		}
	}
}

// The § marks where the fault is; it is taken out before parsing.
func TestParseErrors(t *testing.T) {
	tests := []struct{ text, want string }{
		{"§", "found nothing"},
		{"  §", "found nothing"},
		{"-§", "found no number"},
		{"§NaN", `found "NaN" where a number should start`},
		{"§ft", `found "ft" where a number should start`},
		{"-§-6in", `found "-6in" where a number should start`},
		{"§+6in", `found "+6in" where a number should start`},
		{"12§", `found no unit after "12"`},
		{"12 §6in", `found no unit after "12"`},
		{"12ft 6§", `found no unit after "6"`},
		{"6§-in", `found no unit after "6"`},
		{"5.5§-1/2in", `found no unit after "5.5"`},
		{"12§feet", `found unit "feet"; write ft, as in 12ft`},
		{"12§Inches", `found unit "Inches"; write in`},
		{"12§FT", `found unit "FT"; write ft`},
		{"12§’", `found unit "’"; write '`},
		{"12§”", `found unit "”"; write "`},
		{"6§''", `found unit "''"; write "`},
		{"3§metres", `found unit "metres"; write m`},
		{"3§yd", `found unknown unit "yd"`},
		{"1§e3mm", `found unknown unit "e"`},
		{"5§,5in", `found unknown unit ","`},
		{"12ft §13in", `found "13in" after feet; inches after feet are less than 12`},
		{"12ft §12.0in", `found "12.0in" after feet; inches after feet are less than 12`},
		{"12ft §3cm", `found "3cm" after feet; only inches follow feet`},
		{"12ft §3ft", `found "3ft" after feet; only inches follow feet`},
		{"§12.5ft 6in", `found decimals in "12.5ft" and inches after it`},
		{"6in §12ft", `found "12ft" after the length`},
		{"3m §81cm", `found "81cm" after the length`},
		{"12ft §-", `found "-" after the length`},
		{"12in§²", `found "²" after the length`},
		{"§3/2in", `found "3/2", which is not less than one`},
		{"1-§2/2in", `found "2/2", which is not less than one`},
		{"1/§0in", `found "1/0", a fraction over zero`},
		{"1/§in", `found "1/" with nothing under the line`},
		{"6-1/§in", `found "1/" with nothing under the line`},
		{"§1/2ft", `found a fraction in "1/2ft"`},
		{"§3½m", `found a fraction in "3½m"`},
		{"5.§in", `found "5." with no digit after the point`},
		{".§in", `found "." with no digit after the point`},
		{"§1/3in", `found "1/3in", which is not a whole number of nanometres`},
		{"12ft §6-1/128in", `found "6-1/128in", which is not a whole number of nanometres`},
		{"§0.1234567in", `found "0.1234567in", which is not a whole number of nanometres`},
		{"§0.0000001mm", "which is not a whole number of nanometres"},
		{"§100001m", `found "100001m", which makes more than 100 km`},
		{"§100000.1m", `found "100000.1m", which makes more than 100 km`},
		{"§9999999999999999999mm", "found a number of 19 digits, more than the 15"},
		{"1/§9999999999999999999in", "found a number of 19 digits"},
		{"0.§00000000000000001in", "found a number of 17 digits"},
		{"§" + strings.Repeat("9", 100_000) + "in", "found a number of 100000 digits"},
		{"6in §" + strings.Repeat("é", 100_000), `found "` + strings.Repeat("é", 40) + `" after`},
		{"6in§\xff", `found "\xff" after the length`},
	}
	for _, tt := range tests {
		offset := strings.Index(tt.text, "§")
		text := strings.Replace(tt.text, "§", "", 1)
		got, err := Parse(text)
		var syntax *SyntaxError
		if !errors.As(err, &syntax) {
			t.Errorf("Parse(%.60q) = %v, %v; want a *SyntaxError", text, got, err)
			continue
		}
		if syntax.Text != text || syntax.Offset != offset || !strings.Contains(syntax.Msg, tt.want) {
			t.Errorf("Parse(%.60q): fault at byte %d, %q; want byte %d, %q", text, syntax.Offset, syntax.Msg, offset, tt.want)
		}
		if strings.Count(syntax.Msg, "write")+strings.Count(syntax.Msg, "as in")+strings.Count(syntax.Msg, "use") == 0 || len(err.Error()) > 500 {
			t.Errorf("Parse(%.60q): message has no example or is too long: %q", text, err)
		}
	}
}

func TestSyntaxErrorText(t *testing.T) {
	_, err := Parse("12")
	want := `length "12": found no unit after "12"; write a length such as 12ft 6-1/2in, 6-1/2in, 5.5in, 12.5ft, 3.81m, 381cm or 3810mm`
	if err.Error() != want {
		t.Errorf("got  %s\nwant %s", err, want)
	}
}

// Every length that the messages give as an example is one.
func TestExamplesParse(t *testing.T) {
	list := strings.TrimPrefix(strings.ReplaceAll(examples, " or ", ", "), "write a length such as ")
	for text := range strings.SplitSeq(list, ", ") {
		if _, err := Parse(text); err != nil {
			t.Error(err)
		}
	}
}

// Every spelling that is suggested is a unit, and none of the misspelt ones is.
func TestMisspeltUnits(t *testing.T) {
	known := map[string]bool{}
	for _, u := range units {
		known[u.sign] = true
	}
	for wrong, right := range misspelt {
		if known[wrong] || !known[right] || strings.ToLower(wrong) != wrong {
			t.Errorf("misspelt[%q] = %q", wrong, right)
		}
	}
}

// Text written from random parts has the value that exact rational arithmetic
// gives.
func TestParseAgainstRationals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		feet := rapid.Int64Range(0, 300).Draw(t, "feet")
		inches := rapid.Int64Range(0, 11).Draw(t, "inches")
		den := rapid.SampledFrom([]int64{2, 4, 5, 8, 10, 16, 25, 32, 64}).Draw(t, "den")
		num := rapid.Int64Range(0, den-1).Draw(t, "num")
		ft := rapid.SampledFrom([]string{"ft", "'", "′", " ft"}).Draw(t, "ft")
		in := rapid.SampledFrom([]string{"in", `"`, "″", " in"}).Draw(t, "in")
		join := rapid.SampledFrom([]string{" ", "-", " - "}).Draw(t, "join")
		dash := rapid.SampledFrom([]string{"-", " "}).Draw(t, "dash")
		text := fmt.Sprintf("%d%s%s%d%s%d/%d%s", feet, ft, join, inches, dash, num, den, in)

		want := big.NewRat(num, den)
		want.Add(want, big.NewRat(12*feet+inches, 1)).Mul(want, big.NewRat(25_400_000, 1))
		got, err := Parse(text)
		if err != nil || new(big.Rat).SetInt64(int64(got)).Cmp(want) != 0 {
			t.Fatalf("Parse(%q) = %d nm, %v; want %s nm", text, got, err, want.RatString())
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"12ft 6-1/2in", `12'-6½"`, "3.81m", "-1/64in", "0.000001mm", "", "1/0in", "′", "12ft -", "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l, err := Parse(s)
		var syntax *SyntaxError
		if errors.As(err, &syntax) {
			if syntax.Offset < 0 || syntax.Offset > len(s) || !utf8.ValidString(err.Error()) {
				t.Fatalf("Parse(%q): byte %d, %q", s, syntax.Offset, err)
			}
			return
		}
		if err != nil || l < -MaxParsed || l > MaxParsed {
			t.Fatalf("Parse(%q) = %d, %v", s, l, err)
		}
		if again, err := Parse(l.String()); err != nil || again != l {
			t.Fatalf("Parse(%q) = %d, but Parse(%q) = %d, %v", s, l, l.String(), again, err)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if l, err := Parse("12ft 6-1/2in"); err != nil || l == 0 {
			b.Fatal(l, err)
		}
	}
}
