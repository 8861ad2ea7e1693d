package render_test

import (
	"encoding/binary"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/plan/rule"
	"topplate/plan/source"
	"topplate/render"
	"topplate/render/font"
	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/route/order"
	"topplate/route/work"
)

// lists gathers what is on the sheets of a schedule, by the id of the group.
type lists map[string]*written

// A written list is its texts in the order of drawing, without spaces, and how
// many boxes to tick and lines under rows it has.
type written struct {
	flow        strings.Builder
	ticks, ends int
}

// squeezed is a text as it is drawn, without its spaces: lines may break it.
func squeezed(s string) string {
	return strings.NewReplacer(" ", "", "\u00A0", "").Replace(font.Clean(sheet.Regular, s))
}

func gather(sheets []*sheet.Sheet) lists {
	out := lists{}
	for _, s := range sheets {
		for _, g := range s.Groups {
			if g.Class != "list" {
				continue
			}
			if out[g.ID] == nil {
				out[g.ID] = &written{}
			}
			for item := range g.All() {
				switch item := item.(type) {
				case sheet.Text:
					out[g.ID].flow.WriteString(squeezed(item.Words))
				case sheet.Poly:
					if item.Pen == sheet.PenMedium && item.Closed {
						out[g.ID].ticks++
					}
				case sheet.Line:
					if item.Pen == sheet.PenZone {
						out[g.ID].ends++
					}
				}
			}
		}
	}
	return out
}

// rows fails unless a list has as many rows as there should be, and the cells
// of each after those of the row before it.
func (l lists) rows(t *testing.T, id string, ticked bool, rows [][]string) {
	t.Helper()
	w := l[id]
	if w == nil {
		if len(rows) > 0 {
			t.Errorf("no list %s for %d rows", id, len(rows))
		}
		return
	}
	if w.ends != len(rows) {
		t.Errorf("%s has %d rows, want %d", id, w.ends, len(rows))
	}
	if ticked && w.ticks != len(rows) {
		t.Errorf("%s has %d boxes to tick for %d rows", id, w.ticks, len(rows))
	}
	rest := w.flow.String()
	for i, row := range rows {
		for _, cell := range row {
			_, after, ok := strings.Cut(rest, squeezed(cell))
			if !ok {
				t.Errorf("%s lacks %q of row %d: %q", id, cell, i, row)
				return
			}
			rest = after
		}
	}
}

// cells are those of a report's table under some heads.
func cells(t *testing.T, tables []report.Table, id string, heads ...string) [][]string {
	t.Helper()
	i := slices.IndexFunc(tables, func(t report.Table) bool { return t.ID == id })
	var out [][]string
	for _, row := range tables[i].Rows {
		var picked []string
		for _, h := range heads {
			picked = append(picked, row[slices.Index(tables[i].Head, h)])
		}
		out = append(out, picked)
	}
	return out
}

// checkRows wants every row of every table on the sheets once.
func checkRows(t *testing.T, w *work.Work, sheets []*sheet.Sheet) {
	t.Helper()
	l, tables := gather(sheets), report.Tables(w)
	steps := cells(t, tables, "order", "step", "what", "drops", "holes")
	for _, d := range w.Tasks.Deferred {
		steps = append(steps, []string{d})
	}
	if len(steps) > 200+len(w.Tasks.Deferred) {
		l.gathered(t, "order", len(steps), gatheredOrder(w))
	} else {
		l.rows(t, "order", true, steps)
	}
	for i := range w.Tasks.Visits {
		v := &w.Tasks.Visits[i]
		for _, text := range []string{fmt.Sprintf("%d", v.Number), v.Place.Title, order.Span(v.Arrive, v.Leave)} {
			if !strings.Contains(l["order"].flow.String(), squeezed(text)) && len(text) < 40 {
				t.Errorf("visit %d: no %q", v.Number, text)
			}
		}
		for _, item := range v.Carry {
			words := []string{item.String()}
			if what, whom, ok := strings.Cut(item.What, " for "); ok && item.Count > 0 {
				words = []string{what + " for", fmt.Sprintf("%d × %s", item.Count, whom)}
			}
			for _, w := range words {
				if !strings.Contains(l["order"].flow.String(), squeezed(w)) {
					t.Errorf("visit %d: nothing says to carry %s", v.Number, item)
				}
			}
		}
	}
	l.saidOnce(t, "list-drops", cells(t, tables, "drops", "drop", "kind", "room", "note", "type", "cut", "along the route", "loop at the closet", "loop at the drop", "trim", "sketch", "allowance"), 4, 7, 8, 9, 10)
	var holes [][]string
	for i := range w.Fixes {
		h := &w.Fixes[i]
		row := []string{h.ID, h.Member, h.Below.Text}
		holes = append(holes, append(row, h.Above.Text...))
	}
	if len(holes) > 30 {
		l.manyHoles(t, w)
	} else {
		l.rows(t, "list-holes", true, holes)
	}
	if cuts := cells(t, tables, "cuts", "running number", "mark expected"); len(cuts) > 100 {
		l.gathered(t, "list-cuts", len(cuts), cuts)
	} else {
		l.rows(t, "list-cuts", true, cells(t, tables, "cuts", "piece", "length", "running number", "mark expected", "stop and check"))
	}
	l.rows(t, "list-spools", false, cells(t, tables, "spools", "cable", "spool", "before", "left", "what is left", "mark at the start", "mark at the end"))
	l.rows(t, "list-parts", true, partRows(t, tables))
	if len(w.Labels) > 24 {
		l.gathered(t, "list-labels", len(w.Labels), gatheredLabels(w))
	} else {
		l.rows(t, "list-labels", true, cells(t, tables, "labels", "label", "on", "where", "other end", "when"))
	}
	l.rows(t, "list-power", false, cells(t, tables, "power", "drop", "device", "at the device", "longest"))
}

