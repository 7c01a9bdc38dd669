package damage

import (
	"math"

	"underpaint/engine/chance"
	"underpaint/engine/network"
)

// What a pocket says depends on the levels above it through one number only: the luck
// t that car and group add to the log of every depth in it. So the sum over the
// pocket's levels is tabulated in t once for each repair state, and for all histories
// that differ in how fast everything rusted, which is a shift of t. Its log is read by
// eight-point Lagrange interpolation, good to about 1e-8 (held to leaf by leaf in a
// test). Asking every leaf at every state would take several times as long.

// toAUnit are the points of t to a unit.
const toAUnit = 16

// around is how many points are read around a place.
const around = 8

// alive are levels of the history that differ in their rates alone.
type alive struct {
	levels []int
	shift  []float64 // by level of them: added to every depth of the first
	low    float64   // the first point of t
	points int
	at     []place // [of levels][k][p] where t stands among the points
}

// place is a place among points with the weights of those around it.
type place struct {
	first int
	w     [around]float64
}

// livesAlike sorts the levels of the history.
func (b *base) livesAlike() (out []alive) {
	of := map[string]int{}
	for n := range b.Histories {
		life := b.Histories[n].Life()
		at, known := of[life]
		if !known {
			at, of[life] = len(out), len(out)
			out = append(out, alive{})
		}
		a := &out[at]
		a.levels = append(a.levels, n)
		a.shift = append(a.shift, b.mu[n][0][0]-b.mu[a.levels[0]][0][0])
	}
	for n := range out {
		out[n].layOut(b)
	}
	return out
}

// layOut fixes the points of t, some beyond the last place on either side.
func (a *alive) layOut(b *base) {
	carTerm, groupTerm := b.carTerm[open], b.groupTerm[open]
	low, high := math.Inf(1), math.Inf(-1)
	for _, shift := range a.shift {
		low, high = min(low, shift), max(high, shift)
	}
	low += carTerm[0] + groupTerm[0]
	high += carTerm[len(carTerm)-1] + groupTerm[len(groupTerm)-1]
	a.low = float64(math.Floor(low*toAUnit)/toAUnit) - around/2.0/toAUnit
	a.points = int(math.Ceil((high-a.low)*toAUnit)) + around
	for _, shift := range a.shift {
		for _, k := range carTerm {
			for _, p := range groupTerm {
				a.at = append(a.at, a.place(shift+k+p))
			}
		}
	}
}

// place finds t among the points, with Lagrange's weights.
func (a *alive) place(t float64) (out place) {
	u := float64((t - a.low) * toAUnit)
	n := int(u)
	out.first = n - (around/2 - 1)
	x := u - float64(out.first)
	for i := range out.w {
		w := 1.0
		for j := range out.w {
			if j != i {
				w *= (x - float64(j)) / float64(i-j)
			}
		}
		out.w[i] = w
	}
	return out
}

// read reads a table of logs at a place.
func (p *place) read(logs []float64) (v float64) {
	for n, w := range p.w {
		v += float64(w * logs[p.first+n])
	}
	return v
}

// pocketSums knows what a pocket says whose items share the luck of car and group
// alike.
type pocketSums struct {
	b      *base
	leaves []*seenLeaf
}

var _ network.Summed = (*pocketSums)(nil)

// sumsOf is nil where every leaf has to be asked: where an item shares its luck
// otherwise than its pocket, or it would be no quicker.
func (b *base) sumsOf(leaves []network.Leaf) network.Summed {
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

// LogSums writes the logs of the sums over the pocket's levels.
func (s *pocketSums) LogSums(levels int, dst []float64) {
	perLevel := len(s.b.carTerm[open]) * levels
	for n := range s.b.alive {
		a := &s.b.alive[n]
		work := newSumsWork(a.points)
		for repair := range RepairStates {
			logs := s.tabulate(a, repair, work)
			for of, level := range a.levels {
				for k := range s.b.carTerm[open] {
					places := a.at[of*perLevel+k*levels : of*perLevel+(k+1)*levels]
					root := (level*len(s.b.carTerm[open])+k)*RepairStates + repair
					to := dst[root*levels : (root+1)*levels]
					for p := range places {
						to[p] = places[p].read(logs)
					}
				}
			}
		}
	}
}

// sumsWork is working space for one pocket.
type sumsWork struct{ sum, product, one []float64 }

func newSumsWork(points int) *sumsWork {
	return &sumsWork{make([]float64, points), make([]float64, points), make([]float64, points)}
}

// leastSum is what a sum has to reach to have lost nothing to underflow.
const leastSum = 1e-250

// tabulate works out the log of the sum over the pocket's levels at every point of t.
func (s *pocketSums) tabulate(a *alive, repair int, work *sumsWork) []float64 {
	clear(work.sum)
	for q, weight := range s.b.pocket {
		for t := range work.product {
			work.product[t] = weight
		}
		for _, l := range s.leaves {
			l.alongT(a, repair, q, 0, work.one)
			for t, v := range work.one {
				work.product[t] *= v
			}
		}
		for t, v := range work.product {
			work.sum[t] += v
		}
	}
	for t, v := range work.sum {
		if v >= leastSum {
			work.sum[t] = chance.Log(v)
		} else {
			work.sum[t] = s.carefully(a, repair, t)
		}
	}
	return work.sum
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

// t is the point of a number.
func (a *alive) t(n int) float64 { return a.low + float64(float64(n)/toAUnit) }

// alongT writes the likelihood of a leaf at level q of its pocket for the points of t
// from the one given on.
func (l *seenLeaf) alongT(a *alive, repair, q, from int, dst []float64) {
	level := a.levels[0]
	table, side := l.likely[l.b.age[level]], l.b.sideOf(l.item)[q]
	first, last := strataOf(repair)
	table.along(l.b.scale, first, l.b.mu[level][first.reading()][l.item]+side+a.t(from), dst, false)
	if last != first {
		table.along(l.b.scale, last, l.b.mu[level][last.reading()][l.item]+side+a.t(from), dst, true)
	}
}

// along reads the table of a stratum at x and every step of t from there on; adding
// says to add to dst what is read. All places lie alike between the points of the
// table, so one set of weights serves.
func (l *likely) along(sc scale, s stratum, x float64, dst []float64, adding bool) {
	u := float64((x - tableLow) * sc.perUnit)
	n, step, table := floor(u), int(sc.perUnit)/toAUnit, l[s]
	w := lagrange(u - float64(n))
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
