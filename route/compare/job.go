package compare

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/plan/price"
	"topplate/plan/rule"
)

// jobs compares what the jobs ask for besides their drops. Names, numbers and
// dates always differ and are not compared.
func (d *Difference) jobs() {
	a, b := d.Plans[0].Job, d.Plans[1].Job
	d.Job = differing(describeJob(a), describeJob(b))
	d.Job = append(d.Job, byID(fixedParts(a), fixedParts(b))...)
	d.Job = append(d.Job, byID(spools(a), spools(b))...)
	d.Job = append(d.Job, differing(numbers(a), numbers(b))...)
	d.Job = append(d.Job, byID(partPrices(a), partPrices(b))...)
}

// describeJob lists what each job has one of.
func describeJob(j *plan.Job) []property {
	l := list{h: j.House}
	c, w := &j.Closet, &j.Weights
	var bits []string
	for _, b := range j.Tools.Bits {
		kind := "stiff"
		if b.Flexible {
			kind = "flexible"
		}
		bits = append(bits, fmt.Sprintf("%s reaching %s %s", j.House.Units.Format(b.Diameter), j.House.Units.Format(b.Reach), kind))
	}
	slices.Sort(bits)
	return []property{
		said("closet", c.Name),
		said("room of the closet", j.House.Rooms[c.Room].ID),
		{"place of the closet", [4]any{c.Point, c.Spot.At, c.Spot.Height, closetText(j)}, closetText(j)},
		l.length("width behind the panel", c.Width),
		number("ports", c.Ports),
		said("panel", c.Panel),
		l.length("rods", j.Tools.Rods),
		l.length("extension", j.Tools.Extension),
		l.length("arm", j.Tools.ArmReach),
		said("bits", strings.Join(bits, ", ")),
		yes("patching allowed", j.Allow.Patching),
		said("currency", j.Rates.Currency),
		{"rate of an hour", j.Rates.Hour, thousandths(j.Rates.Hour)},
		l.length("loop at the closet", j.Slack.Closet),
		l.length("loop at the drop", j.Slack.Outlet),
		l.length("trim", j.Slack.Trim),
		{"allowance for waste", j.Slack.Percent, fmt.Sprintf("%d %%", j.Slack.Percent)},
		l.length("cuts rounded to", j.Slack.Round),
		{"weights", *w, fmt.Sprintf("openings %s, crawling %s, cable %s", thousandths(w.Openings), thousandths(w.Crawling), thousandths(w.Cable))},
		{"people", j.Crew, fmt.Sprintf("%d from %d:%02d", j.Crew.People, j.Crew.Start/60, j.Crew.Start%60)},
		{"watts of the switch", j.Switch.Watts, thousandths(j.Switch.Watts)},
		{"allowance of the estimate", j.Allowance, fmt.Sprintf("%d %%", j.Allowance)},
	}
}

// closetText is where the cables end: along its wall, with which it may move.
func closetText(j *plan.Job) string {
	c, u := &j.Closet, j.House.Units
	if c.Ceiling {
		return "ceiling, " + (&list{h: j.House}).point(c.Point)
	}
	return fmt.Sprintf("%s along wall %s on the %s, %s up", u.Format(c.Spot.At), j.House.Walls[c.Spot.Wall].ID, c.Spot.Side, u.Format(c.Spot.Height))
}

// thousandths writes a number that is kept as thousandths.
func thousandths(n int64) string {
	text := fmt.Sprintf("%d.%03d", n/1000, n%1000)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// byID compares properties that are matched by their names. Each stands for a
// thing of its own, so that one that is missing is told, too.
func byID(a, b []property) []Value {
	var names [2][]string
	for side, list := range [2][]property{a, b} {
		for i := range list {
			names[side] = append(names[side], list[i].what)
		}
	}
	var out []Value
	for _, in := range pairs(names[0], names[1], compareTags) {
		v := Value{}
		var raw [2]any
		for side, i := range in {
			if i >= 0 {
				p := [2][]property{a, b}[side][i]
				v.What, v.Is[side], raw[side] = p.what, p.text, p.raw
			}
		}
		if raw[0] != raw[1] {
			out = append(out, v)
		}
	}
	return out
}

// fixedParts lists what was decided before the rest is planned.
func fixedParts(j *plan.Job) []property {
	var out []property
	u := j.House.Units
	for i := range j.Fixed {
		f := &j.Fixed[i]
		text := f.Do.String()
		switch {
		case f.Wall >= 0:
			text += fmt.Sprintf(", %s along wall %s", u.Format(f.At), j.House.Walls[f.Wall].ID)
			if f.Bottom {
				text += ", in its bottom plate"
			}
			if f.Diameter > 0 {
				text += fmt.Sprintf(", %s, cables in it: %d", u.Format(f.Diameter), f.Cables)
			}
		case len(f.Path) > 0:
			text += fmt.Sprintf(", a trunk of %d corners", len(f.Path))
		default:
			text += fmt.Sprintf(", an area of %s by %s", u.Format(f.Area.Width()), u.Format(f.Area.Height()))
		}
		raw := fmt.Sprint(text, f.At, f.Path, f.Area, f.Width, f.Diameter)
		out = append(out, property{"fixed " + f.ID, raw, text})
	}
	return out
}

// spools lists the cable that is there to begin with.
func spools(j *plan.Job) []property {
	var out []property
	for i := range j.Spools {
		s := &j.Spools[i]
		out = append(out, property{"spool " + s.ID, [2]any{s.Cable.ID, s.Left}, fmt.Sprintf("%s of %s", j.House.Units.Format(s.Left), s.Cable.ID)})
	}
	return out
}

// numbers lists what every step costs in a job and every limit that holds for
// it, changed by the user or not.
func numbers(j *plan.Job) []property {
	var out []property
	for _, t := range price.Terms {
		if own, ok := j.Prices[string(t.ID)]; ok {
			t.Value = own.Value
		}
		out = append(out, property{"price " + string(t.ID), t.Value, thousandths(t.Value) + " " + t.Unit.String()})
	}
	book := j.Book()
	for i := range rule.Limits {
		l := book.Limit(rule.Limits[i].ID)
		out = append(out, property{"limit " + string(l.ID), l.Value, l.Print(j.House.Units)})
	}
	return out
}

// partPrices lists the user's own prices of parts.
func partPrices(j *plan.Job) []property {
	var out []property
	for id, v := range j.PartPrices {
		out = append(out, property{"price of " + id, v.Value, thousandths(v.Value)})
	}
	return out
}
