package damage

import (
	"math"
	"slices"

	"underpaint/engine/car"
)

// slowly is the other way.
type slowly struct {
	m     *Model
	nodes []MaxEvidence
	pairs []MaxEvidence
	seen  map[int]bool // items that matter
}

type worsts [car.Conditions][car.Conditions]float64

// item is the weight of each condition of item i, everything seen of it alone
// included.
func (s *slowly) item(i, root, p, q int) (g [car.Conditions]float64) {
	m := s.m.given[0]
	level, k, repair := m.split(root)
	part := m.Body.PartOf(i)
	class := m.fig.classOf(part)
	luck := m.carTerm[class][k] + m.groupTerm[class][p] + m.sideTerm[class][q]
	first, last := stratum(repair), stratum(repair)
	if repair == thorough {
		first, last = notReached, renewed
	}
	for st := first; st <= last; st++ {
		rust := conditionsAt(m.mu[level][st.reading()][i]+luck, m.threshold[b2i(part.Face == car.Hidden)], m.fig.sigma*math.Sqrt(m.fig.share[class].residual))
		times := min(1.2, m.Histories[level].AgeYears/50)
		if st == renewed {
			times = min(1.2, m.Histories[level].WorkYearsAgo/50)
		}
		j := m.prior[i].joint(afterCauses(m.cause[i], times, rust), st)
		for c := range j {
			for f := range j[c] {
				for d, v := range j[c][f] {
					if e := m.seen[i]; e != nil {
						v *= e[c][f][d]
					}
					g[c] += v
				}
			}
		}
	}
	return g
}

// afterCauses is the condition as the worse of two, drawn out pair by pair.
func afterCauses(o ownCause, times float64, rust byCondition) *byCondition {
	var out byCondition
	hurt := o.hurt * times
	for k, p := range rust {
		out[k] += p * (1 - o.spared - hurt)
		for c, v := range o.worse {
			out[max(k, c)] += p * hurt * v
		}
		for c, v := range o.better {
			out[c] += p * o.spared * v
		}
	}
	return &out
}

// group is the distribution of both worsts within a group given the root; only
// the condition k of the target counts, or all if the target is −1.
func (s *slowly) group(g, root, target, k int, groupWeight, pocketWeight []float64) (out worsts) {
	pockets := s.m.Body.Groups[g].Pockets
	q := make([]int, len(pockets))
	for p, above := range groupWeight {
		clear(q)
		for {
			weight, items := above, map[int][car.Conditions]float64{}
			for n, pocket := range pockets {
				weight *= pocketWeight[q[n]]
				for _, i := range s.m.Body.Pockets[pocket].Items {
					if s.seen[i] || i == target {
						items[i] = s.item(i, root, p, q[n])
					}
				}
			}
			s.addUp(&out, items, target, k, weight)
			n := 0
			for n < len(q) && q[n] == len(pocketWeight)-1 {
				q[n] = 0
				n++
			}
			if n == len(q) {
				break
			}
			q[n]++
		}
	}
	return out
}

func (s *slowly) addUp(out *worsts, items map[int][car.Conditions]float64, target, k int, weight float64) {
	now := worsts{}
	now[0][0] = weight
	done := map[int]bool{}
	for i := range s.m.Body.Items {
		g, here := items[i]
		if !here || done[i] {
			continue
		}
		other, likely := -1, [car.Conditions]float64{}
		for _, w := range s.pairs {
			if w.Items[0] == i {
				other, likely = w.Items[1], w.Likely
			}
		}
		next := worsts{}
		for a, va := range g {
			if i == target && a != k {
				continue
			}
			if other < 0 {
				s.shift(&now, &next, i, a, va)
				continue
			}
			for b, vb := range items[other] {
				if other == target && b != k {
					continue
				}
				half := worsts{}
				s.shift(&now, &half, i, a, va*vb*likely[max(a, b)])
				s.shift(&half, &next, other, b, 1)
			}
		}
		done[other] = true
		now = next
	}
	for l := range now {
		for r := range now[l] {
			out[l][r] += now[l][r]
		}
	}
}

// shift takes item i at condition c into the worsts.
func (s *slowly) shift(from, to *worsts, i, c int, v float64) {
	at := [2]int{}
	for n, w := range s.nodes {
		if slices.Contains(w.Items, i) {
			at[n] = c
		}
	}
	for l := range from {
		for r := range from[l] {
			to[max(l, at[0])][max(r, at[1])] += from[l][r] * v
		}
	}
}

// chances are those of each condition of the target, the chance of each pair of
// worsts, and the probability of all evidence.
func (s *slowly) chances(target int) (out [car.Conditions]float64, both worsts, evidence float64) {
	groupWeight, pocketWeight := coarse.Group.weights(leak{}), coarse.Pocket.weights(s.m.fig.leak)
	home := s.m.Body.Pockets[s.m.Body.Items[target].Pocket].Group
	for root, w := range s.m.given[0].nested.Root {
		rest := worsts{}
		rest[0][0] = 1
		for g := range s.m.Body.Groups {
			if g != home && s.matters(g) {
				one := s.group(g, root, -1, 0, groupWeight, pocketWeight)
				rest = join(&rest, &one)
			}
		}
		for k := range out {
			one := s.group(home, root, target, k, groupWeight, pocketWeight)
			for l, row := range join(&rest, &one) {
				for r, v := range row {
					v *= w
					for n, node := range s.nodes {
						v *= node.Likely[[2]int{l, r}[n]]
					}
					out[k] += v
					both[l][r] += v
					evidence += v
				}
			}
		}
	}
	for k := range out {
		out[k] /= evidence
	}
	for l := range both {
		for r := range both[l] {
			both[l][r] /= evidence
		}
	}
	return out, both, evidence
}

func (s *slowly) matters(g int) bool {
	for i := range s.seen {
		if s.m.Body.Pockets[s.m.Body.Items[i].Pocket].Group == g {
			return true
		}
	}
	return false
}

func join(a, b *worsts) (out worsts) {
	for l := range a {
		for r := range a[l] {
			if a[l][r] == 0 {
				continue
			}
			for x := range b {
				for y, v := range b[x] {
					out[max(l, x)][max(r, y)] += a[l][r] * v
				}
			}
		}
	}
	return out
}
