package damage

import (
	"math"

	"underpaint/engine/car"
)

// Chances are the posterior chances of one item.
type Chances struct {
	Condition [car.Conditions]float64
	Finding   [Findings]float64
	Dent      float64
}

// Holed is the chance that the item is rusted through or gone.
func (c Chances) Holed() float64 { return c.Condition[firstHoled] + c.Condition[firstHoled+1] }

// Chances returns the exact posterior chances of every item. It adds the weight of each
// state of the shared factors to the table of x (the adjoint of reading it), so that each
// item costs one pass whatever the number of states.
func (m *Model) Chances() []Chances {
	p := m.ChancesInPieces()
	for p.Next() {
	}
	return p.Chances
}

// Pieces works out the chances of [Model.Chances] pocket by pocket, for callers that
// cannot wait for all of them at once.
type Pieces struct {
	Chances []Chances // by item, as far as they are worked out
	model   *Model
	given   int       // the current conditioning
	at      pocketRef // the next pocket
}

// ChancesInPieces returns Pieces with no chances worked out yet.
func (m *Model) ChancesInPieces() *Pieces {
	return &Pieces{Chances: make([]Chances, len(m.Body.Items)), model: m}
}

// Next works out the chances of the items in one more pocket and reports whether there
// was one. If the car may be covered, it goes through the pockets twice.
func (p *Pieces) Next() bool {
	if p.given == len(p.model.given) {
		return false
	}
	c, weight := p.model.given[p.given], p.model.weight[p.given]
	for p.at.group < len(c.nested.Groups) && p.at.pocket == len(c.nested.Groups[p.at.group].Pockets) {
		p.at = pocketRef{group: p.at.group + 1}
	}
	if p.at.group == len(c.nested.Groups) {
		p.given, p.at = p.given+1, pocketRef{}
		return p.Next()
	}
	for i, joint := range c.jointsAt(p.at) {
		one := joint.chances()
		p.Chances[i].addTimes(&one, weight)
	}
	p.at.pocket++
	return true
}

// ChancesOf returns the exact posterior chances of one item, for about a
// hundredth of the cost of [Model.Chances].
func (m *Model) ChancesOf(i int) (out Chances) {
	for v, c := range m.given {
		at := c.pocketRefOf(i)
		joint := c.jointsAt(pocketRef{group: at.group, pocket: at.pocket})[i]
		one := joint.chances()
		out.addTimes(&one, m.weight[v])
	}
	return out
}

// jointsAt works out everything about the items in one pocket of the network.
func (c *conditioned) jointsAt(at pocketRef) map[int]Likelihood {
	out := map[int]Likelihood{}
	if len(c.layout.units) > 0 {
		c.passAt(at).run(c, out)
		return out
	}
	pocket := c.Body.Groups[at.group].Pockets[at.pocket]
	var passes []*itemPass
	for _, i := range c.Body.Pockets[pocket].Items {
		passes = append(passes, c.newItemPass(i))
	}
	c.posterior.Levels(at.group, at.pocket, func(root, p, q int, weight float64) {
		for _, one := range passes {
			one.lay(root, p, q, weight)
		}
	})
	for _, one := range passes {
		out[one.item] = one.gather()
	}
	return out
}

// itemPass adds the weights of the states of the shared factors to the table of x for one
// item, by stratum and index of ages.
type itemPass struct {
	c       *conditioned
	item    int
	likely  []*likely // by age; nil without evidence
	weights [][strata][]float64
}

func (c *conditioned) newItemPass(i int) *itemPass {
	one := &itemPass{c: c, item: i, weights: make([][strata][]float64, len(c.ages))}
	for age := range c.ages {
		for s := range one.weights[age] {
			one.weights[age][s] = make([]float64, c.scale.size)
		}
		if c.seen[i] != nil {
			one.likely = append(one.likely, c.likelyOf(i, age))
		}
	}
	return one
}

// lay divides the posterior weight of one state among the strata that the item may be in
// and adds it to their tables.
func (one *itemPass) lay(root, p, q int, weight float64) {
	c := one.c
	level, k, repair := c.split(root)
	luck, age := c.luck(one.item, k, p)+c.sideOf(one.item)[q], c.age[level]
	first, last := strataOf(repair)
	if one.likely != nil {
		// Weigh the strata with the evidence and scale them to add to the weight.
		seen := 0.0
		for s := first; s <= last; s++ {
			seen += one.likely[age].read(c.scale, s, c.mu[level][s.reading()][one.item]+luck)
		}
		weight /= seen
	}
	for s := first; s <= last; s++ {
		at, w := c.scale.cell(c.mu[level][s.reading()][one.item] + luck)
		row := one.weights[age][s][at-1 : at+3]
		for n := range w {
			row[n] += float64(weight * w[n])
		}
	}
}

// gather turns the weights into the joint posterior of the item.
func (one *itemPass) gather() (out Likelihood) {
	c := one.c
	for age := range one.weights {
		for s := range strata {
			var rust byCondition
			for x, v := range one.weights[age][s] {
				if v == 0 {
					continue
				}
				for k, p := range c.table[one.item].at[x] {
					rust[k] += float64(v * p)
				}
			}
			j := c.jointOf(one.item, age, s, rust)
			out.plus(&j)
		}
	}
	return out
}

// jointOf is the joint distribution of an item's condition, finding and dent in a
// stratum, for weights of its rust, times the likelihood of the evidence on the item
// alone.
func (c *conditioned) jointOf(i, age int, s stratum, rust byCondition) Likelihood {
	cause := c.causeAt(i, age, s)
	after := cause.apply(rust)
	j := c.prior[i].joint(&after, s)
	if e := c.seen[i]; e != nil {
		for k := range j {
			for f := range j[k] {
				for d := range j[k][f] {
					j[k][f][d] = float64(j[k][f][d] * e[k][f][d])
				}
			}
		}
	}
	return j
}

// chances sums the joint distribution to Chances.
func (j *Likelihood) chances() (c Chances) {
	for k := range j {
		for f := range j[k] {
			one := j[k][f][0] + j[k][f][1]
			c.Condition[k] += one
			c.Finding[f] += one
			c.Dent += j[k][f][1]
		}
	}
	return c
}

func (c *Chances) addTimes(other *Chances, times float64) {
	for k, v := range other.Condition {
		c.Condition[k] += float64(times * v)
	}
	for f, v := range other.Finding {
		c.Finding[f] += float64(times * v)
	}
	c.Dent += float64(times * other.Dent)
}

// RepairState is the posterior chance of each state of earlier repairs.
func (m *Model) RepairState() (p [RepairStates]float64) {
	for state, v := range m.root {
		p[state%RepairStates] += v
	}
	return p
}

// HistoryLevel is the posterior chance of each alternative of the history.
func (m *Model) HistoryLevel() []float64 {
	p := make([]float64, len(m.Histories))
	for state, v := range m.root {
		level, _, _ := m.split(state / m.states() * RepairStates)
		p[level] += v
	}
	return p
}

// CarFactor is the posterior mean of the factor of the car as a whole, in
// standard deviations: above 0, worse than such cars usually are.
func (m *Model) CarFactor() (mean float64) {
	one := m.fig.sigma * math.Sqrt(m.fig.share[open].car) // the amount one standard deviation adds to y
	if one == 0 {
		return 0
	}
	for state, v := range m.root {
		_, k, _ := m.split(state / m.states() * RepairStates)
		mean += float64(v*m.carTerm[open][k]) / one
	}
	return mean
}
