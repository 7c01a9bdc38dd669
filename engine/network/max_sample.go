package network

import "underpaint/engine/chance"

// Sample draws one joint state of the shared nodes exactly. It takes the same uniforms
// in the same order as [NestedPosterior.Sample]. The caller then draws the leaves below
// them with the help of a [Remainder].
func (post *MaxPosterior) Sample(s *chance.Stream, d *NestedDraw) {
	post.SampleGiven(find(post.rootCum, s.Uniform()), s, d)
}

// SampleGiven is Sample with the root state given. It takes one uniform fewer.
func (post *MaxPosterior) SampleGiven(root int, s *chance.Stream, d *NestedDraw) {
	if !post.fits(d) {
		post.shape(d)
	}
	d.Root = root
	left := post.scratch.left // coefficients × the messages of the groups already drawn
	copy(left, post.coef)
	for g := range post.groups {
		post.sampleGroup(s, d, g, left)
	}
}

func (post *MaxPosterior) sampleGroup(s *chance.Stream, d *NestedDraw, g int, left []float64) {
	group, base := &post.groups[g], &post.NestedPosterior.groups[g]
	if group.byRoot == nil {
		d.P[g] = pick(base.levels(d.Root), s.Uniform())
		for k := range base.pockets {
			row := post.pocketRow(&base.pockets[k], d.Root, d.P[g], d.Root*len(base.prior)+d.P[g])
			d.Q[g][k] = base.pockets[k].pick(row, 1, s)
		}
		return
	}
	rest, in, said := post.scratch.at, post.scratch.in[:len(group.coef)], post.scratch.said[:len(group.coef)]
	copy(rest, left)
	for h := g + 1; h < len(post.groups); h++ {
		post.timesGroup(h, d.Root, rest)
	}
	group.spreadOut(rest, in) // messages of the groups already drawn and of those to come
	d.P[g] = post.pickLevel(g, d.Root, in, s.Uniform())
	copy(said, group.coef)
	for k := range base.pockets {
		post.samplePocket(s, d, g, k, in, said)
	}
	clear(rest)
	for c, v := range said {
		rest[group.crossGroup[c]] += v
	}
	for c := range left {
		left[c] *= rest[c]
	}
}

// pickLevel picks a level of a group with members.
func (post *MaxPosterior) pickLevel(g, r int, in []float64, u float64) int {
	given := post.NestedPosterior.groups[g].levels(r)
	at, row, sum := post.scratch.local[:len(in)], post.scratch.row[:len(given)], 0.0
	for p, v := range given {
		if row[p] = 0; !post.countsGiven(v) {
			continue
		}
		copy(at, in)
		post.timesPockets(g, -1, r, p, at)
		row[p] = float64(v * expectation(at))
		sum += row[p]
	}
	return pick(row, u*sum)
}

// samplePocket draws the level of a pocket, in a group with members, and multiplies the
// message of the pocket's members at that level into in and said.
func (post *MaxPosterior) samplePocket(s *chance.Stream, d *NestedDraw, g, k int, in, said []float64) {
	r, p, levels := d.Root, d.P[g], len(post.NestedPosterior.groups[g].prior)
	pocket, base := &post.groups[g].pockets[k], &post.NestedPosterior.groups[g].pockets[k]
	given := post.pocketRow(base, r, p, r*levels+p)
	if len(pocket.members) == 0 {
		d.Q[g][k] = base.pick(given, 1, s)
		return
	}
	within, known := pocket.kept.at(pocket.firstAt + r*levels + p)
	if !known {
		post.within(pocket, r, p, within)
	}
	local := post.scratch.local[:pocket.size]
	clear(local)
	for c, v := range in {
		local[pocket.local[c]] += float64(v * post.laterPockets(g, k, r, p, c))
	}
	row, sum := post.scratch.row[:len(base.prior)], 0.0
	for q, w := range given {
		total := 0.0
		for c, v := range within[q*pocket.size : (q+1)*pocket.size] {
			total += float64(v * local[c])
		}
		row[q] = max(0, float64(w*total))
		sum += row[q]
	}
	q := base.pick(row, sum, s)
	d.Q[g][k] = q
	for c, l := range pocket.local {
		v := within[q*pocket.size+l]
		in[c] *= v
		said[c] *= v
	}
}

// laterPockets is the message, for one component, of a group's pockets after the k-th.
func (post *MaxPosterior) laterPockets(g, k, r, p, c int) float64 {
	v := 1.0
	for j := k + 1; j < len(post.groups[g].pockets); j++ {
		if pocket := &post.groups[g].pockets[j]; len(pocket.members) > 0 {
			v *= pocket.ratio[(r*len(post.NestedPosterior.groups[g].prior)+p)*pocket.size+pocket.local[c]]
		}
	}
	return v
}

// Remainder helps to draw the leaves that count in max nodes, unit by unit, once the
// shared nodes are drawn. Call Start with the chance of each unit to stay within
// limits; then, for each unit in order, Allow gives the weights of its levels and Drawn
// records the level drawn.
type Remainder struct {
	levels int
	coef   []float64
	at     [][]int   // [unit][component] combination of limits on the nodes of the unit
	dims   []int     // by unit
	left   []float64 // coefficients, 0 for components that a drawn unit exceeds
	after  []float64 // [unit·components + c] message of the units from this one on
}

// Remainder returns a Remainder for units that count in the given nodes. None of the
// nodes may be within a group: the units themselves must account for the evidence on
// those. A unit may count in no node.
func (post *MaxPosterior) Remainder(units [][]int) *Remainder {
	rest := &Remainder{levels: post.seen.Levels, coef: post.coef, left: make([]float64, len(post.coef)),
		after: make([]float64, (len(units)+1)*len(post.coef))}
	for _, nodes := range units {
		rest.at, rest.dims = append(rest.at, post.combination(post.crossGroup, nodes)), append(rest.dims, len(nodes))
	}
	return rest
}

// Start begins a draw. within holds, for each unit, the chance of staying within each
// combination of limits on its nodes, given the shared nodes.
func (rest *Remainder) Start(within [][]float64) {
	n := len(rest.coef)
	copy(rest.left, rest.coef)
	for c := range n {
		rest.after[len(rest.at)*n+c] = 1
	}
	for u := len(rest.at) - 1; u >= 0; u-- {
		for c, j := range rest.at[u] {
			rest.after[u*n+c] = float64(rest.after[(u+1)*n+c] * within[u][j])
		}
	}
}

// Allow writes, for each combination of levels of unit u, the factor by which the max
// nodes change its probability given the evidence on the unit alone. Only ratios
// matter.
func (rest *Remainder) Allow(u int, dst []float64) {
	n := len(rest.coef)
	clear(dst)
	for c, j := range rest.at[u] {
		dst[j] += float64(rest.left[c] * rest.after[(u+1)*n+c])
	}
	tails(dst, rest.levels, rest.dims[u], 1)
}

// Drawn records the combination of levels drawn for unit u.
func (rest *Remainder) Drawn(u, combination int) {
	for c, limits := range rest.at[u] {
		for drawn := combination; drawn > 0; drawn /= rest.levels {
			if limits%rest.levels < drawn%rest.levels {
				rest.left[c] = 0
			}
			limits /= rest.levels
		}
	}
}
