package tasks

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/route"
)

// From a panel on the north wall cable goes out through it, along it and round the
// corner along the west wall to a camera: each wall is told as it is clad.
func TestCladdingInTheTasks(t *testing.T) {
	more := "\n[[baffle]]\nid = \"shut\"\nwall = \"west\"\nat = \"1ft\"\nwidth = \"8ft\"\n[[cladding]]\nwall = \"north\"\nkind = \"brick\"\n[[cladding]]\nwall = \"west\"\nkind = \"vinyl\"\n"
	read := func(path string) ([]byte, error) {
		src, err := os.ReadFile(filepath.Join("../../cmd/topplate/starter", filepath.Base(path)))
		text := string(src)
		if strings.HasSuffix(path, "house.toml") {
			return []byte(text + more), err
		}
		for _, d := range []string{"D1", "D2"} {
			text = strings.Replace(text, "tag = \""+d+"\"", "when = \"later\"\ntag = \""+d+"\"", 1)
		}
		return []byte(strings.NewReplacer(
			"wall = \"middle\"\nat = \"7ft\"", "wall = \"north\"\nat = \"5ft\"", "wall = \"east\"\nat = \"8ft\"", "wall = \"west\"\nat = \"4ft\"",
		).Replace(text) + "\n[allow]\noutside = true\n"), err
	}
	job, list := plan.LoadJob("job.toml", read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("it does not load")
	}
	res, err := route.Solve(job)
	if err != nil {
		t.Fatal(err)
	}
	w := crewed(t, res, 1, quick)
	words := ""
	var carry []string
	for _, x := range w.Tasks {
		if x.Kind == Lay || x.Kind == Bore {
			words += x.Words + "\n"
			for _, i := range x.Carry {
				carry = append(carry, i.What)
			}
		}
	}
	for _, want := range []string{
		"On the brick of wall north they are screwed into anchors in the mortar joints", "On the vinyl of wall west they are screwed through it",
		"Hang 1ft of each in a drip loop", "Bore the brick with a masonry bit through a mortar joint",
	} {
		if !strings.Contains(words, want) {
			t.Errorf("%q is not in\n%s", want, words)
		}
	}
	for _, want := range []string{"hammer drill", "3/4in masonry bit", "anchors"} {
		if !slices.Contains(carry, want) {
			t.Errorf("no %s is carried: %v", want, carry)
		}
	}
}
