package network

import (
	"errors"
	"math"
	"strconv"
)

// Evidence on the worst of several leaves. A Worst node is the highest level
// among its members, and something seen of it has a likelihood L by level. With
// L(max) = Σ_k (L(k) − L(k+1))·[all members ≤ k], and the members independent
// given the shared nodes, every sum factorises again: a component is one k for
// each Worst node, and a member only has to say how likely it is to stay at or
// below k. (The same identity lies behind the exact treatment of noisy-max nodes:
// F. J. Díez and S. F. Galán, Int. J. Intelligent Systems 18, 2003, from memory.)
//
// The components are taken in the posterior without the Worst nodes, so that each
// is a probability, and their signed sum is the expected likelihood: it lies
// between the least and the greatest L, and the signs cost no digits that matter.

// Bounded is a leaf that can say how likely it is to stay at or below each level,
// given everything seen of it alone. It writes these chances, which rise to 1,
// to dst. It must be a pure function.
type Bounded interface {
	AtMost(r, p, q int, dst []float64)
}

// Member is a leaf that counts in one Worst node or more.
type Member struct {
	Group, Pocket int
	Nodes         []int // ascending indices of Worst nodes
	Leaf          Bounded
}

// Worst nodes: what was seen of each, by level, and their members. Levels is the
// number of levels of every member.
type Worst struct {
	Levels  int
	Likely  [][]float64 // [node][level], positive
	Members []Member
}

// MostWorst is how many Worst nodes can be taken together; their components
// multiply.
const MostWorst = 3

// leastShare is the share of the posterior below which a state is passed over;
// what is passed over adds to less than 1e-13 of any result.
const leastShare = 1e-18

// WorstPosterior is a NestedPosterior with evidence on Worst nodes taken in.
type WorstPosterior struct {
	*NestedPosterior
	worst    Worst
	cap      [][]int     // [node][component] level
	coef     []float64   // by component
	pockets  [][]pocketW // [group][pocket]
	root     []float64
	rootCum  []float64
	expected float64     // Σ root × expected likelihood
	byRoot   [][]float64 // [group][root·components + c], nil = no members there
	scratchW
}

// pocketW are the members of one pocket.
type pocketW struct {
	members []int
	local   []int     // by component: index of what its own nodes say
	size    int       // how many local components
	capOf   [][]int   // [member of the pocket][local component] level
	ratio   []float64 // [(root·levels + p)·size + local component]
}

type scratchW struct {
	atMost       []float64
	pre, suf, at []float64
}

// Worst takes in evidence on Worst nodes. The posterior itself is not changed.
func (post *NestedPosterior) Worst(w Worst) (*WorstPosterior, error) {
	if len(w.Likely) > MostWorst {
		return nil, errors.New("worst: " + strconv.Itoa(len(w.Likely)) + " nodes, expected at most " + strconv.Itoa(MostWorst))
	}
	for n, l := range w.Likely {
		if len(l) != w.Levels {
			return nil, errors.New("worst node " + strconv.Itoa(n) + ": expected one likelihood for each level")
		}
		for _, v := range l {
			if !usable(v) || v == 0 {
				return nil, errors.New("worst node " + strconv.Itoa(n) + ": expected likelihoods that are finite and above 0")
			}
		}
	}
	out := &WorstPosterior{NestedPosterior: post, worst: w}
	out.components()
	out.layOut()
	for g := range out.pockets {
		for k := range out.pockets[g] {
			out.fill(g, k)
		}
	}
	out.upward()
	if out.expected <= 0 {
		return nil, ErrNoSupport
	}
	return out, nil
}

// components lists the level of every node in every component, and its signed
// coefficient.
func (post *WorstPosterior) components() {
	n := 1
	for range post.worst.Likely {
		n *= post.worst.Levels
	}
	post.coef, post.cap = make([]float64, n), make([][]int, len(post.worst.Likely))
	for c := range post.coef {
		post.coef[c] = 1
	}
	step := n
	for s, likely := range post.worst.Likely {
		step /= post.worst.Levels
		post.cap[s] = make([]int, n)
		for c := range post.coef {
			k := c / step % post.worst.Levels
			post.cap[s][c] = k
			v := likely[k]
			if k+1 < len(likely) {
				v -= likely[k+1]
			}
			post.coef[c] *= v
		}
	}
	post.atMost = make([]float64, post.worst.Levels)
	post.pre, post.suf, post.at = make([]float64, n), make([]float64, n), make([]float64, n)
}

// layOut deals the members to their pockets.
func (post *WorstPosterior) layOut() {
	post.pockets = make([][]pocketW, len(post.groups))
	post.byRoot = make([][]float64, len(post.groups))
	for g := range post.groups {
		post.pockets[g] = make([]pocketW, len(post.groups[g].pockets))
	}
	for m, one := range post.worst.Members {
		pocket := &post.pockets[one.Group][one.Pocket]
		pocket.members = append(pocket.members, m)
	}
	for g := range post.pockets {
		for k := range post.pockets[g] {
			post.index(&post.pockets[g][k])
		}
	}
}

// index numbers the local components of a pocket: only the nodes that its
// members count in matter to it.
func (post *WorstPosterior) index(pocket *pocketW) {
	var nodes []int
	for s := range post.worst.Likely {
		for _, m := range pocket.members {
			if contains(post.worst.Members[m].Nodes, s) {
				nodes = append(nodes, s)
				break
			}
		}
	}
	pocket.size, pocket.local = 1, make([]int, len(post.coef))
	for range nodes {
		pocket.size *= post.worst.Levels
	}
	pocket.capOf = make([][]int, len(pocket.members))
	for n := range pocket.capOf {
		pocket.capOf[n] = make([]int, pocket.size)
	}
	for c := range post.coef {
		at := 0
		for _, s := range nodes {
			at = at*post.worst.Levels + post.cap[s][c]
		}
		pocket.local[c] = at
		for n, m := range pocket.members {
			pocket.capOf[n][at] = post.capOf(m, c)
		}
	}
}