// saidOnce is rows, but that what all of at least three rows have in some of the
// columns may stand over them once.
func (l lists) saidOnce(t *testing.T, id string, rows [][]string, columns ...int) {
	t.Helper()
	for _, i := range slices.Backward(columns) {
		if len(rows) < 3 || slices.ContainsFunc(rows, func(r []string) bool { return r[i] != rows[0][i] }) {
			continue
		}
		if over, _, _ := strings.Cut(l[id].flow.String(), squeezed(rows[0][0]+rows[0][1])); !strings.Contains(over, squeezed(rows[0][i])) {
			t.Errorf("%s does not say %q over the rows", id, rows[0][i])
		}
		for k := range rows {
			rows[k] = slices.Delete(slices.Clone(rows[k]), i, i+1)
		}
	}
	l.rows(t, id, false, rows)
}

// partRows are those of the parts. A reason that three drops have is said once.
func partRows(t *testing.T, tables []report.Table) [][]string {
	t.Helper()
	rows := cells(t, tables, "parts", "part", "what", "unit", "needed", "to buy", "why so many")
	for _, row := range rows {
		for _, part := range strings.Split(row[5], "; ") {
			if _, reason, ok := strings.Cut(part, ": "); strings.Count(row[5], ": "+reason) > 2 && ok || strings.Count(row[5], ";") > 1 && !ok {
				row[5] = ""
				break
			}
		}
	}
	return rows
}

// lengthWords find lengths as they are printed.
var lengthWords = regexp.MustCompile(`\d[\d.]* (?:m|mm)\b`)

// manyHoles fails unless every hole of a long list has a box and every length
// that tells how it is found, but for that of the insulation, which is said once.
func (l lists) manyHoles(t *testing.T, w *work.Work) {
	t.Helper()
	list := l["list-holes"]
	if list.ticks != len(w.Fixes) || list.ends != len(w.Fixes) {
		t.Errorf("%d holes have %d boxes and %d rows", len(w.Fixes), list.ticks, list.ends)
	}
	rest := list.flow.String()
	for i := range w.Fixes {
		h := &w.Fixes[i]
		_, after, ok := strings.Cut(rest, h.ID)
		if !ok {
			t.Fatalf("hole %s is left out", h.ID)
		}
		rest = after
		if i+1 < len(w.Fixes) {
			after, _, _ = strings.Cut(after, w.Fixes[i+1].ID)
		}
		for _, text := range append([]string{h.Below.Text}, h.Above.Text...) {
			if strings.HasPrefix(text, "under ") {
				text = ""
			}
			for _, length := range lengthWords.FindAllString(text, -1) {
				if !strings.Contains(after, squeezed(length)) {
					t.Errorf("hole %s: %s of %q is left out", h.ID, length, text)
				}
			}
		}
	}
}

// gathered fails unless a list with several things in a row has a box for each
// thing, fewer rows, and these texts one after the other.
func (l lists) gathered(t *testing.T, id string, things int, rows [][]string) {
	t.Helper()
	w := l[id]
	if w == nil || w.ticks != things || w.ends*3 > things*2 {
		t.Fatalf("%s is %+v, wants %d boxes", id, w, things)
	}
	w.ends = len(rows)
	l.rows(t, id, false, rows)
}

