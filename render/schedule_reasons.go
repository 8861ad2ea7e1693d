package render

import (
	"fmt"
	"slices"
	"strings"

	"topplate/plan"
	"topplate/render/report"
)

// shortenReasons says a reason once in a list of parts that many drops have:
// "3 of 4 to a gang: A1 to A8".
func (l *listing) shortenReasons(job *plan.Job) {
	i := slices.IndexFunc(l.columns, func(c column) bool { return c.head == "why so many" })
	for k := range l.portions {
		for _, row := range l.portions[k].rows {
			row[i] = shortReasons(job, row[i])
		}
	}
}

// shortReasons puts the drops of one reason together, where at least leastAlike
// have it. Other reasons stay in their place.
func shortReasons(job *plan.Job, text string) string {
	parts := strings.Split(text, "; ")
	drops := map[string][]string{} // by reason
	tags := map[string]bool{}
	for i := range job.Drops {
		tags[job.Drops[i].Tag] = true
	}
	split := func(part string) (tag, reason string, ok bool) {
		tag, reason, ok = strings.Cut(part, ": ")
		if !ok {
			tag = part
		}
		return tag, reason, tags[tag]
	}
	for _, part := range parts {
		if tag, reason, ok := split(part); ok {
			drops[reason] = append(drops[reason], tag)
		}
	}
	var out []string
	said := map[string]bool{}
	for _, part := range parts {
		_, reason, ok := split(part)
		switch {
		case !ok || len(drops[reason]) < leastAlike:
			out = append(out, part)
		case !said[reason]:
			said[reason] = true
			names := strings.Join(report.Spans(job, drops[reason]), ", ")
			if reason != "" {
				names = fmt.Sprintf("%s: %s", reason, names)
			}
			out = append(out, names)
		}
	}
	return strings.Join(out, "; ")
}
