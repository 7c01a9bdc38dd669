package damage

// For an item with evidence, one uniform draws condition, finding and dent at once.

// drawSeen draws an item with evidence on it alone.
func (m *conditioned) drawSeen(u *[perItem]float64, c *Car, i int, luck float64) {
	j := m.jointAt(i, c.History, c.Repair, luck)
	sum := 0.0
	for k := range j {
		for f := range j[k] {
			sum += j[k][f][0] + j[k][f][1]
		}
	}
	c.pickJoint(i, &j, u[uRust]*sum)
	m.drawOwnCause(c, i, luck, u[uCause])
}

// jointAt is the joint distribution of an item's condition, finding and dent given the
// levels above, times the likelihood of the evidence on the item alone.
func (m *conditioned) jointAt(i, level, repair int, luck float64) (j Likelihood) {
	first, last := strataOf(repair)
	j = m.jointOf(i, m.age[level], first, m.table[i].read(m.mu[level][first.reading()][i]+luck))
	if last != first {
		other := m.jointOf(i, m.age[level], last, m.table[i].read(m.mu[level][last.reading()][i]+luck))
		j.plus(&other)
	}
	return j
}

// pickJoint picks condition, finding and dent by inverse distribution function, for u
// between 0 and the sum of j.
func (c *Car) pickJoint(i int, j *Likelihood, u float64) {
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

// drawOwnCause draws whether a hole is due to a cause other than rust, once the condition
// is drawn. It is only asked about holes that nobody has repaired.
func (m *conditioned) drawOwnCause(c *Car, i int, luck, u float64) {
	c.OwnCause[i] = false
	k := int(c.Condition[i])
	if k < firstHoled || c.Finding[i] != NoFinding {
		return
	}
	// On a thoroughly restored car the item may be in either stratum. Each is weighted by
	// its chance of the condition.
	age, due, all := m.age[c.History], 0.0, 0.0
	first, last := strataOf(c.Repair)
	for s := first; s <= last; s++ {
		rust, cause := m.table[i].read(m.mu[c.History][s.reading()][i]+luck), m.causeAt(i, age, s)
		weight := float64(cause.apply(rust)[k] * float64(m.prior[i].kept[s]*(1-m.prior[i].holed[s])))
		due += float64(weight * cause.shareOf(k, &rust))
		all += weight
	}
	c.OwnCause[i] = u*all < due
}
