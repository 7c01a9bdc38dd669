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
func (c Chances) Holed() float64 { return c.Condition[4] + c.Condition[5] }

// Chances returns the exact posterior chances of every item. The weight of each
// state of the shared factors is laid on the table of x (the adjoint of reading
// it), so that the items cost one pass each whatever the number of states.
func (m *Model) Chances() []Chances {
	p := m.ChancesInPieces()
	for p.Next() {
	}
	return p.Chances
}

// Pieces are the chances of [Model.Chances] pocket by pocket, for those who cannot wait
// for all of them at once.
type Pieces struct {
	Chances []Chances // by item, as far as they are worked out
	model   *Model
	at      spot // the next pocket
}

// ChancesInPieces has none worked out yet.
func (m *Model) ChancesInPieces() *Pieces {
	return &Pieces{Chances: make([]Chances, len(m.Body.Items)), model: m}
}

// Next works out the chances of the items in one more pocket, and says whether there
// was one.
func (p *Pieces) Next() bool {
	m := p.model
	for p.at.group < len(m.nested.Groups) && p.at.pocket == len(m.nested.Groups[p.at.group].Pockets) {
		p.at = spot{group: p.at.group + 1}
	}
	if p.at.group == len(m.nested.Groups) {
		return false
	}
	if len(m.seenTogether.units) > 0 {
		m.passAt(p.at).run(m, p.Chances)
	} else {
		m.chancesApart(p.at.group, p.at.pocket, p.Chances)
	}
	p.at.pocket++
	return true
}

// chancesApart is Next where nothing was seen of several items together.
func (m *Model) chancesApart(g, n int, out []Chances) {
	weight := newStateWeights(m.scale)
	for _, i := range m.Body.Pockets[m.Body.Groups[g].Pockets[n]].Items {
		m.layWeight(g, n, i, weight)
		out[i] = m.gather(i, weight)
	}
}

// stateWeights are weights by x and repair state.
type stateWeights [RepairStates][]float64

func newStateWeights(s scale) *stateWeights {
	w := &stateWeights{}
	for r := range w {
		w[r] = make([]float64, s.size)
	}
	return w
}

func (m *Model) layWeight(g, n, i int, weight *stateWeights) {
	for r := range weight {
		clear(weight[r])
	}
	side := m.sideTerm[b2i(!m.Body.PartOf(i).SeenWhenStripped)]
	m.posterior.Levels(g, n, func(root, p, q int, v float64) {
		level, k, repair := m.split(root)
		at, w := m.scale.cell(m.mu[level][i] + m.carTerm[k] + m.groupTerm[p] + side[q])
		row := weight[repair]
		for c := range w {
			row[at-1+c] += float64(v * w[c])
		}
	})
}

func (m *Model) gather(i int, weight *stateWeights) (c Chances) {
	for r := range weight {
		for x, v := range weight[r] {
			if v == 0 {
				continue
			}
			j := m.prior[i].joint(m.table[i].at[x], r)
			if e := m.seen[i]; e != nil {
				j.condition(e)
			}
			c.add(&j, v)
		}
	}
	return c
}

// condition multiplies a likelihood in and scales the whole to one.
func (j *Likelihood) condition(e *Likelihood) {
	sum := 0.0
	for k := range j {
		for f := range j[k] {
			for d := range j[k][f] {
				j[k][f][d] = float64(j[k][f][d] * e[k][f][d])
				sum += j[k][f][d]
			}
		}
	}
	if sum == 0 {
		return
	}
	for k := range j {
		for f := range j[k] {
			for d := range j[k][f] {
				j[k][f][d] /= sum
			}
		}
	}
}

func (c *Chances) add(j *Likelihood, v float64) {
	for k := range j {
		for f := range j[k] {
			one := j[k][f][0] + j[k][f][1]
			c.Condition[k] += float64(v * one)
			c.Finding[f] += float64(v * one)
			c.Dent += float64(v * j[k][f][1])
		}
	}
}

// RepairState is the posterior chance of each state of earlier repairs.
func (m *Model) RepairState() (p [RepairStates]float64) {
	for root, v := range m.rootPosterior() {
		_, _, r := m.split(root)
		p[r] += v
	}
	return p
}

// HistoryLevel is the posterior chance of each alternative of the history.
func (m *Model) HistoryLevel() []float64 {
	p := make([]float64, len(m.Levels))
	for root, v := range m.rootPosterior() {
		level, _, _ := m.split(root)
		p[level] += v
	}
	return p
}

// CarFactor is the posterior mean of the factor of the car as a whole, in
// standard deviations: above 0, worse than such cars usually are.
func (m *Model) CarFactor() (mean float64) {
	one := m.fig.sigma * math.Sqrt(m.fig.car) // what one standard deviation adds to y
	if one == 0 {
		return 0
	}
	for root, v := range m.rootPosterior() {
		_, k, _ := m.split(root)
		mean += float64(v*m.carTerm[k]) / one
	}
	return mean
}
