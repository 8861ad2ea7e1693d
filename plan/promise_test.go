package plan

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/diag"
	"topplate/plan/geom"
)

// checkHouse holds a loaded house against what the package promises.
func checkHouse(t *testing.T, h *House) {
	t.Helper()
	for i := range h.Walls {
		w := &h.Walls[i]
		if w.Length() <= 0 || w.Body.Width() <= 0 || w.Body.Height() <= 0 || w.Frame.Width() <= 0 || w.Frame.Height() <= 0 {
			t.Errorf("wall %s has no length: %+v", w.ID, w)
		}
		if (w.A.X == w.B.X) == (w.A.Y == w.B.Y) {
			t.Errorf("wall %s runs from %v to %v", w.ID, w.A, w.B)
		}
		whole := ordered(w.Along(w.Body.Min), w.Along(w.Body.Max))
		for k, o := range w.Openings {
			if o.Start < whole.lo || o.End > whole.hi || o.Start >= o.End || o.Sill < 0 || o.Sill >= o.Head || o.Head > h.Levels[w.Level].PlateTop {
				t.Errorf("opening %s of wall %s: %+v in %v", o.ID, w.ID, o, whole)
			}
			for _, p := range w.Openings[:k] {
				if o.Start < p.End && p.Start < o.End {
					t.Errorf("openings %s and %s overlap", o.ID, p.ID)
				}
			}
		}
	}
	for i := range h.Rooms {
		r := &h.Rooms[i]
		if !r.Outline.IsSimple() || !r.Outline.IsCCW() || h.RoomOn(r.Level, r.At) != i || r.Bounds != r.Outline.Bounds() {
			t.Errorf("room %s: %+v", r.ID, r)
		}
	}
	for _, hatch := range h.Hatches {
		if hatch.Room < -1 || hatch.Room >= len(h.Rooms) {
			t.Errorf("hatch %s is in room %d", hatch.ID, hatch.Room)
		}
	}
	for i, c := range h.Conduits {
		w := &h.Walls[c.Wall]
		if whole := ordered(w.Along(w.Body.Min), w.Along(w.Body.Max)); c.At-c.Inside/2 < whole.lo || c.At+c.Inside/2 > whole.hi || c.Inside <= 0 ||
			c.Inside >= w.StudDepth || c.Height > h.Levels[w.Level].Ceiling || c.Room != h.RoomBeside(w, c.At, c.Side) {
			t.Errorf("conduit %s: %+v", c.ID, c)
		}
		for _, o := range w.Openings {
			if o.Start < c.At && c.At < o.End && (!c.Down && o.Head > c.Height || c.Down && o.Sill < c.Height) {
				t.Errorf("conduit %s goes through opening %s", c.ID, o.ID)
			}
		}
		for _, b := range h.Conduits[:i] {
			if b.Wall == c.Wall && b.At == c.At && b.Down == c.Down {
				t.Errorf("conduits %s and %s are in one place", b.ID, c.ID)
			}
		}
	}
	for _, s := range h.Soffits {
		if !h.Walls[s.Wall].Exterior {
			t.Errorf("soffit %s is at wall %d", s.ID, s.Wall)
		}
	}
	if (len(h.Hatches) == 0 && h.Attic.Kind == AtticSpace) || h.Roof.Surface == nil && !h.Roof.Flat || !h.OutsideOf.IsSimple() || !h.PlateLine.IsCCW() {
		t.Errorf("no way up, no roof, or no outline: %+v", h)
	}
	checkLevels(t, h)
}

