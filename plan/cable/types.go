package cable

import (
	"topplate/plan/measure"
	"topplate/plan/rule"
)

const (
	tenthMM  = measure.Millimetre / 10
	hundreds = measure.Millimetre / 100
	newton   = 1000 // thousandths of it
	gram     = 1000 // milligrams
	celsius  = 1000 // thousandths of a degree
)

// Where the numbers come from. Makers' names are withheld.
var (
	memory   = rule.Source{Document: "typical of the kind", Status: rule.FromMemory}
	practice = rule.Source{Status: rule.CommonPractice}
	table    = rule.Source{Document: "a maker's table of riser cable", Printed: "5e 0.189 in, 6 0.200-0.236 in, 6A 0.340 in, 6A screened 0.307 in", Status: rule.Confirmed}
	tia568   = rule.Source{Document: "ANSI/TIA-568.0", Clause: "5.3", Printed: "4 times the diameter; 110 N (25 lbf)", AsQuotedBy: "two installation guides", Status: rule.AsQuoted}
	gauges   = rule.Source{Document: "ANSI/TIA-568-B.2-1", Printed: "22 to 24 AWG, mostly 23", AsQuotedBy: "a page on the web", Status: rule.AsQuoted}
	wire     = rule.Source{Document: "ASTM B258 and the resistivity of annealed copper", AsQuotedBy: "wire tables on the web", Status: rule.Derived}
	heat     = rule.Source{Document: "the listing of twisted pair", Printed: "-40 to +60 degC", AsQuotedBy: "a trade magazine", Status: rule.AsQuoted}
)

// sources are memory for every property but those given; prices are common
// practice.
func sources(own map[Property]rule.Source) (all [Properties]rule.Source) {
	for p := range all {
		all[p] = memory
	}
	all[OfPrice] = practice
	for p, s := range own {
		all[p] = s
	}
	return all
}

// WithGauge is t with another gauge of copper, and with the conductor and the
// resistance that follow from it.
func (t Type) WithGauge(gauge int, stranded bool) Type {
	t.Gauge, t.Stranded = gauge, stranded
	t.Conductor, t.Resistance = FromGauge(gauge, stranded)
	t.Sources[OfConductor], t.Sources[OfResistance] = wire, wire
	return t
}

// copper is t with what follows from its gauge.
func copper(t Type) Type { return t.WithGauge(t.Gauge, t.Stranded) }

// FromGauge returns the diameter of one bare copper conductor, and its
// resistance as Type has it. Strands are taken to be seven: their bundle is
// 3/√7 as thick as a solid wire of the same copper. Both are zero for a gauge
// that is not known.
func FromGauge(gauge int, stranded bool) (diameter measure.Length, resistance int64) {
	diameter, ok := Solid(gauge)
	if !ok {
		return 0, 0
	}
	resistance = CopperResistance(diameter)
	if stranded {
		diameter = diameter * 1134 / 1000
	}
	return diameter, resistance
}

