package measure

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestFormat(t *testing.T) {
	inches := func(n, num, den Length) Length { return n*Inch + num*Inch/den }
	tests := []struct {
		l                                            Length
		imperial, metric, imperialSheet, metricSheet string
	}{
		{0, "0in", "0 mm", "0″", "0"},
		{12*Foot + inches(6, 1, 2), "12ft 6-1/2in", "3.823 m", "12′-6 1/2″", "3823"},
		{12 * Foot, "12ft", "3.658 m", "12′-0″", "3658"},
		{12*Foot + inches(0, 1, 2), "12ft 1/2in", "3.670 m", "12′-0 1/2″", "3670"},
		{inches(6, 1, 2), "6-1/2in", "165 mm", "6 1/2″", "165"},
		{inches(0, 3, 4), "3/4in", "19 mm", "3/4″", "19"},
		{inches(11, 31, 32), "1ft", "304 mm", "1′-0″", "304"}, // half a mark goes up
		{inches(0, 1, 32), "1/16in", "1 mm", "1/16″", "1"},
		{inches(0, 1, 32) - 1, "0in", "1 mm", "0″", "1"},
		{381 * Millimetre, "1ft 3in", "381 mm", "1′-3″", "381"},
		{999*Millimetre + 500*Micrometre - 1, "3ft 3-3/8in", "999 mm", "3′-3 3/8″", "999"},
		{999*Millimetre + 500*Micrometre, "3ft 3-3/8in", "1.000 m", "3′-3 3/8″", "1000"},
		{3810 * Millimetre, "12ft 6in", "3.810 m", "12′-6″", "3810"},
		{-inches(6, 1, 2), "-6-1/2in", "-165 mm", "-6 1/2″", "-165"},
		{-1, "0in", "0 mm", "0″", "0"},
		{math.MinInt64, "-30260406945ft 3/4in", "-9223372036.855 m", "-30260406945′-0 3/4″", "-9223372036855"},
	}
	for _, tt := range tests {
		got := [4]string{Imperial.Format(tt.l), Metric.Format(tt.l), Imperial.FormatSheet(tt.l), Metric.FormatSheet(tt.l)}
		want := [4]string{tt.imperial, tt.metric, tt.imperialSheet, tt.metricSheet}
		if got != want {
			t.Errorf("length %d nm:\n got %q\nwant %q", int64(tt.l), got, want)
		}
	}
}

// NIST Handbook 44, Appendix C, section 4: 1 square foot is 0.092 903 04 m²
// exactly.
func TestFormatArea(t *testing.T) {
	tests := []struct {
		squareMetres     float64
		imperial, metric string
	}{
		{0, "0 sq ft", "0.0 m²"},
		{9.290304, "100 sq ft", "9.3 m²"},
		{13.2, "142 sq ft", "13.2 m²"},
	}
	for _, tt := range tests {
		if got := Imperial.FormatArea(tt.squareMetres); got != tt.imperial {
			t.Errorf("Imperial.FormatArea(%v) = %q, want %q", tt.squareMetres, got, tt.imperial)
		}
		if got := Metric.FormatArea(tt.squareMetres); got != tt.metric {
			t.Errorf("Metric.FormatArea(%v) = %q, want %q", tt.squareMetres, got, tt.metric)
		}
	}
}

// What is printed reads back to within half a mark of the tape.
func TestFormatReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Range(-int64(Metre)*1000, int64(Metre)*1000).Draw(t, "l"))
		for _, c := range []struct {
			text string
			mark Length
		}{
			{Imperial.Format(l), Graduation},
			{Imperial.FormatSheet(l), Graduation},
			{Metric.Format(l), Millimetre},
			{Metric.FormatSheet(l) + "mm", Millimetre},
		} {
			got, err := Parse(c.text)
			if err != nil || got%c.mark != 0 || (got-l).magnitude() > uint64(c.mark)/2 {
				t.Fatalf("%d nm is written %q, which reads as %d nm, %v", l, c.text, got, err)
			}
		}
	})
}
