package damage

import "underpaint/engine/network"

// Like the message of their evidence (sums.go), the message of a pocket's items about the
// worst of many depends on the levels above only through t. So the expected chance that
// all stay within a limit is also tabulated in t.

// productRatios knows the ratios of a product whose items all share the same part of the
// car and group factors.
type productRatios struct {
	product *product
	sums    *pocketSums // of all evidence in the pocket
}

var _ network.CDFSums = (*productRatios)(nil)

// ratiosOf is nil if every level has to be asked.
func (m *conditioned) ratiosOf(l *product) network.CDFSums {
	if m.grids.LeafByLeaf || l.at.node != alone {
		return nil
	}
	for _, i := range l.items {
		if m.class[i] == local {
			return nil
		}
	}
	sums := m.sumsOf(m.nested.Groups[l.at.group].Pockets[l.at.pocket].Leaves)
	if sums == nil {
		return nil
	}
	return &productRatios{l, sums}
}

// Ratios writes the expected chances of staying within limits.
func (s *productRatios) Ratios(levels int, wanted func(r int) bool, dst []float64) bool {
	b, size := s.product.b, len(s.product.limit)
	cars := len(b.carTerm[open])
	for n := range b.alive {
		a := &b.alive[n]
		work := newRatioWork(a.points)
		for repair := range RepairStates {
			var roots []int // pairs of the level's place in a and its root state
			from, to := a.points, 0
			for of, level := range a.levels {
				for k := range cars {
					root := (level*cars+k)*RepairStates + repair
					if !wanted(root) {
						continue
					}
					roots = append(roots, of*cars+k, root)
					places := a.at[(of*cars+k)*levels : (of*cars+k+1)*levels]
					from, to = min(from, places[0].first), max(to, places[levels-1].first+len(places[0].w))
				}
			}
			if len(roots) == 0 {
				continue
			}
			if !s.tabulate(a, repair, from, to, work) {
				return false
			}
			for r := 0; r < len(roots); r += 2 {
				places := a.at[roots[r]*levels : (roots[r]+1)*levels]
				for p := range places {
					at := (roots[r+1]*levels + p) * size
					s.read(&places[p], work, dst[at:at+size])
				}
			}
		}
	}
	return true
}

// read writes the chances at one place, by combination of limits.
func (s *productRatios) read(at *place, work *ratioWork, dst []float64) {
	var upTo byCondition
	for n, w := range at.w {
		for k, v := range &work.upTo[at.first+n] {
			upTo[k] += float64(w * v)
		}
	}
	for k := range upTo {
		upTo[k] = min(1, max(0, upTo[k])) // interpolation may overshoot
	}
	for j, k := range s.product.limit {
		dst[j] = upTo[k]
	}
}

// ratioWork is working space for one pocket, by point of t.
type ratioWork struct {
	sum, product, one []float64
	density           []byCondition
	within            []byCondition // of all items so far, at one level of the pocket
	upTo              []byCondition // added up over the levels
}

func newRatioWork(points int) *ratioWork {
	return &ratioWork{sum: make([]float64, points), product: make([]float64, points), one: make([]float64, points),
		density: make([]byCondition, points), within: make([]byCondition, points), upTo: make([]byCondition, points)}
}

// tabulate works out the chances at the points of t in between. It gives up if
// likelihoods are so small that their products lose digits.
func (s *productRatios) tabulate(a *alive, repair, from, to int, work *ratioWork) bool {
	clear(work.sum)
	clear(work.upTo)
	for q, weight := range s.product.b.pocket {
		for t := from; t < to; t++ {
			work.product[t] = weight
		}
		for _, l := range s.sums.leaves {
			l.alongT(a, repair, q, from, work.one[from:to])
			for t := from; t < to; t++ {
				work.product[t] *= work.one[t]
			}
		}
		for n, i := range s.product.items {
			s.product.b.densitiesAlong(i, a, repair, q, from, s.product.given[n], work.density[from:to])
			stayWithin(work.density[from:to], work.within[from:to], n == 0)
		}
		for t := from; t < to; t++ {
			product := work.product[t]
			work.sum[t] += product
			within, upTo := &work.within[t], &work.upTo[t]
			for k := range upTo {
				upTo[k] += float64(product * within[k])
			}
		}
	}
	for t := from; t < to; t++ {
		if work.sum[t] < leastSum {
			return false
		}
		for k := range work.upTo[t] {
			work.upTo[t][k] /= work.sum[t]
		}
	}
	return true
}

// stayWithin turns weights of the conditions of one item into its chances of staying
// within each. Unless it is the first item, it multiplies them into those of the items
// before it.
func stayWithin(density, within []byCondition, first bool) {
	for t := range density {
		d, to, sum := &density[t], &within[t], 0.0
		for k := range d {
			sum += d[k]
			d[k] = sum
		}
		scale := 1 / sum
		for k := range d {
			v := float64(d[k] * scale)
			if !first {
				v *= to[k]
			}
			to[k] = v
		}
	}
}

// densitiesAlong writes weights of the conditions of an item at level q of its pocket for
// the points of t from the given one on.
func (b *base) densitiesAlong(i int, a *alive, repair, q, from int, given []*densities, dst []byCondition) {
	level := a.levels[0]
	table, side := given[b.age[level]], b.sideOf(i)[q]
	clear(dst)
	first, last := strataOf(repair)
	for s := first; s <= last; s++ {
		x := b.mu[level][s.reading()][i] + side + a.low
		u := float64((x - tableLow) * b.scale.perUnit)
		n, step := floor(u), int(b.scale.perUnit)/toAUnit
		w := lagrange(u - float64(n))
		n += from * step
		for t := range dst {
			to := &dst[t]
			switch at := n + t*step; {
			case at < 1:
				*to = to.plus(&table[s][1])
			case at > b.scale.size-3:
				*to = to.plus(&table[s][b.scale.size-2])
			default:
				p0, p1, p2, p3 := &table[s][at-1], &table[s][at], &table[s][at+1], &table[s][at+2]
				for k := range to {
					to[k] += max(0, float64(w[0]*p0[k])+float64(w[1]*p1[k])+float64(w[2]*p2[k])+float64(w[3]*p3[k]))
				}
			}
		}
	}
}

func (g *byCondition) plus(other *byCondition) (out byCondition) {
	for k := range out {
		out[k] = g[k] + other[k]
	}
	return out
}
