package stock

// A meter counts steps of work, so that a search ends at the same place on
// every machine.
type meter struct{ left int64 }

// spend takes n steps and reports whether they were there.
func (m *meter) spend(n int) bool {
	m.left -= int64(n)
	return m.left > 0
}

func (m *meter) empty() bool { return m.left <= 0 }

// share sets aside at most one n-th of what is left.
func (m *meter) share(n int64) *meter {
	part := max(0, m.left/n)
	m.left -= part
	return &meter{part}
}

// giveBack returns what a share did not use.
func (m *meter) giveBack(part *meter) { m.left += max(0, part.left) }
