package plan

import (
	"fmt"
	"slices"
	"strconv"

	"topplate/plan/cladding"
	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/source"
	"topplate/plan/survey"
)

// A run is one [[wall]] of the file: legs that were taped one after the other.
type run struct {
	t                  *source.Table
	id                 string
	legs               []survey.Leg
	blocks             []source.Item[measure.Length] // rows of fire blocking
	badLevel, levelSet bool                          // its level can't be told; it is known
	ids                []string
	idPos              []diag.Pos
	closes             bool
	face               string
	shared             Wall           // what all its walls have in common
	board              measure.Length // on the side of a room
	clad               measure.Length // on the outer side
	cladKind           cladding.Kind  // of it, if it is known
	clads              map[int]clad   // of legs that are clad otherwise
	first              int            // index of its first wall
	// derived is true of walls that follow from rooms by inside dimensions.
	derived bool
	each    []*run   // what its walls are made of one by one, where they differ
	rooms   [][2]int // round which its walls were made, by side; -1 out of doors

	start    geom.Point
	from     int // the wall on whose line it starts, -1 if it starts at a point
	fromAt   measure.Length
	offset   offset // what fromAt is measured from, if it is not the wall's start
	state    runState
	traverse survey.Traverse
	missed   *diag.Diagnostic // what was said of its not ending where it began
}

// A runState says how far the placing of a run has come.
type runState uint8

const (
	unplaced runState = iota
	placing
	placed
	unplaceable
)

// readRuns reads all [[wall]] and gives their legs numbers.
func (l *houseLoader) readRuns(root *source.Table) {
	runNames := names{kind: "run of walls"}
	found := tables(root, "wall", source.Need(!root.Has("inside")), mostWalls)
	l.badRun = len(found) == 0 && !root.Has("inside")
	for _, t := range found {
		r := l.readRun(t)
		runNames.add(t, "id", r.id)
		r.first = len(l.wallNames.ids)
		if r.first+len(r.legs) > mostWalls {
			t.Errorf("run", "found more than %d walls in all; no house has that many", mostWalls)
			r.legs, r.ids = nil, nil
		}
		l.takeNames(r)
		if len(r.legs) == 0 {
			r.state = unplaceable
			l.badRun = true
		}
		if r.badLevel {
			r.state = unplaceable
		}
		l.runs = append(l.runs, r)
	}
}

// takeNames takes up the ids of the legs of r.
func (l *houseLoader) takeNames(r *run) {
	for k, id := range r.ids {
		if i := slices.Index(l.wallNames.ids, id); i >= 0 {
			l.list.Errorf(r.idPos[k], r.t.Path("names"), "found wall %q again; want a different id for each wall", id).
				Note(l.wallNames.pos[i], "it is first used here")
		}
		l.wallNames.takeWall(id, r.idPos[k], r.derived)
	}
}

func (l *houseLoader) readRun(t *source.Table) *run {
	r := &run{t: t, from: -1}
	r.id, _ = t.Name("id", source.Required)
	r.closes = boolOr(t, "closes", false)
	r.face = choiceOr(t, "face", "center", "left", "right")
	level, ok := l.levelOr(t, "level", 0)
	if r.badLevel = !ok; ok {
		r.shared.Level = level
	}
	r.shared.Exterior = boolOr(t, "exterior", false)
	r.legs = l.readLegs(t, "run")
	l.readFrame(r)
	r.readNames()
	if r.shared.Exterior && !r.closes {
		t.Errorf("exterior", "found an exterior run that does not close, which leaves the roof over an open outline; walk the outer walls in one run round the house, back to its start, with closes = true")
	}
	return r
}

// readLegs reads the legs of a run, or of the walk round a room. There are none
// if anything is wrong with one of them.
func (l *houseLoader) readLegs(t *source.Table, key string) []survey.Leg {
	text, ok := t.Text(key, source.Required)
	if !ok {
		return nil
	}
	found, faults := survey.ParseRun(text, t.Units())
	for _, f := range faults {
		if f.Angled {
			l.list.Errorf(t.ValuePosAt(key, f.Offset), t.Path(key), "found a wall that runs at an angle; want N, E, S or W and a length, such as N %s: walls run along the axes of the house", t.Example("8ft", "2.4m"))
			continue
		}
		l.list.Errorf(t.ValuePosAt(key, f.Offset), t.Path(key), "%s", f.Msg)
	}
	good := len(faults) == 0
	for _, leg := range found {
		at := t.ValuePosAt(key, leg.Offset)
		if !leg.Bearing.Axial() {
			l.list.Errorf(at, t.Path(key), "found a wall that runs %s; want N, E, S or W: walls run along the axes of the house", leg.Bearing)
			good = false
		}
		if !legLengths.Contains(leg.Length) {
			l.list.Errorf(at, t.Path(key), "found a wall of %s; want %s: %s", l.house.text(leg.Length), legLengths.text(l.house.Units), legLengths.why)
			good = false
		}
	}
	if !good {
		return nil
	}
	return found
}

// readNames reads or makes the id of each leg.
func (r *run) readNames() {
	for k := range r.legs {
		id := r.id + "." + strconv.Itoa(k+1)
		if len(r.legs) == 1 {
			id = r.id
		}
		r.ids = append(r.ids, id)
		r.idPos = append(r.idPos, r.t.ValuePosAt("run", r.legs[k].Offset))
	}
	if !r.t.Has("names") {
		return
	}
	array, ok := r.t.Array("names", source.Optional)
	if !ok {
		return
	}
	keys := array.Keys()
	for k, key := range keys {
		if id, ok := array.Name(key, source.Required); ok && k < len(r.ids) {
			r.ids[k], r.idPos[k] = id, array.ValuePos(key)
		}
	}
	if r.legs != nil && len(keys) != len(r.legs) {
		r.t.Errorf("names", "found %s for %s; want one name for each leg of the run",
			counted(len(keys), "name"), counted(len(r.legs), "leg"))
	}
}

// here is where the wall of a leg is in the file, for a note.
func (r *run) here(leg int) (pos diag.Pos, format, id string) {
	return hereOf(r.ids[leg], r.idPos[leg], r.derived)
}

// known says how the lengths of the walls are known, before the length.
func (r *run) known() string {
	if r.derived {
		return "its rooms make"
	}
	return "was taped as"
}

// counted writes a number of things.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
