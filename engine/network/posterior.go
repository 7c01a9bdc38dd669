package network

import (
	"slices"
	"strconv"

	"underpaint/engine/chance"
)

// Posterior is a Net conditioned on evidence. Only one goroutine at a time may sample.
type Posterior struct {
	variables []variable
	index     map[string]int
	factors   []factor // table × likelihood of each variable
	evidence  extFloat
	steps     []step // by order of elimination

	state   []int // scratch of Sample
	uniform []float64
}

func (post *Posterior) levels(v int) int { return post.variables[v].levels }

// LogEvidence is the natural logarithm of the probability of the evidence, which is the
// sum over all joint states of chance × likelihoods.
func (post *Posterior) LogEvidence() float64 { return post.evidence.log() }

// Marginal returns the posterior chances of a variable's levels, which add to 1. It
// panics if the name is not in the network.
func (post *Posterior) Marginal(name string) []float64 { return post.Joint(name) }

// Joint returns the posterior joint chances of the named variables, row-major in the
// order named (the last varies fastest). They add to 1. It panics if a name is not in
// the network or is repeated, or if the joint table has more than 2^22 cells.
func (post *Posterior) Joint(names ...string) []float64 {
	var scope []int
	for _, name := range names {
		v, known := post.index[name]
		if !known || slices.Contains(scope, v) {
			panic("engine: internal error: network: joint of " + strconv.Quote(name) + ", which is unknown or named twice")
		}
		scope = append(scope, v)
	}
	if post.size(scope) > mostCells {
		panic("engine: internal error: network: joint of too many variables")
	}
	order, _ := post.order(scope)
	joint := product(post.sumOut(order, func(factor) {}), scope, post.levels)
	var sum extFloat
	for _, v := range joint.cells {
		sum = sum.plus(v)
	}
	out := make([]float64, len(joint.cells))
	for i, v := range joint.cells {
		out[i] = v.over(sum)
	}
	return out
}

// Sample draws one joint state of all variables from the posterior exactly, by inverse
// distribution functions, and writes each variable's level to out under its name. It
// takes one uniform for each variable, in the order they were added, whatever the
// evidence. Once out has all names it allocates nothing.
func (post *Posterior) Sample(s *chance.Stream, out map[string]int) {
	for v := range post.variables {
		post.uniform[v] = s.Uniform()
	}
	// In reverse order of elimination, everything a row depends on is already drawn.
	for i := len(post.steps) - 1; i >= 0; i-- {
		step := &post.steps[i]
		last := len(step.scope) - 1
		at := 0
		for _, v := range step.scope[:last] {
			at = at*post.variables[v].levels + post.state[v]
		}
		v := step.scope[last]
		levels := post.variables[v].levels
		post.state[v] = pick(step.row[at*levels:(at+1)*levels], post.uniform[v])
	}
	for v := range post.variables {
		out[post.variables[v].name] = post.state[v]
	}
}
