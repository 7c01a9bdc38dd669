package estimate

import "math"

// weighted reads two quantiles off a sample with weights, given in increasing
// order of value, in two passes: count every weight, aim, then take every value.
//
// The quantile is definition 7 of Hyndman and Fan (1996) carried over to weights
// (A. Akinshin, "Weighted quantile estimators", arXiv:2304.07265, 2023): with n*
// the effective number after Kish (1965), each value counts by how much of its
// stretch of the cumulative weight falls into the window of width 1/n* that starts
// at p(n*−1)/n*. Values without weight change nothing, and equal weights give
// definition 7 itself.
type weighted struct {
	sum, squares float64
	from, to     [2]float64 // windows, in the weight so far
	so           float64
	value        [2]float64
}

func (w *weighted) count(v float64) {
	w.sum += v
	w.squares += float64(v * v)
}

// effective is the effective number of values, (Σw)²/Σw².
func (w *weighted) effective() float64 {
	if w.squares == 0 {
		return 0
	}
	return float64(w.sum*w.sum) / w.squares
}

// aim sets the windows of the two quantiles.
func (w *weighted) aim(p ...float64) {
	n := w.effective()
	for k := range w.from {
		w.from[k] = float64(float64(p[k]*(n-1)) / n * w.sum)
		w.to[k] = w.from[k] + w.sum/n
	}
}

// take moves on by one value.
func (w *weighted) take(x, v float64) {
	next := w.so + v
	for k := range w.value {
		low, high := math.Max(w.so, w.from[k]), math.Min(next, w.to[k])
		if high > low {
			w.value[k] += float64(x * ((high - low) / (w.to[k] - w.from[k])))
		}
	}
	w.so = next
}
