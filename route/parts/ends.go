package parts

import (
	"fmt"
	"strings"

	"topplate/plan"
	"topplate/plan/connector"
)

// An ending is what is put on cables: at the drops, and in the closet.
type ending struct {
	kind           connector.Type
	drops, closets int64
}

// ends counts jacks, plugs, posts and panels.
func (l *lister) ends(w wants, s scope) {
	used := map[string]*ending{}
	posts := notes{}
	add := func(c connector.Type, drops, closets int64) {
		if used[c.ID] == nil {
			used[c.ID] = &ending{kind: c}
		}
		used[c.ID].drops += drops
		used[c.ID].closets += closets
	}
	ports := int64(0)
	for _, r := range s.routes {
		d := l.drop(r)
		n := int64(d.Count)
		switch {
		case d.Connector.ID != "":
			add(d.Connector, n, 0)
		case d.End == connector.Jack:
			posts.add(l.of(postID(d)), n, fmt.Sprintf("%s: one for each cable", d.Tag))
		}
		if jack, ok := connector.Usual(d.Cable.Category, connector.Jack); ok {
			add(jack, 0, n)
			ports += n
		}
	}
	posts.into(w)
	for _, id := range rising(used) {
		l.ending(w, used[id])
	}
	l.panel(w, ports)
}

// postID is the part that speaker cable ends in at a plate.
func postID(d *plan.Drop) string {
	if d.Cable.Conductors > 2 {
		return "post-insert-4"
	}
	return "post-insert-2"
}

// ending counts one kind of plug or jack, with its spares.
func (l *lister) ending(w wants, e *ending) {
	h := jackSpares
	if e.kind.Kind == connector.Plug {
		h = plugSpares
	}
	n := e.drops + e.closets
	more := h.share(n)
	var why []string
	if e.drops > 0 {
		why = append(why, fmt.Sprintf("%d at drops", e.drops))
	}
	if e.closets > 0 {
		why = append(why, fmt.Sprintf("%d at the panel", e.closets))
	}
	why = append(why, fmt.Sprintf("%d to spare (%d %s, at least %d)", more, h.Value, h.Unit, h.Least))
	w.add(connectorPart(l.job, e.kind), n+more, strings.Join(why, " + ")+"; "+l.attempts())
}

// attempts says how often an end can be terminated with the cable that the job
// allows for it.
func (l *lister) attempts() string {
	n := int64(l.job.Slack.Trim) / retermination.Value
	return fmt.Sprintf("the trim of %s at each end does for %s", l.job.House.Units.Format(l.job.Slack.Trim), counted(n, "termination"))
}

// panel counts the panels for the ports of the closet, or for the cables if
// there are more.
func (l *lister) panel(w wants, used int64) {
	if used == 0 {
		return
	}
	ports := max(int64(l.job.Closet.Ports), used)
	for size, n := range split(panels, int(ports)) {
		w.add(panelPart(size), int64(n), fmt.Sprintf("%d ports at the closet, %d used", ports, used))
	}
}