// gatheredOrder is what the rows of a long order of work say.
func gatheredOrder(w *work.Work) [][]string {
	var out [][]string
	told, visits := report.GatherVisits(w.Job, w.Tasks)
	for _, o := range told {
		out = append(out, []string{o.Words})
	}
	for i := range visits {
		for n, g := range visits[i] {
			row := append([]string{g.Words}, g.Items...)
			if alone := g.Often && len(g.Steps) == 1; n == 0 || !alone || !visits[i][n-1].Often || len(visits[i][n-1].Steps) > 1 {
				row = append([]string{g.Steps[0].Number}, row...)
			}
			out = append(out, row)
		}
	}
	return out
}

// gatheredLabels are the first and the last label of each drop, and the port of
// the last, from the labels themselves.
func gatheredLabels(w *work.Work) [][]string {
	var out [][]string
	for i := range w.Labels {
		l := &w.Labels[i]
		if i == 0 || l.Drop != w.Labels[i-1].Drop {
			out = append(out, []string{l.Text})
		}
		if last := i == len(w.Labels)-1 || w.Labels[i+1].Drop != l.Drop; last {
			if l.Cable > 1 {
				out[len(out)-1] = append(out[len(out)-1], l.Text)
			}
			out[len(out)-1] = append(out[len(out)-1], fmt.Sprint(l.Port))
		}
	}
	return out
}

// The office of forty places, several days of work for two, has a schedule that
// can be carried: a line for each thing to do took 62 sheets, and one for each
// row of things alike 35.
func TestScheduleOfAnOffice(t *testing.T) {
	w := whole(t, solve(t, "../samples/small-office/job.toml", source.ReadFile))
	sheets := render.Schedules(w)
	if len(sheets) > 16 {
		t.Errorf("%d sheets", len(sheets))
	}
	if flow := gather(sheets)["order"].flow.String(); w.Tasks.Days < 2 || !strings.Contains(flow, fmt.Sprintf("%ddays,07:00today%d,", w.Tasks.Days, w.Tasks.Days)) || !strings.Contains(flow, "day2,07:0") {
		t.Errorf("no word of %d days", w.Tasks.Days)
	}
}

// Sizes of the page that every sheet for the clipboard keeps, in micrometres:
// the frame and the title block in it.
const (
	frameLeft, frameTop, frameRight, frameBottom = 20_000, 15_000, 10_000, 10_000
	titleBlock                                   = 17_000
)

// checkClip holds a sheet for the clipboard against what each promises: the
// paper, no text over another or struck by a line, and everything between the
// frame and the title block. It returns all words.
func checkClip(t *testing.T, w *work.Work, s *sheet.Sheet) string {
	t.Helper()
	if err := s.Check(); err != nil {
		t.Error(err)
	}
	want := [2]sheet.Paper{215_900, 279_400} // Letter, ASME Y14.1
	if w.Job.House.Units == measure.Metric {
		want = [2]sheet.Paper{210_000, 297_000} // A4, ISO 216
	}
	if got := [2]sheet.Paper{s.Width, s.Height}; got != want {
		t.Errorf("%s is %v, want %v", s.ID, got, want)
	}
	checkStruck(t, s)
	inner := sheet.Box{Min: sheet.Pt(frameLeft, frameTop), Max: sheet.Pt(s.Width-frameRight, s.Height-frameBottom)}
	body := inner
	body.Max.Y -= titleBlock
	var boxes []sheet.Box
	var all []string
	for _, g := range s.Groups {
		room := body
		if g.ID == "title-block" {
			room = sheet.Box{Min: sheet.Pt(inner.Min.X, body.Max.Y), Max: inner.Max}
		}
		for item := range g.All() {
			text, ok := item.(sheet.Text)
			if !ok || text.Words == "" {
				continue
			}
			box := font.Box(text)
			if !room.Contains(box) {
				t.Errorf("%s: %q at %v is out of %v", s.ID, text.Words, box, room)
			}
			for i, other := range boxes {
				if box.Overlaps(other) {
					t.Errorf("%s: %q overlaps %q", s.ID, text.Words, all[i])
				}
			}
			boxes, all = append(boxes, box), append(all, text.Words)
		}
		if g.ID == "frame" || g.ID == "title-block" {
			continue
		}
		for _, line := range g.Strokes() {
			for _, p := range line {
				if !body.Has(p) {
					t.Errorf("%s: group %s has a line to %v, out of %v", s.ID, g.ID, p, body)
				}
			}
		}
	}
	return strings.Join(all, " ")
}

