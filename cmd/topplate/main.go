// Command topplate plans network cable in a finished house: from a sketch in
// TOML to routes, holes, cut lengths and drawings.
//
// It only reads arguments and files and calls the other packages in order:
// plan, route, render.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// Exit codes.
const (
	exitOK    = 0
	exitStops = 1 // the plan has findings that stop the work
	exitInput = 2 // wrong usage, or input that can't be read or is not valid
)

func main() {
	collectSeldom()
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// collectSeldom lets the heap grow further between two collections of garbage than
// Go does by itself, as a search makes much that is soon forgotten, but no further
// than a small machine has room for. What the user's environment says goes first.
func collectSeldom() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(heapGrowth)
	}
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(heapLimit)
	}
}

const (
	heapGrowth = 400       // per cent
	heapLimit  = 400 << 20 // bytes, beyond which it is collected as often as need be
)

// errStops says that the plan was made but has findings that stop the work;
// errShown that the reason for failing has been printed already.
var (
	errStops = errors.New("findings that stop the work")
	errShown = errors.New("shown")
)

// run is the whole program; it returns the exit code.
func run(args []string, stdout, stderr io.Writer) int {
	root := rootCommand()
	root.SetArgs(args)
	root.SetOut(stdout)
	root.SetErr(stderr)
	err := root.Execute()
	switch {
	case err == nil:
		return exitOK
	case errors.Is(err, errStops):
		return exitStops
	case errors.Is(err, errShown):
		return exitInput
	}
	fmt.Fprintf(stderr, "topplate: %v\n", err)
	return exitInput
}

func rootCommand() *cobra.Command {
	root := &cobra.Command{
		Use:   "topplate",
		Short: "Plan network cable in a finished house",
		Long: `topplate plans network cable in a finished house. From a tape-measure sketch
in TOML it finds the cheapest allowed routes, every hole, the cut lengths, and
draws plans.

Start with:  topplate new my-house && topplate draw my-house/job.toml -o plans

Exit status: 0 fine, 1 the plan has findings that stop the work, 2 wrong usage
or input that can't be read or is not valid.`,
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          cobra.NoArgs,
		RunE:          func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.AddCommand(newCommand(), tidyCommand(), checkCommand(), routeCommand(), drawCommand(), recordCommand(), choicesCommand(), compareCommand(), graphCommand(), rulesCommand(), originsCommand(), schemaCommand(), noticesCommand())
	root.SetFlagErrorFunc(flagError)
	return root
}
