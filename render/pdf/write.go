package pdf

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"time"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"

	"topplate/render/font"
	"topplate/render/sheet"
)

// undated stands where the format wants a time: a document that told when it
// was made would differ from one run to the next. The date of a job is in the
// title blocks.
var undated = time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)

// Write writes the sheets as one document of the given title, a page for each
// in order. It returns what Check says of any sheet, or that there is none,
// before anything is written, or the first error of w. Readers need not show
// pages of more than 14 400 points, about 5 m (ISO 32000-1:2008, annex C.2).
//
// It takes time in proportion to the size of the sheets, and holds the whole
// document in memory.
func Write(w io.Writer, title string, sheets []*sheet.Sheet) error {
	if err := check(sheets); err != nil {
		return err
	}
	d := newDocument(title, sheets)
	for i, s := range sheets {
		d.lib.SetPage(i + 1)
		p := page{document: d, height: s.Height}
		p.draw(s)
	}
	if err := d.lib.Output(w); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// check gathers the faults of all sheets.
func check(sheets []*sheet.Sheet) error {
	if len(sheets) == 0 {
		return errors.New("pdf: there is no sheet to write")
	}
	var faults []error
	for i, s := range sheets {
		if s == nil {
			faults = append(faults, fmt.Errorf("pdf: sheet %d is nil", i+1))
		} else {
			faults = append(faults, s.Check())
		}
	}
	if err := errors.Join(faults...); err != nil {
		return err
	}
	return pictureFaults(sheets)
}

// A document is what all pages share.
type document struct {
	lib *fpdf.Fpdf
}

// newDocument begins a document that has all pages, still empty, and their
// bookmarks. These come before any font is chosen: the library would encode
// their titles a second time, and loses characters beyond the first 65 536.
func newDocument(title string, sheets []*sheet.Sheet) *document {
	lib := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: size(sheets[0])})
	lib.SetCatalogSort(true)
	lib.SetCreationDate(undated)
	lib.SetModificationDate(undated)
	lib.SetAutoPageBreak(false, 0)
	lib.SetTitle(textString(title), false)
	lib.SetSubject(textString(descriptions(sheets)), false)
	lib.SetCreator(textString("topplate"), false)
	lib.SetProducer(textString("topplate"), false)
	lib.SetLang(language(sheets[0].Lang))
	last := size(sheets[len(sheets)-1]).Ht
	for _, s := range sheets {
		own := size(s)
		lib.AddPageFormat("P", own)
		// The library counts from the top of the last page, whichever page the
		// bookmark is on, and takes -1 for the place of its cursor.
		lib.Bookmark(textString(s.Title), 0, last-own.Ht+1e-6)
	}
	d := &document{lib}
	d.addFonts(sheets)
	return d
}

func size(s *sheet.Sheet) fpdf.SizeType {
	return fpdf.SizeType{Wd: millimetres(s.Width), Ht: millimetres(s.Height)}
}

// descriptions says what is on the sheets.
func descriptions(sheets []*sheet.Sheet) string {
	var all []string
	for _, s := range sheets {
		if s.Desc != "" {
			all = append(all, s.Desc)
		}
	}
	return strings.Join(all, " ")
}

// textString encodes what a reader shows outside of the pages: in UTF-16 with
// a byte order mark (ISO 32000-1:2008, 7.9.2.2). No embedded font draws it, so
// all that can be seen stays.
func textString(s string) string {
	plain := font.Plain(s)
	if plain == "" {
		return ""
	}
	out := []byte{0xFE, 0xFF}
	for _, unit := range utf16.Encode([]rune(plain)) {
		out = append(out, byte(unit>>8), byte(unit))
	}
	return string(out)
}

// language returns tag if it has only what a tag of BCP 47 can have. The
// library copies it into the file as it is.
func language(tag string) string {
	for _, c := range tag {
		if c != '-' && (c < '0' || c > '9') && (c|0x20 < 'a' || c|0x20 > 'z') {
			return ""
		}
	}
	return tag
}
