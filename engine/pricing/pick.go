package pricing

import (
	"math"

	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// wayEnds hold, for each condition, the smallest uniform at which each next way is
// picked (2 where none is). The way is the number of ends that the uniform has reached.
// The ends are found by calling pickWay, so both pick the same way for every float64.
type wayEnds [car.Conditions][car.Ways - 1]float64

func newWayEnds(chances *[car.Conditions][car.Ways]float64) *wayEnds {
	ends := &wayEnds{}
	for k := range chances {
		for w := range ends[k] {
			ends[k][w] = firstBeyond(&chances[k], car.Way(w))
		}
	}
	return ends
}

// firstBeyond is the smallest uniform for which pickWay returns a way after w.
// Bisection on the bits works because positive floats are ordered like their bits and a
// larger uniform never picks an earlier way. The answer lies within rounding of the sum
// of the chances.
func firstBeyond(p *[car.Ways]float64, w car.Way) float64 {
	beyond := func(bits uint64) bool { return pickWay(p, math.Float64frombits(bits)) > w }
	low, high := uint64(0), math.Float64bits(1)
	if !beyond(high) {
		return 2
	}
	sum := 0.0
	for _, v := range p[:w+1] {
		sum += v
	}
	if a, b := math.Float64bits(sum*(1-1e-12)), math.Float64bits(sum*(1+1e-12)); !beyond(a) && beyond(b) {
		low, high = a, b
	}
	for low < high {
		mid := (low + high) / 2
		if beyond(mid) {
			high = mid
		} else {
			low = mid + 1
		}
	}
	return math.Float64frombits(low)
}

// way returns the way picked for a condition.
func (e *wayEnds) way(condition int8, u float64) car.Way {
	return car.Way(chance.ThresholdIndex(&e[condition], u))
}

// pickWay inverts the distribution function of the ways at u.
func pickWay(p *[car.Ways]float64, u float64) car.Way {
	last := car.Leave
	for w, v := range p {
		if v > 0 {
			last = car.Way(w)
		}
		if u < v {
			return car.Way(w)
		}
		u -= v
	}
	return last
}
