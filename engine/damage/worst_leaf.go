package damage

import (
	"underpaint/engine/car"
	"underpaint/engine/network"
)

// byCondition holds a chance or a weight for each condition.
type byCondition [car.Conditions]float64

// densities are the chances of each condition of an item given everything seen of
// it alone, at each x of the table, by repair state of the car.
type densities [RepairStates][]byCondition

// densitiesOf tabulates them.
func (m *Model) densitiesOf(i int) *densities {
	if d := m.densities[m.alike[i]]; d != nil {
		return d
	}
	d := &densities{}
	for r := range d {
		d[r] = make([]byCondition, m.scale.size)
		for x := range d[r] {
			j := m.jointAt(i, m.table[i].at[x], r)
			d[r][x] = j.conditions()
		}
	}
	m.densities[m.alike[i]] = d
	return d
}

// jointAt is everything about an item given its rust, the repair state and what
// was seen of it alone; it adds to 1.
func (m *Model) jointAt(i int, rust [car.Conditions]float64, repair int) Likelihood {
	j := m.prior[i].joint(rust, repair)
	if e := m.seen[i]; e != nil {
		j.condition(e)
	}
	return j
}

// conditions sums everything but the condition out.
func (j *Likelihood) conditions() (g byCondition) {
	for k := range j {
		for f := range j[k] {
			g[k] += j[k][f][0] + j[k][f][1]
		}
	}
	return g
}

// read reads the table between its points, as likelihoods are read.
func (d *densities) read(s scale, x float64, repair int) (g byCondition) {
	n, w := s.cell(x)
	at := d[repair][n-1 : n+3]
	for k := range g {
		v := float64(w[0]*at[0][k]) + float64(w[1]*at[1][k]) + float64(w[2]*at[2][k]) + float64(w[3]*at[3][k])
		g[k] = max(0, v) // interpolation may undershoot
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

// product is the items of one pocket that count in the same Worst nodes.
type product struct {
	m      *Model
	at     spot
	nodes  []int
	limit  []int // by combination of limits: the lowest of them
	items  []int
	given  []*densities  // by item
	buffer []byCondition // by own level
}

var _ network.Bounded = (*product)(nil)

// AtMost is the chance that all its items stay within a limit. An item that counts
// in several nodes has to stay within the lowest of their limits.
func (l *product) AtMost(root, p int, dst []float64) {
	for n, i := range l.items {
		base, repair := l.m.above(i, root, p)
		for q, term := range l.m.sideOf(i) {
			g := l.given[n].read(l.m.scale, base+term, repair)
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
		row, to := &l.buffer[l.m.ownLevel(l.at, q)], dst[q*size:(q+1)*size]
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

// spreadLeaf is a leaf under one of the two nodes of a pocket.
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

// pairLeaf is what was seen of the worse of two items, given everything seen of
// each alone, which has leaves of its own.
type pairLeaf struct {
	m    *Model
	pair *pair
	both bothDensities
}

// bothDensities are the chances of the conditions of both items at each of the
// levels of their nodes.
type bothDensities [2][]byCondition

// pairLeaves are those whose first item is in the pocket, unless they are nodes.
func (m *Model) pairLeaves(pocket int) (out []network.Leaf) {
	for n := range m.seenTogether.pairs {
		p := &m.seenTogether.pairs[n]
		if p.node < 0 && m.Body.Items[p.item[0]].Pocket == pocket {
			out = append(out, &pairLeaf{m: m, pair: p})
		}
	}
	return out
}

// at fills in the densities of both items.
func (both *bothDensities) at(m *Model, item [2]int, root, p int) {
	for n, i := range item {
		base, repair := m.above(i, root, p)
		d := m.densitiesOf(i)
		both[n] = both[n][:0]
		for _, term := range m.sideOf(i) {
			both[n] = append(both[n], d.read(m.scale, base+term, repair))
		}
	}
}

// Multiply multiplies the expected likelihood at every level into dst.
func (l *pairLeaf) Multiply(root, p int, dst []float64) {
	l.both.at(l.m, l.pair.item, root, p)
	a, b := l.m.spotOf(l.pair.item[0]), l.m.spotOf(l.pair.item[1])
	for q := range dst {
		dst[q] *= l.pair.worseLikely(&l.both[0][l.m.ownLevel(a, q)], &l.both[1][l.m.ownLevel(b, q)])
	}
}

// pairBound is a pair as a member of Worst nodes.
type pairBound struct {
	m    *Model
	unit *unit
	both bothDensities
}

var _ network.Bounded = (*pairBound)(nil)

// AtMost is the chance that both items stay within the limits of the nodes that
// each counts in, given what was seen of the worse one.
func (l *pairBound) AtMost(root, p int, dst []float64) {
	l.both.at(l.m, l.unit.item, root, p)
	a, b := l.m.spotOf(l.unit.item[0]), l.m.spotOf(l.unit.item[1])
	size := combinations(len(l.unit.nodes))
	for q := 0; q*size < len(dst); q++ {
		to := dst[q*size : (q+1)*size]
		within(to, l.unit.bothAt(&l.both[0][l.m.ownLevel(a, q)], &l.both[1][l.m.ownLevel(b, q)], to))
	}
}
