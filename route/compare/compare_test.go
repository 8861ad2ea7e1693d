package compare_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"topplate/plan"
	"topplate/plan/randomhouse"
	"topplate/route"
	"topplate/route/compare"
	"topplate/route/work"
)

const (
	starter  = "../../cmd/topplate/starter"
	corner   = "../../samples/corner-house"
	longRoof = "../../samples/long-roof"
)

// An edit replaces a text, which is there once, in one of the files.
type edit struct{ file, old, new string }

// edited reads the files of a folder with edits made.
func edited(t testing.TB, folder string, edits ...edit) plan.FileReader {
	t.Helper()
	files := map[string]string{}
	for _, name := range []string{"house.toml", "job.toml"} {
		b, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		files[name] = string(b)
	}
	for _, e := range edits {
		if n := strings.Count(files[e.file], e.old); n != 1 {
			t.Fatalf("%q is there %d times in %s", e.old, n, e.file)
		}
		files[e.file] = strings.Replace(files[e.file], e.old, e.new, 1)
	}
	return func(path string) ([]byte, error) { return []byte(files[filepath.Base(path)]), nil }
}

func worked(t testing.TB, read plan.FileReader) *work.Work {
	t.Helper()
	job, list := plan.LoadJob("job.toml", read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("it does not load")
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	w, err := work.Of(res)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// told lists what changed in the house, the job and the drops, in words.
func told(d *compare.Difference) []string {
	var out []string
	values := func(list []compare.Value) (s string) {
		for _, v := range list {
			s += fmt.Sprintf(" %s: %s > %s", v.What, v.Is[0], v.Is[1])
		}
		return s
	}
	if d.Outline {
		out = append(out, "outline")
	}
	for i := range d.House {
		x := &d.House[i]
		out = append(out, fmt.Sprintf("%s %s %s %v", x.Kind, x.ID, x.How, x.Moved)+values(x.Values))
	}
	for i := range d.Job {
		out = append(out, "job"+values(d.Job[i:i+1]))
	}
	for i := range d.Drops {
		x := &d.Drops[i]
		out = append(out, fmt.Sprintf("drop %s %s %v %v", x.Tag, x.How, x.Moved, x.Wished)+values(x.Values))
	}
	return out
}

// followed lists what follows from that: routes and holes.
func followed(d *compare.Difference) []string {
	var out []string
	for i := range d.Routes {
		x := &d.Routes[i]
		out = append(out, fmt.Sprintf("route %s another way %v, cut %v", x.Tag, x.Other, x.Cut[1]-x.Cut[0]))
	}
	for i := range d.Holes {
		x := &d.Holes[i]
		side := 1
		if x.How == compare.Gone {
			side = 0
		}
		w := d.Plans[side]
		p := &w.Graph.Holes[w.Holes[x.In[side]].Place]
		out = append(out, fmt.Sprintf("%s %s by %v, size %v, cables %v, there %q", p.Kind, x.How, x.By, x.Size, x.Cables, x.There))
	}
	return out
}

func TestTheSameJobHasNoDifference(t *testing.T) {
	for _, folder := range []string{starter, longRoof} {
		d := compare.Of(worked(t, edited(t, folder)), worked(t, edited(t, folder)))
		if !d.Same() || len(told(d))+len(followed(d)) > 0 {
			t.Errorf("%s against itself: %v %v", folder, told(d), followed(d))
		}
		if len(d.Ways.Both) == 0 || len(d.Terms) == 0 || len(d.Figures) == 0 {
			t.Errorf("%s: nothing is compared", folder)
		}
	}
}

// What changes nothing that matters is no difference: names, dates, comments,
// the order of tables.
func TestOrderAndNamesAreNoDifference(t *testing.T) {
	a := worked(t, edited(t, starter))
	src, err := os.ReadFile(filepath.Join(starter, "job.toml"))
	if err != nil {
		t.Fatal(err)
	}
	head, tail, _ := strings.Cut(string(src), "[[drop]]")
	i := strings.Index(tail, "[[drop]]")
	j := strings.LastIndex(tail, "[[drop]]")
	if i < 0 || i == j {
		t.Fatal("the starter has fewer than three drops")
	}
	swapped := head + tail[i:j] + "[[drop]]" + tail[:i] + tail[j:]
	swapped = strings.Replace(swapped, `name = "First cables"`, `name = "Other"`, 1)
	read := edited(t, starter)
	b := worked(t, func(path string) ([]byte, error) {
		if filepath.Base(path) == "job.toml" {
			return []byte(swapped), nil
		}
		return read(path)
	})
	if d := compare.Of(a, b); !d.Same() {
		t.Errorf("drops in another order: %v %v", told(d), followed(d))
	}
}

// Distances here follow from the edits themselves; how a change is found has no
// other source.
func TestEachChangeIsFoundAndNothingElse(t *testing.T) {
	a := map[string]*work.Work{starter: worked(t, edited(t, starter)), corner: worked(t, edited(t, corner))}
	for _, c := range changes {
		t.Run(c.name, func(t *testing.T) {
			d := compare.Of(a[c.folder], worked(t, edited(t, c.folder, c.edits...)))
			if diff := cmp.Diff(c.told, told(d)); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(c.follows, followed(d)); diff != "" {
				t.Errorf("what follows (-want +got):\n%s", diff)
			}
			checkSums(t, d)
			if d.Same() {
				t.Error("said to be the same")
			}
		})
	}
}

// checkSums holds figures against each other and against the plans.
func checkSums(t *testing.T, d *compare.Difference) {
	t.Helper()
	var sum int64
	for _, f := range d.Terms {
		sum += f.Change()
	}
	if a, b := d.Plans[0].Cost.Total, d.Plans[1].Cost.Total; sum != b-a || d.Cost.Change() != b-a {
		t.Errorf("the terms change by %d, the cost by %d, want %d", sum, d.Cost.Change(), b-a)
	}
	bored := 0
	for i := range d.Holes {
		for side, at := range d.Holes[i].In {
			if at >= 0 {
				bored += (2*side - 1) * count(d.Plans[side], at)
			}
		}
	}
	i := slices.IndexFunc(d.Figures, func(f compare.Figure) bool { return f.ID == "bored" })
	if got := d.Figures[i].Change(); got != int64(bored) {
		t.Errorf("%d more holes are bored, but %d by the list of holes", got, bored)
	}
	for _, c := range d.Cables {
		for side, w := range d.Plans {
			var want int64
			for i := range w.Routes {
				if drop := &w.Job.Drops[w.Routes[i].Drop]; drop.Cable.ID == c.ID {
					want += int64(drop.Count) * int64(w.Routes[i].Lengths.Cut)
				}
			}
			if int64(c.Length[side]) != want {
				t.Errorf("%s in plan %d: %v, want %d nm", c.ID, side, c.Length[side], want)
			}
		}
	}
}

// count is how often hole i counts as bored.
func count(w *work.Work, i int) int {
	switch w.Graph.Holes[w.Holes[i].Place].Kind {
	case route.CeilingArc, route.SoffitArc:
		return 0
	}
	return w.Holes[i].Count
}

// B against A is the mirror of A against B, for jobs that differ in all.
func TestMirror(t *testing.T) {
	var all []*work.Work
	for seed := range uint64(3) {
		all = append(all, worked(t, randomhouse.Generate(seed, randomhouse.Options{}).Read))
	}
	all = append(all, worked(t, edited(t, starter)), worked(t, edited(t, corner)), worked(t, edited(t, corner, secondJob...)))
	for i, a := range all {
		for _, b := range all[i+1:] {
			there, back := compare.Of(a, b), compare.Of(b, a)
			checkSums(t, there)
			if diff := cmp.Diff(normal(there), normal(mirrored(back)), cmpopts.IgnoreFields(compare.Difference{}, "Plans"), cmpopts.IgnoreUnexported(compare.Difference{})); diff != "" {
				t.Errorf("%s and %s (-there +mirror of back):\n%.2000s", a.Job.Name, b.Job.Name, diff)
			}
		}
	}
}

// normal has the holes in an order that does not tell A from B.
func normal(d *compare.Difference) *compare.Difference {
	slices.SortFunc(d.Holes, func(x, y compare.Hole) int { return slices.Compare(x.In[:], y.In[:]) })
	return d
}

func mirrored(d *compare.Difference) *compare.Difference {
	m := *d
	how := func(h *compare.How) {
		switch *h {
		case compare.Added:
			*h = compare.Gone
		case compare.Gone:
			*h = compare.Added
		}
	}
	values := func(list []compare.Value) {
		for i := range list {
			swap(&list[i].Is)
		}
	}
	values(m.Job)
	for i := range m.House {
		x := &m.House[i]
		how(&x.How)
		values(x.Values)
		swap(&x.Area)
		swap(&x.Placed)
	}
	for i := range m.Drops {
		how(&m.Drops[i].How)
		swap(&m.Drops[i].In)
		values(m.Drops[i].Values)
	}
	for i := range m.Routes {
		x := &m.Routes[i]
		swap(&x.In)
		swap(&x.Only)
		swap(&x.Cut)
		swap(&x.Bends)
	}
	for i := range m.Holes {
		how(&m.Holes[i].How)
		swap(&m.Holes[i].In)
		swap(&m.Holes[i].Cables)
	}
	for i := range m.Reused {
		how(&m.Reused[i].How)
		swap(&m.Reused[i].In)
		swap(&m.Reused[i].Cables)
	}
	for i := range m.Cables {
		swap(&m.Cables[i].Cables)
		swap(&m.Cables[i].Length)
	}
	for _, list := range [][]compare.Figure{m.Figures, m.Terms} {
		for i := range list {
			swap(&list[i].Is)
		}
	}
	swap(&m.Cost.Is)
	swap(&m.Ways.Only)
	return &m
}

func swap[T any](p *[2]T) { p[0], p[1] = p[1], p[0] }

// Two houses that have nothing in common are compared as far as can be.
func TestOtherHouses(t *testing.T) {
	d := compare.Of(worked(t, edited(t, longRoof)), worked(t, edited(t, starter)))
	checkSums(t, d)
	if !d.Outline || d.Same() || d.OneCurrency() {
		t.Errorf("outline differs: %v, same: %v, one currency: %v", d.Outline, d.Same(), d.OneCurrency())
	}
}
