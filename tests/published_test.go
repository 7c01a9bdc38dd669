package tests

import (
	"math"
	"slices"
	"testing"

	"underpaint/engine/chance"
	"underpaint/engine/network"
)

// damagedPlaces is a car with n places that rust with probability p each and share one
// factor with correlation rho, built from the engine's own grid, normal functions and
// sampler.
func damagedPlaces(t *testing.T, rho float64, points int) (at []float64, post *network.NestedPosterior) {
	t.Helper()
	const reach = 7.0
	root := make([]float64, points)
	sum := 0.0
	for i := range root {
		z := reach * (2*float64(i)/float64(points-1) - 1)
		at = append(at, math.Sqrt(rho)*z)
		root[i] = chance.Exp(-z * z / 2)
		sum += root[i]
	}
	for i := range root {
		root[i] /= sum
	}
	post, err := network.Nested{Root: root}.Condition()
	if err != nil {
		t.Fatal(err)
	}
	return at, post
}

func holed(at, p, rho float64) float64 {
	return chance.NormalCDF((at - chance.NormalQuantile(1-p)) / math.Sqrt(1-rho))
}

// TestOneFactorCounts compares the number of damaged places with published and
// recomputed one-factor distributions. At rho .5 and p .5 the count is uniform (a
// property of the equicorrelated normal orthant); the others were worked out by
// numerical integration outside the project.
func TestOneFactorCounts(t *testing.T) {
	cases := []struct {
		n      int
		p, rho float64
		want   []float64
	}{
		{5, .5, .5, []float64{1. / 6, 1. / 6, 1. / 6, 1. / 6, 1. / 6, 1. / 6}},
		{8, .2, .3, []float64{.3250899040, .2520220670, .1726582735, .1118516279, .0685804007, .0390911277, .0199527046, .0084181235, .0023357711}},
		{10, .1, .5, []float64{.5966777678, .1728800894, .0873873814, .0520646111, .0333307323, .0220415273, .0146962452, .0096715278, .0061139541, .0035306870, .0016054769}},
	}
	for _, c := range cases {
		// The grid of the car factor has 25 points; a fine one shows that the remaining
		// difference is the grid's error alone.
		for points, tolerance := range map[int]float64{25: 5e-5, 401: 1e-9} {
			at, post := damagedPlaces(t, c.rho, points)
			exact := countLaw(at, post.Root(), c.n, c.p, c.rho)
			for k, want := range c.want {
				if math.Abs(exact[k]-want) > tolerance {
					t.Errorf("n %d, p %g, rho %g, %d points: %d damaged: %.10f, published %.10f", c.n, c.p, c.rho, points, k, exact[k], want)
				}
			}
		}
		at, post := damagedPlaces(t, c.rho, 25)
		drawn := make([]float64, c.n+1)
		const cars = 100000
		s, d := chance.NewStream(11, uint64(c.n)), network.NestedDraw{}
		for range cars {
			post.Sample(&s, &d)
			k := 0
			for range c.n {
				if s.Uniform() < holed(at[d.Root], c.p, c.rho) {
					k++
				}
			}
			drawn[k] += 1.0 / cars
		}
		for k, want := range c.want {
			if math.Abs(drawn[k]-want) > 5*math.Sqrt(want/cars) {
				t.Errorf("n %d, p %g, rho %g: %d damaged drawn: %.5f, published %.5f", c.n, c.p, c.rho, k, drawn[k], want)
			}
		}
	}
}

// countLaw is the distribution of the number of damaged places, without drawing.
func countLaw(at, weight []float64, n int, p, rho float64) []float64 {
	law := make([]float64, n+1)
	for r, w := range weight {
		counts := []float64{1}
		for range n {
			counts = oneMore(counts, holed(at[r], p, rho))
		}
		for k, v := range counts {
			law[k] += w * v
		}
	}
	return law
}

// oneMore adds a place that is damaged with probability p to the distribution of the
// count.
func oneMore(counts []float64, p float64) []float64 {
	out := make([]float64, len(counts)+1)
	for k, v := range counts {
		out[k] += v * (1 - p)
		out[k+1] += v * p
	}
	return out
}

// TestGroupLife adds up lines that are either damaged or not: Klugman, Panjer and
// Willmot, Loss Models, example 9.15. 50 lives of 50,000 (70 %) or 100,000 (30 %), 25
// of 75,000 or 150,000, each claimed with probability .01; moments and F(150000)
// recomputed.
func TestGroupLife(t *testing.T) {
	const cars = 100000
	totals := make([]int64, cars)
	mean := 0.0
	for n := range totals {
		s := chance.NewStream(12, uint64(n))
		for life := range 75 {
			claimed, size := s.Uniform() < .01, s.Uniform()
			amount := int64(50000)
			if life >= 50 {
				amount = 75000
			}
			if size >= .7 {
				amount *= 2
			}
			if claimed {
				totals[n] += amount
			}
		}
		mean += float64(totals[n]) / cars
	}
	variance, below := 0.0, 0.0
	for _, v := range totals {
		variance += (float64(v) - mean) * (float64(v) - mean) / (cars - 1)
		if v <= 150000 {
			below += 1.0 / cars
		}
	}
	closeTo(t, "mean", mean, 56875, 5*math.Sqrt(5001984375.0/cars))
	closeTo(t, "variance", variance, 5001984375, .03*5001984375)
	closeTo(t, "F(150000)", below, .92034269, 5*math.Sqrt(.92*.08/cars))
}

// TestGroupDental is a compound sum with ties: Loss Models, example 9.5; quantiles
// in units of 25 (12, 19, 23, 26 at .5, .8, .9, .95) and mean 12.58 recomputed.
func TestGroupDental(t *testing.T) {
	number := []float64{.05, .10, .15, .20, .25, .15, .06, .03, .01}
	size := []float64{.15, .20, .25, .125, .075, .05, .05, .05, .025, .025}
	const cars = 100000
	totals, mean := make([]int64, cars), 0.0
	for n := range totals {
		s := chance.NewStream(13, uint64(n))
		claims := pick(number, s.Uniform())
		for range claims {
			totals[n] += int64(pick(size, s.Uniform()) + 1)
		}
		mean += float64(totals[n]) / cars
	}
	slices.Sort(totals)
	closeTo(t, "mean", mean, 12.58, 5*math.Sqrt(58.7464/cars))
	for p, want := range map[float64]float64{.5: 12, .8: 19, .9: 23, .95: 26} {
		closeTo(t, "quantile", chance.QuantileMinor(totals, p), want, 0)
	}
}

func pick(p []float64, u float64) int {
	for k, v := range p {
		if u < v {
			return k
		}
		u -= v
	}
	return len(p) - 1
}

func closeTo(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: %g, published %g, tolerance %g", what, got, want, tolerance)
	}
}
