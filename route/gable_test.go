package route

import "testing"

// Under a gable the cable comes down inside the wall, between two joists. The
// starter's joists stand 16 in on centre from 16 in, so one is at 16 ft: with a
// 1 in bit the hole is half of 1-1/2 in, 1/4 in and half of 1 in beside it.
//
// At 4 in from the corner, 3 in inside the plate's outer face, rafters of 8 in
// 12 on plates of 3-1/2 in are seated on the plate: nothing is free there.
func TestUnderGable(t *testing.T) {
	south := func(at, shift string) *Route {
		res := solved(t, starter(t, `kind = "hip"`, "kind = \"gable\"\ngables = [\"south\", \"north\"]",
			"wall = \"east\"\nat = \"8ft\"", "wall = \"south\"\nat = \""+at+"\"", `shift = "16in"`, `shift = "`+shift+`"`))
		return routeOf(t, res, "D3")
	}
	if r := south("16ft", "2in"); r.Blocked != nil || r.Moved != inch(3, 2) {
		t.Errorf("over a joist: blocked %v, moved %v; want 1-1/2in", r.Blocked, r.Moved)
	}
	if r := south("16ft", "1in"); r.Blocked == nil {
		t.Errorf("a joist is missed by a move of 1in")
	}
	if r := south("4in", "0in"); r.Blocked == nil {
		t.Error("there is a hole where the rafters are seated")
	}
}
