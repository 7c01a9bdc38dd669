package session

import (
	"math"

	"underpaint/engine/money"
)

// Ends are the figures of one range as pages show them, in minor units. Both ends are
// rounded outward and the others to the nearest multiple of a step: the 1, 2 or 5 × 10^k
// nearest a twentieth of the width.
type Ends struct {
	Low, Half, SetAside, High money.Minor
}

// RoundEnds rounds the figures of a range, in minor units.
func RoundEnds(low, half, setAside, high float64) Ends {
	step := money.OutwardStep(money.Minor(math.Ceil(high - low)))
	return Ends{
		Low:      money.RoundDown(money.Minor(math.Floor(low)), step),
		Half:     money.RoundNearest(money.Minor(math.Floor(half+0.5)), step),
		SetAside: money.RoundNearest(money.Minor(math.Floor(setAside+0.5)), step),
		High:     money.RoundUp(money.Minor(math.Ceil(high)), step),
	}
}

// RoundOutward rounds two plain numbers, such as hours, outward to the step that suits
// their distance.
func RoundOutward(low, high float64) (int64, int64) {
	step := money.OutwardStep(money.Minor(math.Ceil(high - low)))
	return int64(money.RoundDown(money.Minor(math.Floor(low)), step)), int64(money.RoundUp(money.Minor(math.Ceil(high)), step))
}

// RoundUp125 rounds up to 1, 2 or 5 × 10^k.
func RoundUp125(v float64) money.Minor {
	for k := int64(1); ; k *= 10 {
		for _, m := range []int64{1, 2, 5} {
			if float64(k*m) >= v {
				return money.Minor(k * m)
			}
		}
	}
}

// RoundLikely rounds the size of an uncertain amount, in minor units, to about a
// twentieth of itself. The result has no sign.
func RoundLikely(minor float64) money.Minor {
	m := money.Minor(math.Floor(math.Abs(minor) + 0.5))
	return money.RoundNearest(m, max(1, money.OutwardStep(m)))
}

// Tenths rounds a share to a whole number of cars out of ten.
func Tenths(share float64) int { return int(math.Floor(float64(share*10) + 0.5)) }

// WholePercents rounds shares to whole percent that add up to 100. It rounds down and
// then adds 1 where it cut off most (the method of the largest remainder).
func WholePercents(shares []float64) []int {
	out, order, left, sum := make([]int, len(shares)), make([]int, len(shares)), 100, 0.0
	for _, v := range shares {
		sum += v
	}
	part := func(k int) float64 { return 100 * shares[k] / sum }
	for k := range shares {
		order[k], out[k] = k, int(part(k))
		left -= out[k]
	}
	sortByFloat(order, func(k int) float64 { return -(part(k) - float64(out[k])) })
	for _, k := range order[:max(0, min(left, len(order)))] {
		out[k]++
	}
	return out
}