// checkLevels holds the levels, spaces and roofs of a house against what the
// package promises.
func checkLevels(t *testing.T, h *House) {
	t.Helper()
	if h.Attic != h.Spaces[0] || !slices.Contains(h.Roofs, h.Roof) {
		t.Errorf("the main attic is %+v, the main roof %+v", h.Attic, h.Roof)
	}
	for i, r := range h.Roofs {
		if (r.Surface == nil) != r.Flat || !r.Outline.IsSimple() || !r.Outline.IsCCW() || !within(r.Outline, h.Levels[r.Level].PlateLine) {
			t.Errorf("roof %+v", r)
		}
		for _, s := range h.Roofs[:i] {
			if !geom.Intersect(geom.AreaOf(r.Outline), geom.AreaOf(s.Outline)).Empty() {
				t.Errorf("roofs %s and %s are in one place", r.ID, s.ID)
			}
		}
	}
	for i, s := range h.Spaces {
		if len(s.Outlines) == 0 || s.Roof >= len(h.Roofs) || s.Kind == AtticSpace != (s.Roof >= 0) || s.Kind == CrawlSpace != (s.Below < 0) {
			t.Errorf("space %+v", s)
		}
		for _, o := range s.Edges() {
			if !o.IsSimple() || !o.IsCCW() {
				t.Errorf("space %s has an outline %v", s.ID, o)
			}
		}
		for _, level := range []int{s.Below, s.Above} {
			if level >= 0 && !geom.Subtract(s.area(), h.Levels[level].area()).Empty() {
				t.Errorf("space %s is beyond level %s", s.ID, h.Levels[level].ID)
			}
		}
		if s.Above >= 0 {
			if gap := h.Levels[s.Above].Floor - s.Top(); max(gap, -gap) > mostGap {
				t.Errorf("space %s ends %v off the floor over it", s.ID, gap)
			}
		}
		for _, r := range h.Spaces[:i] {
			if (s.Below >= 0 && s.Below == r.Below || s.Above >= 0 && s.Above == r.Above) && !geom.Intersect(s.area(), r.area()).Empty() {
				t.Errorf("spaces %s and %s are in one place", s.ID, r.ID)
			}
		}
	}
	for i := range h.Rooms {
		r := &h.Rooms[i]
		if !within(r.Outline, h.Levels[r.Level].PlateLine) {
			t.Errorf("room %s is not within the outer walls of level %s", r.ID, h.Levels[r.Level].ID)
		}
		for k := range i {
			a, b := &h.Levels[r.Level], &h.Levels[h.Rooms[k].Level]
			if r.over(&h.Rooms[k]) && a.Floor < b.Floor+b.Ceiling && b.Floor < a.Floor+a.Ceiling {
				t.Errorf("rooms %s and %s are in one place", r.ID, h.Rooms[k].ID)
			}
		}
	}
	checkInSpaces(t, h)
}

// within reports whether one outline is in another.
func within(p, q geom.Polygon) bool { return geom.Subtract(geom.AreaOf(p), geom.AreaOf(q)).Empty() }

// checkInSpaces holds what is in the spaces of a house against what the package
// promises.
func checkInSpaces(t *testing.T, h *House) {
	t.Helper()
	for _, x := range h.Hatches {
		if s := h.Spaces[x.Space]; s.Kind == FloorSpace || !h.touches(s, x.Area) {
			t.Errorf("hatch %s leads into %s %s", x.ID, s.Kind, s.ID)
		}
	}
	for _, x := range h.Obstacles {
		if !h.touches(h.Spaces[x.Space], x.Area) {
			t.Errorf("obstacle %s is not in its space", x.ID)
		}
	}
	for _, x := range h.Marks {
		if !h.within(h.Spaces[x.Space], x.At) {
			t.Errorf("mark %s is not in its space", x.ID)
		}
	}
	for _, x := range h.Conduits {
		w := &h.Walls[x.Wall]
		over, under := h.SpaceOver(w.Level, w.PointAt(x.At)), h.SpaceUnder(w.Level, w.PointAt(x.At))
		if w.Masonry || x.Down && under < 0 || !x.Down && over < 0 {
			t.Errorf("conduit %s ends in no space", x.ID)
		}
	}
	for _, x := range h.Chases {
		for _, level := range []int{x.From, x.To} {
			if !within(outlineOf(x.Area), h.Levels[level].PlateLine) {
				t.Errorf("chase %s is beyond level %s", x.ID, h.Levels[level].ID)
			}
		}
		for _, r := range h.Rooms {
			if r.Use == stairsUse && h.passes(&x, r.Level) && !geom.Intersect(geom.AreaOf(outlineOf(x.Area)), r.area()).Empty() {
				t.Errorf("chase %s goes through stairs", x.ID)
			}
		}
	}
	for _, x := range h.Soffits {
		if h.RoofOn(&h.Walls[x.Wall], x.Start) < 0 {
			t.Errorf("soffit %s is under no roof", x.ID)
		}
	}
}

