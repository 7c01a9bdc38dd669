package estimate

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
)

// Step is one stage of a job. The job can stop at the end of each.
type Step = pricing.Phase

// The stages in working order; see package pricing.
const (
	StepStrip     = pricing.PhaseStrip
	StepStructure = pricing.PhaseStructure
	StepOuter     = pricing.PhaseOuter
	StepPaint     = pricing.PhasePaint
	StepAssembly  = pricing.PhaseAssembly
	Steps         = pricing.Phases
)

// StepPlan holds the cost and hours of one stage, and the cost of the whole job up to its
// end (ByThen). Money is in minor units, hours in hours.
type StepPlan struct{ Money, ByThen, Hours Quantiles }

// Plan splits the prices of n simulated cars into stages. The stages of a car add up to
// its price. Labour and parts belong to the stage of their item, and access work to the
// structure. Consumables are divided between the two metal stages by their hours of
// metalwork, at the prices of each. The rest belongs to the stage that causes it.
//
// cameTo holds the actual costs of the finished stages, from the first on, in minor units.
// ByThen uses them instead of the simulated costs, and left is the cost of the stages that
// remain. still is the hours left to be worked when the shop's promise about its prices
// ends. Plan does not make later stages more expensive because a finished one was: the
// hours actually worked in the strip already reach it through the table.
func Plan(m *damage.Model, t *pricing.Table, seed uint64, n int, cameTo []int64) (plan [Steps]StepPlan, left, still Quantiles) {
	var money, byThen, hours [Steps][]float64
	var rest, unworked []float64
	explained(m, t, seed, n, func(_ int, _ *damage.Car, bill *pricing.Bill, lines []pricing.Line) {
		cost, worked := stepsOf(m.Body, t, lines, bill)
		sum, toCome := 0.0, 0.0
		for s := range cost {
			if s < len(cameTo) {
				sum += float64(cameTo[s])
			} else {
				sum, toCome = sum+cost[s], toCome+cost[s]
			}
			money[s], byThen[s], hours[s] = append(money[s], cost[s]), append(byThen[s], sum), append(hours[s], worked[s])
		}
		rest, unworked = append(rest, toCome), append(unworked, float64(bill.Left)/1000)
	})
	for s := range plan {
		plan[s] = StepPlan{quantilesOf(money[s]), quantilesOf(byThen[s]), quantilesOf(hours[s])}
	}
	return plan, quantilesOf(rest), quantilesOf(unworked)
}

// stepsOf returns the cost in minor units and the hours of each stage of one car.
func stepsOf(b *car.Body, t *pricing.Table, lines []pricing.Line, bill *pricing.Bill) (cost, hours [Steps]float64) {
	metal := [Steps]float64{}
	for _, l := range lines {
		if l.Strip {
			continue
		}
		s := pricing.PhaseOf(b, l)
		h := float64(l.Thousandths) / 1000
		hours[s] += h
		if l.Trade == car.Metal {
			metal[s] += float64(h * bill.PriceLevel(pricing.RisingMaterials, s))
		}
		cost[s] += float64(float64(t.Rates.Labour.Trades[l.Trade].Rate.Of(l.Thousandths)) * bill.PriceLevel(pricing.RisingLabour, s))
		if l.ID == pricing.AnotherBodyPrice { // at the prices of its day, and without handling
			cost[s] += float64(l.Price)
			continue
		}
		cost[s] += float64(float64(l.Price+t.Rates.Parts.Handling.Of(l.Price)) * bill.PriceLevel(pricing.RisingParts, s))
	}
	for _, h := range bill.StripHours {
		hours[StepStrip] += float64(h) / 1000
	}
	cost[StepStrip] = float64(bill.Strip)
	if all := metal[StepStructure] + metal[StepOuter]; all > 0 {
		for _, s := range []Step{StepStructure, StepOuter} {
			cost[s] += float64(float64(bill.Consumables) * (metal[s] / all))
		}
	}
	cost[StepPaint] += float64(bill.Materials)
	before := 0.0
	for s := range StepAssembly {
		before += cost[s]
	}
	cost[StepAssembly] = float64(bill.Total) - before
	return cost, hours
}

func quantilesOf(v []float64) Quantiles {
	slices.Sort(v)
	return Quantiles{chance.Quantile(v, 0.1, chance.HF7), chance.Quantile(v, 0.5, chance.HF7), chance.Quantile(v, 0.9, chance.HF7)}
}
