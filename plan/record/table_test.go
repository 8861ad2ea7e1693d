package record

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/measure"
)

// TestTable reads tables as testers write them: 18.6 m is 61 ft 0-1/4 in and
// is kept exactly.
func TestTable(t *testing.T) {
	want := []Entry{
		cableEntry("D1.2", Cable{Length: 18_600 * measure.Millimetre, WireMap: Pass, Speed: 2500, Watts: 11_500}),
		{Kind: CableKind, ID: "A1.1", Note: "at, the shelf", Cable: Cable{Length: 42 * foot, WireMap: Fail, Volts: 48_200}},
	}
	for name, src := range map[string]string{
		"commas":      "tag,cable,length (m),wiremap,speed,watts,volts,note\nD1,2,18.6,pass,2500,11.5,,\nA1,1,42ft,FAIL,,,48.2,\"at, the shelf\"\n",
		"any order":   "\ufeffnote,Volts [mV],speed_gbps,Wire map,length,tag,watts mW\r\n,,2.5,ok,18.6m,D1.2,11500\r\n\r\n\"at, the shelf\",48200,,failed,42ft,A1\r\n",
		"semicolons":  "cable;length m;wiremap;speed;watts;volts;note\nD1.2;18,6;passed;2500 Mb/s;11,5;;\nA1.1;42ft;fail;;;48,2 V;at, the shelf\n",
		"tabs":        "tag\tcable\tlength (m)\twiremap\tspeed\twatts\tvolts\tnote\nD1\tD1.2\t18.6\tpass\t2500\t11.5\t\t\nA1\t\t42ft\tfail\t\t\t48.2\tat, the shelf",
		"whole names": "tag,length,wiremap,speed,watts,volts,note,state\nD1.2,18600mm,pass,2500,11.5,,,run\nA1.1,42ft,fail,,,48.2,\"at, the shelf\",\n",
	} {
		got, list := ReadTable("t.csv", []byte(src), desk(), nil, false)
		var entries []Entry
		for i := range got {
			entries = append(entries, got[i].Entry)
		}
		if diff := cmp.Diff(want, entries); diff != "" || said(t, list) != "" {
			t.Errorf("%s: %s%s", name, said(t, list), diff)
		}
		if got := said(t, Check(desk(), nil, got)); got != "" {
			t.Errorf("%s: %s", name, got)
		}
	}
}

// TestTableFaults: all rows that are wrong are told, with their numbers, and
// columns that are not read.
func TestTableFaults(t *testing.T) {
	for _, tt := range []struct{ src, want string }{
		{"", "t.csv: error: found no row"},
		{"length,speed\n1ft,2\n", "t.csv:1:1: error: found no column that names the cable"},
		{"tag,watts,tag\nA1,1,2\n", "t.csv:1:1: error: found the column tag twice"},
		{"tag,lenght,\nA1,1,\n", `t.csv:1:1: warning: found the column "lenght", which is not read; the nearest is length`},
		{"tag,length\nA1,42\nD1.1,63ft\nD1.2,sixty\n", "t.csv:2:1: error: cable A1.1: length: length \"42\""},
		{"tag,length\nA1,42\nD1.1,63ft\nD1.2,sixty\n", "t.csv:4:1: error: cable D1.2: length: length \"sixty\""},
		{"tag,wiremap\nA1,good\n", "t.csv:2:1: error: cable A1.1: wiremap: found \"good\"; want untested, pass, fail"},
		{"tag,watts\n,1\n", "t.csv:2:1: error: found no tag and no cable"},
		{"tag,watts\nA1,1,2\n", "t.csv:2:1: error: found 3 cells; the header has 2"},
		{"tag,watts\nA1,1\n\"A1,1\n", "t.csv:3:7: error: found a row that can't be taken apart"},
		{"tag,watts\nA1,1 J\n", "watts: found the unit \"J\"; want mw, w, watts"},
	} {
		_, list := ReadTable("t.csv", []byte(tt.src), desk(), nil, false)
		if got := said(t, list); !strings.Contains(got, tt.want) {
			t.Errorf("%q: got %swant %s", tt.src, got, tt.want)
		}
	}
	if _, list := ReadTable("t.csv", []byte("tag,watts\n"+strings.Repeat("A1,1\n", mostRows+1)), desk(), nil, false); !strings.Contains(said(t, list), fmt.Sprint("more than ", mostRows)) {
		t.Error("too many rows were read")
	}
}

// TestTableAgain: what is recorded already is left out; anything else is a
// second record, or with update a correction that keeps what the row has not.
func TestTableAgain(t *testing.T) {
	all := log(cableEntry("D1.2", Cable{Length: 61 * foot, WireMap: Pass, Port: 2}))
	same := []byte("tag,length,wiremap\nD1.2,61ft,pass\n")
	if got, list := ReadTable("t.csv", same, desk(), all, false); len(got) != 0 || !strings.Contains(said(t, list), "this is recorded already, as entry 1") {
		t.Errorf("%d rows, %s", len(got), said(t, list))
	}
	more := []byte("tag,speed\nD1.2,1000\n")
	got, _ := ReadTable("t.csv", more, desk(), all, false)
	if list := Check(desk(), all, got); !strings.Contains(said(t, list), "--replaces 1") {
		t.Error(said(t, list))
	}
	got, _ = ReadTable("t.csv", more, desk(), all, true)
	want := Cable{Length: 61 * foot, WireMap: Pass, Port: 2, Speed: 1000}
	if len(got) != 1 || got[0].Replaces != 1 || got[0].Cable != want || said(t, Check(desk(), all, got)) != "" {
		t.Errorf("%+v", got)
	}
}

func FuzzReadTable(f *testing.F) {
	f.Add([]byte("tag,cable,length (m),wiremap\nD1,2,18.6,pass\n"), false)
	f.Add([]byte("tag;watts;note\nA1;1,5;\"x\ny\"\n"), true)
	f.Add([]byte("\ufeffcable\tmarks\nA1\t1ft,2ft"), true)
	f.Fuzz(func(t *testing.T, src []byte, update bool) {
		all := log(cableEntry("A1.1", Cable{Length: 61 * foot}))
		got, list := ReadTable("t.csv", src, desk(), all, update)
		list.Append(Check(desk(), all, got))
		if list.HasErrors() {
			return
		}
		for i := range got {
			got[i].Number, got[i].When = i+2, day
			if _, err := parseLine(strings.TrimSuffix(got[i].line(), "\n")); err != nil {
				t.Fatalf("%q passes the check and can't be written: %v", src, err)
			}
		}
	})
}
