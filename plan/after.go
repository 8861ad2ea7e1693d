package plan

import (
	"crypto/sha256"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/record"
	"topplate/plan/source"
)

// Before is what the records of earlier jobs leave for this one. It says of
// everything where it came from: the file of a record and the line of the
// entry.
type Before struct {
	Jobs   []EarlierJob // in the order of the file: the last one wins
	Holes  []LeftOver   // in plates, which are in Job.Fixed, as holes that are there
	Opened []Opened     // other holes
	Spools []LeftOver   // which are in Job.Spools
	Ports  []UsedPort   // at the panel, in the order of the records
}

// An EarlierJob is a job whose record was read.
type EarlierJob struct {
	Pos    diag.Pos // in the job file
	Name   string   // short: the ids of its holes start with it
	Record string
	// Entries is how many were read.
	Entries int
}

// A LeftOver is a hole or a spool from a record.
type LeftOver struct {
	ID    string
	Pos   diag.Pos // of the entry
	Entry int      // its number
}

// An Opened is a hole from a record that is not in a plate. Route goes through it
// where it would bore at its place.
type Opened struct {
	ID       string
	Pos      diag.Pos // of the entry
	Entry    int
	Through  string // as the record says
	Wall     int    // -1 if it is in none
	At       measure.Length
	Pointed  bool // whether Point is known
	Point    geom.Point3
	Diameter measure.Length
	Cables   int
	Unknown  string // why it isn't known where it is in this house, empty if it is
}

// A UsedPort is a port that a cable of an earlier job has.
type UsedPort struct {
	Cable string   // with the name of its job: first-D1.2
	Port  int      // 0 if the record doesn't say which
	Pos   diag.Pos // of the entry
	Entry int
}

// mostEarlier bounds the jobs that are read for what they left.
const mostEarlier = 50

// after reads after: the jobs whose records this one starts from. What the job
// file says itself wins over them.
func (l *jobLoader) after(root *source.Table, path string, read FileReader) {
	if !root.Has("after") {
		return
	}
	var jobs []record.Earlier
	for _, f := range l.otherFiles(root, "after", path, mostEarlier, "jobs that were done before") {
		if e, ok := l.earlier(f.pos, f.key, f.name, f.at, read); ok {
			e.Name = earlierName(f.at, f.index, jobs)
			l.job.Before.Jobs = append(l.job.Before.Jobs, EarlierJob{f.pos, e.Name, e.File, len(e.Entries)})
			jobs = append(jobs, e)
		}
	}
	if l.house != nil {
		l.takeOver(record.Existing(jobs), root)
	}
}

// earlier reads the record of a job that is named at pos.
func (l *jobLoader) earlier(pos diag.Pos, key, name, job string, read FileReader) (e record.Earlier, ok bool) {
	jobSrc, err := read(job)
	if err != nil {
		l.list.Errorf(pos, key, "%v", err)
		return e, false
	}
	e.File = record.Path(job)
	src, err := read(e.File)
	if err != nil {
		l.list.Errorf(pos, key, "%v; want the record of what was done, which topplate record writes beside %s", err, name)
		return e, false
	}
	var list *diag.List
	e.Entries, list = record.Read(e.File, src)
	l.list.Append(list)
	if len(e.Entries) == 0 {
		l.list.Warnf(pos, key, "%s has no entry, so that nothing is known of what was done", e.File)
	}
	l.job.Inputs = append(l.job.Inputs, Input{filepath.ToSlash(record.Path(name)), sha256.Sum256(src)})
	l.sameFiles(pos, key, e, sha256.Sum256(jobSrc))
	return e, true
}

// sameFiles warns if the earlier job, or the house, is not what it was when its
// record was begun.
func (l *jobLoader) sameFiles(pos diag.Pos, key string, e record.Earlier, job [sha256.Size]byte) {
	i := slices.IndexFunc(e.Entries, func(e record.Entry) bool { return e.Kind == record.StartKind })
	if i < 0 {
		return
	}
	begun := &e.Entries[i]
	at := diag.Pos{File: e.File, Line: begun.Line, Col: 1}
	in := begun.Start.Inputs
	if len(in) > 0 && in[0].SHA256 != job {
		l.list.Warnf(pos, key, "%s was changed after its record was begun: what is recorded is taken as it is", in[0].Path).Note(at, "the record begins here")
	}
	if len(in) > 1 && l.house != nil && in[1].SHA256 != l.job.Inputs[1].SHA256 {
		l.list.Warnf(pos, key, "the house was changed after that job was recorded: see whether its holes are still where the record says, along the walls").Note(at, "the record begins here")
	}
}

// earlierName is a short name of a job, which no job before it has: that of its
// file, or of its folder if the file is called as all of them are.
func earlierName(path string, i int, before []record.Earlier) string {
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if name == "job" {
		name = filepath.Base(filepath.Dir(path))
	}
	taken := func(e record.Earlier) bool { return e.Name == name }
	const longest = 20
	if !record.IsName(name) || len(name) > longest || slices.ContainsFunc(before, taken) {
		name = "after" + strconv.Itoa(i+1)
	}
	return name
}

