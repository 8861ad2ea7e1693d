package survey

import (
	"slices"
	"strings"
	"testing"

	"topplate/plan/measure"

	"github.com/google/go-cmp/cmp"
)

// dms is an angle in degrees, minutes and seconds.
func dms(d, m, s Bearing) Bearing { return d*Degree + m*minute + s }

func TestParseRun(t *testing.T) {
	ft, in := measure.Foot, measure.Inch
	tests := []struct {
		text string
		want []Leg
	}{
		{"E 12ft 6in, N 8ft", []Leg{{East, 12*ft + 6*in, 0}, {North, 8 * ft, 12}}},
		{"\n  W 3.2m,\n  S 8' 6-1/2\"\n", []Leg{{West, 3200 * measure.Millimetre, 3}, {South, 8*ft + 6*in + in/2, 13}}},
		{"E12ft,N8ft", []Leg{{East, 12 * ft, 0}, {North, 8 * ft, 6}}},
		{"N 45° E 12ft", []Leg{{dms(45, 0, 0), 12 * ft, 0}}},
		{"N45dE12ft", []Leg{{dms(45, 0, 0), 12 * ft, 0}}},
		{"S 45° E 1ft", []Leg{{dms(135, 0, 0), ft, 0}}},
		{"S 45° W 1ft", []Leg{{dms(225, 0, 0), ft, 0}}},
		{"N 45° W 1ft", []Leg{{dms(315, 0, 0), ft, 0}}},
		{`S 68°05'35" W 472.68ft`, []Leg{{dms(248, 5, 35), 47_268 * ft / 100, 0}}},
		{"S 68d 5′ 35″ W 1ft", []Leg{{dms(248, 5, 35), ft, 0}}},
		{`N 0°0'1" W 1ft`, []Leg{{dms(359, 59, 59), ft, 0}}},
		{`N 1°30" E 1ft`, []Leg{{dms(1, 0, 30), ft, 0}}},
		{"N 0° E 1ft, N 90° E 1ft", []Leg{{North, ft, 0}, {East, ft, 13}}},
		{"N 0° W 1ft, S 0° W 1ft", []Leg{{North, ft, 0}, {South, ft, 13}}},
		{"N 90° W 1ft", []Leg{{West, ft, 0}}},
	}
	for _, tt := range tests {
		got, faults := ParseRun(tt.text, measure.Imperial)
		if len(faults) != 0 {
			t.Errorf("ParseRun(%q): %v", tt.text, faults)
		}
		if diff := cmp.Diff(tt.want, got); diff != "" {
			t.Errorf("ParseRun(%q) (-want +got)\n%s", tt.text, diff)
		}
	}
}

// Each § marks a fault; they are taken out before parsing.
func TestParseRunFaults(t *testing.T) {
	tests := []struct {
		text string
		want []string
	}{
		{"§", []string{"found nothing"}},
		{" \n§", []string{"found nothing"}},
		{"E 12ft,§", []string{"found no leg before or after a comma"}},
		{"§, E 12ft", []string{"found no leg before or after a comma"}},
		{"E 12ft, §, N 8ft", []string{"found no leg before or after a comma"}},
		{"§12ft", []string{`found "12ft" where a bearing N, E, S or W should start`}},
		{"§e 12ft", []string{`found bearing "e"; write E, as in E 12ft`}},
		{"§North 12ft", []string{`found bearing "North"; write N, as in N 12ft`}},
		{"§sw 12ft", []string{`found bearing "sw"; write S 45° W, as in S 45° W 12ft`}},
		{"§up 12ft", []string{`found "up 12ft" where a bearing`}},
		{"E§", []string{"found no length after the bearing"}},
		{"E 12§", []string{`found no unit after "12"`}},
		{"E 12ft §13in", []string{`found "13in" after feet`}},
		{"E §-12ft", []string{`found "-12ft"; the length of a leg is above zero`}},
		{"E §0ft", []string{"the length of a leg is above zero"}},
		{"E 12ft §N 8ft", []string{`found "N 8ft" after the length; set legs off by commas`}},
		{"E 12ft\n§W 8ft", []string{`found "W 8ft" after the length; set legs off by commas`}},
		{"N §45 E 12ft", []string{`found "45 E 12ft" where a length or an angle should start`}},
		{"N §45.5° E 12ft", []string{`found "45.5° E 12ft" where a length or an angle should start`}},
		{"E §45° N 12ft", []string{`found "45° N 12ft" where a length or an angle should start`}},
		{"N 45° §12ft", []string{`found "12ft" where E or W should follow the angle`}},
		{"N 45°§", []string{"found nothing where E or W should follow the angle"}},
		{"N 45° §30 E 12ft", []string{`found "30 E 12ft" where E or W should follow`}},
		{"N 45° §S 12ft", []string{`found "S 12ft" where E or W should follow`}},
		{"N §91° E 12ft", []string{`found "91" in an angle, more than 90`}},
		{"N §90°0'1\" E 12ft", []string{"found an angle of more than 90°"}},
		{"N 45°§60' E 12ft", []string{`found "60" in an angle, more than 59`}},
		{"N 45°30'§60\" E 12ft", []string{`found "60" in an angle, more than 59`}},
		{"N §" + strings.Repeat("9", 1000) + "° E 12ft", []string{strings.Repeat("9", 40) + `" in an angle`}},
		{"§X 1ft, E 2ft, N §45 W 1ft,§", []string{`found "X 1ft"`, `found "45 W 1ft"`, "found no leg"}},
		{"E 1ft, §\xff", []string{`found "\xff" where a bearing`}},
		{"§" + strings.Repeat("E 1ft,", MaxLegs) + "E 1ft", []string{"found 10001 legs, more than the 10000"}},
	}
	for _, tt := range tests {
		var offsets []int
		text := tt.text
		for at := strings.Index(text, "§"); at >= 0; at = strings.Index(text, "§") {
			offsets = append(offsets, at)
			text = text[:at] + text[at+len("§"):]
		}
		legs, faults := ParseRun(text, measure.Imperial)
		if legs != nil || len(faults) != len(tt.want) {
			t.Errorf("ParseRun(%.60q) = %d legs, %v", text, len(legs), faults)
			continue
		}
		for i, f := range faults {
			if f.Offset != offsets[i] || !strings.Contains(f.Msg, tt.want[i]) || len(f.Msg) > 400 {
				t.Errorf("ParseRun(%.60q): fault at byte %d, %q; want byte %d, %q", text, f.Offset, f.Msg, offsets[i], tt.want[i])
			}
		}
	}
}

