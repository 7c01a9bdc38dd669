package scores

import (
	"math"
	"slices"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/chance"
)

// By hand from the definition E|X−y| − ½E|X−X'|, in exact fractions.
func TestCRPSOfSmallSamples(t *testing.T) {
	for _, c := range []struct {
		sample            []float64
		found, want, fair float64
	}{
		{[]float64{1, 2, 4}, 2.5, 0.5, 1.0 / 6},
		{[]float64{1, 2, 4}, 0, 5.0 / 3, 4.0 / 3},
		{[]float64{1, 2, 3, 4, 5}, 3, 0.4, 0.2},
		{[]float64{0, 0, 0, 10}, 0, 0.625, 0},
	} {
		check(t, "CRPS", CRPS(c.sample, c.found), c.want, 1e-12)
		check(t, "fair CRPS", FairCRPS(c.sample, c.found), c.fair, 1e-12)
		minor := make([]int64, len(c.sample))
		for i, x := range c.sample {
			minor[i] = int64(x * 10)
		}
		check(t, "CRPS of whole numbers", CRPS(minor, int64(c.found*10)), 10*c.want, 1e-12)
	}
	check(t, "one draw is the plain miss", CRPS([]int64{7}, 10), 3, 0)
}

// Printed in the README of the Python package properscoring for N(0, 1); the last
// two by quadrature.
func TestNormalCRPS(t *testing.T) {
	for _, c := range [][4]float64{
		{0, 1, -2, 1.45279182}, {0, 1, -1, .60244136}, {0, 1, 0, .23369498}, {0, 1, 1, .60244136}, {0, 1, 2, 1.45279182},
	} {
		check(t, "normal CRPS", NormalCRPS(c[0], c[1], c[2]), c[3], 1e-8)
	}
	check(t, "N(0,1) at 0", NormalCRPS(0, 1, 0), .2336949772551, 1e-12)
	check(t, "N(1000,200) at 1300", NormalCRPS(1000, 200, 1300), 198.8848007955, 1e-9)
	check(t, "N(1000,200) at 1000", NormalCRPS(1000, 200, 1000), 46.7389954510, 1e-9)
	check(t, "no spread", NormalCRPS(5, 0, 7), 2, 0)
	// The same README: skill of N(0,1) against always saying 0, over −2..2.
	var ours, zero float64
	for y := -2.0; y <= 2; y++ {
		ours += NormalCRPS(0, 1, y)
		zero += math.Abs(y)
	}
	check(t, "skill", 1-ours/zero, .2759731106863, 1e-12)
}

// quantiles returns a sample that represents N(mean, sd).
func quantiles(mean, sd float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = mean + sd*chance.NormalQuantile((float64(i)+0.5)/float64(n))
	}
	return out
}

// The sample score tends to the closed form; amounts of ten million with a spread of a
// few units lose no digits.
func TestCRPSSampleAgainstClosedForm(t *testing.T) {
	for _, mean := range []float64{0, 1e10} {
		for _, y := range []float64{-2, 0, 0.7, 3} {
			check(t, "sample", CRPS(quantiles(mean, 1, 20001), mean+y), NormalCRPS(mean, 1, mean+y), 3e-5)
		}
	}
	// A correct forecast of N(0,1) scores 1/√π on average; the fair score does so even
	// with 5 draws.
	r := newRandom(1)
	fair, plain := make([]float64, 20000), make([]float64, 20000)
	for i := range fair {
		s := make([]float64, 5)
		for k := range s {
			s[k] = r.normal(0, 1)
		}
		slices.Sort(s)
		y := r.normal(0, 1)
		fair[i], plain[i] = FairCRPS(s, y), CRPS(s, y)
	}
	mean, se, _ := Average(fair)
	check(t, "mean fair score", mean, 1/math.Sqrt(math.Pi), 5*se)
	// Negative control: the plain score of 5 draws is off by a fifth of that.
	if mean, se, _ = Average(plain); near(mean, 1/math.Sqrt(math.Pi), 5*se) {
		t.Error("the plain score of five draws passes for fair")
	}
}

