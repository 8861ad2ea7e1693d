package cable

import (
	"math"

	"topplate/plan/measure"
)

// Gauges that are known, thickest first. Thicker wire is power cable.
const (
	ThickestGauge = 10
	ThinnestGauge = 28
)

// gaugeDiameters are the diameters of solid wire by gauge, from the thickest,
// in nanometres: 0.127 mm × 92^((36-n)/39) (American wire gauge, ASTM B258;
// formula from memory, the published tables agree with it).
var gaugeDiameters = [...]measure.Length{
	2_588_187, 2_304_847, 2_052_525, 1_827_827, 1_627_727, 1_449_532, 1_290_846, 1_149_531, 1_023_687, 911_620,
	811_821, 722_947, 643_803, 573_323, 510_559, 454_666, 404_892, 360_567, 321_094,
}

// Solid returns the diameter of a solid wire of a gauge. ok is false for a
// gauge that is not from ThickestGauge to ThinnestGauge.
func Solid(gauge int) (diameter measure.Length, ok bool) {
	if gauge < ThickestGauge || gauge > ThinnestGauge {
		return 0, false
	}
	return gaugeDiameters[gauge-ThickestGauge], true
}

// resistivity is that of annealed copper at 20 °C, in ohm mm²/m (International
// Annealed Copper Standard; from memory, the published wire tables agree).
const resistivity = 0.017241

// CopperResistance returns the resistance to direct current at 20 °C of a
// solid copper wire, in millionths of an ohm per metre. The diameter is above
// zero. Stranded wire of a gauge has as much copper as solid wire, so that its
// resistance is that of the solid wire of its gauge, but for the few per cent
// that the strands are longer.
func CopperResistance(diameter measure.Length) int64 {
	d := diameter.Millimetres()
	return int64(math.Round(1e6 * resistivity / (math.Pi / 4 * d * d)))
}
