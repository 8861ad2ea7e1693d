package plan

import (
	"slices"

	"topplate/plan/cable"
	"topplate/plan/connector"
	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/source"
)

// An OwnConnector is a kind of plug or jack that the job describes.
type OwnConnector struct {
	Pos  diag.Pos
	Like string // id of the built-in kind that it takes the rest from
	Type connector.Type
}

// connectors reads [[connector]]: plugs and jacks like a built-in one, but for
// what is said.
func (l *jobLoader) connectors(root *source.Table) {
	ids := names{kind: "connector"}
	for _, t := range tables(root, "connector", source.Optional, mostOwn) {
		own := OwnConnector{Pos: t.Pos()}
		id, _ := t.Name("id", source.Required)
		ids.add(t, "id", id)
		if _, taken := connector.Lookup(id); taken {
			t.Errorf("id", "found %q, which is built in; want an id of your own, with like = %q", id, id)
		}
		like, ok := t.Choice("like", source.Required, connector.IDs()...)
		if !ok {
			// It may be meant as a plug or as a jack: it stands for neither,
			// and where it is used nothing more is said.
			askAllKeys(t)
			l.badConnector = true
			continue
		}
		own.Like = like
		own.Type, _ = connector.Lookup(like)
		own.Type.ID = id
		ownConnector(t, &own.Type)
		l.ownConnector(own)
	}
}

// ownConnector takes up a plug or a jack, in the place of one of an earlier
// file that has its id.
func (l *jobLoader) ownConnector(c OwnConnector) {
	l.origin("connector", c.Type.ID, c.Pos)
	for i := range l.job.OwnConnectors {
		if c.Type.ID != "" && l.job.OwnConnectors[i].Type.ID == c.Type.ID {
			l.job.OwnConnectors[i] = c
			return
		}
	}
	l.job.OwnConnectors = append(l.job.OwnConnectors, c)
}

// ownConnector reads what is not as in the kind that c is like.
func ownConnector(t *source.Table, c *connector.Type) {
	if title, ok := t.Title("title", source.Optional); ok {
		c.Title = title
	}
	before := *c
	if a, b, ok := gaugeRange(t, "gauges"); ok {
		c.Thickest, c.Thinnest = min(a, b), max(a, b)
	}
	c.Solid = boolOr(t, "solid", c.Solid)
	c.Stranded = boolOr(t, "stranded", c.Stranded)
	if !c.Solid && !c.Stranded {
		t.Errorf(present(t, "solid", "stranded"), "found a connector for neither solid nor stranded conductors; want one of them at least")
	}
	c.Core = rangeOr(t, "core", cores, c.Core)
	if c.Kind == connector.Plug {
		c.Jacket = rangeOr(t, "jacket", jackets, c.Jacket)
		c.PassThrough = boolOr(t, "pass_through", c.PassThrough)
	} else {
		only(t, "jacket", false, "a plug, which grips the jacket")
		only(t, "pass_through", false, "a plug")
	}
	before.Title = c.Title
	if *c != before {
		c.Source = bySelf
	}
}

// gaugeRange reads two gauges, in whichever order.
func gaugeRange(t *source.Table, key string) (a, b int, ok bool) {
	array, ok := t.Array(key, source.Optional)
	if !ok {
		return 0, 0, false
	}
	if n := len(array.Keys()); n != 2 {
		t.Errorf(key, "found %s; want the thickest and the thinnest gauge, such as [22, 24]", counted(n, "value"))
		askAllKeys(array)
		return 0, 0, false
	}
	a, okA := array.Int("0", source.Required, cable.ThickestGauge, cable.ThinnestGauge)
	b, okB := array.Int("1", source.Required, cable.ThickestGauge, cable.ThinnestGauge)
	return a, b, okA && okB
}

// rangeOr reads two lengths, the least and the most, or gives otherwise.
func rangeOr(t *source.Table, key string, b bound, otherwise measure.Range) measure.Range {
	array, ok := t.Array(key, source.Optional)
	if !ok {
		return otherwise
	}
	if n := len(array.Keys()); n != 2 {
		t.Errorf(key, "found %s; want the least and the most, such as %s", counted(n, "value"), t.Example(`["0.2in", "0.25in"]`, `["5.5mm", "6.5mm"]`))
		askAllKeys(array)
		return otherwise
	}
	lo, okLo := length(array, "0", source.Required, b)
	hi, okHi := length(array, "1", source.Required, b)
	switch {
	case !okLo || !okHi:
		return otherwise
	case lo > hi:
		t.Errorf(key, "found %s to %s; want the least first", exact(t.Units(), lo), exact(t.Units(), hi))
		return otherwise
	}
	return measure.Range{Min: lo, Max: hi}
}

// connectorIDs are the plugs or the jacks that the job can use: its own go
// last.
func (l *jobLoader) connectorIDs(k connector.Kind) []string {
	ids := connector.IDs()
	for i := range l.job.OwnConnectors {
		ids = append(ids, l.job.OwnConnectors[i].Type.ID)
	}
	return slices.DeleteFunc(ids, func(id string) bool {
		c, ok := l.job.ConnectorType(id)
		return id == "" || !ok || c.Kind != k
	})
}

// ConnectorType returns the plug or jack with this id, built in or the job's
// own.
func (j *Job) ConnectorType(id string) (connector.Type, bool) {
	if c, ok := connector.Lookup(id); ok {
		return c, true
	}
	for i := range j.OwnConnectors {
		if c := j.OwnConnectors[i].Type; c.ID == id {
			return c, true
		}
	}
	return connector.Type{}, false
}
