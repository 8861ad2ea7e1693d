package estimate

import (
	"slices"
	"strconv"
	"strings"
)

// Currencies whose smallest unit is not a hundredth: ISO 4217, table A.1, minor
// units, from memory.
var (
	noDecimals    = []string{"BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "VND", "VUV", "XAF", "XOF", "XPF"}
	threeDecimals = []string{"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"}
)

// decimals is the number of decimals of a currency.
func decimals(currency string) int {
	switch {
	case slices.Contains(noDecimals, currency):
		return 0
	case slices.Contains(threeDecimals, currency):
		return 3
	}
	return 2
}

// minor rounds cost units, millionths of the currency's unit, to its smallest
// unit, halves up. Amounts are not negative.
func minor(units int64, places int) int64 {
	step := int64(1)
	for range 6 - places {
		step *= 10
	}
	return (units + step/2) / step
}

// Money writes an amount in the currency's smallest unit: "1,234.50 USD".
func (e *Estimate) Money(amount int64) string {
	digits := strconv.FormatInt(amount, 10)
	for len(digits) <= e.Decimals {
		digits = "0" + digits
	}
	whole, rest := digits[:len(digits)-e.Decimals], digits[len(digits)-e.Decimals:]
	var b strings.Builder
	for i, d := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteByte(',')
		}
		b.WriteRune(d)
	}
	if rest != "" {
		b.WriteString("." + rest)
	}
	return b.String() + " " + e.Currency
}

// Duration writes whole minutes: "2 h 05 min", "40 min".
func Duration(minutes int64) string {
	if minutes < 60 {
		return strconv.FormatInt(minutes, 10) + " min"
	}
	rest := strconv.FormatInt(minutes%60, 10)
	if len(rest) == 1 {
		rest = "0" + rest
	}
	return strconv.FormatInt(minutes/60, 10) + " h " + rest + " min"
}
