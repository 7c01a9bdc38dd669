package network

import (
	"errors"
	"strconv"
)

// ErrNoSupport says that the evidence has probability zero: not all of it can be
// true. Evidence that is only very improbable has a posterior like any other.
var ErrNoSupport = errors.New("the evidence has no support: not all of it can be true")

// Leaf carries the evidence on one node under a pocket. Multiply multiplies its
// likelihood at every level q of the pocket into dst, for root state r and level
// p of the group. It must be a pure function; likelihoods are finite and not
// negative, and only their ratios matter to the posterior.
type Leaf interface {
	Multiply(r, p int, dst []float64)
}

// BatchLeaf is a Leaf that shares work between root states that follow each other.
// MultiplyBatch does for the states r to r+states−1 what Multiply does for one, to the
// same bits: dst has the levels of the first state, then those of the next.
type BatchLeaf interface {
	Leaf
	MultiplyBatch(r, states, p int, dst []float64)
}

// Summed knows what pockets of a group say without asking their leaves level by level.
// LogSums writes to dst[r·levels + p], for every root state r and each of the levels p
// of the group, the natural logarithm of their messages multiplied: of each pocket the
// sum over its levels q of weight × likelihoods of the leaves. The weights count as
// adding to 1. It agrees with the leaves as closely as its owner promises.
type Summed interface {
	LogSums(levels int, dst []float64)
}

// Pocket is a node whose levels have prior Weights, with the leaves under it
// that carry evidence. Leaves without evidence send no message and are left out.
// Summed says that the Sums of its group speak for it.
//
// Where leaves depend on two nodes at once, both are one pocket, with Inner the
// number of levels of the second: level q of the pocket is level q ÷ Inner of the
// first and the remainder of the second. Inner is 0 for a single node.
type Pocket struct {
	Weights []float64
	Inner   int
	Leaves  []Leaf
	Summed  bool
}

// Group is a node whose levels have prior Weights, with its pockets. Sums knows what
// those of them say that are Summed, at less cost; nil where none is.
type Group struct {
	Weights []float64
	Pockets []Pocket
	Sums    Summed
}

// Nested is a network of three storeys under one root: given the root state the
// groups are independent, given a group's level its pockets are, and given a
// pocket's level its leaves are. The Weights of groups and pockets count in
// proportion. Root holds prior weight × likelihood of each root state and counts
// as it stands: its scale enters the evidence. Batch is how many root states in a row
// [BatchLeaf] leaves are asked about at once; 0 is 1.
type Nested struct {
	Root   []float64
	Batch  int
	Groups []Group
}

// NestedPosterior is a Nested conditioned on the evidence of its leaves. It calls
// the leaves again when asked for rows, so they must not change; and it keeps
// rows and scratch space, so one goroutine at a time may use it.
type NestedPosterior struct {
	evidence extFloat
	root     []float64 // posterior, adds to 1
	rootCum  []float64
	groups   []groupPosterior
	scratch  scratch
	batches  batches // for as many root states as are passed up at once
}

// groupPosterior is one group after the upward pass.
type groupPosterior struct {
	prior   []float64  // of its levels, adds to 1
	cum     *ladder    // its running sums
	given   []float64  // [root × levels + p] posterior of the levels given the root; nil = no evidence
	says    []extFloat // by root state: the group's message; nil = no evidence
	pockets []pocketPosterior
	sums    Summed // what those of them say that are summed; nil where none is
}

// pocketPosterior is one pocket; its posterior rows are worked out when asked for.
type pocketPosterior struct {
	prior       []float64 // of its levels, adds to 1
	cum         *ladder   // its running sums; nil where there is evidence or a second node
	inner       int       // levels of the second node, 0 = there is one
	leaves      []Leaf
	batchLeaves []BatchLeaf // by leaf; nil where it is none
	summed      bool
	firstAt     int // number of its first row among all rows of the group
	rows        *rowCache
}

// Condition passes the evidence of all leaves up to the root. Each leaf is asked
// once for every group level and every root state that the prior leaves possible,
// and about those in the same batch with one; groups and pockets without leaves cost
// nothing. The error is [ErrNoSupport], or names the weights or the leaf that cannot
// be used.
func (n Nested) Condition() (*NestedPosterior, error) { return n.ConditionAfter(nil, nil) }

