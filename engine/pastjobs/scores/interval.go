package scores

import (
	"math"

	"underpaint/engine/chance"
)

// Outside is the share of jobs that a range leaves out, a tenth on either side.
const Outside = 0.2

// IntervalScore is the score of a central range that leaves out the share outside: its
// width, plus 2/outside times the distance by which it missed (Gneiting and Raftery
// 2007, eq. 43). Smaller is better; the unit is that of the ends.
func IntervalScore(low, high, found, outside float64) float64 {
	if !(high >= low) || !(outside > 0 && outside < 1) {
		panic("engine: internal error: interval score of ends out of order")
	}
	return high - low + float64(2/outside*(math.Max(low-found, 0)+math.Max(found-high, 0)))
}

// Pinball is the score of a quantile: level times the miss if found is above it, 1 −
// level times the miss if below (R. Koenker and G. Bassett, Econometrica 46, 1978; from
// memory).
func Pinball(quantile, found, level float64) float64 {
	if found >= quantile {
		return float64(level * (found - quantile))
	}
	return float64((1 - level) * (quantile - found))
}

// oneOverRootPi is 1/√π; twicePhi0 is 2/√(2π), twice the normal density at 0.
const (
	oneOverRootPi = 0.564189583547756286948
	twicePhi0     = 0.797884560802865355880
)

// NormalCRPS is the score of a normal forecast in closed form: sd·(z(2Φ(z) − 1) + 2φ(z)
// − 1/√π) with z = (found − mean)/sd (Gneiting and Raftery 2007, p. 367). With sd 0 it
// is the absolute miss.
func NormalCRPS(mean, sd, found float64) float64 {
	if !(sd >= 0) {
		panic("engine: internal error: score of a negative spread")
	}
	if sd == 0 {
		return math.Abs(found - mean)
	}
	z := (found - mean) / sd
	twoPhi := float64(twicePhi0 * chance.Exp(float64(-0.5*z*z)))
	return float64(sd * (float64(z*(float64(2*chance.NormalCDF(z))-1)) + twoPhi - oneOverRootPi))
}

// Average returns the mean of the scores of some jobs and its standard error, which is
// unknown (0, false) for fewer than two.
func Average(score []float64) (mean, se float64, known bool) {
	if len(score) == 0 {
		panic("engine: internal error: average of no scores")
	}
	n := float64(len(score))
	sum := 0.0
	for _, s := range score {
		sum += s
	}
	mean = sum / n
	if len(score) < 2 {
		return mean, 0, false
	}
	squares := 0.0
	for _, s := range score {
		squares += float64((s - mean) * (s - mean))
	}
	return mean, math.Sqrt(squares / float64(n*(n-1))), true
}
