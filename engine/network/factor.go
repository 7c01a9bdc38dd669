package network

import "slices"

// factor is a table over the variables of its scope, row-major: the last variable of
// the scope varies fastest.
type factor struct {
	scope []int
	cells []extFloat
}

// product multiplies factors into one table over the variables of scope, which must
// include every variable of every factor.
func product(factors []factor, scope []int, levels func(variable int) int) factor {
	size := 1
	for _, v := range scope {
		size *= levels(v)
	}
	out := factor{scope: scope, cells: make([]extFloat, size)}
	for i := range out.cells {
		out.cells[i] = toExt(1)
	}
	for _, f := range factors {
		out.multiply(f, levels)
	}
	return out
}

// multiply multiplies g, whose scope is a subset of f's, into f. It walks f's cells in
// order, advancing the levels of f's scope like an odometer, and tracks the matching
// cell of g.
func (f *factor) multiply(g factor, levels func(variable int) int) {
	stride, size := make([]int, len(f.scope)), 1
	for i := len(g.scope) - 1; i >= 0; i-- {
		stride[slices.Index(f.scope, g.scope[i])] = size
		size *= levels(g.scope[i])
	}
	state, at := make([]int, len(f.scope)), 0
	for cell := range f.cells {
		f.cells[cell] = f.cells[cell].times(g.cells[at])
		for i := len(state) - 1; i >= 0; i-- {
			state[i]++
			at += stride[i]
			if state[i] < levels(f.scope[i]) {
				break
			}
			at -= state[i] * stride[i]
			state[i] = 0
		}
	}
}

// sumLast sums out the last variable of the scope, which has the given number of
// levels.
func (f factor) sumLast(levels int) factor {
	out := factor{scope: f.scope[:len(f.scope)-1], cells: make([]extFloat, len(f.cells)/levels)}
	for i := range out.cells {
		for _, v := range f.cells[i*levels : (i+1)*levels] {
			out.cells[i] = out.cells[i].plus(v)
		}
	}
	return out
}
