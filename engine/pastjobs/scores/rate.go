package scores

import "strconv"

// Rate is an unknown probability, such as how often a floor with holes was expected
// sound: a beta distribution with whole-number parameters. A and B count hits and
// misses, including those that the prior is worth; both are at least 1.
type Rate struct{ A, B int }

// Seen is the rate after hits hits in n more tries (conjugate update of a binomial
// probability: Bayesian Data Analysis, section 2.4).
func (r Rate) Seen(hits, n int) Rate {
	r.check()
	if hits < 0 || hits > n {
		panic("engine: internal error: " + strconv.Itoa(hits) + " hits in " + strconv.Itoa(n) + " tries")
	}
	return Rate{r.A + hits, r.B + n - hits}
}

// Mean is the mean of the rate.
func (r Rate) Mean() float64 {
	r.check()
	return float64(r.A) / float64(r.A+r.B)
}

// Variance is the variance of the rate.
func (r Rate) Variance() float64 {
	r.check()
	a, b := float64(r.A), float64(r.B)
	return float64(a*b) / float64((a+b)*(a+b)*(a+b+1))
}

// Quantile is the p-quantile of the rate, 0 < p < 1, from P(rate ≤ x) = P(at least A
// hits in A+B−1 tries with probability x) (Abramowitz and Stegun 1964, 26.5.24).
func (r Rate) Quantile(p float64) float64 {
	r.check()
	if !(p > 0 && p < 1) {
		panic("engine: internal error: quantile of a rate outside 0 to 1")
	}
	return solve(func(x float64) bool { _, up := tails(r.A, r.A+r.B-1, x); return up < p })
}

// Hits is the probability of exactly k hits in n future tries (beta-binomial).
func (r Rate) Hits(k, n int) float64 {
	r.check()
	if k < 0 || k > n {
		return 0
	}
	// Start from no hits, B(B+1)…/((A+B)…), and go up by ratios.
	p := 1.0
	for i := range n {
		p = float64(p * (float64(r.B+i) / float64(r.A+r.B+i)))
	}
	for i := range k {
		p = float64(p * (float64(n-i) / float64(i+1)) * (float64(r.A+i) / float64(r.B+n-i-1)))
	}
	return p
}

func (r Rate) check() {
	if r.A < 1 || r.B < 1 {
		panic("engine: internal error: rate without a prior")
	}
}
