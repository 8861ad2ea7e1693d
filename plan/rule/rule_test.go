package rule

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

var wellFormed = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

func TestRuleRecords(t *testing.T) {
	seen := map[ID]bool{}
	for _, r := range Rules {
		if !wellFormed.MatchString(string(r.ID)) {
			t.Errorf("rule id %q is not words joined by hyphens", r.ID)
		}
		if seen[r.ID] {
			t.Errorf("rule id %q is used twice", r.ID)
		}
		seen[r.ID] = true
		checkText(t, string(r.ID), r.Title, r.Text)
		checkSource(t, string(r.ID), r.Source)
		if strings.HasSuffix(r.Change, ".") {
			t.Errorf("%s: Change %q ends in a full stop; it is part of a sentence", r.ID, r.Change)
		}
		for _, id := range r.Limits {
			if _, ok := LookupLimit(id); !ok {
				t.Errorf("%s is measured with %q, which is no limit", r.ID, id)
			}
		}
		if r.BuiltBefore != "" && !slices.Contains(r.Limits, r.BuiltBefore) {
			t.Errorf("%s: year %q is not among its limits", r.ID, r.BuiltBefore)
		}
	}
}

// A rule that stops a route must say what would let it go on.
func TestStopRulesSayWhatWouldAllow(t *testing.T) {
	for _, r := range Rules {
		if r.Severity == Stop && r.Change == "" {
			t.Errorf("%s stops a route and names no change that would allow it", r.ID)
		}
	}
}

func TestLimitRecords(t *testing.T) {
	seen := map[LimitID]bool{}
	for _, l := range Limits {
		if !wellFormed.MatchString(string(l.ID)) {
			t.Errorf("limit id %q is not words joined by hyphens", l.ID)
		}
		if seen[l.ID] {
			t.Errorf("limit id %q is used twice", l.ID)
		}
		seen[l.ID] = true
		checkText(t, string(l.ID), l.Title, l.Text)
		checkSource(t, string(l.ID), l.Source)
		if !(l.Min < l.Max && l.Min <= l.Value && l.Value <= l.Max) {
			t.Errorf("%s: default %d is not in the range %d to %d", l.ID, l.Value, l.Min, l.Max)
		}
		if l.Min < 0 || l.Unit == Percent && l.Max > 100 || l.Unit == Degrees && l.Max > 90 {
			t.Errorf("%s: range %d to %d makes no sense for its unit", l.ID, l.Min, l.Max)
		}
	}
}

// A limit that no rule names would be changed by a user to no effect that
// anything explains.
func TestEveryLimitBelongsToARule(t *testing.T) {
	used := map[LimitID]bool{}
	for _, r := range Rules {
		for _, id := range r.Limits {
			used[id] = true
		}
	}
	for _, l := range Limits {
		if !used[l.ID] {
			t.Errorf("no rule is measured with limit %s", l.ID)
		}
	}
}

