package plan

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"topplate/plan/diag"
)

var (
	expected  = regexp.MustCompile(`# (BELOW )?(ERROR|WARNING|NOTE) (.*)$`)
	quotedArg = regexp.MustCompile("`[^`]*`|\"[^\"]*\"")
	header    = regexp.MustCompile(`(?m)^\[\[?([a-z]+)\]`)
	directive = regexp.MustCompile(`(?m)^# (WITH|WITHOUT) (.*)$`)
)

// complete adds to a fragment the tables of a base file that it has no table
// of the same name for. "# WITH wall" adds those of the base as well, and
// "# WITHOUT hatch" adds none. What is added comes last, so that lines of the
// fragment keep their numbers.
func complete(t testing.TB, fragment, base string) string {
	t.Helper()
	has := map[string]bool{}
	for _, m := range header.FindAllStringSubmatch(fragment, -1) {
		has[m[1]] = true
	}
	for _, m := range directive.FindAllStringSubmatch(fragment, -1) {
		for name := range strings.FieldsSeq(m[2]) {
			has[name] = m[1] == "WITHOUT"
		}
	}
	src, err := os.ReadFile(base)
	if err != nil {
		t.Fatal(err)
	}
	out := fragment
	for block := range strings.SplitSeq(string(src), "\n\n") {
		if m := header.FindStringSubmatch(block); m != nil && !has[m[1]] {
			out += "\n\n" + block[strings.Index(block, "["):]
		}
	}
	return out + "\n"
}

// A said is one diagnostic or note as a file expects it.
type said struct {
	line int
	what string // ERROR, WARNING, NOTE
	text string // a part of it
}

// expectations reads the comments of a file. One such as
//
//	at = "28ft" # ERROR "found" `want "this"`
//
// expects two errors on its line, with these parts. With BELOW it expects them
// after the last line of the fragment, in what was added.
func expectations(src string) []said {
	var all []said
	lines := strings.Split(src, "\n")
	for i, line := range lines {
		m := expected.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		if i++; m[1] != "" {
			i = len(lines)
		}
		for _, q := range quotedArg.FindAllString(m[3], -1) {
			all = append(all, said{i, m[2], q[1 : len(q)-1]})
		}
	}
	return all
}

// sayings are the diagnostics and notes of a list that are about a file of so
// many lines. Notes about what was added after them say where walls and rooms
// are; they are left out.
func sayings(list *diag.List, file string, lines int) []said {
	var all []said
	add := func(pos diag.Pos, what, text string) {
		if pos.File == file && (pos.Line < lines || what != "NOTE") {
			all = append(all, said{min(max(1, pos.Line), lines), what, text})
		}
	}
	for _, d := range list.Sorted() {
		what := strings.ToUpper(d.Severity.String())
		add(d.Pos, what, d.Key+": "+d.Msg)
		for _, n := range d.Notes {
			add(n.Pos, "NOTE", n.Msg)
		}
	}
	return all
}

// compare reports what was expected and not said, and the other way round.
func compare(t *testing.T, want, got []said) {
	t.Helper()
	for _, w := range want {
		i := slices.IndexFunc(got, func(g said) bool { return g.line == w.line && g.what == w.what && strings.Contains(g.text, w.text) })
		if i < 0 {
			t.Errorf("line %d: not said: %s %q", w.line, w.what, w.text)
			continue
		}
		got = slices.Delete(got, i, i+1)
	}
	for _, g := range got {
		t.Errorf("line %d: not expected: %s %q", g.line, g.what, g.text)
	}
}

// files is a reader of files that need no disk.
func files(contents map[string]string) FileReader {
	return func(path string) ([]byte, error) {
		if src, ok := contents[path]; ok {
			return []byte(src), nil
		}
		return nil, fmt.Errorf("cannot read %q: there is no such file", path)
	}
}

func TestBadFiles(t *testing.T) {
	paths, err := filepath.Glob("testdata/bad/*.toml")
	if err != nil || len(paths) < 10 {
		t.Fatalf("found %d files: %v", len(paths), err)
	}
	furnished, err := os.ReadFile("testdata/good/house.toml")
	if err != nil {
		t.Fatal(err)
	}
	houses := map[string]string{"jobs/house.toml": complete(t, "", "testdata/base_house.toml"), "jobs/furnished.toml": string(furnished)}
	for _, path := range paths {
		name := filepath.Base(path)
		t.Run(strings.TrimSuffix(name, ".toml"), func(t *testing.T) {
			src, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			var list *diag.List
			var loaded bool
			if strings.HasPrefix(name, "job_") {
				read := maps.Clone(houses)
				name = "jobs/" + name
				read[name] = complete(t, string(src), "testdata/base_job.toml")
				var job *Job
				job, list = LoadJob(name, files(read))
				loaded = job != nil
			} else {
				base := "testdata/base_house.toml"
				if strings.HasPrefix(name, "storeys_") {
					base = "testdata/good/levels.toml"
				}
				var h *House
				h, list = LoadHouse(name, []byte(complete(t, string(src), base)))
				loaded = h != nil
			}
			compare(t, expectations(string(src)), sayings(list, name, strings.Count(string(src), "\n")+1))
			if loaded == list.HasErrors() {
				t.Errorf("loaded: %v, with errors: %v", loaded, list.HasErrors())
			}
			if t.Failed() {
				t.Log(print(t, list))
			}
		})
	}
}