// checkSchedules holds the schedule and the estimate of a job against all that
// they promise.
func checkSchedules(t *testing.T, w *work.Work) []*sheet.Sheet {
	t.Helper()
	sheets := render.Schedules(w)
	for i, s := range sheets {
		if want := fmt.Sprintf("schedule-%d", i+1); s.ID != want {
			t.Errorf("sheet %d is called %s", i, s.ID)
		}
		words := checkClip(t, w, s)
		if want := fmt.Sprintf("sheet %d of %d ", i+1, len(sheets)); !strings.Contains(words, want) {
			t.Errorf("%s does not say %q", s.ID, want)
		}
		if i == 0 {
			checkCautions(t, w, words)
		}
	}
	checkRows(t, w, sheets)
	e := render.Estimate(w)
	words := checkClip(t, w, e)
	checkCautions(t, w, words)
	for _, want := range []string{"date", "signature", "Homeowner", w.Estimate.Money(w.Estimate.Total), fmt.Sprintf("allowance of %d", w.Estimate.Percent)} {
		if !strings.Contains(strings.ReplaceAll(words, "\u00A0", " "), want) {
			t.Errorf("the estimate does not say %q", want)
		}
	}
	return append(sheets, e)
}

func checkCautions(t *testing.T, w *work.Work, words string) {
	t.Helper()
	words = squeezed(words)
	for _, id := range w.Cautions {
		if rl, _ := rule.Lookup(id); !strings.Contains(words, squeezed(rl.Title)) {
			t.Errorf("the caution %q is left out", rl.Title)
		}
	}
	if !strings.Contains(words, squeezed(report.Deference)) {
		t.Error("nothing says who has the last word")
	}
}

func TestSchedulesOfSamples(t *testing.T) {
	for _, job := range samples(t) {
		t.Run(name(job), func(t *testing.T) {
			w := whole(t, solveFile(t, job))
			sheets := checkSchedules(t, w)
			l := gather(sheets)
			l.rows(t, "estimate-rows", false, estimateRows(w))
		})
	}
}

func estimateRows(w *work.Work) [][]string {
	var out [][]string
	for _, r := range w.Estimate.Rows() {
		out = append(out, []string{r.Text, r.Time, r.Amount})
	}
	return out
}

// However much there is to say, the estimate is one sheet with a place to sign,
// and says where the rest is.
func TestEstimateIsOneSheet(t *testing.T) {
	w := whole(t, solveFile(t, "../samples/corner-house/job.toml"))
	notes := w.Estimate.Notes
	for n := range 12 {
		w.Estimate.Notes = slices.Repeat(notes, 1+n*n)
		words := checkClip(t, w, render.Estimate(w))
		rest := strings.Contains(words, "The rest of this page is in schedule.txt.")
		if n == 0 && rest || n > 4 && !rest || !strings.Contains(words, "signature") {
			t.Errorf("%d notes: the rest is elsewhere: %v; %q", len(w.Estimate.Notes), rest, words)
		}
	}
}

