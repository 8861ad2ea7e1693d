package plan

import (
	"crypto/sha256"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"topplate/plan/diag"
	"topplate/plan/source"
)

// settingTables are what a file that a job includes may have, in the order of
// the reference: what a user takes from job to job, and nothing of a house.
// keyedTables are those of them whose keys are settings, each of its own.
var (
	settingTables = append([]string{"cable", "connector"}, keyedTables...)
	keyedTables   = []string{"buy", "crew", "labels", "parts", "estimate", "sheets", "tools", "limits", "prices", "weights", "rates", "slack"}
)

// mostIncluded bounds the files that a job includes.
const mostIncluded = 20

// An included is a file that the job includes.
type included struct {
	root *source.Table
	list *diag.List
}

// builtIn gives all settings the values that hold where no file says otherwise.
func (l *jobLoader) builtIn() {
	j, std := l.job, &l.std
	j.Origins = map[string][]diag.Pos{}
	j.Limits, j.Prices, j.PartPrices = map[string]Override{}, map[string]Override{}, map[string]Override{}
	j.Tools = Tools{Pos: diag.Pos{File: j.File}, Rods: std.rods, ArmReach: std.arm, Bits: slices.Clone(defaultBits)}
	j.Rates, j.Crew, j.Weights = defaultRates, defaultCrew, EvenWeights
	j.Slack = Slack{Closet: std.closetLoop, Outlet: std.outletLoop, Trim: std.trim, Percent: defaultWaste, Round: std.round}
	j.Buy = newPurchase(std.spool)
	j.Labels = defaultLabels(j.File)
	j.Allowance = defaultAllowance
	if l.house != nil {
		j.Paper = paperOf[l.house.Units]
	}
}

// include reads include: the settings of other files, in their order, before
// those of the job itself.
func (l *jobLoader) include(root *source.Table, path string, read FileReader) {
	if !root.Has("include") {
		return
	}
	for _, f := range l.otherFiles(root, "include", path, mostIncluded, "files with settings") {
		src, err := read(f.at)
		if err != nil {
			l.list.Errorf(f.pos, f.key, "%v", err)
			continue
		}
		l.job.Inputs = append(l.job.Inputs, Input{filepath.ToSlash(f.name), sha256.Sum256(src)})
		t, list := source.Parse(f.at, src)
		l.included = append(l.included, included{t, list})
		if t != nil {
			t.Speak(root.Units())
			l.onlySettings(t)
			l.settings(t)
		}
	}
}

// onlySettings reports what is no setting in a file that is included. Such a
// file includes no others, so that none can come round to itself.
func (l *jobLoader) onlySettings(t *source.Table) {
	for _, key := range t.Keys() {
		if slices.Contains(settingTables, key) {
			continue
		}
		t.Has(key)
		if key == "include" {
			l.list.Errorf(t.KeyPos(key), key, "found include in a file that is included; want all files named in the job file")
			continue
		}
		want := "want " + quoted(settingTables)
		if near, ok := diag.Nearest(key, settingTables); ok {
			want = "the nearest is " + strconv.Quote(near)
		}
		l.list.Errorf(t.KeyPos(key), t.Path(key), "found %.40q, which is no setting that a file can give to the job that includes it; %s", key, want)
	}
}

// settings reads the settings of one file over those of the files before it.
func (l *jobLoader) settings(root *source.Table) {
	l.limits(root)
	l.cables(root)
	l.connectors(root)
	l.tools(root)
	l.rates(root)
	l.slack(root)
	l.prices(root)
	l.weights(root)
	l.buy(root)
	l.crew(root)
	l.labels(root)
	l.partPrices(root)
	l.estimate(root)
	l.paper(root)
	l.origins(root)
}

// origins notes where the settings of one file are; cables and connectors note
// theirs as they are taken up. What is not as it should be
// has been reported already.
func (l *jobLoader) origins(root *source.Table) {
	for _, name := range keyedTables {
		if root.Kind(name) != source.KindTable {
			continue
		}
		t, _ := root.Table(name, source.Optional)
		for _, key := range t.Keys() {
			l.origin(name, key, t.ValuePos(key))
		}
	}
}

// origin notes that a setting of a table is at pos.
func (l *jobLoader) origin(table, key string, pos diag.Pos) {
	path := table + "." + key
	l.job.Origins[path] = append(l.job.Origins[path], pos)
}

// includedDone reports the keys of included files that are not known, and what
// else was found in them.
func (l *jobLoader) includedDone() {
	for _, f := range l.included {
		if f.root != nil {
			f.root.Done()
		}
		l.list.Append(f.list)
	}
}

// An otherFile is a file that the job file names in a list.
type otherFile struct {
	pos   diag.Pos // of its name
	key   string   // after[0]
	index int
	name  string // as the job file has it
	at    string // from where the program runs
}

// otherFiles reads a list of files, each another one and none the job file.
func (l *jobLoader) otherFiles(root *source.Table, list, path string, most int, want string) []otherFile {
	items, ok := root.Texts(list, source.Required)
	if !ok {
		return nil
	}
	if len(items) > most {
		root.Errorf(list, "found %d files; at most %d are read", len(items), most)
		return nil
	}
	var files []otherFile
	seen := map[string]diag.Pos{}
	for i, item := range items {
		f := otherFile{item.Pos, list + "[" + strconv.Itoa(i) + "]", i, item.Value, filepath.Clean(item.Value)}
		if !filepath.IsAbs(f.at) {
			f.at = filepath.Join(filepath.Dir(path), f.at)
		}
		first, twice := seen[f.at]
		switch {
		case strings.TrimSpace(f.name) == "":
			l.list.Errorf(f.pos, f.key, "found no name; want %s", want)
		case f.at == filepath.Clean(path):
			l.list.Errorf(f.pos, f.key, "found this job itself; want %s", want)
		case twice:
			l.list.Errorf(f.pos, f.key, "found %.60q again", f.name).Note(first, "it is first named here")
		default:
			seen[f.at] = f.pos
			files = append(files, f)
		}
	}
	return files
}
