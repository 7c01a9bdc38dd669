package damage

import (
	"underpaint/engine/car"
	"underpaint/engine/network"
)

// densities are, at each x of the table and by stratum, the chances of each condition of
// an item times the likelihood of the evidence on it alone.
type densities [strata][]byCondition

// densitiesOf tabulates them, by age.
func (m *conditioned) densitiesOf(i int) (out []*densities) {
	for age := range m.ages {
		key := tabled{m.alike[i], age}
		if m.densities[key] == nil {
			m.densities[key] = m.newDensities(i, age)
		}
		out = append(out, m.densities[key])
	}
	return out
}

// newDensities works them out as products with a constant matrix, because the chances of
// the condition are linear in those of the rust.
func (m *conditioned) newDensities(i, age int) *densities {
	d := &densities{}
	for s := range strata {
		var matrix [car.Conditions]byCondition // [rust][condition]
		for k := range matrix {
			var rust byCondition
			rust[k] = 1
			j := m.jointOf(i, age, s, rust)
			matrix[k] = j.conditions()
		}
		d[s] = make([]byCondition, m.scale.size)
		for x, rust := range m.table[i].at {
			to := &d[s][x]
			for k, p := range rust {
				for c, v := range matrix[k] {
					to[c] += float64(p * v)
				}
			}
		}
	}
	return d
}

// densityAt is the density of each condition of an item given the levels above and the
// evidence on it alone. given are its densities, by age.
func (b *base) densityAt(i, level, repair int, luck float64, given []*densities) (g byCondition) {
	first, last := strataOf(repair)
	for s := first; s <= last; s++ {
		n, w := b.scale.cell(b.mu[level][s.reading()][i] + luck)
		at := given[b.age[level]][s][n-1 : n+3]
		for k := range g {
			v := float64(w[0]*at[0][k]) + float64(w[1]*at[1][k]) + float64(w[2]*at[2][k]) + float64(w[3]*at[3][k])
			g[k] += max(0, v) // interpolation may undershoot
		}
	}
	sum := 0.0
	for _, v := range g {
		sum += v
	}
	scale := 1 / sum
	for k := range g {
		g[k] *= scale
	}
	return g
}

// within is the chance of staying within each condition.
func (g *byCondition) within() (out byCondition) {
	sum := 0.0
	for k := range car.Conditions - 1 {
		sum += g[k]
		out[k] = min(1, sum)
	}
	out[car.Conditions-1] = 1
	return out
}

// product is the items of one pocket that count in the same max nodes.
type product struct {
	b      *base
	at     pocketRef
	nodes  []int
	limit  []int // by combination of limits: the lowest of them
	items  []int
	given  [][]*densities // by item
	buffer []byCondition  // by own level
}

var _ network.CDFLeaf = (*product)(nil)

// AtMost is the chance that all its items stay within a limit. An item that counts in
// several nodes must stay within the lowest of their limits.
func (l *product) AtMost(root, p int, dst []float64) {
	level, k, repair := l.b.split(root)
	for n, i := range l.items {
		luck := l.b.luck(i, k, p)
		for q, term := range l.b.sideOf(i) {
			g := l.b.densityAt(i, level, repair, luck+term, l.given[n])
			v, row := g.within(), &l.buffer[q]
			if n == 0 {
				*row = v
				continue
			}
			for k := range row {
				row[k] *= v[k]
			}
		}
	}
	size := len(l.limit)
	for q := 0; q*size < len(dst); q++ {
		row, to := &l.buffer[l.b.ownLevel(l.at, q)], dst[q*size:(q+1)*size]
		for j, k := range l.limit {
			to[j] = row[k]
		}
	}
}

func combinations(nodes int) int {
	n := 1
	for range nodes {
		n *= car.Conditions
	}
	return n
}

// lowest is the least of the limits in a combination.
func lowest(j, nodes int) int {
	least := car.Conditions - 1
	for range nodes {
		least = min(least, j%car.Conditions)
		j /= car.Conditions
	}
	return least
}

// spreadLeaf is a leaf below one of the two nodes of a pocket.
type spreadLeaf struct {
	network.Leaf
	node   int
	buffer []float64
}

// Multiply multiplies the likelihood at every pair of levels into dst.
func (l *spreadLeaf) Multiply(root, p int, dst []float64) {
	for q := range l.buffer {
		l.buffer[q] = 1
	}
	l.Leaf.Multiply(root, p, l.buffer)
	n := len(l.buffer)
	for q := range dst {
		if l.node == first {
			dst[q] *= l.buffer[q/n]
		} else {
			dst[q] *= l.buffer[q%n]
		}
	}
}

// bothOf are two items with the pocketRefs of their pockets and their densities.
type bothOf struct {
	b     *base
	item  [2]int
	at    [2]pocketRef
	given [2][]*densities
	// The chances of the conditions of both at each of the levels of their nodes, for
	// the root state and group level set last.
	both [2][]byCondition
}

func (m *conditioned) bothOf(item [2]int) bothOf {
	out := bothOf{b: m.base, item: item}
	for n, i := range item {
		out.at[n], out.given[n] = m.pocketRefOf(i), m.densitiesOf(i)
	}
	return out
}

// set fills in the densities of both items.
func (l *bothOf) set(root, p int) {
	level, k, repair := l.b.split(root)
	for n, i := range l.item {
		luck := l.b.luck(i, k, p)
		l.both[n] = l.both[n][:0]
		for _, term := range l.b.sideOf(i) {
			l.both[n] = append(l.both[n], l.b.densityAt(i, level, repair, luck+term, l.given[n]))
		}
	}
}

// chances are those of both items at a level of their pocket.
func (l *bothOf) chances(q int) (a, b *byCondition) {
	return &l.both[0][l.b.ownLevel(l.at[0], q)], &l.both[1][l.b.ownLevel(l.at[1], q)]
}

// pairLeaf is the evidence on the worse of two items. The evidence on each alone has its
// own leaves.
type pairLeaf struct {
	bothOf
	pair pair
}

// pairLeaves are those whose first item is in the pocket, unless they are nodes. The
// pocketRefs of both items must be known.
func (m *conditioned) pairLeaves(pocket int) (out []network.Leaf) {
	for _, p := range m.layout.pairs {
		if p.node < 0 && m.Body.Items[p.item[0]].Pocket == pocket {
			out = append(out, &pairLeaf{bothOf: m.bothOf(p.item), pair: p})
		}
	}
	return out
}

// Multiply multiplies the expected likelihood at every level into dst.
func (l *pairLeaf) Multiply(root, p int, dst []float64) {
	l.set(root, p)
	for q := range dst {
		a, b := l.chances(q)
		dst[q] *= l.pair.worseLikely(a, b)
	}
}

// pairBound is a pair as a member of max nodes.
type pairBound struct {
	bothOf
	unit *jointUnit
}

var _ network.CDFLeaf = (*pairBound)(nil)

// AtMost is the chance that both items stay within the limits of the nodes that each
// counts in, given the evidence on the worse one.
func (l *pairBound) AtMost(root, p int, dst []float64) {
	l.set(root, p)
	size := combinations(len(l.unit.nodes))
	for q := 0; q*size < len(dst); q++ {
		to := dst[q*size : (q+1)*size]
		a, b := l.chances(q)
		within(to, l.unit.bothAt(a, b, to))
	}
}
