package network

import "slices"

// components lists the nodes of every group and the signed coefficients of their
// components.
func (post *MaxPosterior) components() {
	w := &post.seen
	post.groups = make([]maxGroup, len(post.NestedPosterior.groups))
	for s, within := range w.Within {
		if within < 0 {
			post.crossGroup = append(post.crossGroup, s)
		}
	}
	post.coef = post.coefficients(post.crossGroup, len(post.crossGroup))
	for g := range post.groups {
		group := &post.groups[g]
		group.nodes = slices.Clone(post.crossGroup)
		for s, within := range w.Within {
			if within == g {
				group.nodes = append(group.nodes, s)
			}
		}
		own := len(group.nodes) - len(post.crossGroup)
		group.coef = post.coefficients(group.nodes, own)
		for c := range group.coef {
			group.crossGroup = append(group.crossGroup, c/power(w.Levels, own))
		}
	}
	// Whatever the likelihoods, skipping these states changes no chance by 1e-13.
	states, spread, levels := 1, 1.0, 1
	for g := range post.NestedPosterior.groups {
		levels = max(levels, len(post.NestedPosterior.groups[g].prior))
		states += len(post.NestedPosterior.root) * (1 + len(post.NestedPosterior.groups[g].prior))
	}
	for _, likely := range w.Likely {
		spread *= slices.Min(likely) / slices.Max(likely)
	}
	post.least = 1e-13 * spread / float64(states)
	post.leastGiven = 1e-13 * spread / float64(levels*len(post.groups))
}

// coefficients returns the coefficients of the last count nodes, by component of all
// the nodes.
func (post *MaxPosterior) coefficients(nodes []int, count int) []float64 {
	out := make([]float64, power(post.seen.Levels, len(nodes)))
	for c := range out {
		out[c] = 1
		for i := len(nodes) - count; i < len(nodes); i++ {
			likely, k := post.seen.Likely[nodes[i]], post.levelOf(nodes, i, c)
			v := likely[k]
			if k+1 < len(likely) {
				v -= likely[k+1]
			}
			out[c] *= v
		}
	}
	return out
}

// levelOf is the level of nodes[i] in a component of all the nodes.
func (post *MaxPosterior) levelOf(nodes []int, i, component int) int {
	return component / power(post.seen.Levels, len(nodes)-1-i) % post.seen.Levels
}

func power(base, exponent int) int {
	n := 1
	for range exponent {
		n *= base
	}
	return n
}

// combination maps every component of the nodes in all to the combination of limits on
// the nodes in some.
func (post *MaxPosterior) combination(all, some []int) []int {
	out := make([]int, power(post.seen.Levels, len(all)))
	for c := range out {
		for _, s := range some {
			out[c] = out[c]*post.seen.Levels + post.levelOf(all, slices.Index(all, s), c)
		}
	}
	return out
}

// layOut assigns the members to their pockets and numbers the rows to cache.
func (post *MaxPosterior) layOut() {
	for g := range post.groups {
		post.groups[g].pockets = make([]maxPocket, len(post.NestedPosterior.groups[g].pockets))
	}
	for m, one := range post.seen.Members {
		pocket := &post.groups[one.Group].pockets[one.Pocket]
		pocket.members = append(pocket.members, m)
	}
	widest := 0
	for g := range post.groups {
		rows := 0
		var caches []*rowCache
		for k := range post.groups[g].pockets {
			pocket := &post.groups[g].pockets[k]
			post.index(&post.groups[g], pocket)
			if len(pocket.members) == 0 {
				continue
			}
			width := pocket.size * len(post.NestedPosterior.groups[g].pockets[k].prior)
			widest = max(widest, width)
			pocket.firstAt = rows
			rows += len(post.NestedPosterior.root) * len(post.NestedPosterior.groups[g].prior)
			caches, pocket.kept = cacheOf(caches, width)
		}
	}
	post.scratch = newMaxScratch(post, widest)
}

// index numbers the local components of a pocket.
func (post *MaxPosterior) index(group *maxGroup, pocket *maxPocket) {
	var nodes []int
	for _, m := range pocket.members {
		nodes = append(nodes, post.seen.Members[m].Nodes...)
	}
	slices.Sort(nodes)
	nodes = slices.Compact(nodes)
	pocket.local, pocket.size = post.combination(group.nodes, nodes), power(post.seen.Levels, len(nodes))
	for _, m := range pocket.members {
		own, at := make([]int, pocket.size), post.combination(group.nodes, post.seen.Members[m].Nodes)
		for c, l := range pocket.local {
			own[l] = at[c]
		}
		pocket.own = append(pocket.own, own)
	}
}