// A run of the most legs is read.
func TestParseRunMaxLegs(t *testing.T) {
	legs, faults := ParseRun(strings.Repeat("E 1ft,", MaxLegs-1)+"E 1ft", measure.Imperial)
	if len(legs) != MaxLegs || faults != nil {
		t.Errorf("%d legs, %v", len(legs), faults)
	}
}

func TestBearingString(t *testing.T) {
	for b, want := range map[Bearing]string{
		North: "N", East: "E", South: "S", West: "W",
		dms(45, 0, 0): "N 45° E", dms(135, 0, 0): "S 45° E", dms(225, 0, 0): "S 45° W", dms(315, 0, 0): "N 45° W",
		dms(248, 5, 35): `S 68°05'35" W`, dms(0, 30, 0): "N 0°30' E", dms(359, 59, 59): `N 0°00'01" W`,
	} {
		if got := b.String(); got != want {
			t.Errorf("Bearing(%d).String() = %q, want %q", b, got, want)
		}
		if b.Axial() != (len(want) == 1) {
			t.Errorf("%v: Axial() = %v", b, b.Axial())
		}
	}
}

// write is a run that reads back as the legs.
func write(legs []Leg) string {
	var parts []string
	for _, leg := range legs {
		parts = append(parts, leg.Bearing.String()+" "+leg.Length.String())
	}
	return strings.Join(parts, ", ")
}

// Every 101st bearing, which meets all quadrants, minutes and seconds, reads
// back.
func TestBearingReadsBack(t *testing.T) {
	for b := Bearing(0); b < fullTurn; b += 101 {
		legs, faults := ParseRun(write([]Leg{{b, measure.Foot, 0}}), measure.Imperial)
		if faults != nil || legs[0].Bearing != b {
			t.Fatalf("%v reads back as %v, %v", b, legs, faults)
		}
	}
}

func FuzzParseRun(f *testing.F) {
	for _, s := range []string{
		"E 12ft 6in, N 8ft", "N 45° E 12ft", `S 68°05'35" W 472.68ft`, "N 7d30′ W 3.2m", "", ",", "N 45 E 12ft",
		"E 12ft N 8ft", "N 90°1' E 1ft", "W -1in", "\xff, \x00",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		legs, faults := ParseRun(s, measure.Imperial)
		if (legs == nil) == (faults == nil) {
			t.Fatalf("ParseRun(%q) = %v, %v", s, legs, faults)
		}
		offset := -1
		for _, fault := range faults {
			if fault.Offset <= offset || fault.Offset > len(s) || fault.Msg == "" {
				t.Fatalf("ParseRun(%q): %v", s, faults)
			}
			offset = fault.Offset
		}
		for _, leg := range legs {
			if leg.Offset <= offset || leg.Length <= 0 || leg.Length > measure.MaxParsed || leg.Bearing < 0 || leg.Bearing >= fullTurn ||
				!strings.ContainsAny(s[leg.Offset:leg.Offset+1], "NESW") {
				t.Fatalf("ParseRun(%q): %v", s, legs)
			}
			offset = leg.Offset
		}
		again, _ := ParseRun(write(legs), measure.Imperial)
		if !slices.EqualFunc(legs, again, func(a, b Leg) bool { return a.Bearing == b.Bearing && a.Length == b.Length }) {
			t.Fatalf("ParseRun(%q) = %v, written and read again %v", s, legs, again)
		}
		if c := Close(legs, true, measure.MaxParsed); len(c.Points) != len(legs)+1 {
			t.Fatalf("Close of %q has %d points", s, len(c.Points))
		}
	})
}

func BenchmarkParseRun(b *testing.B) {
	for b.Loop() {
		if legs, faults := ParseRun("E 12ft 6in, N 8ft, W 12ft 5-1/2in, S 8ft 1/2in", measure.Imperial); len(legs) != 4 {
			b.Fatal(faults)
		}
	}
}

// A direction between the axes is told from any other mistake, so that who takes
// none can say so.
func TestAngledFaults(t *testing.T) {
	for text, want := range map[string]bool{
		"N 45 E 5ft": true, "NW 3ft": true, "southeast 3ft": false, "SE 3ft": true, "S 30.5° W 3ft": true,
		"n 3ft": false, "N 3": false, "X 3ft": false, "N 91° E 3ft": false,
	} {
		_, faults := ParseRun(text, measure.Imperial)
		if len(faults) != 1 || faults[0].Angled != want {
			t.Errorf("%q: %+v, want angled %v", text, faults, want)
		}
	}
}
