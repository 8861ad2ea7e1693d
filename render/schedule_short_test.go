package render

import (
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/render/sheet"
	"topplate/route/fix"
)

func TestShortReasons(t *testing.T) {
	job := &plan.Job{}
	for _, tag := range strings.Fields("A1 A2 A3 A4 B1 C1") {
		job.Drops = append(job.Drops, plan.Drop{Tag: tag})
	}
	for text, want := range map[string]string{
		"A1: 3 of 4 to a gang; A2: 3 of 4 to a gang; B1: 1 of 4 to a gang; A3: 3 of 4 to a gang": "3 of 4 to a gang: A1 to A3; B1: 1 of 4 to a gang",
		"A1: 3 of 3 used; A2: 3 of 3 used":                                 "A1: 3 of 3 used; A2: 3 of 3 used",
		"A1; A2; A3; C1":                                                   "A1 to A3, C1",
		"106 cables, both ends and all ports":                              "106 cables, both ends and all ports",
		"for later: A1: 1 of 1 used; for later: A2: 1 of 1 used; H1: seal": "for later: A1: 1 of 1 used; for later: A2: 1 of 1 used; H1: seal",
		"": "",
	} {
		if got := shortReasons(job, text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}

// How a hole is found from above keeps every number and every mark when it is
// said in few words.
func TestBriefWords(t *testing.T) {
	house := &plan.House{Units: measure.Metric, Hatches: []plan.Hatch{{ID: "east"}, {ID: "west"}}, Marks: []plan.Mark{{ID: "lamp", Kind: "light box"}}}
	b := &brief{shorter: shorterWords(house), buried: "under 220 mm of insulation"}
	for _, c := range []struct {
		text []string
		want string
	}{
		{
			[]string{
				"from hatch west: 2.310 m south, 320 mm west crawling", "crawling, 1.261 m clear over the joists",
				"16.047 m from south-west corner of hatch east and 3.126 m from north-west corner of hatch east, on the left of the way from the first to the second",
				"check: 2.811 m from light box lamp", "within 40 mm, 95 tries in 100",
				"from north-west corner of hatch west: past 1 joist",
				"from north-west corner of hatch west west: past 1 joist, 300 mm beyond its middle, and 3.110 m south along the joists",
				"look for the double top plate of wall a, 95 mm wide, which runs north and south", "under 220 mm of insulation",
			},
			"Way: west: 2.310 m south, 320 mm west crawling; 1.261 m clear. " +
				"Tape: 16.047 m from east SW and 3.126 m from east NW, left; check: 2.811 m from lamp; ±\u00A040 mm; from west NW: past 1 joist. " +
				"Then: 1 joist + 300 mm west of west NW, 3.110 m south; plate 95 mm, north to south.",
		},
		{
			[]string{
				"from hatch west: beside it", "standing, 2 m clear over the joists", "at light box lamp",
				"from light box lamp east: past 12 joists, 20 mm beyond the middle of the last, and 1 m north along the joists",
				"lift a board of the decking",
			},
			"Way: west: beside it; standing, 2 m clear. Tape: at light box lamp. Then: 12 joists + 20 mm east of light box lamp, 1 m north; lift a board of the decking.",
		},
		{
			[]string{"from hatch east: 1 m east standing", "at arm's reach, 300 mm clear over the joists", "from light box lamp east: in the same joist bay, 20 mm on, and 1 m north along the joists"},
			"Way: east: 1 m east standing; at arm's reach, 300 mm clear. Then: same bay as light box lamp, 20 mm east, 1 m north; no insulation.",
		},
	} {
		h := &fix.Hole{Member: "double top plate of wall a"}
		h.Above.Reached, h.Above.Text = true, c.text
		h.Above.Decked = strings.Contains(c.text[len(c.text)-1], "decking")
		if got := b.words(h); got != c.want {
			t.Errorf("%q\nis   %q\nwant %q", c.text, got, c.want)
		}
	}
}

// Narrow runs go down the left column and then down the right one, on the last
// page in two of about the same height, and what is wide goes on below both.
func TestColumnsOfRuns(t *testing.T) {
	f := flow{room: 100 * sheet.MM, first: 60 * sheet.MM, across: 80 * sheet.MM}
	l := &listing{}
	r := run{list: l, narrow: true, above: []strip{labelled("above", 1)}, over: []strip{labelled("over", 1)}}
	for range 40 {
		r.rows = append(r.rows, labelled("row", 1))
	}
	f.add(r)
	f.add(run{list: l, rows: []strip{labelled("wide", 1)}})
	if len(f.pages) != 2 {
		t.Fatalf("%d pages", len(f.pages))
	}
	// 11 rows of 5 mm in each column below what is above, 9 in each on page 2.
	count := func(page int, across sheet.Paper) (n int, end sheet.Paper) {
		for _, s := range f.pages[page] {
			if s.across == across && s.height == 5*sheet.MM {
				n++
				end = s.down + s.height
			}
		}
		return n, end
	}
	for _, c := range []struct {
		page, rows int
		across     sheet.Paper
	}{{0, 12, 0}, {0, 11, f.across}, {1, 11, 0}, {1, 9, f.across}} {
		if n, _ := count(c.page, c.across); n != c.rows {
			t.Errorf("page %d has %d strips at %d, want %d", c.page, n, c.across, c.rows)
		}
	}
	last := f.pages[1][len(f.pages[1])-1]
	if _, end := count(1, f.across); last.across != 0 || last.down < end+runGap {
		t.Errorf("what is wide is at %d, %d, over columns that end at %d", last.across, last.down, end)
	}
}
