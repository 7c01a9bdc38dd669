package damage

import "underpaint/engine/car"

// Exact chances with evidence on the worst of several items. As elsewhere, the weight of
// each state of the shared factors is added to the table of x; an item that counts in a
// max node or a pair has one weight for each of its conditions.

// levelsPass collects weights by x, stratum and condition for one item, by age.
type levelsPass struct {
	c       *conditioned
	item    int
	likely  []*likely // by age; nil without evidence on it alone
	weights [][strata][]byCondition
}

func (c *conditioned) newLevelsPass(i int) *levelsPass {
	one := &levelsPass{c: c, item: i, weights: make([][strata][]byCondition, len(c.ages))}
	for age := range c.ages {
		for s := range one.weights[age] {
			one.weights[age][s] = make([]byCondition, c.scale.size)
		}
		if c.seen[i] != nil {
			one.likely = append(one.likely, c.likelyOf(i, age))
		}
	}
	return one
}

// lay adds a weight for each condition at one state of the levels above. The weights are
// relative to the chance of the condition given the evidence on the item alone.
func (one *levelsPass) lay(level, repair int, luck float64, v byCondition) {
	c := one.c
	age := c.age[level]
	first, last := strataOf(repair)
	if one.likely != nil {
		seen := 0.0
		for s := first; s <= last; s++ {
			seen += one.likely[age].read(c.scale, s, c.mu[level][s.reading()][one.item]+luck)
		}
		for k := range v {
			v[k] /= seen
		}
	}
	for s := first; s <= last; s++ {
		at, w := c.scale.cell(c.mu[level][s.reading()][one.item] + luck)
		for n := range w {
			row := &one.weights[age][s][at-1+n]
			for k := range row {
				row[k] += float64(v[k] * w[n])
			}
		}
	}
}

// gather turns the weights into the posterior. For each condition only its own weight counts.
func (one *levelsPass) gather() (out Likelihood) {
	c := one.c
	for age := range one.weights {
		for s := range strata {
			var rust [car.Conditions]byCondition // [condition][rust]
			for x := range one.weights[age][s] {
				v := &one.weights[age][s][x]
				if *v == (byCondition{}) {
					continue
				}
				for k, w := range v {
					for r, p := range c.table[one.item].at[x] {
						rust[k][r] += float64(w * p)
					}
				}
			}
			var all Likelihood
			for k := range rust {
				j := c.jointOf(one.item, age, s, rust[k])
				all[k] = j[k]
			}
			out.plus(&all)
		}
	}
	return out
}

// pocketPass collects the weights of one pocket of the network.
type pocketPass struct {
	at       pocketRef
	plain    []*plainPass
	products []*productPass
	pairs    []*pairPass
	was      [2]int // current root state and group level, whose weights are being summed
}

// passAt lists the passes of a pocket. The members of the network are in the order in
// which setMax gave them: products, then pairs.
func (m *conditioned) passAt(here pocketRef) *pocketPass {
	t := &m.layout
	pass := &pocketPass{at: here, was: [2]int{-1, -1}}
	for pocket, at := range m.pocketRefs {
		if !at.isIn(here) {
			continue
		}
		one := &plainPass{at: at, sums: make([]float64, len(m.pocket))}
		for _, i := range m.Body.Pockets[pocket].Items {
			if t.unitOf[i] < 0 {
				one.passes = append(one.passes, m.newItemPass(i))
			}
		}
		if len(one.passes) > 0 {
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
		if u.pair == nil || u.pair.node >= 0 || !m.pocketRefOf(u.item[0]).isIn(here) {
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

func (pass *pocketPass) run(m *conditioned, out map[int]Likelihood) {
	visit := func(root, p, q int, weight float64, byMember [][]float64) {
		if now := [2]int{root, p}; now != pass.was {
			pass.hand(m)
			pass.was = now
			for _, one := range pass.pairs {
				one.both.set(root, p)
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
		for _, pass := range one.passes {
			out[pass.item] = pass.gather()
		}
	}
	for _, one := range pass.products {
		for n, i := range one.product.items {
			out[i] = one.weights[n].gather()
		}
	}
	for _, one := range pass.pairs {
		for n, i := range one.unit.item {
			out[i] = one.weights[n].gather()
		}
	}
}

// hand adds the sums of one root state and group level to the tables of x.
func (pass *pocketPass) hand(m *conditioned) {
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

// plainPass is for the items of one pocket of the body that count in no node or pair.
type plainPass struct {
	at     pocketRef
	passes []*itemPass
	sums   []float64 // by own level
}

func (one *plainPass) hand(m *conditioned, was [2]int) {
	for q, weight := range one.sums {
		if weight == 0 {
			continue
		}
		for _, pass := range one.passes {
			pass.lay(was[0], was[1], q, weight)
		}
	}
	clear(one.sums)
}
