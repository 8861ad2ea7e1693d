package survey

import (
	"fmt"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// Along says between what a length was taped.
type Along uint8

// What a length is: a difference along an axis, which has a sign, or the
// straight distance between two points.
const (
	AlongX Along = iota
	AlongY
	Straight
)

// A Station is a point of a network. Each of its coordinates is an unknown,
// by its index in the network, plus a part that is known. Stations on one
// straight wall share the unknown across it, so that no adjustment can turn the
// wall.
type Station struct {
	X, Y  int
	Known geom.Point
}

// An Observation is one taped length from a station to another, with its
// standard deviation, which is above zero. Along an axis the length is the
// coordinate of To less that of From.
type Observation struct {
	From, To      Station
	Along         Along
	Length, Sigma measure.Length
}

// A Network is what was taped of points whose places are sought. Near has
// about where each unknown is; the unknowns that are Held keep that value.
type Network struct {
	Near         []measure.Length
	Held         []bool
	Observations []Observation
}

// A Critical is how large a standardised residual may be before a measurement
// is doubted.
type Critical struct {
	Value  float64
	Source rule.Source
}

// Snooping is the critical value of the w-test of single measurements (data
// snooping): a good measurement exceeds it once in a thousand times, by the
// normal distribution on both sides.
var Snooping = Critical{3.29, rule.Source{
	Document: "W. Baarda, A testing procedure for use in geodetic networks, Publications on Geodesy 2(5)",
	Edition:  "1968", Printed: "level of significance 0.001", Status: rule.Derived,
}}

// An Outcome is what an adjustment says of one observation.
type Outcome struct {
	// Residual is the adjusted length less the taped one.
	Residual measure.Length
	// Redundancy is the part of an error in this length that shows in its
	// own residual, from 0, where nothing checks it, to 1. All of them add up
	// to the redundancy of the network.
	Redundancy float64
	// Standardised is the residual over its standard deviation. It is 0
	// where nothing checks the length.
	Standardised float64
	// Expected is what the other observations make the length, without this
	// one: to first order for a straight distance. It is the taped length
	// where nothing checks it.
	Expected measure.Length
}

// An Adjustment is the values that fit a network best.
type Adjustment struct {
	Values     []measure.Length // of the unknowns
	Outcomes   []Outcome        // of the observations
	Redundancy int              // observations less unknowns that are not held
	// Squares is the sum of the squares of all residuals, each over the
	// standard deviation of its observation. It is about Redundancy where
	// nothing is wrong.
	Squares float64
}

// A FitError says why a network has no best fit.
type FitError struct {
	// Unknown is one that no observation places, or -1 if none is to blame.
	Unknown int
	// Observation is a straight distance between two points that fall
	// together, or -1.
	Observation int
}

func (e *FitError) Error() string {
	switch {
	case e.Unknown >= 0:
		return fmt.Sprintf("survey: nothing places unknown %d", e.Unknown)
	case e.Observation >= 0:
		return fmt.Sprintf("survey: observation %d is between two points in one place", e.Observation)
	}
	return "survey: the lengths do not come together"
}

// alike is how near two standardised residuals are that nothing can tell
// apart, such as those of two legs of one loop: rounding, not statistics.
const alike = 1e-6

// Doubtful returns the observations whose standardised residual is the
// largest of all, in the order of the network, if it exceeds the critical
// value. There are several where the network cannot tell them apart. After one
// wrong measurement others may exceed the value too; only the largest counts.
func (a *Adjustment) Doubtful(c Critical) []int {
	worst := 0.0
	for _, o := range a.Outcomes {
		worst = max(worst, o.Standardised, -o.Standardised)
	}
	if worst <= c.Value {
		return nil
	}
	var out []int
	for i, o := range a.Outcomes {
		if max(o.Standardised, -o.Standardised) >= worst*(1-alike) {
			out = append(out, i)
		}
	}
	return out
}
