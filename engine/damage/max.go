package damage

import (
	"errors"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/network"
)

// MaxEvidence is the evidence on the worst of several items, such as a door gap that
// depends on everything that carries a side: the likelihood of each condition of the
// worst one. Only ratios matter; none may be zero.
//
// Sets of more than two items, such as the two sides of a car, become max nodes of the
// network; there may be at most three of them. There may be any number of pairs in mirror
// pockets or in one pocket. In a group where those sets count, one or two pairs become
// nodes within the group; otherwise the two pockets become one pocket whose levels are
// pairs of levels.
type MaxEvidence struct {
	Items  []int // ascending
	Likely [car.Conditions]float64
}

// MostMaxEvidence is the largest number of entries in Known.Worst: more than a body has
// pairs.
const MostMaxEvidence = 64

// pair is two items with evidence on the worse one.
type pair struct {
	item   [2]int
	likely [car.Conditions]float64
	node   int // max node of the network, −1 = its pockets form one pocket
}

// pocketRef says where a pocket of the body is in the network: it is a pocket of its own,
// or the first or second node of a pocket that represents two.
type pocketRef struct{ group, pocket, node int }

func (s pocketRef) isIn(pocket pocketRef) bool {
	return s.group == pocket.group && s.pocket == pocket.pocket
}

// The nodes of a pocket.
const (
	alone = iota
	first
	second
)

// maxLayout arranges all evidence on the worst of several items.
type maxLayout struct {
	pairs    []pair
	nodes    []MaxEvidence // nodes across groups
	within   []int         // groups of the pairs that are nodes; their numbers follow those of nodes
	partner  []int         // by pocket of the body: the pocket it is joined with, −1 = none
	products []product
	units    []jointUnit
	unitOf   []int // by item, −1 = none
}

// arrange sorts entries into pairs and nodes. Entries on the same items are independent,
// so their likelihoods multiply.
func (m *conditioned) arrange(list []MaxEvidence) error {
	t := &m.layout
	t.partner = make([]int, len(m.Body.Pockets))
	for k := range t.partner {
		t.partner[k] = -1
	}
	if len(list) > MostMaxEvidence {
		return errors.New("looks at the worst of several items: expected fewer")
	}
	var merged []MaxEvidence
	for _, w := range list {
		if len(w.Items) == 0 || w.Items[0] < 0 || w.Items[len(w.Items)-1] >= len(m.Body.Items) || !slices.IsSorted(w.Items) || !(slices.Min(w.Likely[:]) > 0) {
			return errors.New("looks at the worst of several items: expected items of the body in ascending order and likelihoods above 0")
		}
		n := slices.IndexFunc(merged, func(o MaxEvidence) bool { return slices.Equal(o.Items, w.Items) })
		if n < 0 {
			merged = append(merged, w)
			continue
		}
		for k := range w.Likely {
			merged[n].Likely[k] *= w.Likely[k]
		}
	}
	for _, w := range merged {
		if !t.addPair(m.Body, w) {
			t.nodes = append(t.nodes, w)
		}
	}
	for g := range m.Body.Groups {
		t.arrangeGroup(m.Body, g)
	}
	return nil
}

// addPair adds two items as a pair, unless either is already in one or their pockets
// cannot become one. It reports whether it did.
func (t *maxLayout) addPair(b *car.Body, w MaxEvidence) bool {
	if len(w.Items) != 2 || w.Items[0] == w.Items[1] {
		return false
	}
	for _, p := range t.pairs {
		if slices.Contains(w.Items, p.item[0]) || slices.Contains(w.Items, p.item[1]) {
			return false
		}
	}
	x, y := b.Items[w.Items[0]].Pocket, b.Items[w.Items[1]].Pocket
	if x != y {
		free := t.partner[x] < 0 && t.partner[y] < 0
		if b.Pockets[x].Group != b.Pockets[y].Group || !free && t.partner[x] != y {
			return false
		}
		t.partner[x], t.partner[y] = y, x
	}
	t.pairs = append(t.pairs, pair{[2]int{w.Items[0], w.Items[1]}, w.Likely, -1})
	return true
}

// arrangeGroup makes the pairs of a group nodes within it where that is quicker.
func (t *maxLayout) arrangeGroup(b *car.Body, g int) {
	in := func(i int) bool { return b.Pockets[b.Items[i].Pocket].Group == g }
	if !slices.ContainsFunc(t.nodes, func(w MaxEvidence) bool { return slices.ContainsFunc(w.Items, in) }) {
		return
	}
	var own []*pair
	for n := range t.pairs {
		if in(t.pairs[n].item[0]) {
			own = append(own, &t.pairs[n])
		}
	}
	if len(own) > network.MostMaxNodesWithin {
		return
	}
	for _, p := range own {
		p.node = len(t.nodes) + len(t.within)
		t.within = append(t.within, g)
	}
	for _, k := range b.Groups[g].Pockets {
		t.partner[k] = -1
	}
}

