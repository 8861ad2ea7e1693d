package plan

import (
	"crypto/sha256"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

// loadIncluding loads jobs/a/job.toml with these keys beside files of these
// texts, by path.
func loadIncluding(t *testing.T, keys string, others map[string]string) (*Job, string) {
	t.Helper()
	texts := maps.Clone(others)
	texts["jobs/house.toml"] = complete(t, "", "testdata/base_house.toml")
	texts["jobs/a/job.toml"] = complete(t, "house = \"../house.toml\"\n"+keys, "testdata/base_job.toml")
	j, list := LoadJob("jobs/a/job.toml", files(texts))
	return j, print(t, list)
}

const twoFiles = "include = [\"../my/one.toml\", \"../my/two.toml\"]\n"

// TestIncludePrecedence gives one key of each table by the first file alone,
// by both files, and by all three; the last one read holds.
func TestIncludePrecedence(t *testing.T) {
	one := `[limits]
power-parallel = "3in"
plate-bore = 41
box-height = "4in"
[prices]
bend = 1
walk = 1
[parts]
jack-6 = 1
plug-6 = 1
[rates]
currency = "EUR"
hour = 61
[slack]
closet = "1ft"
outlet = "2in"
trim = "3in"
[tools]
rods = "11ft"
extension = "7in"
bits = [{ size = "1/2in", reach = "6in" }]
[labels]
scheme = "{tag}.{n}"
[buy]
cat6 = "100ft"
mine = "200ft"
[estimate]
allowance = 1
[crew]
people = 2
start = "07:00"
[weights]
cable = 2
openings = 2
[sheets]
paper = "a4"
[[cable]]
id = "mine"
like = "cat6"
bend = 5
[[cable]]
id = "other"
like = "cat6a"
[[connector]]
id = "plug"
like = "plug-6"
`
	two := `[limits]
plate-bore = 42
box-height = "4.1in"
[prices]
bend = 2
[slack]
outlet = "4in"
trim = "5in"
[rates]
hour = 62
[tools]
bits = [{ size = "1in", reach = "6in" }]
[[cable]]
id = "mine"
like = "coax6"
[[connector]]
id = "plug"
like = "plug-6a-wide"
[estimate]
[crew]
`
	own := `[limits]
box-height = "4.2in"
[slack]
trim = "6in"
[buy]
other = "300ft"
[[drop]]
tag = "Z1"
kind = "wall plate"
room = "bed"
wall = "west"
at = "6ft"
cable = "other"
`
	j, said := loadIncluding(t, twoFiles+own, map[string]string{"jobs/my/one.toml": one, "jobs/my/two.toml": two})
	if j == nil || said != "" {
		t.Fatal(said)
	}
	got := map[string]string{}
	for _, s := range j.Settings() {
		if s.From.File != "" {
			got[s.Path] = s.Value + " < " + s.From.File
			for _, p := range s.Over {
				got[s.Path] += " over " + p.File
			}
		}
	}
	const a, b, c = " < jobs/my/one.toml", " < jobs/my/two.toml", " < jobs/a/job.toml"
	const overA, overB = " over jobs/my/one.toml", " over jobs/my/two.toml"
	want := map[string]string{
		"limits.power-parallel": "3in (76 mm)" + a, "limits.plate-bore": "42 %" + b + overA, "limits.box-height": "4-3/16in (107 mm)" + c + overA + overB,
		"prices.bend": "2 minutes each" + b + overA, "prices.walk": "1 minutes per metre" + a,
		"parts.jack-6": "1 EUR" + a, "parts.plug-6": "1 EUR" + a, "rates.currency": "EUR" + a, "rates.hour": "62 EUR" + b + overA,
		"slack.closet": "1ft" + a, "slack.outlet": "4in" + b + overA, "slack.trim": "6in" + c + overA + overB,
		"tools.rods": "11ft" + a, "tools.extension": "7in" + a, "tools.bits": "1in reaching 6in" + b + overA,
		"labels.scheme": "{tag}.{n}" + a, "buy.cat6": "100ft" + a, "buy.mine": "200ft" + a, "buy.other": "300ft" + c,
		"estimate.allowance": "1 %" + a, "crew.people": "2" + a, "crew.start": "07:00" + a,
		"weights.cable": "2" + a, "weights.openings": "2" + a, "sheets.paper": "a4" + a,
		"cable.mine": "like coax6" + b + overA, "cable.other": "like cat6a" + a, "connector.plug": "like plug-6a-wide" + b + overA,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	// What the job is planned with is the same.
	mine, _ := j.Cable("mine")
	if mine.FourPair || len(j.OwnCables) != 2 || len(j.OwnConnectors) != 1 || j.Drops[0].Cable.ID != "other" || j.Slack.Outlet != 4*inch || j.Rates.Hour != 62_000 || len(j.Tools.Bits) != 1 {
		t.Errorf("got %+v, %+v, %+v, %+v", j.OwnCables, j.Slack, j.Rates, j.Tools)
	}
	if w := (Weights{2000, 1000, 2000}); j.Weights != w || j.Paper != A4 || j.Crew != (Crew{2, 420, 480, 720}) || j.Book().Value("plate-bore") != 42 {
		t.Errorf("got %+v, %v, %+v", j.Weights, j.Paper, j.Crew)
	}
	if p := j.Limits["plate-bore"].Pos; p != (diag.Pos{File: "jobs/my/two.toml", Line: 2, Col: 14}) {
		t.Errorf("the limit is at %v", p)
	}
	inputs := []Input{{Path: "job.toml"}, {Path: "../house.toml"}, {"../my/one.toml", sha256.Sum256([]byte(one))}, {"../my/two.toml", sha256.Sum256([]byte(two))}}
	for i := range inputs[:2] {
		inputs[i].SHA256 = j.Inputs[i].SHA256
	}
	if !slices.Equal(j.Inputs, inputs) {
		t.Errorf("inputs are %v", j.Inputs)
	}
}

// The order of the list decides, not the names of the files.
func TestIncludeOrder(t *testing.T) {
	others := map[string]string{"jobs/my/one.toml": "[slack]\npercent = 1\n", "jobs/my/two.toml": "[slack]\npercent = 2\n"}
	for keys, want := range map[string]int{
		twoFiles: 2, "include = [\"../my/two.toml\", \"../my/one.toml\"]\n": 1, "include = []\n": 5, twoFiles + "[slack]\npercent = 3\n": 3,
	} {
		j, said := loadIncluding(t, keys, others)
		if j == nil || said != "" || j.Slack.Percent != want {
			t.Errorf("%s: %s, want %d per cent", keys, said, want)
		}
	}
}

// An obstacle whose distance the house leaves to the rule has that of an
// included file.
func TestIncludedLimitMovesAnObstacle(t *testing.T) {
	house := complete(t, "[[obstacle]]\nid = \"f\"\nkind = \"flue\"\nfrom = [\"22ft\", \"9ft\"]\nto = [\"23ft\", \"10ft\"]\nbottom = \"0ft\"\ntop = \"9ft\"\nhot = true\n", "testdata/base_house.toml")
	job := complete(t, "house = \"house.toml\"\ninclude = [\"my.toml\"]\n", "testdata/base_job.toml")
	j, list := LoadJob("job.toml", files(map[string]string{"job.toml": job, "house.toml": house, "my.toml": "[limits]\nhot-flue = \"9in\"\n"}))
	if j == nil || j.House.Obstacles[0].Clearance != 9*inch {
		t.Fatal(print(t, list))
	}
}

// TestSettingsHaveDefaults: without a file all is built in, in the units of the
// house.
func TestSettingsHaveDefaults(t *testing.T) {
	imperial, metric := houses(t)
	for house, want := range map[string][2]string{imperial: {"10ft", "tabloid"}, metric: {measure.Metric.Format(3 * measure.Metre), "a3"}} {
		found := map[string]string{}
		for _, s := range jobOf(t, "", house).Settings() {
			if s.From != (diag.Pos{}) || len(s.Over) > 0 {
				t.Errorf("%s is from %v", s.Path, s.From)
			}
			if _, twice := found[s.Path]; twice || s.Value == "" {
				t.Errorf("%s is %q, and listed before: %v", s.Path, s.Value, twice)
			}
			found[s.Path] = s.Value
		}
		if got := [2]string{found["slack.closet"], found["sheets.paper"]}; got != want {
			t.Errorf("got %v, want %v", got, want)
		}
	}
}

// TestBadIncludes: every fault is told at its place, in the file that has it.
func TestBadIncludes(t *testing.T) {
	const good = "[slack]\npercent = 1\n"
	for _, tt := range []struct {
		name, keys, one string
		want            []string
	}{
		{"not a list", "include = \"../my/one.toml\"\n", good, []string{"job.toml:2:11: error: include: found"}},
		{"not a text", "include = [7]\n", good, []string{"job.toml:2:12: error: include[0]: found the number 7"}},
		{"none there", "include = [\"none.toml\"]\n", good, []string{`job.toml:2:12: error: include[0]: cannot read "jobs/a/none.toml": there is no such file`}},
		{"empty name", "include = [\"\"]\n", good, []string{"job.toml:2:12: error: include[0]: found no name"}},
		{"the job", "include = [\"../a/job.toml\"]\n", good, []string{"job.toml:2:12: error: include[0]: found this job itself"}},
		{"twice", "include = [\"../my/one.toml\", \"../my/./one.toml\"]\n", good, []string{"job.toml:2:30: error: include[1]: found \"../my/./one.toml\" again", "job.toml:2:12: note: it is first named here"}},
		{"too many", "include = [" + strings.Repeat("\"x.toml\",", 21) + "]\n", good, []string{"error: include: found 21 files; at most 20 are read"}},
		{"not TOML", twoFiles, "[slack\n", []string{"jobs/my/one.toml:1:7: error: not TOML"}},
		{"includes", twoFiles, "include = [\"two.toml\"]\n", []string{"jobs/my/one.toml:1:1: error: include: found include in a file that is included"}},
		{"includes the job", twoFiles, "include = [\"../a/job.toml\"]\n", []string{"jobs/my/one.toml:1:1: error: include: found include in a file that is included"}},
		{"a drop", twoFiles, good + "[[drop]]\ntag = \"A\"\n", []string{`jobs/my/one.toml:3:3: error: drop: found "drop", which is no setting that a file can give`}},
		{"a spool", twoFiles, "[[spool]]\nid = \"A\"\n", []string{`jobs/my/one.toml:1:3: error: spool: found "spool", which is no setting`}},
		{"misspelt table", twoFiles, "[slak]\npercent = 1\n", []string{`jobs/my/one.toml:1:2: error: slak: found "slak", which is no setting that a file can give to the job that includes it; the nearest is "slack"`}},
		{"misspelt key", twoFiles, "[slack]\nclosett = \"1ft\"\n", []string{`jobs/my/one.toml:2:1: error: slack.closett: unknown key "closett"; did you mean "closet"?`}},
		{"no such limit", twoFiles, "[limits]\nplate-bor = 40\n", []string{`jobs/my/one.toml:2:1: error: limits.plate-bor: found "plate-bor", which is no limit`}},
		{"out of range", twoFiles, "[slack]\npercent = 1000\n", []string{"jobs/my/one.toml:2:11: error: slack.percent: found the number 1000"}},
		{"out of range, and not used", twoFiles + good, "[slack]\npercent = 1000\n", []string{"jobs/my/one.toml:2:11: error: slack.percent: found the number 1000"}},
		{"an hour of what", twoFiles, "[rates]\nhour = 10\n", []string{"jobs/my/one.toml:1:2: error: rates.currency: missing"}},
		{"one table", twoFiles, "[cable]\nid = \"A\"\n", []string{"jobs/my/one.toml:1:2: error: cable: found a table"}},
		{"one id twice", twoFiles, "[[cable]]\nid = \"a\"\nlike = \"cat6\"\n[[cable]]\nid = \"a\"\nlike = \"cat6\"\n", []string{"jobs/my/one.toml:5:6: error: cable[1].id: found \"a\" again"}},
		{"labels alike", twoFiles, "[labels]\nscheme = \"{room}\"\n", []string{"jobs/my/one.toml:2:10: error: labels.scheme: found labels without {port} and without {tag}"}},
		{"two at once", twoFiles + "[slack]\npercent = 99\n", "[estimate]\nallowance = 101\nfoo = 1\n", []string{"jobs/my/one.toml:2:13: error", "jobs/my/one.toml:3:1: error", "job.toml:4:11: error"}},
	} {
		j, said := loadIncluding(t, tt.keys, map[string]string{"jobs/my/one.toml": tt.one, "jobs/my/two.toml": good})
		if j != nil {
			t.Errorf("%s: is loaded", tt.name)
		}
		for _, want := range tt.want {
			if !strings.Contains(said, want) {
				t.Errorf("%s: got\n%swant %s", tt.name, said, want)
			}
		}
		if got, want := strings.Count(said, ": error: "), len(tt.want)-strings.Count(strings.Join(tt.want, " "), ": note: "); got != want {
			t.Errorf("%s: %d errors, want %d:\n%s", tt.name, got, want, said)
		}
	}
	// Labels of an included file that the job replaces are not held against it.
	if j, said := loadIncluding(t, twoFiles+"[labels]\nscheme = \"{port}\"\n", map[string]string{"jobs/my/one.toml": "[labels]\nscheme = \"{room}\"\n", "jobs/my/two.toml": good}); j == nil {
		t.Error(said)
	}
}
