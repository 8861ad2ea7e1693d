package label

// A random is the generator SplitMix64 (Steele, Lea and Flood, OOPSLA 2014). It
// is written out here so that no change of a library changes a drawing.
type random uint64

func (r *random) next() uint64 {
	*r += 0x9E3779B97F4A7C15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xBF58476D1CE4E5B9
	z = (z ^ z>>27) * 0x94D049BB133111EB
	return z ^ z>>31
}

// below returns a number from 0 to n-1. The bias is below n/2^64.
func (r *random) below(n int) int { return int(r.next() % uint64(n)) }
