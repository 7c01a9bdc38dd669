package network_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"underpaint/engine/network"
)

// Conditioning on grids, compared with models whose posterior is known in closed form.
// The root is a fine grid of a rate or of a shared normal factor, and the leaves carry
// the evidence.

// gridded conditions a root with the given values and weights on leaves of one pocket.
// It returns the posterior mean and variance of the value, and the evidence.
func gridded(t *testing.T, value, weight []float64, likelihoods ...func(x float64) float64) (mean, variance, evidence float64) {
	t.Helper()
	pocket := network.Pocket{Weights: []float64{1}}
	for _, l := range likelihoods {
		pocket.Leaves = append(pocket.Leaves, funcLeaf(func(r, _, _ int) float64 { return l(value[r]) }))
	}
	post := conditioned(t, network.Nested{Root: weight, Groups: []network.Group{{Weights: []float64{1}, Pockets: []network.Pocket{pocket}}}})
	for r, w := range post.Root() {
		mean += w * value[r]
	}
	for r, w := range post.Root() {
		variance += w * (value[r] - mean) * (value[r] - mean)
	}
	return mean, variance, math.Exp(post.LogEvidence())
}

// rates are the midpoints of equal cells on 0 to 1, with the weights of a beta prior.
func rates(a, b float64) (value, weight []float64) {
	const cells = 20000
	prior := distuv.Beta{Alpha: a, Beta: b}
	for i := range cells {
		value = append(value, (float64(i)+.5)/cells)
		weight = append(weight, prior.Prob(value[i])/cells)
	}
	return value, weight
}

// A beta prior and a binomial count give a beta posterior. 437 girls in 980 births is
// an example in A. Gelman and others, "Bayesian Data Analysis" (figures from memory).
// The other cases use the closed form mean = α/(α+β) and
// variance = αβ/((α+β)²(α+β+1)). The probability of the count itself is
// beta-binomial: 1/11 each for a flat prior and ten trials.
func TestRateSeenInACount(t *testing.T) {
	for name, row := range map[string]struct {
		a, b           float64
		yes, of        int
		mean, variance float64
	}{
		"a birth rate":  {1, 1, 437, 980, .4460285132, .0158543433 * .0158543433},
		"three of ten":  {2, 8, 3, 10, .25, .0089285714},
		"none of a few": {1, 1, 0, 12, 1. / 14, 13. / (14 * 14 * 15)},
	} {
		value, weight := rates(row.a, row.b)
		var one []func(x float64) float64
		for n := range row.of { // one leaf for each trial
			yes := n < row.yes
			one = append(one, func(x float64) float64 {
				if yes {
					return x
				}
				return 1 - x
			})
		}
		mean, variance, _ := gridded(t, value, weight, one...)
		near(t, name+", mean", mean, row.mean, 2e-8)
		near(t, name+", variance", variance, row.variance, 2e-8)
	}
	for x, want := range map[int]float64{0: .2105263158, 1: .2476780186, 2: .2089783282, 3: .1486068111, 4: .0928792570} {
		for _, prior := range []struct{ a, b, want float64 }{{1, 1, 1. / 11}, {2, 8, want}} {
			value, weight := rates(prior.a, prior.b)
			_, _, evidence := gridded(t, value, weight, func(p float64) float64 { return distuv.Binomial{N: 10, P: p}.Prob(float64(x)) })
			near(t, "chance of the count", evidence, prior.want, 2e-8)
		}
	}
}

// Two standard normals have correlation .5 through a shared factor K. Given X = 1.2, Y
// has mean .6 and variance .75 (any text on the bivariate normal). Given only X > t,
// E[X | X > t] = φ(t)/(1 − Φ(t)) and Y has half that mean; Var(Y | X > t) is from
// G. M. Tallis, J. R. Statist. Soc. B 23, 1961 and S. Rosenbaum, same volume (from
// memory; derived again outside this project).
func TestOneNormalSeenThroughAnother(t *testing.T) {
	var value, weight []float64
	for i := range 801 {
		x := -8 + .02*float64(i)
		value, weight = append(value, x), append(weight, math.Exp(-x*x/2)*.02/math.Sqrt(2*math.Pi))
	}
	half := math.Sqrt(.5)
	y := func(likelihood func(k float64) float64) (mean, variance float64) {
		m, v, _ := gridded(t, value, weight, likelihood)
		return half * m, .5*v + .5
	}
	mean, variance := y(func(k float64) float64 { return distuv.UnitNormal.Prob((1.2 - half*k) / half) })
	near(t, "mean given X = 1.2", mean, .6, 1e-9)
	near(t, "variance given X = 1.2", variance, .75, 1e-9)
	for _, row := range []struct{ above, x, variance float64 }{
		{.5, .7978845608, .8408450569}, {.8, 1.3998096020, .8046606405}, {.9, 1.7549833193, .7922837923},
	} {
		limit := distuv.UnitNormal.Quantile(row.above)
		mean, variance := y(func(k float64) float64 { return distuv.UnitNormal.Survival((limit - half*k) / half) })
		near(t, "mean given X above a limit", mean, row.x/2, 1e-9)
		near(t, "variance given X above a limit", variance, row.variance, 1e-9)
	}
}
