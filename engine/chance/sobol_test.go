package chance

import (
	"math"
	"testing"
)

// TestSobolFirstPoints compares the first points with those in SciPy's tests
// (scipy.stats, test_qmc.py), whose sequence has the direction numbers of Joe and Kuo
// (2008).
func TestSobolFirstPoints(t *testing.T) {
	want := [][3]float64{{0, 0, 0}, {.5, .5, .5}, {.75, .25, .25}, {.25, .75, .75}, {.375, .375, .625}, {.875, .875, .125}, {.625, .125, .875}, {.125, .625, .375}}
	for n, point := range want {
		for d, v := range point {
			if got := float64(unscrambled(uint32(n), &sobolDirections()[d])) * 0x1p-32; got != v {
				t.Errorf("point %d, coordinate %d: %v, want %v", n, d+1, got, v)
			}
		}
	}
}

// TestSobolAgainstSciPy compares later points, in units of 2^-30, with those of SciPy
// 1.10.1 (scipy.stats.qmc.Sobol(96, scramble=False, bits=30)).
func TestSobolAgainstSciPy(t *testing.T) {
	dimensions := [7]int{1, 2, 3, 10, 33, 64, 96}
	for n, want := range map[uint32][7]uint32{
		2:     {805306368, 268435456, 268435456, 805306368, 268435456, 805306368, 268435456},
		3:     {268435456, 805306368, 805306368, 268435456, 805306368, 268435456, 805306368},
		777:   {743440384, 1005584384, 175112192, 347078656, 120586240, 458227712, 170917888},
		16383: {65536, 858980352, 807862272, 700121088, 226951168, 698417152, 423034880},
	} {
		for k, d := range dimensions {
			if got := unscrambled(n, &sobolDirections()[d-1]) >> 2; got != want[k] {
				t.Errorf("point %d, coordinate %d: %d, want %d", n, d, got, want[k])
			}
		}
	}
}

// boxes counts the points among the first 2^m that share a box of 2^-a by 2^-b,
// a + b = m, in two coordinates with another point.
func boxes(at func(n uint32) (x, y float64), m int) (shared int) {
	for a := range m + 1 {
		b := m - a
		met := make([]bool, 1<<m)
		for n := range uint32(1 << m) {
			x, y := at(n)
			box := int(x*float64(int(1)<<a))<<b | int(y*float64(int(1)<<b))
			if met[box] {
				shared++
			}
			met[box] = true
		}
	}
	return shared
}

// TestScrambledPointsAreANet checks that after scrambling the first two coordinates
// still have one point in every box of the same volume, as (0, m, 2)-nets in base 2 do
// (H. Niederreiter, 1987; nested scrambling preserves them: A. B. Owen, 1995), and that
// every single coordinate has one in every interval. As a control, random points fail.
func TestScrambledPointsAreANet(t *testing.T) {
	s := NewStream(5, 1)
	for range 20 {
		p := NewPoints(40, &s)
		out := make([]float64, 40)
		if n := boxes(func(n uint32) (float64, float64) { p.At(n, out); return out[0], out[1] }, 8); n != 0 {
			t.Errorf("%d points share a box", n)
		}
		for d := range out {
			var met [256]bool
			for n := range uint32(256) {
				if p.At(n, out); met[int(out[d]*256)] {
					t.Fatalf("coordinate %d: two points in one interval", d+1)
				}
				met[int(out[d]*256)] = true
			}
		}
	}
	if boxes(func(uint32) (float64, float64) { return s.Uniform(), s.Uniform() }, 8) == 0 {
		t.Error("random points pass as a net")
	}
}

// TestEveryPointIsUniform checks that over randomisations each single point is uniform
// and its coordinates are independent, so that means over points are unbiased.
// Chi-square with 63 degrees of freedom: 1 in 1,000 above 103.4 (NIST/SEMATECH
// e-Handbook, 1.3.6.7.4). A point without scrambling would always be the same.
func TestEveryPointIsUniform(t *testing.T) {
	const times = 1 << 14
	for _, n := range []uint32{0, 1, 100} {
		var boxes [64]float64
		s := NewStream(7, uint64(n))
		out := make([]float64, 2)
		for range times {
			p := NewPoints(2, &s)
			p.At(n, out)
			boxes[int(out[0]*8)*8+int(out[1]*8)]++
		}
		chi := 0.0
		for _, v := range boxes {
			chi += (v - times/64) * (v - times/64) / (times / 64)
		}
		if chi > 103.4 {
			t.Errorf("point %d: chi-square %.1f over 64 boxes", n, chi)
		}
	}
}

// TestSpreadOfMeans checks the spread of means over n points. For a sum of three
// coordinates the variance is 3/(12 n³), because each interval of each coordinate has
// one point (M. Stein, Technometrics 29, 1987). For prod(1 + (x − ½)) the standard
// deviation is near 3.7e-4 at 256 points (SciPy's Owen-scrambled points, 400
// randomisations), compared with 0.033 for random points.
func TestSpreadOfMeans(t *testing.T) {
	const times, n = 400, 256
	s := NewStream(9, 9)
	sum, product := 0.0, 0.0
	out := make([]float64, 3)
	for range times {
		p := NewPoints(3, &s)
		a, b := 0.0, 0.0
		for k := range uint32(n) {
			p.At(k, out)
			a += (out[0] + out[1] + out[2] - 1.5) / n
			b += ((.5+out[0])*(.5+out[1])*(.5+out[2]) - 1) / n
		}
		sum += a * a / times
		product += b * b / times
	}
	if ratio := sum / (3 / (12.0 * n * n * n)); ratio < .8 || ratio > 1.2 {
		t.Errorf("variance of a sum: %.2f times the expected one", ratio)
	}
	if sd := math.Sqrt(product); sd < 2.2e-4 || sd > 6e-4 {
		t.Errorf("standard deviation of a product: %.2g", sd)
	}
}

// TestLed checks that a stream gives the list first and then the generator from its
// start.
func TestLed(t *testing.T) {
	s, plain := StreamWithPrefix([]float64{.25, .5}, 3, 4), NewStream(3, 4)
	got := make([]float64, 5)
	got[0] = s.Uniform()
	s.Fill(got[1:])
	if got[0] != .25 || got[1] != .5 {
		t.Errorf("first %v", got[:2])
	}
	for k, v := range got[2:] {
		if want := plain.Uniform(); v != want {
			t.Errorf("number %d: %v, want %v", k+2, v, want)
		}
	}
	none := StreamWithPrefix(nil, 3, 4)
	again := NewStream(3, 4)
	if none.Uniform() != again.Uniform() {
		t.Error("an empty list changes the stream")
	}
}
