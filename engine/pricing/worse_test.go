package pricing

import (
	"slices"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// assembly returns a part with everything that its full panel covers and every panel
// that covers any of it.
func assembly(table *Table, panel int) (items, panels []int) {
	items = []int{panel}
	for grown := true; grown; {
		grown = false
		for i, covered := range table.covers {
			touches := slices.Contains(items, i) || slices.ContainsFunc(covered, func(k int) bool { return slices.Contains(items, k) })
			for _, k := range append([]int{i}, covered...) {
				if len(covered) > 0 && touches && !slices.Contains(items, k) {
					items, grown = append(items, k), true
				}
			}
		}
	}
	for _, i := range items {
		if len(table.covers[i]) > 0 {
			panels = append(panels, i)
		}
	}
	return items, panels
}

// assembled prices one assembly of an otherwise sound car: labour and parts after the
// survey, at whole-car factors of 1.
type assembled struct {
	table         *Table
	c             *damage.Car
	u             *Uniforms
	b             *Bill
	items, panels []int
}

func newAssembled(model *damage.Model, table *Table, panel int) *assembled {
	a := &assembled{table: table, c: model.NewCar(), u: table.NewUniforms(), b: table.NewBill()}
	setAll(a.u, .5)
	a.items, a.panels = assembly(table, panel)
	return a
}

func (a *assembled) drawn(s *chance.Stream) {
	for _, i := range a.items {
		a.u.Way[i], a.u.Hours[i], a.u.Price[i] = s.Uniform(), s.Uniform(), s.Uniform()
	}
}

func (a *assembled) costs() float64 {
	a.table.Price(a.c, "dry", a.u, a.b)
	sum := a.b.Parts
	for _, l := range a.b.Labour {
		sum += l
	}
	return float64(sum)
}

// byHand says whether any of its panels is made by hand.
func (a *assembled) byHand() bool {
	return slices.ContainsFunc(a.panels, func(i int) bool { return a.b.Drawn[i] > car.Full })
}

// fallWhenWorse makes one item of an assembly worse and returns how far its cost falls,
// as a share of its most expensive full panel; below 0 if the cost rises. A panel that
// is made by hand because none can be bought is not compared with a bought one.
func (a *assembled) fallWhenWorse(n uint64) float64 {
	s := chance.NewStream(seed, n)
	a.drawn(&s)
	for _, i := range a.items {
		a.c.Condition[i] = int8(s.Uniform() * car.Conditions)
	}
	worse := a.items[int(s.Uniform()*float64(len(a.items)))]
	a.c.Condition[worse] = min(a.c.Condition[worse], car.Conditions-2)
	before, byHand := a.costs(), a.byHand()
	a.c.Condition[worse] += 1 + int8(s.Uniform()*float64(car.Conditions-1-a.c.Condition[worse]))
	after, full := a.costs(), 0.0
	if byHand || a.byHand() {
		return 0
	}
	for _, i := range a.panels {
		full = max(full, byItself(a.table, i, car.Full, a.u))
	}
	return (before - after) / full
}

// TestWorseMetalHardlyEverCostsLess: on each car, an assembly in which one part gets
// worse never costs less by more than the margin of the rule, .15 of a full panel (plus
// the rounding of a few lines). Without the rule it falls by more than a whole panel.
func TestWorseMetalHardlyEverCostsLess(t *testing.T) {
	const rounding = .001
	for _, body := range []string{"two_door_unitary", "pickup"} {
		model, table := testTable(t, body, "show")
		without := *table
		without.panels = nil
		fall := 0.0
		properties := gopter.NewProperties(parameters())
		for _, p := range table.panels {
			ruled, free := newAssembled(model, table, p.item), newAssembled(model, &without, p.item)
			properties.Property("worse metal, "+body+", "+table.Body.Items[p.item].ID, prop.ForAll(func(n uint64) bool {
				fall = max(fall, free.fallWhenWorse(n))
				return ruled.fallWhenWorse(n) <= published-1+rounding
			}, gen.UInt64()))
		}
		properties.TestingRun(t)
		if fall < 1 {
			t.Errorf("%s: falls by %.3f of a panel without the rule: nothing to correct", body, fall)
		}
	}
}

// TestGoneCostsAtLeastRustedThrough: for every assembly, all of it in one condition,
// the mean cost over equal draws does not fall from one condition to the next worse, at
// any standard. Without the rule, doors that are gone cost less than doors rusted
// through.
func TestGoneCostsAtLeastRustedThrough(t *testing.T) {
	const draws = 500
	means := func(model *damage.Model, table *Table, panel int) (mean [car.Conditions]float64) {
		a := newAssembled(model, table, panel)
		for n := range uint64(draws) {
			s := chance.NewStream(seed, n)
			a.drawn(&s)
			for k := range mean {
				for _, i := range a.items {
					a.c.Condition[i] = int8(k)
				}
				mean[k] += a.costs() / draws
			}
		}
		return mean
	}
	for _, body := range car.BodyIDs {
		for _, standard := range car.Standards {
			model, table := testTable(t, body, standard)
			for _, p := range table.panels {
				if table.Body.Items[p.item].Side == car.Right {
					continue // the same as the left
				}
				mean := means(model, table, p.item)
				for k := 1; k < len(mean); k++ {
					if mean[k] < mean[k-1] {
						t.Errorf("%s, %s, %s: %s %.0f, a step better %.0f", body, standard, table.Body.Items[p.item].ID, car.ConditionIDs[k], mean[k], mean[k-1])
					}
				}
			}
		}
	}
	model, table := testTable(t, "pickup", "show")
	without := *table
	without.panels = nil
	shell := means(model, &without, itemNamed(t, table, "door_shell.left"))
	if gone, through := shell[car.Conditions-1], shell[car.Conditions-2]; gone >= through {
		t.Errorf("without the rule a door that is gone costs %.0f, rusted through %.0f: nothing to correct", gone, through)
	}
}
