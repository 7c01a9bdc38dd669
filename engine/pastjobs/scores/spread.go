package scores

import (
	"math"

	"underpaint/engine/chance"
)

// Spread is what finished jobs say about a standard deviation, such as σ of the
// damage model or that of a whole-car hour factor, as a factor on the starting one.
type Spread struct {
	Jobs      int
	Plain     float64 // root mean square of the standardised misses; 0 without jobs
	Factor    float64 // Plain shrunk towards 1
	Degrees   float64 // jobs behind Factor, including those that the prior is worth
	Share     float64 // the weight of the shop's own jobs in Factor, 0 to 1
	Low, High float64 // 80 % interval
}

// LearnSpread takes misses in standard deviations of the model (see
// [Prediction.Standard]). The variance has a scaled inverse chi-square prior, which is
// an inverse gamma, with scale 1 and worth priorJobs; the posterior scale is the mean
// square including the prior (Bayesian Data Analysis, section 2.6). The interval uses
// the cube-root approximation to the chi-square distribution (E. B. Wilson and M. M.
// Hilferty, Proc. Nat. Acad. Sci. 17, 1931), accurate to half a per cent of the ends
// from ten degrees on. A miss that is not finite is a programming error and panics.
func LearnSpread(misses []float64, priorJobs float64) Spread {
	sum := 0.0
	for _, z := range misses {
		sum += float64(z * z)
	}
	return spreadOf(sum, len(misses), priorJobs)
}

func spreadOf(sum float64, n int, priorJobs float64) Spread {
	if !finite(sum) || !finite(priorJobs) || priorJobs <= 0 {
		panic("engine: internal error: spread of misses that are not finite, or without a prior")
	}
	s := Spread{Jobs: n, Degrees: priorJobs + float64(n)}
	if n > 0 {
		s.Plain = math.Sqrt(sum / float64(n))
	}
	s.Share = float64(n) / s.Degrees
	s.Factor = math.Sqrt((priorJobs + sum) / s.Degrees)
	s.Low = s.Factor / math.Sqrt(meanChiSquare(0.9, s.Degrees))
	s.High = s.Factor / math.Sqrt(meanChiSquare(0.1, s.Degrees))
	return s
}

// meanChiSquare is the p-quantile of a chi-square variable divided by its degrees.
func meanChiSquare(p, degrees float64) float64 {
	v := 2 / float64(9*degrees)
	c := 1 - v + float64(chance.NormalQuantile(p)*math.Sqrt(v))
	return float64(c * c * c)
}

// LeaveOneOutSpread returns, for every miss, the spread that the others teach.
func LeaveOneOutSpread(misses []float64, priorJobs float64) []Spread {
	out := make([]Spread, len(misses))
	for i := range misses {
		sum := 0.0
		for j, z := range misses {
			if j != i {
				sum += float64(z * z)
			}
		}
		out[i] = spreadOf(sum, len(misses)-1, priorJobs)
	}
	return out
}
