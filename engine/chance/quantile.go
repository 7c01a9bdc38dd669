package chance

import (
	"math"
	"strconv"
)

// QuantileRule names a definition of the sample quantile by its number in
// R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", The
// American Statistician 50(4), 1996.
type QuantileRule int

// The nine definitions. HF1 to HF3 are step functions; HF4 to HF9 interpolate linearly
// between the points.
const (
	HF1 QuantileRule = 1 + iota // inverse of the empirical distribution function
	HF2                         // like HF1, but averaged at its jumps
	HF3                         // nearest even order statistic
	HF4                         // joins (k/n, x(k))
	HF5                         // joins ((k−½)/n, x(k))
	HF6                         // joins (k/(n+1), x(k))
	HF7                         // joins ((k−1)/(n−1), x(k))
	HF8                         // joins ((k−⅓)/(n+⅓), x(k)); the one the paper prefers
	HF9                         // joins ((k−⅜)/(n+¼), x(k)); for normal samples
)

// Quantile returns the p-quantile, 0 ≤ p ≤ 1, of a sample in increasing order. A
// position n·p + m within a few rounding errors of a whole number counts as whole, so
// that 0.55 of 100 is 55. It panics if the sample is empty or unsorted, if p is outside
// [0, 1] or if the rule is unknown.
func Quantile(sorted []float64, p float64, rule QuantileRule) float64 {
	checkQuantile(len(sorted), p)
	for i, x := range sorted {
		if x != x || i > 0 && x < sorted[i-1] {
			panic("engine: internal error: sample for a quantile is not in order at " + strconv.Itoa(i))
		}
	}
	j, share := place(len(sorted), p, rule)
	low, high := sorted[clampIndex(j-1, len(sorted))], sorted[clampIndex(j, len(sorted))]
	return between(low, high, share)
}

// QuantileMinor is Quantile by rule HF7 for whole numbers, such as money in minor units.
// The result is exact apart from rounding for values below 2^53.
func QuantileMinor(sorted []int64, p float64) float64 {
	checkQuantile(len(sorted), p)
	for i := 1; i < len(sorted); i++ {
		if sorted[i] < sorted[i-1] {
			panic("engine: internal error: sample for a quantile is not in order at " + strconv.Itoa(i))
		}
	}
	j, share := place(len(sorted), p, HF7)
	low, high := sorted[clampIndex(j-1, len(sorted))], sorted[clampIndex(j, len(sorted))]
	return between(float64(low), float64(high), share)
}

func checkQuantile(n int, p float64) {
	if n == 0 {
		panic("engine: internal error: quantile of an empty sample")
	}
	if !(p >= 0 && p <= 1) {
		panic("engine: internal error: quantile at p = " + shortest(p))
	}
}

// place returns the 1-based index j of an order statistic and the fraction of the way
// from x(j) to x(j+1), the paper's γ.
func place(n int, p float64, rule QuantileRule) (j int, share float64) {
	var m float64 // the paper's m
	switch rule {
	case HF1, HF2, HF4:
		m = 0
	case HF3:
		m = -0.5
	case HF5:
		m = 0.5
	case HF6:
		m = p
	case HF7:
		m = 1 - p
	case HF8:
		m = float64((p + 1) / 3)
	case HF9:
		m = float64(p/4) + 3.0/8
	default:
		panic("engine: internal error: quantile rule " + strconv.Itoa(int(rule)))
	}
	at := float64(float64(n)*p) + m
	fuzz := float64(0x1p-50 * math.Max(1, at)) // four rounding errors
	whole := math.Floor(at + fuzz)
	j, share = int(whole), at-whole
	if math.Abs(share) <= fuzz {
		share = 0
	}
	return j, stepShare(rule, j, share)
}

// stepShare rounds the fraction to the whole or half steps of HF1 to HF3.
func stepShare(rule QuantileRule, j int, share float64) float64 {
	switch {
	case rule > HF3:
		return share
	case share > 0:
		return 1
	case rule == HF1 || rule == HF3 && j%2 == 0:
		return 0
	case rule == HF2:
		return 0.5
	}
	return 1
}

func clampIndex(i, n int) int {
	return max(0, min(i, n-1))
}

// between interpolates between low and high. The result stays in [low, high] whatever
// the rounding.
func between(low, high, share float64) float64 {
	if share == 0 || low == high {
		return low
	}
	if share == 1 {
		return high
	}
	return math.Min(low+float64(share*(high-low)), high)
}
