package estimate

import (
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
	"underpaint/engine/shapley"
)

// Inputs of the shares before those of the pocket groups.
const (
	History  = iota // the life of the car as far as it is not known
	CarLuck         // how well this car came through that life
	Repairs         // what earlier work left behind
	Ways            // what is done about what is found
	CarHours        // how hard the work on this car goes
	OwnHours        // hours of single pieces of work
	Prices          // of parts and of work sent out
	Groups          // the first pocket group; the others follow
)

// Shares says what makes the price of a car wide: Shapley effects of the inputs
// above and of each pocket group of the body, on the cars that agree with all that
// is known. What is drawn later counts for what is new in it: the history first,
// then the luck of the whole car, its repairs, then each group.
type Shares struct {
	walks  *shapley.Walks
	stream chance.Stream
}

// NewShares prepares the walks; every uniform of an simulated car belongs to one
// input, but for the first of the damage, which three numbers stand for.
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
	damaged := make([]float64, len(sources))
	price := func(x []float64) float64 {
		damaged[0] = m.RootUniform(x[0], x[1], x[2])
		copy(damaged[1:], x[3:2+len(sources)])
		s := chance.FixedStream(damaged)
		m.Draw(&s, c)
		s = chance.FixedStream(x[2+len(sources):])
		u.Fill(&s)
		t.Price(c, m.Histories[c.History].LastClimate, u, bill)
		return float64(bill.Total)
	}
	return &Shares{walks: shapley.New(Groups+len(m.Body.Groups), label, price), stream: chance.NewStream(seed, sharesStream)}
}

// sharesStream keeps the walks apart from the cars of a run.
const sharesStream = 0x5A9E5

// Add makes n more walks.
func (s *Shares) Add(n int) { s.walks.Add(n, &s.stream) }

// Walks is how many there were.
func (s *Shares) Walks() int { return s.walks.Walks() }

// Shares are the shares so far, by input, and the variance in squared minor units.
func (s *Shares) Shares() ([]shapley.Share, float64) { return s.walks.Shares() }
