package measure

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// NIST Handbook 44, Appendix C, section 4 (exact values): 1 inch 2.54 cm,
// 1 foot 0.3048 m.
func TestUnits(t *testing.T) {
	if got := 10 * Inch; got != 254*Millimetre {
		t.Errorf("10 in = %d nm, want 254 mm", got)
	}
	if got := 10_000 * Foot; got != 3048*Metre {
		t.Errorf("10000 ft = %d nm, want 3048 m", got)
	}
	if got := (3*Foot + 6*Inch).Millimetres(); got != 1066.8 {
		t.Errorf("3ft 6in = %v mm, want 1066.8", got)
	}
	if got := (-100 * Foot).Metres(); got != -30.48 {
		t.Errorf("-100ft = %v m, want -30.48", got)
	}
}

func TestString(t *testing.T) {
	tests := []struct {
		l    Length
		want string
	}{
		{0, "0in"},
		{Foot, "1ft"},
		{12*Foot + 6*Inch + 32*SixtyFourth, "12ft 6-1/2in"},
		{12*Foot + SixtyFourth, "12ft 1/64in"},
		{6 * Inch, "6in"},
		{48 * SixtyFourth, "3/4in"},
		{-(Foot + 63*SixtyFourth), "-1ft 63/64in"},
		{127 * Millimetre, "5in"},
		{128 * Millimetre, "128mm"},
		{3810*Millimetre + 1, "3810.000001mm"},
		{100 * Micrometre, "0.1mm"},
		{-1, "-0.000001mm"},
		{math.MaxInt64, "9223372036854.775807mm"},
		{math.MinInt64, "-9223372036854.775808mm"},
	}
	for _, tt := range tests {
		if got := tt.l.String(); got != tt.want {
			t.Errorf("Length(%d).String() = %q, want %q", int64(tt.l), got, tt.want)
		}
	}
}

// Lengths that are drawn from both tapes and from none come back unchanged.
func TestStringReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]Length{1, Micrometre, Millimetre, SixtyFourth, Inch / 16, Inch, Foot}).Draw(t, "unit")
		n := rapid.Int64Range(-int64(MaxParsed/unit), int64(MaxParsed/unit)).Draw(t, "n")
		l := Length(n) * unit
		if got, err := Parse(l.String()); err != nil || got != l {
			t.Fatalf("Parse(%q) = %d, %v; want %d", l.String(), got, err, l)
		}
	})
}

func TestRoundUp(t *testing.T) {
	tests := []struct{ l, step, want Length }{
		{0, Foot, 0},
		{1, Foot, Foot},
		{Foot, Foot, Foot},
		{Foot + 1, Foot, 2 * Foot},
		{-1, Foot, 0},
		{-Foot, Foot, -Foot},
		{-Foot - 1, Foot, -Foot},
		{7, 0, 7},
		{7, -5, 7},
	}
	for _, tt := range tests {
		if got := RoundUp(tt.l, tt.step); got != tt.want {
			t.Errorf("RoundUp(%d, %d) = %d, want %d", tt.l, tt.step, got, tt.want)
		}
	}
}

func TestRange(t *testing.T) {
	r := Range{Min: 4 * Inch, Max: 2 * Foot}
	for l, want := range map[Length]bool{4*Inch - 1: false, 4 * Inch: true, 2 * Foot: true, 2*Foot + 1: false} {
		if r.Contains(l) != want {
			t.Errorf("(%v).Contains(%v) = %v", r, l, !want)
		}
	}
	if got := r.String(); got != "4in to 2ft" {
		t.Errorf("String() = %q", got)
	}
}
