package session

import (
	"math"

	"underpaint/engine/money"
)

// Axis is the money axis that all rows of a picture share. It starts at 0.
type Axis struct {
	Max   int64 // minor units
	Ticks []Tick
}

// Tick is one mark of an axis: where it stands, from 0 to 1, and its amount in
// whole major units.
type Tick struct {
	At    float64
	Major int64
}

// NewAxis returns an axis that reaches a little past most, the most expensive dot, and at
// least to least. Both are in minor units.
func NewAxis(c money.Currency, most float64, least int64) Axis {
	major := math.Max(most*1.06, float64(least)) / math.Pow10(c.Digits)
	step := float64(RoundUp125(major / 5))
	n := math.Ceil(major / step)
	if least > 0 && float64(least) >= most {
		n = math.Floor(float64(least)/math.Pow10(c.Digits)/step + 0.5)
	}
	a := Axis{Max: int64(n * step * math.Pow10(c.Digits))}
	for k := 0.0; k <= n; k++ {
		a.Ticks = append(a.Ticks, Tick{k / n, int64(k * step)})
	}
	return a
}

// Dot is one car in twenty: its middle on the axis, from 0 to 1, and how high it is
// stacked. Exact is where its price is, to a thousandth of the axis, for whoever draws
// larger dots.
type Dot struct {
	At            float64
	Column, Stack int
	Inside        bool
	Exact         float64
}

// dotColumns is how many dots fit side by side on the axis.
const dotColumns = 30

// PackDots stacks the twenty dots, in minor units, in columns one dot wide, so that none
// covers another. Each dot sits at the middle of its column.
func PackDots(values [20]float64, a Axis) (dots [20]Dot) {
	var height [dotColumns + 1]int
	for i, v := range values {
		column := min(dotColumns-1, max(0, int(v/float64(a.Max)*dotColumns)))
		height[column]++
		dots[i] = Dot{
			At: (float64(column) + 0.5) / dotColumns, Column: column, Stack: height[column], Inside: i >= 2 && i < 18,
			Exact: math.Round(min(1, max(0, v/float64(a.Max)))*1000) / 1000,
		}
	}
	return dots
}
