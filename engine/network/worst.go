package network

import (
	"errors"
	"slices"
	"strconv"
)

// Evidence on the worst of several leaves. A Worst node is the highest level
// among its members, and something seen of it has a likelihood L by level. With
//
//	L(max) = Σ_k c(k)·[all members ≤ k],   c(k) = L(k) − L(k+1),  c(last) = L(last)
//
// and the members independent given the shared nodes, every sum factorises again:
// a component is one k for each Worst node, and a member only has to say how
// likely it is to stay within it. (The same identity lies behind the exact
// treatment of noisy-max nodes: F. J. Díez and S. F. Galán, Int. J. Intelligent
// Systems 18, 2003, from memory.)
//
// The components are taken in the posterior without the Worst nodes, so that each
// is a probability, and their signed sum is the expected likelihood: it lies
// between the least and the greatest L, and the signs cost no digits that matter
// as long as these are not many powers of ten apart.

// Bounded is a leaf, or several of one pocket taken together, that can say how
// likely it is to stay within limits given everything seen of it alone. AtMost
// writes for every level q of the pocket, at root state r and group level p, the
// chance of staying within each combination of limits on the nodes that it counts
// in: dst[q·n + j], with j row-major in the order of the nodes. Each is a chance
// and never falls where a limit rises; at the last level of all it is 1. It must
// give the same answer each time.
type Bounded interface {
	AtMost(r, p int, dst []float64)
}

// BoundedSums knows what a Bounded comes to over the levels of its pocket without
// asking level by level. Ratios writes for the root states that are wanted, and every
// level p of the group, the expected chance of staying within each combination of
// limits: dst[(r·levels + p)·n + j], as closely as its owner promises. It may decline
// by returning false, and is asked level by level then.
type BoundedSums interface {
	Ratios(levels int, wanted func(r int) bool, dst []float64) bool
}

// Member says in which Worst nodes a Bounded counts. Sums is nil, or knows its sums; it
// is asked where the member is the only one of its pocket.
type Member struct {
	Group, Pocket int
	Nodes         []int // ascending indices of Worst nodes, at least one
	Leaf          Bounded
	Sums          BoundedSums
}

// Worst nodes: what was seen of each, by level, and their members. Levels is the
// number of levels of every member. A node all of whose members are in one group
// may be declared to be within it: its components are then summed there and cost
// the other groups nothing.
type Worst struct {
	Levels  int
	Likely  [][]float64 // [node][level], positive
	Within  []int       // by node: the group that holds all its members, −1 = none does
	Members []Member
}

// How many Worst nodes can be taken together; their components multiply.
const (
	MostWorst       = 3 // that reach over several groups
	MostWorstWithin = 2 // within each group, beside those
)

// widestLikely is how many times the least likelihood of a Worst node the
// greatest may be: up to here sums of signed components keep ten digits.
const widestLikely = 1e6

// WorstPosterior is a NestedPosterior with evidence on Worst nodes taken in. One
// goroutine at a time may use it.
type WorstPosterior struct {
	*NestedPosterior
	worst Worst
	wide  []int     // nodes that reach over several groups
	coef  []float64 // by component of those
	least float64   // weight below which a state is passed over
	// Chance of a group's level given the root below which it is passed over.
	leastGiven float64
	groups     []worstGroup // by group
	root       []float64
	rootCum    []float64
	expected   float64 // Σ root × expected likelihood
	scratch    worstScratch
}

// worstGroup is what the members in one group say. Its components have a level for
// each of the wide nodes and for each node within the group.
type worstGroup struct {
	pockets []worstPocket
	nodes   []int     // the wide ones first
	coef    []float64 // by its components: coefficient of the nodes within the group
	wide    []int     // by its components: component of the wide nodes
	byRoot  []float64 // [root·wide components + c] expected chance of staying within; nil = nothing counts here
	done    []bool    // by root state: worked out
}

