package check

import (
	"slices"
	"strings"
	"testing"

	"topplate/plan/rule"
)

// desk is a wall plate in the study, near the south end of the west wall.
func desk(keys string) []string {
	return []string{job, "[[drop]]\ntag = \"D1\"\nkind = \"wall plate\"\nroom = \"study\"\nwall = \"west\"\nheight = \"14in\"\n" + keys}
}

func pin(at string) []string {
	return []string{job, "[[fixed]]\nid = \"F1\"\ndo = \"use\"\nwall = \"west\"\nat = \"" + at + "\""}
}

// laid are jobs that break the rules that routes are laid by, which package
// route reports.
var laid = map[rule.ID][]string{
	rule.PowerParallelRule: edits(powerRun(`[["148in", "72-1/2in"], ["188in", "112-1/2in"]]`), instead(`width = "14in"`, `width = "4in"`)),
	rule.PowerBay:          edits(desk(`at = "2ft 4in"`), []string{house, strings.Replace(device("12ft 10in"), "middle", "west", 1)}, instead(`feed = "down"`, `feed = "up"`)),
	rule.HotClearance:      {house, strings.NewReplacer("120in", "20in", "126in", "150in", "104in", "150in").Replace(flue("40in"))},
	rule.HoleToMemberRule:  edits(desk(`at = "2ft 4in"`), pin("13ft 5in")),
	rule.PlateCapacity:     limit("plate-bore = 10"),
	rule.Shield:            limit(`plate-shield = "1-3/4in"`),
	rule.FireBlock:         edits(desk(`at = "2ft 8in"`), instead("exterior = true", "exterior = true\nfire_blocks = [\"4ft\"]")),
	rule.BoxFit:            instead(`west = "6ft 8in"`, `west = "7ft 7in"`),
	rule.Window:            desk(`at = "7ft 8in"`),
	rule.Patching: edits(desk(`at = "2ft 8in"`), []string{job, "[[fixed]]\nid = \"F1\"\ndo = \"avoid\"\nwall = \"west\"\nat = \"12ft 9in\"\nwidth = \"16in\""},
		[]string{"[rates]", "[prices]\nchange-move-plate = 200\n\n[rates]"}),
	rule.BitReach:    edits(desk(`at = "2ft 8in"`), instead(`extension = "54in"`, `extension = "0in"`)),
	rule.RodLength:   edits(camera(thin, ""), instead(`rods = "15ft"`, `rods = "2ft"`)),
	rule.EaveBaffle:  edits(camera(thin, ""), []string{house, "[[baffle]]\nid = \"b1\"\nwall = \"east\"\nat = \"0ft\"\nwidth = \"16ft\""}),
	rule.NoHiddenWay: instead(`pitch = "8/12"`, `pitch = "1/12"`),
	rule.FixedPart:   edits(desk(`at = "2ft 8in"`), pin("15ft 1in")),
	rule.HatchSize:   instead(`size = ["30in", "30in"]`, `size = ["21in", "30in"]`),
	rule.OutsideCable: edits(desk(`at = "2ft 8in"`), instead("[tools]", "[allow]\noutside = true\n\n[tools]"), instead(`pitch = "8/12"`, `pitch = "1/12"`),
		instead("room = \"hall\"\nwall = \"middle\"\nat = \"7ft\"", "room = \"hall\"\nwall = \"east\"\nat = \"7ft 4in\"")),
	rule.LinkLengthRule: limit(`link-length = "24ft"`),
}

// Every rule of the table is broken by some job here, or is printed with one.
func TestEveryRuleIsTripped(t *testing.T) {
	tripped := map[rule.ID]bool{rule.SealHoles: true} // by the base, in TestRulesAtTheirLimits
	for _, tt := range trials {
		tripped[tt.rule] = true // there too
	}
	for _, tt := range levelTrials {
		tripped[tt.rule] = true // in TestLevelsFindings
	}
	for id, e := range laid {
		res := solved(t, e...)
		if find(res.Findings, id) == nil {
			t.Errorf("%s is not broken: %v", id, rulesOf(res.Findings))
		}
		tripped[id] = true
	}
	trussed := edits(camera(thin, ""), instead("built = 1996", "built = 1949"), instead(`joist = "sawn"`, `joist = "truss"`),
		instead("rafter = \"2x6\"", "heel = \"4in\"\nchord = \"2x4\""))
	for _, id := range solved(t, trussed...).Cautions {
		tripped[id] = true
	}
	for _, r := range rule.Rules {
		if !tripped[r.ID] {
			t.Errorf("no job here breaks %s", r.ID)
		}
	}
}

// The cautions that depend on the age of the house, and the trusses and the
// way outside, are not printed where they don't apply: 40 CFR 745 (lead) is
// for houses built before 1978; knob-and-tube was laid until about 1950 (from
// memory).
func TestCautionsAtTheirYears(t *testing.T) {
	for built, want := range map[string][]bool{
		"1949": {true, true, true}, "1950": {true, true, false}, "1977": {true, true, false}, "1978": {true, false, false}, "1990": {false, false, false},
	} {
		got := solved(t, "built = 1996", "built = "+built).Cautions
		for i, id := range []rule.ID{rule.OldHouse, rule.LeadPaint, rule.KnobAndTube} {
			if slices.Contains(got, id) != want[i] {
				t.Errorf("built %s: %s is printed: %v", built, id, !want[i])
			}
		}
		for _, id := range []rule.ID{rule.Ladder, rule.AtticHeat, rule.LocalCode, rule.LiveWires, rule.FireSeparation} {
			if !slices.Contains(got, id) {
				t.Errorf("built %s: %s is missing", built, id)
			}
		}
		if slices.Contains(got, rule.TrussNever) || slices.Contains(got, rule.OutdoorEntry) {
			t.Errorf("built %s: got %v", built, got)
		}
	}
}