// checkJob holds a loaded job against what the package promises.
func checkJob(t *testing.T, j *Job) {
	t.Helper()
	checkHouse(t, j.House)
	h := j.House
	if j.Closet.Room < 0 || j.Closet.Room >= len(h.Rooms) || !j.Closet.Ceiling && j.Closet.Spot.Room != j.Closet.Room {
		t.Errorf("closet: %+v", j.Closet)
	}
	for _, d := range j.Drops {
		switch d.Kind {
		case WallPlate:
			w := &h.Walls[d.Spot.Wall]
			if w.Masonry {
				t.Errorf("drop %s is in masonry", d.Tag)
			}
			face := w.FacePoint(d.Spot.At, d.Spot.Side)
			if !w.Body.Contains(face) || d.Spot.Height > h.Levels[w.Level].Ceiling || d.Room != h.RoomOn(w.Level, face) {
				t.Errorf("drop %s: %+v", d.Tag, d)
			}
		case CeilingPoint:
			if d.Room < 0 || h.RoomOn(h.Rooms[d.Room].Level, d.Point) != d.Room {
				t.Errorf("drop %s: %+v", d.Tag, d)
			}
		case SoffitSpot:
			if w := &h.Walls[d.Eave]; !w.Exterior || h.Levels[w.Level].OutsideOf.Contains(d.Point) {
				t.Errorf("drop %s: %+v", d.Tag, d)
			}
		}
		if d.Count < 1 || d.Cable.ID == "" || d.Class < NoClass || d.Class > 8 || d.Watts < 0 {
			t.Errorf("drop %s: %+v", d.Tag, d)
		}
		if c := d.Connector; c.ID != "" && (c.Kind != d.End || c.FourPair != d.Cable.FourPair) {
			t.Errorf("drop %s ends in %+v", d.Tag, c)
		}
	}
	for _, s := range j.Spools {
		if _, ok := j.Cable(s.Cable.ID); !ok || s.Left <= 0 || j.Buy.Of(s.Cable.ID) <= 0 {
			t.Errorf("spool %s: %+v", s.ID, s)
		}
	}
	for _, own := range j.OwnCables {
		c := own.Type
		if c.Conductor <= 0 || c.Core <= c.Conductor || c.Diameter <= c.Core || c.Hot <= c.Cold || c.Resistance <= 0 || c.Mass <= 0 || c.MaxPull <= 0 {
			t.Errorf("cable: %+v", c)
		}
	}
	whole := ""
	for _, p := range j.Labels.Parts {
		if whole += p.Text; p.Field != "" {
			whole += "{" + p.Field + "}"
		}
	}
	if whole != j.Labels.Scheme || !slices.IsSortedFunc(j.Have, func(a, b Stock) int { return strings.Compare(a.Part, b.Part) }) {
		t.Errorf("labels %+v, stock %+v", j.Labels, j.Have)
	}
	if j.Crew.People < 1 || j.Crew.People > 2 || j.Crew.Start < 0 || j.Crew.Start >= 24*60 || j.Crew.Day < 120 || j.Crew.Day > j.Crew.OneDay || j.Crew.OneDay > 16*60 {
		t.Errorf("crew: %+v", j.Crew)
	}
}

// seeds are houses and jobs to begin mutations from.
func seeds(t testing.TB, kind string) []string {
	t.Helper()
	good, err := os.ReadFile("testdata/good/" + kind + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	base := "testdata/base_" + kind + ".toml"
	out := []string{string(good), complete(t, "", base)}
	if kind == "house" {
		out = append(out, severalLevels(t)...)
		walks, err := os.ReadFile("testdata/inside_walks.toml")
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, string(walks))
	}
	paths, err := filepath.Glob("testdata/bad/*.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		if strings.HasPrefix(filepath.Base(path), "job_") != (kind == "job") {
			continue
		}
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, complete(t, string(src), base))
	}
	return out
}

// loadBoth loads a job and a house from text.
func loadBoth(job, house string) (*Job, *diag.List) {
	return LoadJob("job.toml", files(map[string]string{"job.toml": job, "house.toml": house}))
}

func FuzzLoadHouse(f *testing.F) {
	for _, s := range seeds(f, "house") {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, src string) {
		h, list := LoadHouse("house.toml", []byte(src))
		if (h == nil) != list.HasErrors() {
			t.Fatalf("house %v, errors %v", h != nil, list.HasErrors())
		}
		if h != nil {
			checkHouse(t, h)
		}
	})
}

