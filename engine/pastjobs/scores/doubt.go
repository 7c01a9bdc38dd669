package scores

import "math"

// Doubt is what a shop's figures may have wrong about the price of work after the strip,
// on the log scale: normal around Growth, with a part that all cars of the shop share
// and a part of each car's own (standard deviations).
type Doubt struct{ Growth, Shared, Own float64 }

// Miss is one job's ln(bill after the strip) less its expectation under the figures
// alone, and the variance that the figures alone give it.
type Miss struct{ Residual, Variance float64 }

// Own is estimated anew from OwnFrom jobs on and held within bounds. What it was counts as
// OwnFrom jobs whose price nothing else makes uncertain (assumptions).
const (
	OwnFrom           = 10
	LeastOwn, MostOwn = 0.03, 0.25
)

// LearnDoubt returns the doubt after finished jobs. Growth and Shared are the posterior
// mean and standard deviation of a normal mean with known variances: prior Growth and
// Shared, each job a normal observation with its own variance and Own together (A. Gelman
// and others, Bayesian Data Analysis, section 2.5). Own² is then
// averaged with what each miss shows beyond the model's variance, by how well each tells
// it: a squared normal deviate of variance s² has the variance 2s⁴. A single miss may
// show less than nothing; cut off at 0, many would say that cars differ more than they do.
// A miss that is not finite, or
// a negative variance, is a programming error and panics.
func LearnDoubt(d Doubt, jobs []Miss) Doubt {
	own := float64(d.Own * d.Own)
	if d.Shared > 0 {
		weights, sum := 1/float64(d.Shared*d.Shared), d.Growth/float64(d.Shared*d.Shared)
		for _, m := range jobs {
			m.check()
			w := 1 / max(LeastVariance, m.Variance+own)
			weights, sum = weights+w, sum+float64(w*m.Residual)
		}
		d.Growth, d.Shared = sum/weights, 1/math.Sqrt(weights)
	}
	if len(jobs) < OwnFrom || d.Own == 0 {
		return d
	}
	weights := OwnFrom / float64(own*own)
	sum := float64(weights * own)
	for _, m := range jobs {
		s, off := max(LeastVariance, m.Variance+own), m.Residual-d.Growth
		w := 1 / float64(s*s)
		weights, sum = weights+w, sum+float64(w*(float64(off*off)-m.Variance))
	}
	d.Own = min(MostOwn, max(LeastOwn, math.Sqrt(max(0, sum/weights))))
	return d
}

func (m Miss) check() {
	if !finite(m.Residual) || !finite(m.Variance) || m.Variance < 0 {
		panic("engine: internal error: a miss that is not finite, or with a negative variance")
	}
}

// SD is the standard deviation of both parts together.
func (d Doubt) SD() float64 { return math.Sqrt(float64(d.Shared*d.Shared) + float64(d.Own*d.Own)) }
