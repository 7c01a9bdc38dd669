package money

import (
	"math"
	"slices"
	"testing"
)

// Largest remainder (Hamilton's method); expected values recomputed by hand.
func TestShare(t *testing.T) {
	for _, row := range []struct {
		total   Minor
		weights []int64
		want    []Minor
	}{
		{10000, []int64{1, 1, 1}, []Minor{3334, 3333, 3333}},
		{5, []int64{3, 7}, []Minor{2, 3}}, // 1.5 and 3.5: the tie goes to the earlier
		{1000, []int64{1, 1, 1, 1, 1, 1}, []Minor{167, 167, 167, 167, 166, 166}},
		{100, []int64{0, 33, 33, 33}, []Minor{0, 34, 33, 33}}, // a weight of zero gets 0
		{-10000, []int64{1, 1, 1}, []Minor{-3334, -3333, -3333}},
		{0, []int64{0, 0}, []Minor{0, 0}},
		{0, nil, []Minor{}},
		{7, []int64{5}, []Minor{7}},
		{1, []int64{1, 2, 1}, []Minor{0, 1, 0}},
		{math.MaxInt64, []int64{math.MaxInt64, math.MaxInt64}, []Minor{1 << 62, 1<<62 - 1}},
		{math.MinInt64, []int64{0, 1}, []Minor{0, math.MinInt64}},
	} {
		if got := Share(row.total, row.weights); !slices.Equal(got, row.want) {
			t.Errorf("Share(%d, %v) = %v, want %v", row.total, row.weights, got, row.want)
		}
	}
	mustPanic(t, "no weight", func() { Share(1, []int64{0, 0}) })
	mustPanic(t, "negative weight", func() { Share(1, []int64{2, -1}) })
	mustPanic(t, "huge weights", func() { Share(1, []int64{math.MaxInt64, math.MaxInt64, math.MaxInt64}) })
}

// The order of the weights only decides who wins a tie.
func TestShareOrder(t *testing.T) {
	a := Share(1001, []int64{2, 3, 7, 11})
	b := Share(1001, []int64{11, 7, 3, 2})
	slices.Reverse(b)
	if !slices.Equal(a, b) {
		t.Errorf("%v and, reversed, %v", a, b)
	}
}
