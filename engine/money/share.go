package money

import (
	"math/bits"
	"slices"
)

// Share splits an amount in proportion to weights by the largest remainder: it rounds
// every part towards zero and gives the remaining units, one each, to the parts that lost
// most, the earlier one on a tie. The parts add up to total, and a weight of zero gets 0.
//
// It panics if a weight is negative, or if no weight is above zero and total is not zero.
func Share(total Minor, weights []int64) []Minor {
	sum := sumWeights(weights)
	parts := make([]Minor, len(weights))
	if total == 0 {
		return parts
	}
	if sum == 0 {
		panic("engine: internal error: nothing to share by")
	}
	whole := magnitude(int64(total))
	left := whole
	lost := make([]uint64, len(weights))
	order := make([]int, len(weights))
	for i, w := range weights {
		hi, lo := bits.Mul64(whole, uint64(w))
		q, r := bits.Div64(hi, lo, sum) // w ≤ sum, so q ≤ whole
		parts[i], lost[i], order[i] = Minor(q), r, i
		left -= q
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case lost[a] > lost[b]:
			return -1
		case lost[a] < lost[b]:
			return 1
		}
		return 0
	})
	// Fewer units are left than there are parts that lost something, so a part that lost
	// nothing (such as one with a zero weight) is never reached.
	for _, i := range order[:left] {
		parts[i]++
	}
	if total < 0 {
		for i := range parts {
			parts[i] = -parts[i]
		}
	}
	return parts
}

// sumWeights adds the weights and checks them.
func sumWeights(weights []int64) uint64 {
	sum := uint64(0)
	for _, w := range weights {
		next, carry := bits.Add64(sum, uint64(w), 0)
		if w < 0 || carry != 0 {
			panic("engine: internal error: weight negative or out of range")
		}
		sum = next
	}
	return sum
}
