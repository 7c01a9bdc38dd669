package network

import (
	"errors"
	"slices"
	"strconv"
)

// Evidence on the worst of several leaves. A max node is the highest level
// among its members, and something seen of it has a likelihood L by level. With
//
//	L(max) = Σ_k c(k)·[all members ≤ k],   c(k) = L(k) − L(k+1),  c(last) = L(last)
//
// and the members independent given the shared nodes, every sum factorises again:
// a component is one k for each max node, and a member only has to say how
// likely it is to stay within it. (The same identity lies behind the exact
// treatment of noisy-max nodes: F. J. Díez and S. F. Galán, Int. J. Intelligent
// Systems 18, 2003, from memory.)
//
// The components are taken in the posterior without the max nodes, so that each
// is a probability, and their signed sum is the expected likelihood: it lies
// between the least and the greatest L, and the signs cost no digits that matter
// as long as these are not many powers of ten apart.

// CDFLeaf is a leaf, or several of one pocket taken together, that can say how
// likely it is to stay within limits given everything seen of it alone. AtMost
// writes for every level q of the pocket, at root state r and group level p, the
// chance of staying within each combination of limits on the nodes that it counts
// in: dst[q·n + j], with j row-major in the order of the nodes. Each is a chance
// and never falls where a limit rises; at the last level of all it is 1. It must
// give the same answer each time.
type CDFLeaf interface {
	AtMost(r, p int, dst []float64)
}

// CDFSums knows what a CDFLeaf comes to over the levels of its pocket without
// asking level by level. Ratios writes for the root states that are wanted, and every
// level p of the group, the expected chance of staying within each combination of
// limits: dst[(r·levels + p)·n + j], as closely as its owner promises. It may decline
// by returning false, and is asked level by level then.
type CDFSums interface {
	Ratios(levels int, wanted func(r int) bool, dst []float64) bool
}

// Member says in which max nodes a CDFLeaf counts. Sums is nil, or knows its sums; it
// is asked where the member is the only one of its pocket.
type Member struct {
	Group, Pocket int
	Nodes         []int // ascending indices of max nodes, at least one
	Leaf          CDFLeaf
	Sums          CDFSums
}

// MaxEvidence is what was seen of max nodes, by level, and their members. Levels is the
// number of levels of every member. A node all of whose members are in one group
// may be declared to be within it: its components are then summed there and cost
// the other groups nothing.
type MaxEvidence struct {
	Levels  int
	Likely  [][]float64 // [node][level], positive
	Within  []int       // by node: the group that holds all its members, −1 = none does
	Members []Member
}

// How many max nodes can be taken together; their components multiply.
const (
	MostMaxNodes       = 3 // that reach over several groups
	MostMaxNodesWithin = 2 // within each group, beside those
)

// widestLikely is how many times the least likelihood of a max node the
// greatest may be: up to here sums of signed components keep ten digits.
const widestLikely = 1e6

// MaxPosterior is a NestedPosterior with evidence on max nodes taken in. One
// goroutine at a time may use it.
type MaxPosterior struct {
	*NestedPosterior
	seen       MaxEvidence
	crossGroup []int     // nodes that reach over several groups
	coef       []float64 // by component of those
	least      float64   // weight below which a state is passed over
	// Chance of a group's level given the root below which it is passed over.
	leastGiven float64
	groups     []maxGroup // by group
	root       []float64
	rootCum    []float64
	expected   float64 // Σ root × expected likelihood
	scratch    maxScratch
}

// maxGroup is what the members in one group say. Its components have a level for
// each of the cross-group nodes and for each node within the group.
type maxGroup struct {
	pockets    []maxPocket
	nodes      []int     // those of several groups first
	coef       []float64 // by its components: coefficient of the nodes within the group
	crossGroup []int     // by its components: component of the cross-group nodes
	byRoot     []float64 // [root·cross-group components + c] expected chance of staying within; nil = nothing counts here
	done       []bool    // by root state: worked out
}

