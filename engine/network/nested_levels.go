package network

// leastWeight is the smallest posterior weight that Levels visits. The weights it skips
// add to less than 1e-16 times the number of joint states.
const leastWeight = 1e-16

// Levels visits the posterior joint weight of root state r, level p of group g and
// level q of the k-th pocket of that group, nested in that order. It skips weights
// below 1e-16. visit may use the posterior.
func (post *NestedPosterior) Levels(g, k int, visit func(r, p, q int, weight float64)) {
	group := &post.groups[g]
	pocket := &group.pockets[k]
	own, row := newScratch(len(pocket.prior)), pocket.prior
	if len(pocket.leaves) > 0 {
		row = make([]float64, len(pocket.prior))
	}
	for r, atRoot := range post.root {
		if atRoot < leastWeight {
			continue
		}
		for p, given := range group.levels(r) {
			above := atRoot * given
			if above < leastWeight {
				continue
			}
			if len(pocket.leaves) > 0 {
				pocket.row(r, p, row, &own)
			}
			for q, w := range row {
				if weight := above * w; weight >= leastWeight {
					visit(r, p, q, weight)
				}
			}
		}
	}
}
