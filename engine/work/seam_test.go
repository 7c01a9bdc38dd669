package work

import (
	"math"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// bothNew prices a car of which two items are made whole and nothing else is
// wished, every uniform in the middle: the metalwork of the two in hours, and
// whether other work came with it that has to do with them.
func bothNew(t *testing.T, table *Table, c *damage.Car, one, two int) (metal [2]float64, alone bool) {
	t.Helper()
	items := table.Body.Items
	b, lines := bill(t, table, c, only(t, table, map[string]car.Way{items[one].ID: car.Full, items[two].ID: car.Full}), .5)
	for _, l := range lines {
		for n, i := range [2]int{one, two} {
			if l.Item == i && l.ID == "" && l.Trade == car.Metal {
				metal[n] += float64(l.Thousandths) / 1000
			}
		}
	}
	alone = !b.Covered[one] && !b.Covered[two]
	for i, w := range b.Way {
		if i != one && i != two && w >= car.Full {
			alone = false
		}
	}
	return metal, alone
}

// TestSeamOfNeighbours: of two new neighbours the smaller, by likely metalwork,
// is charged its hours less the published share for the seam they have in common;
// the larger is charged them whole, and two parts that are no neighbours both are.
// The share by hand: .15, as the file of the work publishes it.
func TestSeamOfNeighbours(t *testing.T) {
	const left = 1 - .15
	for _, body := range []string{"two_door_unitary", "pickup"} {
		model, table := testTable(t, body, "show")
		c := model.NewCar()
		neighbours, strangers := 0, 0
		for _, s := range table.seams {
			if one, two := table.Body.Items[s.first], table.Body.Items[s.second]; s.first >= s.second || one.Side != two.Side {
				t.Errorf("%s: %s and %s share no seam", body, one.ID, two.ID)
			}
		}
		for one := range table.items {
			for two := one + 1; two < len(table.items); two++ {
				pair := slices.Contains(table.seams, seam{one, two})
				if !pair && (one+two)%7 != 0 || !canBeNew(table, one) || !canBeNew(table, two) {
					continue
				}
				metal, alone := bothNew(t, table, c, one, two)
				if !alone {
					continue
				}
				first, second := cardOf(t, table, one, 4, car.Full).ByTrade[car.Metal][1], cardOf(t, table, two, 4, car.Full).ByTrade[car.Metal][1]
				want := [2]float64{first, second}
				switch {
				case !pair:
					strangers++
				case first < second:
					want[0], neighbours = first*left, neighbours+1
				default:
					want[1], neighbours = second*left, neighbours+1
				}
				if math.Abs(metal[0]-want[0]) > .002 || math.Abs(metal[1]-want[1]) > .002 {
					t.Errorf("%s, %s and %s: %.3f h and %.3f h, by hand %.3f and %.3f", body, table.Body.Items[one].ID, table.Body.Items[two].ID, metal[0], metal[1], want[0], want[1])
				}
			}
		}
		if neighbours < 10 || strangers < 10 {
			t.Errorf("%s: only %d neighbours and %d others compared", body, neighbours, strangers)
		}
		t.Logf("%s: %d neighbours, %d others", body, neighbours, strangers)
	}
}

// canBeNew says whether a whole panel is done there, once for the item itself.
func canBeNew(table *Table, i int) bool {
	return !table.items[i].once && table.isDone(i, car.Full)
}
