package network

// Inverse distribution functions. A weight of zero is never picked, and a larger u
// never picks an earlier state, so equal uniforms give similar draws.

// pick returns the first state at which the running sum of weights exceeds u. If
// rounding leaves the sum at or below u, it returns the last possible state.
func pick(weights []float64, u float64) int {
	last, sum := 0, 0.0
	for i, w := range weights {
		if w == 0 {
			continue
		}
		last = i
		sum += w
		if u < sum {
			return i
		}
	}
	return last
}

// cumulative returns the running sums of weights that add to 1 apart from rounding.
// From the last possible state on they are exactly 1.
func cumulative(weights []float64) []float64 {
	cum, last, sum := make([]float64, len(weights)), 0, 0.0
	for i, w := range weights {
		if w > 0 {
			last = i
		}
		sum += w
		cum[i] = min(sum, 1)
	}
	for i := last; i < len(cum); i++ {
		cum[i] = 1
	}
	return cum
}

// ladder is a short table of running sums for picking states. from splits the range of
// the uniform into equal steps and holds, for each, the state at which to start looking.
type ladder struct {
	cum  []float64
	from [rungs]int32
}

const rungs = 64 // a power of two

// newLadder takes weights that add to 1 apart from rounding.
func newLadder(weights []float64) *ladder {
	l, n := &ladder{cum: cumulative(weights)}, 0
	for k := range l.from {
		for l.cum[n] <= float64(k)/rungs {
			n++
		}
		l.from[k] = int32(n)
	}
	return l
}

// pick is the first state whose running sum is above u, for u between 0 and 1.
func (l *ladder) pick(u float64) int {
	n := int(l.from[int(u*rungs)&(rungs-1)])
	for n < len(l.cum)-1 && u >= l.cum[n] {
		n++
	}
	return n
}

// find is pick by bisection, for long tables: the first state with u < cum[state].
func find(cum []float64, u float64) int {
	low, high := 0, len(cum)-1
	for low < high {
		mid := int(uint(low+high) >> 1)
		if u < cum[mid] {
			high = mid
		} else {
			low = mid + 1
		}
	}
	return low
}

// normalised returns the weights divided by their sum. ok is false if a weight is not
// usable, there are none, or the sum is not a positive finite number.
func normalised(weights []float64) (out []float64, ok bool) {
	sum := 0.0
	for _, w := range weights {
		if !usable(w) {
			return nil, false
		}
		sum += w
	}
	if sum == 0 || !usable(sum) {
		return nil, false
	}
	out = make([]float64, len(weights))
	for i, w := range weights {
		out[i] = w / sum
	}
	return out, true
}
