package damage

import (
	"underpaint/engine/chance"
	"underpaint/engine/network"
)

// Car is one simulated car, drawn from the posterior. Create one with [Model.NewCar] and
// fill it repeatedly with [Model.Draw].
type Car struct {
	History, Repair int       // which of Histories, repair state
	Condition       []int8    // by item
	Finding         []Finding // by item
	Dent            []bool    // filler over a dent, by item
	OwnCause        []bool    // by item: its condition is due to another cause, because rust would have left it milder
	LeadFailed      []int8    // failed lead joints, by item

	given   int // the conditioning it was drawn from
	shared  network.NestedDraw
	units   unitDraw
	uniform []float64 // perItem for each item, in the order of drawing
}

// perItem is the number of uniforms that an item takes.
const perItem = 5

// What each uniform decides.
const (
	uRust   = iota // how deep it rusted; with evidence on the item, everything about it
	uCause         // a cause other than rust
	uRepair        // whether it was repaired, and how
	uThen          // its condition after that
	uDent          // filler over a dent
)

// NewCar allocates a car for Draw.
func (m *Model) NewCar() *Car {
	n := len(m.Body.Items)
	return &Car{Condition: make([]int8, n), Finding: make([]Finding, n), Dent: make([]bool, n), OwnCause: make([]bool, n),
		LeadFailed: make([]int8, n), uniform: make([]float64, m.PartUniforms())}
}

// PartUniforms is the number of uniforms that Draw takes for single parts, right after
// those of the shared factors.
func (m *Model) PartUniforms() int { return perItem * len(m.Body.Items) }

// Draw fills c with one simulated car. It takes the same number of uniforms from the
// stream whatever the result, so that two models drawn from equal streams give cars that
// differ only where the models do.
func (m *Model) Draw(s *chance.Stream, c *Car) {
	v, root := m.unroll(m.pickState(s.Uniform()))
	c.given = v
	m.given[v].draw(root, s, c)
	m.drawLead(s, c)
}

// DrawCovered reports whether the car is freshly covered. If cover makes no difference to
// the evidence, Draw has not decided it, and DrawCovered uses the uniform u.
func (m *Model) DrawCovered(c *Car, u float64) bool {
	if len(m.given) > 1 {
		return c.given == 1
	}
	return u < m.covered
}

func (m *conditioned) draw(root int, s *chance.Stream, c *Car) {
	if m.worst != nil {
		m.worst.SampleGiven(root, s, &c.shared)
	} else {
		m.posterior.SampleGiven(root, s, &c.shared)
	}
	level, k, repair := m.split(root)
	c.History, c.Repair = level, repair
	together := len(m.layout.units) > 0
	if together {
		c.units.fit(m)
	}
	s.Fill(c.uniform)
	uniform := c.uniform
	for g := range m.Body.Groups {
		for _, pocket := range m.Body.Groups[g].Pockets {
			q := m.ownLevel(m.pocketRefs[pocket], c.shared.Q[g][m.pocketRefs[pocket].pocket])
			luck := m.luckIn(k, c.shared.P[g], q)
			for _, i := range m.Body.Pockets[pocket].Items {
				m.drawItem((*[perItem]float64)(uniform), c, i, luck[m.class[i]])
				uniform = uniform[perItem:]
			}
		}
	}
	if together {
		m.drawUnits(c)
	}
}

// drawItem draws one item. luck is the amount that all levels above add to the mean of
// its log depth.
func (m *conditioned) drawItem(u *[perItem]float64, c *Car, i int, luck float64) {
	if of := m.layout.unitOf; of != nil && of[i] >= 0 {
		c.units.own[i], c.units.cause[i] = u[uRust], u[uCause] // drawUnits draws it once all shared factors are known
		return
	}
	if m.seen[i] != nil {
		m.drawSeen(u, c, i, luck)
		return
	}
	l := &m.prior[i]
	// On a thoroughly restored car this is the first of two strata, which have the same dents.
	s, left := stratum(c.Repair), u[uRepair]
	c.Dent[i], c.OwnCause[i] = u[uDent] < l.dent[s], false
	if left < l.knock[s] {
		c.Finding[i], c.Condition[i] = Replaced, pick(&l.then[Replaced], u[uThen])
		return
	}
	left = (left - l.knock[s]) / (1 - l.knock[s])
	if c.Repair == thorough {
		s, left = l.pickReached(left)
	}
	k := m.leaf[i].condition(m.mu[c.History][s.reading()][i]+luck, u[uRust])
	if cause := m.causeAt(i, m.age[c.History], s); u[uCause] < cause.spared || u[uCause] >= 1-cause.hurt {
		k, c.OwnCause[i] = cause.draw(k, u[uCause])
	}
	c.Finding[i], c.Condition[i] = NoFinding, k
	if k >= firstHole || s == renewed {
		m.drawRepair(u, c, i, s, left)
	}
}

// drawRepair draws whether and how an item with holes was repaired, or whether a renewed
// item is found replaced. left is its uniform.
func (m *conditioned) drawRepair(u *[perItem]float64, c *Car, i int, s stratum, left float64) {
	l := &m.prior[i]
	if s == renewed {
		if left < l.found[s] {
			c.Finding[i] = Replaced
		}
		return
	}
	if left >= l.holed[s] {
		return
	}
	left /= l.holed[s]
	f := PatchOverRust
	for f < Replaced && left >= l.kinds[s][f] {
		left -= l.kinds[s][f]
		f++
	}
	c.Finding[i], c.Condition[i], c.OwnCause[i] = f, pick(&l.then[f], u[uThen]), false
}

// pickReached picks the stratum of an item on a thoroughly restored car. left is the
// uniform that remains for the next choice.
func (l *leafPrior) pickReached(u float64) (s stratum, left float64) {
	missed := l.kept[notReached] / (l.kept[notReached] + l.kept[renewed])
	if u < missed {
		return notReached, u / missed
	}
	return renewed, (u - missed) / (1 - missed)
}

// draw draws the condition of an item with rust k, given causes other than rust, from the
// uniform u.
func (o *ownCause) draw(k int8, u float64) (condition int8, own bool) {
	if u < o.spared {
		return pick(&o.better, u/o.spared), false
	}
	if u < 1-o.hurt {
		return k, false
	}
	if worse := pick(&o.worse, (u-(1-o.hurt))/o.hurt); worse > k {
		return worse, true
	}
	return k, false
}

func pick(p *byCondition, u float64) int8 {
	last := int8(0)
	for k, v := range p {
		if v > 0 {
			last = int8(k)
		}
		if u < v {
			return int8(k)
		}
		u -= v
	}
	return last
}

func (m *Model) drawLead(s *chance.Stream, c *Car) {
	p := m.fig.failedLead[m.Histories[c.History].LastClimate]
	for _, i := range m.joined {
		n := int8(0)
		for joint := m.leaf[i].joints; joint > 0; joint-- {
			if s.Uniform() < p {
				n++
			}
		}
		if m.lead != nil && m.lead[i] >= 0 {
			n = int8(m.lead[i]) // counted exactly on the bare metal
		}
		c.LeadFailed[i] = n
	}
}
