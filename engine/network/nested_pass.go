package network

// The upward pass on a tree (J. Pearl, "Probabilistic Reasoning in Intelligent
// Systems", 1988, chapter 4). A pocket's message is the sum over its levels of weight ×
// likelihoods of its leaves. A group's message is the sum over its levels of weight ×
// messages of its pockets. The root multiplies the messages of its groups.

// scratch is working space for one pocket's levels.
type scratch struct {
	level []float64 // one value per level
	ext   []extFloat
}

func newScratch(width int) scratch {
	return scratch{level: make([]float64, width), ext: make([]extFloat, width)}
}

// pass works out the message of group g to each root state with a positive prior, and
// the posterior of the group's levels given that state, a batch of root states at a
// time. If a leaf gives an unusable likelihood, pass stops and returns the pocket and
// the leaf; otherwise leaf is -1.
func (post *NestedPosterior) pass(g int, prior []float64) (pocket, leaf int) {
	group := &post.groups[g]
	if !group.evidence() {
		return 0, -1
	}
	levels := len(group.prior)
	rows := group.started(prior)
	if group.sums != nil {
		group.timesSums(rows, levels)
	}
	for k := range group.pockets {
		one := &group.pockets[k]
		if len(one.leaves) == 0 || one.summed {
			continue
		}
		if leaf := post.timesMessages(one, rows, levels); leaf >= 0 {
			return k, leaf
		}
	}
	group.given, group.says = make([]float64, len(rows)), make([]extFloat, len(prior))
	for r := range prior {
		group.says[r] = shares(rows[r*levels:(r+1)*levels], group.given[r*levels:(r+1)*levels])
	}
	return 0, -1
}

// started returns the weights of the group's levels for each root state, zero where the
// prior rules out the root state.
func (group *groupPosterior) started(prior []float64) (rows []extFloat) {
	rows = make([]extFloat, len(prior)*len(group.prior))
	for r, w := range prior {
		for p := range group.prior {
			if w > 0 {
				rows[r*len(group.prior)+p] = toExt(group.prior[p])
			}
		}
	}
	return rows
}

// timesSums multiplies in the messages of the summed pockets.
func (group *groupPosterior) timesSums(rows []extFloat, levels int) {
	sums := make([]float64, len(rows))
	group.sums.LogSums(levels, sums)
	for at, v := range sums {
		if !rows[at].zero() {
			rows[at] = rows[at].times(expExt(v))
		}
	}
}

// timesMessages multiplies in the message of a pocket, worked out leaf by leaf.
func (post *NestedPosterior) timesMessages(pocket *pocketPosterior, rows []extFloat, levels int) (leaf int) {
	roots, batch := len(rows)/levels, len(post.batches.v)
	for r := 0; r < roots; r += batch {
		v := post.batches.v[:min(batch, roots-r)]
		for p := range levels {
			for n := range v {
				v[n] = rows[(r+n)*levels+p]
			}
			if allZero(v) {
				continue
			}
			if leaf := pocket.messages(r, p, v, &post.batches, &post.scratch); leaf >= 0 {
				return leaf
			}
			for n := range v {
				rows[(r+n)*levels+p] = v[n]
			}
		}
	}
	return -1
}

// shares writes each value's share of the sum to dst and returns the sum. dst must be
// all zero.
func shares(values []extFloat, dst []float64) (sum extFloat) {
	for _, v := range values {
		sum = sum.plus(v)
	}
	if sum.zero() {
		return sum
	}
	for k, v := range values {
		dst[k] = v.over(sum)
	}
	return sum
}

func allZero(values []extFloat) bool {
	for _, v := range values {
		if !v.zero() {
			return false
		}
	}
	return true
}

func (group *groupPosterior) evidence() bool {
	for k := range group.pockets {
		if len(group.pockets[k].leaves) > 0 {
			return true
		}
	}
	return false
}

// While a product of float64s is between these bounds it has lost nothing to underflow,
// and multiplying by one more likelihood cannot go wrong unnoticed.
const (
	plainLow  = 0x1p-900
	plainHigh = 0x1p+900
)

// row writes the posterior of the pocket's levels given root state r and group level p
// to dst. It adds to 1, or is all zero if r and p are impossible.
func (pocket *pocketPosterior) row(r, p int, dst []float64, s *scratch) {
	if pocket.plain(r, p, dst) {
		total := 0.0
		for _, v := range dst {
			total += v
		}
		for q := range dst {
			dst[q] /= total
		}
		return
	}
	sum, _ := pocket.careful(r, p, s)
	for q := range dst {
		dst[q] = s.ext[q].over(sum)
	}
}

// plain writes weight × likelihoods to dst in ordinary float64s. It gives up and
// returns false as soon as a value is zero, out of bounds or not a number.
func (pocket *pocketPosterior) plain(r, p int, dst []float64) bool {
	var one [1]bool
	pocket.plainBatch(r, p, dst, one[:])
	return one[0]
}

// careful is plain for likelihoods of any size. It asks each leaf separately and
// multiplies in extended numbers. It leaves the products in s.ext and returns their
// sum, and the index of a leaf with an unusable likelihood, or -1.
func (pocket *pocketPosterior) careful(r, p int, s *scratch) (sum extFloat, leaf int) {
	level, product := s.level[:len(pocket.prior)], s.ext[:len(pocket.prior)]
	for q, w := range pocket.prior {
		product[q] = toExt(w)
	}
	for n, leaf := range pocket.leaves {
		for q := range level {
			level[q] = 1
		}
		leaf.Multiply(r, p, level)
		for q, v := range level {
			if !usable(v) {
				return extFloat{}, n
			}
			product[q] = product[q].times(toExt(v))
		}
	}
	for _, v := range product {
		sum = sum.plus(v)
	}
	return sum, -1
}
