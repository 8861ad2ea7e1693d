package supply

import (
	"errors"
	"math/big"

	"topplate/plan/measure"
)

// A band is how much more a cable loses per degree between two temperatures,
// in millionths of its loss at 20 °C.
type band struct {
	screened bool
	from, to Temperature
	millions int64
}

// HeatSource is where the rise of loss with heat comes from.
var HeatSource = Source{
	Document: "ANSI/TIA-568-C.2 (2009), clause 6.4.7",
	QuotedBy: "a message to the IEEE 802.3 4PPOE mailing list", Status: AsQuoted,
}

// bands is the clause: 0.4 % per degree from 20 to 40 °C and 0.6 % from 40 to
// 60 °C for unscreened cable of category 5e, 6 and 6A, 0.2 % from 20 to 60 °C
// for screened.
var bands = []band{
	{false, 20 * Celsius, 40 * Celsius, 4000},
	{false, 40 * Celsius, 60 * Celsius, 6000},
	{true, 20 * Celsius, 60 * Celsius, 2000},
}

// warmest is where the bands end.
const warmest = 60 * Celsius

// A Channel is how long a cable counts with its heat.
type Channel struct {
	Length measure.Length
	// Equivalent is the length of cable at 20 °C that loses as much, rounded up
	// to the nanometre. Nothing is taken off below 20 °C.
	Equivalent measure.Length
	// TooHot is true if a leg is warmer than 60 °C, up to where the standard
	// tells the loss: the last rise was then continued.
	TooHot bool
}

// EquivalentLength adds up the legs of a cable as if they lay at 20 °C. Their
// conductors don't matter. The sum is exact before it is rounded.
func EquivalentLength(legs []Leg, screened bool) (Channel, error) {
	if err := errors.Join(checkLegs(legs, false)...); err != nil {
		return Channel{}, err
	}
	var c Channel
	sum := new(big.Int)
	for _, l := range legs {
		c.Length += l.Length
		c.TooHot = c.TooHot || l.Temperature > warmest
		sum.Add(sum, new(big.Int).Mul(big.NewInt(int64(l.Length)), big.NewInt(factor(l.Temperature, screened))))
	}
	sum.Add(sum, big.NewInt(unit-1)).Quo(sum, big.NewInt(unit))
	c.Equivalent = measure.Length(sum.Int64())
	return c, nil
}

// LongestAt is the length of cable at one temperature that counts as much as
// limit does at 20 °C, rounded down to the nanometre. limit is 0 to MaxLength.
func LongestAt(limit measure.Length, t Temperature, screened bool) (measure.Length, error) {
	if err := errors.Join(checkLegs([]Leg{{Length: limit, Temperature: t}}, false)...); err != nil {
		return 0, err
	}
	n := new(big.Int).Mul(big.NewInt(int64(limit)), big.NewInt(unit))
	return measure.Length(n.Quo(n, big.NewInt(factor(t, screened))).Int64()), nil
}

// unit is the factor at 20 °C: millionths per degree times thousandths of a
// degree.
const unit = 1_000_000_000

// factor is the loss at a temperature, where unit is that at 20 °C.
func factor(t Temperature, screened bool) int64 {
	f := int64(unit)
	for _, b := range bands {
		to := b.to
		if to == warmest {
			to = max(to, t)
		}
		if over := min(t, to) - b.from; b.screened == screened && over > 0 {
			f += b.millions * int64(over)
		}
	}
	return f
}
