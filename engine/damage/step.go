package damage

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// The condition of an item is a step function of its uniform, and the normal quantile is
// the slowest part of drawing it. A table of quantiles at even steps of the uniform
// brackets the exact one between two neighbours. If both give the same condition, as in
// all but a few cases in a hundred, the exact quantile is not needed. Sums and products
// of float64s are monotonic, so the shortcut changes nothing but the time.

// cells is the number of even steps of a uniform, a power of two.
const cells = 256

// beyond is further out than the normal quantile of any positive float64. slack is far
// more than rounding can put the quantiles of neighbours out of order.
const beyond, slack = 39, 1e-9

// quantileBetween holds bounds on the normal quantile of a uniform in each cell.
var quantileBetween = betweenQuantiles()

func betweenQuantiles() (b [cells][2]float64) {
	b[0][0], b[cells-1][1] = -beyond, beyond
	for k := 1; k < cells; k++ {
		at := chance.NormalQuantile(float64(k) / cells)
		b[k-1][1], b[k][0] = at+slack, at-slack
	}
	return b
}

// leaf holds what drawing an item needs from its part.
type leaf struct {
	residualSD float64 // standard deviation of the item's own term
	threshold  *[car.Conditions - 1]float64
	joints     int // lead-loaded
}

// condition is the condition of an item, where x is the mean of its log depth and u the
// uniform for its own term.
func (l *leaf) condition(x, u float64) int8 {
	near := &quantileBetween[int(u*cells)&(cells-1)]
	k := chance.ThresholdIndex(l.threshold, x+float64(l.residualSD*near[0]))
	if int(k) == len(l.threshold) || x+float64(l.residualSD*near[1]) < l.threshold[k] {
		return k
	}
	return chance.ThresholdIndex(l.threshold, x+float64(l.residualSD*chance.NormalQuantile(u)))
}