// The ids are written in users' files and in results, so they never change.
// Add at the end of its group; take none away.
func TestIDsAreKept(t *testing.T) {
	rules := "beside-power power-in-bay hot-clearance hole-clear-of-framing plate-capacity shield-plate stud-bored " +
		"truss-never-bored fire-block-bored seal-holes box-fit opening-over-bay no-patching bit-reach rod-length " +
		"eave-baffle no-hidden-way fixed-part hatch-size link-length-exceeded outdoor-entry chase-filled chase-sealed cable-outside local-code live-wires " +
		"fire-separation ladder attic-heat lead-paint old-wiring-and-asbestos knob-and-tube " +
		"long-beside-power power-crossed-slanted device-in-bay hot-margin plate-tie joist-never-bored guard-strips " +
		"garage-separation i-joist-never-bored floor-between-storeys crawl-space crawl-access bend-radius pull-tension pull-bends pull-too-long pull-points hot-channel ten-gigabit " +
		"cable-too-hot cable-in-the-sun limited-use-cable unlisted-cable air-space entry-seal surge-protection " +
		"conduit-fill wire-gauge wire-strands wire-insulation pass-through-insulation plug-jacket class-watts " +
		"switch-volts device-volts loop-resistance port-watts switch-budget bundle-heat"
	for _, id := range strings.Fields(rules) {
		if r, ok := Lookup(ID(id)); !ok || r.ID != ID(id) {
			t.Errorf("Lookup(%q) = %q, %v; the rule is gone", id, r.ID, ok)
		}
	}
	if got := len(strings.Fields(rules)); got != len(Rules) {
		t.Errorf("%d rules, this test knows %d", len(Rules), got)
	}
	limits := "power-parallel power-crossing-angle hot-light hot-flue plate-bore plate-edge plate-shield " +
		"stud-bore-bearing stud-bore stud-edge hole-to-member hole-over-bundle bay-width cables-per-gang " +
		"box-single-width box-double-width box-height ceiling-box reach-stand reach-crawl reach-arm-height rod-gap " +
		"drill-room hatch-short-side hatch-long-side link-length chase-fill raceway-height drip-loop lead-paint-year old-house-year " +
		"power-near power-near-length power-square-angle pull-friction pull-feed pull-turns pull-length " +
		"channel-length cord-length room-temperature ten-gigabit-length limited-use-diameter " +
		"limited-use-diameter-metric unlisted-inside bundle-watts joist-bore joist-edge guard-strip crawl-access-short-side crawl-access-long-side knob-and-tube-year"
	if got := strings.Join(LimitIDs(), " "); got != limits {
		t.Errorf("LimitIDs() = %s\nwant %s", got, limits)
	}
}

func TestLookupOfUnknownIDs(t *testing.T) {
	if r, ok := Lookup("no-such-rule"); ok {
		t.Errorf("Lookup found %v", r)
	}
	if l, ok := LookupLimit("no-such-limit"); ok {
		t.Errorf("LookupLimit found %v", l)
	}
	// A limit's id is not a rule's.
	if r, ok := Lookup(ID(PlateBore)); ok {
		t.Errorf("Lookup(%q) found rule %v", PlateBore, r)
	}
}

func TestSeverityNames(t *testing.T) {
	for s, want := range map[Severity]string{Stop: "stop", Caution: "caution", Note: "note"} {
		if got := s.String(); got != want {
			t.Errorf("Severity %d is %q, want %q", s, got, want)
		}
	}
}

// A warning that claims too much is worse than none.
func TestNoTextClaimsCompliance(t *testing.T) {
	claims := regexp.MustCompile(`(?i)\b(compliant|guarantee[sd]?|certifies|meets (the )?code|to code|is safe)\b`)
	for _, r := range Rules {
		if m := claims.FindString(r.Title + " " + r.Text + " " + r.Change); m != "" {
			t.Errorf("%s says %q", r.ID, m)
		}
	}
	for _, l := range Limits {
		if m := claims.FindString(l.Title + " " + l.Text); m != "" {
			t.Errorf("%s says %q", l.ID, m)
		}
	}
}

func checkText(t *testing.T, id, title, text string) {
	t.Helper()
	if title == "" || strings.HasSuffix(title, ".") || strings.Contains(title, "\n") {
		t.Errorf("%s: title %q is not one line without a full stop", id, title)
	}
	if !strings.HasSuffix(text, ".") && !strings.HasSuffix(text, ").") || strings.Contains(text, "  ") {
		t.Errorf("%s: text %q is not made of sentences", id, text)
	}
}

func checkSource(t *testing.T, id string, s Source) {
	t.Helper()
	none := s.Document == "" && s.Edition == "" && s.Clause == "" && s.Printed == "" && s.AsQuotedBy == ""
	switch s.Status {
	case CommonPractice:
		if !none {
			t.Errorf("%s: common practice has no document, but got %+v", id, s)
		}
	case SetByUser:
		t.Errorf("%s: no default is the user's", id)
	case AsQuoted:
		if s.Document == "" || s.AsQuotedBy == "" {
			t.Errorf("%s: quotation without a document or without a place it was read: %+v", id, s)
		}
	case Confirmed, FromMemory:
		if s.Document == "" || s.AsQuotedBy != "" {
			t.Errorf("%s: %+v needs a document and no quotation", id, s)
		}
	case Derived:
		if s.Document == "" {
			t.Errorf("%s: derived from nothing", id)
		}
	}
}
