package tree

import (
	"fmt"
	"os"
	"testing"
	"time"
)

func TestLarge(t *testing.T) {
	if os.Getenv("LARGE") == "" {
		t.Skip()
	}
	for _, c := range [][2]int{{90, 20}, {90, 40}, {100, 100}, {170, 300}, {300, 1000}} {
		n, root, terms := lattice(c[0], c[0], c[1], 1)
		start := time.Now()
		p, err := Solve(n, root, terms, Options{})
		fmt.Printf("%d: %d %d %.2f%% %v %v\n", c[1], p.Cost, p.LowerBound, 100*float64(p.Cost-p.LowerBound)/float64(p.LowerBound), err, time.Since(start))
	}
}
