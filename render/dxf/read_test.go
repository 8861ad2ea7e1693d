package dxf_test

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
)

// reader is a program that reads a drawing with the library ezdxf and says in
// JSON what is in it.
//
//go:embed testdata/read.py
var reader string

// An entity is what ezdxf reads. Lengths are in the units of the drawing.
type entity struct {
	Type, Layer, Linetype string
	Colour                int
	Points                [][2]float64 // ends, corners, the centre, or the place that a text hangs on
	Bulges                []float64
	Closed                bool
	Width                 float64
	Radius, Start, End    float64
	Text                  string
	Height, Rotation      float64
	Align                 int
}

// A file is what ezdxf says of one drawing.
type file struct {
	Version         string
	Errors, Fixes   []string
	Header          map[string]float64
	Extents, Limits [2][2]float64
	Layers          []string
	Linetypes       map[string][]float64 // dashes
	Entities        []entity
}

// python is the system's own, which has the library from a package of the
// distribution.
const python = "/usr/bin/python3"

// known holds what has been read: the library takes long to start.
var known = map[string]file{}

// readAll hands all drawings to ezdxf at once. Without it the test skips, or
// fails where TOPPLATE_REQUIRE says that it must be there.
func readAll(t *testing.T) map[string]file {
	t.Helper()
	if len(known) > 0 {
		return known
	}
	if err := exec.Command(python, "-c", "import ezdxf").Run(); err != nil {
		if os.Getenv("TOPPLATE_REQUIRE") != "" {
			t.Fatal("no ezdxf, and TOPPLATE_REQUIRE is set")
		}
		t.Skip("no ezdxf: the drawing is not read back")
	}
	all := drawings(t)
	names := slices.Sorted(maps.Keys(all))
	args := []string{"-c", reader}
	dir := t.TempDir()
	for i, name := range names {
		path := filepath.Join(dir, fmt.Sprintf("%d.dxf", i))
		if err := os.WriteFile(path, all[name], 0o666); err != nil {
			t.Fatal(err)
		}
		args = append(args, path)
	}
	var complaint bytes.Buffer
	command := exec.Command(python, args...)
	command.Stderr = &complaint
	out, err := command.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, complaint.String())
	}
	var files []file
	if err := json.Unmarshal(out, &files); err != nil {
		t.Fatal(err)
	}
	for i, f := range files {
		known[names[i]] = f
	}
	return known
}

// What is written needs no mending.
func TestAuditFindsNothing(t *testing.T) {
	for name, f := range readAll(t) {
		if len(f.Errors)+len(f.Fixes) > 0 || f.Version != "AC1009" {
			t.Errorf("%s is %s, with the errors %v and the fixes %v", name, f.Version, f.Errors, f.Fixes)
		}
	}
}
