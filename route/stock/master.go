package stock

import (
	"math"

	"topplate/plan/measure"
)

// worthUnit is how many units of worth in whole numbers a new spool has.
const worthUnit = 1 << 30

// negligible is below what the linear programme can tell from 0.
const negligible = 1e-9

// pricingPatience is how many branches for each length are spent on making a
// new pattern better, once there is one.
const pricingPatience = 20

// refreshEvery is after how many pivots the inverse is worked out anew, before
// rounding errors add up.
const refreshEvery = 300

// A master is the linear programme of Gilmore and Gomory (1961): use patterns
// of spools so that every piece is cut, no more spools of a kind are used than
// there are, and the number of new spools is least. Patterns are found as they
// are needed. Rows are the lengths of pieces, then the kinds of spools. Revised
// simplex method with a dense inverse of the basis.
type master struct {
	demand
	supply
	penalty float64 // price of a piece that is not cut

	pool    []filled    // patterns
	column  [][]entry   // the same as columns of the programme
	given   int         // of these, how many it began with
	inverse [][]float64 // of the basis
	basis   []int       // by row: a pattern, or one of the codes below
	amount  []float64   // by row: how often that is used
	price   []float64   // by row: dual prices
	meter   *meter
}

// What is in the basis if not a pattern: for row i, codes below 0. A missing
// counts a piece that is not cut, a slack what is cut too much or not used.
func missing(i int) int     { return -1 - 2*i }
func slack(i int) int       { return -2 - 2*i }
func isMissing(v int) bool  { return v < 0 && v%2 != 0 }
func rowOfCode(v int) int   { return (-v - 1) / 2 }
func (m *master) rows() int { return len(m.size) + len(m.kind) }

// An entry is one coefficient of a column.
type entry struct {
	row int
	by  float64
}

// newMaster starts with nothing cut.
func newMaster(d demand, s supply, pool []filled, mt *meter) *master {
	m := &master{demand: d, supply: s, penalty: float64(d.pieces() + 2), pool: pool, given: len(pool), meter: mt}
	for _, f := range pool {
		m.column = append(m.column, m.entries(f))
	}
	n := m.rows()
	m.inverse = make([][]float64, n)
	m.basis, m.amount, m.price = make([]int, n), make([]float64, n), make([]float64, n)
	for i := range n {
		m.inverse[i] = make([]float64, n)
		m.inverse[i][i] = 1
		m.basis[i], m.amount[i] = slack(i), m.limit(i)
		if i < len(m.size) {
			m.basis[i] = missing(i)
		}
	}
	return m
}

// entries is the column of a pattern.
func (m *master) entries(f filled) []entry {
	var c []entry
	for j, n := range f.count {
		if n > 0 {
			c = append(c, entry{j, float64(n)})
		}
	}
	if f.kind != freshKind {
		c = append(c, entry{len(m.size) + f.kind, 1})
	}
	return c
}

// entriesOf is the column of anything that can be in the basis.
func (m *master) entriesOf(v int) []entry {
	switch {
	case v >= 0:
		return m.column[v]
	case !isMissing(v) && rowOfCode(v) < len(m.size):
		return []entry{{rowOfCode(v), -1}} // cut too much
	}
	return []entry{{rowOfCode(v), 1}}
}

// solve finds the optimum and reports whether it could with the steps there
// are. The prices are then good for safeBound, the amounts for rounding.
func (m *master) solve() bool {
	for pivots := 1; ; pivots++ {
		if pivots%refreshEvery == 0 && !m.refresh() {
			return false
		}
		m.reprice()
		column := m.entering()
		if column == nil {
			return true
		}
		if !m.meter.spend(2 * m.rows()) {
			return false
		}
		if !m.pivot(*column) {
			return false
		}
	}
}

// cost is the price of a column of the basis.
func (m *master) cost(v int) float64 {
	switch {
	case isMissing(v):
		return m.penalty
	case v >= 0 && m.pool[v].kind == freshKind:
		return 1
	}
	return 0
}

// reprice works out the dual prices from the basis.
func (m *master) reprice() {
	clear(m.price)
	for i, v := range m.basis {
		c := m.cost(v)
		if c == 0 {
			continue
		}
		for k, x := range m.inverse[i] {
			m.price[k] += float64(c * x)
		}
		m.meter.left -= int64(len(m.price))
	}
}

// entering is a column that makes the plan cheaper, or nil: a slack, a pattern
// that is known, or else a new one.
func (m *master) entering() *int {
	best, column := -1e-7, 0
	found := false
	try := func(reduced float64, v int) {
		if reduced < best {
			best, column, found = reduced, v, true
		}
	}
	for i, u := range m.price {
		if i < len(m.size) {
			try(u, slack(i))
		} else {
			try(-u, slack(i))
		}
	}
	for v := range m.pool {
		try(m.reduced(v), v)
	}
	if !found {
		for _, v := range m.generate() {
			try(m.reduced(v), v)
		}
	}
	if !found {
		return nil
	}
	return &column
}

// reduced is the reduced cost of a pattern.
func (m *master) reduced(v int) float64 {
	r := m.cost(v)
	for _, e := range m.column[v] {
		r -= float64(e.by * m.price[e.row])
	}
	m.meter.left -= int64(len(m.column[v]))
	return r
}

