package damage

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// The chance of each condition by rust depends on the levels above an item only through
// one number x, the mean of y given those levels. So it is tabulated once in one
// dimension and read by four-point Lagrange interpolation. The error at 64 points per
// unit of x is below 8e-8 (the fourth derivative of Φ(x/0.425) is below 50) and grows
// with the fourth power of the step. Twice the points change no reply in the engine's
// test vectors, and cost a third of its memory after a survey.
const (
	tableLow  = -13
	tableHigh = 10
)

// scale gives the points of a table. They are even, with a power of two per unit, so that
// converting x to a position loses no digits.
type scale struct {
	perUnit float64
	size    int
}

// pointsToAUnit is the number of points per unit in a table unless its grids set another.
const pointsToAUnit = 64

func newScale(perUnit int) scale {
	return scale{float64(perUnit), (tableHigh-tableLow)*perUnit + 1}
}

// kind says which shape of leaf an item has.
type kind struct {
	hidden bool
	class  class
}

// conditionTable holds the chance of each condition by rust at each x of the table.
type conditionTable struct {
	scale scale
	at    []byCondition
}

// newConditionTable tabulates the chances for thresholds of the log loss ratio and the
// standard deviation residualSD of the item's own term.
func newConditionTable(s scale, threshold [car.Conditions - 1]float64, residualSD float64) *conditionTable {
	t := &conditionTable{scale: s, at: make([]byCondition, s.size)}
	for n := range t.at {
		t.at[n] = conditionsAt(tableLow+float64(float64(n)/s.perUnit), threshold, residualSD)
	}
	return t
}

// conditionsAt is the exact chance of each condition at x. It takes each difference of two
// normal probabilities in the tail where it keeps its digits.
func conditionsAt(x float64, threshold [car.Conditions - 1]float64, residualSD float64) (p byCondition) {
	var z [car.Conditions - 1]float64
	for k := range z {
		z[k] = (threshold[k] - x) / residualSD
	}
	p[0] = chance.NormalCDF(z[0])
	for k := 1; k < len(z); k++ {
		if z[k-1] > 0 {
			p[k] = chance.NormalCDF(-z[k-1]) - chance.NormalCDF(-z[k])
		} else {
			p[k] = chance.NormalCDF(z[k]) - chance.NormalCDF(z[k-1])
		}
	}
	p[len(z)] = chance.NormalCDF(-z[len(z)-1])
	return p
}

// cell finds the table cell of x and the four Lagrange weights of its corners.
func (s scale) cell(x float64) (n int, w [4]float64) {
	u := float64((x - tableLow) * s.perUnit)
	n = int(u)
	if n < 1 {
		n, u = 1, 1
	}
	if n > s.size-3 {
		n = s.size - 3
		if u > float64(s.size-2) {
			u = float64(s.size - 2)
		}
	}
	return n, lagrange(u - float64(n))
}

// lagrange are the weights of four points, at -1, 0, 1 and 2, for a value at t.
func lagrange(t float64) (w [4]float64) {
	a, b, c := t+1, t-1, t-2
	bc, at := float64(b*c), float64(a*t)
	w[0] = float64(-t*bc) / 6
	w[1] = float64(a*bc) / 2
	w[2] = float64(-at*c) / 2
	w[3] = float64(at*b) / 6
	return w
}

// read is the chance of each condition at any x.
func (t *conditionTable) read(x float64) (p byCondition) {
	n, w := t.scale.cell(x)
	a, b, c, d := &t.at[n-1], &t.at[n], &t.at[n+1], &t.at[n+2]
	for k := range p {
		v := float64(w[0]*a[k]) + float64(w[1]*b[k]) + float64(w[2]*c[k]) + float64(w[3]*d[k])
		if v > 0 {
			p[k] = v
		}
	}
	return p
}
