package cladding

import (
	"slices"
	"strings"
	"testing"
)

func TestKinds(t *testing.T) {
	var hard []string
	for _, k := range Kinds {
		if got, ok := Lookup(k.ID); !ok || got != k || k.Clips == "" || !strings.HasPrefix(k.Bore, "with a ") {
			t.Errorf("%+v is looked up as %+v", k, got)
		}
		if masonry := strings.Contains(k.Bore, "masonry bit"); masonry != k.Hard {
			t.Errorf("%s is hard: %v; it is bored %s", k.ID, k.Hard, k.Bore)
		}
		if k.Hard {
			hard = append(hard, k.ID)
		}
	}
	if !slices.Equal(hard, []string{"stucco", "brick", "stone"}) {
		t.Errorf("hard are %v", hard)
	}
	if ids := IDs(); len(slices.Compact(slices.Sorted(slices.Values(ids)))) != len(Kinds) {
		t.Errorf("ids %v", ids)
	}
	if k, ok := Lookup("straw"); ok || k.ID != "" {
		t.Errorf("straw is %+v", k)
	}
}
