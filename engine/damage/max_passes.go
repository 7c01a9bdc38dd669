package damage

import "underpaint/engine/car"

// productPass is for the items of a product: each has the weight of the worst of
// all of them, averaged over the others.
type productPass struct {
	product *product
	// Its nodes share one worst level, so only combinations in which all levels agree
	// count.
	diagonal int
	sums     []byCondition // by own level
	weights  []*levelsPass // by item
	// For each item, the chance that it, those before it, or those after it are all
	// within each condition.
	own, before, after []byCondition
	luck               []float64
}

func newProductPass(m *conditioned, p *product) *productPass {
	n := len(p.items)
	one := &productPass{product: p, diagonal: (combinations(len(p.nodes)) - 1) / (car.Conditions - 1),
		sums: make([]byCondition, len(m.pocket)), own: make([]byCondition, n), luck: make([]float64, n),
		before: make([]byCondition, n+1), after: make([]byCondition, n+1)}
	for _, i := range p.items {
		one.weights = append(one.weights, m.newLevelsPass(i))
	}
	return one
}

func (one *productPass) collect(q int, weights []float64) {
	to := &one.sums[q]
	for k := range to {
		to[k] += weights[k*one.diagonal]
	}
}

func (one *productPass) hand(m *conditioned, was [2]int) {
	for q := range one.sums {
		if one.sums[q] != (byCondition{}) {
			one.spread(m, was, q)
		}
		one.sums[q] = byCondition{}
	}
}

// spread adds to each item the weight of each of its conditions, given the weight of each
// condition of the worst of all.
func (one *productPass) spread(m *conditioned, was [2]int, q int) {
	items, last := one.product.items, len(one.product.items)
	level, k, repair := m.split(was[0])
	for n, i := range items {
		one.luck[n] = m.luck(i, k, was[1]) + m.sideOf(i)[q]
		g := m.densityAt(i, level, repair, one.luck[n], one.product.given[n])
		one.own[n] = g.within()
	}
	for k := range car.Conditions {
		one.before[0][k], one.after[last][k] = 1, 1
		for n := range items {
			one.before[n+1][k] = one.before[n][k] * one.own[n][k]
		}
		for n := last - 1; n >= 0; n-- {
			one.after[n][k] = one.after[n+1][k] * one.own[n][k]
		}
	}
	for n := range items {
		var weight byCondition
		worse := 0.0 // Σ weight × chance of the worst of the others, over those above k
		for k := car.Conditions - 1; k >= 0; k-- {
			others := float64(one.before[n][k] * one.after[n+1][k])
			weight[k] = float64(others*one.sums[q][k]) + worse
			if k > 0 {
				worse += float64((others - float64(one.before[n][k-1]*one.after[n+1][k-1])) * one.sums[q][k])
			}
		}
		one.weights[n].lay(level, repair, one.luck[n], weight)
	}
}

// pairPass is for the two items of a pair.
type pairPass struct {
	unit    *jointUnit
	member  int // place among the members of the pocket, −1 = none
	both    bothOf
	sums    [2][]byCondition // by own level
	weights [2]*levelsPass
}

func newPairPass(m *conditioned, u *jointUnit) *pairPass {
	one := &pairPass{unit: u, member: -1, both: m.bothOf(u.item)}
	for n := range one.sums {
		one.sums[n], one.weights[n] = make([]byCondition, len(m.pocket)), m.newLevelsPass(u.item[n])
	}
	return one
}

// collect adds the weight of each condition of either item, averaged over the
// other.
func (one *pairPass) collect(m *conditioned, q int, weight float64, byMember [][]float64) {
	qa, qb := m.ownLevel(one.both.at[0], q), m.ownLevel(one.both.at[1], q)
	da, db, u := &one.both.both[0][qa], &one.both.both[1][qb], one.unit
	a, b := &one.sums[0][qa], &one.sums[1][qb]
	scale := 1 / u.pair.worseLikely(da, db)
	for x, va := range da {
		for y, vb := range db {
			w := weight
			if one.member >= 0 {
				w = byMember[one.member][u.combination[x][y]]
			}
			w *= float64(u.pair.likely[max(x, y)] * scale)
			a[x] += float64(w * vb)
			b[y] += float64(w * va)
		}
	}
}

func (one *pairPass) hand(m *conditioned, was [2]int) {
	for n, i := range one.unit.item {
		level, k, repair := m.split(was[0])
		luck := m.luck(i, k, was[1])
		for q, term := range m.sideOf(i) {
			if one.sums[n][q] != (byCondition{}) {
				one.weights[n].lay(level, repair, luck+term, one.sums[n][q])
			}
		}
		clear(one.sums[n])
	}
}
