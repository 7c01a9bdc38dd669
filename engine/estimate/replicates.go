package estimate

import (
	"math"

	"underpaint/engine/damage"
)

// The work on each simulated car is simulated several times, because the work is as
// uncertain as the damage and pricing a car again costs less than simulating another: its
// hours, prices and ways four times, and each of those with four pairs of whole-car
// factors.
const (
	hourReplicates   = 4 // powers of two
	factorReplicates = 4
	// Replicates is how often the work on each car is simulated.
	Replicates = hourReplicates * factorReplicates
)

// priceReplicates prices car n, which is c, in the given number of replicates, at most
// [Replicates], and keeps each of them in one. z holds the uniforms of its whole-car
// factors in the first replicate. Each replicate alone is a fair draw of the work on that
// car, so shares of replicates are unbiased. Together they are spread evenly: each uniform
// of ways, hours and prices falls once into every quarter, and the whole-car factors form
// a fixed pattern shifted by the car's own pair (R. Cranley and T. N. L. Patterson, SIAM J.
// Numer. Anal. 13, 1976).
func (m *sampler) priceReplicates(n int, c *damage.Car, z [factors]float64, replicates int, one *row) {
	draws := one.table.DrawsFromAnother()
	place, doubt, rise := m.model.Histories[c.History].LastClimate, m.doubt(n), m.rise(n)
	for k := range replicates {
		h, i := k/factorReplicates, k%factorReplicates
		one.uniforms.Doubt, one.uniforms.Rise = doubtOf(doubt, h, i), riseOf(rise, h, i)
		if i > 0 {
			one.uniforms.Car = pair(z, h, i)
			one.table.Reprice(one.uniforms, one.bill)
		} else {
			m.fill(n, h, one.uniforms)
			if one.table.DrawsSupply() {
				one.uniforms.Supply = m.supplied(n, h)
			}
			if draws {
				m.another(n, h, one.uniforms)
			}
			one.uniforms.Car = pair(z, h, i)
			one.table.Price(c, place, one.uniforms, one.bill)
		}
		one.keep()
	}
}

// pair shifts a car's own pair of whole-car factors, z, to the i-th pair of its h-th hour
// replicate. The four pairs of each h put one into every quarter of both factors. All
// sixteen put one into every square of a quarter by a quarter and into every sixteenth of
// both (a Latin hypercube on an orthogonal array: B. Tang, Journal of the American
// Statistical Association 88, 1993).
func pair(z [factors]float64, h, i int) [factors]float64 {
	first := (float64(i) + float64(float64(h)/hourReplicates)) / factorReplicates
	second := (float64(i^h) + halved(h)) / factorReplicates
	return [factors]float64{shifted(z[0], first), shifted(z[1], second)}
}

// turned multiplies by a root of x² + x + 1 in the field of four elements.
var turned = [hourReplicates]int{0, 2, 3, 1}

// doubtOf shifts a car's own uniform of doubt as [pair] shifts its factors. i, i^h and
// i^turned[h] are orthogonal Latin squares, so all sixteen put one into every square of a
// quarter by a quarter of doubt and either factor, and into every sixteenth of doubt
// (R. C. Bose, Sankhyā 3, 1938).
func doubtOf(u float64, h, i int) float64 {
	return shifted(u, (float64(i^turned[h])+halved(i))/factorReplicates)
}

// riseOf does the same to the uniform of how fast prices rise, with the last of the
// squares that are orthogonal to those.
func riseOf(u float64, h, i int) float64 {
	return shifted(u, (float64(i^turned[turned[h]])+halved(i))/factorReplicates)
}

// shifted returns z plus a step, wrapped round to stay strictly between 0 and 1.
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
