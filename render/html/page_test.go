package html

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"
)

const hostile = `<script>alert(1)</script>&"'<img src=x onerror=alert(1)>`

// Whatever texts say, the page has no element that is not its own, and each
// text is in it as it was.
func TestTextsStayTexts(t *testing.T) {
	p := Page{
		Lang: "en", Title: hostile, Subtitle: hostile, Summary: []string{hostile}, Foot: hostile,
		Sheets:   []Sheet{{ID: "floor-1", Title: hostile, Desc: hostile, Width: 431.8, Height: 279.4, SVG: []byte("<svg/>")}},
		Tables:   []Table{{ID: "t", Title: hostile, Head: []string{hostile}, Rows: [][]string{{hostile}}}},
		Cautions: []Note{{hostile, hostile}},
	}
	var b bytes.Buffer
	if err := Write(&b, p); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{"<script", "<img src=x", "onerror=alert(1)>"} {
		if strings.Contains(b.String(), bad) {
			t.Errorf("the page has %s", bad)
		}
	}
	if got := strings.Count(read(t, b.String()), hostile); got < 9 {
		t.Errorf("the hostile text is there %d times, want 9 at least", got)
	}
	if !strings.Contains(b.String(), "size: 431.8mm 279.4mm") {
		t.Error("the paper of the sheet is not asked for")
	}
}

// read is the character data and attributes of the page, read as HTML that is
// well-formed XML but for its void elements.
func read(t *testing.T, page string) string {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var out strings.Builder
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out.String()
		}
		if err != nil {
			t.Fatal(err)
		}
		switch tok := tok.(type) {
		case xml.CharData:
			out.Write(tok)
		case xml.StartElement:
			for _, a := range tok.Attr {
				out.WriteString(a.Value)
			}
		}
	}
}

func TestBadSheetIDs(t *testing.T) {
	for _, id := range []string{"a b", "}", "ä", "</style>"} {
		if err := Write(io.Discard, Page{Sheets: []Sheet{{ID: id}}}); err == nil {
			t.Errorf("no error for a sheet called %q", id)
		}
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWriteError(t *testing.T) {
	if err := Write(failing{}, Page{}); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("error %v", err)
	}
}
