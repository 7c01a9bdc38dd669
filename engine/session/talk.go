package session

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/pricing"
)

// whyCars is how many simulated cars are behind each row of the talk.
const whyCars = 4096

// Twenty are twenty such cars, one after another. They are the first twenty cars of
// the range itself.
type Twenty struct {
	Body   *car.Body
	Totals [20]float64 // minor units
	Most   float64     // the largest of them
	Holed  [20][]int   // the items rusted through or gone
}

// Twenty simulates twenty cars like a car with one body: what is under the paint of
// each, and what it comes to.
func (s *Session) Twenty(c *carfile.Car) (out Twenty, err error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return out, err
	}
	out.Body = j.body
	estimate.Imagine(now.model, j.priced(), Seed, len(out.Totals), func(k int, d *damage.Car, b *pricing.Bill) {
		out.Totals[k] = float64(b.Total)
		out.Most = math.Max(out.Most, out.Totals[k])
		for i, condition := range d.Condition {
			if int(condition) >= holedFrom {
				out.Holed[k] = append(out.Holed[k], i)
			}
		}
	})
	return out, nil
}

// Prices are the sorted prices of many simulated cars, in minor units.
type Prices []int64

// Width is between the ends, one car in ten below and one above.
func (p Prices) Width() float64 { return chance.QuantileMinor(p, 0.9) - chance.QuantileMinor(p, 0.1) }

// Shown are the ends as they are shown.
func (p Prices) Shown() Ends {
	return RoundEnds(chance.QuantileMinor(p, 0.1), chance.QuantileMinor(p, 0.5), 0, chance.QuantileMinor(p, 0.9))
}

// Dots are one car in twenty each.
func (p Prices) Dots() (values [20]float64) {
	for d := range values {
		values[d] = chance.QuantileMinor(p, (float64(d)+0.5)/20)
	}
	return values
}

// MostDot is the last of the dots of several rows that is furthest out.
func MostDot(rows ...Prices) float64 {
	most := 1.0
	for _, p := range rows {
		most = math.Max(most, chance.QuantileMinor(p, 39.0/40))
	}
	return most
}

func pricesOf(m *damage.Model, t *pricing.Table) Prices {
	totals := make(Prices, 0, whyCars)
	estimate.Imagine(m, t, Seed, whyCars, func(_ int, _ *damage.Car, b *pricing.Bill) { totals = append(totals, int64(b.Total)) })
	slices.Sort(totals)
	return totals
}

// TwoWays is the range as it would be if every panel had its own luck, at the same
// odds for each, and as cars really rust; of a car with one body.
func (s *Session) TwoWays(c *carfile.Car) (independent, together Prices, err error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return nil, nil, err
	}
	table := j.priced()
	together = pricesOf(now.model, table)
	independent = estimate.OnTheirOwn(now.model, table, Seed, whyCars)
	slices.Sort(independent)
	return independent, together, nil
}