// ConditionAfter is Condition that takes what a group says from an earlier posterior
// where same(g) holds: the caller vouches that the group has the same weights, its
// leaves the same likelihoods, and the root the same possible states. It gives the
// same bits as Condition.
func (n Nested) ConditionAfter(earlier *NestedPosterior, same func(g int) bool) (*NestedPosterior, error) {
	post, err := n.prepare()
	if err != nil {
		return nil, err
	}
	upward := make([]extFloat, len(n.Root))
	for r, w := range n.Root {
		upward[r] = toExt(w)
	}
	for g := range post.groups {
		group := &post.groups[g]
		if earlier != nil && same(g) {
			group.takeOver(&earlier.groups[g])
		} else if k, leaf := post.pass(g, n.Root); leaf >= 0 {
			return nil, unusable(g, k, ", leaf "+strconv.Itoa(leaf)+": expected likelihoods that are finite and not negative")
		}
		for r, v := range group.says {
			upward[r] = upward[r].times(v)
		}
	}
	for _, v := range upward {
		post.evidence = post.evidence.plus(v)
	}
	if post.evidence.zero() {
		return nil, ErrNoSupport
	}
	post.root = make([]float64, len(upward))
	for r, v := range upward {
		post.root[r] = v.over(post.evidence)
	}
	post.rootCum = cumulative(post.root)
	return post, nil
}

// takeOver takes what the same group said in an earlier posterior, with the rows worked
// out so far.
func (group *groupPosterior) takeOver(earlier *groupPosterior) {
	group.given, group.says = earlier.given, earlier.says
	for k := range group.pockets {
		group.pockets[k].rows = earlier.pockets[k].rows
	}
}

// prepare checks the weights and lays out the posterior.
func (n Nested) prepare() (*NestedPosterior, error) {
	if len(n.Root) == 0 {
		return nil, errors.New("root: expected at least one state")
	}
	for r, w := range n.Root {
		if !usable(w) {
			return nil, errors.New("root state " + strconv.Itoa(r) + ": expected a weight that is finite and not negative")
		}
	}
	post := &NestedPosterior{groups: make([]groupPosterior, len(n.Groups))}
	widest := 0
	for g, group := range n.Groups {
		to, ok, rows := &post.groups[g], false, 0
		var caches []*rowCache
		if to.prior, ok = normalised(group.Weights); !ok {
			return nil, unusable(g, -1, weightsWanted)
		}
		to.cum, to.sums = newLadder(to.prior), group.Sums
		to.pockets = make([]pocketPosterior, len(group.Pockets))
		for k, pocket := range group.Pockets {
			one := pocketPosterior{inner: pocket.Inner, leaves: pocket.Leaves, summed: pocket.Summed && group.Sums != nil, firstAt: rows}
			if one.prior, ok = normalised(pocket.Weights); !ok {
				return nil, unusable(g, k, weightsWanted)
			}
			if one.inner < 0 || one.inner > 0 && len(one.prior)%one.inner != 0 {
				return nil, unusable(g, k, ": expected a weight for each pair of levels of its two nodes")
			}
			for _, leaf := range pocket.Leaves {
				batched, _ := leaf.(BatchLeaf)
				one.batchLeaves = append(one.batchLeaves, batched)
			}
			if len(pocket.Leaves) > 0 {
				rows += len(n.Root) * len(group.Weights)
				widest = max(widest, len(pocket.Weights))
				caches, one.rows = cacheOf(caches, len(pocket.Weights))
			} else if pocket.Inner == 0 {
				one.cum = newLadder(one.prior)
			}
			to.pockets[k] = one
		}
	}
	post.scratch = newScratch(widest)
	post.batches = newBatches(widest, max(1, n.Batch))
	return post, nil
}

// cacheOf finds the cache for rows of the given width, or adds it.
func cacheOf(caches []*rowCache, width int) ([]*rowCache, *rowCache) {
	for _, c := range caches {
		if c.width == width {
			return caches, c
		}
	}
	c := &rowCache{width: width, most: slotsOf(width)}
	return append(caches, c), c
}

const weightsWanted = ": expected weights that are finite, not negative and not all zero"

// unusable names a group, and a pocket of it unless k is negative.
func unusable(g, k int, what string) error {
	place := "group " + strconv.Itoa(g)
	if k >= 0 {
		place += ", pocket " + strconv.Itoa(k)
	}
	return errors.New(place + what)
}

// LogEvidence is the natural logarithm of the sum over all joint states of
// Root × weights × likelihoods, the weights of groups and pockets adding to 1.
func (post *NestedPosterior) LogEvidence() float64 { return post.evidence.log() }

// Root returns the posterior of the root states; it adds to 1. Read only.
func (post *NestedPosterior) Root() []float64 { return post.root }
