package svg

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The library that writes elements does not escape attributes and loses
// errors, so that only the canvas may use it.
func TestOnlyTheCanvasImportsTheLibrary(t *testing.T) {
	root := os.DirFS("../..")
	var users []string
	err := fs.WalkDir(root, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") {
			return err
		}
		src, err := fs.ReadFile(root, path)
		if err != nil {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, src, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range file.Imports {
			if name, _ := strconv.Unquote(i.Path.Value); strings.HasPrefix(name, "github.com/ajstarks/svgo") {
				users = append(users, path)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{"render/svg/canvas.go"}; !slices.Equal(users, want) {
		t.Errorf("the library is imported by %v, want %v", users, want)
	}
}
