package damage

import "underpaint/engine/chance"

// Grid is an even grid that represents a standard normal variable: Points points from Low
// to High, weighted by the density.
type Grid struct {
	Points    int
	Low, High float64
}

// Grids are the grids of the car, the pocket group and the pocket, and the number of
// points per unit in the tables of items: a power of two, at least 16; 0 means 64.
// LeafByLeaf, for comparison, asks every item at every level of its pocket. Otherwise the
// sums over a pocket's levels are worked out once for many root states (sums.go).
type Grids struct {
	Car, Group, Pocket Grid
	PerUnit            int
	LeafByLeaf         bool
}

// StandardGrids are fine enough that no chance of a condition differs by more than .0002
// from that on much finer grids, even after surveys with unexpected results; the
// convergence test checks this. A whole survey determines the car's factor so closely
// that 25 points would be too few: with most parts bad and some sound, chances differed
// by up to .002. The pocket's grid extends further up, where pockets with a leak are.
var StandardGrids = Grids{Car: Grid{35, -7, 7}, Group: Grid{15, -5, 5}, Pocket: Grid{23, -5, 7.5}}

// CoarseGrids cost a sixth of StandardGrids and change no chance of a condition by more
// than .01 even after a whole survey, which is enough for means over a few cars.
var CoarseGrids = Grids{Car: Grid{15, -6, 6}, Group: Grid{9, -4.5, 4.5}, Pocket: Grid{13, -4.5, 7}}

// ImaginedGrids are CoarseGrids with tables of half the points. The tables take half the
// time to build and half the memory, and change no chance by more than another .00001.
// They serve for simulated outcomes, each of which needs its own tables.
var ImaginedGrids = Grids{Car: CoarseGrids.Car, Group: CoarseGrids.Group, Pocket: CoarseGrids.Pocket, PerUnit: pointsToAUnit / 2}

// FineGrids are the reference for testing StandardGrids.
var FineGrids = Grids{Car: Grid{41, -7.5, 7.5}, Group: Grid{31, -6.5, 6.5}, Pocket: Grid{45, -6.5, 9}}

// values are the points of the grid.
func (g Grid) values() []float64 {
	value := make([]float64, g.Points)
	for i := range value {
		value[i] = g.Low + float64((g.High-g.Low)*float64(i))/float64(g.Points-1)
	}
	return value
}

// weights are the chances of the grid's values for a standard normal variable that, with
// the chance of l, has mean l.shift instead of 0.
func (g Grid) weights(l leak) []float64 {
	weight, sum := g.values(), 0.0
	for i, x := range weight {
		leaking := x - l.shift
		weight[i] = float64((1-l.chance)*chance.Exp(-x*x/2)) + float64(l.chance*chance.Exp(-leaking*leaking/2))
		sum += weight[i]
	}
	for i := range weight {
		weight[i] /= sum
	}
	return weight
}
