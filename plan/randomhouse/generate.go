package randomhouse

import (
	"fmt"
	"math/rand/v2"
	"path"

	"topplate/plan/geom"
	"topplate/plan/measure"
)

// A Sketch is a house and a job in it, as the two files they are written in.
type Sketch struct {
	House, Job string
	// Model is what they were written from, before Symmetry.
	Model    Model
	Symmetry geom.Symmetry
}

// Read returns the text of house.toml or job.toml, as plan.LoadJob asks for
// them.
func (s Sketch) Read(name string) ([]byte, error) {
	switch path.Base(name) {
	case "house.toml":
		return []byte(s.House), nil
	case "job.toml":
		return []byte(s.Job), nil
	}
	return nil, fmt.Errorf("%s: no such file in a random sketch", name)
}

// generator fills a model.
type generator struct {
	dice
	Model *Model
}

// Generate makes a sketch. The same seed and options give the same bytes, and
// options other than Area, Drops and Levels do not change the model.
func Generate(seed uint64, o Options) Sketch {
	s := Sketch{Symmetry: o.Symmetry}
	g := generator{dice{rand.New(rand.NewPCG(seed, 0x746f70)), measure.Inch}, &s.Model}
	if s.Model.Metric = g.one(3); s.Model.Metric {
		g.unit = 25 * measure.Millimetre
	}
	if o.Area == 0 {
		o.Area = 1
	}
	g.shell(o.Area)
	g.split()
	g.inside()
	g.openings()
	g.devices()
	g.attic()
	g.job(o.Drops)
	if o.Levels {
		g.stack(seed)
	}
	w := writer{m: &s.Model, sym: o.Symmetry}
	s.House, s.Job = w.house().text(o.Shuffle), w.job().text(o.Shuffle)
	return s
}
