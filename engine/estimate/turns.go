package estimate

import (
	"math"

	"underpaint/engine/damage"
)

// The work on one imagined car is imagined several times over, for what the work
// takes is as uncertain as what is found, and pricing a car again costs less than
// finding one: its hours, prices and ways four times, and each of those with four
// pairs of whole-car factors.
const (
	hourTurns   = 4 // powers of two
	factorTurns = 4
	// Turns is how often the work on each car is imagined.
	Turns = hourTurns * factorTurns
)

// priceTurns prices car n, which is c, in so many turns, at most Turns, and keeps each; z
// are the uniforms of its whole-car factors in the first one. Every turn by itself is as likely as any other work on that car, so shares of turns are without
// bias; together the turns are spread evenly: each uniform of ways, hours and prices
// falls once into every quarter, and the whole-car factors are a pattern moved by the
// car's own pair (R. Cranley and T. N. L. Patterson, SIAM J. Numer. Anal. 13, 1976).
func (m *maker) priceTurns(n int, c *damage.Car, z [factors]float64, turns int, one *row) {
	place := m.model.Levels[c.Level].LastClimate
	for k := range turns {
		h, i := k/factorTurns, k%factorTurns
		if i > 0 {
			one.uniforms.Car = pair(z, h, i)
			one.table.Again(one.uniforms, one.bill)
		} else {
			m.fill(n, h, one.uniforms)
			one.uniforms.Car = pair(z, h, i)
			one.table.Do(c, place, one.uniforms, one.bill)
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
	first := (float64(i) + float64(float64(h)/hourTurns)) / factorTurns
	second := (float64(i^h) + halved(h)) / factorTurns
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
