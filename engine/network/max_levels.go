package network

import "math"

// Levels visits the posterior joint weight of root state r, level p of group g
// and level q of the k-th pocket of that group, as [NestedPosterior.Levels] does.
// For each member in that pocket, in the order given, byMember holds one weight for
// each combination of the member's levels in its nodes. Multiplied by the chance of
// that combination given the evidence on the member alone, it is the joint weight.
// visit must not use the posterior or keep byMember.
func (post *MaxPosterior) Levels(g, k int, visit func(r, p, q int, weight float64, byMember [][]float64)) {
	pocket, rest := &post.groups[g].pockets[k], post.newRest(g, k)
	around := make([]float64, pocket.size)
	for r, atRoot := range post.NestedPosterior.root {
		if !post.counts(atRoot) {
			continue
		}
		for p, given := range post.NestedPosterior.groups[g].levels(r) {
			if !post.counts(atRoot*given) || !post.countsGiven(given) {
				continue
			}
			post.around(g, k, r, p, around)
			row := post.rowOf(g, k, r, p)
			post.memberRows(pocket, r, p, rest)
			above := atRoot * given / post.expected
			for q, w := range row {
				weight := rest.at(post, pocket, q, around, float64(above*w))
				visit(r, p, q, weight, rest.weights)
			}
		}
	}
}

// restOfPocket computes, for each member of a pocket in turn, the message of all the
// others.
type restOfPocket struct {
	said    [][]float64 // [member][q·own size + combination] chance of staying within
	size    []int       // by member: number of its own combinations
	dims    []int       // by member: number of its nodes
	before  [][]float64 // [member][local component] product over the members before it
	after   []float64   // product over the members after it
	weights [][]float64 // [member][own combination]
}

func (post *MaxPosterior) newRest(g, k int) *restOfPocket {
	pocket, levels := &post.groups[g].pockets[k], len(post.NestedPosterior.groups[g].pockets[k].prior)
	rest := &restOfPocket{after: make([]float64, pocket.size), before: [][]float64{make([]float64, pocket.size)}}
	for c := range rest.before[0] {
		rest.before[0][c] = 1
	}
	for _, m := range pocket.members {
		dims := len(post.seen.Members[m].Nodes)
		size := power(post.seen.Levels, dims)
		rest.dims, rest.size = append(rest.dims, dims), append(rest.size, size)
		rest.said = append(rest.said, make([]float64, levels*size))
		rest.before = append(rest.before, make([]float64, pocket.size))
		rest.weights = append(rest.weights, make([]float64, size))
	}
	return rest
}

// memberRows fills rest.said by asking every member of the pocket.
func (post *MaxPosterior) memberRows(pocket *maxPocket, r, p int, rest *restOfPocket) {
	for n, m := range pocket.members {
		post.seen.Members[m].Leaf.AtMost(r, p, rest.said[n])
	}
}

// at works out the weights at level q of the pocket. It returns the weight of the level
// itself and writes those of each member to rest.weights.
func (rest *restOfPocket) at(post *MaxPosterior, pocket *maxPocket, q int, around []float64, weight float64) float64 {
	for n, own := range pocket.own {
		said, before, next := rest.said[n][q*rest.size[n]:(q+1)*rest.size[n]], rest.before[n], rest.before[n+1]
		for c, j := range own {
			next[c] = before[c] * said[j]
		}
	}
	copy(rest.after, around)
	total := 0.0
	for c, v := range rest.before[len(pocket.own)] {
		total += float64(v * around[c])
	}
	for n := len(pocket.own) - 1; n >= 0; n-- {
		said, before, own, out := rest.said[n][q*rest.size[n]:], rest.before[n], pocket.own[n], rest.weights[n]
		clear(out)
		for c, j := range own {
			out[j] += float64(rest.after[c] * before[c])
			rest.after[c] *= said[j]
		}
		tails(out, post.seen.Levels, rest.dims[n], weight)
	}
	return math.Max(0, float64(total*weight))
}

// around writes the message of everything outside a pocket, by the pocket's local
// components.
func (post *MaxPosterior) around(g, k, r, p int, dst []float64) {
	at, in := post.scratch.at, post.scratch.in[:len(post.groups[g].coef)]
	copy(at, post.coef)
	for h := range post.groups {
		if h != g {
			post.timesGroup(h, r, at)
		}
	}
	post.groups[g].spreadOut(at, in)
	post.timesPockets(g, k, r, p, in)
	post.groups[g].pockets[k].gather(in, dst)
}

// gather sums the components of a group into the local components of a pocket.
func (pocket *maxPocket) gather(from, dst []float64) {
	clear(dst)
	for c, v := range from {
		dst[pocket.local[c]] += v
	}
}

// tails turns signed components, by combination of limits, into expectations times
// weight, by combination of levels. A level counts in every component whose limit is
// not below it.
func tails(v []float64, levels, dims int, weight float64) {
	step := 1
	for range dims {
		for i := len(v) - 1; i >= 0; i-- {
			if i/step%levels < levels-1 {
				v[i] += v[i+step]
			}
		}
		step *= levels
	}
	for i := range v {
		v[i] = math.Max(0, float64(v[i]*weight))
	}
}
