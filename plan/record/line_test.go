package record

import (
	"fmt"
	"hash/crc32"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"topplate/plan/measure"
)

const (
	foot = measure.Foot
	inch = measure.Inch
)

var day = time.Date(2026, 3, 31, 14, 40, 0, 0, time.UTC)

// TestChecksum holds the polynomial against RFC 3720, B.4: 32 bytes of zeros
// have the CRC aa 36 91 8a, the lowest byte first; and against the check value
// of CRC-32C of the digits 1 to 9, e3069283, in the catalogues of CRCs.
func TestChecksum(t *testing.T) {
	for text, want := range map[string]uint32{strings.Repeat("\x00", 32): 0x8a9136aa, strings.Repeat("\xff", 32): 0x62a8ab43, "123456789": 0xe3069283} {
		if got := crc32.Checksum([]byte(text), castagnoli); got != want {
			t.Errorf("%q: got %08x, want %08x", text, got, want)
		}
	}
}

// TestLines writes entries as people read them.
func TestLines(t *testing.T) {
	for _, tt := range []struct {
		e    Entry
		want string
	}{
		{
			Entry{Number: 3, When: day, Kind: CableKind, ID: "D1.2", By: "A. Fitter", Note: `past the "cold" joist`, Cable: Cable{
				Length: 61 * foot, Marked: true, Marks: [2]measure.Length{412 * foot, 351 * foot}, Plug: "jack-6", Port: 4, WireMap: Pass, Speed: 2500, Watts: 11_500, Volts: 48_050, Hours: 250,
			}},
			`3 2026-03-31T14:40:00Z cable D1.2 state=run length=61ft marks=412ft,351ft plug=jack-6 port=4 wiremap=pass speed=2500 watts=11.5 volts=48.05 hours=0.25 by="A. Fitter" note="past the \"cold\" joist"`,
		},
		{
			Entry{Number: 4, When: day, Kind: CableKind, ID: "D1.2", Replaces: 3, Anyway: true, Note: "n", Cable: Cable{State: NotRun}},
			`4 2026-03-31T14:40:00Z cable D1.2 replaces=3 anyway=yes state="not run" note=n`,
		},
		{
			Entry{Number: 5, When: day, Kind: HoleKind, ID: "H3.1", Hole: Hole{Bore: Bore{Through: "top plate", Wall: "east", At: 134 * inch, Diameter: 3 * inch / 4}, Cables: []string{"D1.1", "D1.2"}, There: 2}},
			`5 2026-03-31T14:40:00Z hole H3.1 through="top plate" wall=east at="11ft 2in" diameter=3/4in cables=D1.1,D1.2 there=2`,
		},
		{
			Entry{Number: 6, When: day, Kind: SpoolKind, ID: "S1", Spool: Spool{Cable: "cat6", Left: 230 * foot, Marked: true, Mark: 230 * foot, Down: true}},
			`6 2026-03-31T14:40:00Z spool S1 cable=cat6 left=230ft mark=230ft counts=down`,
		},
		{
			Entry{Number: 1, When: day, Kind: StartKind, Start: Start{Name: "Two desks", Number: "17", Inputs: []Input{{Path: "my job.toml"}}}},
			`1 2026-03-31T14:40:00Z job name="Two desks" number=17 input="my job.toml ` + strings.Repeat("0", 64) + `"`,
		},
	} {
		got := tt.e.line()
		want := fmt.Sprintf("%s crc32c=%08x\n", tt.want, crc32.Checksum([]byte(tt.want), crc32.MakeTable(crc32.Castagnoli)))
		if got != want {
			t.Errorf("got  %swant %s", got, want)
		}
		back, list := Read("r", []byte(got))
		tt.e.Line = 1
		if tt.e.Number > 1 { // alone in a file, those before it are missing
			list = nil
		}
		if diff := cmp.Diff([]Entry{tt.e}, back); diff != "" || list != nil && len(list.Sorted()) > 0 {
			t.Errorf("read back: %s", diff)
		}
	}
}

