package estimate

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
)

// Step is one of the stages in which a job is done and at which it can stop.
type Step int

// The stages, in working order: natural stops of such a job (common practice, no
// published source).
const (
	StepStrip     Step = iota // strip and survey, shell in primer
	StepStructure             // hidden and structural metal, with getting in
	StepOuter                 // outer metal
	StepPaint                 // body and block, paint, materials
	StepAssembly              // assembly, work sent out, supplies
	Steps                     // how many there are
)

// StepPlan is one stage: what it takes of its own, and what the job has come to by
// its end. Money is in minor units, hours in hours.
type StepPlan struct{ Money, ByThen, Hours Quantiles }

// Plan splits n simulated cars into stages. The stages of each car add up to its
// price: labour and parts go with the item they are for, getting in with the
// structure, wire and gas with the hours of metalwork, the rest where it arises.
//
// cameTo are what finished stages came to, the first ones in order; by the end of a
// stage they stand in the place of what was imagined. That a stage came out dear
// says nothing here about those to come: hours worked in the strip are taken in by
// the table.
func Plan(m *damage.Model, t *pricing.Table, seed uint64, n int, cameTo []int64) (plan [Steps]StepPlan, left Quantiles) {
	var money, byThen, hours [Steps][]float64
	var rest []float64
	explained(m, t, seed, n, func(_ int, _ *damage.Car, bill *pricing.Bill, lines []pricing.Line) {
		cost, worked := stepsOf(m.Body, t, lines, bill)
		sum, still := 0.0, 0.0
		for s := range cost {
			if s < len(cameTo) {
				sum += float64(cameTo[s])
			} else {
				sum, still = sum+cost[s], still+cost[s]
			}
			money[s], byThen[s], hours[s] = append(money[s], cost[s]), append(byThen[s], sum), append(hours[s], worked[s])
		}
		rest = append(rest, still)
	})
	for s := range plan {
		plan[s] = StepPlan{quantilesOf(money[s]), quantilesOf(byThen[s]), quantilesOf(hours[s])}
	}
	return plan, quantilesOf(rest)
}

// stepsOf splits one car.
func stepsOf(b *car.Body, t *pricing.Table, lines []pricing.Line, bill *pricing.Bill) (cost, hours [Steps]float64) {
	metal := [Steps]float64{}
	for _, l := range lines {
		if l.Strip {
			continue
		}
		s := stepOf(b, l)
		h := float64(l.Thousandths) / 1000
		hours[s] += h
		if l.Trade == car.Metal {
			metal[s] += h
		}
		cost[s] += float64(t.Rates.Labour.Trades[l.Trade].Rate.Of(l.Thousandths))
		cost[s] += float64(l.Price + t.Rates.Parts.Handling.Of(l.Price))
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

// stepOf says in which stage a line of work is done.
func stepOf(b *car.Body, l pricing.Line) Step {
	switch {
	case l.Trade == car.BodyWork || l.Trade == car.Paint:
		return StepPaint
	case l.Item >= 0:
		if p := b.PartOf(l.Item); p.Structural || p.Face != car.Outer {
			return StepStructure
		}
		return StepOuter
	case l.Trade == car.Metal || l.Trade == car.Prep:
		return StepStructure
	}
	return StepAssembly
}

func quantilesOf(v []float64) Quantiles {
	slices.Sort(v)
	return Quantiles{chance.Quantile(v, 0.1, chance.HF7), chance.Quantile(v, 0.5, chance.HF7), chance.Quantile(v, 0.9, chance.HF7)}
}