// groupOf builds a group of the network and records where each pocket of the body is in
// it.
func (m *conditioned) groupOf(g int) (out network.Group) {
	weights, sums := m.pocket, &groupSums{b: m.base}
	out.Weights = m.group
	for _, k := range m.Body.Groups[g].Pockets {
		other := m.layout.partner[k]
		switch {
		case other < 0:
			m.pocketRefs[k] = pocketRef{g, len(out.Pockets), alone}
			one := network.Pocket{Weights: weights, Leaves: append(m.leaves(k), m.pairLeaves(k)...)}
			if len(one.Leaves) > 0 && m.setSums(k, one.Leaves) {
				one.Summed, sums.pockets = true, append(sums.pockets, m.sums[k])
			}
			out.Pockets = append(out.Pockets, one)
		case m.pocketRefs[k].node == second:
			continue // it is part of its partner's pocket
		default:
			m.pocketRefs[k], m.pocketRefs[other] = pocketRef{g, len(out.Pockets), first}, pocketRef{g, len(out.Pockets), second}
			one := network.Pocket{Inner: len(weights)}
			for _, v := range weights {
				one.Weights = append(one.Weights, scaled(weights, v)...)
			}
			for node, pocket := range []int{k, other} {
				for _, leaf := range m.leaves(pocket) {
					one.Leaves = append(one.Leaves, &spreadLeaf{leaf, first + node, make([]float64, len(weights))})
				}
			}
			one.Leaves = append(one.Leaves, m.pairLeaves(k)...)
			one.Leaves = append(one.Leaves, m.pairLeaves(other)...)
			out.Pockets = append(out.Pockets, one)
		}
	}
	if len(sums.pockets) > 0 {
		out.Sums = sums
	}
	return out
}

// ownLevel is the level of the node at a pocketRef if the pocket is at level q.
func (b *base) ownLevel(at pocketRef, q int) int {
	switch at.node {
	case first:
		return q / len(b.pocket)
	case second:
		return q % len(b.pocket)
	}
	return q
}

// setMax conditions on the nodes, after everything else. It reuses earlier messages of
// groups whose evidence has not changed.
func (m *conditioned) setMax(from *conditioned, same []bool) (err error) {
	t := &m.layout
	if len(t.nodes) == 0 && len(t.pairs) == 0 {
		return nil
	}
	m.setUnits()
	if len(t.nodes) == 0 {
		return nil
	}
	w := network.MaxEvidence{Levels: car.Conditions}
	for n := range t.nodes {
		w.Likely, w.Within = append(w.Likely, t.nodes[n].Likely[:]), append(w.Within, -1)
	}
	w.Within = append(w.Within, t.within...)
	for n := range t.within {
		of := slices.IndexFunc(t.pairs, func(p pair) bool { return p.node == len(t.nodes)+n })
		w.Likely = append(w.Likely, t.pairs[of].likely[:])
	}
	for n := range t.products {
		one := &t.products[n]
		member := network.Member{Group: one.at.group, Pocket: one.at.pocket, Nodes: one.nodes, Leaf: one}
		if sums := m.ratiosOf(one); sums != nil {
			member.Sums = sums
		}
		w.Members = append(w.Members, member)
	}
	for n := range t.units {
		if u := &t.units[n]; u.pair != nil && u.pair.node < 0 && len(u.nodes) > 0 {
			at := m.pocketRefOf(u.pair.item[0])
			w.Members = append(w.Members, network.Member{Group: at.group, Pocket: at.pocket, Nodes: u.nodes, Leaf: &pairBound{bothOf: m.bothOf(u.item), unit: u}})
		}
	}
	var before *network.MaxPosterior
	if from != nil && from.worst != nil && m.sameNodes(from) {
		before = from.worst
	}
	if m.worst, err = m.posterior.ConditionMaxAfter(w, before, func(g int) bool { return same[g] }, m.samePockets(from)); err != nil {
		return err
	}
	nodes := make([][]int, len(t.units))
	for n := range t.units {
		nodes[n] = t.units[n].nodes
	}
	m.rest = m.worst.Remainder(nodes)
	return nil
}

func (m *conditioned) pocketRefOf(i int) pocketRef { return m.pocketRefs[m.Body.Items[i].Pocket] }
