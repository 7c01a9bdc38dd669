package damage

// LeftOut returns, for every item with an entry, its chances given everything known but
// that entry; the others stay zero. entry holds the likelihood of each, which is part
// of what was seen of the item alone and has no zeros: taking it out of the posterior
// is then a division.
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

// without is what a posterior would be without a likelihood that it has taken in.
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
