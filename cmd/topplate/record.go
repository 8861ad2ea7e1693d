package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"topplate/plan/diag"
	"topplate/plan/record"
	"topplate/plan/source"
)

const recordLong = `Record what was done on site, and hold it against the plan. The record is a
log beside the job: job.record beside job.toml. It is only ever added to; a
correction names the entry that it replaces.

  topplate record JOB.toml cable D1.2 --state run --length 61ft --wiremap pass
  topplate record JOB.toml cable D3 --state deferred --note "no time"
  topplate record JOB.toml hole H4 --at "11ft 2in" --size 3/4in
  topplate record JOB.toml spool S1 --left 230ft
  topplate record JOB.toml note "the panel's door sticks"
  topplate record JOB.toml import tester.csv
  topplate record JOB.toml show
  topplate record JOB.toml draw -o as-built

Each has its own help: topplate record JOB.toml cable --help`

// recordCommand hands all after the job to commands of its own, since the job
// comes before them.
func recordCommand() *cobra.Command {
	return &cobra.Command{
		Use:                "record JOB.toml cable|hole|spool|note|import|show|draw ...",
		Short:              "Record what was done, and hold it against the plan",
		Long:               recordLong,
		DisableFlagParsing: true,
		RunE: func(cmd *cobra.Command, args []string) error {
			switch {
			case len(args) == 0:
				return errors.New("record needs a job file: topplate record JOB.toml cable D1.2 --state run")
			case args[0] == "-h" || args[0] == "--help":
				return cmd.Help()
			case strings.HasPrefix(args[0], "-") || slices.Contains(recordWords, args[0]):
				return fmt.Errorf("found %q where the job file is wanted: topplate record JOB.toml %s", args[0], strings.Join(recordWords, "|"))
			}
			inner := (&recorder{job: args[0], path: record.Path(args[0])}).command()
			inner.SetArgs(args[1:])
			inner.SetOut(cmd.OutOrStdout())
			inner.SetErr(cmd.ErrOrStderr())
			return inner.Execute()
		},
	}
}

var recordWords = []string{"cable", "hole", "spool", "note", "import", "show", "draw"}

// A recorder adds to the record of one job.
type recorder struct {
	job, path string
	wait      patience

	by, when, note string
	replaces       int
	anyway         bool
}

// command has a command for each kind of entry.
func (r *recorder) command() *cobra.Command {
	c := &cobra.Command{
		Use:           "record",
		Short:         "Record what was done in " + r.job,
		Annotations:   map[string]string{cobra.CommandDisplayNameAnnotation: "topplate record " + r.job},
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			return fmt.Errorf("record needs to know what: topplate record %s %s", r.job, strings.Join(recordWords, "|"))
		},
	}
	c.CompletionOptions.DisableDefaultCmd = true
	c.AddCommand(r.cable(), r.hole(), r.spool(), r.remark(), r.table(), r.show(), r.draw())
	c.SetFlagErrorFunc(flagError)
	return c
}

// flags adds those that every entry has.
func (r *recorder) flags(c *cobra.Command) *cobra.Command {
	r.wait.flag(c)
	c.Flags().StringVar(&r.by, "by", "", "who did it; the job's own by if left out")
	c.Flags().StringVar(&r.when, "when", "", "when, as 2026-03-31 or 2026-03-31T14:40:00Z; now if left out")
	c.Flags().StringVar(&r.note, "note", "", "a note on one line")
	c.Flags().IntVar(&r.replaces, "replaces", 0, "the `entry` that this one corrects; what is not given is kept from it")
	c.Flags().BoolVar(&r.anyway, "anyway", false, "record what can't be by the plan, with a note that says why")
	return c
}

func (r *recorder) cable() *cobra.Command {
	c := r.flags(&cobra.Command{
		Use:   "cable ID...",
		Short: "Record what became of cables: run, deferred, not run; length, tests",
		Args:  cobra.MinimumNArgs(1),
	})
	for _, f := range [][2]string{
		{"state", "run, deferred or \"not run\""},
		{"length", "measured from end to end"},
		{"marks", "printed on the jacket at both ends, as 412ft,351ft; the length follows"},
		{"plug", "what is on the far end, by its name in the job"},
		{"port", "at the panel"},
		{"wiremap", "pass, fail or untested"},
		{"speed", "of the link, in Mb/s, or as 2.5Gb/s"},
		{"watts", "at the device"},
		{"volts", "at the device"},
		{"hours", "of work"},
	} {
		c.Flags().String(f[0], "", f[1])
	}
	c.Flags().String("jack", "", "as plug")
	c.RunE = func(cmd *cobra.Command, args []string) error {
		set := changed(cmd)
		if _, ok := set["state"]; !ok && r.replaces == 0 {
			return errors.New("cable needs its state: --state run, deferred or \"not run\"")
		}
		if jack, ok := set["jack"]; ok {
			set["plug"] = jack
		}
		return r.add(cmd, func(p *record.Plan, all []record.Entry, list *diag.List) (out []record.Proposal) {
			for _, id := range p.Expand(args) {
				e := record.Propose(p, all, record.CableKind, id, r.replaces)
				_, marks := set["marks"]
				if _, ok := set["length"]; marks && !ok {
					e.Cable.Length = 0
				}
				if !r.setAll(list, &e, set, func(key, text string) error { return e.Cable.Set(key, text, "") }) {
					continue
				}
				if e.Cable.Marked && e.Cable.Length == 0 {
					e.Cable.Length = e.Cable.ByMarks()
				}
				out = append(out, e)
			}
			return out
		})
	}
	return c
}

