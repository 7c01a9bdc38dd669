package damage

import "underpaint/engine/network"

// seenLeaf is the message of one item on which something was seen: its
// likelihood at each x of the table, for each repair state of the car.
type seenLeaf struct {
	m      *Model
	item   int
	side   []float64 // terms of the pocket levels
	likely *likely
}

// likely is a likelihood at each x of the table, by repair state of the car.
type likely [RepairStates][]float64

var _ network.Banded = (*seenLeaf)(nil)

// leaves returns the leaves of a pocket on which something was seen; the others
// send no message.
func (m *Model) leaves(pocket int) (out []network.Leaf) {
	for _, i := range m.Body.Pockets[pocket].Items {
		if m.seen[i] == nil {
			continue
		}
		side := m.sideTerm[b2i(!m.Body.PartOf(i).SeenWhenStripped)]
		out = append(out, &seenLeaf{m: m, item: i, side: side, likely: m.likelyOf(i)})
	}
	return out
}

// findAlike gives for each item the first of the same part on which the same was seen,
// so that tables of what left and right, or one brace and the next, have in common are
// made once.
func (m *Model) findAlike() []int {
	alike := make([]int, len(m.Body.Items))
	for i := range alike {
		for alike[i] < i {
			o := alike[i]
			if m.Body.Items[o].Part == m.Body.Items[i].Part && sameEvidence(m.seen[o], m.seen[i]) {
				break
			}
			alike[i]++
		}
	}
	return alike
}

func sameEvidence(a, b *Likelihood) bool { return a == b || a != nil && b != nil && *a == *b }

// likelyOf tabulates the likelihood of what was seen of item i.
func (m *Model) likelyOf(i int) *likely {
	if l := m.likely[m.alike[i]]; l != nil {
		return l
	}
	l := &likely{}
	for r := range l {
		l[r] = m.likelihoodTable(i, r)
	}
	m.likely[m.alike[i]] = l
	return l
}

// likelihoodTable is the likelihood of what was seen of item i at each x.
func (m *Model) likelihoodTable(i, repair int) []float64 {
	rust, fixed := m.prior[i].pull(m.seen[i], repair)
	out := make([]float64, m.scale.size)
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
func (l *seenLeaf) Multiply(root, p int, dst []float64) { l.MultiplyBand(root, 1, p, dst) }

// MultiplyBand is Multiply for root states that differ in the repair state alone, as
// those that follow each other do: where they read the table is the same.
func (l *seenLeaf) MultiplyBand(root, states, p int, dst []float64) {
	level, k, repair := l.m.split(root)
	base := l.m.mu[level][l.item] + l.m.carTerm[k] + l.m.groupTerm[p]
	for q, side := range l.side {
		n, w := l.m.scale.cell(base + side)
		for s := range states {
			at := l.likely[repair+s][n-1 : n+3]
			v := float64(w[0]*at[0]) + float64(w[1]*at[1]) + float64(w[2]*at[2]) + float64(w[3]*at[3])
			if v < 1e-300 {
				v = 1e-300 // interpolation may undershoot where the likelihood is nil
			}
			dst[s*len(l.side)+q] *= v
		}
	}
}
