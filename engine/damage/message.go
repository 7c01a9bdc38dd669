package damage

import "underpaint/engine/network"

// seenLeaf is the message of one item with evidence: its likelihood at each x of the
// table, for each stratum. It holds only tables, so that a later conditioning can reuse
// it without keeping the one that made it.
type seenLeaf struct {
	b      *base
	item   int
	likely []*likely // by age
}

// likely is a likelihood at each x of the table, by stratum. x is the mean of the log
// depth given the levels above, in the stratum's reading of the history.
type likely [strata][]float64

var _ network.BatchLeaf = (*seenLeaf)(nil)

// leaves returns the leaves of a pocket that have evidence; the others send no message.
func (c *conditioned) leaves(pocket int) (out []network.Leaf) {
	for _, i := range c.Body.Pockets[pocket].Items {
		if c.seen[i] != nil {
			out = append(out, c.leafOf(i))
		}
	}
	return out
}

func (c *conditioned) leafOf(i int) *seenLeaf {
	l := &seenLeaf{b: c.base, item: i}
	for age := range c.ages {
		l.likely = append(l.likely, c.likelyOf(i, age))
	}
	return l
}

// findAlike returns, for each item, the first item of the same part with the same
// evidence, so that tables shared by left and right, or by one brace and the next, are
// built once.
func (c *conditioned) findAlike() []int {
	alike := make([]int, len(c.Body.Items))
	for i := range alike {
		for alike[i] < i {
			o := alike[i]
			if c.Body.Items[o].Part == c.Body.Items[i].Part && sameEvidence(c.seen[o], c.seen[i]) {
				break
			}
			alike[i]++
		}
	}
	return alike
}

func sameEvidence(a, b *Likelihood) bool { return a == b || a != nil && b != nil && *a == *b }

// likelyOf tabulates the likelihood of the evidence on item i, for an index of ages.
func (c *conditioned) likelyOf(i, age int) *likely {
	key := tabled{c.alike[i], age}
	if l := c.likely[key]; l != nil {
		return l
	}
	l := &likely{}
	for s := range strata {
		cause := c.causeAt(i, age, s)
		pulled := cause.pull(c.prior[i].pull(c.seen[i], s))
		l[s] = make([]float64, c.scale.size)
		for x, rust := range c.table[i].at {
			v := 0.0
			for k, p := range rust {
				v += float64(p * pulled[k])
			}
			l[s][x] = v
		}
	}
	c.likely[key] = l
	return l
}

// read reads the table of a stratum between its points.
func (l *likely) read(sc scale, s stratum, x float64) float64 {
	n, w := sc.cell(x)
	at := l[s][n-1 : n+3]
	v := float64(w[0]*at[0]) + float64(w[1]*at[1]) + float64(w[2]*at[2]) + float64(w[3]*at[3])
	return max(v, leastLikely) // interpolation may undershoot where the likelihood is 0
}

// leastLikely replaces a likelihood of 0.
const leastLikely = 1e-300

// Multiply multiplies the likelihood at every level of the pocket into dst.
func (l *seenLeaf) Multiply(root, p int, dst []float64) { l.MultiplyBatch(root, 1, p, dst) }

// MultiplyBatch is Multiply for root states that differ only in the repair state, as
// consecutive ones do.
func (l *seenLeaf) MultiplyBatch(root, states, p int, dst []float64) {
	level, k, repair := l.b.split(root)
	luck, mu, table := l.b.luck(l.item, k, p), &l.b.mu[level], l.likely[l.b.age[level]]
	side := l.b.sideOf(l.item)
	for n := range states {
		to := dst[n*len(side) : (n+1)*len(side)]
		first, last := strataOf(repair + n)
		base := mu[first.reading()][l.item] + luck
		if first == last {
			for q := range to {
				to[q] *= table.read(l.b.scale, first, base+side[q])
			}
			continue
		}
		other := mu[last.reading()][l.item] + luck
		for q := range to {
			to[q] *= table.read(l.b.scale, first, base+side[q]) + table.read(l.b.scale, last, other+side[q])
		}
	}
}
