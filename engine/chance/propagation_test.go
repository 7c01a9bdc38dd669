package chance

import (
	"math"
	"slices"
	"testing"
)

// Worked examples of the propagation of distributions, JCGM 101:2008 (GUM
// Supplement 1) clause 9.2: the sum of four inputs, sampled by inversion. The
// exact values beside the printed ones are closed forms (normal; Irwin-Hall and
// its convolution with a wide rectangle) worked out separately. Tolerances are five
// standard errors at a million trials, with a fixed seed.

const trials = 1_000_000

type summary struct{ mean, deviation, low, high float64 }

// propagate sums four draws and returns the 95 % interval between P2.5 and P97.5.
func propagate(seed uint64, draw func(input int, u float64) float64) summary {
	s, sums := NewStream(seed, 101), make([]float64, trials)
	total, squares := 0.0, 0.0
	for i := range sums {
		for input := range 4 {
			sums[i] += draw(input, s.Uniform())
		}
		total += sums[i]
		squares += sums[i] * sums[i]
	}
	slices.Sort(sums)
	mean := total / trials
	return summary{mean, math.Sqrt(squares/trials - mean*mean), Quantile(sums, 0.025, HF7), Quantile(sums, 0.975, HF7)}
}

func (s summary) check(t *testing.T, deviation, end, meanWithin, deviationWithin, endWithin float64) {
	t.Helper()
	if math.Abs(s.mean) > meanWithin || math.Abs(s.deviation-deviation) > deviationWithin ||
		math.Abs(s.low+end) > endWithin || math.Abs(s.high-end) > endWithin {
		t.Errorf("mean %v deviation %v interval %v to %v; want 0, %v and ±%v", s.mean, s.deviation, s.low, s.high, deviation, end)
	}
}

func rectangle(deviation, u float64) float64 { return deviation * math.Sqrt(3) * (2*u - 1) }

// Clause 9.2.2, Table 2: u = 2, ±3.92 (exact 3.919927969).
func TestFourNormals(t *testing.T) {
	propagate(922, func(_ int, u float64) float64 { return NormalQuantile(u) }).check(t, 2, 3.919927969, 0.01, 0.007, 0.027)
}

// Clause 9.2.3, Table 3: u = 2, ±3.88 (exact 3.879406741). The normal answer 3.92 is
// outside the tolerance, so a sampler that smooths sums into normals fails here.
func TestFourRectangles(t *testing.T) {
	s := propagate(923, func(_ int, u float64) float64 { return rectangle(1, u) })
	s.check(t, 2, 3.879406741347821, 0.01, 0.007, 0.024)
	if math.Abs(s.high-3.919927969) < 0.024 {
		t.Errorf("upper end %v cannot be distinguished from the normal answer", s.high)
	}
}

// Clause 9.2.4: one rectangle ten times as wide; u = 10.1 (exact √103), ±17.0 (exact
// 17.0158141; the law of propagation gives ±19.9). Printed values cited from memory.
func TestOneWideRectangle(t *testing.T) {
	propagate(924, func(input int, u float64) float64 {
		if input == 3 {
			return rectangle(10, u)
		}
		return rectangle(1, u)
	}).check(t, math.Sqrt(103), 17.0158140999, 0.051, 0.03, 0.05)
}

// NPL report DEM-ES-011, 9.2: the logarithm of a rectangle from 0.1 to 1.1;
// printed mean -0.665, deviation 0.606; closed forms below. Five standard errors.
func TestLogOfRectangle(t *testing.T) {
	s, y := NewStream(11, 92), make([]float64, 100000)
	total, squares := 0.0, 0.0
	for i := range y {
		y[i] = Log(0.1 + s.Uniform())
		total += y[i]
		squares += y[i] * y[i]
	}
	slices.Sort(y)
	mean := total / 1e5
	deviation := math.Sqrt(squares/1e5 - mean*mean)
	low, high := Quantile(y, 0.025, HF7), Quantile(y, 0.975, HF7)
	if math.Abs(mean+0.6649002929) > 0.0096 || math.Abs(deviation-0.6062266974) > 0.0075 ||
		math.Abs(low-math.Log(0.125)) > 0.02 || math.Abs(high-math.Log(1.075)) > 0.0023 {
		t.Errorf("mean %v deviation %v interval %v to %v", mean, deviation, low, high)
	}
}

// Ten normal items of mean 100 and deviation 20 that share a factor: P90 of the
// sum by closed form 1000 + Φ⁻¹(.9)·√(4000·(1+9ρ)). With ρ = 1 quantiles add
// (Fréchet's upper bound). Five standard errors of a P90 at 100,000 draws, each
// 0.0054057 deviations (√(p(1−p)/n)/φ, closed form).
func TestSumOfDependentItems(t *testing.T) {
	for _, c := range []struct{ rho, p90 float64 }{
		{0, 1081.0524377215}, {0.2, 1135.6266693895}, {0.3, 1155.9074768708}, {0.5, 1190.0848156305}, {1, 1256.3103131089},
	} {
		s, sums := NewStream(10, 90), make([]float64, 100000)
		for i := range sums {
			shared := math.Sqrt(c.rho) * NormalQuantile(s.Uniform())
			for range 10 {
				sums[i] += 100 + 20*(shared+math.Sqrt(1-c.rho)*NormalQuantile(s.Uniform()))
			}
		}
		slices.Sort(sums)
		deviation := math.Sqrt(4000 * (1 + 9*c.rho))
		if got := Quantile(sums, 0.9, HF8); math.Abs(got-c.p90) > 5*0.0054057*deviation {
			t.Errorf("ρ = %v: P90 %v, want %v", c.rho, got, c.p90)
		}
	}
	if got := 10 * (100 + 20*NormalQuantile(0.9)); !near(got, 1256.3103131089, 1e-12) {
		t.Errorf("quantiles of comonotonic items add to %v", got)
	}
}