// takeOver puts what earlier jobs left into the job.
func (l *jobLoader) takeOver(left record.Left, root *source.Table) {
	for i := range left.Holes {
		if h := &left.Holes[i]; h.InPlate() {
			l.takeHole(h)
		} else {
			l.takeOpened(h)
		}
	}
	if len(l.job.Fixed) > mostFixed {
		root.Errorf("after", "found %d fixed parts with the holes of earlier jobs; at most %d are read", len(l.job.Fixed), mostFixed)
	}
	for i := range left.Spools {
		l.takeSpool(&left.Spools[i])
	}
	for _, p := range left.Ports {
		l.job.Before.Ports = append(l.job.Before.Ports, UsedPort{p.Cable, p.Port, position(p.Origin), p.Number})
	}
	cables := len(left.Ports)
	for i := range l.job.Drops {
		cables += l.job.Drops[i].Count
	}
	if ports := l.job.Closet.Ports; len(left.Ports) > 0 && ports > 0 && cables > ports {
		root.Warnf("after", "there are %d ports for %d cables, %d of them from earlier jobs", ports, cables, len(left.Ports))
	}
}

// position is the place of an entry.
func position(o record.Origin) diag.Pos { return diag.Pos{File: o.File, Line: o.Line, Col: 1} }

// takeOpened keeps a hole that is not in a plate. Where the house has no such place
// that is no fault, since no part of the job rests on it.
func (l *jobLoader) takeOpened(h *record.LeftHole) {
	o := Opened{
		ID: h.ID, Pos: position(h.Origin), Entry: h.Number, Through: h.Through, Wall: -1, At: h.At, Pointed: h.Pointed,
		Point: geom.Point3{X: h.Point[0], Y: h.Point[1], Z: h.Point[2]}, Diameter: h.Diameter, Cables: h.Cables,
	}
	if h.Wall != "" {
		if o.Wall = slices.Index(l.wallNames.ids, h.Wall); o.Wall < 0 {
			o.Unknown = fmt.Sprintf("there is no wall %.40q; %s", h.Wall, suggest(h.Wall, "wall", l.wallNames.ids))
		}
	}
	l.job.Before.Opened = append(l.job.Before.Opened, o)
}

// takeHole makes a hole of an earlier job a fixed part, unless the job says
// itself what is to be done with it or what is in its place.
func (l *jobLoader) takeHole(h *record.LeftHole) {
	pos := position(h.Origin)
	w := slices.Index(l.wallNames.ids, h.Wall)
	if w < 0 {
		l.list.Errorf(pos, "hole "+h.ID, "found wall %.40q, which is no wall %s; %s", h.Wall, l.wallNames.place, suggest(h.Wall, "wall", l.wallNames.ids))
		return
	}
	wall := &l.house.Walls[w]
	if whole := ordered(wall.Along(wall.Body.Min), wall.Along(wall.Body.Max)); h.At <= whole.lo || h.At >= whole.hi {
		l.list.Errorf(pos, "hole "+h.ID, "found a hole at %s along wall %s; want it from %s to %s", l.house.text(h.At), h.Wall, l.house.text(whole.lo), l.house.text(whole.hi)).
			Note(wall.here())
		return
	}
	left := Fixed{ID: h.ID, Pos: pos, Do: FixedThere, Wall: w, At: h.At, Bottom: h.Through == record.BottomPlate, Diameter: h.Diameter, Cables: h.Cables}
	if left.Bottom {
		if why := l.noSole(&left); why != "" {
			l.list.Errorf(pos, "hole "+h.ID, "found a hole in the bottom plate of wall %s at %s along it, where %s", h.Wall, l.house.text(h.At), why)
			return
		}
	}
	for i := range l.job.Fixed {
		f := &l.job.Fixed[i]
		here := f.Do == FixedThere && f.Wall == w && f.Bottom == left.Bottom && 2*max(f.At-h.At, h.At-f.At) < f.Diameter+h.Diameter
		if f.ID == h.ID || here {
			l.list.Warnf(f.Pos, "fixed", "fixed part %s stands for the hole %s that an earlier job left: this file wins", f.ID, h.ID).Note(pos, "entry %d is here", h.Number)
			return
		}
	}
	l.job.Fixed = append(l.job.Fixed, left)
	l.job.Before.Holes = append(l.job.Before.Holes, LeftOver{h.ID, pos, h.Number})
}

// takeSpool puts a spool of an earlier job among those at hand, unless the job
// has one of that name.
func (l *jobLoader) takeSpool(s *record.LeftSpool) {
	pos := position(s.Origin)
	kind, known := l.job.Cable(s.Cable)
	own := slices.IndexFunc(l.job.Spools, func(o Spool) bool { return o.ID == s.ID })
	switch {
	case own >= 0:
		l.list.Warnf(l.job.Spools[own].Pos, "spool", "there are %s on spool %s here, and an earlier job left %s: this file wins", exact(l.job.Spools[own].Units, l.job.Spools[own].Left), s.ID, exact(l.job.Spools[own].Units, s.Left)).Note(pos, "entry %d is here", s.Number)
		return
	case !known:
		l.list.Warnf(pos, "spool "+s.ID, "found cable %.40q, which this job doesn't know, so that the spool is left out; it can be described under [[cable]]", s.Cable)
		return
	case !lefts.Contains(s.Left):
		return // an end that is too short to be listed
	}
	l.job.Spools = append(l.job.Spools, Spool{ID: s.ID, Pos: pos, Cable: kind, Left: s.Left, Marked: s.Marked, Mark: s.Mark, Units: l.house.Units, Down: s.Down})
	l.job.Before.Spools = append(l.job.Before.Spools, LeftOver{s.ID, pos, s.Number})
}
