package main

import (
	"fmt"
	"io"
	"os"
	"os/signal"
	"sync/atomic"
	"time"

	"github.com/spf13/cobra"

	"topplate/route"
)

// patience is how long a search for the cheapest plan may take.
type patience struct {
	within time.Duration // 0 for as long as it takes
}

func (p *patience) flag(c *cobra.Command) {
	c.Flags().DurationVar(&p.within, "within", 0, "take the best plan found in so much `time`, such as 10s")
}

// tellAfter is when somebody who waits is told what for.
const tellAfter = time.Second

// planner returns a planner that ends its search when the time is up or at the
// first interrupt; the second one ends the program. A search that lasts is told
// of on a terminal. done is called when the plan is there.
func (p *patience) planner(stderr io.Writer) (planner route.Planner, done func()) {
	var stop atomic.Bool
	interrupt := make(chan os.Signal, 1)
	signal.Notify(interrupt, os.Interrupt)
	finished := make(chan struct{})
	told := make(chan struct{})
	go func() {
		defer close(told)
		defer signal.Stop(interrupt)
		var end <-chan time.Time
		if p.within > 0 {
			end = time.After(p.within)
		}
		tell := time.After(tellAfter)
		for !stop.Load() {
			select {
			case <-finished:
				return
			case <-end:
				stop.Store(true)
			case <-interrupt:
				stop.Store(true)
				fmt.Fprintln(stderr, "interrupted: taking the best plan so far")
			case <-tell:
				if isTerminal(stderr) {
					fmt.Fprintln(stderr, "looking for the cheapest plan; Ctrl-C takes the best one so far")
				}
			}
		}
	}()
	return route.Planner{Stop: stop.Load}, func() {
		close(finished)
		<-told
	}
}

func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
