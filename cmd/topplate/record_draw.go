package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"topplate/plan/record"
	"topplate/plan/source"
	"topplate/render"
)

func (r *recorder) draw() *cobra.Command {
	var out string
	c := &cobra.Command{
		Use:   "draw -o DIR",
		Short: "Draw the job as built: what was run, where holes are, how it tested",
		Long: `Draw the job as built, from its record: cables that were run and those that were
not, holes as drilled beside their planned place, tests, spools, and what has no
entry yet. The folder is for these drawings alone.`,
		Args: cobra.NoArgs,
	}
	r.wait.flag(c)
	c.Flags().StringVarP(&out, "out", "o", "", "folder to write to; made if it is not there")
	c.RunE = func(cmd *cobra.Command, _ []string) error {
		if out == "" {
			return fmt.Errorf("draw needs a folder to write to: topplate record %s draw -o as-built", r.job)
		}
		return r.drawBuilt(cmd, out)
	}
	return c
}

// drawBuilt writes the drawings as built into a folder.
func (r *recorder) drawBuilt(cmd *cobra.Command, out string) error {
	ours := func(name string) bool { return strings.HasPrefix(name, render.AsBuiltID) }
	if err := apartFromJob(out, ours); err != nil {
		return err
	}
	res, err := solve(r.job, &r.wait, cmd.ErrOrStderr())
	if err != nil {
		return err
	}
	src, err := r.read()
	if err != nil {
		return err
	}
	all, list := record.Read(r.path, src)
	a := &render.AsBuilt{Result: res.Result, Plan: recordPlan(res), Entries: all, Record: render.EntryOf(filepath.Base(r.path), src)}
	r.tellChanges(list, a.Plan, all)
	if err := list.Print(cmd.ErrOrStderr(), lineOf); err != nil {
		return err
	}
	if !a.Done() {
		return r.nothing("has no entry that can be read")
	}
	files, err := render.AsBuiltFolder(a)
	if err != nil {
		return err
	}
	if err := writeFolder(out, files); err != nil {
		return err
	}
	fmt.Fprintf(cmd.ErrOrStderr(), "wrote %d files to %s, from the record up to entry %d\n", len(files), out, all[len(all)-1].Number)
	return nil
}

// read reads the record, which must be there.
func (r *recorder) read() ([]byte, error) {
	if _, err := os.Stat(r.path); errors.Is(err, fs.ErrNotExist) {
		return nil, r.nothing("is not there")
	}
	return source.ReadFile(r.path)
}

// nothing says that there is nothing to draw from.
func (r *recorder) nothing(why string) error {
	return fmt.Errorf("nothing is recorded of this job yet: %s %s; record first what was done: topplate record %s cable D1.1 --state run", r.path, why, r.job)
}
