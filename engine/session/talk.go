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

// whyCars is the number of simulated cars behind each row of the page "why so wide".
const whyCars = 4096

// Twenty holds twenty simulated cars. They are the first twenty cars of the range itself.
type Twenty struct {
	Body   *car.Body
	Totals [20]float64 // minor units
	Most   float64     // the largest total
	Holed  [20][]int   // the items rusted through or gone
}

// Twenty simulates twenty cars like a car with one body: what is under the paint of each
// and what it costs.
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

// Width returns the distance between the ends, in minor units. One car in ten is below
// them and one above.
func (p Prices) Width() float64 { return chance.QuantileMinor(p, 0.9) - chance.QuantileMinor(p, 0.1) }

// Shown returns the ends as pages show them.
func (p Prices) Shown() Ends {
	return RoundEnds(chance.QuantileMinor(p, 0.1), chance.QuantileMinor(p, 0.5), 0, chance.QuantileMinor(p, 0.9))
}

// Dots returns twenty values that each stand for one car in twenty.
func (p Prices) Dots() (values [20]float64) {
	for d := range values {
		values[d] = chance.QuantileMinor(p, (float64(d)+0.5)/20)
	}
	return values
}

// MostDot returns the most expensive dot of several rows, in minor units.
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

// TwoWays returns the prices of a car with one body as they would be if each part rusted
// independently at the same odds, and as cars really rust.
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
