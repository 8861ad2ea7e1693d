package plan

import (
	"slices"
	"strings"

	"topplate/plan/diag"
	"topplate/plan/source"
)

// Labels say how cables are named on their labels.
type Labels struct {
	Pos    diag.Pos // of the scheme, or of the job file without one
	Scheme string   // as the file has it: "{panel}{port}-{tag}.{n}"
	Parts  []LabelPart
}

// A LabelPart is a part of a label: a Text as it is, or a Field, one of them
// empty.
type LabelPart struct{ Text, Field string }

// labelFields are the fields of a label: the closet's panel, the port there,
// the room of the drop, its tag, the number of the cable in its drop from 1,
// the level, and the job's number.
var labelFields = []string{"panel", "port", "room", "tag", "n", "floor", "job"}

// defaultScheme tells both ends of a cable, and every cable apart. ANSI/TIA-606
// asks for such an identifier at both ends (from memory).
const defaultScheme = "{panel}{port}-{tag}.{n}"

// defaultLabels are those of a job in a file that says nothing of them.
func defaultLabels(file string) Labels {
	parts, _, _ := labelParts(defaultScheme)
	return Labels{Pos: diag.Pos{File: file}, Scheme: defaultScheme, Parts: parts}
}

// labels reads [labels]. Whether they tell the job's cables apart is seen when
// all are known.
func (l *jobLoader) labels(root *source.Table) {
	t, ok := root.Table("labels", source.Optional)
	if !ok {
		return
	}
	scheme, ok := t.Title("scheme", source.Optional)
	if !ok {
		return
	}
	parts, offset, fault := labelParts(scheme)
	if fault != "" {
		l.list.Errorf(t.ValuePosAt("scheme", offset), t.Path("scheme"), "%s", fault)
		return
	}
	l.job.Labels = Labels{Pos: t.ValuePos("scheme"), Scheme: scheme, Parts: parts}
	l.labelled = t
}

// labelParts takes a scheme apart. If it is at fault it says where and how.
func labelParts(scheme string) (parts []LabelPart, offset int, fault string) {
	for at := 0; at < len(scheme); {
		brace := strings.IndexAny(scheme[at:], "{}")
		if brace < 0 {
			return append(parts, LabelPart{Text: scheme[at:]}), 0, ""
		}
		if brace > 0 {
			parts = append(parts, LabelPart{Text: scheme[at : at+brace]})
		}
		at += brace
		end := strings.IndexByte(scheme[at:], '}')
		if scheme[at] == '}' || end < 0 {
			return nil, at, "found a brace without its other half; want fields such as {tag}"
		}
		field := scheme[at+1 : at+end]
		if !slices.Contains(labelFields, field) {
			return nil, at + 1, "found {" + strings.Trim(quoted([]string{field}), `"`) + "}, which is no field of a label; " + suggest(field, "field", labelFields)
		}
		parts = append(parts, LabelPart{Field: field})
		at += end + 1
	}
	return parts, 0, ""
}

// Has reports whether a field is part of the labels.
func (lb *Labels) Has(field string) bool {
	return slices.Contains(lb.Parts, LabelPart{Field: field})
}

// checkScheme reports a scheme by which two cables would have one label.
func (l *jobLoader) checkScheme() {
	t, lb := l.labelled, &l.job.Labels
	if t == nil {
		return // the built-in one
	}
	if lb.Has("job") && l.job.Number == "" {
		t.Errorf("scheme", "found {job}, but the job has no number; want number in [job]")
	}
	if lb.Has("port") {
		return
	}
	if !lb.Has("tag") {
		t.Errorf("scheme", "found labels without {port} and without {tag}, which don't tell cables apart; want one of them")
		return
	}
	for i := range l.job.Drops {
		if d := &l.job.Drops[i]; d.Count > 1 && !lb.Has("n") {
			t.Errorf("scheme", "found labels without {port} and without {n}, by which the %d cables of drop %s have one label", d.Count, d.Tag).
				Note(d.Pos, "%s is here", d.Tag)
			return
		}
	}
}