func FuzzLoadJob(f *testing.F) {
	houses := seeds(f, "house")[:2]
	for _, s := range seeds(f, "job") {
		for _, h := range houses {
			f.Add(s, h)
		}
	}
	f.Fuzz(func(t *testing.T, src, house string) {
		j, list := loadBoth(src, house)
		if (j == nil) != list.HasErrors() {
			t.Fatalf("job %v, errors %v", j != nil, list.HasErrors())
		}
		if j != nil {
			checkJob(t, j)
		}
	})
}

// TestMutations changes good files a little, at random, and loads them.
func TestMutations(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	houses, jobs := seeds(t, "house"), seeds(t, "job")
	loaded := 0
	for range 3000 {
		house, job := houses[rng.IntN(2)], jobs[rng.IntN(2)]
		if rng.IntN(2) == 0 {
			house = mutate(rng, house)
		} else {
			job = mutate(rng, job)
		}
		if j, _ := loadBoth(job, house); j != nil {
			checkJob(t, j)
			loaded++
		}
	}
	if loaded < 100 {
		t.Errorf("only %d of the files loaded", loaded)
	}
	stacked, loaded := severalLevels(t), 0
	for i := range 2500 {
		if h, _ := LoadHouse("house.toml", []byte(mutate(rng, stacked[i%len(stacked)]))); h != nil {
			checkHouse(t, h)
			loaded++
		}
	}
	if loaded < 100 {
		t.Errorf("only %d of the houses of several levels loaded", loaded)
	}
}

// mutate changes digits, swaps lines or drops a line.
func mutate(rng *rand.Rand, src string) string {
	lines := strings.Split(src, "\n")
	for range 1 + rng.IntN(3) {
		i, j := rng.IntN(len(lines)), rng.IntN(len(lines))
		switch rng.IntN(4) {
		case 0:
			lines[i], lines[j] = lines[j], lines[i]
		case 1:
			lines = slices.Delete(lines, i, i+1)
		default:
			for k := range 20 {
				i = (i + k) % len(lines)
				if at := strings.IndexAny(lines[i], "0123456789"); at >= 0 {
					digit := string(rune('0' + rng.IntN(10)))
					lines[i] = lines[i][:at] + digit + lines[i][at+1:]
					break
				}
			}
		}
	}
	return strings.Join(lines, "\n")
}

// describe lists all that a house says, by names instead of by indices and
// without places in the file, in an order of its own.
func describe(h *House) []string {
	var out []string
	add := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	for _, w := range h.Walls {
		for _, o := range w.Openings {
			o.Pos = diag.Pos{}
			add("in %s: %+v", w.ID, o)
		}
		for _, d := range w.Devices {
			d.Pos = diag.Pos{}
			add("in %s: %+v", w.ID, d)
		}
		w.Pos, w.Openings, w.Devices = diag.Pos{}, nil, nil
		add("%+v", w)
	}
	for _, r := range h.Rooms {
		r.Pos = diag.Pos{}
		add("%+v", r)
	}
	for _, x := range h.Hatches {
		add("hatch %s in %s to %s: %v", x.ID, h.roomText(x.Room), h.Spaces[x.Space].ID, x.Area)
	}
	for _, x := range h.Obstacles {
		space := h.Spaces[x.Space].ID
		x.Pos, x.Space = diag.Pos{}, 0
		add("in %s: %+v", space, x)
	}
	for _, x := range h.Soffits {
		add("soffit %s at %s: %v %v", x.ID, h.Walls[x.Wall].ID, x.Start, x.End)
	}
	for _, x := range h.Baffles {
		add("baffle %s at %s: %v %v", x.ID, h.Walls[x.Wall].ID, x.Start, x.End)
	}
	for _, x := range h.Traverses {
		x.Pos = diag.Pos{}
		add("%+v", x)
	}
	for _, x := range h.Marks {
		space := h.Spaces[x.Space].ID
		x.Pos, x.Space = diag.Pos{}, 0
		add("in %s: %+v", space, x)
	}
	for _, x := range h.PowerRuns {
		space := h.Spaces[x.Space].ID
		x.Pos, x.Space = diag.Pos{}, 0
		add("in %s: %+v", space, x)
	}
	for _, x := range h.Chases {
		var rooms []string
		for _, r := range x.Rooms {
			rooms = append(rooms, h.Rooms[r].ID)
		}
		slices.Sort(rooms)
		x.Pos, x.Rooms = diag.Pos{}, nil
		add("into %v: %+v", rooms, x)
	}
	for _, x := range h.Levels {
		x.Pos = diag.Pos{}
		add("%+v", x)
	}
	for _, x := range h.Conduits {
		w, room := h.Walls[x.Wall].ID, h.roomText(x.Room)
		x.Pos, x.Wall, x.Room = diag.Pos{}, 0, 0
		add("conduit in %s to %s: %+v", w, room, x)
	}
	// Copies: the house is not to be changed.
	for _, space := range h.Spaces {
		x := *space
		x.Pos = diag.Pos{}
		add("%+v", x)
	}
	for _, top := range h.Roofs {
		x := *top
		x.Pos, x.Surface = diag.Pos{}, nil
		add("%+v", x)
		if top.Surface != nil {
			add("roof %s at two points: %v %v", x.ID, top.Surface.Height(geom.Point{X: 15 * foot, Y: 10 * foot}), top.Surface.Height(x.Outline[0]))
		}
	}
	add("%s %s %v %v %v", h.Attic.ID, h.Roof.ID, h.OutsideOf, h.PlateLine, h.Boundaries)
	slices.Sort(out)
	return out
}

