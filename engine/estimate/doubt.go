package estimate

import (
	"math"

	"underpaint/engine/chance"
)

// Wider is how many times as wide the doubt about the figures makes the range of the k-th
// table, 1 where it doubts nothing. The variance of the log of the price is taken apart:
// doubt adds SD² times the squared share of the work after the strip, and a width on the
// log scale grows with the root of the variance. On the ranges of the samples this is
// within .05 of what the same cars without doubt give (tested).
func (r *Run) Wider(k int) float64 {
	one := &r.rows[k]
	sd := one.table.Doubt().SD
	if sd == 0 || len(one.total) < 2 {
		return 1
	}
	sum, squares, shares := 0.0, 0.0, 0.0
	for n, total := range one.total {
		v := chance.Log(float64(total))
		sum, squares = sum+v, squares+float64(v*v)
		// A job on another body has most of its extra at prices that can be asked for.
		after := 1 - float64(one.kinds[StripStage][n]+one.kinds[AnotherBodyKind][n])/float64(total)
		shares += float64(after * after)
	}
	n := float64(len(one.total))
	variance := squares/n - float64(sum/n*(sum/n))
	doubt := float64(sd*sd) * shares / n
	if doubt >= variance {
		return math.Inf(1)
	}
	return math.Sqrt(variance / (variance - doubt))
}
