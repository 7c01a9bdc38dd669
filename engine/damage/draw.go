package damage

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/network"
)

// Car is one imagined car that agrees with everything known. Make one with
// [Model.NewCar] and fill it again and again with [Model.Draw].
type Car struct {
	Level, Repair int       // history level, repair state
	Condition     []int8    // by item
	Finding       []Finding // by item
	Dent          []bool    // filler over a dent, by item
	LeadFailed    []int8    // failed lead joints, by item

	shared  network.NestedDraw
	units   unitDraw
	uniform []float64 // four for each item, in the order of drawing
}

// NewCar allocates a car for Draw.
func (m *Model) NewCar() *Car {
	n := len(m.Body.Items)
	return &Car{Condition: make([]int8, n), Finding: make([]Finding, n), Dent: make([]bool, n), LeadFailed: make([]int8, n), uniform: make([]float64, m.PartUniforms())}
}

// PartUniforms is how many uniforms Draw takes for what is each part's alone, right
// after those of the shared factors.
func (m *Model) PartUniforms() int { return 4 * len(m.Body.Items) }

// Draw fills c with one imagined car. It takes the same number of uniforms from
// the stream whatever comes out, so that two models drawn from equal streams
// give cars that differ only where the models do.
func (m *Model) Draw(s *chance.Stream, c *Car) {
	if m.worst != nil {
		m.worst.Sample(s, &c.shared)
	} else {
		m.posterior.Sample(s, &c.shared)
	}
	level, k, repair := m.split(c.shared.Root)
	c.Level, c.Repair = level, repair
	together := len(m.seenTogether.units) > 0
	if together {
		c.units.fit(m)
	}
	s.Fill(c.uniform)
	mu, uniform := m.mu[level], c.uniform
	for g := range m.Body.Groups {
		above := m.carTerm[k] + m.groupTerm[c.shared.P[g]]
		for _, pocket := range m.Body.Groups[g].Pockets {
			q := m.ownLevel(m.spot[pocket], c.shared.Q[g][m.spot[pocket].pocket])
			for _, i := range m.Body.Pockets[pocket].Items {
				x := mu[i] + above + m.leaf[i].side[q]
				m.drawItem((*[4]float64)(uniform), c, i, x, repair)
				uniform = uniform[4:]
			}
		}
	}
	if together {
		m.drawUnits(c)
	}
	m.drawLead(s, c)
}

func (m *Model) drawItem(four *[4]float64, c *Car, i int, x float64, repair int) {
	uRust, uRepair, uThen, uDent := four[0], four[1], four[2], four[3]
	l := &m.prior[i]
	if of := m.seenTogether.unitOf; of != nil && of[i] >= 0 {
		c.units.own[i] = uRust // drawn once all shared factors are known
		return
	}
	if e := m.seen[i]; e != nil {
		m.drawSeen(c, i, x, repair, uRust)
		return
	}
	c.Dent[i] = uDent < l.dent[repair]
	knock := l.knock[repair]
	if uRepair < knock {
		c.Finding[i], c.Condition[i] = Replaced, pick(&l.then[Replaced], uThen)
		return
	}
	k := m.leaf[i].condition(x, uRust)
	c.Finding[i], c.Condition[i] = NoFinding, k
	if k < firstHole {
		return
	}
	u := (uRepair - knock) / (1 - knock)
	if u >= l.holed[repair] {
		return
	}
	u /= l.holed[repair]
	f := PatchOverRust
	for f < Replaced && u >= l.kinds[repair][f] {
		u -= l.kinds[repair][f]
		f++
	}
	c.Finding[i], c.Condition[i] = f, pick(&l.then[f], uThen)
}

// drawSeen draws condition, finding and dent together where something was seen.
func (m *Model) drawSeen(c *Car, i int, x float64, repair int, u float64) {
	j := m.prior[i].joint(m.table[i].read(x), repair)
	e, sum := m.seen[i], 0.0
	for k := range j {
		for f := range j[k] {
			for d := range j[k][f] {
				j[k][f][d] = float64(j[k][f][d] * e[k][f][d])
				sum += j[k][f][d]
			}
		}
	}
	m.pickJoint(c, i, &j, u*sum)
}

// pickJoint picks condition, finding and dent by inverse distribution function;
// u lies between 0 and the sum of j.
func (m *Model) pickJoint(c *Car, i int, j *Likelihood, u float64) {
	for k := range j {
		for f := range j[k] {
			for d := range j[k][f] {
				if j[k][f][d] == 0 {
					continue
				}
				c.Condition[i], c.Finding[i], c.Dent[i] = int8(k), Finding(f), d == 1
				if u < j[k][f][d] {
					return
				}
				u -= j[k][f][d]
			}
		}
	}
}

func pick(p *[car.Conditions]float64, u float64) int8 {
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
	p := m.fig.failedLead[m.Levels[c.Level].LastClimate]
	for i := range m.leaf {
		n := int8(0)
		for joint := m.leaf[i].joints; joint > 0; joint-- {
			if s.Uniform() < p {
				n++
			}
		}
		if m.lead != nil && m.lead[i] >= 0 {
			n = int8(m.lead[i]) // counted on the bare metal: exact
		}
		c.LeadFailed[i] = n
	}
}
