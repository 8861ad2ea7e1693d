package fix

import (
	"os"
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/diag"
	"topplate/route"
)

const levelsJob = `
house = "levels.toml"

[job]
name = "Cables on three floors"
number = "1"
by = "installer"

[closet]
name = "Kitchen cabinet"
room = "kitchen"
wall = "middle"
at = "9ft"
height = "5ft"
width = "14in"
ports = 12

[[drop]]
tag = "D1"
kind = "wall plate"
room = "pantry"
wall = "split"
at = "4ft"
height = "14in"
cable = "cat6"
shift = "12in"

[[drop]]
tag = "D2"
kind = "wall plate"
room = "bed"
wall = "u-middle"
at = "10ft"
height = "14in"
cable = "cat6"
shift = "12in"

[tools]
rods = "15ft"
arm = "24in"
extension = "54in"
bits = [
  { size = "3/8in", reach = "54in", flexible = true },
  { size = "1/2in", reach = "54in", flexible = true },
  { size = "3/4in", reach = "54in", flexible = true },
  { size = "1in", reach = "54in", flexible = true },
]

[rates]
currency = "USD"
hour = 85
`

// split parts the kitchen of the house in two.
const split = `
[[wall]]
id = "split"
start = { wall = "middle", at = "14ft" }
run = "W 13ft 8in"

[[room]]
id = "pantry"
name = "Pantry"
at = ["5ft", "20ft"]
`

func levels(t testing.TB, edits ...string) *route.Result {
	t.Helper()
	read := func(path string) ([]byte, error) {
		src := levelsJob
		if strings.HasSuffix(path, "levels.toml") {
			b, err := os.ReadFile("../../plan/testdata/good/levels.toml")
			if err != nil {
				return nil, err
			}
			src = string(b) + split
		}
		return []byte(strings.NewReplacer(edits...).Replace(src)), nil
	}
	job, list := plan.LoadJob("job.toml", read)
	if list.HasErrors() {
		list.Print(os.Stderr, nil)
		t.Fatal("the house does not load")
	}
	_ = diag.List{}
	return solved(t, job)
}

func TestLevels(t *testing.T) {
	res := levels(t)
	for i := range res.Routes {
		r := &res.Routes[i]
		t.Log(res.Job.Drops[r.Drop].Tag, r.Blocked)
		for _, l := range r.Legs {
			t.Log("   ", l.Kind, l.From, l.To, l.Zone)
		}
	}
	for _, h := range Holes(res) {
		t.Logf("%s %s z=%v space %d\n  bits %v\n  below: %s\n  above:\n    %s\n seal %+v why %s", h.ID, h.Member, h.At.Z, h.Space, h.Bores[0].BitText(res.Job.House.Units), h.Below.Text, strings.Join(h.Above.Text, "\n    "), h.Seal, h.Bores[0].Bit.Why)
	}
}
