package network

import (
	"math"

	"underpaint/engine/chance"
)

// Levels visits the posterior joint weight of root state r, level p of group g
// and level q of the k-th pocket of that group, as [NestedPosterior.Levels] does.
// With member −1 weights holds one value, the weight. With a member of that
// pocket it holds one value by level of the member: times the chance of that
// level given what was seen of the member alone, it is the joint weight.
func (post *WorstPosterior) Levels(g, k, member int, visit func(r, p, q int, weights []float64)) {
	pocket := &post.pockets[g][k]
	own, row := newScratch(len(post.groups[g].pockets[k].prior)), make([]float64, len(post.groups[g].pockets[k].prior))
	local, product := make([]float64, max(1, pocket.size)), make([]float64, max(1, pocket.size))
	weights := make([]float64, 1)
	var caps []int
	for n, m := range pocket.members {
		if m == member {
			caps, weights = pocket.capOf[n], make([]float64, post.worst.Levels)
		}
	}
	rest := make([]float64, len(post.coef))
	for r, atRoot := range post.NestedPosterior.root {
		if atRoot < leastShare {
			continue
		}
		for p, given := range post.groups[g].levels(r) {
			above := atRoot * given / post.expected
			if above < leastShare {
				continue
			}
			copy(rest, post.coef)
			post.timesRoots(g, r, rest)
			post.times(g, k, r, p, rest)
			clear(local)
			for c, v := range rest {
				if len(pocket.members) > 0 {
					local[pocket.local[c]] += v
				} else {
					local[0] += v
				}
			}
			post.rowOf(g, k, r, p, row, &own)
			for q, w := range row {
				if above*w < leastShare {
					continue
				}
				post.product(pocket, r, p, q, member, product)
				spreadOver(local, product, caps, above*w, weights)
				visit(r, p, q, weights)
			}
		}
	}
}

// spreadOver adds up the components into one weight, or into one for each level
// that a member may have: those whose cap does not lie below it.
func spreadOver(local, product []float64, caps []int, weight float64, out []float64) {
	clear(out)
	if caps == nil {
		for c, v := range local {
			out[0] += float64(v * product[c])
		}
		out[0] = math.Max(0, float64(out[0]*weight))
		return
	}
	for c, v := range local {
		out[caps[c]] += float64(v * product[c])
	}
	for k := len(out) - 2; k >= 0; k-- {
		out[k] += out[k+1]
	}
	for k := range out {
		out[k] = math.Max(0, float64(out[k]*weight))
	}
}

// WorstDraw is one joint state drawn with Worst nodes. After Sample its members
// have still to be drawn, by [WorstPosterior.Allow] and [WorstPosterior.Drawn].
type WorstDraw struct {
	NestedDraw
	left []float64 // by component: coefficient, with every drawn member taken in
	suf  []float64 // [member·components + c] product over the members not yet drawn
	hold []float64
	row  []float64
}

// Sample draws one joint state of the shared nodes, exactly, taking the same
// uniforms in the same order as [NestedPosterior.Sample].
func (post *WorstPosterior) Sample(s *chance.Stream, d *WorstDraw) {
	if !post.fits(&d.NestedDraw) {
		post.shape(&d.NestedDraw)
	}
	n := len(post.coef)
	if len(d.left) != n {
		d.left, d.hold = make([]float64, n), make([]float64, n)
	}
	d.Root = find(post.rootCum, s.Uniform())
	copy(d.left, post.coef)
	for g := range post.groups {
		post.sampleGroup(s, d, g)
	}
	post.prepareMembers(d)
}

