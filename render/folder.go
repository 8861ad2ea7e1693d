package render

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"slices"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/rule"
	"topplate/render/dxf"
	"topplate/render/html"
	"topplate/render/pdf"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/render/svg"
	"topplate/route"
	"topplate/route/work"
)

// A File is one file of a job folder.
type File struct {
	Name string
	Data []byte
}

// Sheets draws every sheet of the set, in order: the openings; from the lowest
// up, the floors of the levels that the installer comes to and the framing
// spaces that cable lies in, each with how holes are found there; these on
// tiles where the house is too large. If there are two plans to choose from or
// more, the last sheet compares them.
func Sheets(w *work.Work, plans ...route.Choice) []*sheet.Sheet {
	res := w.Result
	var pages []*drawing
	for _, k := range plansOf(w) {
		pages = append(pages, k.pages(res)...)
	}
	openings := openingsSets(res)
	first := 0
	for _, s := range openings {
		first += len(s.pages)
	}
	of := first + len(pages)
	if len(plans) > 1 {
		of++
	}
	var out []*sheet.Sheet
	for _, s := range openings {
		out = append(out, s.sheets(len(out)+1, of)...)
	}
	for i, p := range pages {
		place := fmt.Sprintf("%d of %d", first+i+1, of)
		if p.tile != nil {
			place = fmt.Sprintf("%s: %s", p.sheet.ID, place)
		}
		p.number(place)
		out = append(out, p.sheet)
	}
	if len(plans) > 1 {
		out = append(out, choicesSheet(res, plans, of, of))
	}
	return out
}

// plansOf are the plans of a job, in order.
func plansOf(w *work.Work) []*planKind {
	var out []*planKind
	for _, k := range scopesOf(w.Result) {
		if k.space < 0 {
			out = append(out, floorPlan(w.Result, k.level))
			continue
		}
		out = append(out, spacePlan(w.Result, k.space))
		if f := fixPlan(w, k.space); f != nil {
			out = append(out, f)
		}
	}
	return out
}

// scopesOf are what there is a plan of, from the lowest up.
func scopesOf(res *route.Result) []scope {
	h := res.Job.House
	var out []scope
	for _, level := range byHeight(h) {
		if len(h.Levels) == 1 || passed(res, level) {
			out = append(out, levelScope(level))
		}
	}
	for _, space := range spacesInUse(res) {
		out = append(out, spaceScope(space))
	}
	height := func(s scope) measure.Length {
		if s.space < 0 {
			return h.Levels[s.level].Floor
		}
		return h.Spaces[s.space].Base
	}
	// Of what begins at one height, an attic comes last.
	attic := func(s scope) int {
		if s.space >= 0 && h.Spaces[s.space].Kind == plan.AtticSpace {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(out, func(a, b scope) int {
		return cmp.Or(cmp.Compare(height(a), height(b)), cmp.Compare(attic(a), attic(b)), cmp.Compare(spaceName(h, a), spaceName(h, b)))
	})
	return out
}

// spaceName is the id of a space, nothing for a level.
func spaceName(h *plan.House, s scope) string {
	if s.space < 0 {
		return ""
	}
	return h.Spaces[s.space].ID
}

// paperOnly are the classes of groups that stand on the paper and not in the
// house.
var paperOnly = []string{"frame", "column", "title-block", "scale", "north"}

// Also is what a folder has only if it is asked for.
type Also struct {
	Plans  []route.Choice // to choose from, if there are two or more
	Sketch bool           // the sheets that check the sketch
}

// Folder makes the files of a job folder: an index page, every sheet as SVG,
// one PDF of all, the floors and the spaces as DXF, the tables as CSV, the
// schedule as text and the results as JSON. The manifest comes last.
func Folder(w *work.Work, also Also) ([]File, error) {
	res := w.Result
	f := &folder{res: res, sheets: slices.Concat(Sheets(w, also.Plans...), Details(res), Schedules(w), []*sheet.Sheet{Estimate(w)})}
	if also.Sketch {
		f.sheets = append(f.sheets, Sketch(res)...)
	}
	if l := legendSheet(res, f.sheets); l != nil {
		f.sheets = append(f.sheets, l)
	}
	page := html.Page{
		Lang: "en", Title: res.Job.Name, Subtitle: res.Job.House.Name + ", " + res.Job.House.Place,
		Summary: report.Summary(res), Cautions: cautionNotes(res), Foot: report.Deference,
	}
	var drawings []File
	for _, s := range f.sheets {
		b := f.make(s.ID+".svg", func(w io.Writer) error { return svg.Write(w, s, svg.Options{}) })
		drawings = append(drawings, b)
		page.Sheets = append(page.Sheets, html.Sheet{
			ID: s.ID, Title: s.Title, Desc: s.Desc, Width: float64(s.Width) / float64(sheet.MM), Height: float64(s.Height) / float64(sheet.MM), SVG: b.Data,
		})
	}
	var lists []File
	for _, t := range report.Tables(w) {
		lists = append(lists, f.make(t.ID+".csv", t.CSV))
		page.Tables = append(page.Tables, html.Table(t))
	}
	f.add(f.make("index.html", func(w io.Writer) error { return html.Write(w, page) }))
	f.add(drawings...)
	f.add(f.make("sheets.pdf", func(w io.Writer) error { return pdf.Write(w, res.Job.Name, f.sheets) }))
	f.exchange()
	f.add(lists...)
	f.add(f.make("schedule.txt", func(out io.Writer) error { return report.Schedule(out, w) }))
	f.add(f.make("results.json", func(out io.Writer) error { return report.JSON(out, w) }))
	if f.err != nil {
		return nil, f.err
	}
	m := ManifestOf(res.Job, f.files)
	last, err := m.File()
	return append(f.files, last), err
}

// A folder gathers files and keeps the first error.
type folder struct {
	res    *route.Result
	sheets []*sheet.Sheet
	files  []File
	err    error
}

func (f *folder) add(files ...File) { f.files = append(f.files, files...) }

func (f *folder) make(name string, write func(io.Writer) error) File {
	var b bytes.Buffer
	if err := write(&b); err != nil && f.err == nil {
		f.err = fmt.Errorf("making %s: %w", name, err)
	}
	return File{name, b.Bytes()}
}

// exchange writes the plans that other drawing programs may want to read, each
// whole.
func (f *folder) exchange() {
	for _, scope := range scopesOf(f.res) {
		k := floorPlan(f.res, max(0, scope.level))
		if scope.space >= 0 {
			k = spacePlan(f.res, scope.space)
		}
		s := f.find(k.id)
		if s == nil {
			s = k.whole(f.res)
		}
		f.add(f.make(s.ID+".dxf", func(w io.Writer) error {
			return dxf.Write(w, s, dxf.Options{View: s.View, Units: f.res.Job.House.Units, Omit: paperOnly})
		}))
	}
}

// find is the sheet with an id, nil if there is none.
func (f *folder) find(id string) *sheet.Sheet {
	for _, s := range f.sheets {
		if s.ID == id {
			return s
		}
	}
	return nil
}

func cautionNotes(res *route.Result) []html.Note {
	var out []html.Note
	for _, id := range res.Cautions {
		rl, _ := rule.Lookup(id)
		out = append(out, html.Note{Title: rl.Title, Text: rl.Text})
	}
	return out
}
