package estimate

import (
	"slices"

	"underpaint/engine/damage"
	"underpaint/engine/pricing"
)

// PartCost is the mean cost of one kind of part, both sides together, over all cars and
// over the most expensive fifth, and the share of each in which any of it is rusted
// through or gone (0 to 1). Money is in minor units: the labour and parts of its own
// items, without work done once for the whole car, supplies, handling or tax.
type PartCost struct {
	Part                   int // index in Body.Parts
	All, Dearest           float64
	HoledAll, HoledDearest float64
}

// Dearest compares the most expensive fifth of n simulated cars with all of them, part by
// part in the order of the body. The cars are the first n of a run with the same seed.
func Dearest(m *damage.Model, t *pricing.Table, seed uint64, n int) []PartCost {
	parts := len(m.Body.Parts)
	cost, holed := make([]float64, n*parts), make([]bool, n*parts)
	total := make([]int64, n)
	explained(m, t, seed, n, func(k int, c *damage.Car, bill *pricing.Bill, lines []pricing.Line) {
		for _, l := range lines {
			if l.Item >= 0 {
				p := m.Body.Items[l.Item].Part
				cost[k*parts+p] += atItsDay(t, bill, l)
			}
		}
		total[k] = int64(bill.Total)
		for i, condition := range c.Condition {
			if condition >= 4 {
				holed[k*parts+m.Body.Items[i].Part] = true
			}
		}
	})
	sorted := slices.Clone(total)
	slices.Sort(sorted)
	from := sorted[n-n/5]
	out := make([]PartCost, parts)
	dearest := 0.0
	for k := range total {
		in := total[k] >= from
		if in {
			dearest++
		}
		for p := range out {
			out[p].Part = p
			out[p].add(cost[k*parts+p], holed[k*parts+p], in)
		}
	}
	for p := range out {
		out[p].All, out[p].HoledAll = out[p].All/float64(n), out[p].HoledAll/float64(n)
		out[p].Dearest, out[p].HoledDearest = out[p].Dearest/dearest, out[p].HoledDearest/dearest
	}
	return out
}

// atItsDay is what the hours or the part of a line cost at the stage they belong to, in
// minor units.
func atItsDay(t *pricing.Table, bill *pricing.Bill, l pricing.Line) float64 {
	s := pricing.PhaseOf(t.Body, l)
	labour, parts := bill.PriceLevel(pricing.RisingLabour, s), bill.PriceLevel(pricing.RisingParts, s)
	return float64(float64(t.Rates.Labour.Trades[l.Trade].Rate.Of(l.Thousandths))*labour) + float64(float64(l.Price)*parts)
}

func (p *PartCost) add(cost float64, holed, dearest bool) {
	one := 0.0
	if holed {
		one = 1
	}
	p.All, p.HoledAll = p.All+cost, p.HoledAll+one
	if dearest {
		p.Dearest, p.HoledDearest = p.Dearest+cost, p.HoledDearest+one
	}
}

// OnTheirOwn returns the prices, in minor units, of n simulated cars whose items rust
// independently. It takes each item of a car from a different simulated car, so each item
// keeps its own odds and the correlation between items is lost. That is the usual wrong
// way to add up a price; the page shows it beside the right one.
func OnTheirOwn(m *damage.Model, t *pricing.Table, seed uint64, n int) []int64 {
	items := len(m.Body.Items)
	mixed, from := make([]*damage.Car, n), m.NewCar()
	u, bill := t.NewUniforms(), t.NewBill()
	by, hard := newSampler(m, seed, u.Count()), make([][factors]float64, n)
	by.reckon(t)
	for k := range mixed {
		mixed[k] = m.NewCar()
	}
	for k := range n {
		hard[k] = by.draw(k, from)
		mixed[k].History, mixed[k].Repair = from.History, from.Repair
		for i := range items {
			// Each item has its own stride, so the items of car k go to different cars.
			to := mixed[(k+1+i*(n/items|1))%n]
			to.Condition[i], to.Finding[i], to.Dent[i], to.LeadFailed[i] = from.Condition[i], from.Finding[i], from.Dent[i], from.LeadFailed[i]
		}
	}
	out := make([]int64, n)
	for k, c := range mixed {
		by.fill(k, 0, u)
		u.Car, u.Doubt, u.Rise, u.Supply = hard[k], by.doubt(k), by.rise(k), by.supplied(k, 0)
		by.another(k, 0, u)
		t.Price(c, m.Histories[c.History].LastClimate, u, bill)
		out[k] = int64(bill.Total)
	}
	return out
}
