package session

import (
	"cmp"
	"slices"
)

// sortByFloat sorts list by a rising key. Equal entries keep their order.
func sortByFloat[T any](list []T, key func(T) float64) {
	slices.SortStableFunc(list, func(a, b T) int { return cmp.Compare(key(a), key(b)) })
}

// upTo returns 0, 1 … n−1.
func upTo(n int) []int {
	out := make([]int, n)
	for k := range out {
		out[k] = k
	}
	return out
}
