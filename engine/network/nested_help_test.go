package network_test

import (
	"fmt"
	"math/rand/v2"

	"underpaint/engine/network"
)

// tableLeaf is a leaf given as a table: likelihood [root][group level][pocket level].
type tableLeaf [][][]float64

var _ network.Leaf = tableLeaf{}

func (l tableLeaf) Multiply(r, p int, dst []float64) {
	for q := range dst {
		dst[q] *= l[r][p][q]
	}
}

// funcLeaf is a leaf given by a function of the three levels.
type funcLeaf func(r, p, q int) float64

var _ network.Leaf = funcLeaf(nil)

func (l funcLeaf) Multiply(r, p int, dst []float64) {
	for q := range dst {
		dst[q] *= l(r, p, q)
	}
}

// randomNested draws one or two groups of up to two pockets with up to three leaves
// each. Weights and likelihoods are often zero.
func randomNested(r *rand.Rand, most int) network.Nested {
	n := network.Nested{Root: weights(r, 1+r.IntN(most+1))}
	for range 1 + r.IntN(2) {
		group := network.Group{Weights: weights(r, 1+r.IntN(most))}
		for range r.IntN(3) {
			pocket := network.Pocket{Weights: weights(r, 1+r.IntN(most))}
			for range r.IntN(4) {
				leaf := make(tableLeaf, len(n.Root))
				for root := range leaf {
					for range group.Weights {
						leaf[root] = append(leaf[root], weights(r, len(pocket.Weights)))
					}
				}
				pocket.Leaves = append(pocket.Leaves, leaf)
			}
			group.Pockets = append(group.Pockets, pocket)
		}
		n.Groups = append(n.Groups, group)
	}
	return n
}

// enumerated holds unnormalised weights that add to evidence.
type enumerated struct {
	evidence float64
	root     []float64
	levels   [][][]float64 // [group][pocket] joint of root, group level, pocket level
}

// enumerateNested visits every joint state of all groups and pockets and
// multiplies weights and likelihoods in plain float64.
func enumerateNested(n network.Nested) enumerated {
	all := enumerated{root: make([]float64, len(n.Root))}
	type node struct{ g, k int } // k = -1: the group itself
	var nodes []node
	state := map[node]int{}
	for g, group := range n.Groups {
		nodes = append(nodes, node{g, -1})
		all.levels = append(all.levels, nil)
		for k, pocket := range group.Pockets {
			nodes = append(nodes, node{g, k})
			size := len(n.Root) * len(group.Weights) * len(pocket.Weights)
			all.levels[g] = append(all.levels[g], make([]float64, size))
		}
	}
	var visit func(root, at int, w float64)
	visit = func(root, at int, w float64) {
		if at == len(nodes) {
			all.evidence += w
			all.root[root] += w
			for _, v := range nodes {
				if v.k >= 0 {
					group := n.Groups[v.g]
					cell := (root*len(group.Weights)+state[node{v.g, -1}])*len(group.Pockets[v.k].Weights) + state[v]
					all.levels[v.g][v.k][cell] += w
				}
			}
			return
		}
		v := nodes[at]
		prior, leaves := n.Groups[v.g].Weights, []network.Leaf(nil)
		if v.k >= 0 {
			prior, leaves = n.Groups[v.g].Pockets[v.k].Weights, n.Groups[v.g].Pockets[v.k].Leaves
		}
		for level, share := range proportions(prior) {
			state[v] = level
			w := w * share
			for _, leaf := range leaves {
				w *= leaf.(tableLeaf)[root][state[node{v.g, -1}]][level]
			}
			visit(root, at+1, w)
		}
	}
	for root, w := range n.Root {
		visit(root, 0, w)
	}
	return all
}

func proportions(weights []float64) []float64 {
	sum, out := 0.0, make([]float64, len(weights))
	for _, w := range weights {
		sum += w
	}
	for i, w := range weights {
		out[i] = w / sum
	}
	return out
}

func groupName(g int) string     { return fmt.Sprint("group", g) }
func pocketName(g, k int) string { return fmt.Sprint("group", g, "pocket", k) }

// asNet turns the nested network into a general one in which each leaf is a variable
// with two levels, observed at the first.
func asNet(n network.Nested) (*network.Net, map[string][]float64) {
	net, evidence := network.NewNet(), map[string][]float64{}
	add := func(name string, levels int, parents []string, table []float64) {
		if err := net.Add(name, levels, parents, table); err != nil {
			panic(err)
		}
	}
	add("root", len(n.Root), nil, proportions(n.Root))
	for g, group := range n.Groups {
		add(groupName(g), len(group.Weights), nil, proportions(group.Weights))
		for k, pocket := range group.Pockets {
			add(pocketName(g, k), len(pocket.Weights), nil, proportions(pocket.Weights))
			for i, leaf := range pocket.Leaves {
				var table []float64
				for _, byGroup := range leaf.(tableLeaf) {
					for _, byPocket := range byGroup {
						for _, v := range byPocket {
							table = append(table, v, 1-v)
						}
					}
				}
				name := fmt.Sprint(pocketName(g, k), "leaf", i)
				add(name, 2, []string{"root", groupName(g), pocketName(g, k)}, table)
				evidence[name] = []float64{1, 0}
			}
		}
	}
	return net, evidence
}

// levelsTable collects the weights that Levels visits into a full table.
func levelsTable(n network.Nested, post *network.NestedPosterior, g, k int) []float64 {
	ps, qs := len(n.Groups[g].Weights), len(n.Groups[g].Pockets[k].Weights)
	out := make([]float64, len(n.Root)*ps*qs)
	post.Levels(g, k, func(r, p, q int, weight float64) { out[(r*ps+p)*qs+q] += weight })
	return out
}
