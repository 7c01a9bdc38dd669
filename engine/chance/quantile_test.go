package chance

import (
	"math"
	"slices"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
	"gonum.org/v1/gonum/stat"
)

var oneToTen = []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}

// The sample 1..10 by the definitions of Hyndman and Fan (1996), as the
// documentation of R's stats::quantile words them, worked out in exact fractions
// (types 1, 4 and 6 to 9 also agree with numpy 1.24; its type 3 does not follow the
// rule at ties).
func TestQuantileOneToTen(t *testing.T) {
	chances := [7]float64{0.10, 0.25, 0.50, 0.75, 0.80, 0.90, 0.95}
	for rule, want := range map[QuantileRule][7]float64{
		HF1: {1, 3, 5, 8, 8, 9, 10},
		HF2: {1.5, 3, 5.5, 8, 8.5, 9.5, 10},
		HF3: {1, 2, 5, 8, 8, 9, 10},
		HF4: {1, 2.5, 5, 7.5, 8, 9, 9.5},
		HF5: {1.5, 3, 5.5, 8, 8.5, 9.5, 10},
		HF6: {1.1, 2.75, 5.5, 8.25, 8.8, 9.9, 10},
		HF7: {1.9, 3.25, 5.5, 7.75, 8.2, 9.1, 9.55},
		HF8: {41.0 / 30, 35.0 / 12, 5.5, 97.0 / 12, 8.6, 289.0 / 30, 10},
		HF9: {1.4, 2.9375, 5.5, 8.0625, 8.575, 9.6, 10},
	} {
		for i, p := range chances {
			if got := Quantile(oneToTen, p, rule); !near(got, want[i], 1e-12) {
				t.Errorf("HF%d at %v: %v, want %v", rule, p, got, want[i])
			}
		}
	}
}

// Gauge readings of the NIST/SEMATECH e-Handbook, 7.2.6.2: P90 is 95.1981 (rule
// HF6; 95.19807 unrounded); HF7 and HF8 worked out from the same readings.
func TestQuantileGaugeReadings(t *testing.T) {
	x := []float64{95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610, 95.1591, 95.1195, 95.1772, 95.0925, 95.1990, 95.1682}
	slices.Sort(x)
	for rule, want := range map[QuantileRule]float64{HF6: 95.19807, HF7: 95.19568, HF8: 95.197243} {
		if got := Quantile(x, 0.9, rule); math.Abs(got-want) > 4e-7 {
			t.Errorf("HF%d: %.7f, want %.7f", rule, got, want)
		}
	}
}

// A position that is whole on paper must be whole here, although n·p is not in binary:
// 0.55·100 is 55.000000000000007, 0.07·100 is 7.000000000000001, 0.29·100 is 28.999999999999996.
func TestQuantileWholePlaces(t *testing.T) {
	x := make([]float64, 100)
	for i := range x {
		x[i] = float64(i + 1)
	}
	for percent := 1; percent < 100; percent++ {
		p, k := float64(percent)/100, float64(percent)
		if a, b := Quantile(x, p, HF1), Quantile(x, p, HF2); a != k || b != k+0.5 {
			t.Errorf("%d %%: HF1 %v and HF2 %v, want %v and %v", percent, a, b, k, k+0.5)
		}
	}
}

// plottingPosition is the chance that HF4 to HF9 assign to the k-th of n values (Hyndman
// and Fan 1996, section 3).
func plottingPosition(rule QuantileRule, k, n float64) float64 {
	switch rule {
	case HF4:
		return k / n
	case HF5:
		return (k - 0.5) / n
	case HF6:
		return k / (n + 1)
	case HF7:
		return (k - 1) / (n - 1)
	case HF8:
		return (k - 1.0/3) / (n + 1.0/3)
	}
	return (k - 3.0/8) / (n + 1.0/4)
}

// byPlottingPositions works out HF4 to HF9 in another way: it searches the plotting
// positions and interpolates between them.
func byPlottingPositions(x []float64, p float64, rule QuantileRule) float64 {
	n := float64(len(x))
	for k := 1; k <= len(x); k++ {
		here := plottingPosition(rule, float64(k), n)
		if p <= here {
			if k == 1 {
				return x[0]
			}
			before := plottingPosition(rule, float64(k-1), n)
			return x[k-2] + (x[k-1]-x[k-2])*(p-before)/(here-before)
		}
	}
	return x[len(x)-1]
}

func TestQuantileAgainstPlottingPositions(t *testing.T) {
	s := NewStream(6, 1)
	for range 2000 {
		x := make([]float64, 2+s.Uint64()%30)
		for i := range x {
			x[i] = 100 * s.Uniform()
		}
		slices.Sort(x)
		p := s.Uniform()
		for rule := HF4; rule <= HF9; rule++ {
			if got, want := Quantile(x, p, rule), byPlottingPositions(x, p, rule); math.Abs(got-want) > 1e-10 {
				t.Fatalf("HF%d of %d at %v: %v, want %v", rule, len(x), p, got, want)
			}
		}
	}
}

