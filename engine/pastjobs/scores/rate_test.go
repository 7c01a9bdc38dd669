package scores

import (
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
	"gonum.org/v1/gonum/stat/distuv"
)

// Gelman and others, Bayesian Data Analysis, section 2.4 (from memory): 437 of 980
// births, uniform prior: mean .446, sd .016, 95 % .415 to .477. More digits, and the
// other rows, recomputed with two other libraries.
func TestRateWorkedExample(t *testing.T) {
	r := Rate{1, 1}.Seen(437, 980)
	check(t, "mean", r.Mean(), .4460285132, 1e-10)
	check(t, "variance", r.Variance(), .0158543433*.0158543433, 1e-11)
	check(t, "low", r.Quantile(.025), .41506549, 1e-8)
	check(t, "high", r.Quantile(.975), .47719977, 1e-8)
	r = Rate{2, 8}.Seen(3, 10)
	check(t, "Beta(5,15) mean", r.Mean(), .25, 0)
	check(t, "Beta(5,15) variance", r.Variance(), .0089285714, 1e-10)
	for p, want := range map[float64]float64{.1: .13393555, .5: .24154255, .9: .37752691} {
		check(t, "Beta(5,15)", r.Quantile(p), want, 1e-8)
	}
	r = Rate{1, 1}.Seen(0, 12)
	check(t, "Beta(1,13) mean", r.Mean(), .0714285714, 1e-10)
	for p, want := range map[float64]float64{.1: .0080719, .5: .05192249, .9: .16232236} {
		check(t, "Beta(1,13)", r.Quantile(p), want, 1e-8)
	}
}

func TestRateHits(t *testing.T) {
	for k := range 11 {
		check(t, "even prior", Rate{1, 1}.Hits(k, 10), 1.0/11, 1e-14)
	}
	for k, want := range []float64{.2105263158, .2476780186, .2089783282, .1486068111, .0928792570} {
		check(t, "Beta(2,8)", Rate{2, 8}.Hits(k, 10), want, 1e-10)
	}
	check(t, "more hits than tries", Rate{2, 8}.Hits(11, 10), 0, 0)
	mustPanic(t, "no prior", func() { Rate{0, 1}.Mean() })
	mustPanic(t, "hits", func() { Rate{1, 1}.Seen(3, 2) })
	mustPanic(t, "level", func() { Rate{1, 1}.Quantile(1) })
}

// Averaged over the prior, the central 80 % interval contains the rate in exactly 80
// cases of 100 (integral over the beta prior by a fine sum of its quantiles): uniform
// prior and 10 tries, Beta(2,8) and 5 tries.
func TestRateCoverageOverThePrior(t *testing.T) {
	for _, c := range []struct {
		prior Rate
		n     int
	}{{Rate{1, 1}, 10}, {Rate{2, 8}, 5}} {
		low, high := make([]float64, c.n+1), make([]float64, c.n+1)
		for k := range low {
			post := c.prior.Seen(k, c.n)
			low[k], high[k] = post.Quantile(.1), post.Quantile(.9)
		}
		inside, grid := 0.0, 20000
		for i := range grid {
			rate := distuv.Beta{Alpha: float64(c.prior.A), Beta: float64(c.prior.B)}.Quantile((float64(i) + .5) / float64(grid))
			b := distuv.Binomial{N: float64(c.n), P: rate}
			for k := range low {
				if low[k] <= rate && rate <= high[k] {
					inside += b.Prob(float64(k))
				}
			}
		}
		check(t, "coverage", inside/float64(grid), .8, 2e-4)
	}
}

func TestRateAgainstGonum(t *testing.T) {
	properties := seeded(20260606, 300)
	properties.Property("quantile", prop.ForAll(func(a, b int, p float64) bool {
		return near(distuv.Beta{Alpha: float64(a), Beta: float64(b)}.CDF(Rate{a, b}.Quantile(p)), p, 1e-9)
	}, gen.IntRange(1, 300), gen.IntRange(1, 300), gen.Float64Range(.01, .99)))
	properties.TestingRun(t)
}
