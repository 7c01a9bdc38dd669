package network

import "underpaint/engine/chance"

// NestedDraw is one state of every shared node. The zero value is ready for
// [NestedPosterior.Sample], which allocates its slices once and then reuses them.
type NestedDraw struct {
	Root int     // state of the root
	P    []int   // level of each group
	Q    [][]int // level of each pocket of each group
}

// Sample draws one joint state from the posterior exactly, by inverse distribution
// functions. It takes one uniform for the root, then for each group one for its level
// and one for each node of its pockets in order (two for a pocket of two nodes),
// whether or not there is evidence. So equal streams give states that differ only where
// the posteriors do. Once the rows it needs are cached it allocates nothing.
func (post *NestedPosterior) Sample(s *chance.Stream, d *NestedDraw) {
	post.SampleGiven(find(post.rootCum, s.Uniform()), s, d)
}

// SampleGiven is Sample with the root state given. It takes one uniform fewer.
func (post *NestedPosterior) SampleGiven(root int, s *chance.Stream, d *NestedDraw) {
	if !post.fits(d) {
		post.shape(d)
	}
	d.Root = root
	for g := range post.groups {
		group := &post.groups[g]
		p := 0
		if group.given == nil {
			p = group.cum.pick(s.Uniform())
		} else {
			p = pick(group.levels(d.Root), s.Uniform())
		}
		d.P[g] = p
		row := d.Root*len(group.prior) + p
		for k := range group.pockets {
			pocket := &group.pockets[k]
			if pocket.cum != nil {
				d.Q[g][k] = pocket.cum.pick(s.Uniform())
				continue
			}
			d.Q[g][k] = pocket.pick(post.pocketRow(pocket, d.Root, p, row), 1, s)
		}
	}
}

// pick draws a level of the pocket from weights that add to sum. It draws a pocket of
// two nodes one node after the other.
func (pocket *pocketPosterior) pick(weights []float64, sum float64, s *chance.Stream) int {
	u := s.Uniform() * sum
	if pocket.inner == 0 {
		return pick(weights, u)
	}
	at, last, passed := 0, 0, 0.0
	block := 0.0
	for at = 0; at < len(weights); at += pocket.inner {
		share := 0.0
		for _, w := range weights[at : at+pocket.inner] {
			share += w
		}
		if share == 0 {
			continue
		}
		last, block = at, share
		if passed += share; u < passed {
			break
		}
	}
	return last + pick(weights[last:last+pocket.inner], s.Uniform()*block)
}

// levels is the posterior of the group's levels given root state r.
func (group *groupPosterior) levels(r int) []float64 {
	if group.given == nil {
		return group.prior
	}
	n := len(group.prior)
	return group.given[r*n : (r+1)*n]
}

// pocketRow is the posterior of the pocket's levels given root state r and group level
// p, which are pair number at. It is valid until the next call.
func (post *NestedPosterior) pocketRow(pocket *pocketPosterior, r, p, at int) []float64 {
	if len(pocket.leaves) == 0 {
		return pocket.prior
	}
	row, known := pocket.rows.at(pocket.firstAt + at)
	if !known {
		pocket.row(r, p, row, &post.scratch)
	}
	return row
}

func (post *NestedPosterior) fits(d *NestedDraw) bool {
	if len(d.P) != len(post.groups) || len(d.Q) != len(post.groups) {
		return false
	}
	for g := range d.Q {
		if len(d.Q[g]) != len(post.groups[g].pockets) {
			return false
		}
	}
	return true
}

func (post *NestedPosterior) shape(d *NestedDraw) {
	d.P, d.Q = make([]int, len(post.groups)), make([][]int, len(post.groups))
	for g := range d.Q {
		d.Q[g] = make([]int, len(post.groups[g].pockets))
	}
}