// keptInOrder are the tables of which the first stands for what a key leaves
// out.
var keptInOrder = []string{"[[level]]", "[[roof]]", "[[attic]]"}

// shuffleTables puts the tables of a file in another order.
func shuffleTables(rng *rand.Rand, src string) string {
	blocks := strings.Split(strings.TrimSpace(src), "\n\n")
	kept := map[string][]string{}
	named := func(block string) string {
		i := slices.IndexFunc(keptInOrder, func(name string) bool { return strings.Contains(block, name) })
		if i < 0 {
			return ""
		}
		return keptInOrder[i]
	}
	for _, b := range blocks {
		kept[named(b)] = append(kept[named(b)], b)
	}
	if !strings.HasPrefix(blocks[0], "[") && !strings.HasPrefix(blocks[0], "#") {
		// Keys before the first table stay there.
		rng.Shuffle(len(blocks)-1, func(i, j int) { blocks[i+1], blocks[j+1] = blocks[j+1], blocks[i+1] })
	} else {
		rng.Shuffle(len(blocks), func(i, j int) { blocks[i], blocks[j] = blocks[j], blocks[i] })
	}
	for i, b := range blocks {
		if name := named(b); name != "" {
			blocks[i], kept[name] = kept[name][0], kept[name][1:]
		}
	}
	return strings.Join(blocks, "\n\n") + "\n"
}

// severalLevels are houses of several levels.
func severalLevels(t testing.TB) (all []string) {
	t.Helper()
	for _, name := range []string{"levels", "half_storey", "addition", "flat"} {
		src, err := os.ReadFile("testdata/good/" + name + ".toml")
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, string(src))
	}
	return append(all, complete(t, "# WITH wall room\n"+stairs, "testdata/base_house.toml"))
}

func TestOrderOfTablesDoesNotMatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	houses := append(seeds(t, "house")[:2], sketches["island"].toml(0), sketches["joints"].toml(0))
	houses = append(houses, severalLevels(t)...)
	for k, src := range houses {
		first, list := LoadHouse("house.toml", []byte(src))
		if first == nil {
			t.Fatalf("house %d: %s", k, print(t, list))
		}
		want := describe(first)
		for range 20 {
			shuffled := shuffleTables(rng, src)
			h, list := LoadHouse("house.toml", []byte(shuffled))
			if h == nil {
				t.Fatalf("house %d: %s\n%s", k, print(t, list), shuffled)
			}
			if diff := cmp.Diff(want, describe(h)); diff != "" {
				t.Fatalf("house %d:\n%s\n%s", k, diff, shuffled)
			}
		}
	}
}

func TestOrderOfDropsDoesNotMatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	job, house := seeds(t, "job")[0], seeds(t, "house")[0]
	byTag := func(j *Job) map[string]Drop {
		drops := map[string]Drop{}
		for _, d := range j.Drops {
			d.Pos = diag.Pos{}
			drops[d.Tag] = d
		}
		return drops
	}
	first, list := loadBoth(job, house)
	if first == nil {
		t.Fatal(print(t, list))
	}
	for range 20 {
		j, list := loadBoth(shuffleTables(rng, job), house)
		if j == nil {
			t.Fatal(print(t, list))
		}
		if diff := cmp.Diff(byTag(first), byTag(j)); diff != "" {
			t.Fatal(diff)
		}
	}
}
