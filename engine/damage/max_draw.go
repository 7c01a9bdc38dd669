package damage

// unitDraw is working space for the items that are drawn together.
type unitDraw struct {
	own    []float64       // by item: its uniform
	cause  []float64       // by item: its uniform for a cause other than rust
	joint  [2][]Likelihood // by unit: joint distributions of its items
	within [][]float64     // by unit: chance of staying within limits
	levels [2][]byCondition
	allow  []float64
}

func (d *unitDraw) fit(m *conditioned) {
	t := &m.layout
	if len(d.own) == len(m.Body.Items) && len(d.within) == len(t.units) {
		return
	}
	*d = unitDraw{own: make([]float64, len(m.Body.Items)), cause: make([]float64, len(m.Body.Items)), within: make([][]float64, len(t.units))}
	for n := range d.joint {
		d.joint[n], d.levels[n] = make([]Likelihood, len(t.units)), make([]byCondition, len(t.units))
	}
	widest := 0
	for n := range t.units {
		size := combinations(len(t.units[n].nodes))
		d.within[n], widest = make([]float64, size), max(widest, size)
	}
	d.allow = make([]float64, widest)
}

// drawUnits draws the items that count in max nodes or pairs, unit by unit, once all
// shared factors are drawn.
func (m *conditioned) drawUnits(c *Car) {
	t, d := &m.layout, &c.units
	for n := range t.units {
		m.startUnit(c, n)
	}
	if m.rest != nil {
		m.rest.Start(d.within)
	}
	for n := range t.units {
		u := &t.units[n]
		allow := d.allow[:len(d.within[n])]
		for j := range allow {
			allow[j] = 1
		}
		if m.rest != nil {
			m.rest.Allow(n, allow)
		}
		m.drawUnit(c, n, allow)
		if m.rest != nil {
			worse := 0
			if u.pair != nil {
				worse = int(c.Condition[u.item[1]])
			}
			m.rest.Drawn(n, u.combination[c.Condition[u.item[0]]][worse])
		}
	}
}

// startUnit works out a unit's chances of staying within limits, given the shared factors.
func (m *conditioned) startUnit(c *Car, n int) {
	u, d := &m.layout.units[n], &c.units
	for which, i := range u.item {
		if i < 0 {
			continue
		}
		d.joint[which][n] = m.jointAt(i, c.History, c.Repair, m.luckOf(c, i))
		d.joint[which][n].normalise()
		d.levels[which][n] = d.joint[which][n].conditions()
	}
	v := d.within[n]
	if u.pair != nil {
		within(v, u.bothAt(&d.levels[0][n], &d.levels[1][n], v))
		return
	}
	clear(v)
	for k, p := range d.levels[0][n] {
		v[u.combination[k][0]] += p
	}
	sum := 0.0
	for _, p := range v {
		sum += p
	}
	within(v, sum)
}

// drawUnit draws a single item, or the first item of a pair and then the second
// given the first.
func (m *conditioned) drawUnit(c *Car, n int, allow []float64) {
	u, d := &m.layout.units[n], &c.units
	var weight byCondition
	for k := range weight {
		if u.pair == nil {
			weight[k] = allow[u.combination[k][0]]
			continue
		}
		for other, p := range d.levels[1][n] {
			weight[k] += float64(float64(p*u.pair.likely[max(k, other)]) * allow[u.combination[k][other]])
		}
	}
	m.pickWeighted(c, u.item[0], &d.joint[0][n], &weight)
	if u.pair == nil {
		return
	}
	k := int(c.Condition[u.item[0]])
	for other := range weight {
		weight[other] = float64(u.pair.likely[max(k, other)] * allow[u.combination[k][other]])
	}
	m.pickWeighted(c, u.item[1], &d.joint[1][n], &weight)
}

// pickWeighted draws everything about an item, with a weight for each condition.
func (m *conditioned) pickWeighted(c *Car, i int, j *Likelihood, weight *byCondition) {
	sum := 0.0
	for k := range j {
		for f := range j[k] {
			for d := range j[k][f] {
				j[k][f][d] = float64(j[k][f][d] * weight[k])
				sum += j[k][f][d]
			}
		}
	}
	c.pickJoint(i, j, float64(c.units.own[i]*sum))
	m.drawOwnCause(c, i, m.luckOf(c, i), c.units.cause[i])
}

// luckOf is the amount that all levels drawn above an item add to the mean of its log
// depth.
func (m *conditioned) luckOf(c *Car, i int) float64 {
	at := m.pocketRefOf(i)
	_, k, _ := m.split(c.shared.Root)
	return m.luck(i, k, c.shared.P[at.group]) + m.sideOf(i)[m.ownLevel(at, c.shared.Q[at.group][at.pocket])]
}
