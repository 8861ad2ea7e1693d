package report

import (
	"io"
	"strings"

	"topplate/plan"
)

// Origins writes every setting of a job in Markdown, with the value that holds
// and the file and line that it is from. Values that a later file replaced are
// named too.
func Origins(w io.Writer, job *plan.Job) error {
	p := &printer{w: w}
	p.printf("# Settings\n\nFiles are read in the order of include, the job's last; a later value wins.\n\n")
	p.printf("| setting | value | from | instead of |\n|---|---|---|---|\n")
	settings := job.Settings()
	for i := range settings {
		s := &settings[i]
		from := "built in"
		if s.From.File != "" {
			from = fileLine(s.From)
		}
		over := make([]string, len(s.Over))
		for k, pos := range s.Over {
			over[k] = fileLine(pos)
		}
		p.printf("| %s | %s | %s | %s |\n", s.Path, cell(s.Value), cell(from), cell(strings.Join(over, ", ")))
	}
	return p.err
}

// cell writes text of the user's so that it stays in its cell.
func cell(text string) string { return strings.ReplaceAll(text, "|", `\|`) }
