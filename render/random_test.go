package render_test

import (
	"testing"

	"topplate/plan/randomhouse"
	"topplate/render"
)

// No text overlaps another on the sheets of random houses, whatever their
// shape, and every drop and hole is shown.
func TestSheetsOfRandomHouses(t *testing.T) {
	for seed := range uint64(60) {
		sketch := randomhouse.Generate(seed, randomhouse.Options{Drops: 3 + int(seed%10)})
		res := solve(t, "job.toml", sketch.Read)
		sheets := render.Sheets(fixed(res))
		if checkSet(t, res, sheets); t.Failed() {
			t.Fatalf("seed %d", seed)
		}
		if checkOpenings(t, res, sheets); t.Failed() {
			t.Fatalf("seed %d, openings", seed)
		}
		if checkDetails(t, res); t.Failed() {
			t.Fatalf("seed %d, details", seed)
		}
	}
}

// A very large house and very many drops still give sheets that can be read.
func TestSheetsOfLargeHouses(t *testing.T) {
	for _, o := range []randomhouse.Options{{Area: 10, Drops: 12}, {Area: 4, Drops: 30}} {
		sketch := randomhouse.Generate(3, o)
		res := solve(t, "job.toml", sketch.Read)
		sheets := render.Sheets(fixed(res))
		checkSet(t, res, sheets)
		checkOpenings(t, res, sheets)
		checkDetails(t, res)
	}
}
