package damage

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// The chance of each condition depends on the levels above an item only through
// one number x, the mean of y given those levels. It is therefore tabulated once
// in one dimension and read by four-point Lagrange interpolation, whose error at
// this step is below 5e-9 (the fourth derivative of Φ(x/0.425) is below 50).
const (
	tableLow  = -13.0
	tableHigh = 10.0
	tableStep = 1.0 / 128
	tableSize = int((tableHigh-tableLow)/tableStep) + 1
)

// kind says which of the four shapes of leaf an item has.
type kind struct{ hidden, closed bool }

// conditionTable holds the chance of each condition at each x of the table.
type conditionTable struct {
	at [][car.Conditions]float64
}

// newConditionTable tabulates the conditions for thresholds log (loss ratio) and
// the standard deviation own of what is the item's alone.
func newConditionTable(threshold [car.Conditions - 1]float64, own float64) *conditionTable {
	t := &conditionTable{at: make([][car.Conditions]float64, tableSize)}
	for n := range t.at {
		t.at[n] = conditionsAt(tableLow+float64(float64(n)*tableStep), threshold, own)
	}
	return t
}

// conditionsAt is the exact chance of each condition at x, each difference of
// two normal probabilities taken on the side where it keeps its digits.
func conditionsAt(x float64, threshold [car.Conditions - 1]float64, own float64) (p [car.Conditions]float64) {
	var z [car.Conditions - 1]float64
	for k := range z {
		z[k] = (threshold[k] - x) / own
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
func cell(x float64) (n int, w [4]float64) {
	u := (x - tableLow) / tableStep
	n = int(u)
	if n < 1 {
		n, u = 1, 1
	}
	if n > tableSize-3 {
		n = tableSize - 3
		if u > float64(tableSize-2) {
			u = float64(tableSize - 2)
		}
	}
	t := u - float64(n)
	a, b, c := t+1, t-1, t-2
	bc, at := float64(b*c), float64(a*t)
	w[0] = float64(-t*bc) / 6
	w[1] = float64(a*bc) / 2
	w[2] = float64(-at*c) / 2
	w[3] = float64(at*b) / 6
	return n, w
}

// read is the chance of each condition at any x.
func (t *conditionTable) read(x float64) (p [car.Conditions]float64) {
	n, w := cell(x)
	a, b, c, d := &t.at[n-1], &t.at[n], &t.at[n+1], &t.at[n+2]
	for k := range p {
		v := float64(w[0]*a[k]) + float64(w[1]*b[k]) + float64(w[2]*c[k]) + float64(w[3]*d[k])
		if v > 0 {
			p[k] = v
		}
	}
	return p
}