func (r *recorder) hole() *cobra.Command {
	var fresh bool
	c := r.flags(&cobra.Command{
		Use:   "hole ID",
		Short: "Record a hole as it was bored; what is left out is as planned",
		Args:  cobra.ExactArgs(1),
	})
	for _, f := range [][2]string{
		{"at", "where it is, from the start of its wall"},
		{"wall", "which wall"},
		{"size", "its diameter"},
		{"through", "what it goes through; top plate if the plan doesn't say"},
		{"cables", "through it, as D1.1,D1.2, or D1 for all of a drop"},
	} {
		c.Flags().String(f[0], "", f[1])
	}
	c.Flags().BoolVar(&fresh, "new", false, "the plan doesn't have it")
	c.RunE = func(cmd *cobra.Command, args []string) error {
		set := changed(cmd)
		if size, ok := set["size"]; ok {
			set["diameter"] = size
		}
		return r.add(cmd, func(p *record.Plan, all []record.Entry, list *diag.List) []record.Proposal {
			e := record.Propose(p, all, record.HoleKind, args[0], r.replaces)
			e.New = fresh
			if e.Hole.Through == "" {
				e.Hole.Through = record.TopPlate
			}
			if !r.setAll(list, &e, set, e.Hole.Set) {
				return nil
			}
			e.Hole.Cables = p.Expand(e.Hole.Cables)
			return []record.Proposal{e}
		})
	}
	return c
}

func (r *recorder) spool() *cobra.Command {
	c := r.flags(&cobra.Command{
		Use:   "spool ID",
		Short: "Record what is left on a spool",
		Args:  cobra.ExactArgs(1),
	})
	for _, f := range [][2]string{
		{"left", "what is left on it"},
		{"mark", "printed on the jacket at its free end"},
		{"counts", "up or down: the marks, as cable is drawn off"},
		{"cable", "the kind on a spool that was bought since"},
	} {
		c.Flags().String(f[0], "", f[1])
	}
	c.RunE = func(cmd *cobra.Command, args []string) error {
		set := changed(cmd)
		_, left := set["left"]
		_, mark := set["mark"]
		if !left && !mark {
			return errors.New("spool needs what is left on it: --left 230ft or --mark 412ft")
		}
		return r.add(cmd, func(p *record.Plan, all []record.Entry, list *diag.List) []record.Proposal {
			e := record.Propose(p, all, record.SpoolKind, args[0], r.replaces)
			if !r.setAll(list, &e, set, e.Spool.Set) {
				return nil
			}
			if !left && !e.TakeMark(p, all) {
				list.Errorf(e.Pos, "spool "+e.ID, "found a mark by which what is left can't be told, since the mark before is not known; want --left")
			}
			return []record.Proposal{e}
		})
	}
	return c
}

func (r *recorder) remark() *cobra.Command {
	c := r.flags(&cobra.Command{
		Use:   "note TEXT",
		Short: "Record a note",
		Args:  cobra.ExactArgs(1),
	})
	c.RunE = func(cmd *cobra.Command, args []string) error {
		r.note = args[0]
		return r.add(cmd, func(p *record.Plan, all []record.Entry, list *diag.List) []record.Proposal {
			e := record.Propose(p, all, record.NoteKind, "", r.replaces)
			r.setAll(list, &e, nil, nil)
			return []record.Proposal{e}
		})
	}
	return c
}

func (r *recorder) table() *cobra.Command {
	var update bool
	c := &cobra.Command{
		Use:   "import TABLE.csv",
		Short: "Record the cables of a tester's table; if any row is wrong, none",
		Args:  cobra.ExactArgs(1),
	}
	r.wait.flag(c)
	c.Flags().StringVar(&r.by, "by", "", "who tested; the job's own by if left out")
	c.Flags().StringVar(&r.when, "when", "", "when, as 2026-03-31 or 2026-03-31T14:40:00Z; now if left out")
	c.Flags().BoolVar(&update, "update", false, "rows of cables that are recorded correct their entries")
	c.RunE = func(cmd *cobra.Command, args []string) error {
		src, err := source.ReadFile(args[0])
		if err != nil {
			return err
		}
		return r.add(cmd, func(p *record.Plan, all []record.Entry, list *diag.List) []record.Proposal {
			out, faults := record.ReadTable(args[0], src, p, all, update)
			list.Append(faults)
			for i := range out {
				r.sign(&out[i])
			}
			return out
		})
	}
	return c
}

