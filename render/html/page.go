// Package html puts a job on one page that a browser shows and prints.
//
// Sheets as SVG and tables come in; one self-contained file goes out, with the
// sheets inside it, each on paper of its own size when it is printed. The page
// has no script and loads nothing. The package knows nothing of what is on the
// sheets, and never touches files.
package html

import (
	_ "embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
)

// A Page is what is shown, in this order.
type Page struct {
	Lang, Title, Subtitle string
	Summary               []string // sentences that say what the job is and how good the plan
	Sheets                []Sheet
	Tables                []Table
	Cautions              []Note
	Foot                  string
}

// A Sheet is one drawing. Width and Height are in millimetres.
type Sheet struct {
	ID, Title, Desc string
	Width, Height   float64
	SVG             []byte
}

// A Table has as many cells in every row as in its head.
type Table struct {
	ID, Title string
	Head      []string
	Rows      [][]string
}

// A Note is a heading with a text.
type Note struct{ Title, Text string }

//go:embed page.tmpl
var text string

var page = template.Must(template.New("page").Funcs(template.FuncMap{
	// A short text, such as a length, stays on one line.
	"short": func(cell string) bool { return len(cell) <= shortCell },
	// An SVG as the source of an image: scripts in it would not run, and its
	// ids are its own.
	"image": func(svg []byte) template.URL {
		return template.URL("data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString(svg)) //nolint:gosec // base64 alone
	},
	"paper": func(s Sheet) template.CSS {
		return template.CSS(fmt.Sprintf("@page sheet-%s { size: %.1fmm %.1fmm; margin: 0 }", s.ID, s.Width, s.Height)) //nolint:gosec // checked by Write
	},
	"use": func(s Sheet) template.CSS { return template.CSS("page: sheet-" + s.ID) }, //nolint:gosec // checked by Write
}).Parse(text))

const shortCell = 14

// Write writes the page. Ids of sheets are letters, digits, hyphens and underscores; every
// other text is escaped.
func Write(w io.Writer, p Page) error {
	for _, s := range p.Sheets {
		for _, c := range s.ID {
			if (c < 'a' || c > 'z') && (c < 'A' || c > 'Z') && (c < '0' || c > '9') && c != '-' && c != '_' {
				return fmt.Errorf("html: %q in the id of a sheet", c)
			}
		}
	}
	if err := page.Execute(w, p); err != nil {
		return fmt.Errorf("writing the page: %w", err)
	}
	return nil
}