// Oracle: gonum stat, whose Empirical is HF1 and whose LinInterp is HF4. Its own
// test table for 1..10 is part of it.
func TestQuantileAgainstGonum(t *testing.T) {
	empirical := []float64{1, 1, 1, 2, 5, 5, 6, 9, 9, 10, 10}
	joined := []float64{1, 1, 1, 1.5, 4.5, 5, 5.5, 8.5, 9, 9.5, 10}
	for i, p := range []float64{0, 0.05, 0.1, 0.15, 0.45, 0.5, 0.55, 0.85, 0.9, 0.95, 1} {
		if a, b := Quantile(oneToTen, p, HF1), Quantile(oneToTen, p, HF4); a != empirical[i] || !near(b, joined[i], 1e-14) {
			t.Errorf("at %v: HF1 %v HF4 %v, gonum's table has %v and %v", p, a, b, empirical[i], joined[i])
		}
	}
	s := NewStream(6, 2)
	for range 2000 {
		x := make([]float64, 1+s.Uint64()%40)
		for i := range x {
			x[i] = math.Floor(20 * s.Uniform()) // ties
		}
		slices.Sort(x)
		p := s.Uniform()
		a, b := stat.Quantile(p, stat.Empirical, x, nil), stat.Quantile(p, stat.LinInterp, x, nil)
		if Quantile(x, p, HF1) != a || math.Abs(Quantile(x, p, HF4)-b) > 1e-11 {
			t.Fatalf("%v at %v: HF1 %v HF4 %v, gonum %v %v", x, p, Quantile(x, p, HF1), Quantile(x, p, HF4), a, b)
		}
	}
}

func TestQuantileProperties(t *testing.T) {
	properties := seeded(1996)
	sample := gen.SliceOfN(12, gen.Float64Range(-1e6, 1e6))
	properties.Property("does not decrease with p, stays inside, meets its reflection", prop.ForAll(
		func(x []float64, p, q float64) bool {
			slices.Sort(x)
			reflected := make([]float64, len(x))
			for i, v := range x {
				reflected[len(x)-1-i] = -v
			}
			if p > q {
				p, q = q, p
			}
			for rule := HF1; rule <= HF9; rule++ {
				a, b := Quantile(x, p, rule), Quantile(x, q, rule)
				if a > b+1e-9 || a < x[0] || b > x[len(x)-1] {
					return false
				}
				symmetric := rule == HF2 || rule >= HF5
				if symmetric && math.Abs(Quantile(reflected, 1-p, rule)+a) > 1e-6 {
					return false
				}
			}
			return true
		}, sample, gen.Float64Range(0, 1), gen.Float64Range(0, 1)))
	properties.Property("whole numbers as rule HF7", prop.ForAll(
		func(x []int64, p float64) bool {
			if len(x) == 0 {
				return true
			}
			slices.Sort(x)
			floats := make([]float64, len(x))
			for i, v := range x {
				floats[i] = float64(v)
			}
			return QuantileMinor(x, p) == Quantile(floats, p, HF7)
		}, gen.SliceOf(gen.Int64Range(-1<<52, 1<<52)), gen.Float64Range(0, 1)))
	properties.TestingRun(t)
}

func TestQuantileEdges(t *testing.T) {
	for rule := HF1; rule <= HF9; rule++ {
		for _, p := range []float64{0, 0.3, 1} {
			if got := Quantile([]float64{42}, p, rule); got != 42 {
				t.Errorf("HF%d of a single 42 at %v is %v", rule, p, got)
			}
		}
		if a, b := Quantile(oneToTen, 0, rule), Quantile(oneToTen, 1, rule); a != 1 || b != 10 {
			t.Errorf("HF%d ends are %v and %v", rule, a, b)
		}
	}
	if got := QuantileMinor([]int64{100, 250}, 0.9); got != 235 {
		t.Errorf("P90 of 100 and 250 is %v, want 235", got)
	}
	mustPanic(t, "an empty sample", func() { Quantile(nil, 0.5, HF7) })
	mustPanic(t, "an empty sample of whole numbers", func() { QuantileMinor(nil, 0.5) })
	mustPanic(t, "p above 1", func() { Quantile(oneToTen, 1.0000001, HF7) })
	mustPanic(t, "p not a number", func() { QuantileMinor([]int64{1}, math.NaN()) })
	mustPanic(t, "an unsorted sample", func() { Quantile([]float64{2, 1}, 0.5, HF7) })
	mustPanic(t, "an unsorted sample of whole numbers", func() { QuantileMinor([]int64{2, 1}, 0.5) })
	mustPanic(t, "a NaN in the sample", func() { Quantile([]float64{1, math.NaN()}, 0.5, HF7) })
	mustPanic(t, "an unknown rule", func() { Quantile(oneToTen, 0.5, 0) })
	mustPanic(t, "an unknown rule", func() { Quantile(oneToTen, 0.5, 10) })
}
