package check

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/randomhouse"
	"topplate/plan/rule"
	"topplate/route"
)

// Where text is added to the files of testdata, as the old text of an edit.
const (
	house = "+house" // at the end of the house file
	job   = "+job"   // before the first drop of the job file
)

// load reads the house and the job of testdata, with edits made to them: pairs
// of old and new text. Every edit must change something.
func load(t testing.TB, edits ...string) *plan.Job {
	t.Helper()
	changed := make([]bool, len(edits))
	read := func(path string) ([]byte, error) {
		name := filepath.Base(path)
		src, err := os.ReadFile(filepath.Join("testdata", name))
		text := string(src)
		for i := 0; i < len(edits); i += 2 {
			before := text
			switch {
			case edits[i] == house && name == "house.toml":
				text += "\n" + edits[i+1] + "\n"
			case edits[i] == job && name == "job.toml":
				text = strings.Replace(text, "[[drop]]", edits[i+1]+"\n\n[[drop]]", 1)
			case edits[i] != house && edits[i] != job:
				text = strings.ReplaceAll(text, edits[i], edits[i+1])
			}
			changed[i] = changed[i] || text != before
		}
		return []byte(text), err
	}
	j, list := plan.LoadJob("job.toml", read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatalf("%q do not load", edits)
	}
	for i := 0; i < len(edits); i += 2 {
		if !changed[i] && edits[i] != edits[i+1] {
			t.Fatalf("edit %q changes nothing", edits[i])
		}
	}
	return j
}

func solved(t testing.TB, edits ...string) *route.Result {
	t.Helper()
	res, err := route.Solve(load(t, edits...))
	if err != nil {
		t.Fatal(err)
	}
	return res
}

// rulesOf lists the rules of some findings, each once, sorted.
func rulesOf(findings []route.Finding) []rule.ID {
	var out []rule.ID
	for _, f := range findings {
		out = append(out, f.Rule)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// find returns the first finding of a rule.
func find(findings []route.Finding, id rule.ID) *route.Finding {
	for i := range findings {
		if findings[i].Rule == id {
			return &findings[i]
		}
	}
	return nil
}

func randomJob(t testing.TB, seed uint64, o randomhouse.Options) *plan.Job {
	t.Helper()
	j, list := plan.LoadJob("job.toml", randomhouse.Generate(seed, o).Read)
	if list.HasErrors() {
		t.Fatalf("random house %d does not load", seed)
	}
	return j
}
