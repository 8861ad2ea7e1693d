package fix

import (
	"os"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/route"
)

// From the attic behind a low wall rods go into a joist bay of the closed floor beside it.
// By hand: joists of 9-1/4 in, in the attic and in the floor, on the same plates, so that
// the middle of the blocking under the wall is 4-5/8 in over their undersides; the blocking is
// a joist's thickness, 1-1/2 in.
func TestUnderALowWall(t *testing.T) {
	const job = `house = "half_storey.toml"
[job]
name = "Under the low wall"
[closet]
name = "Panel"
room = "living"
wall = "west"
at = "2ft"
height = "5ft"
ports = 12
[[drop]]
tag = "P"
kind = "ceiling point"
at = ["12ft 8in", "9ft"]
level = "ground"
shift = "8in"
[tools]
rods = "18ft"
arm = "26in"
extension = "36in"
bits = [{ size = "3/4in", reach = "54in", flexible = true }]
[rates]
currency = "USD"
hour = 60
`
	loaded, list := plan.LoadJob("job.toml", func(path string) ([]byte, error) {
		if path == "job.toml" {
			return []byte(job), nil
		}
		return os.ReadFile("../../plan/testdata/good/half_storey.toml")
	})
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("it does not load")
	}
	res := solved(t, loaded)
	h := find(t, Holes(res), route.PassArc, "blocking, if there is any, under wall")
	if h.At.Z != res.Job.House.Spaces[h.Space].Base+in(37) || !strings.HasSuffix(h.Member, "between the attic sides and the floor") {
		t.Errorf("%s at %v", h.Member, h.At)
	}
	if b := h.Bores[0].Bit; b.Way != FromAttic || b.Need != in(12) {
		t.Errorf("bit %+v", b)
	}
	text := strings.Join(h.Above.Text, "\n")
	if !h.Above.Reached || h.Above.Method == ByNothing || !strings.Contains(text, "feel with a wire") || !strings.Contains(text, "in the joists' depth, 4-5/8in over their undersides") {
		t.Errorf("%+v", h.Above)
	}
	if h.Far == nil || h.Far.Reached || res.Job.House.Spaces[h.Far.Space].ID != "between" || !strings.Contains(h.Far.Why, "goes on with rods") {
		t.Errorf("on the other side: %+v", h.Far)
	}
	if !h.Seal.Fire || h.Below.Room >= 0 {
		t.Errorf("%+v, %+v", h.Seal, h.Below)
	}
}
