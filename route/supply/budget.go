package supply

import (
	"fmt"
	"math"
)

// A Budget is what the ports of one switch take together, in watts, each port
// rounded to the milliwatt.
type Budget struct {
	// Watts is what the switch can give in all.
	Watts float64
	// Drawn is what the ports take. One that has no current counts with all
	// that its class may take at the switch.
	Drawn float64
	// Reserved is what they take if the switch keeps for every port what its
	// class may take, as many do when a device is plugged in.
	Reserved float64
	// SpareDrawn and SpareReserved are what is left, or missing below zero.
	SpareDrawn, SpareReserved float64
}

// Sum adds up the ports of a switch that can give so many watts, 0 to a
// million.
func Sum(watts float64, ports []*Supply) (Budget, error) {
	if !(watts >= 0 && watts <= 1e6) {
		return Budget{}, fmt.Errorf("found a switch of %v W; want 0 to 1000000", watts)
	}
	var drawn, reserved int64
	for _, p := range ports {
		class := milliwatts(p.Class.SwitchWatts)
		reserved += class
		if p.Amps == 0 {
			drawn += class
			continue
		}
		drawn += milliwatts(p.Drawn)
	}
	all := milliwatts(watts)
	return Budget{
		Watts: float64(all) / 1000, Drawn: float64(drawn) / 1000, Reserved: float64(reserved) / 1000,
		SpareDrawn: float64(all-drawn) / 1000, SpareReserved: float64(all-reserved) / 1000,
	}, nil
}

func milliwatts(watts float64) int64 { return int64(math.Round(watts * 1000)) }
