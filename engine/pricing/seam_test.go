package pricing

import (
	"math"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// bothNew prices a car of which two items are made whole and nothing else is wanted,
// with every uniform at one half. It returns the metalwork of the two in hours, and
// whether other work that concerns them came with it.
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

// TestSeamOfNeighbours: of two new neighbours the smaller, by likely metalwork, is
// charged its hours less the published share for their common seam; the larger is
// charged in full, and so are both of two parts that are no neighbours. The share by
// hand: .15, as work.json publishes it.
func TestSeamOfNeighbours(t *testing.T) {
	const left = 1 - .15
	for _, body := range []string{"two_door_unitary", "pickup"} {
		model, table := testTable(t, body, "show")
		c := model.NewCar()
		neighbours, strangers := 0, 0
		for _, s := range table.seams {
			if one, two := table.Body.Items[s.first], table.Body.Items[s.second]; s.first >= s.second || one.Side == car.Left && two.Side == car.Right || one.Side == car.Right && two.Side == car.Left {
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

// TestSeamAcrossTheMiddle: a part without a side shares a seam with its neighbours on
// both sides, and parts on opposite sides share none. By hand, at show standard with
// every uniform at one half: the trunk floor takes 19 h of metalwork and a drop-off 7
// h, of which .15 is credited on each side (5.95 h); the floor, the largest of the
// three, is charged in full.
func TestSeamAcrossTheMiddle(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	full := map[string]car.Way{"trunk_floor.whole": car.Full, "trunk_dropoff.left": car.Full, "trunk_dropoff.right": car.Full}
	_, lines := bill(t, table, model.NewCar(), only(t, table, full), .5)
	for id := range full {
		i := itemNamed(t, table, id)
		want := table.Body.PartOf(i).Ways[car.Full].Hours[car.Metal][1]
		if id != "trunk_floor.whole" {
			want *= 1 - .15
		}
		got := 0.0
		for _, l := range lines {
			if l.Item == i && l.ID == "" && l.Trade == car.Metal {
				got += float64(l.Thousandths) / 1000
			}
		}
		if math.Abs(got-want) > .001 {
			t.Errorf("%s: %.3f h, by hand %.3f", id, got, want)
		}
	}
	left, right := itemNamed(t, table, "trunk_dropoff.left"), itemNamed(t, table, "trunk_dropoff.right")
	if slices.Contains(table.seams, seam{left, right}) {
		t.Error("parts of the two sides share a seam")
	}
}

// TestSeamOfRailsByHand: a chassis rail made by hand (28 h of metalwork) gives a new
// outrigger (5 h) and a new mount (4 h) their credit; a rail that another chassis
// replaces gives the mount none. A rail also takes credit beside a larger neighbour; no
// body has one yet, so the test makes the kick-up (26 h) larger.
func TestSeamOfRailsByHand(t *testing.T) {
	model, table := testTable(t, "hardtop_on_frame", "show")
	const rail, outrigger, mount, kickup = "chassis_rail.left", "outrigger.left_1", "body_mount.left_1", "chassis_kickup.whole"
	metal := func(ways map[string]car.Way, id string) (hours float64) {
		i := itemNamed(t, table, id)
		_, lines := bill(t, table, model.NewCar(), only(t, table, ways), .5)
		for _, l := range lines {
			if l.Item == i && l.ID == "" && l.Trade == car.Metal {
				hours += float64(l.Thousandths) / 1000
			}
		}
		return hours
	}
	check := func(beside string, w car.Way, id string, want float64) {
		t.Helper()
		ways := map[string]car.Way{rail: w, beside: car.Full}
		if got := metal(ways, id); math.Abs(got-want) > .001 {
			t.Errorf("rail %s beside a new %s: %s takes %.3f h, by hand %.3f", car.WayIDs[w], beside, id, got, want)
		}
	}
	check(outrigger, car.Fabricate, outrigger, 5*.85)
	check(outrigger, car.Fabricate, rail, 28)
	check(outrigger, car.Section, outrigger, 5)
	check(mount, car.Fabricate, mount, 4*.85)
	check(mount, car.Full, mount, 4)
	check(kickup, car.Fabricate, kickup, 26*.85)
	check(kickup, car.Fabricate, rail, 28)
	table.items[itemNamed(t, table, kickup)].ways[car.Full].likelyMetal = 29
	check(kickup, car.Fabricate, kickup, 26)
	check(kickup, car.Fabricate, rail, 28*.85)
}

// canBeNew says whether a whole panel is done there, for the item itself.
func canBeNew(table *Table, i int) bool {
	return !table.items[i].once && table.isDone(i, car.Full)
}
