package stock

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"topplate/plan/measure"
)

// lot is count pieces of one length.
type lot struct{ length, count int }

func lotLengths(lots []lot) []measure.Length {
	var all []measure.Length
	for _, l := range lots {
		for range l.count {
			all = append(all, measure.Length(l.length))
		}
	}
	return all
}

// Cutting-stock problems of textbooks. The first is Chvatal, "Linear
// Programming", 1983, chapter 13: LP value 452.25. All optima were worked out
// anew by listing all patterns and solving the integer programme with HiGHS.
func TestTextbookCuttingStock(t *testing.T) {
	for _, c := range []struct {
		name  string
		width int
		lots  []lot
		want  int
	}{
		{"Chvatal 1983", 100, []lot{{45, 97}, {36, 610}, {31, 395}, {14, 211}}, 453},
		{"paper, 13 widths", 5600, []lot{
			{1380, 22},
			{1520, 25},
			{1560, 12},
			{1710, 14},
			{1820, 18},
			{1880, 18},
			{1930, 20},
			{2000, 10},
			{2050, 12},
			{2100, 14},
			{2140, 16},
			{2150, 18},
			{2200, 20},
		}, 73},
		{"17 ft", 17, []lot{{3, 25}, {5, 20}, {9, 15}}, 19},
		{"100", 100, []lot{{50, 20}, {40, 40}, {30, 120}, {20, 100}}, 82},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := Job{Buy: []Purchase{{"a", measure.Length(c.width)}}, Steps: 20_000_000}
			for i, l := range lotLengths(c.lots) {
				job.Pieces = append(job.Pieces, Piece{Tag: fmt.Sprint(i), Type: "a", Length: l})
			}
			plan, err := Solve(job)
			if err != nil {
				t.Fatal(err)
			}
			checkPlan(t, job, plan)
			got := plan.Types[0]
			if got.Score.NewSpools != c.want || got.Bound.NewSpools != c.want || got.Proved < Bought {
				t.Errorf("%d new spools, bound %d, proved %v; want %d", got.Score.NewSpools, got.Bound.NewSpools, got.Proved, c.want)
			}
		})
	}
}

// cutting is where published problems lie, if at all: Falkenauer (1996), Hard28
// (Schoenfield; Belov and Scheithauer), Scholl et al. (1997). They are read
// from there and not kept here.
const cutting = "../../../shared/cutting"

// A published problem has a proved optimum.
type published struct {
	name    string
	pieces  []measure.Length
	room    measure.Length
	optimum int
}

func readPublished(t *testing.T, match string) []published {
	t.Helper()
	table, err := os.Open(filepath.Join(cutting, "optima.tsv"))
	if err != nil {
		t.Skip("skipped: the published cutting problems are not here: ", err)
	}
	defer table.Close()
	var all []published
	lines := bufio.NewScanner(table)
	lines.Scan() // heading
	for lines.Scan() {
		var format, status string
		var types, items, room, l1, lower int
		p := published{}
		if _, err := fmt.Sscan(lines.Text(), &p.name, &format, &types, &items, &room, &l1, &lower, &p.optimum, &status); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(p.name, match) || status != "proved" {
			continue
		}
		p.room = measure.Length(room)
		p.pieces = readLengths(t, filepath.Join(cutting, p.name), format == "csp")
		if len(p.pieces) != items {
			t.Fatalf("%s: read %d pieces, want %d", p.name, len(p.pieces), items)
		}
		all = append(all, p)
	}
	return all
}

// readLengths reads lines of a length, and its count if counted.
func readLengths(t *testing.T, file string, counted bool) []measure.Length {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	r := strings.NewReader(string(text))
	var n, room int
	fmt.Fscan(r, &n, &room)
	var lots []lot
	for range n {
		l := lot{count: 1}
		fmt.Fscan(r, &l.length)
		if counted {
			fmt.Fscan(r, &l.count)
		}
		lots = append(lots, l)
	}
	return lotLengths(lots)
}

// tally is what became of a family of problems.
type tally struct{ problems, optimal, proved, excess int }

// family solves published problems and fails on a claim that is wrong.
func family(t *testing.T, match string, steps int64) tally {
	t.Helper()
	var sum tally
	for _, p := range readPublished(t, match) {
		r := fewest(newDemand(p.pieces), supply{fresh: p.room}, nil, &meter{steps})
		n := r.packing.fresh()
		if n < p.optimum || r.lower > p.optimum {
			t.Errorf("%s: found %d, bound %d, published optimum %d", p.name, n, r.lower, p.optimum)
		}
		sum.problems++
		if n == p.optimum {
			sum.optimal++
		}
		if n == r.lower {
			sum.proved++
		}
		sum.excess += n - p.optimum
	}
	return sum
}

// These are proved in little time. The others are in TestPublishedTable.
func TestPublishedProblems(t *testing.T) {
	for match, steps := range map[string]int64{"_t60": 1e9, "_u120": 1e9, "_u250": 1e9, "_u500": 1e9, "_u1000": 1e9} {
		if got := family(t, match, steps); got.proved != 10 || got.optimal != 10 {
			t.Errorf("%s: %+v, want all 10 proved", match, got)
		}
	}
}

// Prints how near all published problems come to their optimum, if asked for.
func TestPublishedTable(t *testing.T) {
	if os.Getenv("STOCK_TABLE") == "" {
		t.Skip("skipped: takes minutes; set STOCK_TABLE=1 to run it")
	}
	for _, match := range []string{"_t60", "_t120", "_t249", "_t501", "_u120", "_u250", "_u500", "_u1000", "Hard28", "HARD"} {
		start := time.Now()
		got := family(t, match, 2_000_000_000)
		t.Logf("%-7s %+v %v", match, got, time.Since(start).Round(time.Millisecond))
	}
}
