package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// layers is a statement of policy: a package may import packages of its own
// layer's tree and of the layers listed for it. Do not change it to make a
// build pass.
var layers = map[string][]string{
	"cmd":    {"render", "route", "plan"},
	"render": {"route", "plan"},
	"route":  {"plan"},
	"plan":   {},
}

// confined lists modules that only one package or two may import, in tests
// too.
var confined = map[string][]string{
	"github.com/BurntSushi/toml":      {"plan/source"},
	"github.com/pelletier/go-toml/v2": {"plan/source"},
	"github.com/ajstarks/svgo":        {"render/svg"},
	"github.com/spf13/cobra":          {"cmd/topplate"},
	"golang.org/x/image":              {"render/font"},
	"codeberg.org/go-pdf/fpdf":        {"render/font", "render/pdf"},
}

func TestImportsGoOneWay(t *testing.T) {
	seen := 0
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") {
			return err
		}
		seen++
		rel := filepath.ToSlash(strings.TrimPrefix(path, "../../"))
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range f.Imports {
			p, _ := strconv.Unquote(spec.Path.Value)
			checkImport(t, rel, p)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if seen < 50 {
		t.Fatalf("only %d files were looked at", seen)
	}
}

func checkImport(t *testing.T, file, imported string) {
	t.Helper()
	layer, _, _ := strings.Cut(file, "/")
	if own, ok := strings.CutPrefix(imported, "topplate/"); ok {
		target, _, _ := strings.Cut(own, "/")
		if !allowed(layer, target) {
			t.Errorf("%s imports %s: %s may not import %s", file, imported, layer, target)
		}
	}
	for module, only := range confined {
		in := func(folder string) bool { return strings.HasPrefix(file, folder+"/") }
		if (imported == module || strings.HasPrefix(imported, module+"/")) && !slices.ContainsFunc(only, in) {
			t.Errorf("%s imports %s, which only %v may", file, imported, only)
		}
	}
}

func allowed(layer, target string) bool {
	if layer == target {
		return true
	}
	for _, l := range layers[layer] {
		if l == target {
			return true
		}
	}
	return false
}

// The policy itself must be able to fail.
func TestLayersForbid(t *testing.T) {
	for _, c := range []struct {
		layer, target string
		want          bool
	}{
		{"plan", "route", false},
		{"route", "render", false},
		{"render", "cmd", false},
		{"cmd", "plan", true},
		{"route", "route", true},
	} {
		if got := allowed(c.layer, c.target); got != c.want {
			t.Errorf("allowed(%s, %s) = %v, want %v", c.layer, c.target, got, c.want)
		}
	}
}
