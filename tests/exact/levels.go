package exact

import (
	"math"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// grids are even grids of the car, group and pocket with one step on the log of the
// depth, so that an open item depends on the sum of their three indices alone. weight[m]
// is of index 0.
type grids struct {
	car, group, pocket [2][]float64 // indices, weights
	step               float64
	closed             float64 // of a pocket's step, for a closed box
}

func (c *Case) grids() grids {
	s := &c.Figures.damage.Shares
	make := func(share float64) (out [2][]float64) {
		out[0], out[1] = normalGrid(c.Step/(s.Sigma*math.Sqrt(share)), c.Reach)
		return out
	}
	return grids{car: make(s.Car), group: make(s.Group), pocket: make(s.Side), step: c.Step, closed: math.Sqrt(s.Closed.Side / s.Side)}
}

func half(g [2][]float64) int { return len(g[0]) / 2 }

// rustTable holds the chances of rust of one part under one level of history: of an
// open part by the sum of the three indices, of a closed box by the sum of two and
// the index of the pocket.
type rustTable struct {
	open   [][car.Conditions]float64
	closed [][][car.Conditions]float64
}

func (c *Case) rustTable(g *grids, p *car.Part, mu float64) (t rustTable) {
	s := &c.Figures.damage.Shares
	above, pocket := half(g.car)+half(g.group), half(g.pocket)
	if p.SeenWhenStripped {
		own := s.Sigma * math.Sqrt(s.Own)
		for n := -above - pocket; n <= above+pocket; n++ {
			t.open = append(t.open, c.Figures.rust(mu+float64(n)*g.step, own, p.Face == car.Hidden))
		}
		return t
	}
	own := s.Sigma * math.Sqrt(s.Closed.Own)
	for n := -above; n <= above; n++ {
		var row [][car.Conditions]float64
		for q := -pocket; q <= pocket; q++ {
			row = append(row, c.Figures.rust(mu+(float64(n)+float64(q)*g.closed)*g.step, own, p.Face == car.Hidden))
		}
		t.closed = append(t.closed, row)
	}
	return t
}

// atItem is what one item brings in under one level and repair state.
type atItem struct {
	rust  *rustTable
	given [car.Conditions]complex128
}

func (a *atItem) at(p *[car.Conditions]float64) complex128 {
	re, im := 0.0, 0.0
	for k, v := range p {
		re += v * real(a.given[k])
		im += v * imag(a.given[k])
	}
	return complex(re, im)
}

// pocketMessage is the sum over a pocket's levels, by the sum of the indices above it.
func (g *grids) pocketMessage(items []*atItem) []complex128 {
	above, pocket := half(g.car)+half(g.group), half(g.pocket)
	open, out := make([]complex128, 2*(above+pocket)+1), make([]complex128, 2*above+1)
	for n := range open {
		open[n] = 1
		for _, a := range items {
			if a.rust.open != nil {
				open[n] *= a.at(&a.rust.open[n])
			}
		}
	}
	for n := range out {
		for q, w := range g.pocket[1] {
			v := complex(w, 0) * open[n+q]
			for _, a := range items {
				if a.rust.closed != nil {
					v *= a.at(&a.rust.closed[n][q])
				}
			}
			out[n] += v
		}
	}
	return out
}

// carMessage is the sum over the levels of the car and of all groups.
func (g *grids) carMessage(groups [][][]*atItem) (sum complex128) {
	each := make([]complex128, len(g.car[1]))
	for k, w := range g.car[1] {
		each[k] = complex(w, 0)
	}
	for _, pockets := range groups {
		product := make([]complex128, 2*(half(g.car)+half(g.group))+1)
		for n := range product {
			product[n] = 1
		}
		for _, items := range pockets {
			for n, v := range g.pocketMessage(items) {
				product[n] *= v
			}
		}
		for k := range each {
			message := complex(0, 0)
			for p, w := range g.group[1] {
				message += complex(w, 0) * product[k+p]
			}
			each[k] *= message
		}
	}
	for _, v := range each {
		sum += v
	}
	return sum
}

// likelihoodOf is what was seen of an item, nil = nothing; counted is how many of its
// lead joints failed, −1 where nobody counted.
func likelihoodOf(k *damage.Known, i int) (seen *damage.Likelihood, counted int) {
	counted = -1
	if k.Seen != nil {
		seen = k.Seen[i]
	}
	if k.LeadFailed != nil {
		counted = k.LeadFailed[i]
	}
	return seen, counted
}
