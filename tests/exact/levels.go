package exact

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// grids are even grids of the car, group and pocket with one step on the log of the
// depth of an open item, so that the item depends only on the sum of their three
// indices. Other items share their luck in another way, and read the grids in other
// steps.
type grids struct {
	car, group, pocket grid
	step               float64
	closed             float64    // of a pocket's step, for a closed box
	local              [3]float64 // of the car's, the group's and the pocket's step, for a part dominated by causes of its own
}

func (c *Case) grids() grids {
	s := &c.Figures.damage.Shares
	step := func(share float64) float64 { return c.Step / (s.Sigma * math.Sqrt(share)) }
	leak := c.Figures.damage.Leak
	return grids{
		car: normalGrid(step(s.Car), c.Reach), group: normalGrid(step(s.Group), c.Reach), pocket: leakGrid(step(s.Side), c.Reach, leak.Chance, leak.Shift),
		step: c.Step, closed: math.Sqrt(s.Closed.Side / s.Side),
		local: [3]float64{math.Sqrt(s.Local.Car / s.Car), math.Sqrt(s.Local.Group / s.Group), math.Sqrt(s.Local.Side / s.Side)},
	}
}

// above is the number of sums of an index of the car and one of the group, counted from
// 0.
func (g *grids) above() int { return len(g.car.weight) + len(g.group.weight) - 1 }

// shape is how a part shares its luck with the rest of the car.
type shape int

const (
	open   shape = iota // by the sum of all three indices
	closed              // by the sum of two and the index of the pocket
	local               // by each index
)

func (c *Case) shapeOf(p *car.Part) shape {
	switch {
	case slices.Contains(c.Figures.damage.Shares.Local.Parts, p.ID):
		return local
	case !p.SeenWhenStripped:
		return closed
	}
	return open
}

// rustTable holds the probabilities of rust of one part under one reading of a history,
// in rows as its shape says, with the index of the pocket running fastest.
type rustTable [][car.Conditions]float64

func (c *Case) rustTable(g *grids, p *car.Part, mu float64) (t rustTable) {
	s := &c.Figures.damage.Shares
	add := func(own, indices float64) {
		t = append(t, c.Figures.rust(mu+indices*g.step, s.Sigma*math.Sqrt(own), p.Face == car.Hidden))
	}
	low := float64(g.car.low + g.group.low)
	switch c.shapeOf(p) {
	case open:
		for n := range g.above() + len(g.pocket.weight) - 1 {
			add(s.Own, float64(n+g.pocket.low)+low)
		}
	case closed:
		for n := range g.above() {
			for q := range g.pocket.weight {
				add(s.Closed.Own, float64(n)+low+float64(q+g.pocket.low)*g.closed)
			}
		}
	case local:
		for k := range g.car.weight {
			for j := range g.group.weight {
				for q := range g.pocket.weight {
					add(s.Local.Own, float64(k+g.car.low)*g.local[0]+float64(j+g.group.low)*g.local[1]+float64(q+g.pocket.low)*g.local[2])
				}
			}
		}
	}
	return t
}

// atItem is what one item contributes under one level and repair state, by its ways.
type atItem struct {
	shape shape
	ways  []atWay
}

type atWay struct {
	rust  rustTable
	given [car.Conditions]complex128
}

// at is the item's contribution at one row of its tables.
func (a *atItem) at(row int) complex128 {
	re, im := 0.0, 0.0
	for n := range a.ways {
		w := &a.ways[n]
		for k, v := range &w.rust[row] {
			re += v * real(w.given[k])
			im += v * imag(w.given[k])
		}
	}
	return complex(re, im)
}

// pocketMessage is the sum over a pocket's levels, by the sum of the indices above it.
// Where an item needs the two indices separately, apart has one row for each level of
// the car.
func (g *grids) pocketMessage(items []*atItem) (together []complex128, apart [][]complex128) {
	var of [local + 1][]*atItem
	for _, a := range items {
		of[a.shape] = append(of[a.shape], a)
	}
	pockets := len(g.pocket.weight)
	opened := make([]complex128, g.above()+pockets-1)
	for n := range opened {
		opened[n] = 1
		for _, a := range of[open] {
			opened[n] *= a.at(n)
		}
	}
	at := make([]complex128, g.above()*pockets) // by the sum of indices and the level of the pocket
	together = make([]complex128, g.above())
	for n := range together {
		for q, w := range g.pocket.weight {
			v := complex(w, 0) * opened[n+q]
			for _, a := range of[closed] {
				v *= a.at(n*pockets + q)
			}
			at[n*pockets+q] = v
			together[n] += v
		}
	}
	if len(of[local]) == 0 {
		return together, nil
	}
	row := 0
	for k := range g.car.weight {
		apart = append(apart, make([]complex128, len(g.group.weight)))
		for j := range g.group.weight {
			for q := range pockets {
				v := at[(k+j)*pockets+q]
				for _, a := range of[local] {
					v *= a.at(row)
				}
				apart[k][j] += v
				row++
			}
		}
	}
	return nil, apart
}

// carMessage is the sum over the levels of the car and of all groups.
func (g *grids) carMessage(groups [][][]*atItem) (sum complex128) {
	each := make([]complex128, len(g.car.weight))
	for k, w := range g.car.weight {
		each[k] = complex(w, 0)
	}
	for _, pockets := range groups {
		product := slices.Repeat([]complex128{1}, g.above())
		var apart [][][]complex128
		for _, items := range pockets {
			together, own := g.pocketMessage(items)
			for n, v := range together {
				product[n] *= v
			}
			if own != nil {
				apart = append(apart, own)
			}
		}
		for k := range each {
			message := complex(0, 0)
			for j, w := range g.group.weight {
				v := complex(w, 0) * product[k+j]
				for _, own := range apart {
					v *= own[k][j]
				}
				message += v
			}
			each[k] *= message
		}
	}
	for _, v := range each {
		sum += v
	}
	return sum
}

// likelihoodOf returns what was seen of an item, nil = nothing; counted is the number
// of its failed lead joints, −1 where nobody counted.
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
