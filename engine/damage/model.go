package damage

import (
	"underpaint/engine/car"
	"underpaint/engine/exposure"
)

// Known is what is known of one car.
type Known struct {
	Body        *car.Body
	Histories   []exposure.History    // alternatives of its history; weights sum to 1
	EarlierWork string                // one of Answers, or "" if not asked
	Seen        []*Likelihood         // by item; nil entries (or a nil slice) = no evidence
	Repairs     [RepairStates]float64 // likelihood of other evidence by state of earlier repairs; zero = none
	Worst       []MaxEvidence         // evidence on the worst of several items; at most MostMaxEvidence
	Cover       Cover                 // what is known about fresh cover
	LeadFailed  []int                 // failed lead joints counted, by item; negative (or a nil slice) = not counted
	Shift       []float64             // added to the log of every depth, by group of the body; nil = none
	Spread      float64               // factor on sigma, the spread of depths; 0 = 1
	Independent bool                  // every part rusts independently: the wrong model, for comparison
}

// Cover is what is known about fresh undercoat and recent or thick paint, and the
// evidence as it counts on a covered car. A nil slice means the same as in Known, because
// cover can hide none of the results.
type Cover struct {
	Answer string     // one of CoverAnswers, or "" if not asked
	Fresh  [2]float64 // likelihood of the checks for cover: as it shows, covered; zero = no evidence
	Seen   []*Likelihood
	Worst  []MaxEvidence
}

// Model is the network of one car, conditioned on what is known.
//
// Cover is handled separately from the rest. What is known about it, and about earlier
// work, determines the chance that the car is covered. Apart from that, cover is
// independent of history and repairs, so that another good check cannot raise the odds of
// rust by making cover more likely. The chances are the weighted mean of those of the car
// as it shows and of the covered car.
type Model struct {
	*base
	given   []*conditioned // as it shows, and freshly covered if that makes a difference
	weight  []float64      // of each
	covered float64
	lead    []int
	root    []float64 // by block, then by conditioning, then by repair state
	upTo    []float64 // its running sums
}

// New conditions the network on what is known. It fails only if the evidence cannot all
// be true (network.ErrNoSupport) or known.Worst is not as described.
func New(known Known, grids Grids) (*Model, error) { return NewAfter(known, grids, nil) }

// NewAfter is New, but it reuses from an earlier model of the same car whatever the new
// knowledge does not affect: after one more entry it only tabulates the pocket of that
// entry and conditions its group again. The result has the same bits as that of New. The
// earlier model may be nil or of another car, and stays usable, but the two must not be
// used at the same time.
func NewAfter(known Known, grids Grids, earlier *Model) (m *Model, err error) {
	m = &Model{lead: known.LeadFailed}
	if earlier != nil && earlier.serves(&known, grids) {
		m.base = earlier.base
	} else if m.base, err = newBase(&known, grids); err != nil {
		return nil, err
	} else {
		earlier = nil
	}
	root := m.rootWeights(&known)
	add := func(seen []*Likelihood, worst []MaxEvidence, weight float64) error {
		after := m.given // the car as it shows has the most in common with the covered one
		if earlier != nil {
			after = append(append([]*conditioned{}, earlier.given[min(len(m.given), len(earlier.given)-1)]), m.given...)
		}
		c, err := m.condition(root, seen, worst, after)
		m.given, m.weight = append(m.given, c), append(m.weight, weight)
		return err
	}
	if known.Cover.Seen == nil && known.Cover.Worst == nil || m.covered == 0 {
		err = add(known.Seen, known.Worst, 1)
	} else if err = add(known.Seen, known.Worst, 1-m.covered); err == nil {
		seen, worst := known.Cover.Seen, known.Cover.Worst
		if seen == nil {
			seen = known.Seen
		}
		if worst == nil {
			worst = known.Worst
		}
		err = add(seen, worst, m.covered)
	}
	if err != nil {
		return nil, err
	}
	m.weighRoot()
	return m, nil
}

// rootWeights works out the chance that the car is covered, and returns the weights of
// the root states of each conditioning: history, car factor, repair state.
func (m *Model) rootWeights(known *Known) (root []float64) {
	carWeight := m.grids.Car.weights(leak{})
	said, asked := m.fig.answer[known.EarlierWork]
	news := [2]float64{1, 1}
	if v, asked := m.fig.coverAnswer[known.Cover.Answer]; asked {
		news = v
	}
	if known.Cover.Fresh != [2]float64{} {
		for v := range news {
			news[v] *= known.Cover.Fresh[v]
		}
	}
	all, covered := 0.0, 0.0
	for _, history := range m.Histories {
		repair := m.fig.repairPrior(history.AgeYears)
		var joint [RepairStates]float64
		for r := range repair {
			v := float64(history.Weight * repair[r])
			if asked {
				v *= said[r]
			}
			if known.Repairs != [RepairStates]float64{} {
				v *= known.Repairs[r]
			}
			shows, hides := float64((1-m.fig.covered[r])*news[0]), float64(m.fig.covered[r]*news[1])
			joint[r] = float64(v * (shows + hides))
			all += joint[r]
			covered += float64(v * hides)
		}
		for _, w := range carWeight {
			for r := range joint {
				root = append(root, float64(joint[r]*w))
			}
		}
	}
	m.covered = covered / all
	return root
}

// Covered is the chance that the car is freshly covered. It depends only on the answers
// and on checks of the cover itself.
func (m *Model) Covered() float64 { return m.covered }

// states is the number of root states in a block: of conditionings and repair states.
func (m *Model) states() int { return len(m.given) * RepairStates }

// weighRoot puts the root states of all conditionings in one row, with those of the same
// history and car factor together.
func (m *Model) weighRoot() {
	m.root = make([]float64, m.blocks()*m.states())
	for v, c := range m.given {
		for root, p := range c.rootPosterior() {
			block, repair := root/RepairStates, root%RepairStates
			m.root[block*m.states()+v*RepairStates+repair] = float64(m.weight[v] * p)
		}
	}
	sum, last := 0.0, 0
	m.upTo = make([]float64, len(m.root))
	for n, p := range m.root {
		if sum += p; p > 0 {
			last = n
		}
		m.upTo[n] = min(1, sum)
	}
	for n := last; n < len(m.upTo); n++ {
		m.upTo[n] = 1
	}
}

// unroll converts a state of the row of weighRoot to a conditioning and its root state.
func (m *Model) unroll(state int) (v, root int) {
	block, in := state/m.states(), state%m.states()
	return in / RepairStates, block*RepairStates + in%RepairStates
}

// LogEvidence is the natural logarithm of the probability of the evidence, up to the
// scale of the likelihoods given. If cover makes a difference it is that of the car as it
// shows, because the evidence on a covered car has a different scale.
func (m *Model) LogEvidence() float64 { return m.given[0].logEvidence() }