// sampleGroup draws the level of a group and of its pockets. d.left holds the
// product over the groups drawn so far.
func (post *WorstPosterior) sampleGroup(s *chance.Stream, d *WorstDraw, g int) {
	r := d.Root
	u := s.Uniform()
	copy(post.suf, d.left)
	for h := g + 1; h < len(post.groups); h++ {
		if post.byRoot[h] != nil {
			n := len(post.coef)
			for c, v := range post.byRoot[h][r*n : (r+1)*n] {
				post.suf[c] *= v
			}
		}
	}
	given := post.groups[g].levels(r)
	p := pick(given, u)
	if post.byRoot[g] != nil {
		d.row = sized(d.row, len(given))
		for l := range d.row {
			copy(post.at, post.suf)
			post.times(g, -1, r, l, post.at)
			d.row[l] = math.Max(0, float64(given[l]*sum(post.at)))
		}
		p = pick(d.row, u*sum(d.row))
	}
	d.P[g] = p
	for k := range post.groups[g].pockets {
		post.samplePocket(s, d, g, k)
	}
}

func (post *WorstPosterior) samplePocket(s *chance.Stream, d *WorstDraw, g, k int) {
	r, p, u := d.Root, d.P[g], s.Uniform()
	base := &post.groups[g].pockets[k]
	row := post.pocketRow(base, r, p, r*len(post.groups[g].prior)+p)
	pocket := &post.pockets[g][k]
	if len(pocket.members) == 0 {
		d.Q[g][k] = pick(row, u)
		return
	}
	copy(post.at, post.suf) // groups drawn and to come, pockets of this group drawn
	for j := k + 1; j < len(post.pockets[g]); j++ {
		other := &post.pockets[g][j]
		if len(other.members) == 0 {
			continue
		}
		ratio := other.ratio[(r*len(post.groups[g].prior)+p)*other.size:][:other.size]
		for c := range post.at {
			post.at[c] *= ratio[other.local[c]]
		}
	}
	local := make([]float64, pocket.size)
	for c, v := range post.at {
		local[pocket.local[c]] += v
	}
	d.row = sized(d.row, len(row))
	all := make([]float64, len(row)*pocket.size)
	for q, w := range row {
		product := all[q*pocket.size:][:pocket.size]
		if d.row[q] = 0; w < leastShare {
			continue
		}
		post.product(pocket, r, p, q, -1, product)
		total := 0.0
		for c, v := range local {
			total += float64(v * product[c])
		}
		d.row[q] = math.Max(0, float64(w*total))
	}
	q := pick(d.row, u*sum(d.row))
	d.Q[g][k] = q
	product := all[q*pocket.size:][:pocket.size]
	for c := range post.suf {
		v := product[pocket.local[c]]
		post.suf[c] *= v
		d.left[c] *= v
	}
}

func sized(v []float64, n int) []float64 {
	if cap(v) < n {
		return make([]float64, n)
	}
	return v[:n]
}

// prepareMembers lays out the products over the members still to be drawn, the
// last first, for the shared state drawn.
func (post *WorstPosterior) prepareMembers(d *WorstDraw) {
	n, members := len(post.coef), post.worst.Members
	d.suf = sized(d.suf, (len(members)+1)*n)
	post.ones(d.suf[len(members)*n:])
	for m := len(members) - 1; m >= 0; m-- {
		one := &members[m]
		one.Leaf.AtMost(d.Root, d.P[one.Group], d.Q[one.Group][one.Pocket], post.atMost)
		for c := range n {
			d.suf[m*n+c] = d.suf[(m+1)*n+c] * post.atMost[post.capOf(m, c)]
		}
	}
	copy(d.left, post.coef)
}

// Allow writes, for each level of member m, by how much the Worst nodes make it
// likelier than what was seen of the member alone; only ratios matter. Members
// are drawn in their order, each by Allow and then Drawn.
func (post *WorstPosterior) Allow(d *WorstDraw, m int, dst []float64) {
	n := len(post.coef)
	clear(dst)
	for c := range n {
		dst[post.capOf(m, c)] += float64(d.left[c] * d.suf[(m+1)*n+c])
	}
	for k := len(dst) - 2; k >= 0; k-- {
		dst[k] += dst[k+1]
	}
	for k := range dst {
		dst[k] = math.Max(0, dst[k])
	}
}

// Drawn takes in the level that member m was drawn at.
func (post *WorstPosterior) Drawn(d *WorstDraw, m, level int) {
	for c := range d.left {
		if post.capOf(m, c) < level {
			d.left[c] = 0
		}
	}
}
