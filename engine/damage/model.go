package damage

import (
	"cmp"
	"math"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/exposure"
	"underpaint/engine/network"
)

// Grid is an even grid that stands for a standard normal variable: Points
// points over ± Reach, weighted by the density.
type Grid struct {
	Points int
	Reach  float64
}

// Grids are the grids of the car, the pocket group and the pocket, and the points to a
// unit of the tables by which items are read, a power of two; 0 is 64.
type Grids struct {
	Car, Group, Pocket Grid
	PerUnit            int
}

// StandardGrids are fine enough that no chance of a condition moves by more than
// .0002 against much finer ones, also after surveys that say the unexpected;
// the convergence test holds them to it.
var StandardGrids = Grids{Car: Grid{25, 7}, Group: Grid{15, 5}, Pocket: Grid{19, 5}}

// CoarseGrids cost a fifth of StandardGrids and move no chance of a condition by
// more than .01 even after a whole survey: enough for means over a few cars.
var CoarseGrids = Grids{Car: Grid{15, 6}, Group: Grid{9, 4.5}, Pocket: Grid{11, 4.5}}

// ImaginedGrids are CoarseGrids with tables of half the points, which take half the time
// to make and half the memory and move no chance by more than .00001 besides: for
// imagined outcomes, of which each has tables of its own.
var ImaginedGrids = Grids{Car: CoarseGrids.Car, Group: CoarseGrids.Group, Pocket: CoarseGrids.Pocket, PerUnit: pointsToAUnit / 2}

// FineGrids are what StandardGrids are tested against.
var FineGrids = Grids{Car: Grid{41, 7.5}, Group: Grid{31, 6.5}, Pocket: Grid{35, 6.5}}

func (g Grid) make() (value, weight []float64) {
	value, weight = make([]float64, g.Points), make([]float64, g.Points)
	sum := 0.0
	for i := range value {
		value[i] = g.Reach * (2*float64(i)/float64(g.Points-1) - 1)
		weight[i] = chance.Exp(-value[i] * value[i] / 2)
		sum += weight[i]
	}
	for i := range weight {
		weight[i] /= sum
	}
	return value, weight
}

// Known is what is known of one car.
type Known struct {
	Body        *car.Body
	Levels      []exposure.Level // alternatives of its history; weights sum to 1
	EarlierWork string           // one of Answers, or "" when not asked
	Seen        []*Likelihood    // by item; nil entries (or a nil slice) = nothing seen
	Worst       []Worst          // what was seen of the worst of several items; at most MostWorst
	LeadFailed  []int            // failed lead joints counted, by item; negative (or a nil slice) = not counted
	Shift       []float64        // added to the log of every depth, by group of the body; nil = none
	Spread      float64          // on sigma, the spread of depths; 0 = 1
	OnItsOwn    bool             // every part rusts on its own luck: the wrong model, for comparison
}

// Model is the network of one car, conditioned on what is known.
type Model struct {
	Body   *car.Body
	Levels []exposure.Level

	fig       *figures
	mu        [][]float64 // [level][item] median of y
	prior     []leafPrior
	seen      []*Likelihood
	lead      []int
	table     []*conditionTable // by item
	threshold [2][car.Conditions - 1]float64
	own       []float64 // by item: deviation of what is its own
	leaf      []leaf    // by item: the same and more, in one place for drawing
	carTerm   []float64
	groupTerm []float64
	sideTerm  [2][]float64
	tables    map[kind]*conditionTable
	nested    network.Nested
	posterior *network.NestedPosterior
	worst     *network.WorstPosterior // nil without Worst nodes
	rest      *network.Remainder      // for drawing what counts in them

	seenTogether together
	spot         []spot             // by pocket of the body
	scale        scale              // of its tables
	alike        []int              // by item: the first of its part with the same evidence
	densities    map[int]*densities // by what is alike
	likely       map[int]*likely    // likewise
}

