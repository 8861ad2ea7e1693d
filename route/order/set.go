package order

import "math/bits"

// A set of tasks. An array, so that it can be a part of a map's key.
type set [MaxTasks / 64]uint64

func (s *set) has(t int) bool { return s[t>>6]&(1<<(t&63)) != 0 }
func (s *set) add(t int)      { s[t>>6] |= 1 << (t & 63) }

func (s *set) count() int {
	n := 0
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	return n
}

// hasAll reports whether all of tasks are in s.
func (s *set) hasAll(tasks []int) bool {
	for _, t := range tasks {
		if !s.has(t) {
			return false
		}
	}
	return true
}
