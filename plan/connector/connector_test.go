package connector

import (
	"slices"
	"strings"
	"testing"

	"topplate/plan/cable"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

func TestRecords(t *testing.T) {
	ids := IDs()
	if want := "jack-5e jack-6 jack-6a plug-5e plug-6 pass-through-6 plug-6a-narrow plug-6a-wide coax-jack coax-plug"; strings.Join(ids, " ") != want {
		t.Errorf("IDs() = %q: ids are written in users' files", ids)
	}
	for i, id := range ids {
		c, ok := Lookup(id)
		if !ok || c.ID != id || slices.Contains(ids[:i], id) {
			t.Errorf("Lookup(%q) = %+v, %v", id, c, ok)
		}
		if c.Title == "" || !c.Solid && !c.Stranded || c.Thickest <= 0 || c.Thinnest < c.Thickest || c.Source == (rule.Source{}) {
			t.Errorf("%s lacks something: %+v", id, c)
		}
		for _, r := range []measure.Range{c.Core, c.Jacket} {
			if r.Min < 0 || r.Max < r.Min || Known(r) == (r == measure.Range{}) {
				t.Errorf("%s has a range %v", id, r)
			}
		}
		// A jack is opened by its maker's tool and has no jacket to grip.
		if c.Kind == Jack && Known(c.Jacket) || strings.Contains(id, "jack") != (c.Kind == Jack) {
			t.Errorf("%s is a %v: %+v", id, c.Kind, c)
		}
	}
	if _, ok := Lookup("plug-7"); ok {
		t.Error("Lookup found a plug that is not there")
	}
	if got := strings.Join(Kinds(), " "); got != "jack plug" {
		t.Errorf("kinds %q", got)
	}
}

// TIA11: four data sheets, brand withheld. A category 6A plug set, 24-22 AWG,
// comes for insulation up to and over 1.1 mm, cable 7.0 to 9.5 mm; a category
// 6 plug set takes 28-22 AWG and cable of 5.5 to 6.5 mm; a category 6A jack
// takes 26-22 AWG with insulation of 0.85 to 1.6 mm.
func TestDataSheets(t *testing.T) {
	const tenth = 100_000 // nanometres
	for _, want := range []Type{
		{ID: "plug-6a-narrow", Thickest: 22, Thinnest: 24, Core: measure.Range{Max: 11 * tenth}, Jacket: measure.Range{Min: 70 * tenth, Max: 95 * tenth}},
		{ID: "plug-6a-wide", Thickest: 22, Thinnest: 24, Core: measure.Range{Min: 11 * tenth, Max: 16 * tenth}, Jacket: measure.Range{Min: 70 * tenth, Max: 95 * tenth}},
		{ID: "plug-6", Thickest: 22, Thinnest: 28, Jacket: measure.Range{Min: 55 * tenth, Max: 65 * tenth}},
		{ID: "jack-6a", Thickest: 22, Thinnest: 26, Core: measure.Range{Min: 850_000, Max: 16 * tenth}},
	} {
		got, _ := Lookup(want.ID)
		if got.Thickest != want.Thickest || got.Thinnest != want.Thinnest || got.Core != want.Core || got.Jacket != want.Jacket || !got.Solid || !got.Stranded {
			t.Errorf("got %+v, want %+v", got, want)
		}
		if got.Source.Status != rule.Confirmed {
			t.Errorf("%s is from %v", want.ID, got.Source)
		}
	}
}

// What a built-in cable usually ends in takes its conductors: nobody is to be
// sent off with parts that do not fit.
func TestUsualEndsTakeTheirCables(t *testing.T) {
	for _, id := range cable.IDs() {
		c, _ := cable.Lookup(id)
		for _, kind := range []Kind{Jack, Plug} {
			end, ok := Usual(c.Category, kind)
			if ok == (c.Category == "speaker") {
				t.Fatalf("%s ends in %+v, %v", id, end, ok)
			}
			if !ok {
				continue
			}
			if end.Kind != kind || end.FourPair != c.FourPair {
				t.Errorf("%s ends in %s", id, end.ID)
			}
			if c.Gauge < end.Thickest || end.Thinnest < c.Gauge || Known(end.Core) && !end.Core.Contains(c.Core) || c.Stranded && !end.Stranded || !c.Stranded && !end.Solid {
				t.Errorf("%s does not go into %s: %+v", id, end.ID, end)
			}
			// Cable for the ground is too thick for a plug and ends in a jack.
			if Known(end.Jacket) && !end.Jacket.Contains(c.Diameter) && id != "cat6-burial" {
				t.Errorf("%s of %v does not go into %s: %+v", id, c.Diameter, end.ID, end)
			}
		}
	}
}
