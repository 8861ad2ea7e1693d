// Package highs solves routing problems by an integer programme, for tests to hold
// plans against.
//
// What comes in is problems as the statement has them, with nothing of how package
// tree searches. What goes out is the optimum of each, found by HiGHS through scipy.
// No program imports the package, and it knows nothing of walls or attics.
package highs

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"testing"
)

// A Problem is a network with its root and terminals; Bend is by node.
type Problem struct {
	Root      int32      `json:"root"`
	Bend      []int64    `json:"bend"`
	Arcs      []Arc      `json:"arcs"`
	Terminals []Terminal `json:"terminals"`
}

// An Arc is an arc of a network. If prices have steps, it tells what a hole costs
// there, which its fixed price holds once, how many cables it takes, and how many
// holes go there.
type Arc struct {
	From     int32  `json:"from"`
	To       int32  `json:"to"`
	Heading  string `json:"heading"`
	Fixed    int64  `json:"fixed"`
	PerCable int64  `json:"per_cable"`
	Hole     int64  `json:"hole,omitempty"`
	Takes    int    `json:"takes,omitempty"`
	Holes    int    `json:"holes,omitempty"`
}

// A Terminal is a node where so many cables end.
type Terminal struct {
	Node   int32 `json:"node"`
	Cables int64 `json:"cables"`
}

// python is Debian's, which has scipy; another one on the path may not.
const python = "/usr/bin/python3"

//go:embed optimum.py
var programme string

// Optima are the least costs of problems. Without scipy the test is skipped, or fails
// where CI says that it must be there.
func Optima(t testing.TB, problems ...Problem) []int64 {
	t.Helper()
	if err := exec.Command(python, "-c", "from scipy.optimize import milp").Run(); err != nil {
		if os.Getenv("TOPPLATE_REQUIRE") != "" {
			t.Fatalf("%s can't import scipy (Debian: python3-scipy): %v", python, err)
		}
		t.Skipf("not held against HiGHS: %s can't import scipy (Debian: python3-scipy): %v", python, err)
	}
	input, err := json.Marshal(problems)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, "-c", programme)
	cmd.Stdin, cmd.Stderr = bytes.NewReader(input), os.Stderr
	output, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	out, lines := make([]int64, len(problems)), bytes.Fields(output)
	if len(lines) != len(problems) {
		t.Fatalf("%d optima for %d problems", len(lines), len(problems))
	}
	for i, line := range lines {
		if _, err := fmt.Sscan(string(line), &out[i]); err != nil {
			t.Fatal(err)
		}
	}
	return out
}
