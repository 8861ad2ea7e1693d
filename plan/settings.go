package plan

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"topplate/plan/cable"
	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// A Setting is a value that a job file, or a file that it includes, may give,
// as it holds for the job.
type Setting struct {
	Path  string // "slack.trim"
	Value string // for people
	// From is where the value is written, with no file if it is built in.
	From diag.Pos
	// Over is where other values for it are that do not hold, since From was
	// read later.
	Over []diag.Pos
}

// Settings returns all settings with where they are from, in the order of the
// reference. Own cables, connectors and prices of parts are those that a file
// has; of all others also what is built in.
func (j *Job) Settings() []Setting {
	s := settingList{job: j, units: j.House.Units}
	s.kinds()
	s.work()
	s.tools()
	s.rules()
	s.money()
	return s.all
}

// A settingList gathers settings.
type settingList struct {
	job   *Job
	units measure.System
	all   []Setting
}

// add adds a setting of a table and looks up where it is from.
func (s *settingList) add(table, key, value string) {
	set := Setting{Path: table + "." + key, Value: value}
	if from := s.job.Origins[set.Path]; len(from) > 0 {
		set.From, set.Over = from[len(from)-1], from[:len(from)-1]
	}
	s.all = append(s.all, set)
}

func (s *settingList) length(table, key string, l measure.Length) {
	s.add(table, key, s.units.Format(l))
}

// kinds adds own cables and connectors, and how cable is bought.
func (s *settingList) kinds() {
	j := s.job
	for i := range j.OwnCables {
		s.add("cable", j.OwnCables[i].Type.ID, "like "+j.OwnCables[i].Like)
	}
	for i := range j.OwnConnectors {
		s.add("connector", j.OwnConnectors[i].Type.ID, "like "+j.OwnConnectors[i].Like)
	}
	ids := cable.IDs()
	for i := range j.OwnCables {
		ids = append(ids, j.OwnCables[i].Type.ID)
	}
	for _, id := range ids {
		s.length("buy", id, j.Buy.Of(id))
	}
}

// work adds who works, the labels, the estimate and the sheets.
func (s *settingList) work() {
	j := s.job
	s.add("crew", "people", strconv.Itoa(j.Crew.People))
	s.add("crew", "start", fmt.Sprintf("%02d:%02d", j.Crew.Start/60, j.Crew.Start%60))
	s.add("crew", "day", j.Crew.dayWords())
	s.add("labels", "scheme", j.Labels.Scheme)
	for _, id := range slices.Sorted(maps.Keys(j.PartPrices)) {
		s.add("parts", id, plainThousandths(j.PartPrices[id].Value)+" "+j.Rates.Currency)
	}
	s.add("estimate", "allowance", strconv.Itoa(j.Allowance)+" %")
	s.add("sheets", "paper", j.Paper.String())
}

func (s *settingList) tools() {
	t := &s.job.Tools
	s.length("tools", "rods", t.Rods)
	s.length("tools", "arm", t.ArmReach)
	s.length("tools", "extension", t.Extension)
	bits := make([]string, len(t.Bits))
	for i, b := range t.Bits {
		bits[i] = s.units.Format(b.Diameter) + " reaching " + s.units.Format(b.Reach)
		if b.Flexible {
			bits[i] += ", flexible"
		}
	}
	s.add("tools", "bits", strings.Join(bits, "; "))
}

// rules adds the limits that hold.
func (s *settingList) rules() {
	book := s.job.Book()
	for i := range rule.Limits {
		id := rule.Limits[i].ID
		s.add("limits", string(id), book.Limit(id).Print(s.units))
	}
}

// money adds prices, weights, rates, and what is added to lengths.
func (s *settingList) money() {
	j := s.job
	for i := range price.Terms {
		term := &price.Terms[i]
		if term.Unit == price.Elsewhere {
			continue
		}
		value := term.Value
		if own, ok := j.Prices[string(term.ID)]; ok {
			value = own.Value
		}
		s.add("prices", string(term.ID), plainThousandths(value)+" "+term.Unit.String())
	}
	s.add("weights", "openings", plainThousandths(j.Weights.Openings))
	s.add("weights", "crawling", plainThousandths(j.Weights.Crawling))
	s.add("weights", "cable", plainThousandths(j.Weights.Cable))
	s.add("rates", "currency", j.Rates.Currency)
	s.add("rates", "hour", plainThousandths(j.Rates.Hour)+" "+j.Rates.Currency)
	s.length("slack", "closet", j.Slack.Closet)
	s.length("slack", "outlet", j.Slack.Outlet)
	s.length("slack", "trim", j.Slack.Trim)
	s.add("slack", "percent", strconv.Itoa(j.Slack.Percent)+" %")
	s.length("slack", "round", j.Slack.Round)
}

// plainThousandths writes n/1000 without needless zeros.
func plainThousandths(n int64) string {
	return strconv.FormatFloat(float64(n)/1000, 'f', -1, 64)
}
