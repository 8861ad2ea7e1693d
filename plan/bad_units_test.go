package plan

import (
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

var (
	writtenLength = regexp.MustCompile(`\b\d+ft(?: (?:\d+-)?\d+(?:/\d+)?in)?\b|\b(?:\d+-)?\d+(?:/\d+)?in\b`)
	// A unit of a quantity that is none of length, lb/1000ft, has a stroke before
	// the number.
	feetOrInches = regexp.MustCompile(`(^|[^/\w])\d+ ?(ft|in)\b|\d['′″]|\bfeet\b|\binch`)
	metres       = regexp.MustCompile(`(^|[^/\w])\d+ ?(mm|cm|m|m²)\b`)
)

// metric is a file with all its lengths in millimetres.
func metric(src string) string {
	src = strings.ReplaceAll(src, `units = "imperial"`, `units = "metric"`)
	return writtenLength.ReplaceAllStringFunc(src, func(text string) string {
		l, err := measure.Parse(text)
		if err != nil {
			return text
		}
		for _, s := range []string{measure.Metric.Format(l), strings.ReplaceAll(measure.Metric.Format(l), " ", "")} {
			if back, err := measure.Parse(s); err == nil && back == l {
				return s
			}
		}
		return strings.TrimSuffix(strings.TrimRight(decimals(l), "0"), ".") + "mm"
	})
}

// decimals writes a length in millimetres, to the nanometre.
func decimals(l measure.Length) string {
	whole, rest := l/measure.Millimetre, l%measure.Millimetre
	digits := []byte("000000")
	for i := len(digits) - 1; i >= 0; i, rest = i-1, rest/10 {
		digits[i] = byte('0' + rest%10)
	}
	return strings.TrimSuffix(measure.Length(whole*measure.Millimetre).String(), "mm") + "." + string(digits)
}

// loadBad loads a bad file as TestBadFiles does, with every text changed.
func loadBad(t *testing.T, path string, change func(string) string) (*diag.List, map[string]string) {
	t.Helper()
	read := func(path string) string {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		return string(src)
	}
	name := filepath.Base(path)
	texts := map[string]string{
		"jobs/house.toml":     change(complete(t, "", "testdata/base_house.toml")),
		"jobs/furnished.toml": change(read("testdata/good/house.toml")),
	}
	var list *diag.List
	if strings.HasPrefix(name, "job_") {
		name = "jobs/" + name
		texts[name] = change(complete(t, read(path), "testdata/base_job.toml"))
		_, list = LoadJob(name, files(maps.Clone(texts)))
		return list, texts
	}
	base := "testdata/base_house.toml"
	if strings.HasPrefix(name, "storeys_") {
		base = "testdata/good/levels.toml"
	}
	texts[name] = change(complete(t, read(path), base))
	_, list = LoadHouse(name, []byte(texts[name]))
	return list, texts
}

// TestMessagesSpeakTheUnits holds the messages of all bad files against the units
// of their house: none has a length in the others, unless somebody wrote it so.
func TestMessagesSpeakTheUnits(t *testing.T) {
	paths, err := filepath.Glob("testdata/bad/*.toml")
	if err != nil || len(paths) < 10 {
		t.Fatalf("found %d files: %v", len(paths), err)
	}
	for _, c := range []struct {
		name    string
		change  func(string) string
		foreign *regexp.Regexp
	}{
		{"imperial", func(s string) string { return s }, metres},
		{"metric", metric, feetOrInches},
	} {
		t.Run(c.name, func(t *testing.T) {
			messages := 0
			for _, path := range paths {
				if strings.HasSuffix(path, "_no_house.toml") {
					continue // nobody knows its units
				}
				list, texts := loadBad(t, path, c.change)
				check := func(pos diag.Pos, msg string) {
					messages++
					lines := strings.Split(texts[pos.File], "\n")
					line := ""
					if 0 < pos.Line && pos.Line <= len(lines) {
						line, _, _ = strings.Cut(lines[pos.Line-1], "#")
					}
					if c.foreign.MatchString(msg) && !c.foreign.MatchString(line) {
						t.Errorf("%s:%d: %s", filepath.Base(path), pos.Line, msg)
					}
				}
				for _, d := range list.Sorted() {
					check(d.Pos, d.Msg)
					for _, n := range d.Notes {
						check(n.Pos, n.Msg)
					}
				}
			}
			if messages < 100 {
				t.Errorf("only %d messages", messages)
			}
		})
	}
}
