package damage

import (
	"underpaint/engine/car"
	"underpaint/engine/network"
)

// Worst is what was seen of the worst of several items, such as a door gap that
// answers to everything that carries a side: the likelihood of each condition of
// the worst one. Only ratios matter; none may be zero.
type Worst struct {
	Items  []int // ascending
	Likely [car.Conditions]float64
}

// MostWorst is how many of them can be taken together.
const MostWorst = network.MostWorst

// boundedLeaf is one item as a member of Worst nodes: the chance that its
// condition is at most k, given all that was seen of it alone, at each x of the
// table.
type boundedLeaf struct {
	m      *Model
	item   int
	side   []float64
	atMost *[RepairStates][][car.Conditions]float64
}

var _ network.Bounded = (*boundedLeaf)(nil)

// setWorst conditions on what was seen of the worst of several items.
func (m *Model) setWorst(list []Worst) error {
	if len(list) == 0 {
		return nil
	}
	w := network.Worst{Levels: car.Conditions}
	m.member = make([]int, len(m.Body.Items))
	for i := range m.member {
		m.member[i] = -1
	}
	nodes := make([][]int, len(m.Body.Items))
	for n := range list {
		w.Likely = append(w.Likely, list[n].Likely[:])
		for _, i := range list[n].Items {
			nodes[i] = append(nodes[i], n)
		}
	}
	shared := map[int]*[RepairStates][][car.Conditions]float64{}
	for g := range m.Body.Groups {
		for k, pocket := range m.Body.Groups[g].Pockets {
			for _, i := range m.Body.Pockets[pocket].Items {
				if nodes[i] == nil {
					continue
				}
				m.member[i] = len(w.Members)
				m.members = append(m.members, i)
				w.Members = append(w.Members, network.Member{Group: g, Pocket: k, Nodes: nodes[i], Leaf: m.bounded(i, shared)})
			}
		}
	}
	var err error
	m.worst, err = m.posterior.Worst(w)
	return err
}

// bounded makes the leaf of an item; items of one part of which nothing was seen
// share their table.
func (m *Model) bounded(i int, shared map[int]*[RepairStates][][car.Conditions]float64) *boundedLeaf {
	l := &boundedLeaf{m: m, item: i, side: m.sideTerm[b2i(!m.Body.PartOf(i).SeenWhenStripped)]}
	part := m.Body.Items[i].Part
	if m.seen[i] == nil {
		if l.atMost = shared[part]; l.atMost != nil {
			return l
		}
	}
	l.atMost = &[RepairStates][][car.Conditions]float64{}
	for r := range l.atMost {
		l.atMost[r] = make([][car.Conditions]float64, tableSize)
		for x := range l.atMost[r] {
			l.atMost[r][x] = m.atMostAt(i, r, m.table[i].at[x])
		}
	}
	if m.seen[i] == nil {
		shared[part] = l.atMost
	}
	return l
}

func (m *Model) atMostAt(i, repair int, rust [car.Conditions]float64) (out [car.Conditions]float64) {
	j := m.prior[i].joint(rust, repair)
	if e := m.seen[i]; e != nil {
		j.condition(e)
	}
	sum := 0.0
	for k := range j {
		for f := range j[k] {
			sum += j[k][f][0] + j[k][f][1]
		}
		out[k] = sum
	}
	for k := range out {
		out[k] /= sum
	}
	return out
}

// AtMost reads the table between its points as the likelihoods are read.
func (l *boundedLeaf) AtMost(root, p, q int, dst []float64) {
	level, k, repair := l.m.split(root)
	n, w := cell(l.m.mu[level][l.item] + l.m.carTerm[k] + l.m.groupTerm[p] + l.side[q])
	at := l.atMost[repair][n-1 : n+3]
	least := 0.0
	for c := range dst {
		v := float64(w[0]*at[0][c]) + float64(w[1]*at[1][c]) + float64(w[2]*at[2][c]) + float64(w[3]*at[3][c])
		least = min(1, max(v, least)) // interpolation may overshoot
		dst[c] = least
	}
	dst[len(dst)-1] = 1
}

// gatherWorst is the posterior of one item with Worst nodes taken in: the weight
// of each state of the shared factors, by the item's own condition where it is a
// member, is laid on the table of x.
func (m *Model) gatherWorst(g, n, i int) (c Chances) {
	side := m.sideTerm[b2i(!m.Body.PartOf(i).SeenWhenStripped)]
	var weight [RepairStates][][car.Conditions]float64
	for r := range weight {
		weight[r] = make([][car.Conditions]float64, tableSize)
	}
	m.worst.Levels(g, n, m.member[i], func(root, p, q int, weights []float64) {
		level, k, repair := m.split(root)
		at, w := cell(m.mu[level][i] + m.carTerm[k] + m.groupTerm[p] + side[q])
		for c := range w {
			row := &weight[repair][at-1+c]
			for k := range row {
				row[k] += float64(weights[min(k, len(weights)-1)] * w[c])
			}
		}
	})
	for r := range weight {
		for x := range weight[r] {
			if weight[r][x] == ([car.Conditions]float64{}) {
				continue
			}
			j := m.prior[i].joint(m.table[i].at[x], r)
			if e := m.seen[i]; e != nil {
				j.condition(e)
			}
			for k := range j {
				for f := range j[k] {
					for d := range j[k][f] {
						j[k][f][d] *= weight[r][x][k]
					}
				}
			}
			c.add(&j, 1)
		}
	}
	return c
}

// drawMembers draws the items that Worst nodes are about, one after another.
func (m *Model) drawMembers(c *Car) {
	mu := m.mu[c.Level]
	for n, i := range m.members {
		pocket := m.Body.Items[i].Pocket
		g, q := m.Body.Pockets[pocket].Group, 0
		for k, id := range m.Body.Groups[g].Pockets {
			if id == pocket {
				q = c.shared.Q[g][k]
			}
		}
		x := mu[i] + m.carTerm[c.carLevel] + m.groupTerm[c.shared.P[g]] + m.sideTerm[b2i(!m.Body.PartOf(i).SeenWhenStripped)][q]
		j := m.prior[i].joint(m.table[i].read(x), c.Repair)
		if e := m.seen[i]; e != nil {
			j.condition(e)
		}
		m.worst.Allow(&c.shared, n, c.allow[:])
		sum := 0.0
		for k := range j {
			for f := range j[k] {
				for d := range j[k][f] {
					j[k][f][d] *= c.allow[k]
					sum += j[k][f][d]
				}
			}
		}
		m.pickJoint(c, i, &j, c.own[n]*sum)
		m.worst.Drawn(&c.shared, n, int(c.Condition[i]))
	}
}
