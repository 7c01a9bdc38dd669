package estimate

import (
	"math"
	"slices"

	"underpaint/engine/chance"
)

// Quantiles are the quantiles of a kind of line, of hours or of weeks: one car in ten is
// below Low, half are below Half, one in ten is above High.
type Quantiles struct{ Low, Half, High float64 }

// PriceRange is the range of prices at one standard, in minor units. Dots are the medians
// of twenty equally likely slices. Quantiles follow definition 7 of Hyndman and Fan (1996).
type PriceRange struct {
	Cars                      int
	Low, Half, SetAside, High float64 // P10, P50, P80, P90
	SELow, SEHigh             float64 // standard errors of the ends
	Dots                      [20]float64
}

// Range is the full result of a run at one standard: prices and kinds of line in minor
// units; hours, weeks and metalwork hours in thousandths. Rise is how much of the price is
// there because prices rise while the job runs.
type Range struct {
	PriceRange
	Hours, Weeks, Metal Quantiles
	Rise                Quantiles
	Kinds               [Kinds]Quantiles
}

// ends are the ends of a range, their standard errors, and the sorted totals behind them.
type ends struct {
	low, high, seLow, seHigh float64
	sorted                   []int64
}

// ends works out P10 and P90 of all replicates of all cars, and their standard errors
// from the spread over the randomisations.
func (one *row) ends(replicates int) (e ends) {
	if one.knownAt == len(one.total) && one.knownAt > 0 {
		return one.known
	}
	e.sorted = slices.Clone(one.total)
	slices.Sort(e.sorted)
	e.low, e.high = chance.QuantileMinor(e.sorted, 0.1), chance.QuantileMinor(e.sorted, 0.9)
	e.seLow, e.seHigh = endErrors(one.total, replicates)
	one.known, one.knownAt = e, len(one.total)
	return e
}

// endErrors are the standard errors of P10 and P90 of all replicates of all cars, from
// their spread over the randomisations.
func endErrors(v []int64, replicates int) (low, high float64) {
	part := make([]int64, 0, len(v)/Randomisations)
	var lows, highs [Randomisations]float64
	for j := range lows {
		part = part[:0]
		for at := j * replicates; at < len(v); at += Randomisations * replicates {
			part = append(part, v[at:at+replicates]...)
		}
		slices.Sort(part)
		lows[j], highs[j] = chance.QuantileMinor(part, 0.1), chance.QuantileMinor(part, 0.9)
	}
	return standardError(lows[:]), standardError(highs[:])
}

// standardError is the standard error of the mean of independent values.
func standardError(v []float64) float64 {
	mean, sum := 0.0, 0.0
	for _, x := range v {
		mean += x
	}
	mean = float64(mean / float64(len(v)))
	for _, x := range v {
		sum += float64((x - mean) * (x - mean))
	}
	return math.Sqrt(sum / float64(len(v)*(len(v)-1)))
}

// Price works out the price range of the k-th standard from the cars so far.
func (r *Run) Price(k int) PriceRange {
	e := r.rows[k].ends(r.replicates)
	out := PriceRange{Cars: r.cars, Low: e.low, High: e.high, SELow: e.seLow, SEHigh: e.seHigh}
	out.Half, out.SetAside = chance.QuantileMinor(e.sorted, 0.5), chance.QuantileMinor(e.sorted, 0.8)
	for d := range out.Dots {
		out.Dots[d] = chance.QuantileMinor(e.sorted, (float64(d)+0.5)/20)
	}
	return out
}

// Range works out the full result of the k-th standard from the cars so far. It takes
// several times as long as Price.
func (r *Run) Range(k int) Range {
	one := &r.rows[k]
	out := Range{PriceRange: r.Price(k)}
	out.Hours, out.Weeks, out.Metal = quantiles(one.hours), quantiles(one.weeks), quantiles(one.metal)
	out.Rise = quantiles(one.rise)
	for kind := range out.Kinds {
		out.Kinds[kind] = quantiles(one.kinds[kind])
	}
	return out
}

// Weeks is how long the job takes on the k-th table, in thousandths of weeks.
func (r *Run) Weeks(k int) Quantiles { return quantiles(r.rows[k].weeks) }

// Fitting is what bought parts that do not fit, or are used ones, cost more at the k-th
// table, in minor units: labour with the consumables of its metalwork, and parts with
// handling. It is part of the price, and zero for a table that draws no such parts.
func (r *Run) Fitting(k int) Quantiles { return quantiles(r.rows[k].fitting) }

// quantiles of no values are zero.
func quantiles(v []int64) (q Quantiles) {
	if len(v) == 0 {
		return q
	}
	s := slices.Clone(v)
	slices.Sort(s)
	return Quantiles{chance.QuantileMinor(s, 0.1), chance.QuantileMinor(s, 0.5), chance.QuantileMinor(s, 0.9)}
}

// Below is the share of all replicates of all cars of the k-th standard whose price is at
// or below an amount in minor units.
func (r *Run) Below(k int, sum int64) float64 {
	n := 0
	for _, v := range r.rows[k].total {
		if v <= sum {
			n++
		}
	}
	return float64(n) / float64(len(r.rows[k].total))
}

// Totals returns the prices of the k-th standard in minor units, car by car, with all
// replicates of a car together. Callers must not change them.
func (r *Run) Totals(k int) []int64 { return r.rows[k].total }

// Holed is the share of cars in which item i is rusted through or gone.
func (r *Run) Holed(i int) float64 { return float64(r.holed[i]) / float64(r.cars) }

// ZoneHoled is the share of cars in which any item in the zone is rusted through or gone.
func (r *Run) ZoneHoled(z int) float64 { return float64(r.zone[z]) / float64(r.cars) }

// ZoneOwnCause is the share of the cars of [Run.ZoneHoled] in which every such item has a
// cause of its own: a leak, acid, a blocked drain. It is 0 if there are no such cars.
func (r *Run) ZoneOwnCause(z int) float64 {
	if r.zone[z] == 0 {
		return 0
	}
	return float64(r.own[z]) / float64(r.zone[z])
}

// PartHoled is the share of cars in which any item of the part is rusted through or gone.
func (r *Run) PartHoled(p int) float64 { return float64(r.part[p]) / float64(r.cars) }

// Mean is the mean of one kind of line over the first cars of the k-th standard, in minor
// units. To compare two runs of one seed, ask both for the same number of cars: otherwise
// chance alone would change figures that nobody changed.
func (r *Run) Mean(k int, kind Kind, cars int) float64 {
	first := r.rows[k].kinds[kind]
	first = first[:min(len(first), cars*r.replicates)]
	sum := int64(0)
	for _, v := range first {
		sum += v
	}
	return float64(sum) / float64(max(1, len(first)))
}

// ReplacedM2 is the mean area of the parts replaced at the k-th standard, in m²
// ([pricing.Bill.ReplacedM2]).
func (r *Run) ReplacedM2(k int) float64 {
	return float64(r.rows[k].replaced) / 1e4 / float64(max(1, len(r.rows[k].total)))
}
