package damage

import (
	"math"

	"underpaint/engine/chance"
	"underpaint/engine/network"
)

// A pocket's message depends on the levels above it only through one number: t, the
// amount that the car and group factors add to the log of every depth in it. So the sum
// over the pocket's levels is tabulated in t, once for each repair state and for all
// histories that differ only in how fast everything rusted, which shifts t. Its log is
// read by eight-point Lagrange interpolation, accurate to about 1e-8 (a test compares it
// with asking leaf by leaf). Asking every leaf at every state would take several times as
// long.

// pocketSums is the message of a pocket whose items all share the same part of the car
// and group factors. It holds only tables, so that a later conditioning with the same
// evidence in the pocket can reuse it.
type pocketSums struct {
	b      *base
	leaves []*seenLeaf
	logs   [][RepairStates][]float64 // by class of levels and repair state: log of the sum at each point of t; nil = not asked for yet
}

// sumsOf is nil if every leaf has to be asked, because an item shares its variance
// differently from its pocket or because the sums would be no quicker.
func (b *base) sumsOf(leaves []network.Leaf) *pocketSums {
	if b.grids.LeafByLeaf {
		return nil
	}
	s := &pocketSums{b: b}
	for _, l := range leaves {
		one, ok := l.(*seenLeaf)
		if !ok || b.class[one.item] == local {
			return nil
		}
		s.leaves = append(s.leaves, one)
	}
	return s
}

// setSums gives pocket k of the body sums over its levels, those of an earlier
// conditioning where they were taken over, and says whether it can have any.
func (c *conditioned) setSums(k int, leaves []network.Leaf) bool {
	s := c.sumsOf(leaves)
	if s != nil && c.sums[k] == nil {
		c.sums[k] = s
	}
	return s != nil
}

// logSums is the log of the sum over the pocket's levels at every point of t, for a
// class of levels of the history.
func (s *pocketSums) logSums(class, repair int) []float64 {
	if s.logs == nil {
		s.logs = make([][RepairStates][]float64, len(s.b.alive))
		work := newSumsWork(s.b.alive)
		for n := range s.logs {
			for repair := range s.logs[n] {
				s.logs[n][repair] = s.tabulate(&s.b.alive[n], repair, work)
			}
		}
	}
	return s.logs[class][repair]
}

// sumsWork is working space for one pocket, by point of t.
type sumsWork struct{ product, one []float64 }

func newSumsWork(all []alive) *sumsWork {
	points := 0
	for n := range all {
		points = max(points, all[n].points)
	}
	return &sumsWork{make([]float64, points), make([]float64, points)}
}

// leastSum is the smallest sum that has certainly lost nothing to underflow.
const leastSum = 1e-250

// tabulate works out the log of the sum over the pocket's levels at every point of t.
func (s *pocketSums) tabulate(a *alive, repair int, work *sumsWork) []float64 {
	sum, product, one := make([]float64, a.points), work.product[:a.points], work.one[:a.points]
	for q, weight := range s.b.pocket {
		for t := range product {
			product[t] = weight
		}
		for _, l := range s.leaves {
			l.alongT(a, repair, q, 0, one)
			for t, v := range one {
				product[t] *= v
			}
		}
		for t, v := range product {
			sum[t] += v
		}
	}
	for t, v := range sum {
		if v >= leastSum {
			sum[t] = chance.Log(v)
		} else {
			sum[t] = s.carefully(a, repair, t)
		}
	}
	return sum
}

// carefully is the log of the sum at one point of t for likelihoods of any size.
func (s *pocketSums) carefully(a *alive, repair, t int) float64 {
	logs, top := make([]float64, len(s.b.pocket)), math.Inf(-1)
	one := make([]float64, a.points)
	for q, weight := range s.b.pocket {
		logs[q] = chance.Log(weight)
		for _, l := range s.leaves {
			l.alongT(a, repair, q, 0, one)
			logs[q] += chance.Log(one[t])
		}
		top = max(top, logs[q])
	}
	sum := 0.0
	for _, v := range logs {
		sum += chance.Exp(v - top)
	}
	return top + chance.Log(sum)
}

// alongT writes the likelihood of a leaf at level q of its pocket for the points of t from
// the given one on.
func (l *seenLeaf) alongT(a *alive, repair, q, from int, dst []float64) {
	level := a.levels[0]
	table, side := l.likely[l.b.age[level]], l.b.sideOf(l.item)[q]
	first, last := strataOf(repair)
	table.along(l.b.scale, first, l.b.mu[level][first.reading()][l.item]+side+a.low, from, dst, false)
	if last != first {
		table.along(l.b.scale, last, l.b.mu[level][last.reading()][l.item]+side+a.low, from, dst, true)
	}
}

// along reads the table of a stratum at the points of t from the one given on; x is
// where the first of all lies, and adding says to add to dst what is read. All places lie
// alike between the points of the table, so one set of weights serves.
func (l *likely) along(sc scale, s stratum, x float64, from int, dst []float64, adding bool) {
	u := float64((x - tableLow) * sc.perUnit)
	n, step, table := floor(u), int(sc.perUnit)/toAUnit, l[s]
	w := lagrange(u - float64(n))
	n += from * step
	for t := range dst {
		v := 0.0
		switch at := n + t*step; {
		case at < 1:
			v = table[1]
		case at > sc.size-3:
			v = table[sc.size-2]
		default:
			four := table[at-1 : at+3]
			v = float64(w[0]*four[0]) + float64(w[1]*four[1]) + float64(w[2]*four[2]) + float64(w[3]*four[3])
		}
		v = max(v, leastLikely)
		if adding {
			v += dst[t]
		}
		dst[t] = v
	}
}

func floor(u float64) int { return int(math.Floor(u)) }
