package supply

import (
	"fmt"
	"math"

	"topplate/plan/measure"
)

// What is known of copper.
var (
	// Resistivity is that of annealed copper at 20 °C, in Ω·mm²/m.
	Resistivity = Constant{0.017241, "Ω·mm²/m", Source{Document: "International Annealed Copper Standard", Status: FromMemory}}
	// HeatCoefficient is how much its resistance grows per degree from 20 °C.
	HeatCoefficient = Constant{0.00393, "1/°C", Source{Document: "International Annealed Copper Standard", Status: FromMemory}}
	// MostHorizontal is the largest resistance of a conductor of horizontal
	// cable at 20 °C, in ohms per 100 m: what to reckon with where the gauge
	// is not known.
	MostHorizontal = Constant{9.38, "Ω/100 m", Source{Document: "ANSI/TIA-568.2-D", Status: FromMemory}}
)

// Gauges that a wire may have: 0000, written -3, to 56 (ASTM B258, from
// memory).
const (
	ThickestGauge = -3
	ThinnestGauge = 56
)

// GaugeDiameter is the diameter of a round wire of American wire gauge n,
// rounded to the nanometre: 0.127 mm × 92^((36-n)/39) (ASTM B258).
func GaugeDiameter(n int) (measure.Length, error) {
	if n < ThickestGauge || n > ThinnestGauge {
		return 0, fmt.Errorf("found wire gauge %d; want %d to %d", n, ThickestGauge, ThinnestGauge)
	}
	return measure.Length(math.Round(127_000 * math.Pow(92, float64(36-n)/39))), nil
}

// A Conductor is one wire of a cable.
type Conductor struct {
	// Ohms is its resistance in ohms per metre at 20 °C.
	Ohms float64
}

// Copper is a solid copper conductor of a diameter, 0.01 mm to 20 mm.
func Copper(diameter measure.Length) (Conductor, error) {
	if diameter < measure.Millimetre/100 || diameter > 20*measure.Millimetre {
		return Conductor{}, fmt.Errorf("found a conductor of %v; want 0.01 mm to 20 mm", diameter)
	}
	d := diameter.Millimetres()
	return Conductor{Resistivity.Value * 4 / (math.Pi * d * d)}, nil
}

// Gauge is a solid copper conductor of American wire gauge n. Stranded ones
// have a little more resistance.
func Gauge(n int) (Conductor, error) {
	d, err := GaugeDiameter(n)
	if err != nil {
		return Conductor{}, err
	}
	return Copper(d)
}

// Horizontal is the worst conductor of horizontal cable: see MostHorizontal.
func Horizontal() Conductor { return Conductor{MostHorizontal.Value / 100} }

// A Temperature is in thousandths of a degree Celsius.
type Temperature int64

// Celsius is one degree.
const Celsius Temperature = 1000

// Coldest and Hottest bound a temperature, beyond what any cable is made for.
const (
	Coldest = -60 * Celsius
	Hottest = 120 * Celsius
)

// reference is the temperature that resistances and losses are given for.
const reference = 20 * Celsius

// Fahrenheit is a temperature in degrees Fahrenheit, rounded to a thousandth
// of a degree Celsius: 140 is 60·Celsius.
func Fahrenheit(degrees int) Temperature {
	thousandths := (Temperature(degrees) - 32) * 5000
	if thousandths < 0 {
		return (thousandths - 4) / 9
	}
	return (thousandths + 4) / 9
}

// A Leg is a part of a cable that lies at one temperature.
type Leg struct {
	Length      measure.Length
	Temperature Temperature
	Conductor   Conductor
}

// ohms is the resistance of one conductor of the leg at its temperature.
func (l Leg) ohms() float64 {
	warmer := float64(l.Temperature-reference) / float64(Celsius)
	return l.Conductor.Ohms * l.Length.Metres() * (1 + float64(HeatCoefficient.Value*warmer))
}

// MaxLength bounds a cable and MaxOhms a conductor, in ohms per metre.
const (
	MaxLength = 100_000 * measure.Metre
	MaxOhms   = 1000.0
)

// checkLegs returns everything that is wrong with the legs of a cable.
// conductors is whether theirs matter.
func checkLegs(legs []Leg, conductors bool) (errs []error) {
	bad := func(format string, a ...any) { errs = append(errs, fmt.Errorf(format, a...)) }
	total := measure.Length(0)
	for i, l := range legs {
		if l.Length < 0 || l.Length > MaxLength {
			bad("leg %d is %v long; want 0 to %v", i+1, l.Length, MaxLength)
		}
		total = min(total+max(0, min(l.Length, MaxLength)), 2*MaxLength)
		if l.Temperature < Coldest || l.Temperature > Hottest {
			bad("leg %d lies at %v thousandths of a degree; want %d to %d", i+1, l.Temperature, Coldest, Hottest)
		}
		if r := l.Conductor.Ohms; conductors && !(r > 0 && r <= MaxOhms) {
			bad("the conductor of leg %d has %v ohms per metre; want more than 0, at most %v", i+1, r, MaxOhms)
		}
	}
	if total > MaxLength {
		bad("the cable is longer than %v", MaxLength)
	}
	return errs
}