// anyEntry draws entries with all that a field may hold.
func anyEntry(t *rapid.T, n int) Entry {
	text := rapid.StringOfN(rapid.RuneFrom([]rune("aZ 0=\"\\#é–.,crc32c")), 0, 30, -1)
	long := func(name string) measure.Length { return measure.Length(rapid.Int64Range(1, 6e12).Draw(t, name)) }
	name := rapid.StringMatching(`[A-Za-z0-9][A-Za-z0-9._-]{0,20}`)
	e := Entry{
		Number: n, Line: n, When: time.Unix(rapid.Int64Range(0, 4e9).Draw(t, "when"), 0).UTC(), Kind: Kind(rapid.IntRange(0, 4).Draw(t, "kind")),
		Replaces: rapid.IntRange(0, n-1).Draw(t, "replaces"), Anyway: rapid.Bool().Draw(t, "anyway"), By: text.Draw(t, "by"), Note: text.Draw(t, "note"),
	}
	if e.Kind != StartKind && e.Kind != NoteKind {
		e.ID = name.Draw(t, "id")
	}
	switch e.Kind {
	case StartKind:
		e.Start = Start{Name: text.Draw(t, "name"), Inputs: []Input{{Path: text.Draw(t, "path")}, {SHA256: [32]byte{1, 2}}}}
	case CableKind:
		e.Cable = Cable{
			State: State(rapid.IntRange(0, 2).Draw(t, "state")), Length: long("length"), WireMap: WireMap(rapid.IntRange(0, 2).Draw(t, "map")),
			Plug: strings.TrimSpace(text.Draw(t, "plug")), Port: rapid.IntRange(0, 1000).Draw(t, "port"), Speed: rapid.Int64Range(0, 40_000).Draw(t, "speed"),
			Watts: rapid.Int64Range(0, 100_000).Draw(t, "watts"), Volts: rapid.Int64Range(0, 60_000).Draw(t, "volts"), Hours: rapid.Int64Range(0, 1e6).Draw(t, "hours"),
		}
		if rapid.Bool().Draw(t, "marked") {
			e.Cable.Marked, e.Cable.Marks = true, [2]measure.Length{long("a"), 0}
		}
	case HoleKind:
		at := rapid.Int64Range(-3e11, 3e11)
		e.Hole = Hole{Bore: Bore{Pointed: true, Point: [3]measure.Length{measure.Length(at.Draw(t, "x")), measure.Length(at.Draw(t, "y")), measure.Length(at.Draw(t, "z"))}, Through: "top plate", Wall: name.Draw(t, "wall"), At: long("at"), Diameter: measure.Length(rapid.Int64Range(4e6, 1e8).Draw(t, "d"))}, There: rapid.IntRange(0, 9).Draw(t, "there"), Cables: rapid.SliceOfN(name, 1, 3).Draw(t, "cables")}
	case SpoolKind:
		e.Spool = Spool{Cable: name.Draw(t, "cable"), Left: long("left")}
		if rapid.Bool().Draw(t, "marked") {
			e.Spool.Marked, e.Spool.Mark, e.Spool.Down = true, long("mark"), rapid.Bool().Draw(t, "down")
		}
	}
	return e
}

// TestAnyEntriesReadBack: what is written is read again, whole, and nothing is
// told.
func TestAnyEntriesReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var want []Entry
		var b strings.Builder
		for n := range rapid.IntRange(1, 4).Draw(t, "entries") {
			want = append(want, anyEntry(t, n+1))
			b.WriteString(want[n].line())
		}
		got, list := Read("r", []byte(b.String()))
		if diff := cmp.Diff(want, got); diff != "" || len(list.Sorted()) > 0 {
			t.Fatalf("%s\n%s%v", b.String(), diff, list.Sorted())
		}
	})
}

// FuzzRead: no bytes make Read panic; entries are numbered upwards, and what it
// reads it reads again from what would be written.
func FuzzRead(f *testing.F) {
	e := Entry{Number: 1, When: day, Kind: CableKind, ID: "D1.2", Note: "a \"b\"", Cable: Cable{Length: foot}}
	f.Add([]byte(e.line()), true)
	f.Add([]byte(e.line()[:30]), false)
	f.Add([]byte("1 2026-03-31T14:40:00Z hole H1 through=\"top plate\" wall=a at=1ft diameter=1in"), true)
	f.Add([]byte("7 2026-03-31T14:40:00Z spool B cable=cat6 left=0in mark=1m counts=up\n\x00\x00"), true)
	f.Add([]byte("1 2026-03-31T14:40:00Z job input=\"a 00\" input=b"), true)
	f.Fuzz(func(t *testing.T, src []byte, sum bool) {
		if sum { // a checksum that fits, so that the fields are read as well
			src = fmt.Appendf(src, "%s%08x\n", sumKey, crc32.Checksum(src, castagnoli))
		}
		all, _ := Read("r", src)
		last := 0
		var b strings.Builder
		for i := range all {
			if all[i].Number <= last {
				t.Fatalf("entry %d after %d", all[i].Number, last)
			}
			last = all[i].Number
			b.WriteString(all[i].line())
			all[i].Line = i + 1
		}
		again, _ := Read("r", []byte(b.String()))
		if diff := cmp.Diff(all, again); diff != "" {
			t.Fatal(diff)
		}
	})
}
