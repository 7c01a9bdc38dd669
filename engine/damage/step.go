package damage

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// The condition of an item is a step function of its uniform, and normal quantiles
// are the dearest part of drawing one. A table of quantiles at even steps of the
// uniform holds the exact one between two neighbours; where both give one condition,
// as they do in all but a few cases in a hundred, the exact one is not needed. Sums
// and products of doubles never fall where a term rises, so that nothing but time
// depends on it.

// cells is the number of even steps of a uniform, a power of two.
const cells = 256

// beyond is further out than the normal quantile of any positive float64, and slack
// far more than the quantiles of neighbours can be out of order by rounding.
const beyond, slack = 39, 1e-9

// quantileBetween holds what the normal quantile of a uniform in each cell lies between.
var quantileBetween = betweenQuantiles()

func betweenQuantiles() (b [cells][2]float64) {
	b[0][0], b[cells-1][1] = -beyond, beyond
	for k := 1; k < cells; k++ {
		at := chance.NormalQuantile(float64(k) / cells)
		b[k-1][1], b[k][0] = at+slack, at-slack
	}
	return b
}

// leaf is what the draw of an item reads of its part.
type leaf struct {
	residualSD float64 // deviation of what is the item's alone
	threshold  *[car.Conditions - 1]float64
	joints     int // lead-loaded
}

// condition is the condition of an item at x before its own luck, and uniform u for
// that luck.
func (l *leaf) condition(x, u float64) int8 {
	near := &quantileBetween[int(u*cells)&(cells-1)]
	k := chance.ThresholdIndex(l.threshold, x+float64(l.residualSD*near[0]))
	if int(k) == len(l.threshold) || x+float64(l.residualSD*near[1]) < l.threshold[k] {
		return k
	}
	return chance.ThresholdIndex(l.threshold, x+float64(l.residualSD*chance.NormalQuantile(u)))
}
