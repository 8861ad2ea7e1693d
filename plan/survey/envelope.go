package survey

import "math"

// An envelope is a symmetric matrix of which each row keeps what is from its
// first entry that is not zero to the diagonal. Its Cholesky factor has no entry
// outside of that (A. George and J. Liu, Computer Solution of Large Sparse
// Positive Definite Systems, 1981, chapter 4, from memory).
type envelope struct {
	first []int
	row   [][]float64 // row[i][j-first[i]]
}

// newEnvelope is the matrix of the normal equations of rows.
func newEnvelope(n int, rows []row) *envelope {
	e := &envelope{first: make([]int, n), row: make([][]float64, n)}
	for i := range e.first {
		e.first[i] = i
	}
	for k := range rows {
		r := &rows[k]
		for p := range r.n {
			for q := range r.n {
				e.first[r.col[p]] = min(e.first[r.col[p]], r.col[q])
			}
		}
	}
	for i := range e.row {
		e.row[i] = make([]float64, i-e.first[i]+1)
	}
	for k := range rows {
		r := &rows[k]
		for p := range r.n {
			for q := range r.n {
				if i, j := r.col[p], r.col[q]; j <= i {
					e.row[i][j-e.first[i]] += float64(r.by[p] * r.by[q])
				}
			}
		}
	}
	return e
}

// factor replaces the matrix by its Cholesky factor. It returns the first row
// that depends on those before it, or -1.
func (e *envelope) factor() int {
	for i, row := range e.row {
		before := row[i-e.first[i]]
		for j := e.first[i]; j <= i; j++ {
			sum := row[j-e.first[i]]
			for k := max(e.first[i], e.first[j]); k < j; k++ {
				sum -= float64(row[k-e.first[i]] * e.row[j][k-e.first[j]])
			}
			if j < i {
				row[j-e.first[i]] = sum / e.row[j][j-e.first[j]]
				continue
			}
			if !(sum > before*dependent) {
				return i
			}
			row[j-e.first[i]] = math.Sqrt(sum)
		}
	}
	return -1
}

// forward solves with the factor from row start on, in place.
func (e *envelope) forward(x []float64, start int) {
	for i := start; i < len(x); i++ {
		row, sum := e.row[i], x[i]
		for k := max(e.first[i], start); k < i; k++ {
			sum -= float64(row[k-e.first[i]] * x[k])
		}
		x[i] = sum / row[i-e.first[i]]
	}
}

// backward solves with the transposed factor, in place.
func (e *envelope) backward(x []float64) {
	for i := len(x) - 1; i >= 0; i-- {
		row := e.row[i]
		x[i] /= row[i-e.first[i]]
		for k := e.first[i]; k < i; k++ {
			x[k] -= float64(row[k-e.first[i]] * x[i])
		}
	}
}

// leverage is a N⁻¹ aᵀ for the row a, by the factor of N: the square of what
// the forward step makes of it. work has room for one column.
func (e *envelope) leverage(a *row, work []float64) float64 {
	clear(work)
	start := len(work)
	for k := range a.n {
		work[a.col[k]] = a.by[k]
		start = min(start, a.col[k])
	}
	e.forward(work, start)
	sum := 0.0
	for _, y := range work[start:] {
		sum += float64(y * y)
	}
	return sum
}
