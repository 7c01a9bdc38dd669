package chance

import (
	"math"
	"testing"
)

// TestHash: the outputs are those published for SplitMix64 (Rosetta Code,
// "Pseudo-random numbers/Splitmix64", seed 1234567; for seed 0 from
// memory those of S. Vigna's reference splitmix64.c).
func TestHash(t *testing.T) {
	for n, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		if got := Hash(1234567, uint64(n)); got != want {
			t.Errorf("seed 1234567, output %d: %d, published %d", n, got, want)
		}
	}
	for n, want := range []uint64{0xE220A8397B1DCDAF, 0x6E789E6AA1B965F4, 0x06C45D188009454F} {
		if got := Hash(0, uint64(n)); got != want {
			t.Errorf("seed 0, output %d: %x, published %x", n, got, want)
		}
	}
}

// TestHashUniform: mean and variance of the uniform distribution, 1/2 and 1/12, over many
// questions of one seed and over one question of many seeds, within 5 standard errors.
func TestHashUniform(t *testing.T) {
	const count = 1 << 16
	for name, at := range map[string]func(n uint64) float64{
		"questions": func(n uint64) float64 { return HashUniform(99, n) },
		"seeds":     func(n uint64) float64 { return HashUniform(n, 3) },
	} {
		sum, squares := 0.0, 0.0
		for n := range uint64(count) {
			u := at(n)
			if u <= 0 || u >= 1 {
				t.Fatalf("%s: %v", name, u)
			}
			sum, squares = sum+u, squares+(u-.5)*(u-.5)
		}
		if off := sum/count - .5; math.Abs(off) > 5*math.Sqrt(1.0/12/count) {
			t.Errorf("%s: mean off by %v", name, off)
		}
		if off := squares/count - 1.0/12; math.Abs(off) > 5*math.Sqrt(1.0/180/count) {
			t.Errorf("%s: variance off by %v", name, off)
		}
	}
}
