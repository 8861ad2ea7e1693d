package render_test

import (
	"context"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"topplate/render"
	"topplate/render/font"
	"topplate/render/sheet"
)

// chromium finds the browser. Without one the test skips, or fails where
// TOPPLATE_REQUIRE says that there must be one.
func chromium(t *testing.T) string {
	t.Helper()
	path, err := exec.LookPath("chromium")
	switch {
	case err == nil:
		return path
	case os.Getenv("TOPPLATE_REQUIRE") != "":
		t.Fatal("no chromium, and TOPPLATE_REQUIRE is set")
	}
	t.Skip("no chromium: what only a browser can tell is not tested")
	return ""
}

// measured is a text as the browser draws it, in millimetres of the sheet.
type measured struct {
	Words               string
	X, Y, Width, Height float64
	Length              float64
}

const measureTexts = `document.fonts.ready.then(() => {
  const svg = document.querySelector('svg'), out = [];
  const box = svg.getBoundingClientRect(), k = box.width / svg.viewBox.baseVal.width;
  for (const t of svg.querySelectorAll('text')) {
    const r = t.getBoundingClientRect();
    out.push({Words: t.textContent, X: (r.x - box.x) / k, Y: (r.y - box.y) / k, Width: r.width / k, Height: r.height / k, Length: t.getComputedTextLength()});
  }
  return out;
})`

// content is what a folder has in a file.
func content(t *testing.T, files []render.File, name string) []byte {
	t.Helper()
	for _, f := range files {
		if f.Name == name {
			return f.Data
		}
	}
	t.Fatalf("the folder has no %s", name)
	return nil
}

// TestSheetsInBrowser holds the sheets of all samples against Chromium: no two
// texts overlap as they are really drawn, and each is as long as we measured,
// within 2 %.
func TestSheetsInBrowser(t *testing.T) {
	ctx, cancel := browser(t)
	defer cancel()
	dir := t.TempDir()
	for _, job := range samples(t) {
		res := solveFile(t, job)
		w := whole(t, res)
		files, err := render.Folder(w, render.Also{Sketch: true})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range everySheet(w) {
			path := filepath.Join(dir, name(job)+s.ID+".svg")
			if err := os.WriteFile(path, content(t, files, s.ID+".svg"), 0o666); err != nil {
				t.Fatal(err)
			}
			if _, err := chromedp.Run(ctx, chromedp.Navigate("file://"+path)); err != nil {
				t.Fatal(err)
			}
			texts, err := chromedp.Run(ctx, chromedp.Evaluate[[]measured](measureTexts, chromedp.EvalAwaitPromise))
			if err != nil {
				t.Fatal(err)
			}
			t.Run(name(job)+"/"+s.ID, func(t *testing.T) {
				overlaps(t, texts)
				widths(t, s, texts)
			})
		}
	}
}

func browser(t *testing.T) (context.Context, func()) {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(chromium(t)), chromedp.NoSandbox,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-background-networking", true))
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, cancel := chromedp.NewContext(ctx)
	return ctx, func() { cancel(); stop() }
}

// overlaps fails if two boxes of texts share more than a sliver. The browser's
// boxes go from ascent to descent and are taller than the ink, so a tenth of
// their height is left out of account on either side.
func overlaps(t *testing.T, texts []measured) {
	t.Helper()
	if len(texts) < 20 {
		t.Errorf("only %d texts", len(texts))
	}
	const sliver = 0.02
	for i, a := range texts {
		for _, b := range texts[:i] {
			ax, ay := inner(a)
			bx, by := inner(b)
			if ax[0]+sliver < bx[1] && bx[0]+sliver < ax[1] && ay[0]+sliver < by[1] && by[0]+sliver < ay[1] {
				t.Errorf("%q at %.1f, %.1f overlaps %q at %.1f, %.1f", a.Words, a.X, a.Y, b.Words, b.X, b.Y)
			}
		}
	}
}

// inner is the box of a text without the space above capitals and below tails,
// which lies across its direction of reading.
func inner(m measured) (x, y [2]float64) {
	x, y = [2]float64{m.X, m.X + m.Width}, [2]float64{m.Y, m.Y + m.Height}
	if math.Abs(m.Height-m.Length) < math.Abs(m.Width-m.Length) { // it stands upright
		x[0], x[1] = x[0]+m.Width*0.15, x[1]-m.Width*0.1
		return x, y
	}
	y[0], y[1] = y[0]+m.Height*0.15, y[1]-m.Height*0.1
	return x, y
}

// widths compares the length of each text with our own measure of it.
func widths(t *testing.T, s *sheet.Sheet, texts []measured) {
	t.Helper()
	ours := map[string][]sheet.Paper{}
	for item := range s.All() {
		if text, ok := item.(sheet.Text); ok {
			words := font.Clean(text.Lettering.Style().Face, text.Words)
			ours[words] = append(ours[words], font.Width(text.Lettering, text.Words))
		}
	}
	worst := 0.0
	for _, m := range texts {
		best := math.Inf(1)
		for _, w := range ours[m.Words] {
			best = min(best, math.Abs(m.Length-float64(w)/1000)/(float64(w)/1000))
		}
		worst = max(worst, best)
		if best > 0.02 {
			t.Errorf("%q is %.2f mm long in the browser, %v µm by our measure", m.Words, m.Length, ours[m.Words])
		}
	}
	t.Logf("widths differ by %.2f %% at most over %d texts", 100*worst, len(texts))
}

// Every SVG is well-formed XML with ids that are used once.
func TestSheetsAreWellFormed(t *testing.T) {
	for _, job := range samples(t) {
		files, err := render.Folder(whole(t, solveFile(t, job)), render.Also{Sketch: true})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			if filepath.Ext(f.Name) == ".svg" {
				if err := wellFormed(f.Data); err != nil {
					t.Errorf("%s/%s: %v", name(job), f.Name, err)
				}
			}
		}
	}
}

func wellFormed(data []byte) error {
	d := xml.NewDecoder(strings.NewReader(string(data)))
	ids := map[string]bool{}
	for {
		token, err := d.Token()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		for _, a := range start.Attr {
			if a.Name.Local == "id" {
				if ids[a.Value] {
					return fmt.Errorf("id %s is used twice", a.Value)
				}
				ids[a.Value] = true
			}
		}
	}
}
