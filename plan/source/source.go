// Package source reads the TOML that a user wrote and asks it questions.
//
// The bytes of a file come in; a Table goes out whose typed getters return
// values and, for everything that is missing, of the wrong type or out of
// range, add a diagnostic with its line and column to one shared list. No
// getter stops at the first fault, so that a user mends all of them at once.
// Keys are case-sensitive, and a key that nobody asked for is reported.
//
// The package knows TOML and lengths. It never knows what a key means, and no
// other package imports a TOML library: github.com/BurntSushi/toml decodes,
// the parser of github.com/pelletier/go-toml/v2 says where things stand, and
// that module's decoder is asked as well because the first accepts some
// documents that are not TOML.
//
//	root, problems := source.Parse("hall.toml", src)
//	if root == nil {
//		return problems
//	}
//	walls, _ := root.Tables("wall", source.Required)
//	for _, wall := range walls {
//		height, ok := wall.Length("height", source.Required, heights)
//		...
//	}
//	root.Done()
package source

import (
	"sort"

	"topplate/plan/diag"
	"topplate/plan/measure"
)

// Limits of what is read. A sketch of a large house is 50 kB with 5 000
// values, 4 levels deep; the limits keep a hostile or mistaken file from
// taking the machine's memory.
const (
	maxFile   = 4 << 20  // bytes of a file with tables
	maxRead   = 16 << 20 // bytes of any file: a picture, too
	maxValues = 200_000  // keys and elements of arrays in a file
	maxKeys   = 30_000   // parts of dotted keys in a file; a decoder takes time in their square
	maxDepth  = 16       // tables and arrays inside one another
	maxKey    = 64       // bytes of one part of a dotted key
)

// A Need says whether a key may be left out.
type Need bool

// The two needs.
const (
	Optional Need = false
	Required Need = true
)

// A document is one file while it is read.
type document struct {
	name  string
	src   []byte // without byte order mark
	lines []int  // offset of the start of each line in src
	diags *diag.List
	units measure.System // in which messages speak of lengths
}

func newDocument(name string, src []byte) *document {
	d := &document{name: name, src: src[:len(src):len(src)], lines: []int{0}, diags: &diag.List{}}
	for i, c := range src {
		if c == '\n' {
			d.lines = append(d.lines, i+1)
		}
	}
	return d
}

// pos is the place of the byte at offset, 0 <= offset <= len(d.src).
func (d *document) pos(offset int) diag.Pos {
	line := sort.SearchInts(d.lines, offset+1)
	return diag.Pos{File: d.name, Line: line, Col: offset - d.lines[line-1] + 1}
}

// fileErrorf adds an error about the file as a whole.
func (d *document) fileErrorf(format string, args ...any) {
	d.diags.Errorf(diag.Pos{File: d.name}, "", format, args...)
}

// errorAt adds an error about the text at offset.
func (d *document) errorAt(offset int, format string, args ...any) *diag.Diagnostic {
	return d.diags.Errorf(d.pos(offset), "", format, args...)
}
