package rates

import (
	"math"

	"underpaint/engine/car"
	"underpaint/engine/strict"
)

// rowSlack is how far a row of chances may be from 1: thirds written with six
// decimals still pass.
const rowSlack = 1e-5

func readWhatIsDone(f strict.Field) *WhatIsDone {
	if f.IsNull() {
		return nil
	}
	w := &WhatIsDone{}
	f.Keys(car.Standards...)
	for s, standard := range car.Standards {
		tables := f.Get(standard)
		tables.Keys(Kinds...)
		for k, kind := range Kinds {
			rows := tables.Get(kind)
			rows.Keys(car.ConditionIDs[:]...)
			for c, condition := range car.ConditionIDs {
				w.Chance[s][k][c] = chances(rows.Get(condition))
			}
		}
	}
	return w
}

// chances reads one row, in the order of the ways.
func chances(f strict.Field) (row [car.Ways]float64) {
	figures := f.Numbers(int(car.Ways), 0, 1)
	if len(figures) != int(car.Ways) {
		return row
	}
	copy(row[:], figures)
	sum := 0.0
	for _, x := range row {
		sum += x
	}
	if math.Abs(sum-1) > rowSlack {
		f.ComplainFound("chances that add to "+plain(sum), "six chances that add to 1")
	}
	return row
}
