package network

// Enumerate conditions a small network in the slow, obvious way: it multiplies chances
// and likelihoods for every joint state in plain float64. It returns the probability
// of the evidence and the unnormalised joint table of all variables, row-major in the
// order they were added. It shares no code with elimination.
func Enumerate(n *Net, likelihood map[string][]float64) (evidence float64, joint []float64) {
	state := make([]int, len(n.variables))
	var visit func(v int, weight float64)
	visit = func(v int, weight float64) {
		if v == len(n.variables) {
			evidence += weight
			joint = append(joint, weight)
			return
		}
		one := n.variables[v]
		row := 0
		for _, parent := range one.parents {
			row = row*n.variables[parent].levels + state[parent]
		}
		for level := 0; level < one.levels; level++ {
			state[v] = level
			w := weight * one.table[row*one.levels+level]
			if l, seen := likelihood[one.name]; seen {
				w *= l[level]
			}
			visit(v+1, w)
		}
	}
	visit(0, 1)
	return evidence, joint
}

// Slots is the number of pocket rows the posterior currently has room for.
func (post *NestedPosterior) Slots() (slots int) {
	seen := map[*rowCache]bool{}
	for g := range post.groups {
		for k := range post.groups[g].pockets {
			if c := post.groups[g].pockets[k].rows; c != nil && !seen[c] {
				seen[c] = true
				slots += len(c.key)
			}
		}
	}
	return slots
}
