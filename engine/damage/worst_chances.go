package damage

// Exact chances where something was seen of the worst of several items. The weight
// of each state of the shared factors is laid on the table of x as ever; an item
// that counts in a Worst node or a pair has one weight for each of its conditions.

// levelWeights are weights by x, repair state and condition.
type levelWeights [RepairStates][]byCondition

func newLevelWeights(s scale) *levelWeights {
	w := &levelWeights{}
	for r := range w {
		w[r] = make([]byCondition, s.size)
	}
	return w
}

func (lw *levelWeights) lay(s scale, x float64, repair int, v *byCondition) {
	at, w := s.cell(x)
	for c := range w {
		row := &lw[repair][at-1+c]
		for k := range row {
			row[k] += float64(v[k] * w[c])
		}
	}
}

// gatherLevels is gather with a weight for each condition.
func (m *Model) gatherLevels(i int, lw *levelWeights) (c Chances) {
	for r := range lw {
		for x := range lw[r] {
			v := &lw[r][x]
			if *v == (byCondition{}) {
				continue
			}
			j := m.jointAt(i, m.table[i].at[x], r)
			for k := range j {
				for f := range j[k] {
					for d := range j[k][f] {
						j[k][f][d] *= v[k]
					}
				}
			}
			c.add(&j, 1)
		}
	}
	return c
}

// pocketPass collects the weights of one pocket of the network.
type pocketPass struct {
	at       spot
	plain    []*plainPass
	products []*productPass
	pairs    []*pairPass
	was      [2]int // root state and group level whose weights are being summed
}

// passAt lists what stands in a pocket. The members of the network come in the
// order in which setWorst gave them: products, then pairs.
func (m *Model) passAt(here spot) *pocketPass {
	t := &m.seenTogether
	pass := &pocketPass{at: here, was: [2]int{-1, -1}}
	for pocket, at := range m.spot {
		if !at.isIn(here) {
			continue
		}
		one := &plainPass{at: at, sums: make([]float64, len(m.sideTerm[open]))}
		for _, i := range m.Body.Pockets[pocket].Items {
			if t.unitOf[i] < 0 {
				one.add(m.scale, i)
			}
		}
		if len(one.items) > 0 {
			pass.plain = append(pass.plain, one)
		}
	}
	for n := range t.products {
		if one := &t.products[n]; one.at.isIn(here) {
			pass.products = append(pass.products, newProductPass(m, one))
		}
	}
	member := len(pass.products)
	for n := range t.units {
		u := &t.units[n]
		if u.pair == nil || u.pair.node >= 0 || !m.spotOf(u.item[0]).isIn(here) {
			continue
		}
		one := newPairPass(m, u)
		if len(u.nodes) > 0 {
			one.member = member
			member++
		}
		pass.pairs = append(pass.pairs, one)
	}
	return pass
}

func (pass *pocketPass) run(m *Model, out []Chances) {
	visit := func(root, p, q int, weight float64, byMember [][]float64) {
		if now := [2]int{root, p}; now != pass.was {
			pass.hand(m)
			pass.was = now
			for _, one := range pass.pairs {
				one.both.at(m, one.unit.item, root, p)
			}
		}
		for _, one := range pass.plain {
			one.sums[m.ownLevel(one.at, q)] += weight
		}
		for n, one := range pass.products {
			one.collect(m.ownLevel(one.product.at, q), byMember[n])
		}
		for _, one := range pass.pairs {
			one.collect(m, q, weight, byMember)
		}
	}
	if m.worst != nil {
		m.worst.Levels(pass.at.group, pass.at.pocket, visit)
	} else {
		m.posterior.Levels(pass.at.group, pass.at.pocket, func(root, p, q int, weight float64) { visit(root, p, q, weight, nil) })
	}
	pass.hand(m)
	for _, one := range pass.plain {
		for n, i := range one.items {
			out[i] = m.gather(i, one.weights[n])
		}
	}
	for _, one := range pass.products {
		for n, i := range one.product.items {
			out[i] = m.gatherLevels(i, one.weights[n])
		}
	}
	for _, one := range pass.pairs {
		for n, i := range one.unit.item {
			out[i] = m.gatherLevels(i, one.weights[n])
		}
	}
}

// hand lays the sums of one root state and group level on the tables of x.
func (pass *pocketPass) hand(m *Model) {
	if pass.was[0] < 0 {
		return
	}
	for _, one := range pass.plain {
		one.hand(m, pass.was)
	}
	for _, one := range pass.products {
		one.hand(m, pass.was)
	}
	for _, one := range pass.pairs {
		one.hand(m, pass.was)
	}
}

// plainPass is for the items of one pocket of the body that count in nothing.
type plainPass struct {
	at      spot
	items   []int
	sums    []float64 // by own level
	weights []*stateWeights
}

func (one *plainPass) add(s scale, i int) {
	one.items, one.weights = append(one.items, i), append(one.weights, newStateWeights(s))
}

func (one *plainPass) hand(m *Model, was [2]int) {
	for n, i := range one.items {
		base, repair := m.above(i, was[0], was[1])
		row := one.weights[n][repair]
		for q, term := range m.sideOf(i) {
			if one.sums[q] == 0 {
				continue
			}
			at, w := m.scale.cell(base + term)
			for c := range w {
				row[at-1+c] += float64(one.sums[q] * w[c])
			}
		}
	}
	clear(one.sums)
}
