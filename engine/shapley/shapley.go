package shapley

import (
	"math"

	"underpaint/engine/chance"
)

// Walks is a growing number of walks over the inputs of one result.
type Walks struct {
	f      func(u []float64) float64
	label  []int // by uniform, the input it belongs to
	inputs int

	walks       int
	sum, square []float64 // by input: sums of what the walks add, and of its square
	from, to    []float64
	order       []int
	of          [][]int // by input: indices of its uniforms
}

// New prepares walks for f, a function of uniforms strictly between 0 and 1. label gives,
// for every uniform, the input it belongs to, 0 to inputs−1. f may keep its argument
// until the next call and must not change it.
func New(inputs int, label []int, f func(u []float64) float64) *Walks {
	w := &Walks{f: f, label: label, inputs: inputs, sum: make([]float64, inputs), square: make([]float64, inputs),
		from: make([]float64, len(label)), to: make([]float64, len(label)), order: make([]int, inputs), of: make([][]int, inputs)}
	for k, input := range label {
		w.of[input] = append(w.of[input], k)
	}
	return w
}

// Walks is the number of walks so far.
func (w *Walks) Walks() int { return w.walks }

// Add makes n more walks, each of inputs + 1 calls of f.
func (w *Walks) Add(n int, s *chance.Stream) {
	for range n {
		for k := range w.to {
			w.from[k], w.to[k] = s.Uniform(), s.Uniform()
		}
		w.shuffle(s)
		end := w.f(w.to)
		before := w.f(w.from)
		for _, input := range w.order {
			for _, k := range w.of[input] {
				w.from[k] = w.to[k]
			}
			after := w.f(w.from)
			v := float64((end - float64((before+after)/2)) * (after - before))
			w.sum[input] += v
			w.square[input] += float64(v * v)
			before = after
		}
		w.walks++
	}
}

// shuffle puts the inputs in random order (R. A. Fisher and F. Yates, as a program by
// R. Durstenfeld, Comm. ACM 7, 1964).
func (w *Walks) shuffle(s *chance.Stream) {
	for k := range w.order {
		w.order[k] = k
	}
	for k := w.inputs - 1; k > 0; k-- {
		j := int(s.Uniform() * float64(k+1))
		w.order[k], w.order[j] = w.order[j], w.order[k]
	}
}

// Share is the share of one input in the variance, with its standard error.
type Share struct{ Share, SE float64 }

// Shares returns the shares of all inputs, which add to 1, and the variance that they
// divide. If there is no variance all shares are 0.
func (w *Walks) Shares() (shares []Share, variance float64) {
	n := float64(w.walks)
	for _, v := range w.sum {
		variance += v / n
	}
	shares = make([]Share, w.inputs)
	if variance <= 0 || w.walks < 2 {
		return shares, 0
	}
	for k := range shares {
		mean := w.sum[k] / n
		spread := math.Max(0, w.square[k]/n-float64(mean*mean)) / (n - 1)
		shares[k] = Share{mean / variance, math.Sqrt(spread) / variance}
	}
	return shares, variance
}
