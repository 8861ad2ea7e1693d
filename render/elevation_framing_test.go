package render

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"topplate/plan"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/plan/source"
	"topplate/render/sheet"
	"topplate/route"
)

func loaded(t *testing.T, path string, read func(string) ([]byte, error)) *plan.House {
	t.Helper()
	job, list := plan.LoadJob(path, read)
	if list.HasErrors() {
		t.Fatalf("%s does not load", path)
	}
	return job.House
}

// The west wall of the starter, by hand, in eighths of an inch. Its frame is
// from 1 in to 191 in; studs of 1-1/2 in stand 16 in on centre from there; the
// walls at its ends are 3-1/2 in deep; the window is from 72 in to 120 in, 36 in
// to 82 in high. Plates: 1-1/2 in below, two of them under 96-5/8 in.
func TestFramingByHand(t *testing.T) {
	h := loaded(t, "../cmd/topplate/starter/job.toml", source.ReadFile)
	k := slices.IndexFunc(h.Walls, func(w plan.Wall) bool { return w.ID == "west" })
	const bottom, plate, head, cripple = 12, 749, 656, 276
	want := []member{
		{plateMember, 8, 1528, 749, 761},
		{plateMember, 8, 1528, 761, 773},
		{plateMember, 8, 1528, 0, 12},
		{studMember, 8, 20, bottom, plate},
		{backingMember, 20, 36, bottom, plate},
		{studMember, 36, 48, bottom, plate},
		{studMember, 130, 142, bottom, plate},
		{studMember, 258, 270, bottom, plate},
		{studMember, 386, 398, bottom, plate},
		{studMember, 514, 526, bottom, plate},
		{studMember, 552, 564, bottom, plate},
		{studMember, 564, 576, bottom, head},
		{studMember, 642, 654, bottom, cripple},
		{studMember, 770, 782, bottom, cripple},
		{studMember, 898, 910, bottom, cripple},
		{studMember, 960, 972, bottom, head},
		{studMember, 972, 984, bottom, plate},
		{studMember, 1026, 1038, bottom, plate},
		{studMember, 1154, 1166, bottom, plate},
		{studMember, 1282, 1294, bottom, plate},
		{studMember, 1410, 1422, bottom, plate},
		{studMember, 1488, 1500, bottom, plate},
		{backingMember, 1500, 1516, bottom, plate},
		{studMember, 1516, 1528, bottom, plate},
		{headerMember, 564, 972, head, plate},
		{sillMember, 576, 960, 276, 288},
	}
	for i := range want {
		m := &want[i]
		for _, l := range []*measure.Length{&m.from, &m.to, &m.bottom, &m.top} {
			*l *= measure.Inch / 8
		}
	}
	got := framing(h, &h.Walls[k], route.Bays(h, k))
	for i := range max(len(got), len(want)) {
		if i >= len(got) || i >= len(want) || got[i] != want[i] {
			t.Fatalf("member %d:\n got %v\nwant %v", i, got[min(i, len(got)-1):], want[min(i, len(want)-1):])
		}
	}
}

// Whatever the wall, studs and bays fill it without overlap from end to end,
// save for what is open down to the floor or under a sill too low for a bay.
func TestStudsAndBaysFillTheWall(t *testing.T) {
	var houses []*plan.House
	for _, path := range []string{"../samples/corner-house/job.toml", "../samples/long-roof/job.toml"} {
		houses = append(houses, loaded(t, path, source.ReadFile))
	}
	for seed := range uint64(40) {
		houses = append(houses, loaded(t, "job.toml", randomhouse.Generate(seed, randomhouse.Options{}).Read))
	}
	for _, h := range houses {
		for k := range h.Walls {
			w := &h.Walls[k]
			bays := route.Bays(h, k)
			var parts []stretch
			for i := range bays {
				parts = append(parts, stretch{bays[i].Start, bays[i].End})
			}
			for _, m := range framing(h, w, bays) {
				if m.kind == studMember || m.kind == backingMember {
					parts = append(parts, stretch{m.from, m.to})
				}
				if m.from >= m.to || m.bottom >= m.top {
					t.Errorf("wall %s: a member has no size: %v", w.ID, m)
				}
			}
			slices.SortFunc(parts, func(a, b stretch) int { return int(a.from - b.from) })
			at := min(w.Along(w.Frame.Min), w.Along(w.Frame.Max))
			for _, p := range append(parts, stretch{max(w.Along(w.Frame.Min), w.Along(w.Frame.Max)), 0}) {
				if gap := (stretch{at, p.from}); gap.from != gap.to && !opening(w, gap) {
					t.Errorf("wall %s: nothing, or two things, from %v to %v", w.ID, gap.from, gap.to)
				}
				at = p.to
			}
		}
	}
}

