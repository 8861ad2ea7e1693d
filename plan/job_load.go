package plan

import (
	"crypto/sha256"
	"path/filepath"

	"topplate/plan/diag"
	"topplate/plan/geom"
	"topplate/plan/rule"
	"topplate/plan/source"
)

// A FileReader returns the bytes of a file by its path. Its error is one
// sentence that names the path.
type FileReader func(path string) ([]byte, error)

// A jobLoader fills a Job. Its house is nil while no house could be loaded:
// then keys and their values are checked, and places are not.
type jobLoader struct {
	list  *diag.List
	job   *Job
	house *House
	std   defaults
	book  rule.Book // with the job's own limits

	roomNames, wallNames, levelNames, spaceNames names
	spots                                        spotReader
	things                                       *things // what distances along walls may be measured from

	included     []included
	labelled     *source.Table // that the scheme of labels is from; nil if it is built in
	badConnector bool          // what some own connector is can't be told
}

// LoadJob reads the job file at path and the files that it names, which are
// looked for from the folder of the job file: the house, and those that it
// includes. The job is nil if there is any error, and the list has all that
// were found in all files. Warnings come
// with a job.
func LoadJob(path string, read FileReader) (*Job, *diag.List) {
	src, err := read(path)
	if err != nil {
		list := &diag.List{}
		list.Errorf(diag.Pos{File: path}, "", "%v", err)
		return nil, list
	}
	root, list := source.Parse(path, src)
	if root == nil {
		return nil, list
	}
	l := &jobLoader{list: list, job: &Job{File: path}}
	l.job.Inputs = append(l.job.Inputs, Input{filepath.Base(path), sha256.Sum256(src)})
	l.loadHouse(root, path, read)
	l.builtIn()
	l.include(root, path, read)
	l.settings(root)
	l.book = l.job.Book()
	l.applyClearances()
	l.header(root)
	l.closet(root)
	l.drops(root)
	l.fixed(root)
	l.allow(root)
	l.spools(root)
	l.feed(root)
	l.have(root)
	l.checkScheme()
	l.after(root, path, read)
	root.Done()
	l.includedDone()
	if list.HasErrors() {
		return nil, list
	}
	return l.job, list
}

// loadHouse reads the house of the job.
func (l *jobLoader) loadHouse(root *source.Table, path string, read FileReader) {
	// Units are those of the house; without any, these will do for the rest.
	l.std = defaultsOf[0]
	name, ok := root.Text("house", source.Required)
	if !ok {
		return
	}
	at := name
	if !filepath.IsAbs(name) {
		at = filepath.Join(filepath.Dir(path), name)
	}
	src, err := read(at)
	if err != nil {
		root.Errorf("house", "%v", err)
		return
	}
	l.job.Inputs = append(l.job.Inputs, Input{filepath.ToSlash(name), sha256.Sum256(src)})
	house, units, list := loadHouse(at, src)
	l.list.Append(list)
	root.Speak(units)
	if house == nil {
		return
	}
	l.house = house
	l.pictures(name, at, read)
	l.job.House, l.std = house, defaultsOf[house.Units]
	l.roomNames, l.wallNames = names{kind: "room", place: "in " + at}, names{kind: "wall", place: "in " + at}
	for i := range house.Rooms {
		l.roomNames.take(house.Rooms[i].ID, house.Rooms[i].Pos)
	}
	l.levelNames, l.spaceNames = names{kind: "level", place: "in " + at}, names{kind: "space", place: "in " + at}
	for _, s := range house.Spaces {
		l.spaceNames.take(s.ID, s.Pos)
	}
	for i := range house.Levels {
		l.levelNames.take(house.Levels[i].ID, house.Levels[i].Pos)
	}
	for i := range house.Walls {
		l.wallNames.takeWall(house.Walls[i].ID, house.Walls[i].Pos, house.Walls[i].Made)
	}
	l.things = house.things(&l.wallNames)
	l.spots = spotReader{house: house, rooms: &l.roomNames}
}

// header reads [job].
func (l *jobLoader) header(root *source.Table) {
	t, ok := root.Table("job", source.Required)
	if !ok {
		return
	}
	l.job.Name, _ = t.Title("name", source.Required)
	l.job.Number = titleOr(t, "number")
	l.job.Revision = titleOr(t, "revision")
	l.job.By = titleOr(t, "by")
	l.job.Date, _ = t.Date("date", source.Optional)
}

// find reads a reference to a room or a wall of the house. Without a house
// only the form of the name is checked.
func (l *jobLoader) find(t *source.Table, key string, known *names) (int, bool) {
	if l.house == nil {
		t.Name(key, source.Required)
		return -1, false
	}
	return known.find(t, key, source.Required)
}

// spot reads a place in plan. Without a house only its form is checked.
func (l *jobLoader) spot(t *source.Table, key string) (at geom.Point, ok bool) {
	if l.house == nil {
		t.Has(key)
		return at, false
	}
	return l.spots.read(t, key)
}
