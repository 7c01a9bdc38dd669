package chance

import (
	"math"
	"math/rand/v2"
	"testing"
)

// First outputs of PCG-DXSM for the state (1, 2): tests of Go's math/rand/v2
// (pcg_test.go), recomputed separately with Python integers.
var pcg12 = []uint64{
	0xc4f5a58656eef510, 0x9dcec3ad077dec6c, 0xc8d04605312f8088, 0xcbedc0dcb63ac19a,
	0x3bf98798cae97950, 0x0a8c6d7f8d485abc, 0x7ffa3780429cd279, 0x730ad2626b1c2f8e,
}

func TestStreamPublishedOutputs(t *testing.T) {
	s := NewStream(1, 2)
	for i, want := range pcg12 {
		if got := s.Uint64(); got != want {
			t.Errorf("output %d is %016x, want %016x", i, got, want)
		}
	}
	u := NewStream(1, 2)
	for i, bits := range pcg12 {
		// (k + ½)/2^52 with the upper 52 bits, by division instead of bits.
		want := (float64(bits/4096) + 0.5) / 4503599627370496
		if got := u.Uniform(); got != want {
			t.Errorf("uniform %d is %v, want %v", i, got, want)
		}
	}
}

// The toolchain's own streams are as published: Float64 and NormFloat64 from
// math/rand/v2 (regress_test.go and its documentation, recomputed with Python),
// ChaCha8 from the C2SP specification chacha8rand.md, including the outputs
// across its change of key after 992 bytes.
func TestToolchainStreams(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for i, want := range []float64{0.6764556596678251, 0.4613862177205994, 0.5085473976760264, 0.4297927436037299, 0.797802349388613} {
		if got := r.Float64(); got != want {
			t.Errorf("Float64 %d is %v, want %v", i, got, want)
		}
	}
	c := rand.NewChaCha8([32]byte([]byte("ABCDEFGHIJKLMNOPQRSTUVWXYZ123456")))
	published := map[int]uint64{
		0: 0xb773b6063d4616a5, 1: 0x1160af22a66abc3c, 2: 0x8c2599d9418d287c, 3: 0x7ee07e037edc5cd6,
		123: 0x861d6c139c06c871, 124: 0x5f41df72e05e0487, 125: 0x25bd7e1e1ae26b1d, 126: 0xbe9f4004d662a41d,
	}
	seen := 0
	for i := range 127 {
		got := c.Uint64()
		if want, ok := published[i]; ok {
			seen++
			if got != want {
				t.Errorf("ChaCha8 output %d is %016x, want %016x", i, got, want)
			}
		}
	}
	if seen != len(published) {
		t.Errorf("compared %d of %d outputs", seen, len(published))
	}
}

// The ends of the range, from the bits that give them: Uniform never reaches 0 or 1.
func TestUniformEnds(t *testing.T) {
	if low, high := openUniform(0), openUniform(math.MaxUint64); low != 0x1p-53 || high != 1-0x1p-53 {
		t.Errorf("ends %v and %v, want 2^-53 from 0 and 1", low, high)
	}
}

func TestStreamIsAValue(t *testing.T) {
	a := NewStream(7, 9)
	a.Uint64()
	b := a
	for range 10 {
		if x, y := a.Uint64(), b.Uint64(); x != y {
			t.Fatal("a copy does not continue from the same position")
		}
	}
}

// pairChiSquare draws the k-th number of n streams and counts pairs (a stream and the
// one lag positions later) in a grid of 16 × 16. The result has 255 degrees of freedom.
func pairChiSquare(n, k, lag int, stream func(i int) Stream) float64 {
	const side = 16
	us := make([]float64, n+lag)
	for i := range us {
		s := stream(i)
		for range k {
			s.Uint64()
		}
		us[i] = s.Uniform()
	}
	var counts [side * side]int
	for i := range n {
		counts[int(us[i]*side)*side+int(us[i+lag]*side)]++
	}
	expected, sum := float64(n)/(side*side), 0.0
	for _, c := range counts {
		sum += (float64(c) - expected) * (float64(c) - expected) / expected
	}
	return sum
}

// Streams of neighbouring seeds or indexes appear independent. As a control, seeds that
// differ only in their upper bits fail.
func TestNeighbouringStreams(t *testing.T) {
	// Upper point of chi-square, 255 degrees of freedom, chance 1e-6: 377.1
	// (Wilson and Hilferty's approximation, 1931); 48 comparisons, fixed seeds.
	const limit = 377.1
	for k := range 3 {
		for lag := 1; lag <= 4; lag++ {
			for _, seed := range []uint64{0, 20260101} {
				byIndex := pairChiSquare(1<<14, k, lag, func(i int) Stream { return NewStream(seed, uint64(i)) })
				bySeed := pairChiSquare(1<<14, k, lag, func(i int) Stream { return NewStream(uint64(i), seed) })
				if byIndex > limit || bySeed > limit {
					t.Errorf("number %d, lag %d, seed %d: chi-square %.1f by index, %.1f by seed", k, lag, seed, byIndex, bySeed)
				}
			}
		}
	}
	worst := 0.0
	for lag := 1; lag <= 8; lag++ {
		worst = math.Max(worst, pairChiSquare(1<<14, 0, lag, func(i int) Stream { return NewStream(uint64(i)<<49, 1) }))
	}
	if worst < limit {
		t.Errorf("seeds 2^49 apart pass with %.1f: the comparison is too weak", worst)
	}
}

// Kolmogorov-Smirnov: D·√n below 1.62762 (asymptotic 1 % point), and a chi-square
// of 20 cells below 43.820 (19 degrees of freedom, 0.1 %). Fixed seeds.
func TestUniformIsUniform(t *testing.T) {
	const n = 100000
	for seed := range uint64(3) {
		s := NewStream(seed, 11)
		var cells [20]int
		const bins = 1000
		var fine [bins]int
		for range n {
			u := s.Uniform()
			cells[int(u*20)]++
			fine[int(u*bins)]++
		}
		chi := 0.0
		for _, c := range cells {
			chi += (float64(c) - n/20.0) * (float64(c) - n/20.0) / (n / 20.0)
		}
		if chi > 43.820 {
			t.Errorf("seed %d: chi-square %.2f", seed, chi)
		}
		d, below := 0.0, 0
		for i, c := range fine {
			below += c
			d = math.Max(d, math.Abs(float64(below)/n-float64(i+1)/bins))
		}
		if d*math.Sqrt(n) > 1.62762 {
			t.Errorf("seed %d: D·√n = %.3f", seed, d*math.Sqrt(n))
		}
	}
}
