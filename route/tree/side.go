package tree

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// sideBySide calls f for every number below n, on as many processors as there are.
// What f does for one number may not rest on what it does for another, only on its
// worker, of whom each does one thing at a time.
func sideBySide(n int, f func(worker, i int)) {
	workers := sideWorkers(n)
	if workers < 2 {
		for i := range n {
			f(0, i)
		}
		return
	}
	var next atomic.Int64
	var all sync.WaitGroup
	for worker := range workers {
		all.Go(func() {
			for i := next.Add(1) - 1; i < int64(n); i = next.Add(1) - 1 {
				f(worker, int(i))
			}
		})
	}
	all.Wait()
}

// sideWorkers is how many workers do n things.
func sideWorkers(n int) int { return min(n, runtime.GOMAXPROCS(0)) }
