package tags

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan"
	"topplate/plan/randomhouse"
	"topplate/route"
)

// solved is the result of a job, with edits made to its text.
func solved(t testing.TB, path string, edits ...string) *route.Result {
	t.Helper()
	read := func(p string) ([]byte, error) {
		src, err := os.ReadFile(filepath.Clean(p))
		text := string(src)
		for i := 0; i < len(edits); i += 2 {
			text = strings.ReplaceAll(text, edits[i], edits[i+1])
		}
		return []byte(text), err
	}
	return solve(t, path, read)
}

func solve(t testing.TB, path string, read plan.FileReader) *route.Result {
	t.Helper()
	job, list := plan.LoadJob(path, read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatalf("%s does not load", path)
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

const (
	corner = "../../samples/corner-house/job.toml"
	long   = "../../samples/long-roof/job.toml"
	first  = "../../cmd/topplate/starter/job.toml"
)

// cables are the texts of the cables, each once, in order.
func cables(labels []Label) []string {
	var out []string
	for i := range labels {
		if labels[i].Kind == ClosetEnd {
			out = append(out, labels[i].Text)
		}
	}
	return out
}

// Written down by hand from the job files: tags in order, ports one after
// another from 1, two digits since the panels have 16 and 12 ports.
func TestSamples(t *testing.T) {
	for path, want := range map[string]string{
		corner: "A01-C1.1 A02-C1.2 A03-C2.1 A04-C2.2 A05-D1.1 A06-D1.2 A07-D1.3 A08-D2.1 A09-D2.2 A10-D3.1 A11-S1.1 A12-S2.1",
		long:   "A01-C1.1 A02-S1.1 A03-S2.1 A04-W1.1 A05-W1.2 A06-W2.1 A07-W3.1 A08-W3.2",
		first:  "A01-D1.1 A02-D1.2 A03-D2.1 A04-D3.1",
	} {
		labels, findings := Labels(solved(t, path))
		if got := strings.Join(cables(labels), " "); got != want {
			t.Errorf("%s: %s\nwant %s", path, got, want)
		}
		if len(findings) > 0 {
			t.Errorf("%s: %v", path, findings)
		}
	}
}

// The starter by hand: D1 has two cables to a plate with jacks, D2 and D3 one
// each with a plug. 4 cables x 2 ends + 4 ports at the panel + 2 in the plate.
func TestStarterRows(t *testing.T) {
	labels, _ := Labels(solved(t, first))
	if len(labels) != 4*2+4+2 {
		t.Errorf("%d labels, want 14", len(labels))
	}
	var b strings.Builder
	w := csv.NewWriter(&b)
	_ = w.Write(Columns())
	for i := range labels[:7] {
		_ = w.Write(labels[i].Row())
	}
	w.Flush()
	want := `label,on,where,other end,panel,port,drop,cable,when
A01-D1.1,closet end,"Hall cabinet, port 1","Study, wall plate (desk), 1 of 2",A,1,D1,1,today
A01-D1.1,panel port,"Hall cabinet, port 1","Study, wall plate (desk), 1 of 2",A,1,D1,1,today
A01-D1.1,drop end,"Study, wall plate (desk), 1 of 2","Hall cabinet, port 1",A,1,D1,1,today
A01-D1.1,plate port,"Study, wall plate (desk), 1 of 2","Hall cabinet, port 1",A,1,D1,1,today
A02-D1.2,closet end,"Hall cabinet, port 2","Study, wall plate (desk), 2 of 2",A,2,D1,2,today
A02-D1.2,panel port,"Hall cabinet, port 2","Study, wall plate (desk), 2 of 2",A,2,D1,2,today
A02-D1.2,drop end,"Study, wall plate (desk), 2 of 2","Hall cabinet, port 2",A,2,D1,2,today
`
	if diff := cmp.Diff(want, b.String()); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

// The identifier that ANSI/TIA-606 is taught with, floor and space, panel and
// port, "1A-A07" (from memory), comes out of a scheme; all fields have a value.
func TestSchemes(t *testing.T) {
	for scheme, want := range map[string]string{
		"1A-{panel}{port}":                   "1A-A07",
		"{floor}/{room}/{tag}/{n}/{job}":     "main/study/D1/7/1",
		"{room} {tag}.{n} of {panel}/{port}": "study D1.7 of A/07",
	} {
		labels, findings := Labels(solved(t, first, "count = 2", "count = 8", "[rates]", "[labels]\nscheme = \""+scheme+"\"\n\n[rates]"))
		if got := cables(labels)[6]; got != want || len(findings) > 0 {
			t.Errorf("scheme %s gives %q, %v; want %q", scheme, got, findings, want)
		}
	}
	labels, _ := Labels(solved(t, first, "[rates]", "[labels]\nscheme = \"{room}-{tag}-{n}\"\n\n[rates]"))
	if got := cables(labels)[3]; got != "outside-D3-1" {
		t.Errorf("a camera's label is %q", got)
	}
}

// Four cables and three ports: the last one has none. At four there is room.
func TestTooFewPorts(t *testing.T) {
	labels, findings := Labels(solved(t, first, "ports = 12", "ports = 3"))
	if len(findings) != 1 || findings[0].Rule != TooFewPorts || findings[0].Pos.Line == 0 || !strings.Contains(findings[0].Found, "4 cables want a port, the panel has 3: no port for all of D3") {
		t.Fatalf("findings %+v", findings)
	}
	if findings[0].Change != "ports = 4 under [closet], or fewer cables" {
		t.Errorf("change %q", findings[0].Change)
	}
	if got := strings.Join(cables(labels), " "); got != "A1-D1.1 A2-D1.2 A3-D2.1 A4-D3.1" {
		t.Errorf("labels %s", got)
	}
	if _, findings := Labels(solved(t, first, "ports = 12", "ports = 4")); len(findings) > 0 {
		t.Errorf("four ports for four cables: %v", findings)
	}
}

// Tag and number that run into each other: cable 11 of D1 and cable 1 of D11.
func TestSameLabel(t *testing.T) {
	res := solved(t, first, "tag = \"D2\"", "tag = \"D11\"", "ports = 12", "ports = 24")
	d := &res.Job.Drops[0]
	d.Count = 11
	res.Job.Labels.Parts = []plan.LabelPart{{Field: "tag"}, {Field: "n"}}
	_, findings := Labels(res)
	if len(findings) != 1 || findings[0].Rule != SameLabel || findings[0].Found != `cable 11 of D1 and cable 1 of D11 both have the label "D111"` {
		t.Errorf("findings %+v", findings)
	}
}

// Speaker cable ends under screws: it needs no port, and takes none away.
func TestScrews(t *testing.T) {
	res := solved(t, first, "cable = \"cat6\"\nshift", "cable = \"speaker2\"\nshift", "ports = 12", "ports = 3")
	labels, findings := Labels(res)
	if len(findings) > 0 {
		t.Errorf("three cables in three ports: %v", findings)
	}
	for i := range labels {
		if l := &labels[i]; l.Tag == "D2" && (l.Port != 4 || l.Kind == PanelPort || l.Kind == ClosetEnd && l.Where != "Hall cabinet, screws") {
			t.Errorf("%+v", l)
		}
	}
}

// A drop for later keeps its ports and says so.
func TestLater(t *testing.T) {
	labels, _ := Labels(solved(t, first, "count = 2", "count = 2\nwhen = \"later\""))
	for i := range labels {
		l := &labels[i]
		if l.Later != (l.Tag == "D1") || (l.Row()[8] == "later") != l.Later || l.Tag == "D2" && l.Port != 3 {
			t.Errorf("%+v", l)
		}
	}
}

// On random houses: two ends for every cable that has a route and none for
// others, one text for all labels of a cable and no text for two cables, ports
// from 1 without gaps among all drops, and no more plate ports than jacks.
func TestRandomHouses(t *testing.T) {
	for seed := range uint64(10) {
		res := solve(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{}).Read)
		labels, findings := Labels(res)
		want := 0
		for i := range res.Routes {
			if r := &res.Routes[i]; r.Blocked == nil {
				want += res.Job.Drops[r.Drop].Count
			}
		}
		ends := map[string][]Kind{}
		for i := range labels {
			ends[labels[i].Text] = append(ends[labels[i].Text], labels[i].Kind)
		}
		if len(ends) != want || len(findings) > 0 {
			t.Errorf("seed %d: %d cables have labels, want %d; %v", seed, len(ends), want, findings)
		}
		for text, kinds := range ends {
			on := slices.DeleteFunc(slices.Clone(kinds), func(k Kind) bool { return !k.OnCable() })
			if !slices.Equal(on, []Kind{ClosetEnd, DropEnd}) || !slices.IsSorted(kinds) || len(slices.Compact(slices.Clone(kinds))) != len(kinds) {
				t.Errorf("seed %d: %s is on %v", seed, text, kinds)
			}
		}
	}
}

// The order of tables in the file changes no label.
func TestOrderOfTables(t *testing.T) {
	for seed := range uint64(3) {
		a, _ := Labels(solve(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{}).Read))
		b, _ := Labels(solve(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{Shuffle: 7}).Read))
		rows := func(labels []Label) (out [][]string) {
			for i := range labels {
				out = append(out, labels[i].Row())
			}
			return out
		}
		if diff := cmp.Diff(rows(a), rows(b)); diff != "" {
			t.Errorf("seed %d:\n%s", seed, diff)
		}
	}
}

// Ports that earlier jobs use stay theirs: numbers go round them.
func TestPortsOfEarlierJobsAreLeftOut(t *testing.T) {
	res := solved(t, "../../samples/corner-house/job.toml")
	job := *res.Job
	for _, port := range []int{1, 3, 4, 0} {
		job.Before.Ports = append(job.Before.Ports, plan.UsedPort{Cable: "first-D1.1", Port: port})
	}
	later := *res
	later.Job = &job
	labels, _ := Labels(&later)
	var got []int
	for _, l := range labels {
		if l.Kind == PanelPort {
			got = append(got, l.Port)
		}
	}
	want := []int{2, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15}
	if !slices.Equal(got, want) {
		t.Errorf("ports %v, want %v", got, want)
	}
}
