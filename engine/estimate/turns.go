package estimate

import (
	"math"

	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/work"
)

// The work on one imagined car is imagined several times over, for what the work
// takes is as uncertain as what is found, and pricing a car again costs less than
// finding one: its hours, prices and ways four times, and each of those with four
// pairs of whole-car factors.
const (
	hourTurns   = 4 // a power of two
	factorTurns = 4
	// Turns is how often the work on each car is imagined.
	Turns = hourTurns * factorTurns
)

// turns prices one car in several turns. Every turn by itself is as likely as any
// other work on that car, so shares of turns are without bias; together the turns
// are spread evenly. Ways, hours and prices are a Latin hypercube (M. D. McKay,
// R. J. Beckman and W. J. Conover, Technometrics 21, 1979): each of their uniforms
// falls once into every quarter. The whole-car factors are a lattice shifted by the
// car's own pair (R. Cranley and T. N. L. Patterson, SIAM J. Numer. Anal. 13, 1976).
type turns struct {
	u, first *work.Uniforms
}

func newTurns(t *work.Table) *turns { return &turns{t.NewUniforms(), t.NewUniforms()} }

// price shows each turn of car c to each; z are the uniforms of its whole-car
// factors in the first one, n how many turns there are, at most Turns.
func (t *turns) price(table *work.Table, c *damage.Car, place string, s chance.Stream, z [factors]float64, n int, b *work.Bill, each func()) {
	t.first.Fill(&s)
	t.u.Copy(t.first)
	for k := range n {
		if k > 0 && k%factorTurns == 0 {
			t.u.FillApart(t.first, k/factorTurns, hourTurns, &s)
		}
		t.u.Car = [factors]float64{shifted(z[0], float64(k)/Turns), shifted(z[1], halved(k))}
		if k%factorTurns == 0 {
			table.Do(c, place, t.u, b)
		} else {
			table.Again(t.u, b)
		}
		each()
	}
}

// shifted is z moved on by a step of the lattice, round the end of (0, 1).
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
