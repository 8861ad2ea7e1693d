package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"topplate/plan"
	"topplate/plan/diag"
	"topplate/plan/source"
	"topplate/render"
	"topplate/render/report"
	"topplate/route"
	"topplate/route/work"
)

func checkCommand() *cobra.Command {
	var wait patience
	c := &cobra.Command{
		Use:   "check JOB.toml",
		Short: "Read a job and its house, route it, and print the findings and cautions",
		Args:  oneFile("a job file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			res, err := solve(args[0], &wait, cmd.ErrOrStderr())
			if err != nil {
				return err
			}
			return finish(res.Result, report.Check(cmd.OutOrStdout(), res))
		},
	}
	wait.flag(c)
	return c
}

func routeCommand() *cobra.Command {
	var wait patience
	var asJSON bool
	var why string
	c := &cobra.Command{
		Use:   "route JOB.toml",
		Short: "Print the routes, holes and cut lengths",
		Args:  oneFile("a job file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			res, err := solve(args[0], &wait, cmd.ErrOrStderr())
			if err != nil {
				return err
			}
			switch {
			case why != "":
				e, err := route.Explain(res.Result, why)
				if err != nil {
					return err
				}
				return finish(res.Result, report.Why(cmd.OutOrStdout(), res.Result, e))
			case asJSON:
				return finish(res.Result, report.JSON(cmd.OutOrStdout(), res))
			}
			return finish(res.Result, report.Schedule(cmd.OutOrStdout(), res))
		},
	}
	wait.flag(c)
	c.Flags().BoolVar(&asJSON, "json", false, "print all results as JSON")
	c.Flags().StringVar(&why, "why", "", "explain the route of the drop with this `tag`: its price, and what other ways would cost")
	return c
}

func drawCommand() *cobra.Command {
	var wait patience
	var out string
	var compare, sketch bool
	c := &cobra.Command{
		Use:     "draw JOB.toml -o DIR [--choices] [--sketch]",
		Short:   "Draw the sheets into a folder",
		Example: "  topplate draw samples/corner-house/job.toml -o out",
		Args:    oneFile("a job file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if out == "" {
				return fmt.Errorf("draw needs a folder to write to: -o DIR")
			}
			res, err := solve(args[0], &wait, cmd.ErrOrStderr())
			if err != nil {
				return err
			}
			var plans []route.Choice
			if compare {
				planner, done := wait.planner(cmd.ErrOrStderr())
				plans, err = planner.Choices(res.Job)
				if done(); err != nil {
					return err
				}
			}
			files, err := render.Folder(res, render.Also{Plans: plans, Sketch: sketch})
			if err != nil {
				return err
			}
			if err := writeFolder(out, files); err != nil {
				return err
			}
			for _, f := range files {
				fmt.Fprintf(cmd.ErrOrStderr(), "wrote %s\n", f.Name)
			}
			return finish(res.Result, report.Findings(cmd.ErrOrStderr(), res))
		},
	}
	wait.flag(c)
	c.Flags().StringVarP(&out, "out", "o", "", "folder to write to; made if it is not there")
	c.Flags().BoolVar(&sketch, "sketch", false, "add sheets that show just what was sketched, with every number, to be held against the house")
	c.Flags().BoolVar(&compare, "choices", false, "add a sheet with the plans to choose from, if there is more than one")
	return c
}

func choicesCommand() *cobra.Command {
	var wait patience
	var asJSON bool
	c := &cobra.Command{
		Use:   "choices JOB.toml",
		Short: "Print up to three plans side by side: cheapest, fewest openings, least crawling",
		Args:  oneFile("a job file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			job, err := load(args[0], cmd.ErrOrStderr())
			if err != nil {
				return err
			}
			planner, done := wait.planner(cmd.ErrOrStderr())
			plans, err := planner.Choices(job)
			if done(); err != nil {
				return err
			}
			if asJSON {
				return finish(plans[0].Result, report.ChoicesJSON(cmd.OutOrStdout(), plans))
			}
			return finish(plans[0].Result, report.Choices(cmd.OutOrStdout(), plans))
		},
	}
	wait.flag(c)
	c.Flags().BoolVar(&asJSON, "json", false, "print the plans as JSON")
	return c
}

func graphCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "graph JOB.toml",
		Short: "Write the routing graph as JSON, for a solver of your own",
		Args:  oneFile("a job file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			job, err := load(args[0], cmd.ErrOrStderr())
			if err != nil {
				return err
			}
			g, err := route.Build(job)
			if err != nil {
				return err
			}
			return g.WriteJSON(cmd.OutOrStdout())
		},
	}
}

// oneFile accepts exactly one argument and says what is missing.
func oneFile(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) == 0:
			return fmt.Errorf("%s needs %s: %s", cmd.Name(), what, cmd.UseLine())
		case len(args) > 1:
			return fmt.Errorf("%s takes one argument, got %d: %s", cmd.Name(), len(args), cmd.UseLine())
		}
		return nil
	}
}

// load reads a job; what is wrong with the files is printed to stderr.
func load(path string, stderr io.Writer) (*plan.Job, error) {
	job, problems := plan.LoadJob(path, source.ReadFile)
	if err := problems.Print(stderr, lineOf); err != nil {
		return nil, err
	}
	if problems.HasErrors() {
		return nil, errShown
	}
	return job, nil
}

// lineOf is a line of a file, to be shown with what is wrong in it.
func lineOf(file string, line int) (string, bool) {
	src, err := source.ReadFile(file)
	if err != nil {
		return "", false
	}
	return source.Line(src, line)
}

// solve reads a job, plans it and works out all that follows.
func solve(path string, wait *patience, stderr io.Writer) (*work.Work, error) {
	job, err := load(path, stderr)
	if err != nil {
		return nil, err
	}
	planner, done := wait.planner(stderr)
	res, err := planner.Preferred(job)
	if done(); err != nil {
		return nil, err
	}
	return work.Of(res)
}

// finish turns a result into the exit code, unless printing it failed.
func finish(res *route.Result, err error) error {
	if err == nil && res.Stops() {
		return errStops
	}
	return err
}

// flagError adds the nearest flag to the message about an unknown one.
func flagError(cmd *cobra.Command, err error) error {
	var known []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { known = append(known, f.Name) })
	_, name, ok := strings.Cut(err.Error(), "unknown flag: --")
	if !ok {
		return fmt.Errorf("%w; see topplate %s --help", err, cmd.Name())
	}
	if near, ok := diag.Nearest(name, known); ok {
		return fmt.Errorf("unknown flag --%s, did you mean --%s?", name, near)
	}
	return fmt.Errorf("unknown flag --%s; see topplate %s --help", name, cmd.Name())
}
