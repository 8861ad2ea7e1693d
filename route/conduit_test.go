package route

import (
	"strings"
	"testing"

	"topplate/plan"
	"topplate/plan/rule"
)

// withConduit puts a conduit beside the starter's closet: in the bay that its
// panel opens into, 7 ft from the south corner of the hall and so 7 ft 5 in
// along the middle wall.
func withConduit(rest string) []string {
	return []string{"[[hatch]]", "[[conduit]]\nid = \"pipe\"\nwall = \"middle\"\nat = \"7ft 7in\"\nroom = \"hall\"\nheight = \"5ft\"\n" + rest + "\n\n[[hatch]]"}
}

// A conduit beside the panel is used: nothing is bored there, and the cables
// are as long as the way to it, up it, and on.
func TestConduitIsUsed(t *testing.T) {
	plain := solved(t, starter(t))
	res := solved(t, starter(t, withConduit(`kind = "EMT"`+"\n"+`trade = "1"`)...))
	if !res.Cost.Proved || res.Cost.Total >= plain.Cost.Total {
		t.Errorf("costs %d with a conduit, %d without", res.Cost.Total, plain.Cost.Total)
	}
	if len(bored(res)) != len(bored(plain))-1 {
		t.Errorf("%d plates bored with a conduit, %d without", len(bored(res)), len(bored(plain)))
	}
	for _, r := range res.Routes {
		through := 0
		for _, a := range r.Arcs {
			if res.Graph.Arcs[a].Through != nil {
				through++
			}
		}
		if through != 1 {
			t.Errorf("%s goes through %d conduits", res.Job.Drops[r.Drop].Tag, through)
		}
	}
	if f := found(res, rule.ConduitFill); f != "" {
		t.Errorf("finding %q on a conduit with room", f)
	}
}

// NEC Chapter 9, Table 1: two cables of 0.340 in fill 34.1 % of 3/4 in EMT,
// more than the 31 % for two. A conduit that holds one already takes no other
// as long as there is another way.
func TestFullConduitIsAvoided(t *testing.T) {
	full := withConduit(`kind = "EMT"` + "\n" + `trade = "3/4"` + "\n" + `holds = [{ diameter = "0.340in" }, { diameter = "0.340in" }, { diameter = "0.340in" }]`)
	res := solved(t, starter(t, full...))
	for _, r := range res.Routes {
		for _, a := range r.Arcs {
			if res.Graph.Arcs[a].Through != nil {
				t.Fatalf("%s goes through a conduit that is full", res.Job.Drops[r.Drop].Tag)
			}
		}
	}
	if len(bored(res)) == 0 || found(res, rule.ConduitFill) != "" {
		t.Error("no hole beside a full conduit")
	}
}

// found is what the findings of a rule say.
func found(res *Result, id rule.ID) string {
	var out []string
	for i := range res.Findings {
		if res.Findings[i].Rule == id {
			out = append(out, res.Findings[i].Where+": "+res.Findings[i].Found)
		}
	}
	return strings.Join(out, "\n")
}

// What is there and used is told: the conduit beside the closet with all cables
// of the starter, where it comes out over the middle wall.
func TestReusedIsTold(t *testing.T) {
	res := solved(t, starter(t, withConduit(`kind = "EMT"`+"\n"+`trade = "1"`)...))
	if len(res.Reused) != 1 {
		t.Fatalf("%d reused, want the conduit alone", len(res.Reused))
	}
	u, cables := &res.Reused[0], 0
	for i := range res.Job.Drops {
		cables += res.Job.Drops[i].Count
	}
	w := &res.Job.House.Walls[res.Job.Closet.Spot.Wall]
	want := w.PointAt(w.Along(w.PointAt(u.Along)))
	if u.ID != "pipe" || !u.Conduit || u.Cables != cables || u.At.X != want.X || u.At.Y != want.Y || len(u.Drops) != len(res.Routes) {
		t.Errorf("reused %+v; want pipe with %d cables at %v", *u, cables, want)
	}
	plain := solved(t, starter(t))
	if len(plain.Reused) != 0 {
		t.Errorf("%d reused without anything there", len(plain.Reused))
	}
	// And the hole of a plan, once it is there.
	first := bored(plain)[0]
	job := fixing(starter(t), fixedAt(plan.FixedThere, "old", first))
	if got := solved(t, job).Reused; len(got) == 0 || got[0].ID != "old" || got[0].Along != first.Along || got[0].Conduit {
		t.Errorf("reused %+v, want the hole that is there", got)
	}
}
