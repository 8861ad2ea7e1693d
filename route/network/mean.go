package network

import "math/bits"

// A mean is, roughly, the geometric mean of prices above 0: unlike the
// arithmetic one it says how most prices are, whatever a few are.
type mean struct{ digits, count int }

func (m *mean) add(price int64) {
	if price > 0 {
		m.digits += bits.Len64(uint64(price))
		m.count++
	}
}

func (m *mean) value() uint64 {
	if m.count == 0 {
		return 0
	}
	return 1 << (m.digits / m.count)
}
