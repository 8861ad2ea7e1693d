package tags

import (
	"fmt"
	"strconv"
	"strings"

	"topplate/plan"
	"topplate/plan/rule"
	"topplate/route"
)

// Ids of what is found here.
const (
	TooFewPorts rule.ID = "panel-too-small"
	SameLabel   rule.ID = "label-twice"
)

// Rules are the rules of this package, for whoever prints all of them.
var Rules = []rule.Rule{
	{
		ID: TooFewPorts, Title: "More cables than ports", Severity: rule.Caution,
		Source: rule.Source{Status: rule.CommonPractice},
		Text:   "Every cable with a plug or jack ends in a port of its own at the panel. Drops for later and drops without a route keep theirs.",
		Change: "more ports at the closet",
	},
	{
		ID: SameLabel, Title: "Two cables with one label", Severity: rule.Caution,
		Source: rule.Source{Document: "ANSI/TIA-606", Status: rule.FromMemory},
		Text:   "A label must tell a cable from every other in the house. Fields that run into each other can give two cables one text.",
		Change: "a character between the fields of the scheme",
	},
}

// ports are the numbers that cables have at the panel.
type ports struct {
	of      map[int][]int // by drop: the numbers of its cables
	needed  int           // by cables with a plug or jack
	largest int
	beyond  []int // drops with a cable beyond the last port
}

// portsOf gives every cable a number, in the order of tags; cables under screws
// come last. Ports that earlier jobs use are left out.
func portsOf(res *route.Result) ports {
	p := ports{of: map[int][]int{}}
	used := map[int]bool{}
	for _, u := range res.Job.Before.Ports {
		used[u.Port] = true
	}
	next := 0
	for _, screws := range []bool{false, true} {
		for i := range res.Routes {
			k := res.Routes[i].Drop
			d := &res.Job.Drops[k]
			if hasPort(d) == screws {
				continue
			}
			for range d.Count {
				for next++; used[next]; next++ {
				}
				p.of[k] = append(p.of[k], next)
			}
			if !screws && next > res.Job.Closet.Ports {
				p.beyond = append(p.beyond, k)
			}
		}
		if !screws {
			p.needed = next
		}
	}
	p.largest = max(next, res.Job.Closet.Ports)
	return p
}

// text is what the scheme of the job makes of a label.
func (p *ports) text(job *plan.Job, l *Label) string {
	d := &job.Drops[l.Drop]
	fields := map[string]string{
		"panel": l.Panel,
		"port":  fmt.Sprintf("%0*d", len(strconv.Itoa(p.largest)), l.Port),
		"room":  outside,
		"tag":   l.Tag,
		"n":     strconv.Itoa(l.Cable),
		"floor": job.House.Levels[job.House.LevelOf(d)].ID,
		"job":   job.Number,
	}
	if d.Room >= 0 {
		fields["room"] = job.House.Rooms[d.Room].ID
	}
	var b strings.Builder
	for _, part := range job.Labels.Parts {
		b.WriteString(part.Text)
		b.WriteString(fields[part.Field])
	}
	return b.String()
}

// tooFew reports cables beyond the last port of the panel.
func (p *ports) tooFew(job *plan.Job) []route.Finding {
	if len(p.beyond) == 0 {
		return nil
	}
	tags := make([]string, len(p.beyond))
	for i, d := range p.beyond {
		tags[i] = job.Drops[d].Tag
	}
	return []route.Finding{{
		Rule: TooFewPorts, Severity: rule.Caution, Pos: job.Closet.Pos, Where: job.Closet.Name,
		Found:  fmt.Sprintf("%d cables want a port, the panel has %d: no port for all of %s", p.needed, job.Closet.Ports, strings.Join(tags, ", ")),
		Change: fmt.Sprintf("ports = %d under [closet], or fewer cables", p.needed),
	}}
}

// twice reports texts that two cables have, once for each pair of drops. Where
// one text is on several cables, each is held against the first.
func twice(job *plan.Job, labels []Label) []route.Finding {
	type owner struct{ drop, cable int }
	first := map[string]owner{}
	said := map[[2]int]bool{}
	var out []route.Finding
	for i := range labels {
		l := &labels[i]
		o, taken := first[l.Text]
		if !taken {
			first[l.Text] = owner{l.Drop, l.Cable}
			continue
		}
		pair := [2]int{o.drop, l.Drop}
		if o == (owner{l.Drop, l.Cable}) || said[pair] {
			continue
		}
		said[pair] = true
		out = append(out, route.Finding{
			Rule: SameLabel, Severity: rule.Caution, Pos: job.Labels.Pos, Where: l.Tag,
			Found: fmt.Sprintf("cable %d of %s and cable %d of %s both have the label %q",
				o.cable, job.Drops[o.drop].Tag, l.Cable, l.Tag, l.Text),
			Change: fmt.Sprintf("a character between the fields of scheme = %q under [labels]", job.Labels.Scheme),
		})
	}
	return out
}
