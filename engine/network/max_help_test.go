package network_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"underpaint/engine/network"
)

// jointMember is a member given as a table: the chance of each combination of levels of
// its nodes, [root][group level][pocket level][combination].
type jointMember struct {
	chance [][][][]float64
	levels int
	dims   int
}

var _ network.CDFLeaf = jointMember{}

// AtMost adds up the combinations that exceed no limit.
func (m jointMember) AtMost(r, p int, dst []float64) {
	size := len(m.chance[r][p][0])
	for q := range m.chance[r][p] {
		for limit := range size {
			sum := 0.0
			for c, v := range m.chance[r][p][q] {
				if m.exceeds(c, limit) == 0 {
					sum += v
				}
			}
			dst[q*size+limit] = sum
		}
	}
}

// exceeds counts the nodes in which combination c is above the limit.
func (m jointMember) exceeds(c, limit int) (n int) {
	for range m.dims {
		if c%m.levels > limit%m.levels {
			n++
		}
		c, limit = c/m.levels, limit/m.levels
	}
	return n
}

// randomMax adds one or two cross-group nodes, sometimes one within the first group, and
// up to four members to a nested network that has a pocket.
func randomMax(r *rand.Rand, n network.Nested) network.MaxEvidence {
	w := network.MaxEvidence{Levels: 2 + r.IntN(2)}
	for range 1 + r.IntN(2) {
		w.Within = append(w.Within, -1)
	}
	if r.IntN(2) == 0 {
		w.Within = append(w.Within, 0)
	}
	for range w.Within {
		var likely []float64
		for range w.Levels {
			likely = append(likely, .02+.98*r.Float64())
		}
		w.Likely = append(w.Likely, likely)
	}
	for range 1 + r.IntN(4) {
		g := r.IntN(len(n.Groups))
		if len(n.Groups[g].Pockets) == 0 {
			continue
		}
		one := network.Member{Group: g, Pocket: r.IntN(len(n.Groups[g].Pockets))}
		for s, within := range w.Within {
			if (within < 0 || within == g) && r.IntN(3) > 0 {
				one.Nodes = append(one.Nodes, s)
			}
		}
		if len(one.Nodes) == 0 {
			one.Nodes = []int{0}
		}
		one.Leaf = randomMember(r, n, one, w.Levels)
		w.Members = append(w.Members, one)
	}
	return w
}

func randomMember(r *rand.Rand, n network.Nested, one network.Member, levels int) jointMember {
	m := jointMember{levels: levels, dims: len(one.Nodes)}
	size := int(math.Pow(float64(levels), float64(m.dims)))
	for range n.Root {
		var byGroup [][][]float64
		for range n.Groups[one.Group].Weights {
			var byPocket [][]float64
			for range n.Groups[one.Group].Pockets[one.Pocket].Weights {
				byPocket = append(byPocket, chances(r, size))
			}
			byGroup = append(byGroup, byPocket)
		}
		m.chance = append(m.chance, byGroup)
	}
	return m
}

// maxStates is the unnormalised result of enumeration.
type maxStates struct {
	evidence float64
	root     []float64
	pocket   map[[2]int][]float64 // by group and pocket: root, group level, pocket level
	member   [][]float64          // root, group level, pocket level, combination
	all      map[string]float64   // every joint state
}

func enumerateMax(n network.Nested, w network.MaxEvidence) maxStates {
	out := maxStates{root: make([]float64, len(n.Root)), pocket: map[[2]int][]float64{}, all: map[string]float64{}}
	type node struct{ g, k, m int } // k = −1: a group; m ≥ 0: a member
	var nodes []node
	for g, group := range n.Groups {
		nodes = append(nodes, node{g, -1, -1})
		for k, pocket := range group.Pockets {
			nodes = append(nodes, node{g, k, -1})
			out.pocket[[2]int{g, k}] = make([]float64, len(n.Root)*len(group.Weights)*len(pocket.Weights))
		}
	}
	for m, one := range w.Members {
		nodes = append(nodes, node{one.Group, one.Pocket, m})
		leaf := one.Leaf.(jointMember)
		size := len(leaf.chance[0][0][0])
		out.member = append(out.member, make([]float64, len(n.Root)*len(n.Groups[one.Group].Weights)*len(n.Groups[one.Group].Pockets[one.Pocket].Weights)*size))
	}
	state := map[node]int{}
	cell := func(root, g, k int) int {
		return (root*len(n.Groups[g].Weights)+state[node{g, -1, -1}])*len(n.Groups[g].Pockets[k].Weights) + state[node{g, k, -1}]
	}
	finish := func(root int, v float64) {
		worst := make([]int, len(w.Likely))
		for m, one := range w.Members {
			c := state[node{one.Group, one.Pocket, m}]
			for i := len(one.Nodes) - 1; i >= 0; i-- {
				worst[one.Nodes[i]] = max(worst[one.Nodes[i]], c%w.Levels)
				c /= w.Levels
			}
		}
		for s, level := range worst {
			v *= w.Likely[s][level]
		}
		out.evidence += v
		out.root[root] += v
		for place, to := range out.pocket {
			to[cell(root, place[0], place[1])] += v
		}
		name := fmt.Sprint(root)
		for _, at := range nodes {
			name += fmt.Sprint(" ", state[at])
		}
		out.all[name] += v
		for m, one := range w.Members {
			leaf := one.Leaf.(jointMember)
			out.member[m][cell(root, one.Group, one.Pocket)*len(leaf.chance[0][0][0])+state[node{one.Group, one.Pocket, m}]] += v
		}
	}
	var visit func(root, at int, v float64)
	visit = func(root, at int, v float64) {
		if v == 0 {
			return
		}
		if at == len(nodes) {
			finish(root, v)
			return
		}
		here := nodes[at]
		p := state[node{here.g, -1, -1}]
		switch {
		case here.m >= 0:
			for c, chance := range w.Members[here.m].Leaf.(jointMember).chance[root][p][state[node{here.g, here.k, -1}]] {
				state[here] = c
				visit(root, at+1, v*chance)
			}
		case here.k < 0:
			for level, share := range proportions(n.Groups[here.g].Weights) {
				state[here] = level
				visit(root, at+1, v*share)
			}
		default:
			pocket := n.Groups[here.g].Pockets[here.k]
			for level, share := range proportions(pocket.Weights) {
				state[here] = level
				for _, leaf := range pocket.Leaves {
					share *= leaf.(tableLeaf)[root][p][level]
				}
				visit(root, at+1, v*share)
			}
		}
	}
	for root, v := range n.Root {
		visit(root, 0, v)
	}
	return out
}
