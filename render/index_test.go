package render_test

import (
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"topplate/plan/source"
	"topplate/render"
	"topplate/render/sheet"
)

// The index page of every sample, printed by a browser, has each sheet on one
// page of its own size, true to scale, and nothing runs or is loaded, whatever
// the job is called.
func TestIndexPrintsCleanly(t *testing.T) {
	ctx, cancel := browser(t)
	defer cancel()
	for _, job := range samples(t) {
		res := solve(t, job, source.ReadFile) // its name is changed
		res.Job.Name = `<script>document.title="ran"</script> & "quoted" ' العربية 🏠`
		all := whole(t, res)
		files, err := render.Folder(all, render.Also{Sketch: true})
		if err != nil {
			t.Fatal(err)
		}
		dir := t.TempDir()
		path := filepath.Join(dir, "index.html")
		if err := os.WriteFile(path, content(t, files, "index.html"), 0o666); err != nil {
			t.Fatal(err)
		}
		if _, err := chromedp.Run(ctx, chromedp.Navigate("file://"+path)); err != nil {
			t.Fatal(err)
		}
		title, err := chromedp.Run(ctx, chromedp.Title())
		if err != nil {
			t.Fatal(err)
		}
		printed, err := chromedp.Run(ctx, chromedp.PrintToPDF(chromedp.PDFPaper(listPaper), chromedp.PDFPreferCSSPageSize(), chromedp.PDFPrintBackground()))
		if err != nil {
			t.Fatal(err)
		}
		if title != res.Job.Name {
			t.Errorf("%s: the title is %q, want the job's name", name(job), title)
		}
		pages := pageSizes(t, printed)
		sheets := everySheet(all)
		for _, s := range sheets {
			w, h := float64(s.Width)/(25.4*float64(sheet.MM))*72, float64(s.Height)/(25.4*float64(sheet.MM))*72
			printed, drawn := 0, 0
			for _, p := range pages {
				if math.Abs(p[0]-w) < 1 && math.Abs(p[1]-h) < 1 {
					printed++
				}
			}
			for _, o := range sheets {
				if o.Width == s.Width && o.Height == s.Height {
					drawn++
				}
			}
			if tiled(files) && s.Width == sheets[0].Width && s.Height == sheets[0].Height {
				drawn++ // the legend of all tiles is no sheet of a set
			}
			if printed != drawn {
				t.Errorf("%s: %d printed pages are %.1f by %.1f points, as %d sheets are: %v", name(job), printed, w, h, drawn, pages)
			}
		}
		if lists := len(pages) - len(sheets); lists > mostListPages+len(res.Routes) {
			t.Errorf("%s prints %d pages of lists", name(job), lists)
		}
	}
}

// listPaper is what the lists are printed on here: no sheet has its size, Legal.
var listPaper = chromedp.PaperSize{Width: 8.5, Height: 14}

// mostListPages is more than the lists of any sample take when printed.
const mostListPages = 20

var sizeLine = regexp.MustCompile(`Page +\d+ size: +([\d.]+) x ([\d.]+) pts`)

// pageSizes are the widths and heights of a document's pages, in points, as
// pdfinfo tells them.
func pageSizes(t *testing.T, pdf []byte) [][2]float64 {
	t.Helper()
	if _, err := exec.LookPath("pdfinfo"); err != nil {
		if os.Getenv("TOPPLATE_REQUIRE") != "" {
			t.Fatal("no pdfinfo, and TOPPLATE_REQUIRE is set")
		}
		t.Skip("no pdfinfo: printed pages are not measured")
	}
	path := filepath.Join(t.TempDir(), "printed.pdf")
	if err := os.WriteFile(path, pdf, 0o666); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdfinfo", "-l", "1000", path).CombinedOutput()
	if err != nil {
		t.Fatalf("pdfinfo: %v\n%s", err, out)
	}
	var sizes [][2]float64
	for _, m := range sizeLine.FindAllStringSubmatch(strings.ReplaceAll(string(out), "  ", " "), -1) {
		w, _ := strconv.ParseFloat(m[1], 64)
		h, _ := strconv.ParseFloat(m[2], 64)
		sizes = append(sizes, [2]float64{w, h})
	}
	return sizes
}

// tiled reports whether a folder has the legend that goes with tiles.
func tiled(files []render.File) bool {
	return slices.ContainsFunc(files, func(f render.File) bool { return f.Name == "legend.svg" })
}