// New conditions the network on what is known. It fails only when the evidence
// cannot all be true (network.ErrNoSupport) or known.Worst is not as described.
func New(known Known, grids Grids) (*Model, error) {
	fig, err := loadFigures()
	if err != nil {
		return nil, err
	}
	m := &Model{Body: known.Body, Levels: known.Levels, fig: fig, seen: known.Seen, tables: map[kind]*conditionTable{}}
	if known.OnItsOwn {
		m.fig = fig.onItsOwn()
	}
	if known.Spread > 0 && known.Spread != 1 {
		m.fig = m.fig.spreadBy(known.Spread)
	}
	m.lead = known.LeadFailed
	if m.seen == nil {
		m.seen = make([]*Likelihood, len(known.Body.Items))
	}
	if err := m.arrange(known.Worst); err != nil {
		return nil, err
	}
	m.scale, m.alike = newScale(cmp.Or(grids.PerUnit, pointsToAUnit)), m.findAlike()
	m.spot, m.densities, m.likely = make([]spot, len(m.Body.Pockets)), map[int]*densities{}, map[int]*likely{}
	root, group, pocket := m.setGrids(grids, known.EarlierWork)
	m.setItems(known.Shift)
	m.nested = network.Nested{Root: root, Band: RepairStates}
	for g := range m.Body.Groups {
		m.nested.Groups = append(m.nested.Groups, network.Group{Weights: group, Pockets: m.pocketsOf(g, pocket)})
	}
	m.posterior, err = m.nested.Condition()
	if err != nil {
		return nil, err
	}
	if err := m.setWorst(); err != nil {
		return nil, err
	}
	return m, nil
}

// rootPosterior is that of the root states, with everything taken in.
func (m *Model) rootPosterior() []float64 {
	if m.worst != nil {
		return m.worst.Root()
	}
	return m.posterior.Root()
}

// setGrids fixes the terms of the shared factors and returns the prior weights
// of the root (history × car × repair state), of a group and of a pocket.
func (m *Model) setGrids(grids Grids, answer string) (root, group, pocket []float64) {
	carAt, carWeight := grids.Car.make()
	groupAt, group := grids.Group.make()
	pocketAt, pocket := grids.Pocket.make()
	m.carTerm = scaled(carAt, m.fig.sigma*math.Sqrt(m.fig.car))
	m.groupTerm = scaled(groupAt, m.fig.sigma*math.Sqrt(m.fig.group))
	for c := range m.sideTerm {
		m.sideTerm[c] = scaled(pocketAt, m.fig.sigma*math.Sqrt(m.fig.side[c]))
	}
	said, asked := m.fig.answer[answer]
	for _, level := range m.Levels {
		repair := m.fig.repairPrior(level.AgeYears)
		for _, w := range carWeight {
			for r := range repair {
				v := float64(level.Weight*w) * repair[r]
				if asked {
					v *= said[r]
				}
				root = append(root, v)
			}
		}
	}
	return root, group, pocket
}

func scaled(at []float64, by float64) []float64 {
	out := make([]float64, len(at))
	for i := range at {
		out[i] = at[i] * by
	}
	return out
}

// setItems fixes what each leaf needs: its median under each history, its table
// and its chances of repair.
func (m *Model) setItems(shift []float64) {
	n := len(m.Body.Items)
	m.prior, m.table, m.own = make([]leafPrior, n), make([]*conditionTable, n), make([]float64, n)
	m.threshold = [2][car.Conditions - 1]float64{m.fig.logStep, m.fig.logStep}
	m.threshold[1][0] = m.fig.logStepHidden
	for i := range m.Body.Items {
		p := m.Body.PartOf(i)
		m.prior[i] = m.fig.leafPrior(p)
		k := kind{hidden: p.Face == car.Hidden, closed: !p.SeenWhenStripped}
		m.own[i] = m.fig.sigma * math.Sqrt(m.fig.own[b2i(k.closed)])
		if m.tables[k] == nil {
			m.tables[k] = newConditionTable(m.scale, m.threshold[b2i(k.hidden)], m.own[i])
		}
		m.table[i] = m.tables[k]
		m.leaf = append(m.leaf, leaf{m.own[i], &m.threshold[b2i(k.hidden)], m.sideTerm[b2i(k.closed)], p.LeadJoints})
	}
	for _, level := range m.Levels {
		mu := make([]float64, n)
		for i := range mu {
			p := m.Body.PartOf(i)
			mu[i] = level.Mu(p.Rust.M, p.Rust.B, p.Rust.Life, p.Splash, p.MM)
			if shift != nil {
				mu[i] += shift[p.Group]
			}
		}
		m.mu = append(m.mu, mu)
	}
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// split turns a root state into history level, car level and repair state.
func (m *Model) split(root int) (level, k, repair int) {
	repair = root % RepairStates
	root /= RepairStates
	return root / len(m.carTerm), root % len(m.carTerm), repair
}

// LogEvidence is the log of the chance of all that is known, up to the scale of
// the likelihoods given.
func (m *Model) LogEvidence() float64 {
	if m.worst != nil {
		return m.worst.LogEvidence()
	}
	return m.posterior.LogEvidence()
}
