package tags

import (
	"fmt"
	"strconv"

	"topplate/plan"
	"topplate/plan/connector"
	"topplate/route"
)

// A Kind says what a label is put on.
type Kind uint8

// What a label is put on, in the order of the labels of one cable.
const (
	ClosetEnd Kind = iota // the cable, in the closet
	PanelPort             // the port of the panel
	DropEnd               // the cable, at the drop
	PlatePort             // the port of the plate or housing at the drop
)

var kindNames = [...]string{"closet end", "panel port", "drop end", "plate port"}

func (k Kind) String() string { return kindNames[k] }

// OnCable reports whether a label goes round a cable, and not on a port.
func (k Kind) OnCable() bool { return k == ClosetEnd || k == DropEnd }

// A Label is one label to print and to put on.
type Label struct {
	Kind Kind
	Text string // from the scheme; the same for all labels of a cable
	Drop int    // index in Job.Drops
	Tag  string // of the drop
	// Cable is the number of the cable in its drop, from 1.
	Cable int
	// Panel and Port are where the cable ends in the closet. Port counts from
	// 1. It may be beyond the ports that the closet has: then there is a finding
	// about it, or the cable ends under screws.
	Panel string
	Port  int
	// Where says in words what this label is put on.
	Where string
	// Far says in words where the other end of the cable is.
	Far string
	// Later is true for a drop that is not run today.
	Later bool
}

// Labels lists the labels of all cables that have a route, by drop in the
// order of their tags, then by cable, then by kind. Findings say where the
// closet has too few ports, and where the scheme gives two cables one text.
func Labels(res *route.Result) ([]Label, []route.Finding) {
	var out []Label
	ports := portsOf(res)
	for i := range res.Routes {
		r := &res.Routes[i]
		if r.Blocked != nil {
			continue
		}
		d := &res.Job.Drops[r.Drop]
		for n := 1; n <= d.Count; n++ {
			l := Label{Drop: r.Drop, Tag: d.Tag, Cable: n, Panel: res.Job.Closet.Panel, Port: ports.of[r.Drop][n-1], Later: d.Later}
			l.Text = ports.text(res.Job, &l)
			out = append(out, onCable(res.Job, d, l)...)
		}
	}
	findings := ports.tooFew(res.Job)
	return out, append(findings, twice(res.Job, out)...)
}

// onCable makes the two to four labels of a cable from what they share.
func onCable(job *plan.Job, d *plan.Drop, l Label) []Label {
	closet, drop := closetPlace(job, d, l.Port), dropPlace(job, d, l.Cable)
	near := l
	near.Where, near.Far = closet, drop
	far := l
	far.Where, far.Far = drop, closet
	var out []Label
	add := func(k Kind, l Label) {
		l.Kind = k
		out = append(out, l)
	}
	add(ClosetEnd, near)
	if hasPort(d) {
		add(PanelPort, near)
	}
	add(DropEnd, far)
	if d.End == connector.Jack {
		add(PlatePort, far)
	}
	return out
}

// hasPort reports whether a drop's cables end in ports of the panel. Cable
// that has no plug or jack of its kind ends under screws.
func hasPort(d *plan.Drop) bool {
	_, ok := connector.Usual(d.Cable.Category, connector.Jack)
	return ok
}

// closetPlace is where a cable ends in the closet.
func closetPlace(job *plan.Job, d *plan.Drop, port int) string {
	if !hasPort(d) {
		return job.Closet.Name + ", screws"
	}
	return fmt.Sprintf("%s, port %d", job.Closet.Name, port)
}

// dropPlace is where a cable ends at its drop.
func dropPlace(job *plan.Job, d *plan.Drop, n int) string {
	text := roomName(job, d) + ", " + d.Kind.String()
	if d.Note != "" {
		text += " (" + d.Note + ")"
	}
	if d.Count > 1 {
		text += ", " + strconv.Itoa(n) + " of " + strconv.Itoa(d.Count)
	}
	return text
}

// outside is what labels call the place of a drop that is in no room.
const outside = "outside"

func roomName(job *plan.Job, d *plan.Drop) string {
	if d.Room < 0 {
		return outside
	}
	if r := &job.House.Rooms[d.Room]; r.Name != "" {
		return r.Name
	}
	return job.House.Rooms[d.Room].ID
}

// Columns are the headings of the rows of labels.
func Columns() []string {
	return []string{"label", "on", "where", "other end", "panel", "port", "drop", "cable", "when"}
}

// Row is a label as a row under Columns.
func (l *Label) Row() []string {
	when := "today"
	if l.Later {
		when = "later"
	}
	return []string{l.Text, l.Kind.String(), l.Where, l.Far, l.Panel, strconv.Itoa(l.Port), l.Tag, strconv.Itoa(l.Cable), when}
}
