package network

import (
	"errors"
	"slices"
	"strconv"
)

// Evidence on the worst of several leaves. A max node is the highest level among its
// members, and evidence on it is a likelihood L for each level. Since
//
//	L(max) = Σ_k c(k)·[all members ≤ k],   c(k) = L(k) − L(k+1),  c(last) = L(last)
//
// and the members are independent given the shared nodes, every sum factorises again.
// A component picks one limit k for each max node, and a member only has to give the
// probability that it stays within those limits. (The same identity underlies the exact
// treatment of noisy-max nodes: F. J. Díez and S. F. Galán, Int. J. Intelligent
// Systems 18, 2003, from memory.)
//
// The components are computed in the posterior without the max nodes, so each is a
// probability. Their signed sum is the expected likelihood, which lies between the
// least and the greatest L. The cancellation costs no digits that matter as long as
// those two are not many powers of ten apart.

// CDFLeaf is a leaf, or several leaves of one pocket taken together, that knows the
// probability that it stays within limits, given all evidence on it alone. AtMost
// writes, for every level q of the pocket at root state r and group level p, the
// probability of staying within each combination of limits on the leaf's max nodes:
// dst[q·n + j], with j row-major in the order of the nodes. A value never falls as a
// limit rises, and is 1 where every limit is the last level. AtMost must be a pure
// function.
type CDFLeaf interface {
	AtMost(r, p int, dst []float64)
}

// CDFSums knows the expectation of a CDFLeaf over the levels of its pocket without
// asking the leaf level by level. Ratios writes, for each root state r that wanted
// accepts and every level p of the group, the expected probability of staying within
// each combination of limits: dst[(r·levels + p)·n + j], to the accuracy its
// implementation promises. If it returns false, the leaf is asked level by level.
type CDFSums interface {
	Ratios(levels int, wanted func(r int) bool, dst []float64) bool
}

// Member names the max nodes that a CDFLeaf counts in. Sums may be nil; it is used only
// where the member is the only one in its pocket.
type Member struct {
	Group, Pocket int
	Nodes         []int // ascending indices of max nodes, at least one
	Leaf          CDFLeaf
	Sums          CDFSums
}

// MaxEvidence is the evidence on max nodes, by level, with their members. Every member
// has Levels levels. A node whose members are all in one group may be declared to be
// within that group. Its components are then summed there and cost the other groups
// nothing.
type MaxEvidence struct {
	Levels  int
	Likely  [][]float64 // [node][level], positive
	Within  []int       // by node: the group that holds all its members; −1 = no single group
	Members []Member
}

// Limits on the number of max nodes, because the number of components is exponential
// in it.
const (
	MostMaxNodes       = 3 // across groups
	MostMaxNodesWithin = 2 // within each group, in addition to those
)

// widestLikely is the largest allowed ratio of the greatest to the least likelihood of
// a max node. Up to this ratio, sums of signed components keep ten digits.
const widestLikely = 1e6

// MaxPosterior is a NestedPosterior that is also conditioned on max nodes. Only one
// goroutine at a time may use it.
type MaxPosterior struct {
	*NestedPosterior
	seen       MaxEvidence
	crossGroup []int      // nodes whose members are in several groups
	coef       []float64  // by component of those
	least      float64    // states with a smaller weight are skipped
	leastGiven float64    // group levels with a smaller chance given the root are skipped
	groups     []maxGroup // by group
	root       []float64
	rootCum    []float64
	expected   float64 // Σ root × expected likelihood
	scratch    maxScratch
}

// maxGroup is the message of the members in one group. Each of its components has a
// level for each cross-group node and for each node within the group.
type maxGroup struct {
	pockets    []maxPocket
	nodes      []int     // cross-group nodes first
	coef       []float64 // by component of the group: coefficient of the nodes within the group
	crossGroup []int     // by component of the group: component of the cross-group nodes
	byRoot     []float64 // [root·cross-group components + c] expected chance of staying within; nil = no max node counts here
	done       []bool    // by root state: byRoot is filled in
}

// maxPocket is the message of the members in one pocket. Its local components cover
// only the nodes that those members count in.
type maxPocket struct {
	members []int
	size    int       // number of local components; 1 without members
	local   []int     // by component of the group: local component
	own     [][]int   // [member of the pocket][local component] combination of the member's own nodes
	ratio   []float64 // [(root·levels + p)·size + local component]
	done    []bool    // [root·levels + p] ratio is filled in
	firstAt int       // number of its first row among the rows of the group
	kept    *rowCache // chances of staying within, [q·size + local component]
}

// ConditionMax conditions on max nodes as well. It does not change the posterior itself,
// which no other goroutine may use at the same time. The error is [ErrNoSupport] or
// names the node or member that cannot be used.
func (post *NestedPosterior) ConditionMax(w MaxEvidence) (*MaxPosterior, error) {
	return post.ConditionMaxAfter(w, nil, nil, nil)
}

// ConditionMaxAfter is ConditionMax, but where same(g) holds it reuses the message of
// group g's members from an earlier posterior. The caller guarantees that the nodes and
// their likelihoods are the same, and that the group and its members are the same in
// the sense of [Nested.ConditionAfter]. In other groups it reuses the message of the
// members of the k-th pocket where samePocket(g, k) holds. For those the caller
// guarantees the same weights and leaves of the pocket and the same members. The result
// has the same bits as that of ConditionMax.
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

// takeOver reuses the message of the same group in an earlier posterior.
func (group *maxGroup) takeOver(earlier *maxGroup) {
	group.byRoot, group.done = earlier.byRoot, earlier.done
	for k := range group.pockets {
		group.pockets[k].takeOver(&earlier.pockets[k])
		group.pockets[k].kept = earlier.pockets[k].kept
	}
}

// takeOver reuses the message of the members of the same pocket in an earlier posterior.
func (pocket *maxPocket) takeOver(earlier *maxPocket) {
	pocket.ratio, pocket.done = earlier.ratio, earlier.done
}

func (post *NestedPosterior) check(w MaxEvidence) error {
	complain := func(what string, n int, expected string) error {
		return errors.New("worst " + what + " " + strconv.Itoa(n) + ": expected " + expected)
	}
	if len(w.Within) != len(w.Likely) {
		return errors.New("worst: expected, for each node, the group that it is within, or -1")
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
			return complain("member", n, "a pocket of the network, and nodes in ascending order that may have members there")
		}
	}
	return nil
}

// Root returns the posterior of the root states; it adds to 1. Read only.
func (post *MaxPosterior) Root() []float64 { return post.root }

// LogEvidence is the natural logarithm of the evidence including the max nodes, whose
// likelihoods are not rescaled.
func (post *MaxPosterior) LogEvidence() float64 {
	return post.NestedPosterior.LogEvidence() + toExt(post.expected).log()
}
