package damage

import (
	"cmp"
	"slices"
	"sort"

	"underpaint/engine/exposure"
)

// SharedFactors maps the coordinates of a point of the unit cube to the uniforms of the
// shared factors, which come first in [Model.Draw]. Points that fill the cube evenly then
// give cars spread evenly over the factors that matter most. The first coordinate is how
// bad the car as a whole is, from history and car factor together. The second is its
// earlier repairs, and cover if that matters. Then come the pocket groups, then the
// pockets in them.
type SharedFactors struct {
	states int       // of a block
	block  []int     // first root state of each history and car factor, the mildest first
	below  []float64 // chance of the blocks before each, in that order
	within []float64 // by root state: chance within its block of the states before it
	at     []float64 // by root state: a uniform at which Draw picks it
	where  []int     // by uniform of Draw: the coordinate it comes from
}

// NewSharedFactors prepares the shared factors of a model.
func (m *Model) NewSharedFactors() *SharedFactors {
	p, states := m.root, m.states()
	s := &SharedFactors{states: states, within: make([]float64, len(p)), at: make([]float64, len(p))}
	before := 0.0
	for r, v := range p {
		s.at[r] = middle(before, v)
		before += v
	}
	for at := 0; at < len(p); at += states {
		s.block = append(s.block, at)
	}
	depth := m.depths()
	slices.SortStableFunc(s.block, func(a, b int) int {
		return cmp.Compare(depth[a/states], depth[b/states])
	})
	s.fillChances(p)
	s.order(m)
	return s
}

// depths is the mean log depth of rust for each history and car factor.
func (m *Model) depths() (out []float64) {
	for _, mu := range m.mu {
		mean := 0.0
		for _, v := range mu[exposure.AsItIs] {
			mean += v
		}
		for _, luck := range m.carTerm[open] {
			out = append(out, mean/float64(len(m.Body.Items))+luck)
		}
	}
	return out
}

func (s *SharedFactors) fillChances(p []float64) {
	sum := 0.0
	for _, at := range s.block {
		s.below = append(s.below, sum)
		block := 0.0
		for _, v := range p[at : at+s.states] {
			block += v
		}
		for r, so := at, 0.0; r < at+s.states && block > 0; r++ {
			s.within[r] = so / block
			so += p[r]
		}
		sum += block
	}
	for k := range s.below {
		s.below[k] /= sum
	}
}

// order assigns each uniform its coordinate: groups before pockets.
func (s *SharedFactors) order(m *Model) {
	sources := m.sharedSources()
	s.where = make([]int, len(sources))
	next := 2
	for _, first := range []bool{true, false} {
		group := -1
		for k, source := range sources {
			if source.What == OfRoot {
				continue
			}
			isFirst := source.Group != group
			group = source.Group
			if isFirst == first {
				s.where[k] = next
				next++
			}
		}
	}
}

// Coordinates is the number of coordinates of a point.
func (s *SharedFactors) Coordinates() int { return len(s.where) + 1 }

// Uniforms is the number of uniforms of Draw that a point gives, one less than its number
// of coordinates.
func (s *SharedFactors) Uniforms() int { return len(s.where) }

// Fill writes the first uniforms of Draw for a point. All numbers of both are strictly
// between 0 and 1.
func (s *SharedFactors) Fill(point, out []float64) {
	for k, from := range s.where[1:] {
		out[k+1] = point[from]
	}
	r := s.block[sort.Search(len(s.below), func(k int) bool { return s.below[k] > point[0] })-1]
	for last := r + s.states - 1; r < last && s.within[r+1] <= point[1]; r++ {
	}
	out[0] = s.at[r]
}