// capOf is the level that a member must not exceed in a component.
func (post *WorstPosterior) capOf(m, c int) int {
	least := post.worst.Levels - 1
	for _, s := range post.worst.Members[m].Nodes {
		least = min(least, post.cap[s][c])
	}
	return least
}

func contains(list []int, v int) bool {
	for _, x := range list {
		if x == v {
			return true
		}
	}
	return false
}

// fill works out, for every root state and group level, the chance that all
// members of a pocket stay below each local component.
func (post *WorstPosterior) fill(g, k int) {
	pocket, group := &post.pockets[g][k], &post.groups[g]
	if len(pocket.members) == 0 {
		return
	}
	levels := len(group.prior)
	pocket.ratio = make([]float64, len(post.NestedPosterior.root)*levels*pocket.size)
	own, row := newScratch(len(group.pockets[k].prior)), make([]float64, len(group.pockets[k].prior))
	product := make([]float64, pocket.size)
	for r, atRoot := range post.NestedPosterior.root {
		if atRoot < leastShare {
			continue
		}
		for p, given := range group.levels(r) {
			if atRoot*given < leastShare {
				continue
			}
			post.rowOf(g, k, r, p, row, &own)
			to := pocket.ratio[(r*levels+p)*pocket.size:][:pocket.size]
			for q, w := range row {
				if w < leastShare {
					continue
				}
				post.product(pocket, r, p, q, -1, product)
				for c, v := range product {
					to[c] += float64(w * v)
				}
			}
		}
	}
}

// rowOf is the posterior of a pocket's levels without the Worst nodes.
func (post *WorstPosterior) rowOf(g, k, r, p int, row []float64, own *scratch) {
	pocket := &post.groups[g].pockets[k]
	if len(pocket.leaves) == 0 {
		copy(row, pocket.prior)
		return
	}
	pocket.row(r, p, row, own)
}

// product writes, by local component, the chance that all members of a pocket but
// one stay below it at a level of the pocket; but −1 takes all.
func (post *WorstPosterior) product(pocket *pocketW, r, p, q, but int, dst []float64) {
	for c := range dst {
		dst[c] = 1
	}
	for n, m := range pocket.members {
		if m == but {
			continue
		}
		post.worst.Members[m].Leaf.AtMost(r, p, q, post.atMost)
		for c, level := range pocket.capOf[n] {
			dst[c] *= post.atMost[level]
		}
	}
}

// upward weighs the group levels, then the root states.
func (post *WorstPosterior) upward() {
	n := len(post.coef)
	for g := range post.pockets {
		if !post.counts(g) {
			continue
		}
		post.byRoot[g] = make([]float64, len(post.NestedPosterior.root)*n)
		for r, atRoot := range post.NestedPosterior.root {
			if atRoot < leastShare {
				continue
			}
			to := post.byRoot[g][r*n : (r+1)*n]
			for p, given := range post.groups[g].levels(r) {
				if atRoot*given < leastShare {
					continue
				}
				post.ones(post.at)
				post.times(g, -1, r, p, post.at)
				for c, v := range post.at {
					to[c] += float64(given * v)
				}
			}
		}
	}
	post.root = make([]float64, len(post.NestedPosterior.root))
	for r, atRoot := range post.NestedPosterior.root {
		if atRoot < leastShare {
			continue
		}
		copy(post.at, post.coef)
		post.timesRoots(-1, r, post.at)
		post.root[r] = math.Max(0, float64(atRoot*sum(post.at)))
		post.expected += post.root[r]
	}
	for r := range post.root {
		post.root[r] /= post.expected
	}
	post.rootCum = cumulative(post.root)
}

func (post *WorstPosterior) ones(dst []float64) {
	for c := range dst {
		dst[c] = 1
	}
}

// counts says whether a group has members.
func (post *WorstPosterior) counts(g int) bool {
	for k := range post.pockets[g] {
		if len(post.pockets[g][k].members) > 0 {
			return true
		}
	}
	return false
}

// times multiplies the ratios of a group's pockets but one into dst.
func (post *WorstPosterior) times(g, but, r, p int, dst []float64) {
	levels := len(post.groups[g].prior)
	for k := range post.pockets[g] {
		pocket := &post.pockets[g][k]
		if k == but || len(pocket.members) == 0 {
			continue
		}
		ratio := pocket.ratio[(r*levels+p)*pocket.size:][:pocket.size]
		for c := range dst {
			dst[c] *= ratio[pocket.local[c]]
		}
	}
}

// timesRoots multiplies what every group but one says at a root state into dst.
func (post *WorstPosterior) timesRoots(but, r int, dst []float64) {
	n := len(post.coef)
	for g, by := range post.byRoot {
		if g == but || by == nil {
			continue
		}
		for c, v := range by[r*n : (r+1)*n] {
			dst[c] *= v
		}
	}
}

func sum(v []float64) (total float64) {
	for _, x := range v {
		total += x
	}
	return total
}

// Root returns the posterior of the root states; it adds to 1. Read only.
func (post *WorstPosterior) Root() []float64 { return post.root }

// LogEvidence is that of all evidence, the likelihoods of the Worst nodes taken
// as they stand.
func (post *WorstPosterior) LogEvidence() float64 {
	return post.NestedPosterior.LogEvidence() + widen(post.expected).log()
}
