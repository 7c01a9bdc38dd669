//go:build !js

package tests

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/tests/figures"
	"underpaint/tests/plain"
)

// The probabilities of the network against plainly drawn cars weighted by what was
// seen; that side has no grid, no table and no message (package plain).

// weighedEffective is the effective number of cars in each state of cover.
const weighedEffective = 20000

// gridsMove is the most by which the grids of the network move a probability; the
// network's convergence test enforces it.
const gridsMove = 0.0002

// weighedItems are the ten items whose probabilities are compared.
var weighedItems = []string{"outer_sill.left", "inner_sill.left", "outer_sill.right", "front_floor.left", "quarter_lower_rear.right",
	"front_rail.right", "battery_tray.whole", "trunk_floor.whole", "roof_skin.whole", "quarter_inner.left"}

// weighedCase is one car, described for both sides.
type weighedCase struct {
	name             string
	place            string
	workedIn         int
	earlier, covered string
	looks            []evidence.Look
}

func shopLook(look, on, result string) evidence.Look {
	return evidence.Look{Look: look, On: on, Result: result, By: evidence.ByShop}
}

var weighedCases = []weighedCase{
	{"painted lately, six good prods and a bubble", "mild", 0, "not_known_of", "yes", []evidence.Look{
		shopLook("prod", "front_floor.left", "no"), shopLook("prod", "front_floor.right", "no"), shopLook("prod", "outer_sill.right", "no"),
		shopLook("prod", "inner_sill.left", "no"), shopLook("prod", "rear_rail.left", "no"), shopLook("prod", "post_foot.front_left", "no"),
		shopLook("bubbles", "quarter_lower_rear.right", "yes")}},
	{"restored in 1998", "damp", 1998, "stripped_and_restored", "", nil},
	{"door gaps on the left and two prods", "dry", 0, "not_sure", "", []evidence.Look{
		shopLook("gaps", "left", "yes"), shopLook("prod", "outer_sill.left", "yes"), shopLook("prod", "front_rail.right", "no")}},
}

// levels are the histories of a car of 55 years.
func (w *weighedCase) levels(t *testing.T) []exposure.History {
	t.Helper()
	histories, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{{Climate: w.place, Years: 15, Kept: "driven_all_year"},
		{Climate: w.place, Years: 40, Kept: "garage"}}}}, exposure.Asked{Year: 2026, WorkedIn: w.workedIn})
	must(t, err)
	return histories
}

// number is one posterior mean, by name.
type number struct {
	name string
	mean float64
}

// network returns the engine's numbers.
func (w *weighedCase) network(t *testing.T, b *car.Body, independent bool) (out []number) {
	t.Helper()
	seen, err := evidence.FromLooks(b, w.looks)
	must(t, err)
	m, err := damage.New(damage.Known{Body: b, Histories: w.levels(t), EarlierWork: w.earlier, Seen: seen.Items, Worst: seen.Worst, Independent: independent,
		Cover: damage.Cover{Answer: w.covered, Fresh: seen.Cover, Seen: seen.CoveredItems, Worst: seen.CoveredWorst}}, damage.StandardGrids)
	must(t, err)
	chances, holed := m.Chances(), 0.0
	for _, c := range chances {
		holed += c.Condition[4] + c.Condition[5]
	}
	for _, i := range itemsNamed(t, b, weighedItems...) {
		for k, p := range chances[i].Condition {
			out = append(out, number{b.Items[i].ID + " " + car.ConditionIDs[k], p})
		}
		for f, p := range chances[i].Finding {
			out = append(out, number{b.Items[i].ID + " " + damage.FindingIDs[f], p})
		}
		out = append(out, number{b.Items[i].ID + " dent", chances[i].Dent})
	}
	for r, p := range m.RepairState() {
		out = append(out, number{damage.RepairStateIDs[r], p})
	}
	return append(out, number{"items rusted through or gone", holed})
}

func itemsNamed(t *testing.T, b *car.Body, ids ...string) (out []int) {
	t.Helper()
	for _, id := range ids {
		i, ok := b.ItemNamed(id)
		if !ok {
			t.Fatalf("no %s", id)
		}
		out = append(out, i)
	}
	return out
}

