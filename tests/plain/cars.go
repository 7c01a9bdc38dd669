package plain

import (
	"math"
	"math/rand/v2"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
	"underpaint/tests/figures"
)

// Told is what the customer says about a car.
type Told struct {
	Body        *car.Body
	Histories   []exposure.History
	EarlierWork string // as in damage.Known
	Cover       string // answer about cover, "" when not asked

	NoRepairs bool // nobody ever worked on the car
	NoCauses  bool // only rust harms a part, and nothing protects it
}

// Cars draws cars with the same answers.
type Cars struct {
	Told
	Covered float64 // probability that a car is freshly covered

	fig   *figures.Damage
	rand  *rand.Rand
	upTo  []float64                      // running weight of history level and repair state
	mu    [][][exposure.Readings]float64 // [level][item]
	parts []part                         // by part of the body
	lead  []float64                      // probability that a lead joint failed, by level
}

// part is what the items of one part have in common.
type part struct {
	step         [car.Conditions - 1]float64 // logs of the depths at which each condition ends
	car, group   float64                     // how far one standard deviation of each factor moves the log of the depth
	side, own    float64
	outer, first bool // first: repaired first
	cause        [car.Conditions]float64
	hurt, spared float64 // probabilities; hurt is that of a car of the full age
	dent         figures.ByState
	joints       int
}

// Car is one simulated car.
type Car struct {
	Level, Repair int
	Luck          float64 // of the whole car, in standard deviations
	Rust          []int8  // condition by rust alone, by item
	Worn          []int8  // with causes of its own, before earlier repairs
	Condition     []int8
	Finding       []damage.Finding
	Dent          []bool
	LeadFailed    []int8

	group, pocket []float64
}

// New prepares cars. They draw from r and use the figures of damage.json.
func New(told Told, fig *figures.Damage, r *rand.Rand) (*Cars, error) {
	c := &Cars{Told: told, fig: fig, rand: r}
	for p := range told.Body.Parts {
		c.parts = append(c.parts, newPart(fig, &told.Body.Parts[p]))
	}
	said, err := fig.Answered(&damage.Known{EarlierWork: told.EarlierWork, Cover: damage.Cover{Answer: told.Cover}})
	if err != nil {
		return nil, err
	}
	asked := [2]float64{1, 1}
	if told.Cover != "" {
		asked = fig.Cover.Answer[told.Cover]
	}
	sum, covered := 0.0, 0.0
	for l := range told.Histories {
		history := &told.Histories[l]
		for r, p := range fig.RepairPrior(history.AgeYears) {
			// The answers include the one about cover, which also depends on repairs.
			weight := history.Weight * p * said[r]
			sum += weight
			covered += weight * fig.Cover.Chance[r] * asked[1] / ((1-fig.Cover.Chance[r])*asked[0] + fig.Cover.Chance[r]*asked[1])
			c.upTo = append(c.upTo, sum)
		}
		var mu [][exposure.Readings]float64
		for i := range told.Body.Items {
			p := told.Body.PartOf(i)
			mu = append(mu, history.Medians(p.Rust.M, p.Rust.B, p.Rust.Life, p.Splash, p.MM))
		}
		c.mu = append(c.mu, mu)
		lead, err := fig.LeadFails(history.LastClimate)
		if err != nil {
			return nil, err
		}
		c.lead = append(c.lead, lead)
	}
	c.Covered = covered / sum
	return c, nil
}

func newPart(fig *figures.Damage, p *car.Part) (out part) {
	split := fig.Shares.Split
	switch {
	case slices.Contains(fig.Shares.Local.Parts, p.ID):
		split = fig.Shares.Local.Split
	case !p.SeenWhenStripped:
		split.Side, split.Own = fig.Shares.Closed.Side, fig.Shares.Closed.Own
	}
	moves := func(share float64) float64 { return fig.Shares.Sigma * math.Sqrt(share) }
	out.car, out.group, out.side, out.own = moves(split.Car), moves(split.Group), moves(split.Side), moves(split.Own)
	for k, c := range fig.Loss.Steps {
		if k == 0 && p.Face == car.Hidden {
			c = fig.Loss.Hidden
		}
		out.step[k] = math.Log(c)
	}
	out.outer = p.Face == car.Outer
	out.first = out.outer || slices.Contains(fig.Repairs.Floors, p.ID)
	out.cause, out.hurt, out.spared = fig.Cause.Condition.Water, fig.Cause.ByPart[p.ID], fig.Cause.Spared.Chance
	if slices.Contains(fig.Cause.AcidOn, p.ID) {
		out.cause = fig.Cause.Condition.Acid
	}
	if v, own := fig.Cause.Spared.ByPart[p.ID]; own {
		out.spared = v
	}
	if out.outer {
		out.dent = fig.Repairs.Dent
		for r := range out.dent {
			if p.Trap >= 4 {
				out.dent[r] *= fig.Repairs.DentLow
			}
		}
	}
	out.joints = p.LeadJoints
	return out
}

// NewCar allocates a car for Draw.
func (c *Cars) NewCar() *Car {
	n := len(c.Body.Items)
	return &Car{Rust: make([]int8, n), Worn: make([]int8, n), Condition: make([]int8, n), Finding: make([]damage.Finding, n),
		Dent: make([]bool, n), LeadFailed: make([]int8, n), group: make([]float64, len(c.Body.Groups)), pocket: make([]float64, len(c.Body.Pockets))}
}

// Draw overwrites one with another car.
func (c *Cars) Draw(one *Car) {
	at, _ := slices.BinarySearch(c.upTo, c.rand.Float64()*c.upTo[len(c.upTo)-1])
	one.Level, one.Repair = at/damage.RepairStates, at%damage.RepairStates
	if c.NoRepairs {
		one.Repair = untouched
	}
	one.Luck = c.rand.NormFloat64()
	for g := range one.group {
		one.group[g] = c.rand.NormFloat64()
	}
	for p := range one.pocket {
		one.pocket[p] = c.rand.NormFloat64()
		if c.rand.Float64() < c.fig.Leak.Chance {
			one.pocket[p] += c.fig.Leak.Shift
		}
	}
	for i := range c.Body.Items {
		c.drawItem(one, i)
	}
}
