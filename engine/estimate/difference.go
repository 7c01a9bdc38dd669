package estimate

import (
	"slices"

	"underpaint/engine/chance"
)

// Difference compares the prices and times of two tables of a run, simulated car by
// simulated car. Money is in minor units, time in weeks; quantiles follow
// definition 7 of Hyndman and Fan (1996).
type Difference struct {
	Low, Half, High float64 // P10, P50, P90 of the second price less the first
	Dearer, Same    float64 // shares of cars in which the second is dearer, or the same
	WeeksHalf       float64 // median of the second's weeks less the first's
}

// Difference compares table b with table a on the cars so far. Both tables priced the
// same cars with the same uniforms, so whatever they have in common cancels out.
func (r *Run) Difference(a, b int) (d Difference) {
	money := less(r.rows[b].total, r.rows[a].total)
	weeks := less(r.rows[b].weeks, r.rows[a].weeks)
	n := float64(len(money))
	dearer, same := 0, 0
	for _, v := range money {
		switch {
		case v > 0:
			dearer++
		case v == 0:
			same++
		}
	}
	d.Dearer, d.Same = float64(dearer)/n, float64(same)/n
	slices.Sort(money)
	slices.Sort(weeks)
	d.Low, d.Half, d.High = chance.QuantileMinor(money, 0.1), chance.QuantileMinor(money, 0.5), chance.QuantileMinor(money, 0.9)
	d.WeeksHalf = chance.QuantileMinor(weeks, 0.5) / 1000
	return d
}

func less(b, a []int64) []int64 {
	out := make([]int64, len(b))
	for n := range out {
		out[n] = b[n] - a[n]
	}
	return out
}

// Width is P90 − P10 of the k-th table, in minor units.
func (r *Run) Width(k int) float64 {
	e := r.rows[k].ends(r.replicates)
	return e.high - e.low
}
