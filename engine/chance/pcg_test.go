package chance

import (
	"math/rand/v2"
	"testing"
)

// TestSameAsToolchain compares the generator with math/rand/v2 from many states, and
// Fill with single draws, including after a list of given numbers.
func TestSameAsToolchain(t *testing.T) {
	seeds := rand.New(rand.NewPCG(3, 4))
	for n := range 200 {
		seed, index := seeds.Uint64(), seeds.Uint64()
		want, s, one, all := rand.NewPCG(seed, index), NewStream(seed, index), NewStream(seed, index), NewStream(seed, index)
		got := make([]float64, n%9)
		all.Fill(got)
		for i := range 50 {
			if a, b := s.Uint64(), want.Uint64(); a != b {
				t.Fatalf("seed %d, index %d, output %d: %016x, want %016x", seed, index, i, a, b)
			}
		}
		for i := range got {
			if u := one.Uniform(); got[i] != u {
				t.Fatalf("seed %d, index %d, uniform %d: filled %v, drawn %v", seed, index, i, got[i], u)
			}
		}
		if all.pcg != one.pcg {
			t.Fatalf("seed %d, index %d: after %d the streams continue differently", seed, index, len(got))
		}
	}
	list := []float64{.25, .5, .75}
	s, got := FixedStream(list), make([]float64, 3)
	s.Fill(got[:2])
	s.Fill(got[2:])
	for i := range list {
		if got[i] != list[i] {
			t.Errorf("given number %d is %v, want %v", i, got[i], list[i])
		}
	}
}
