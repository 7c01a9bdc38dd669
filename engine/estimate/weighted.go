package estimate

import "math"

// weighted works out two quantiles of a weighted sample in two passes: count every
// weight, aim, then take every value in increasing order.
//
// The quantile is definition 7 of Hyndman and Fan (1996) extended to weights
// (A. Akinshin, "Weighted quantile estimators", arXiv:2304.07265, 2023). With n* the
// effective sample size (Kish, 1965), each value counts by how much of its interval of
// the cumulative weight lies in the window of width 1/n* that starts at p(n*−1)/n*.
// Values of weight 0 change nothing, and equal weights give definition 7 itself.
type weighted struct {
	sum, squares float64
	from, to     [2]float64 // windows, in cumulative weight
	so           float64
	value        [2]float64
}

func (w *weighted) count(v float64) {
	w.sum += v
	w.squares += float64(v * v)
}

// effective is the effective sample size, (Σw)²/Σw², or 0 without any weight.
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

// take adds the next value x, of weight v, to both quantiles.
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
