package radix

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// An order is what a heap should hold, the item to come out first at the end.
type order []entry

func (o *order) push(key uint64, item int32) {
	i := 0
	for i < len(*o) && (*o)[i].key >= key {
		i++
	}
	*o = slices.Insert(*o, i, entry{key: key, item: item})
}

// drive pushes and pops at random, keys never below the last one popped, and
// holds everything popped against a sorted list. Most keys are less than spread
// above the last one popped, and a few are far above.
func drive(t *testing.T, h *Heap, r *rand.Rand, spread uint64) (popped []int32) {
	t.Helper()
	var held order
	last := uint64(0)
	for i := range int32(600) {
		if r.IntN(5) < 3 && i < 400 {
			key := last + r.Uint64N(spread)
			if r.IntN(20) == 0 {
				key = last + r.Uint64N(spread)<<r.IntN(20)
			}
			held.push(max(key, last), i)
			h.Push(max(key, last), i)
		} else if len(held) > 0 {
			key, item := h.Pop()
			want := held[len(held)-1]
			if key != want.key || item != want.item {
				t.Fatalf("popped item %d with key %d, want %d with %d", item, key, want.item, want.key)
			}
			held, last = held[:len(held)-1], key
			popped = append(popped, item)
		}
		if h.Len() != len(held) {
			t.Fatalf("the heap holds %d items, want %d", h.Len(), len(held))
		}
	}
	return popped
}

func TestPopInOrderOfKeys(t *testing.T) {
	var h Heap
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 1))
		if seed%3 > 0 {
			h.Fit(r.Uint64() >> r.IntN(64))
		}
		drive(t, &h, r, 1+r.Uint64N(1<<(1+seed%60)))
		h.Reset()
		if h.Len() != 0 {
			t.Fatalf("after Reset the heap holds %d items", h.Len())
		}
	}
}

func TestLargestKeys(t *testing.T) {
	var h Heap
	want := []uint64{0, 1, 15, 16, 1 << 32, 1<<63 - 1, 1 << 63, 1<<64 - 1}
	for i, key := range slices.Backward(want) {
		h.Push(key, int32(i))
	}
	for i, key := range want {
		if got, item := h.Pop(); got != key || item != int32(i) {
			t.Errorf("popped %d with key %d, want %d with %d", item, got, i, key)
		}
	}
}

// The order of equal keys depends on the calls alone, not on what the heap
// held before.
func TestSameCallsSameOrder(t *testing.T) {
	var used Heap
	for seed := range uint64(50) {
		var fresh Heap
		a := drive(t, &used, rand.New(rand.NewPCG(seed, 2)), 4)
		b := drive(t, &fresh, rand.New(rand.NewPCG(seed, 2)), 4)
		if !slices.Equal(a, b) {
			t.Fatalf("seed %d: a used heap pops %v, a fresh one %v", seed, a, b)
		}
		used.Reset()
	}
}

// A heap that is emptied over and over stays as large as it was.
func TestResetKeepsMemory(t *testing.T) {
	var h Heap
	size := 0
	for round := range 20 {
		for i := range int32(1000) {
			h.Push(uint64(i)*97, i)
		}
		for range round * 50 {
			h.Pop()
		}
		h.Reset()
		if round == 0 {
			size = cap(h.pool)
		}
	}
	if cap(h.pool) != size {
		t.Errorf("room for %d entries became room for %d", size, cap(h.pool))
	}
}

// FuzzHeap holds the heap against sorting: a byte with the lowest bit set pops,
// any other pushes a key that is so much above the last one popped.
func FuzzHeap(f *testing.F) {
	f.Add([]byte{2, 4, 2, 1, 255, 8, 1, 1, 1})
	f.Add([]byte("a heap of keys"))
	f.Fuzz(func(t *testing.T, data []byte) {
		var h Heap
		h.Fit(uint64(len(data)) << (len(data) % 50))
		var held []uint64
		last := uint64(0)
		for i, b := range data {
			if b&1 == 0 {
				key := last + uint64(b>>1&7)<<(b>>4*3)
				held = append(held, key)
				h.Push(key, int32(i))
				continue
			}
			if len(held) == 0 {
				continue
			}
			slices.Sort(held)
			key, _ := h.Pop()
			if key != held[0] {
				t.Fatalf("popped key %d, the least is %d", key, held[0])
			}
			held, last = held[1:], key
		}
	})
}

// BenchmarkHeap holds 1,000 items, as a search of a house does, and replaces
// the least by one a little above.
func BenchmarkHeap(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	steps := make([]uint64, 1<<12)
	for i := range steps {
		steps[i] = r.Uint64N(1000) << 12
	}
	var h Heap
	for i := range int32(1000) {
		h.Push(steps[i], i)
	}
	i := 0
	for b.Loop() {
		key, item := h.Pop()
		h.Push(key+steps[i&(len(steps)-1)], item)
		i++
	}
	if h.Len() != 1000 {
		b.Fatal("items got lost")
	}
}
