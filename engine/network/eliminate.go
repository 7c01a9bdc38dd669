package network

import "slices"

// Variable elimination (N. L. Zhang & D. Poole, "A simple approach to Bayesian
// network computations", 1994; R. Dechter, "Bucket elimination", Artificial
// Intelligence 113, 1999): to sum out a variable, multiply only the tables that
// mention it and sum their product. Read in reverse, the products give the chances
// of each variable given those summed out after it, which is what exact sampling
// needs.

// order chooses the order in which to sum out all variables except those in keep. It
// always takes the variable whose product has the fewest cells, the earliest on a tie.
// The order depends only on the shape of the network, not on the evidence. ok is false
// if a product would have more than mostCells cells.
func (post *Posterior) order(keep []int) (order []int, ok bool) {
	scopes := make([][]int, len(post.factors))
	for i, f := range post.factors {
		scopes[i] = f.scope
	}
	var left []int
	for v := range post.variables {
		if !slices.Contains(keep, v) {
			left = append(left, v)
		}
	}
	ok = true
	for len(left) > 0 {
		best, fewest := 0, 0
		for i, v := range left {
			if n := post.size(union(scopes, v)); i == 0 || n < fewest {
				best, fewest = i, n
			}
		}
		ok = ok && fewest <= mostCells
		v := left[best]
		joined := union(scopes, v)
		scopes = slices.DeleteFunc(scopes, func(s []int) bool { return slices.Contains(s, v) })
		scopes = append(scopes, joined[:len(joined)-1])
		order, left = append(order, v), slices.Delete(left, best, best+1)
	}
	return order, ok
}

// union collects the variables of the scopes that mention v, in ascending order
// except that v itself comes last.
func union(scopes [][]int, v int) []int {
	var out []int
	for _, s := range scopes {
		if slices.Contains(s, v) {
			out = append(out, s...)
		}
	}
	slices.Sort(out)
	out = slices.DeleteFunc(slices.Compact(out), func(x int) bool { return x == v })
	return append(out, v)
}

// size is the number of cells in a table over scope, capped at mostCells + 1.
func (post *Posterior) size(scope []int) int {
	cells := 1
	for _, v := range scope {
		if cells *= post.variables[v].levels; cells > mostCells {
			return mostCells + 1
		}
	}
	return cells
}

// sumOut sums the variables of order out of the factors and returns the remaining
// tables. It calls keep with each product, whose scope ends with the variable that is
// summed out of it.
func (post *Posterior) sumOut(order []int, keep func(factor)) []factor {
	left := slices.Clone(post.factors)
	for _, v := range order {
		var mention, rest []factor
		var scopes [][]int
		for _, f := range left {
			if slices.Contains(f.scope, v) {
				mention, scopes = append(mention, f), append(scopes, f.scope)
			} else {
				rest = append(rest, f)
			}
		}
		joined := product(mention, union(scopes, v), post.levels)
		keep(joined)
		left = append(rest, joined.sumLast(post.variables[v].levels))
	}
	return left
}

// eliminate sums out every variable, keeps the rows that sampling needs, and returns
// the probability of the evidence.
func (post *Posterior) eliminate(order []int) extFloat {
	left := post.sumOut(order, func(f factor) {
		post.steps = append(post.steps, post.step(f))
	})
	return product(left, nil, post.levels).cells[0]
}

// step is the chance of one variable given those that are summed out after it.
type step struct {
	scope []int     // the variable itself comes last
	row   []float64 // each row adds to 1, or is all zero where it is impossible
}

func (post *Posterior) step(f factor) step {
	levels := post.levels(f.scope[len(f.scope)-1])
	out := step{scope: f.scope, row: make([]float64, len(f.cells))}
	for at := 0; at < len(f.cells); at += levels {
		var sum extFloat
		for _, v := range f.cells[at : at+levels] {
			sum = sum.plus(v)
		}
		for i, v := range f.cells[at : at+levels] {
			out.row[at+i] = v.over(sum)
		}
	}
	return out
}