// changed are the flags that were given, with their texts.
func changed(cmd *cobra.Command) map[string]string {
	out := map[string]string{}
	cmd.Flags().Visit(func(f *pflag.Flag) { out[f.Name] = f.Value.String() })
	return out
}

// setAll puts the values of flags into a proposal, in the order of their names,
// and reports whether all could be read.
func (r *recorder) setAll(list *diag.List, e *record.Proposal, flags map[string]string, set func(key, text string) error) bool {
	r.sign(e)
	e.Anyway = r.anyway
	if r.note != "" {
		e.Note = r.note
	}
	var keys []string
	for key := range flags {
		if !slices.Contains([]string{"by", "when", "note", "replaces", "anyway", "new", "size", "jack", "within"}, key) {
			keys = append(keys, key)
		}
	}
	slices.Sort(keys)
	ok := true
	for _, key := range keys {
		if err := set(key, flags[key]); err != nil {
			list.Errorf(e.Pos, fmt.Sprintf("%s %s", e.Kind, e.ID), "%s: %v", key, err)
			ok = false
		}
	}
	return ok
}

// sign puts into a proposal who did it and where it was read from.
func (r *recorder) sign(e *record.Proposal) {
	e.By = r.by
	if e.Pos.File == "" {
		e.Pos.File = r.path
	}
}

// moment is the time of new entries.
func (r *recorder) moment() (time.Time, error) {
	if r.when == "" {
		return time.Now().UTC().Truncate(time.Second), nil
	}
	for _, form := range []string{time.DateOnly, time.RFC3339} {
		if t, err := time.Parse(form, r.when); err == nil && t.Year() >= 1900 && t.Year() <= 9999 {
			return t.UTC().Truncate(time.Second), nil
		}
	}
	return time.Time{}, fmt.Errorf("--when: found %.40q; want a day such as 2026-03-31, or a time such as 2026-03-31T14:40:00Z", r.when)
}

// add checks what propose makes of the record so far, and adds it.
func (r *recorder) add(cmd *cobra.Command, propose func(p *record.Plan, all []record.Entry, list *diag.List) []record.Proposal) error {
	when, err := r.moment()
	if err != nil {
		return err
	}
	res, err := solve(r.job, &r.wait, cmd.ErrOrStderr())
	if err != nil {
		return err
	}
	p := recordPlan(res)
	if r.by == "" {
		r.by = p.By
	}
	var said *diag.List
	added, err := record.Add(r.path, func(all []record.Entry) ([]record.Entry, error) {
		said = &diag.List{}
		r.tellChanges(said, p, all)
		proposals := propose(p, all, said)
		said.Append(record.Check(p, all, proposals))
		if said.HasErrors() || len(proposals) == 0 {
			return nil, nil
		}
		for i := range proposals {
			proposals[i].When = when
		}
		return record.Entries(p, all, when, proposals), nil
	})
	if said != nil {
		err = errors.Join(err, said.Print(cmd.ErrOrStderr(), lineOf))
	}
	if err != nil {
		return err
	}
	if said.HasErrors() {
		fmt.Fprintln(cmd.ErrOrStderr(), "nothing was recorded")
		return errShown
	}
	for i := range added {
		if e := &added[i]; e.Kind != record.StartKind {
			fmt.Fprintf(cmd.OutOrStdout(), "entry %d: %s\n", e.Number, strings.TrimSpace(e.Kind.String()+" "+e.ID))
		}
	}
	if len(added) == 0 {
		fmt.Fprintln(cmd.OutOrStdout(), "nothing new to record")
	}
	return nil
}

// tellChanges warns if the plan is not the one that the record was begun with.
func (r *recorder) tellChanges(list *diag.List, p *record.Plan, all []record.Entry) {
	if changes := p.Changes(all); len(changes) > 0 {
		list.Warnf(diag.Pos{File: r.path}, "", "this record was begun with another plan: %s; holes may have other names now, and lengths may differ", strings.Join(changes, ", "))
	}
}

func (r *recorder) show() *cobra.Command {
	c := &cobra.Command{
		Use:   "show",
		Short: "Print what is recorded against the plan, and what is missing",
		Args:  cobra.NoArgs,
	}
	r.wait.flag(c)
	c.RunE = func(cmd *cobra.Command, _ []string) error {
		res, err := solve(r.job, &r.wait, cmd.ErrOrStderr())
		if err != nil {
			return err
		}
		p := recordPlan(res)
		all, list, err := record.ReadFile(r.path)
		if err != nil {
			return err
		}
		r.tellChanges(list, p, all)
		if err := list.Print(cmd.ErrOrStderr(), lineOf); err != nil {
			return err
		}
		if err := record.Show(cmd.OutOrStdout(), p, all); err != nil {
			return err
		}
		return tellBefore(cmd.OutOrStdout(), res.Result, filepath.Dir(r.job))
	}
	return c
}
