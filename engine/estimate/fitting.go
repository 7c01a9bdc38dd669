package estimate

import (
	"slices"

	"underpaint/engine/chance"
)

// Fitting is what bought parts that do not fit, or are used ones, cost more at the k-th
// table, in minor units: labour with the consumables of its metalwork, and parts with
// handling. It is part of the price. The zero Quantiles are of a table that draws no such
// parts.
func (r *Run) Fitting(k int) (q Quantiles) {
	if len(r.rows[k].fitting) == 0 {
		return q
	}
	v := slices.Clone(r.rows[k].fitting)
	slices.Sort(v)
	return Quantiles{chance.QuantileMinor(v, 0.1), chance.QuantileMinor(v, 0.5), chance.QuantileMinor(v, 0.9)}
}