// generate adds the best new pattern of every kind of spool that makes the
// plan cheaper to the pool.
func (m *master) generate() []int {
	worth := m.worth()
	k := newKnapsack(m.size, m.need, worth)
	var added []int
	for kind := freshKind; kind < len(m.kind); kind++ {
		threshold := 1.0
		if kind != freshKind {
			threshold = -m.price[len(m.size)+kind]
		}
		room := m.length(kind)
		if room == 0 {
			continue
		}
		part := m.meter.share(8)
		floor := int64(math.Min(threshold+1e-7, 1<<30) * worthUnit)
		k.patience = pricingPatience * len(m.size)
		if best, _ := k.solve(room, floor, part); best != nil {
			m.pool = append(m.pool, filled{kind, best})
			m.column = append(m.column, m.entries(m.pool[len(m.pool)-1]))
			added = append(added, len(m.pool)-1)
		}
		m.meter.giveBack(part)
	}
	return added
}

// worth is the prices of the pieces in whole numbers, rounded down.
func (m *master) worth() []int64 {
	worth := make([]int64, len(m.size))
	for j := range worth {
		worth[j] = int64(math.Max(0, math.Min(m.price[j], 2*m.penalty)) * worthUnit)
	}
	return worth
}

// pivot puts column v into the basis. It reports whether it could.
func (m *master) pivot(v int) bool {
	d := m.direction(v)
	row := -1
	for i, x := range d {
		if x <= negligible {
			continue
		}
		if row < 0 {
			row = i
			continue
		}
		// Compares amount/d without dividing. Go may fuse a product with a sum
		// unless it is converted, and results would depend on the machine.
		by := float64(m.amount[i]*d[row]) - float64(m.amount[row]*x)
		if by < -1e-12 || by < 1e-12 && m.basis[i] < m.basis[row] {
			row = i
		}
	}
	if row < 0 {
		return false // only after rounding errors: the cost is never unbounded
	}
	by := 1 / d[row]
	m.amount[row] *= by
	from := m.inverse[row]
	var nonzero []int
	for k := range from {
		if from[k] *= by; from[k] != 0 {
			nonzero = append(nonzero, k)
		}
	}
	for i, x := range d {
		if i == row || x == 0 {
			continue
		}
		m.amount[i] = math.Max(0, m.amount[i]-float64(x*m.amount[row]))
		into := m.inverse[i]
		for _, k := range nonzero {
			into[k] -= float64(x * from[k])
		}
		m.meter.left -= int64(len(nonzero))
	}
	m.basis[row] = v
	return true
}

// refresh inverts the basis anew (Gauss and Jordan, with the largest pivot of
// each column) and works out the amounts. It reports whether it could.
func (m *master) refresh() bool {
	n := m.rows()
	if !m.meter.spend(n * n * n) {
		return false
	}
	wide := make([][]float64, n) // the basis, and beside it what becomes its inverse
	for i := range wide {
		wide[i] = make([]float64, 2*n)
		wide[i][n+i] = 1
	}
	for k, v := range m.basis {
		for _, e := range m.entriesOf(v) {
			wide[e.row][k] = e.by
		}
	}
	for k := range n {
		top := k
		for i := k + 1; i < n; i++ {
			if math.Abs(wide[i][k]) > math.Abs(wide[top][k]) {
				top = i
			}
		}
		if math.Abs(wide[top][k]) < negligible {
			return false
		}
		wide[k], wide[top] = wide[top], wide[k]
		eliminate(wide, k)
	}
	for i := range n {
		copy(m.inverse[i], wide[i][n:])
		sum := 0.0
		for row, x := range m.inverse[i] {
			sum += float64(x * m.limit(row))
		}
		m.amount[i] = math.Max(0, sum)
	}
	return true
}

// eliminate makes column k of rows that of the unit matrix.
func eliminate(rows [][]float64, k int) {
	by := 1 / rows[k][k]
	for c := k; c < len(rows[k]); c++ {
		rows[k][c] *= by
	}
	for i := range rows {
		x := rows[i][k]
		if i == k || x == 0 {
			continue
		}
		for c := k; c < len(rows[k]); c++ {
			if y := rows[k][c]; y != 0 {
				rows[i][c] -= float64(x * y)
			}
		}
	}
}

// limit is the right side of a row.
func (m *master) limit(row int) float64 {
	if row < len(m.size) {
		return float64(m.need[row])
	}
	return float64(m.have[row-len(m.size)])
}

// direction is column v seen from the basis.
func (m *master) direction(v int) []float64 {
	d := make([]float64, m.rows())
	add := func(row int, by float64) {
		for i := range d {
			d[i] += float64(m.inverse[i][row] * by)
		}
	}
	for _, e := range m.entriesOf(v) {
		add(e.row, e.by)
	}
	return d
}

// safeBound is a lower bound for the number of new spools, from the prices but
// in whole numbers: if no filling of a new spool is worth more than g, and none
// of a spool in stock more than g(k), then all pieces without those in stock
// need as many new spools as g goes into what is left of their worth. It holds
// for any prices, so rounding can weaken it but not make it wrong.
func (m *master) safeBound() int {
	worth := m.worth()
	k := newKnapsack(m.size, m.need, worth)
	sum := int64(0)
	for j, n := range m.need {
		sum += worth[j] * int64(n)
	}
	for kind, c := range m.kind {
		part := m.meter.share(2)
		_, bound := k.solve(c, 0, part)
		m.meter.giveBack(part)
		if bound >= sum/int64(m.have[kind]) {
			return 0
		}
		sum -= bound * int64(m.have[kind])
	}
	_, bound := k.solve(m.fresh, 0, m.meter)
	return roundUpDiv(measure.Length(sum), measure.Length(max(1, bound)))
}

// uses is how often each pattern of the pool is used.
func (m *master) uses() []float64 {
	x := make([]float64, len(m.pool))
	for i, v := range m.basis {
		if v >= 0 && m.amount[i] > negligible {
			x[v] = m.amount[i]
		}
	}
	return x
}
