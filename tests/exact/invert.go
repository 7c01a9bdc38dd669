package exact

import (
	"math"
	"math/cmplx"
)

// Characteristic is the characteristic function E[exp(iθX)] of an amount.
type Characteristic func(theta float64) complex128

// Lattice returns the probabilities of 0, 1, … n−1 of an amount that takes no other
// values, by the inverse discrete Fourier transform. Probability at n and above is
// folded back.
func Lattice(phi Characteristic, n int) []float64 {
	out, at := make([]float64, n), make([]complex128, n)
	for k := range at {
		at[k] = phi(2 * math.Pi * float64(k) / float64(n))
	}
	for x := range out {
		sum := complex(0, 0)
		for k, v := range at {
			sum += v * cmplx.Rect(1, -2*math.Pi*float64(k*x%n)/float64(n))
		}
		out[x] = real(sum) / float64(n)
	}
	return out
}

// Series is the distribution of an amount as a cosine series between two bounds.
type Series struct {
	Mean, SD  float64
	low, wide float64
	term      []float64
}

// NewSeries expands a characteristic function between low and high in this many terms.
// For an amount with a density of n bounded derivatives, the error falls as the n-th
// power of the number of terms. Mass beyond the bounds is folded back.
func NewSeries(phi Characteristic, low, high float64, terms int) *Series {
	s := &Series{low: low, wide: high - low}
	for k := range terms {
		theta := float64(k) * math.Pi / s.wide
		s.term = append(s.term, 2/s.wide*real(phi(theta)*cmplx.Rect(1, -theta*low)))
	}
	return s
}

// CDF is the probability of an amount of x or less.
func (s *Series) CDF(x float64) float64 {
	sum := s.term[0] / 2 * (x - s.low)
	for k := 1; k < len(s.term); k++ {
		theta := float64(k) * math.Pi / s.wide
		sum += s.term[k] / theta * math.Sin(theta*(x-s.low))
	}
	return sum
}

// Quantile is the p-quantile of the amount, by bisection.
func (s *Series) Quantile(p float64) float64 {
	return bisect(s.low, s.low+s.wide, func(x float64) bool { return s.CDF(x) < p })
}

// bisect finds where below becomes false between two bounds.
func bisect(low, high float64, below func(x float64) bool) float64 {
	for range 60 {
		if mid := (low + high) / 2; below(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// moments reads mean and standard deviation off the logarithm of a characteristic
// function close to 0. theta must be small against 1/mean and 1/deviation.
func moments(phi complex128, theta float64) (mean, sd float64) {
	return cmplx.Phase(phi) / theta, math.Sqrt(-2*math.Log(cmplx.Abs(phi))) / theta
}

// grid is an even grid over a variable: the index of its first point, and the weight of
// each, which add to 1.
type grid struct {
	low    int
	at     []float64
	weight []float64
}

// normalGrid is an even grid over a standard normal: the trapezoidal rule, which for so
// smooth a weight is accurate to far more digits than the step suggests (L. N.
// Trefethen and J. A. C. Weideman, SIAM Review 56, 2014).
func normalGrid(step, reach float64) grid { return leakGrid(step, reach, 0, 0) }

// leakGrid is an even grid over a normal that with a given probability has mean shift
// instead of 0.
func leakGrid(step, reach, chance, shift float64) grid {
	low, high := int(reach/step+0.5), int((reach+shift)/step+0.5)
	g, sum := grid{low: -low}, 0.0
	for k := -low; k <= high; k++ {
		z := float64(k) * step
		w := (1-chance)*math.Exp(-z*z/2) + chance*math.Exp(-(z-shift)*(z-shift)/2)
		g.at, g.weight, sum = append(g.at, z), append(g.weight, w), sum+w
	}
	for k := range g.weight {
		g.weight[k] /= sum
	}
	return g
}
