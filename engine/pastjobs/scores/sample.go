package scores

import (
	"math"

	"underpaint/engine/chance"
)

// Figure is a whole number of minor units or a float of any unit.
type Figure interface{ ~int64 | ~float64 }

// CRPS is the continuous ranked probability score of equally likely draws, in
// increasing order, for the outcome found: the mean of |draw − found| minus half the
// mean distance of two draws. Smaller is better; for one draw it is the absolute miss.
// (T. Gneiting and A. E. Raftery, "Strictly proper scoring rules, prediction, and
// estimation", J. Amer. Statist. Assoc. 102, 2007, eq. 21.)
func CRPS[F Figure](sorted []F, found F) float64 {
	miss, apart := distances(sorted, found)
	n := float64(len(sorted))
	return float64(miss/n) - float64(apart/float64(n*n))
}

// FairCRPS is CRPS with the distance taken over pairs of different draws, so that its
// mean does not depend on the number of draws (C. A. T. Ferro, "Fair scores for
// ensemble forecasts", Q. J. R. Meteorol. Soc. 140, 2014; from memory). It needs two
// draws.
func FairCRPS[F Figure](sorted []F, found F) float64 {
	if len(sorted) < 2 {
		panic("engine: internal error: fair score of fewer than two draws")
	}
	miss, apart := distances(sorted, found)
	n := float64(len(sorted))
	return float64(miss/n) - float64(apart/float64(n*(n-1)))
}

// distances returns the sum of |x − found| over all draws and the sum of |x − x'| over
// all pairs. It subtracts found from the draws first, so that large sums of nearly
// equal draws lose no digits.
func distances[F Figure](sorted []F, found F) (miss, apart float64) {
	checkSorted(sorted)
	n := len(sorted)
	for i, x := range sorted {
		d := float64(x - found)
		miss += math.Abs(d)
		apart += float64(d * float64(2*i-n+1))
	}
	return miss, apart
}

// PIT is the share of the draws, in increasing order, below the outcome found; a draw
// equal to it counts half (the mid-rank). Over many jobs of an honest forecast it is
// uniform from 0 to 1.
func PIT[F Figure](sorted []F, found F) float64 {
	return RandomPIT(sorted, found, 0.5)
}

// RandomPIT is PIT with the share u, a uniform number, of the equal draws. It is
// uniform even where many draws are the same amount (Gneiting, Balabdaoui and Raftery,
// J. R. Statist. Soc. B 69, 2007; from memory).
func RandomPIT[F Figure](sorted []F, found F, u float64) float64 {
	checkSorted(sorted)
	if !(u >= 0 && u <= 1) {
		panic("engine: internal error: share of equal draws outside 0 to 1")
	}
	below, equal := 0, 0
	for _, x := range sorted {
		switch {
		case x < found:
			below++
		case x == found:
			equal++
		}
	}
	return (float64(below) + float64(u*float64(equal))) / float64(len(sorted))
}

func checkSorted[F Figure](sorted []F) {
	if len(sorted) == 0 {
		panic("engine: internal error: score of an empty sample")
	}
	for i, x := range sorted {
		if x != x || i > 0 && x < sorted[i-1] {
			panic("engine: internal error: sample for a score is not in order")
		}
	}
}

// z90 is the normal 90th percentile (M. J. Wichura, AS 241, 1988).
const z90 = 1.2815515655446004

// LognormalPIT replaces PIT where only the ends of a range were kept, P10 and P90, both
// positive: the place of found in the lognormal distribution with these ends
// (assumption).
func LognormalPIT(low, high, found float64) float64 {
	if !(low > 0 && high > low) {
		panic("engine: internal error: place in a range without width")
	}
	if found <= 0 {
		return 0
	}
	a, b := chance.Log(low), chance.Log(high)
	middle, sd := float64((a+b)/2), (b-a)/(2*z90)
	return chance.NormalCDF((chance.Log(found) - middle) / sd)
}