// The average of a strictly proper score is smallest for the true forecast (Gneiting
// and Raftery 2007). The average is over a fine grid of outcomes of N(0, 1).
func TestScoresAreProper(t *testing.T) {
	outcomes := quantiles(0, 1, 400)
	crps := func(mean, sd float64) (sum float64) {
		s := quantiles(mean, sd, 400)
		for _, y := range outcomes {
			sum += CRPS(s, y)
		}
		return sum / 400
	}
	interval := func(mean, sd float64) (sum float64) {
		for _, y := range outcomes {
			sum += IntervalScore(mean-z90*sd, mean+z90*sd, y, Outside)
		}
		return sum / 400
	}
	bestCRPS, bestInterval := crps(0, 1), interval(0, 1)
	properties := seeded(20260601, 150)
	properties.Property("a wrong forecast scores worse", prop.ForAll(func(mean, logSD float64) bool {
		if math.Abs(mean) < 0.1 && math.Abs(logSD) < 0.1 {
			return true // too close to the truth for a grid
		}
		sd := math.Exp(logSD)
		return crps(mean, sd) > bestCRPS && interval(mean, sd) > bestInterval
	}, gen.Float64Range(-2, 2), gen.Float64Range(-1.5, 1.5)))
	properties.TestingRun(t)
	// Negative control: the absolute miss of the middle ignores the spread, and the
	// width alone rewards a range that is too narrow.
	if crps(0, 0.3) <= bestCRPS || interval(0, 0.3) <= bestInterval {
		t.Error("too narrow a forecast was rewarded")
	}
}

func TestPITOfSamples(t *testing.T) {
	s := []int64{1, 2, 2, 2, 5}
	for _, c := range []struct {
		found int64
		u     float64
		want  float64
	}{{0, .5, 0}, {1, .5, .1}, {2, .5, .5}, {2, 0, .2}, {2, 1, .8}, {3, .5, .8}, {5, .5, .9}, {6, .5, 1}} {
		check(t, "place", RandomPIT(s, c.found, c.u), c.want, 1e-15)
	}
	check(t, "mid-rank", PIT(s, 2), .5, 1e-15)
	check(t, "lognormal ends", LognormalPIT(100, 200, 100), .1, 1e-12)
	check(t, "lognormal middle", LognormalPIT(100, 400, 200), .5, 1e-12)
	check(t, "lognormal top", LognormalPIT(100, 200, 200), .9, 1e-12)
	check(t, "nothing", LognormalPIT(100, 200, 0), 0, 0)
}

// With half of all draws equal, only the randomised place is uniform. Chi-square with 9
// degrees: 27.877 at 0.1 % (any table).
func TestPITWithAnAtom(t *testing.T) {
	r := newRandom(2)
	draw := func() float64 { return math.Max(0, r.normal(0, 1)) }
	s := make([]float64, 4000)
	for i := range s {
		s[i] = draw()
	}
	slices.Sort(s)
	var even, half [10]int
	for range 2000 {
		y := draw()
		even[min(9, int(10*RandomPIT(s, y, r.s.Uniform())))]++
		half[min(9, int(10*PIT(s, y)))]++
	}
	if c := chiSquare(even[:]); c > 27.877 {
		t.Errorf("randomised place is not even: chi-square %.1f", c)
	}
	if c := chiSquare(half[:]); c < 27.877 {
		t.Errorf("mid-rank passes for even over an atom: chi-square %.1f", c)
	}
}

// chiSquare is Pearson's statistic against equal counts.
func chiSquare(count []int) (sum float64) {
	n := 0
	for _, c := range count {
		n += c
	}
	expected := float64(n) / float64(len(count))
	for _, c := range count {
		sum += (float64(c) - expected) * (float64(c) - expected) / expected
	}
	return sum
}

func TestSampleMistakesPanic(t *testing.T) {
	mustPanic(t, "empty", func() { CRPS(nil, 1.0) })
	mustPanic(t, "unsorted", func() { CRPS([]int64{2, 1}, 1) })
	mustPanic(t, "NaN", func() { PIT([]float64{math.NaN()}, 1) })
	mustPanic(t, "fair of one", func() { FairCRPS([]int64{1}, 1) })
	mustPanic(t, "share", func() { RandomPIT([]int64{1}, 1, 1.5) })
	mustPanic(t, "negative spread", func() { NormalCRPS(0, -1, 1) })
	mustPanic(t, "range without width", func() { LognormalPIT(5, 5, 5) })
}