// maxPocket is what the members in one pocket say. Only the nodes that they
// count in matter to it: its local components.
type maxPocket struct {
	members []int
	size    int       // how many local components; 1 without members
	local   []int     // by component of the group: local component
	own     [][]int   // [member of the pocket][local component] combination of its own
	ratio   []float64 // [(root·levels + p)·size + local component]
	done    []bool    // [root·levels + p] worked out
	firstAt int       // number of its first row among those of the group
	kept    *rowCache // chances of staying within, [q·size + local component]
}

// ConditionMax takes in evidence on max nodes. The posterior itself is not changed, and
// must not be used by another goroutine at the same time. The error is
// [ErrNoSupport] or names what cannot be used.
func (post *NestedPosterior) ConditionMax(w MaxEvidence) (*MaxPosterior, error) {
	return post.ConditionMaxAfter(w, nil, nil, nil)
}

// ConditionMaxAfter is ConditionMax that takes what the members of a group say from an earlier
// posterior where same(g) holds: the caller vouches for the same nodes with the same
// likelihoods, and for the group as [Nested.ConditionAfter] wants it, members
// included. Of other groups it takes what the members of the k-th pocket say where
// samePocket(g, k) holds: the caller vouches for the weights and leaves of the pocket,
// and for its members. It gives the same bits as ConditionMax.
func (post *NestedPosterior) ConditionMaxAfter(w MaxEvidence, earlier *MaxPosterior, same func(g int) bool, samePocket func(g, k int) bool) (*MaxPosterior, error) {
	if err := post.check(w); err != nil {
		return nil, err
	}
	out := &MaxPosterior{NestedPosterior: post, seen: w}
	out.components()
	out.layOut()
	for g := range out.groups {
		switch {
		case earlier == nil:
		case same(g):
			out.groups[g].takeOver(&earlier.groups[g])
		default:
			for k := range out.groups[g].pockets {
				if samePocket(g, k) {
					out.groups[g].pockets[k].takeOver(&earlier.groups[g].pockets[k])
				}
			}
		}
		out.upward(g)
	}
	out.weighRoot()
	if !(out.expected > 0) {
		return nil, ErrNoSupport
	}
	return out, nil
}

// takeOver takes what the same group said in an earlier posterior.
func (group *maxGroup) takeOver(earlier *maxGroup) {
	group.byRoot, group.done = earlier.byRoot, earlier.done
	for k := range group.pockets {
		group.pockets[k].takeOver(&earlier.pockets[k])
		group.pockets[k].kept = earlier.pockets[k].kept
	}
}

// takeOver takes what the members of the same pocket said in an earlier posterior.
func (pocket *maxPocket) takeOver(earlier *maxPocket) {
	pocket.ratio, pocket.done = earlier.ratio, earlier.done
}

func (post *NestedPosterior) check(w MaxEvidence) error {
	complain := func(what string, n int, expected string) error {
		return errors.New("worst " + what + " " + strconv.Itoa(n) + ": expected " + expected)
	}
	if len(w.Within) != len(w.Likely) {
		return errors.New("worst: expected for each node the group that it is within, or -1")
	}
	crossGroup, within := 0, make([]int, len(post.groups))
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
			crossGroup++
		} else {
			within[w.Within[n]]++
		}
		if crossGroup > MostMaxNodes || w.Within[n] >= 0 && within[w.Within[n]] > MostMaxNodesWithin {
			return complain("node", n, "at most "+strconv.Itoa(MostMaxNodes)+", and "+strconv.Itoa(MostMaxNodesWithin)+" within each group")
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
func (post *MaxPosterior) Root() []float64 { return post.root }

// LogEvidence is that of all evidence, the likelihoods of the max nodes taken
// as they stand.
func (post *MaxPosterior) LogEvidence() float64 {
	return post.NestedPosterior.LogEvidence() + toExt(post.expected).log()
}