// worstPocket is what the members in one pocket say. Only the nodes that they
// count in matter to it: its local components.
type worstPocket struct {
	members []int
	size    int       // how many local components; 1 without members
	local   []int     // by component of the group: local component
	own     [][]int   // [member of the pocket][local component] combination of its own
	ratio   []float64 // [(root·levels + p)·size + local component]
	firstAt int       // number of its first row among those of the group
	kept    *rowCache // chances of staying within, [q·size + local component]
}

// Worst takes in evidence on Worst nodes. The posterior itself is not changed, and
// must not be used by another goroutine at the same time. The error is
// [ErrNoSupport] or names what cannot be used.
func (post *NestedPosterior) Worst(w Worst) (*WorstPosterior, error) {
	return post.WorstAfter(w, nil, nil)
}

// WorstAfter is Worst that takes what the members of a group say from an earlier
// posterior where same(g) holds: the caller vouches for the same nodes with the same
// likelihoods, and for the group as [Nested.ConditionAfter] wants it, members
// included. It gives the same bits as Worst.
func (post *NestedPosterior) WorstAfter(w Worst, earlier *WorstPosterior, same func(g int) bool) (*WorstPosterior, error) {
	if err := post.check(w); err != nil {
		return nil, err
	}
	out := &WorstPosterior{NestedPosterior: post, worst: w}
	out.components()
	out.layOut()
	for g := range out.groups {
		if earlier != nil && same(g) {
			out.groups[g].takeOver(&earlier.groups[g])
		}
		out.upward(g)
	}
	out.weighRoot()
	if !(out.expected > 0) {
		return nil, ErrNoSupport
	}
	return out, nil
}

func (post *NestedPosterior) check(w Worst) error {
	complain := func(what string, n int, expected string) error {
		return errors.New("worst " + what + " " + strconv.Itoa(n) + ": expected " + expected)
	}
	if len(w.Within) != len(w.Likely) {
		return errors.New("worst: expected for each node the group that it is within, or -1")
	}
	wide, within := 0, make([]int, len(post.groups))
	for n, l := range w.Likely {
		if len(l) != w.Levels || w.Levels < 1 {
			return complain("node", n, "one likelihood for each level")
		}
		if !(slices.Min(l) > 0) || !usable(slices.Max(l)) || slices.Max(l) > widestLikely*slices.Min(l) {
			return complain("node", n, "likelihoods above 0 and within six powers of ten")
		}
		if w.Within[n] >= len(post.groups) {
			return complain("node", n, "a group of the network")
		}
		if w.Within[n] < 0 {
			wide++
		} else {
			within[w.Within[n]]++
		}
		if wide > MostWorst || w.Within[n] >= 0 && within[w.Within[n]] > MostWorstWithin {
			return complain("node", n, "at most "+strconv.Itoa(MostWorst)+", and "+strconv.Itoa(MostWorstWithin)+" within each group")
		}
	}
	for n, m := range w.Members {
		ok := m.Group >= 0 && m.Group < len(post.groups) && m.Pocket >= 0 && m.Pocket < len(post.groups[m.Group].pockets) && len(m.Nodes) > 0
		for i, s := range m.Nodes {
			ok = ok && s >= 0 && s < len(w.Likely) && (i == 0 || s > m.Nodes[i-1]) && (w.Within[s] < 0 || w.Within[s] == m.Group)
		}
		if !ok {
			return complain("member", n, "a pocket of the network, and nodes in ascending order that reach there")
		}
	}
	return nil
}

// Root returns the posterior of the root states; it adds to 1. Read only.
func (post *WorstPosterior) Root() []float64 { return post.root }

// LogEvidence is that of all evidence, the likelihoods of the Worst nodes taken
// as they stand.
func (post *WorstPosterior) LogEvidence() float64 {
	return post.NestedPosterior.LogEvidence() + widen(post.expected).log()
}
