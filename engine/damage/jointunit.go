package damage

import (
	"slices"

	"underpaint/engine/car"
)

// jointUnit is one item that counts in a max node, or a pair. It is drawn as one once the
// shared factors are drawn.
type jointUnit struct {
	item  [2]int // the second is −1 for a single item
	pair  *pair  // nil for a single item
	nodes []int  // nodes that either item counts in, ascending, without the pair's own
	// combination is the combination of levels of its nodes, by the conditions of both items.
	combination [car.Conditions][car.Conditions]int
}

// setUnits lists the items that must be drawn together, in the order of the items in
// their pockets, and collects single items of one pocket into products.
func (m *conditioned) setUnits() {
	t := &m.layout
	t.unitOf = make([]int, len(m.Body.Items))
	for i := range t.unitOf {
		t.unitOf[i] = -1
	}
	for g := range m.Body.Groups {
		for _, pocket := range m.Body.Groups[g].Pockets {
			for _, i := range m.Body.Pockets[pocket].Items {
				if t.unitOf[i] < 0 {
					m.addUnit(i)
				}
			}
		}
	}
}

// addUnit adds the unit of item i, if it is in a pair or counts in a node.
func (m *conditioned) addUnit(i int) {
	t := &m.layout
	u := jointUnit{item: [2]int{i, -1}}
	for n := range t.pairs {
		if p := &t.pairs[n]; p.item[0] == i || p.item[1] == i {
			u.pair, u.item = p, p.item
		}
	}
	u.nodes = t.nodesOf(u.item[:]...)
	if u.pair == nil && len(u.nodes) == 0 {
		return
	}
	for a := range u.combination {
		for b := range u.combination[a] {
			for _, n := range u.nodes {
				level := 0
				if slices.Contains(t.nodes[n].Items, u.item[0]) {
					level = a
				}
				if u.pair != nil && slices.Contains(t.nodes[n].Items, u.item[1]) {
					level = max(level, b)
				}
				u.combination[a][b] = u.combination[a][b]*car.Conditions + level
			}
		}
	}
	t.unitOf[u.item[0]] = len(t.units)
	switch {
	case u.pair == nil:
		t.toProduct(m, i, u.nodes)
	case u.pair.node >= 0:
		for _, i := range u.item {
			t.toProduct(m, i, append(t.nodesOf(i), u.pair.node))
		}
		fallthrough
	default:
		t.unitOf[u.item[1]] = len(t.units)
	}
	t.units = append(t.units, u)
}

// nodesOf are the nodes that any of the items counts in, without the node of a pair.
func (t *maxLayout) nodesOf(items ...int) (out []int) {
	for n, w := range t.nodes {
		if slices.ContainsFunc(items, func(i int) bool { return slices.Contains(w.Items, i) }) {
			out = append(out, n)
		}
	}
	return out
}

// toProduct adds a single item to the product of its pocket and nodes.
func (t *maxLayout) toProduct(m *conditioned, i int, nodes []int) {
	at := m.pocketRefOf(i)
	n := slices.IndexFunc(t.products, func(p product) bool { return p.at == at && slices.Equal(p.nodes, nodes) })
	if n < 0 {
		n = len(t.products)
		one := product{b: m.base, at: at, nodes: nodes, buffer: make([]byCondition, len(m.pocket))}
		for j := range combinations(len(nodes)) {
			one.limit = append(one.limit, lowest(j, len(nodes)))
		}
		t.products = append(t.products, one)
	}
	t.products[n].items = append(t.products[n].items, i)
	t.products[n].given = append(t.products[n].given, m.densitiesOf(i))
}

// bothAt spreads the chances of the conditions of a pair, times the likelihood of the
// evidence on the worse one, over the combinations of levels of its nodes. It returns the
// sum.
func (u *jointUnit) bothAt(a, b *byCondition, dst []float64) (sum float64) {
	clear(dst)
	for x, va := range a {
		at := &u.combination[x]
		for y, vb := range b {
			v := float64(float64(va*vb) * u.pair.likely[max(x, y)])
			dst[at[y]] += v
			sum += v
		}
	}
	return sum
}

// within turns chances of combinations of levels into chances of staying within
// combinations of limits, divided by their sum.
func within(v []float64, sum float64) {
	scale := 1 / sum
	for step := 1; step < len(v); step *= car.Conditions {
		for block := 0; block < len(v); block += step * car.Conditions {
			for i := block + step; i < block+step*car.Conditions; i++ {
				v[i] += v[i-step]
			}
		}
	}
	for i := range v {
		v[i] = min(1, float64(v[i]*scale))
	}
	v[len(v)-1] = 1
}

// worseLikely is the expected likelihood of the evidence on the worse of two items:
// Σ L(k)·P(the worse is at k).
func (p *pair) worseLikely(a, b *byCondition) (v float64) {
	below := 0.0 // chance that the first is better than k
	upTo := 0.0  // chance that the second is k or better
	for k, l := range p.likely {
		upTo += b[k]
		v += float64(l * (float64(a[k]*upTo) + float64(below*b[k])))
		below += a[k]
	}
	return v
}
