package estimate

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
	"underpaint/engine/shapley"
)

// The inputs of the shares. Those of the pocket groups follow, then [DoubtInput] and
// [RiseInput].
const (
	History  = iota // the life of the car, as far as it is unknown
	CarLuck         // how well this car came through that life
	Repairs         // what earlier work left behind
	Ways            // the ways in which the damage is repaired
	CarHours        // how hard the work on the whole car is
	OwnHours        // hours of single pieces of work
	Prices          // prices of parts and of work sent out, and how parts come
	Groups          // the first pocket group; the others follow
)

// DoubtInput is the input of what the figures themselves may have wrong, which follows
// the pocket groups of a body. A table that doubts nothing has no such input.
func DoubtInput(b *car.Body) int { return Groups + len(b.Groups) }

// RiseInput is the input of prices that rise while the job runs, which comes after that.
// A table whose prices stay as published has no such input.
func RiseInput(b *car.Body) int { return DoubtInput(b) + 1 }

// OldDamageInput is the input of old damage, which comes last. Only a table that reckons
// with old damage has it.
func OldDamageInput(b *car.Body) int { return DoubtInput(b) + 2 }

// Shares estimates what makes the range of prices wide: the Shapley effects of the inputs
// above and of each pocket group of the body, under the posterior. The history is drawn
// first, then the luck of the whole car, its repairs and each group; an input counts only
// for what it adds to those drawn before it.
type Shares struct {
	walks  *shapley.Walks
	stream chance.Stream
}

// NewShares prepares the walks. Every uniform of a simulated car belongs to one input,
// except the first of the damage: it picks history, luck and repairs together, so three
// uniforms replace it (see damage.Model.RootUniform).
func NewShares(m *damage.Model, t *pricing.Table, seed uint64) *Shares {
	sources := m.Sources()
	c, u, bill := m.NewCar(), t.NewUniforms(), t.NewBill()
	label := []int{History, CarLuck, Repairs}
	for _, s := range sources[1:] {
		switch s.What {
		case damage.OfGroup:
			label = append(label, Groups+s.Group)
		default:
			label = append(label, Repairs)
		}
	}
	for _, k := range u.Kinds() {
		label = append(label, [...]int{pricing.OfWholeCar: CarHours, pricing.OfHours: OwnHours, pricing.OfPrices: Prices, pricing.OfWays: Ways, pricing.OfTime: OwnHours}[k])
	}
	works, inputs := u.Count(), DoubtInput(m.Body)
	supplied := works
	if t.DrawsSupply() {
		label = append(label, Prices, Prices, Prices, Prices)
		supplied += supplyFactors + 1
	}
	ofCar := []*float64{}
	if t.Doubt().SD > 0 {
		label, ofCar, inputs = append(label, DoubtInput(m.Body)), append(ofCar, &u.Doubt), DoubtInput(m.Body)+1
	}
	if t.Rises() {
		label, ofCar, inputs = append(label, RiseInput(m.Body)), append(ofCar, &u.Rise), RiseInput(m.Body)+1
	}
	other, others := len(label), 0 // what comes from another car is a matter of what can be had, and at what price
	if t.PaysForAnother() {
		others = pricing.AnotherUniforms
		label = append(label, slices.Repeat([]int{Prices}, others)...)
	}
	old := 0
	if t.Reckoning() != nil {
		for ; old < len(u.Old); old++ {
			label = append(label, OldDamageInput(m.Body))
		}
		inputs = OldDamageInput(m.Body) + 1
	}
	damaged := make([]float64, len(sources))
	price := func(x []float64) float64 {
		damaged[0] = m.RootUniform(x[0], x[1], x[2])
		copy(damaged[1:], x[3:2+len(sources)])
		s := chance.FixedStream(damaged)
		m.Draw(&s, c)
		work := x[2+len(sources):]
		s = chance.FixedStream(work[:works])
		u.Fill(&s)
		if works < supplied {
			x := work[works:supplied]
			u.Supply = pricing.SupplyUniforms{Source: x[0], State: x[1], Assembly: x[2], Seed: math.Float64bits(x[3])}
		}
		for k, v := range ofCar {
			*v = work[supplied+k]
		}
		copy(u.Another[:], x[other:other+others])
		copy(u.Old, work[len(work)-old:])
		t.Price(c, m.Histories[c.History].LastClimate, u, bill)
		return float64(bill.Total)
	}
	return &Shares{walks: shapley.New(inputs, label, price), stream: chance.NewStream(seed, sharesStream)}
}

// sharesStream keeps the walks independent of the cars of a run.
const sharesStream = 0x5A9E5

// Add makes n more walks.
func (s *Shares) Add(n int) { s.walks.Add(n, &s.stream) }

// Walks is the number of walks so far.
func (s *Shares) Walks() int { return s.walks.Walks() }

// Shares returns the shares so far, by input, and the variance of the price in squared
// minor units.
func (s *Shares) Shares() ([]shapley.Share, float64) { return s.walks.Shares() }