func opening(w *plan.Wall, s stretch) bool {
	return s.from < s.to && slices.ContainsFunc(w.Openings, func(o plan.Opening) bool { return o.Start <= s.from && s.to <= o.End })
}

// Heights stay in order, a step apart, and no nearer than that to where they
// were if they need not move. Their sum is kept: none is favoured.
func TestApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.SliceOfN(rapid.Int64Range(0, 60_000), 1, 12).Draw(t, "at")
		slices.Sort(at)
		var ys []sheet.Paper
		for _, y := range at {
			ys = append(ys, sheet.Paper(y))
		}
		got := apart(ys, levelStep)
		free := true
		for i := range got {
			if i > 0 && got[i]-got[i-1] < levelStep-1 {
				t.Fatalf("%v: %v and %v are too near", ys, got[i-1], got[i])
			}
			free = free && (i == 0 || ys[i]-ys[i-1] >= levelStep)
		}
		if free && !slices.Equal(got, ys) {
			t.Fatalf("%v was moved to %v for nothing", ys, got)
		}
	})
	if got, want := apart([]sheet.Paper{10_000, 10_000}, 4000), []sheet.Paper{8000, 12_000}; !slices.Equal(got, want) {
		t.Errorf("two in one place: %v, want %v", got, want)
	}
}

// No line or words of one row meet those of another offset in it, and no
// extension line strikes words in a row that is nearer to the drawing.
func TestStacked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const width = 150_000
		var in []offset
		for _, x := range rapid.SliceOfN(rapid.Int64Range(0, width), 1, 10).Draw(t, "x") {
			o := offset{words: "D1 1′-4 7/8″", to: sheet.Paper(x)}
			if x > width/2 {
				o.from, o.atRight = width, true
			}
			in = append(in, o)
		}
		in = append(in, offset{words: "12′-0″", to: width})
		offsets, rows := stacked(in)
		for i := range offsets {
			for j := range offsets {
				a, b := offsets[i].extent(), offsets[j].extent()
				if i != j && rows[i] == rows[j] && a[0] < b[1] && b[0] < a[1] {
					t.Fatalf("%v and %v meet in row %d", offsets[i], offsets[j], rows[i])
				}
				left, right := offsets[j].text()
				if x := offsets[i].to; rows[j] < rows[i] && left < x && x < right {
					t.Fatalf("the line of %v strikes the words of %v", offsets[i], offsets[j])
				}
			}
		}
	})
}

// Openings of one, two and three gangs: 2-1/4 in, 4 in and 1-3/4 in more (the
// limits box-single-width and box-double-width), four cables to a gang.
func TestBoxSize(t *testing.T) {
	job, _ := plan.LoadJob("../cmd/topplate/starter/job.toml", source.ReadFile)
	for n, want := range map[int]measure.Length{1: 9 * measure.Inch / 4, 4: 9 * measure.Inch / 4, 5: 4 * measure.Inch, 9: 23 * measure.Inch / 4} {
		if w, tall := boxSize(job.Book(), n); w != want || tall != 15*measure.Inch/4 {
			t.Errorf("%d cables: %v by %v, want %v by 3-3/4in", n, w, tall, want)
		}
	}
}
