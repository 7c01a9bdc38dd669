package damage

// ChancesOf returns the exact posterior chances of one item, for about a
// hundredth of the cost of [Model.Chances]; more where something was seen of the
// worst of several items, for then a whole pocket is worked out.
func (m *Model) ChancesOf(i int) Chances {
	if len(m.seenTogether.units) > 0 {
		out, at := make([]Chances, len(m.Body.Items)), m.spotOf(i)
		m.passAt(at).run(m, out)
		return out[i]
	}
	pocket := m.Body.Items[i].Pocket
	g, n := m.Body.Pockets[pocket].Group, 0
	for k, id := range m.Body.Groups[g].Pockets {
		if id == pocket {
			n = k
		}
	}
	weight := newStateWeights(m.scale)
	m.layWeight(g, n, i, weight)
	return m.gather(i, weight)
}
