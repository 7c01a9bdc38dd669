package scores

import "strconv"

// Rate is a chance that is not known, such as how often a floor found holed was
// expected sound: a beta distribution whose parameters are whole numbers. A and B
// are hits and misses, those the prior is worth counted in; both at least 1.
type Rate struct{ A, B int }

// Seen is the rate after hits in n more tries (conjugate update of a binomial
// chance: Bayesian Data Analysis, section 2.4).
func (r Rate) Seen(hits, n int) Rate {
	r.check()
	if hits < 0 || hits > n {
		panic("engine: internal error: " + strconv.Itoa(hits) + " hits in " + strconv.Itoa(n) + " tries")
	}
	return Rate{r.A + hits, r.B + n - hits}
}

// Mean of the rate.
func (r Rate) Mean() float64 {
	r.check()
	return float64(r.A) / float64(r.A+r.B)
}

// Variance of the rate.
func (r Rate) Variance() float64 {
	r.check()
	a, b := float64(r.A), float64(r.B)
	return float64(a*b) / float64((a+b)*(a+b)*(a+b+1))
}

// Quantile of the rate, 0 < p < 1: by P(rate ≤ x) = P(at least A hits in A+B−1
// tries of chance x) (Abramowitz and Stegun 1964, 26.5.24).
func (r Rate) Quantile(p float64) float64 {
	r.check()
	if !(p > 0 && p < 1) {
		panic("engine: internal error: quantile of a rate outside 0 to 1")
	}
	return solve(func(x float64) bool { _, up := tails(r.A, r.A+r.B-1, x); return up < p })
}

// Hits is the chance of exactly k hits in n tries to come (beta-binomial).
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
