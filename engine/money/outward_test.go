package money

import (
	"math"
	"testing"
)

func TestOutwardStep(t *testing.T) {
	for _, row := range []struct{ width, want Minor }{
		{0, 1}, {-5, 1}, {1, 1}, {20, 1},
		// The step changes from 1 to 2 at 20√2 = 28.28, from 2 to 5 at 20√10 = 63.25, and
		// from 5 to 10 at 20√50 = 141.42 (arithmetic). One width below and one above each.
		{28, 1}, {29, 2}, {63, 2}, {64, 5}, {141, 5}, {142, 10},
		{282, 10}, {283, 20}, {632, 20}, {633, 50}, {1414, 50}, {1415, 100},
		{31_000_00, 2000_00}, // 31,000.00: a twentieth is 1,550
		{math.MaxInt64, 500_000_000_000_000_000},
	} {
		if got := OutwardStep(row.width); got != row.want {
			t.Errorf("OutwardStep(%d) = %d, want %d", row.width, got, row.want)
		}
	}
}

// Compared with the definition in logarithms, for widths of every size.
func TestOutwardStepIsNearestInLog(t *testing.T) {
	for width := Minor(20); width < math.MaxInt64/3*2; width += width/7 + 1 {
		best, far := Minor(0), math.Inf(1)
		for k := 0; k < 18; k++ {
			for _, lead := range []float64{1, 2, 5} {
				step := lead * math.Pow10(k)
				if off := math.Abs(math.Log(float64(width) / 20 / step)); off < far {
					best, far = Minor(step), off
				}
			}
		}
		if got := OutwardStep(width); got != best {
			t.Errorf("OutwardStep(%d) = %d, want %d", width, got, best)
		}
	}
}

func TestRoundToStep(t *testing.T) {
	for _, row := range []struct{ m, step, down, nearest, up Minor }{
		{0, 5, 0, 0, 0}, {5, 5, 5, 5, 5}, {7, 5, 5, 5, 10}, {8, 5, 5, 10, 10}, {-7, 5, -10, -5, -5}, {-8, 5, -10, -10, -5},
		{15, 10, 10, 20, 20}, {-15, 10, -20, -20, -10}, {11_437_21, 500_00, 11_000_00, 11_500_00, 11_500_00}, {3, 1, 3, 3, 3},
	} {
		down, nearest, up := RoundDown(row.m, row.step), RoundNearest(row.m, row.step), RoundUp(row.m, row.step)
		if down != row.down || nearest != row.nearest || up != row.up {
			t.Errorf("%d by %d: %d %d %d, want %d %d %d", row.m, row.step, down, nearest, up, row.down, row.nearest, row.up)
		}
	}
	mustPanic(t, "step 0", func() { RoundDown(1, 0) })
	mustPanic(t, "step -1", func() { RoundUp(1, -1) })
	mustPanic(t, "above the range", func() { RoundUp(math.MaxInt64, 10) })
	mustPanic(t, "below the range", func() { RoundDown(math.MinInt64+1, 10) })
}
