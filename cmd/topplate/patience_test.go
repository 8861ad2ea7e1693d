package main

import (
	"bytes"
	"os"
	"runtime"
	"testing"
	"time"
)

// wait asks until the planner would stop, and fails if it does not.
func wait(t *testing.T, stop func() bool) {
	t.Helper()
	for range 500 {
		if stop() {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Fatal("the search is not ended")
}

// The first interrupt ends the search and says so; the program goes on.
func TestInterruptEndsTheSearch(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("a process cannot interrupt itself here")
	}
	var stderr bytes.Buffer
	var p patience
	planner, done := p.planner(&stderr)
	if planner.Stop() {
		t.Error("ended before it began")
	}
	self, err := os.FindProcess(os.Getpid())
	if err != nil {
		t.Fatal(err)
	}
	if err := self.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	wait(t, planner.Stop)
	done()
	if want := "interrupted: taking the best plan so far\n"; stderr.String() != want {
		t.Errorf("told %q, want %q", stderr.String(), want)
	}
}

func TestTimeEndsTheSearch(t *testing.T) {
	p := patience{within: time.Millisecond}
	planner, done := p.planner(&bytes.Buffer{})
	wait(t, planner.Stop)
	done()
	forever, done := new(patience).planner(&bytes.Buffer{})
	if forever.Stop() {
		t.Error("a search without a limit is ended")
	}
	done()
}
