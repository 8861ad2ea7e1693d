package plan

import (
	"os"
	"testing"
)

func TestLevelsX(t *testing.T) {
	src, _ := os.ReadFile("testdata/good/levels.toml")
	h, list := LoadHouse("levels.toml", src)
	t.Log(print(t, list))
	if h == nil {
		t.Fatal()
	}
	for _, s := range h.Spaces {
		t.Logf("%+v", s)
	}
	for _, s := range h.Roofs {
		t.Logf("%+v", s)
	}
	for _, l := range h.Levels {
		t.Logf("%+v", l)
	}
	t.Logf("%+v", h.Marks)
	checkHouse(t, h)
}
