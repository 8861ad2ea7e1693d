package render_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/chromedp/chromedp"

	"topplate/plan/randomhouse"
	"topplate/render/svg"
)

// housesInBrowser is how many random houses are looked at in a browser.
// TOPPLATE_HOUSES=100 takes more, and a few minutes.
func housesInBrowser(t *testing.T) uint64 {
	t.Helper()
	n, err := strconv.ParseUint(os.Getenv("TOPPLATE_HOUSES"), 10, 16)
	if err != nil {
		return 4
	}
	return n
}

// No two texts of any sheet of random houses overlap as Chromium draws them.
func TestRandomSheetsInBrowser(t *testing.T) {
	ctx, cancel := browser(t)
	defer cancel()
	path := filepath.Join(t.TempDir(), "sheet.svg")
	sheets, texts := 0, 0
	for seed := range housesInBrowser(t) {
		sketch := randomhouse.Generate(seed, randomhouse.Options{Drops: 3 + int(seed%10)})
		for _, s := range everySheet(whole(t, solve(t, "job.toml", sketch.Read))) {
			var b bytes.Buffer
			if err := svg.Write(&b, s, svg.Options{}); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, b.Bytes(), 0o666); err != nil {
				t.Fatal(err)
			}
			if _, err := chromedp.Run(ctx, chromedp.Navigate("file://"+path)); err != nil {
				t.Fatal(err)
			}
			seen, err := chromedp.Run(ctx, chromedp.Evaluate[[]measured](measureTexts, chromedp.EvalAwaitPromise))
			if err != nil {
				t.Fatal(err)
			}
			if overlaps(t, seen); t.Failed() {
				t.Fatalf("seed %d, sheet %s", seed, s.ID)
			}
			sheets, texts = sheets+1, texts+len(seen)
		}
	}
	t.Logf("%d texts on %d sheets, none over another", texts, sheets)
}
