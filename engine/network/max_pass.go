package network

import "math"

// The upward pass with max nodes: the messages of the members of a pocket, of a group
// and of the whole network, by component. Each is a probability in the posterior
// without the max nodes.

// maxScratch is working space for one pass or draw.
type maxScratch struct {
	pocket   scratch
	row      []float64 // by level of a pocket or group
	within   []float64 // [q·size + local component]
	own      []float64 // chances of one member
	left, at []float64 // by component of the cross-group nodes
	in, said []float64 // by component of a group
	local    []float64
}

func newMaxScratch(post *MaxPosterior, widest int) maxScratch {
	n, most, levels := len(post.coef), 1, 1
	for g, group := range post.NestedPosterior.groups {
		most, levels = max(most, len(post.groups[g].coef)), max(levels, len(group.prior))
		for _, pocket := range group.pockets {
			levels = max(levels, len(pocket.prior))
		}
	}
	return maxScratch{pocket: newScratch(levels), row: make([]float64, levels), within: make([]float64, widest), own: make([]float64, widest),
		left: make([]float64, n), at: make([]float64, n), in: make([]float64, most), said: make([]float64, most), local: make([]float64, most)}
}

// counts reports whether a state of the root, or of root and group, has enough weight
// to be visited.
func (post *MaxPosterior) counts(weight float64) bool { return weight >= post.least }

// countsGiven reports whether a group's level with this chance given the root is
// visited. The chance of the root state does not enter, because it changes with evidence
// elsewhere and the group's message must not.
func (post *MaxPosterior) countsGiven(given float64) bool { return given >= post.leastGiven }

// upward works out the ratios of a group's pockets and of the group itself, for every
// root state that counts and is not done yet.
func (post *MaxPosterior) upward(g int) {
	group, base := &post.groups[g], &post.NestedPosterior.groups[g]
	n := len(post.coef)
	if group.byRoot == nil && !post.makeRoom(g) {
		return
	}
	post.sums(g)
	for r, atRoot := range post.NestedPosterior.root {
		if group.done[r] || !post.counts(atRoot) {
			continue
		}
		group.done[r] = true
		to := group.byRoot[r*n : (r+1)*n]
		for p, given := range base.levels(r) {
			if !post.countsGiven(given) {
				continue
			}
			for k := range group.pockets {
				post.fill(g, k, r, p)
			}
			in := post.scratch.in[:len(group.coef)]
			for c, v := range group.coef {
				in[c] = float64(given * v)
			}
			post.timesPockets(g, -1, r, p, in)
			for c, v := range in {
				to[group.crossGroup[c]] += v
			}
		}
	}
}

// sums fills in the ratios of those pockets of a group that know their sums, for the
// root states that count and are not done yet.
func (post *MaxPosterior) sums(g int) {
	group, levels := &post.groups[g], len(post.NestedPosterior.groups[g].prior)
	for k := range group.pockets {
		pocket := &group.pockets[k]
		if len(pocket.members) != 1 {
			continue
		}
		sums := post.seen.Members[pocket.members[0]].Sums
		wanted := func(r int) bool {
			return !group.done[r] && !pocket.done[r*levels] && post.counts(post.NestedPosterior.root[r])
		}
		if sums == nil || !sums.Ratios(levels, wanted, pocket.ratio) {
			continue
		}
		for r := range group.done {
			if wanted(r) {
				for p := range levels {
					pocket.done[r*levels+p] = true
				}
			}
		}
	}
}

// makeRoom allocates the tables of a group, unless no max node reaches it. It reports
// whether one does.
func (post *MaxPosterior) makeRoom(g int) bool {
	group, roots, levels := &post.groups[g], len(post.NestedPosterior.root), len(post.NestedPosterior.groups[g].prior)
	counts := len(group.nodes) > len(post.crossGroup)
	for k := range group.pockets {
		pocket := &group.pockets[k]
		if len(pocket.members) > 0 {
			counts = true
			if pocket.ratio == nil {
				pocket.ratio, pocket.done = make([]float64, roots*levels*pocket.size), make([]bool, roots*levels)
			}
		}
	}
	if counts {
		group.byRoot, group.done = make([]float64, roots*len(post.coef)), make([]bool, roots)
	}
	return counts
}

