package damage

// LeftOut returns, for every item with an entry, its chances given everything known
// except that entry; the others stay zero. entry holds the likelihoods. Each is a factor
// of the item's own evidence and has no zeros, so a division takes it out of the
// posterior.
func (m *Model) LeftOut(entry []*Likelihood) []Chances {
	out := make([]Chances, len(m.Body.Items))
	for v, c := range m.given {
		for g := range c.nested.Groups {
			for k := range c.nested.Groups[g].Pockets {
				for i, joint := range c.jointsAt(pocketRef{group: g, pocket: k}) {
					if entry[i] != nil {
						one := joint.without(entry[i])
						out[i].addTimes(&one, m.weight[v])
					}
				}
			}
		}
	}
	return out
}

// without is the posterior without one of the likelihoods that it includes.
func (j *Likelihood) without(l *Likelihood) Chances {
	rest := *j
	for k := range rest {
		for f := range rest[k] {
			for d := range rest[k][f] {
				rest[k][f][d] /= l[k][f][d]
			}
		}
	}
	rest.normalise()
	return rest.chances()
}
