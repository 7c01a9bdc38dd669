package network

import (
	"errors"
	"strconv"
)

// ErrNoSupport means that the evidence has probability zero: not all of it can be
// true. Evidence that is merely very improbable has a posterior like any other.
var ErrNoSupport = errors.New("the evidence has no support: not all of it can be true")

// Leaf carries the evidence on one node below a pocket. Multiply multiplies the
// likelihood of that evidence at every level q of the pocket into dst, for root state
// r and level p of the group. It must be a pure function. Likelihoods are finite and
// not negative, and only their ratios matter to the posterior.
type Leaf interface {
	Multiply(r, p int, dst []float64)
}

// BatchLeaf is a Leaf that shares work between consecutive root states. MultiplyBatch
// does for the states r to r+states−1 what Multiply does for one, with the same bits.
// dst holds the levels of the first state, then those of the next.
type BatchLeaf interface {
	Leaf
	MultiplyBatch(r, states, p int, dst []float64)
}

// Summed knows the messages of pockets of a group without asking their leaves level by
// level. LogSums writes to dst[r·levels + p], for every root state r and each level p of
// the group, the natural logarithm of the product of those messages, each the sum over
// the pocket's levels q of weight × likelihoods of its leaves. The weights are normalised
// to add to 1. LogSums agrees with the leaves to the accuracy its implementation
// promises.
type Summed interface {
	LogSums(levels int, dst []float64)
}

// Pocket is a node whose levels have prior Weights, with those leaves below it that
// carry evidence. Leaves without evidence send no message and are left out. Summed means
// that the Sums of its group include its message.
//
// Where leaves depend on two nodes at once, the two nodes form one pocket, and Inner is
// the number of levels of the second. Level q of the pocket is then level q ÷ Inner of
// the first node and level q mod Inner of the second. Inner is 0 for a single node.
type Pocket struct {
	Weights []float64
	Inner   int
	Leaves  []Leaf
	Summed  bool
}

// Group is a node whose levels have prior Weights, with its pockets. Sums gives the
// messages of the pockets that are Summed at less cost; nil if there are none.
type Group struct {
	Weights []float64
	Pockets []Pocket
	Sums    Summed
}

// Nested is a network of three layers below one root. Given the root state the groups
// are independent; given a group's level its pockets are independent; given a pocket's
// level its leaves are independent. The Weights of groups and pockets are normalised.
// Root holds prior weight × likelihood of each root state and is not normalised: its
// scale enters the evidence. Batch is the number of consecutive root states that a
// [BatchLeaf] is asked about at once; 0 means 1.
type Nested struct {
	Root   []float64
	Batch  int
	Groups []Group
}

// NestedPosterior is a Nested conditioned on the evidence of its leaves. It calls the
// leaves again when it needs rows, so they must not change. It keeps rows and scratch
// space, so only one goroutine at a time may use it.
type NestedPosterior struct {
	evidence extFloat
	root     []float64 // posterior, adds to 1
	rootCum  []float64
	groups   []groupPosterior
	scratch  scratch
	batches  batches // working space for the root states of one batch
}

// groupPosterior is one group after the upward pass.
type groupPosterior struct {
	prior   []float64  // of its levels, adds to 1
	cum     *ladder    // its running sums
	given   []float64  // [root × levels + p] posterior of the levels given the root; nil = no evidence
	says    []extFloat // by root state: the group's message; nil = no evidence
	pockets []pocketPosterior
	sums    Summed // product of the messages of the summed pockets; nil if none is summed
}

// pocketPosterior is one pocket. Its posterior rows are worked out on demand.
type pocketPosterior struct {
	prior       []float64 // of its levels, adds to 1
	cum         *ladder   // its running sums; nil where there is evidence or a second node
	inner       int       // levels of the second node; 0 = single node
	leaves      []Leaf
	batchLeaves []BatchLeaf // by leaf; nil where it is not a BatchLeaf
	summed      bool
	firstAt     int // number of its first row among all rows of the group
	rows        *rowCache
}

// Condition passes the evidence of all leaves up to the root. It asks each leaf once
// for every group level and every root state with a positive prior; a [BatchLeaf] is
// also asked about the other states of the same batch. Groups and pockets without
// leaves cost nothing. The error is [ErrNoSupport], or names the weights or the leaf
// that cannot be used.
func (n Nested) Condition() (*NestedPosterior, error) { return n.ConditionAfter(nil, nil) }

// ConditionAfter is Condition, but where same(g) holds it reuses the message of group g
// from an earlier posterior. The caller guarantees that the group has the same weights,
// its leaves the same likelihoods, and the root the same possible states. The result
// has the same bits as that of Condition.
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

// takeOver reuses the message of the same group in an earlier posterior, and the rows
// worked out so far.
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

// LogEvidence is the natural logarithm of the sum over all joint states of Root ×
// weights × likelihoods, where the weights of each group and pocket add to 1.
func (post *NestedPosterior) LogEvidence() float64 { return post.evidence.log() }

// Root returns the posterior of the root states; it adds to 1. Read only.
func (post *NestedPosterior) Root() []float64 { return post.root }