// On random houses too, of few drops and of many.
func TestSchedulesOfRandomHouses(t *testing.T) {
	for seed := range uint64(12) {
		o := randomhouse.Options{Drops: 1 + int(seed%8)}
		w := whole(t, solve(t, "job.toml", randomhouse.Generate(seed, o).Read))
		if checkSchedules(t, w); t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

// Names are only text here too: long ones are wrapped and not cut, and what the
// fonts lack is drawn as a box.
func TestSchedulesWithHostileNames(t *testing.T) {
	for _, c := range []string{
		"<script>alert(1)</script>", `a & b "c" 'd'`, "שלום עולם", "🏠 home", strings.Repeat("long ", 39) + "x", strings.Repeat("W", 200), "]]><x>", "ÅÉÎ gjpqy",
	} {
		quoted := fmt.Sprintf("%q", c)
		w := whole(t, solve(t, "job.toml", edited(t, `"Study"`, quoted, `"First cables"`, quoted, `"Starter house"`, quoted, `"desk"`, quoted, `"Hall cabinet"`, quoted, `"camera"`, quoted)))
		if checkSchedules(t, w); t.Failed() {
			t.Fatalf("with the name %q", c)
		}
	}
}

// Two people share one schedule: each visit says whose it is, and each step
// who is in it.
func TestSchedulesForTwo(t *testing.T) {
	w := whole(t, solve(t, "job.toml", edited(t, "[tools]", "[crew]\npeople = 2\n\n[tools]")))
	if w.Tasks.People != 2 {
		t.Fatalf("%d people", w.Tasks.People)
	}
	flow := gather(checkSchedules(t, w))["order"].flow.String()
	for _, want := range []string{"person1,", "person2,", "both"} {
		if !strings.Contains(flow, want) {
			t.Errorf("the pull sheet lacks %q", want)
		}
	}
}

// What only some jobs have is listed too: a conduit that is used, powered
// devices, spools at hand with their marks, and a drop for later.
func TestSchedulesOfEverything(t *testing.T) {
	w := whole(t, solve(t, "job.toml", edited(t,
		"[[hatch]]", "[[conduit]]\nid = \"pipe\"\nwall = \"middle\"\nat = \"7ft 7in\"\nroom = \"hall\"\nheight = \"5ft\"\nkind = \"EMT\"\ntrade = \"1\"\n\n[[hatch]]",
		"note = \"wireless access point\"", "note = \"access\"\nwatts = 13",
		"note = \"camera\"", "note = \"camera\"\nwhen = \"later\"",
		"[tools]", "[[spool]]\nid = \"blue-reel\"\ncable = \"cat6\"\nleft = \"400ft\"\nmark = \"612ft\"\n\n[tools]")))
	if len(w.Reused) == 0 || len(w.Devices) == 0 || len(w.Cuts.Later) == 0 || !w.Cuts.Cables[0].Spools[0].Start.Known {
		t.Fatalf("the job has %d conduits, %d devices, %d drops for later", len(w.Reused), len(w.Devices), len(w.Cuts.Later))
	}
	l := gather(checkSchedules(t, w))
	l.rows(t, "list-reused", true, [][]string{{"pipe", "conduit", "along wall middle"}})
	for id, want := range map[string]string{"list-cuts": "Not cut today: D3, 1 × cat6-outdoor", "list-spools": "612ft", "list-power": "13.0 W"} {
		if !strings.Contains(l[id].flow.String(), squeezed(want)) {
			t.Errorf("%s does not say %q: %q", id, want, l[id].flow.String())
		}
	}
}

// A job of which no drop can be run still has its sheets, which say so.
func TestSchedulesWithoutRoutes(t *testing.T) {
	w := whole(t, solve(t, "job.toml", edited(t, `pitch = "8/12"`, `pitch = "2/12"`)))
	for i := range w.Routes {
		if w.Routes[i].Blocked == nil {
			t.Fatalf("drop %d has a route", w.Routes[i].Drop)
		}
	}
	l := gather(checkSchedules(t, w))
	if flow := l["order"].flow.String(); !strings.Contains(flow, "Nodropcanberun") {
		t.Errorf("the pull sheet says %q", flow)
	}
	if flow := l["list-drops"].flow.String(); strings.Count(flow, "noallowedroute") != len(w.Routes) {
		t.Errorf("the drops are listed as %q", flow)
	}
}

// What is read in the attic at arm's length has small letters at least 2.5 mm
// tall. Their height is read from the font's OS/2 table (OpenType, sxHeight at
// byte 86).
func TestStepsAreReadableInTheAttic(t *testing.T) {
	w := whole(t, solveFile(t, "../samples/corner-house/job.toml"))
	step := w.Tasks.Visits[0].Steps[0].Words
	for item := range render.Schedules(w)[0].All() {
		text, ok := item.(sheet.Text)
		if !ok || text.Words == "" || !strings.HasPrefix(step, text.Words) {
			continue
		}
		share := xHeight(t, font.TTF(text.Lettering.Style().Face))
		if small := sheet.Paper(share * float64(font.Size(text.Lettering))); small < 2500*sheet.Micrometre {
			t.Errorf("small letters of a step are %d µm tall", small)
		}
		return
	}
	t.Errorf("no text begins %q", step)
}

// xHeight is the height of small letters in parts of the em.
func xHeight(t *testing.T, ttf []byte) float64 {
	t.Helper()
	table := func(tag string) []byte {
		for i := range int(binary.BigEndian.Uint16(ttf[4:])) {
			if r := ttf[12+16*i:]; string(r[:4]) == tag {
				return ttf[binary.BigEndian.Uint32(r[8:]):]
			}
		}
		t.Fatalf("the font has no table %s", tag)
		return nil
	}
	return float64(binary.BigEndian.Uint16(table("OS/2")[86:])) / float64(binary.BigEndian.Uint16(table("head")[18:]))
}

func BenchmarkSchedules(b *testing.B) {
	w := whole(b, solve(b, "../samples/corner-house/job.toml", source.ReadFile))
	for b.Loop() {
		if len(render.Schedules(w)) == 0 || render.Estimate(w) == nil {
			b.Fatal("no sheets")
		}
	}
}