// plainly returns the same numbers from plainly drawn cars, in the same order; with
// noCauses, from cars that only rust ever harmed.
func (w *weighedCase) plainly(t *testing.T, b *car.Body, noCauses bool) plain.Weighed {
	t.Helper()
	fig, err := figures.ReadDamage("..")
	must(t, err)
	looks, err := figures.ReadLooks("..")
	must(t, err)
	cars, err := plain.New(plain.Told{Body: b, Histories: w.levels(t), EarlierWork: w.earlier, Cover: w.covered, NoCauses: noCauses}, fig, rand.New(rand.NewPCG(5, 11)))
	must(t, err)
	var seen plain.Seen
	for _, l := range w.looks {
		kind := looks[l.Look]
		at := []int(nil)
		if kind.BySide {
			for i := range b.Items {
				if kind.At(b, i) && b.Items[i].Side.String() == l.On {
					at = append(at, i)
				}
			}
		} else {
			at = itemsNamed(t, b, l.On)
		}
		seen = seen.Look(kind, l.Result == "yes", at...)
	}
	items := itemsNamed(t, b, weighedItems...)
	perItem := car.Conditions + int(damage.Findings) + 1
	states := len(items) * perItem
	return cars.Weigh(seen, weighedEffective, 3_000_000, states+damage.RepairStates+1, func(one *plain.Car, out []float64) {
		for n, i := range items {
			of := out[n*perItem:]
			of[one.Condition[i]] = 1
			of[car.Conditions+int(one.Finding[i])] = 1
			if one.Dent[i] {
				of[perItem-1] = 1
			}
		}
		out[states+one.Repair] = 1
		for _, k := range one.Condition {
			if k >= 4 {
				out[states+damage.RepairStates]++
			}
		}
	})
}

// TestWeighedCars compares every number to four standard errors plus what the grids may
// move it. The standard error of a probability is at least the one that it would have
// under the network, so that a few rare cars with large weights do not pass for
// certainty.
func TestWeighedCars(t *testing.T) {
	b, err := car.Load("two_door_unitary")
	must(t, err)
	for _, w := range weighedCases {
		t.Run(w.name, func(t *testing.T) {
			drawn := w.plainly(t, b, false)
			t.Logf("%d cars drawn, effective %.0f as it shows and %.0f covered", drawn.Drawn, drawn.Effective[0], drawn.Effective[1])
			if min(drawn.Effective[0], drawn.Effective[1]) < weighedEffective {
				t.Error("too few effective cars")
			}
			faults, worst := unlike(w.network(t, b, false), drawn)
			for _, f := range faults {
				t.Error(f)
			}
			last := len(drawn.Mean) - 1
			t.Logf("largest difference %.1f standard errors; items rusted through or gone: %.3f ± %.3f drawn", worst, drawn.Mean[last], drawn.SE[last])
			if f, _ := unlike(w.network(t, b, true), drawn); f == nil {
				t.Error("parts on their own luck pass")
			}
		})
	}
}

// TestCausesLeftOutAreCaught: after one or two checks on a dry car, cars that only rust
// ever harmed differ from those of the network.
func TestCausesLeftOutAreCaught(t *testing.T) {
	b, err := car.Load("two_door_unitary")
	must(t, err)
	w := weighedCases[2]
	faults, worst := unlike(w.network(t, b, false), w.plainly(t, b, true))
	if faults == nil {
		t.Error("cars without causes of their own pass")
	}
	t.Logf("%d numbers are off, the worst by %.0f standard errors", len(faults), worst)
}

// unlike lists the numbers of the network that the weighted cars contradict, and by how
// many standard errors the worst of all differs.
func unlike(network []number, drawn plain.Weighed) (faults []string, worst float64) {
	effective := min(drawn.Effective[0], drawn.Effective[1])
	for n, want := range network {
		se := drawn.SE[n]
		if want.mean < 1 {
			se = max(se, math.Sqrt(want.mean*(1-want.mean)/effective))
		}
		off := max(0, math.Abs(drawn.Mean[n]-want.mean)-gridsMove) / max(se, 1e-9)
		worst = max(worst, off)
		if off > 4 {
			faults = append(faults, fmt.Sprintf("%s: %.5f, of weighed cars %.5f ± %.5f", want.name, want.mean, drawn.Mean[n], se))
		}
	}
	return faults, worst
}
