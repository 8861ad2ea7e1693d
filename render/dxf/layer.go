package dxf

import (
	"fmt"
	"strings"
)

// maxName is the greatest length of a name in release 12. Names have capital
// letters, digits, "$", "-" and "_".
const maxName = 31

// noClass is the layer of what is in no group with a class.
const noClass = "SHEET"

// layerZero is the layer that every drawing has, and points is where readers
// put what is never plotted.
const (
	layerZero = "0"
	points    = "DEFPOINTS"
)

// layers gives each class of groups a layer of its own.
type layers struct {
	byClass map[string]string
	taken   map[string]bool
	order   []string // layers with something on them, in the order of drawing
	drawn   map[string]bool
}

func newLayers() *layers {
	return &layers{byClass: map[string]string{}, taken: map[string]bool{layerZero: true, points: true, noClass: true}, drawn: map[string]bool{}}
}

// name returns the layer of a class that is not empty. Classes that look alike
// once they are cleaned are told apart by a number.
func (l *layers) name(class string) string {
	if name, ok := l.byClass[class]; ok {
		return name
	}
	plain := cleanName(class)
	name := plain
	for n := 2; l.taken[name]; n++ {
		end := fmt.Sprintf("_%d", n)
		name = plain[:min(len(plain), maxName-len(end))] + end
	}
	l.byClass[class], l.taken[name] = name, true
	return name
}

// use notes that something is on a layer.
func (l *layers) use(name string) {
	if !l.drawn[name] {
		l.drawn[name] = true
		l.order = append(l.order, name)
	}
}

// cleanName turns a string that is not empty into a name: other signs become
// "_".
func cleanName(s string) string {
	s = strings.ToUpper(s)
	s = s[:min(len(s), maxName)]
	return strings.Map(func(r rune) rune {
		if 'A' <= r && r <= 'Z' || '0' <= r && r <= '9' || r == '$' || r == '-' || r == '_' {
			return r
		}
		return '_'
	}, s)
}
