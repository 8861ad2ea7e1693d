package pdf_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sync"
	"testing"

	"topplate/plan"
	"topplate/plan/source"
	"topplate/render"
	"topplate/render/pdf"
	"topplate/render/sheet"
	"topplate/route"
	"topplate/route/fix"
	"topplate/route/work"
)

const mm = sheet.MM

// sampleSheets are the sheets of all samples, upright and lying, in feet and
// in metres: real sheets are the best test.
var sampleSheets = sync.OnceValues(func() ([]*sheet.Sheet, error) {
	jobs, err := filepath.Glob("../../samples/*/job.toml")
	if err != nil {
		return nil, err
	}
	slices.Sort(jobs)
	var all []*sheet.Sheet
	for _, path := range jobs {
		job, list := plan.LoadJob(path, source.ReadFile)
		if list.HasErrors() {
			return nil, os.ErrInvalid
		}
		res, err := route.Solve(job)
		if err != nil {
			return nil, err
		}
		all = append(all, render.Sheets(&work.Work{Result: res, Fixes: fix.Holes(res)})...)
	}
	return all, nil
})

func samples(t testing.TB) []*sheet.Sheet {
	t.Helper()
	all, err := sampleSheets()
	if err != nil || len(all) < 4 {
		t.Fatalf("%d sheets, %v", len(all), err)
	}
	return all
}

func written(t testing.TB, title string, sheets ...*sheet.Sheet) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Write(&b, title, sheets); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// tool finds a program. Without it the test skips, or fails where
// TOPPLATE_REQUIRE says that it must be there.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	switch {
	case err == nil:
		return path
	case os.Getenv("TOPPLATE_REQUIRE") != "":
		t.Fatalf("no %s, and TOPPLATE_REQUIRE is set", name)
	}
	t.Skipf("no %s: the document is not read back", name)
	return ""
}

// run hands a document to a program of poppler, which reads the file named
// "in", and returns what it says. Poppler mends broken files and says so, which
// fails.
func run(t *testing.T, document []byte, program string, args ...string) string {
	t.Helper()
	path := tool(t, program)
	in := filepath.Join(t.TempDir(), "in.pdf")
	if err := os.WriteFile(in, document, 0o666); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		if a == "in" {
			args[i] = in
		}
	}
	out, err := exec.Command(path, args...).CombinedOutput()
	if err != nil || bytes.Contains(out, []byte("Syntax Error")) || bytes.Contains(out, []byte("Syntax Warning")) {
		t.Fatalf("%s: %v: %s", program, err, out)
	}
	return string(out)
}
