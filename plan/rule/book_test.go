package rule

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"topplate/plan/measure"
)

func TestBookOfDefaults(t *testing.T) {
	b := NewBook(nil)
	for _, l := range Limits {
		if got := b.Limit(l.ID); got != l {
			t.Errorf("%s: got %+v, want the default", l.ID, got)
		}
	}
}

func TestBookOverrides(t *testing.T) {
	before := slices.Clone(Limits)
	b := NewBook(map[string]int64{
		"power-parallel": 300_000_000, "plate-bore": 33, "no-such-limit": 1,
	})
	if got, want := b.Length(PowerParallel), 300*measure.Millimetre; got != want {
		t.Errorf("PowerParallel = %v, want %v", got, want)
	}
	if got := b.Value(PlateBore); got != 33 {
		t.Errorf("PlateBore = %d, want 33", got)
	}
	// A changed value must not be printed with the standard's name beside it.
	if got, want := b.Limit(PlateBore).Source.String(), "set for this job"; got != want {
		t.Errorf("source of the changed limit is %q, want %q", got, want)
	}
	if got, want := b.Value(StudBore), int64(60); got != want {
		t.Errorf("StudBore = %d, want its default %d", got, want)
	}
	if !slices.Equal(before, Limits) {
		t.Error("making a book changed the table of defaults")
	}
}

func TestBookHoldsAnyAllowedValue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		own := map[string]int64{}
		for _, l := range Limits {
			if rapid.Bool().Draw(t, string(l.ID)) {
				own[string(l.ID)] = rapid.Int64Range(l.Min, l.Max).Draw(t, "value")
			}
		}
		b := NewBook(own)
		for _, l := range Limits {
			want, changed := own[string(l.ID)]
			if !changed {
				want = l.Value
			}
			got := b.Limit(l.ID)
			if got.Value != want || changed != (got.Source.Status == SetByUser) {
				t.Fatalf("%s: got %d from %q, want %d", l.ID, got.Value, got.Source, want)
			}
		}
	})
}

func TestBookPanicsOnMistakesInTheProgram(t *testing.T) {
	b := NewBook(nil)
	for name, f := range map[string]func(){
		"no such limit": func() { b.Value("no-such-limit") },
		"not a length":  func() { b.Length(PlateBore) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			f()
		}()
	}
}

func TestCautions(t *testing.T) {
	always := []ID{LocalCode, LiveWires, FireSeparation, Ladder, AtticHeat}
	old := append(slices.Clone(always), OldHouse)
	leaded := append(slices.Clone(always), LeadPaint, OldHouse)
	oldest := append(slices.Clone(leaded), KnobAndTube)
	for _, c := range []struct {
		built int
		own   map[string]int64
		want  []ID
	}{
		{0, nil, oldest}, // not known: take it to be old
		{1890, nil, oldest},
		{1949, nil, oldest}, // from memory: knob-and-tube was laid until about 1950
		{1950, nil, leaded},
		{1977, nil, leaded},
		{1978, nil, old}, // 40 CFR 745: before 1978
		{1989, nil, old},
		{1990, nil, always},
		{2024, nil, always},
		{1985, map[string]int64{"lead-paint-year": 1992}, leaded},
	} {
		var got []ID
		for _, r := range NewBook(c.own).Cautions(c.built) {
			got = append(got, r.ID)
			if r.Severity != Caution {
				t.Errorf("%s is printed with every job but is a %v", r.ID, r.Severity)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("built %d: got %v, want %v", c.built, got, c.want)
		}
	}
}
