package supply

import (
	"errors"
	"fmt"
	"math"

	"topplate/plan/measure"
)

// A Port is a device at the end of a cable.
type Port struct {
	Class int
	// Watts is what the device takes at its end; zero is all that its class
	// allows.
	Watts float64
	// Volts is at the switch; zero is the least that the class allows, which is
	// what to plan with where the switch does not tell.
	Volts float64
	// Legs are the parts of the cable, cords included, in any order.
	Legs []Leg
}

// A Problem is something that is wrong with a port.
type Problem uint8

// Problems, worst first.
const (
	// NoCurrent: no current gives the device its watts; the voltage breaks
	// down.
	NoCurrent Problem = iota
	// LowVolts: the device gets less than the least it must work with.
	LowVolts
	// OverClass: the device takes more than its class allows.
	OverClass
	// OverSwitch: the switch gives more than it must for the class, and may
	// turn the port off.
	OverSwitch
	// OverLoop: the loop resistance is more than the class is made for.
	OverLoop
)

// String says in a sentence what the problem is.
func (p Problem) String() string {
	return [...]string{
		NoCurrent:  "the cable can't carry the power: the voltage breaks down",
		LowVolts:   "the voltage at the device is below the least it must work with",
		OverClass:  "the device takes more than its class allows",
		OverSwitch: "the switch gives more than it must for the class",
		OverLoop:   "the loop resistance is more than the class is made for",
	}[p]
}

// A Supply is how a port is supplied. Numbers are rounded to the millionth.
type Supply struct {
	Class Class
	// Watts and Volts are those of the device and the switch, given or taken
	// from the class.
	Watts, SwitchVolts float64
	Length             measure.Length
	// PairsetOhms is the loop resistance of a pairset at the legs'
	// temperatures, and Ohms that of all pairsets in parallel.
	PairsetOhms, Ohms float64
	// Amps is the whole current, DeviceVolts the voltage at the device, Lost
	// the watts that heat the cable, and Drawn the watts that the switch gives.
	// All are zero with NoCurrent.
	Amps, DeviceVolts, Lost, Drawn float64
	// SpareVolts is DeviceVolts over what the device needs at the least, and
	// SpareWatts what the switch must give over Drawn; below zero they are
	// missing.
	SpareVolts, SpareWatts float64
	// Longest is the length of cable with the same shares of its legs that has
	// no problem, rounded down to the millimetre: at most MaxLength, and zero
	// where even the shortest has one or the cable has no length.
	Longest  measure.Length
	Problems []Problem
}

// OK reports whether nothing is wrong.
func (s *Supply) OK() bool { return len(s.Problems) == 0 }

// Solve works out how a port is supplied. The error names everything that is
// wrong with the port.
func Solve(p Port) (*Supply, error) {
	s := &Supply{Watts: p.Watts, SwitchVolts: p.Volts}
	if err := s.check(p); err != nil {
		return nil, err
	}
	ohms := 0.0
	for _, l := range p.Legs {
		s.Length += l.Length
		ohms += l.ohms()
	}
	s.PairsetOhms = millionths(ohms)
	s.Ohms = millionths(ohms / float64(s.Class.Pairsets))
	amps, ok := current(s.SwitchVolts, s.Ohms, s.Watts)
	if !ok {
		s.Problems = append(s.Problems, NoCurrent)
	} else {
		s.Amps = millionths(amps)
		s.DeviceVolts = millionths(s.SwitchVolts - float64(amps*s.Ohms))
		s.Lost = millionths(amps * amps * s.Ohms)
		s.Drawn = millionths(s.SwitchVolts * amps)
		s.SpareVolts = millionths(s.DeviceVolts - s.Class.DeviceVolts)
		s.SpareWatts = millionths(s.Class.SwitchWatts - s.Drawn)
	}
	s.judge(ok)
	s.longest()
	return s, nil
}

// check fills in the class and what follows from it.
func (s *Supply) check(p Port) error {
	errs := checkLegs(p.Legs, true)
	class, ok := LookupClass(p.Class)
	if !ok {
		errs = append(errs, fmt.Errorf("found class %d; want 0 to %d", p.Class, len(classes)-1))
	}
	s.Class = class
	if s.Watts == 0 {
		s.Watts = class.DeviceWatts
	}
	if s.SwitchVolts == 0 {
		s.SwitchVolts = class.LeastVolts
	}
	if ok && !(s.Watts >= leastWatts && s.Watts <= mostWatts) {
		errs = append(errs, fmt.Errorf("the device takes %v W; want %v to %v", s.Watts, leastWatts, mostWatts))
	}
	if ok && !(s.SwitchVolts >= class.LeastVolts && s.SwitchVolts <= class.MostVolts) {
		errs = append(errs, fmt.Errorf("found %v V at the switch; class %d has %v to %v", s.SwitchVolts, class.Number, class.LeastVolts, class.MostVolts))
	}
	return errors.Join(errs...)
}

// Bounds of what a device may be said to take.
const (
	leastWatts = 0.001
	mostWatts  = 1000.0
)

// rounding is what the last digit of a rounded number may be off: a device
// that takes all of its class over the longest loop just reaches the limits.
const rounding = 2e-6

// judge lists what is wrong, worst first.
func (s *Supply) judge(solved bool) {
	add := func(p Problem, wrong bool) {
		if wrong {
			s.Problems = append(s.Problems, p)
		}
	}
	add(LowVolts, solved && s.SpareVolts < -rounding)
	add(OverClass, s.Watts > s.Class.DeviceWatts)
	add(OverSwitch, solved && s.SpareWatts < -rounding)
	add(OverLoop, s.PairsetOhms > s.Class.LoopOhms+rounding)
}

// longest finds the length at which the first limit is reached. With u volts
// left at the device the current is P/u, so the loop may have (V - u)·u/P
// ohms. u may fall to what the device needs, and to what keeps the switch within
// its watts, P·V/u <= SwitchWatts. Both are above V/2, below which there is no
// current and a lower u would mean a smaller loop.
func (s *Supply) longest() {
	v, p, c := s.SwitchVolts, s.Watts, s.Class
	least := max(c.DeviceVolts, p*v/c.SwitchWatts)
	most := min((v-least)*least/p, c.LoopOhms/float64(c.Pairsets))
	if p > c.DeviceWatts || most <= 0 || s.Ohms == 0 {
		return
	}
	s.Longest = MaxLength
	if l := float64(s.Length) * (most / s.Ohms); l < float64(MaxLength) {
		s.Longest = measure.Length(l) / measure.Millimetre * measure.Millimetre
	}
}

// current is the smaller current at which a device takes p watts behind r ohms
// from v volts. The form 2P/(V + √…) keeps its digits for a small r, and
// holds for none.
func current(v, r, p float64) (amps float64, ok bool) {
	square := float64(v*v) - float64(4*r*p)
	if square < 0 {
		return 0, false
	}
	return 2 * p / (v + math.Sqrt(square)), true
}

// millionths rounds, so that the last bits of a machine don't show.
func millionths(x float64) float64 { return math.Round(x*1e6) / 1e6 }
