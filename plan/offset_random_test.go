package plan

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
)

// Random houses whose openings, devices and starts of walls are measured from
// each other load to the same house as with plain lengths. What is measured
// from what is drawn so that there is no circle.
func TestOffsetsOfRandomHouses(t *testing.T) {
	written := map[string]int{}
	for seed := range uint64(60) {
		plain := randomhouse.Generate(seed, randomhouse.Options{}).House
		h, list := LoadHouse("house.toml", []byte(plain))
		if h == nil {
			t.Fatal(print(t, list))
		}
		src := withOffsets(rand.New(rand.NewPCG(seed, 5)), h, plain, written)
		again, list := LoadHouse("house.toml", []byte(src))
		if again == nil {
			t.Fatalf("seed %d: %s\n%s", seed, print(t, list), src)
		}
		if diff := cmp.Diff(describe(h), describe(again)); diff != "" {
			t.Fatalf("seed %d (-plain +offsets)\n%s", seed, diff)
		}
		if diff := cmp.Diff(h.Walls, again.Walls, cmpopts.IgnoreTypes(diag.Pos{})); diff != "" {
			t.Fatalf("seed %d (-plain +offsets)\n%s", seed, diff)
		}
	}
	t.Log(written)
	for _, what := range []string{"left", "right", "before", "beyond", "wall", "start", "chain"} {
		if written[what] < 5 {
			t.Errorf("only %d of %s in all houses", written[what], what)
		}
	}
}

// withOffsets rewrites distances along walls of a random house.
func withOffsets(rng *rand.Rand, h *House, src string, written map[string]int) string {
	blocks := strings.Split(src, "\n\n")
	ids := &names{}
	for i := range h.Walls {
		ids.takeWall(h.Walls[i].ID, diag.Pos{}, false)
	}
	s := h.things(ids)
	// A thing may be measured from those before it, and only from plain ones
	// by walls, on whose faces others are measured in turn.
	rng.Shuffle(len(s.all), func(i, j int) { s.all[i], s.all[j] = s.all[j], s.all[i] })
	moved := map[string]bool{}
	for i := range s.all {
		th := &s.all[i]
		if rng.IntN(4) == 0 {
			continue
		}
		for b, block := range blocks {
			if !strings.HasPrefix(block, "[["+th.kind+"]]") || !strings.Contains(block, fmt.Sprintf("id = %q\n", th.id)) {
				continue
			}
			from := facing{}
			if th.kind == "device" {
				k := slices.IndexFunc(h.Walls[th.wall].Devices, func(d Device) bool { return d.ID == th.id })
				from = facing{h.Walls[th.wall].Devices[k].Side, true}
			}
			text, of, ok := offsetText(rng, h, s, s.all[:i], th.wall, th.on, from)
			if !ok {
				continue
			}
			var lines []string
			for line := range strings.SplitSeq(block, "\n") {
				if !strings.HasPrefix(line, "at = ") && !strings.HasPrefix(line, "from = ") {
					lines = append(lines, line)
				}
			}
			blocks[b] = strings.Join(slices.Insert(lines, 1, fmt.Sprintf("at = %q", text)), "\n")
			moved[th.id] = true
			for _, word := range []string{" left ", " right ", " before ", " beyond ", " wall "} {
				if strings.Contains(text, word) {
					written[strings.TrimSpace(word)]++
				}
			}
			if moved[of] {
				written["chain"]++
			}
		}
	}
	plain := slices.DeleteFunc(slices.Clone(s.all), func(th thing) bool { return moved[th.id] })
	for b, block := range blocks {
		at := strings.Index(block, "start = { wall = ")
		if at < 0 {
			continue
		}
		line, _, _ := strings.Cut(block[at:], "\n")
		var wallID, length string
		if _, err := fmt.Sscanf(line, "start = { wall = %q, at = %q }", &wallID, &length); err != nil {
			continue
		}
		along, _ := measure.Parse(length)
		only := &things{all: plain, walls: ids, meets: func(int, int) (extent, bool) { return extent{}, false }}
		w := slices.Index(ids.ids, wallID)
		if text, _, ok := offsetText(rng, h, only, plain, w, extent{along, along}, facing{}); ok {
			blocks[b] = strings.Replace(block, line, fmt.Sprintf("start = { wall = %q, at = %q }", wallID, text), 1)
			written["start"]++
		}
	}
	return strings.Join(blocks, "\n\n")
}

// offsetText writes where a stretch of a wall is, from one of some things or of
// the walls that meet it.
func offsetText(rng *rand.Rand, h *House, s *things, from []thing, wall int, on extent, side facing) (text, of string, ok bool) {
	type candidate struct {
		words, id string
		on        extent
	}
	var all []candidate
	for _, th := range from {
		if th.wall == wall {
			words := []string{th.id, th.kind + " " + th.id, h.Walls[wall].ID + "." + th.id}[rng.IntN(3)]
			all = append(all, candidate{words, th.id, th.on})
		}
	}
	for other := range h.Walls {
		if e, ok := s.meets(wall, other); ok {
			all = append(all, candidate{"wall " + h.Walls[other].ID, "", e})
		}
	}
	rng.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	for _, c := range all {
		var d measure.Length
		var word string
		// On the left of a wall, its end is on the left.
		switch {
		case on.lo >= c.on.hi:
			d, word = on.lo-c.on.hi, "beyond"
			if side.known && rng.IntN(3) > 0 {
				word = map[Side]string{Left: "left of", Right: "right of"}[side.side]
			}
		case on.hi <= c.on.lo:
			d, word = c.on.lo-on.hi, "before"
			if side.known && rng.IntN(3) > 0 {
				word = map[Side]string{Left: "right of", Right: "left of"}[side.side]
			}
		default:
			continue
		}
		return fmt.Sprintf("%d.%09dm %s %s", d/measure.Metre, d%measure.Metre, word, c.words), c.id, true
	}
	return "", "", false
}
