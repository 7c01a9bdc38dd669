package estimate

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// Worth is how wide the range would be after one yes-or-no check, before anyone makes it.
// Widths are P90 − P10 in minor units. On average a check leaves the range as wide as
// before or narrower, but not in every outcome.
type Worth struct {
	Yes               float64 // chance of yes
	WidthYes, WidthNo float64 // 0 for an impossible outcome
	Expected          float64 // mean of the two by their chances
	Now               float64 // without the check
	Effective         float64 // smallest effective sample size behind a width
}

// IfKnown works out the worth of knowing an event for the k-th table. yes is the chance of
// the event on a car, 0 to 1. Each simulated car is weighted by that chance or by its
// complement: Bayes' rule on the cars of the run, which equals conditioning the network
// apart from sampling error. Effective is the effective sample size, (Σw)²/Σw² (L. Kish,
// Survey Sampling, Wiley, 1965). [Run.Remember] must have been called.
func (r *Run) IfKnown(k int, yes func(c Seen) float64) Worth {
	m, order := r.remembered(), r.rows[k].order()
	weight := make([]float64, len(order))
	for n, c := range order {
		weight[n] = yes(Seen{m, int(c)})
	}
	return r.worth(k, weight)
}

// IfLook is [Run.IfKnown] for one check whose chance of yes depends on the damage of one
// item, or of the worst of several for a check of a whole side. It calls chance once for
// each packed byte (see [Pack]). Of several items the greatest byte counts, because it has
// the worst condition.
func (r *Run) IfLook(k int, items []int, chance func(packed byte) float64) Worth {
	m, order := r.remembered(), r.rows[k].order()
	table := chances(chance)
	weight := make([]float64, len(order))
	if len(items) == 1 {
		packed := m.packed[items[0]]
		for n, c := range order {
			weight[n] = table[packed[c]]
		}
		return r.worth(k, weight)
	}
	worst := make([]byte, r.cars)
	for _, i := range items {
		for c, b := range m.packed[i] {
			worst[c] = max(worst[c], b)
		}
	}
	for n, c := range order {
		weight[n] = table[worst[c]]
	}
	return r.worth(k, weight)
}

// chances tabulates the chance of yes for every byte that [Pack] can return.
func chances(chance func(packed byte) float64) (table [packs]float64) {
	for k := range car.Conditions {
		for f := damage.NoFinding; f < damage.Findings; f++ {
			for _, dent := range []bool{false, true} {
				b := Pack(k, f, dent)
				table[b] = chance(b)
			}
		}
	}
	return table
}

func (r *Run) remembered() *memory {
	if r.memory == nil || r.cars == 0 {
		panic("engine: internal error: a run asked about cars that it does not remember")
	}
	return r.memory
}

// order lists the cars from the cheapest to the most expensive, and cars of the same price
// in the order in which they were simulated. It is worked out once for the cars so far.
func (one *row) order() []int32 {
	if len(one.ordered) == len(one.total) {
		return one.ordered
	}
	one.ordered = make([]int32, len(one.total))
	for n := range one.ordered {
		one.ordered[n] = int32(n)
	}
	slices.SortStableFunc(one.ordered, func(a, b int32) int {
		switch x, y := one.total[a], one.total[b]; {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	return one.ordered
}

// worth works out both widths from the weighted prices in order.
func (r *Run) worth(k int, weight []float64) Worth {
	e := r.rows[k].ends(r.replicates)
	w := Worth{Now: e.high - e.low, Effective: math.Inf(1)}
	var yes, no weighted
	for _, v := range weight {
		if !(v >= 0 && v <= 1) {
			panic("engine: internal error: a chance outside 0 to 1 weighs a car")
		}
		yes.count(v)
		no.count(1 - v)
	}
	w.Yes = yes.sum / float64(len(weight))
	for _, one := range []*weighted{&yes, &no} {
		if n := one.effective(); n > 0 {
			one.aim(0.1, 0.9)
			w.Effective = math.Min(w.Effective, n)
		}
	}
	for n, v := range weight {
		x := float64(e.sorted[n])
		yes.take(x, v)
		no.take(x, 1-v)
	}
	w.WidthYes, w.WidthNo = yes.value[1]-yes.value[0], no.value[1]-no.value[0]
	w.Expected = float64(w.Yes*w.WidthYes) + float64((1-w.Yes)*w.WidthNo)
	return w
}
