package exact

import (
	"errors"
	"math/cmplx"
)

// The cosine series ends where the characteristic function has fallen below smallest.
// That is above the 1e-5 or so that the grid of the whole-car factors leaves, and what
// is cut off is far smaller than the sampling error. A series that does not end in time
// is refused.
const (
	mostTerms = 160
	smallest  = 1e-4
)

// Solve works out the distribution of the price, in minor units and before tax.
func (c *Case) Solve() (*Series, error) {
	s, err := c.solver()
	if err != nil {
		return nil, err
	}
	evidence := real(s.phi(0, 0))
	phi := func(theta, centre float64) complex128 {
		return s.phi(theta, centre) / complex(evidence, 0)
	}
	// First roughly, then around the mean, so that no digits cancel.
	mean, sd := moments(phi(1e-8, s.same), 1e-8)
	centre := s.same + mean
	mean, sd = moments(phi(1e-3/sd, centre), 1e-3/sd)
	centre += mean
	low, wide := centre-6*sd, 18*sd
	dead := false
	out := NewSeries(func(theta float64) complex128 {
		if dead {
			return 0
		}
		v := phi(theta, 0)
		dead = cmplx.Abs(v) < smallest
		return v
	}, low, low+wide, mostTerms)
	if !dead {
		return nil, errors.New("case: the price has jumps that a cosine series cannot follow")
	}
	out.Mean, out.SD = centre, sd
	return out, nil
}