// types is in the order of use, most used first. Where a table gives a range
// of diameters, the thickest is taken.
var types = []Type{
	copper(Type{
		ID: "cat6", Title: "Category 6, 4-pair, indoor", Category: "6", FourPair: true, Conductors: 8,
		Diameter: 60 * tenthMM, Gauge: 23, Core: 105 * hundreds,
		MinBendDiameters: 4, MaxPull: 110 * newton, Mass: 40 * gram, Jacket: CMR, Cold: -40 * celsius, Hot: 60 * celsius,
		PricePerMetre: 700, Sources: sources(map[Property]rule.Source{OfDiameter: table, OfBend: tia568, OfPull: tia568, OfGauge: gauges, OfTemperature: heat}),
	}),
	copper(Type{
		ID: "cat6-outdoor", Title: "Category 6, 4-pair, outdoor jacket", Category: "6", FourPair: true, Conductors: 8,
		Diameter: 65 * tenthMM, Gauge: 23, Core: 105 * hundreds,
		MinBendDiameters: 4, MaxPull: 110 * newton, Mass: 45 * gram, Jacket: CMX, Sunlight: true, Cold: -40 * celsius, Hot: 70 * celsius,
		PricePerMetre: 1000, Sources: sources(map[Property]rule.Source{OfBend: tia568, OfPull: tia568, OfGauge: gauges}),
	}),
	copper(Type{
		ID: "cat6a", Title: "Category 6A, 4-pair, indoor", Category: "6A", FourPair: true, Conductors: 8,
		Diameter: 86 * tenthMM, Gauge: 23, Core: 120 * hundreds,
		MinBendDiameters: 4, MaxPull: 110 * newton, Mass: 65 * gram, Jacket: CMR, Cold: -40 * celsius, Hot: 60 * celsius,
		PricePerMetre: 1300, Sources: sources(map[Property]rule.Source{OfDiameter: table, OfBend: tia568, OfPull: tia568, OfTemperature: heat}),
	}),
	copper(Type{
		ID: "cat5e", Title: "Category 5e, 4-pair, indoor", Category: "5e", FourPair: true, Conductors: 8,
		Diameter: 48 * tenthMM, Gauge: 24, Core: 90 * hundreds,
		MinBendDiameters: 4, MaxPull: 110 * newton, Mass: 30 * gram, Jacket: CMR, Cold: -40 * celsius, Hot: 60 * celsius,
		PricePerMetre: 400, Sources: sources(map[Property]rule.Source{OfDiameter: table, OfBend: tia568, OfPull: tia568, OfTemperature: heat}),
	}),
	{
		// Its conductor is steel under a skin of copper.
		ID: "coax6", Title: "Coaxial, series 6", Category: "coax", Conductors: 1,
		Diameter: 69 * tenthMM, Gauge: 18, Conductor: 102 * hundreds, Core: 457 * hundreds,
		MinBendDiameters: 10, MaxPull: 150 * newton, Mass: 42 * gram, Resistance: 94_000,
		Jacket: CATV, Cold: -40 * celsius, Hot: 75 * celsius, Screened: true,
		PricePerMetre: 600, Sources: sources(nil),
	},
	copper(Type{
		ID: "speaker2", Title: "Speaker, 2-core", Category: "speaker", Conductors: 2,
		Diameter: 65 * tenthMM, Gauge: 16, Stranded: true, Core: 250 * hundreds,
		MinBendDiameters: 5, MaxPull: 150 * newton, Mass: 60 * gram, Jacket: CL3, Cold: -20 * celsius, Hot: 75 * celsius,
		PricePerMetre: 900, Sources: sources(nil),
	}),
	copper(Type{
		ID: "speaker4", Title: "Speaker, 4-core", Category: "speaker", Conductors: 4,
		Diameter: 80 * tenthMM, Gauge: 16, Stranded: true, Core: 250 * hundreds,
		MinBendDiameters: 5, MaxPull: 250 * newton, Mass: 105 * gram, Jacket: CL3, Cold: -20 * celsius, Hot: 75 * celsius,
		PricePerMetre: 1500, Sources: sources(nil),
	}),
	// What burns least, is screened, or may lie in wet ground.
	copper(Type{
		ID: "cat6-plenum", Title: "Category 6, 4-pair, plenum", Category: "6", FourPair: true, Conductors: 8,
		Diameter: 60 * tenthMM, Gauge: 23, Core: 105 * hundreds,
		MinBendDiameters: 4, MaxPull: 110 * newton, Mass: 42 * gram, Jacket: CMP, Cold: -20 * celsius, Hot: 75 * celsius,
		PricePerMetre: 1600, Sources: sources(map[Property]rule.Source{OfBend: tia568, OfPull: tia568, OfGauge: gauges}),
	}),
	copper(Type{
		ID: "cat6a-screened", Title: "Category 6A, 4-pair, screened, indoor", Category: "6A", FourPair: true, Conductors: 8,
		Diameter: 78 * tenthMM, Gauge: 23, Core: 120 * hundreds,
		MinBendDiameters: 4, MaxPull: 110 * newton, Mass: 60 * gram, Jacket: CMR, Cold: -40 * celsius, Hot: 60 * celsius, Screened: true,
		PricePerMetre: 1500, Sources: sources(map[Property]rule.Source{OfDiameter: table, OfBend: tia568, OfPull: tia568, OfTemperature: heat}),
	}),
	copper(Type{
		ID: "cat6-burial", Title: "Category 6, 4-pair, filled with gel, for the ground", Category: "6", FourPair: true, Conductors: 8,
		Diameter: 75 * tenthMM, Gauge: 23, Core: 105 * hundreds,
		MinBendDiameters: 8, MaxPull: 110 * newton, Mass: 60 * gram, Jacket: Outdoor, Sunlight: true, Cold: -40 * celsius, Hot: 70 * celsius,
		PricePerMetre: 1200, Sources: sources(map[Property]rule.Source{OfPull: tia568, OfGauge: gauges}),
	}),
}
