package estimate

import (
	"math"

	"underpaint/engine/damage"
)

// The work on one simulated car is imagined several times over, for what the work
// takes is as uncertain as what is found, and pricing a car again costs less than
// finding one: its hours, prices and ways four times, and each of those with four
// pairs of whole-car factors.
const (
	hourReplicates   = 4 // powers of two
	factorReplicates = 4
	// Replicates is how often the work on each car is imagined.
	Replicates = hourReplicates * factorReplicates
)

// priceReplicates prices car n, which is c, in so many replicates, at most Replicates, and
// keeps each; z are the uniforms of its whole-car factors in the first one. Every replicate
// by itself is as likely as any other work on that car, so shares of replicates are without
// bias; together they are spread evenly: each uniform of ways, hours and prices falls once
// into every quarter, and the whole-car factors are a pattern moved by the car's own pair
// (R. Cranley and T. N. L. Patterson, SIAM J. Numer. Anal. 13, 1976).
func (m *sampler) priceReplicates(n int, c *damage.Car, z [factors]float64, replicates int, one *row) {
	place := m.model.Histories[c.History].LastClimate
	for k := range replicates {
		h, i := k/factorReplicates, k%factorReplicates
		if i > 0 {
			one.uniforms.Car = pair(z, h, i)
			one.table.Reprice(one.uniforms, one.bill)
		} else {
			m.fill(n, h, one.uniforms)
			one.uniforms.Car = pair(z, h, i)
			one.table.Price(c, place, one.uniforms, one.bill)
		}
		one.keep()
	}
}

// pair moves a car's own pair of whole-car factors to the i-th that goes with its h-th
// hours. The four of each h lie one in every quarter of both factors; all sixteen, one in
// every square of a quarter by a quarter and in every sixteenth of both (a Latin
// hypercube on an orthogonal array: B. Tang, Journal of the American Statistical
// Association 88, 1993).
func pair(z [factors]float64, h, i int) [factors]float64 {
	first := (float64(i) + float64(float64(h)/hourReplicates)) / factorReplicates
	second := (float64(i^h) + halved(h)) / factorReplicates
	return [factors]float64{shifted(z[0], first), shifted(z[1], second)}
}

// shifted is z moved on by a step, round the end of (0, 1).
func shifted(z, step float64) float64 {
	z += step
	if z >= 1 {
		z--
	}
	return math.Min(math.Max(z, 0x1p-53), 1-0x1p-53)
}

// halved is the radical inverse of k in base 2 (van der Corput, 1935).
func halved(k int) (v float64) {
	for h := 0.5; k > 0; k, h = k>>1, h/2 {
		v += float64(float64(k&1) * h)
	}
	return v
}