// fill works out the chance that all members of a pocket stay within each local
// component, at one root state and group level, unless it is already done.
func (post *MaxPosterior) fill(g, k, r, p int) {
	pocket, n := &post.groups[g].pockets[k], r*len(post.NestedPosterior.groups[g].prior)+p
	if len(pocket.members) == 0 || pocket.done[n] {
		return
	}
	pocket.done[n] = true
	row := post.rowOf(g, k, r, p)
	within := post.scratch.within[:len(row)*pocket.size]
	post.within(pocket, r, p, within)
	to := pocket.ratio[n*pocket.size : (n+1)*pocket.size]
	clear(to)
	for q, w := range row {
		for c, v := range within[q*pocket.size : (q+1)*pocket.size] {
			to[c] += float64(w * v)
		}
	}
}

// rowOf is the posterior of a pocket's levels without the max nodes. It is valid until
// the next call.
func (post *MaxPosterior) rowOf(g, k, r, p int) []float64 {
	pocket := &post.NestedPosterior.groups[g].pockets[k]
	row := post.scratch.row[:len(pocket.prior)]
	if len(pocket.leaves) == 0 {
		copy(row, pocket.prior)
	} else {
		pocket.row(r, p, row, &post.scratch.pocket)
	}
	return row
}

// within writes the chance that all members of the pocket stay within each local
// component, for each level of the pocket.
func (post *MaxPosterior) within(pocket *maxPocket, r, p int, dst []float64) {
	for n, m := range pocket.members {
		own := pocket.own[n]
		size := power(post.seen.Levels, len(post.seen.Members[m].Nodes))
		buffer := post.scratch.own[:len(dst)/pocket.size*size]
		post.seen.Members[m].Leaf.AtMost(r, p, buffer)
		for q := 0; q*pocket.size < len(dst); q++ {
			from, to := buffer[q*size:(q+1)*size], dst[q*pocket.size:(q+1)*pocket.size]
			for c, j := range own {
				if n == 0 {
					to[c] = from[j]
				} else {
					to[c] *= from[j]
				}
			}
		}
	}
}

// timesPockets multiplies into dst the ratios of all a group's pockets except the one
// numbered but (-1 for none).
func (post *MaxPosterior) timesPockets(g, but, r, p int, dst []float64) {
	for k := range post.groups[g].pockets {
		if k != but {
			post.timesPocket(g, k, r, p, dst)
		}
	}
}

func (post *MaxPosterior) timesPocket(g, k, r, p int, dst []float64) {
	pocket := &post.groups[g].pockets[k]
	if len(pocket.members) == 0 {
		return
	}
	at := (r*len(post.NestedPosterior.groups[g].prior) + p) * pocket.size
	ratio := pocket.ratio[at : at+pocket.size]
	for c, l := range pocket.local {
		dst[c] *= ratio[l]
	}
}

// timesGroup multiplies the group's message at a root state into dst.
func (post *MaxPosterior) timesGroup(g, r int, dst []float64) {
	if by := post.groups[g].byRoot; by != nil {
		n := len(dst)
		for c, v := range by[r*n : (r+1)*n] {
			dst[c] *= v
		}
	}
}

// spreadOut expands components of the cross-group nodes to components of the group,
// multiplied by the coefficients of the nodes within the group.
func (group *maxGroup) spreadOut(from, dst []float64) {
	for c, v := range group.coef {
		dst[c] = float64(from[group.crossGroup[c]] * v)
	}
}

// weighRoot computes the posterior of the root states.
func (post *MaxPosterior) weighRoot() {
	post.root = make([]float64, len(post.NestedPosterior.root))
	for r, atRoot := range post.NestedPosterior.root {
		if !post.counts(atRoot) {
			continue
		}
		at := post.scratch.at
		copy(at, post.coef)
		for g := range post.groups {
			post.timesGroup(g, r, at)
		}
		post.root[r] = float64(atRoot * expectation(at))
		post.expected += post.root[r]
	}
	for r := range post.root {
		post.root[r] /= post.expected
	}
	post.rootCum = cumulative(post.root)
}

// expectation is the sum of signed components, an expected likelihood. Rounding must
// not make it negative.
func expectation(components []float64) (sum float64) {
	for _, v := range components {
		sum += v
	}
	return math.Max(0, sum)
}
