package message

import (
	"math"
	"strconv"

	"underpaint/engine/money"
)

// ends are the figures of one range as they are shown: both ends rounded
// outward, the others to the nearest, to the 1, 2 or 5 × 10^k nearest a
// twentieth of the width.
type ends struct {
	low, half, setAside, high, step money.Minor
}

func roundEnds(low, half, setAside, high float64) ends {
	step := money.OutwardStep(money.Minor(math.Ceil(high - low)))
	return ends{
		low:      money.RoundDown(money.Minor(math.Floor(low)), step),
		half:     money.RoundNearest(money.Minor(math.Floor(half+0.5)), step),
		setAside: money.RoundNearest(money.Minor(math.Floor(setAside+0.5)), step),
		high:     money.RoundUp(money.Minor(math.Ceil(high)), step),
		step:     step,
	}
}

// roundOutward rounds a pair of plain numbers outward to the step that suits
// their distance.
func roundOutward(low, high float64) (int64, int64) {
	step := money.OutwardStep(money.Minor(math.Ceil(high - low)))
	return int64(money.RoundDown(money.Minor(math.Floor(low)), step)), int64(money.RoundUp(money.Minor(math.Ceil(high)), step))
}

// roundUp125 rounds up to 1, 2 or 5 × 10^k.
func roundUp125(v float64) money.Minor {
	for k := int64(1); ; k *= 10 {
		for _, m := range []int64{1, 2, 5} {
			if float64(k*m) >= v {
				return money.Minor(k * m)
			}
		}
	}
}

// grouped writes a whole number with commas: 16,384.
func grouped(n int64) string {
	s := strconv.FormatInt(n, 10)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// tenths is a share as a whole number of cars in ten.
func tenths(share float64) int { return int(math.Floor(float64(share*10) + 0.5)) }

// carsInTen says a share in words: "6 cars of 10".
func carsInTen(share float64) string {
	switch n := tenths(share); {
	case share < 0.05:
		return "fewer than 1 car of 20"
	case share > 0.95:
		return "more than 19 cars of 20"
	case n == 1:
		return "1 car of 10"
	default:
		return strconv.Itoa(n) + " cars of 10"
	}
}

// axis is the money axis that all rows share. It starts at 0.
type axis struct {
	max   int64
	ticks []tick
}

type tick struct {
	at   float64
	text string
}

// newAxis reaches a little past the dearest dot, and never less than least.
func newAxis(c money.Currency, dearest float64, least int64) axis {
	major := math.Max(dearest*1.06, float64(least)) / math.Pow10(c.Digits)
	step := float64(roundUp125(major / 5))
	n := math.Ceil(major / step)
	if least > 0 && float64(least) >= dearest {
		n = math.Floor(float64(least)/math.Pow10(c.Digits)/step + 0.5)
	}
	a := axis{max: int64(n * step * math.Pow10(c.Digits))}
	for k := 0.0; k <= n; k++ {
		a.ticks = append(a.ticks, tick{k / n, shortMoney(int64(k * step))})
	}
	return a
}

// shortMoney writes a whole amount of major units for an axis: 0, 500, 50k, 2m.
func shortMoney(major int64) string {
	switch {
	case major == 0:
		return "0"
	case major%1_000_000 == 0:
		return strconv.FormatInt(major/1_000_000, 10) + "m"
	case major%1000 == 0:
		return strconv.FormatInt(major/1000, 10) + "k"
	}
	return strconv.FormatInt(major, 10)
}

// dot is one of the twenty: its middle on the axis, and how high it is stacked.
type dot struct {
	at            float64
	column, stack int
	inside        bool
	minor         int64
}

// dotColumns is how many dots fit side by side on the axis.
const dotColumns = 30

// packDots stacks the twenty dots in columns one dot wide, so that none covers
// another; each stands at the middle of its column.
func packDots(values [20]float64, a axis) (dots [20]dot) {
	var height [dotColumns + 1]int
	for i, v := range values {
		column := min(dotColumns-1, max(0, int(v/float64(a.max)*dotColumns)))
		height[column]++
		dots[i] = dot{at: (float64(column) + 0.5) / dotColumns, column: column, stack: height[column],
			inside: i >= 2 && i < 18, minor: int64(v + 0.5)}
	}
	return dots
}
