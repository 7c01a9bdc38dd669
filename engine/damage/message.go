package damage

import "underpaint/engine/network"

// seenLeaf is the message of one item on which something was seen: its
// likelihood at each x of the table, for each repair state of the car.
type seenLeaf struct {
	m      *Model
	item   int
	side   []float64 // terms of the pocket levels
	likely [RepairStates][]float64
}

var _ network.Leaf = (*seenLeaf)(nil)

// leaves returns the leaves of a pocket on which something was seen; the others
// send no message.
func (m *Model) leaves(pocket int) (out []network.Leaf) {
	for _, i := range m.Body.Pockets[pocket].Items {
		if m.seen[i] == nil {
			continue
		}
		l := &seenLeaf{m: m, item: i, side: m.sideTerm[b2i(!m.Body.PartOf(i).SeenWhenStripped)]}
		for r := range l.likely {
			l.likely[r] = m.likelihoodTable(i, r)
		}
		out = append(out, l)
	}
	return out
}

// likelihoodTable is the likelihood of what was seen of item i at each x.
func (m *Model) likelihoodTable(i, repair int) []float64 {
	rust, fixed := m.prior[i].pull(m.seen[i], repair)
	out := make([]float64, tableSize)
	for n := range out {
		v := fixed
		for k, p := range m.table[i].at[n] {
			v += float64(p * rust[k])
		}
		out[n] = v
	}
	return out
}

// Multiply multiplies the likelihood at every level of the pocket into dst.
func (l *seenLeaf) Multiply(root, p int, dst []float64) {
	level, k, repair := l.m.split(root)
	base := l.m.mu[level][l.item] + l.m.carTerm[k] + l.m.groupTerm[p]
	at := l.likely[repair]
	for q := range dst {
		n, w := cell(base + l.side[q])
		v := float64(w[0]*at[n-1]) + float64(w[1]*at[n]) + float64(w[2]*at[n+1]) + float64(w[3]*at[n+2])
		if v < 1e-300 {
			v = 1e-300 // interpolation may undershoot where the likelihood is nil
		}
		dst[q] *= v
	}
}
