package network_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"underpaint/engine/network"
)

// Items that share a root, a group and a pocket through normal factors have normal
// scores whose correlation is the share of variance in common. So the chance that
// several scores are positive is known in closed form, which checks all layers together.

// sharing is a nested network in which root, group and pocket are normal factors on
// even grids, with shares .40, .15 and .20 of an item's variance. (At this step the
// trapezium rule is exact to rounding for a normal density.)
type sharing struct {
	at, weight []float64
}

func newSharing() sharing {
	s := sharing{}
	for x := -8.0; x <= 8; x += .4 {
		s.at, s.weight = append(s.at, x), append(s.weight, math.Exp(-x*x/2))
	}
	return s
}

// positive is the evidence that an item's score is above 0.
func (s sharing) positive(r, p, q int) float64 {
	shared := math.Sqrt(.40)*s.at[r] + math.Sqrt(.15)*s.at[p] + math.Sqrt(.20)*s.at[q]
	return distuv.UnitNormal.CDF(shared / math.Sqrt(.25))
}

// evidence is the chance that all items are positive. items[g][k] is the number of
// items in pocket k of group g.
func (s sharing) evidence(t *testing.T, items [][]int) float64 {
	t.Helper()
	n := network.Nested{Root: proportions(s.weight)}
	for _, pockets := range items {
		group := network.Group{Weights: s.weight}
		for _, count := range pockets {
			pocket := network.Pocket{Weights: s.weight}
			for range count {
				pocket.Leaves = append(pocket.Leaves, funcLeaf(s.positive))
			}
			group.Pockets = append(group.Pockets, pocket)
		}
		n.Groups = append(n.Groups, group)
	}
	post, err := n.Condition()
	if err != nil {
		t.Fatal(err)
	}
	return math.Exp(post.LogEvidence())
}

// Sheppard's theorem: P(Z1 > 0, Z2 > 0) = 1/4 + asin(ρ)/2π; for three normals
// 1/8 + (asin ρ12 + asin ρ13 + asin ρ23)/4π (W. F. Sheppard, Phil. Trans. R. Soc.
// A 192, 1899; the second also in Kendall & Stuart, "The Advanced Theory of
// Statistics" 1, 15.10, from memory).
func TestOrthantsOfSharedNormals(t *testing.T) {
	const pocket, group, car = .75, .55, .40 // correlation inside a pocket, a group, the car
	two := func(rho float64) float64 { return .25 + math.Asin(rho)/(2*math.Pi) }
	three := func(a, b, c float64) float64 {
		return .125 + (math.Asin(a)+math.Asin(b)+math.Asin(c))/(4*math.Pi)
	}
	tests := []struct {
		name  string
		items [][]int
		want  float64
	}{
		{"one item", [][]int{{1}}, .5},
		{"two in a pocket", [][]int{{2}}, two(pocket)},
		{"two in a group", [][]int{{1, 1}}, two(group)},
		{"two in the car", [][]int{{1}, {1}}, two(car)},
		{"three in a pocket", [][]int{{3}}, three(pocket, pocket, pocket)},
		{"two and one in a group", [][]int{{2, 1}}, three(pocket, group, group)},
		{"two and one in the car", [][]int{{2}, {0, 1}}, three(pocket, car, car)},
		{"one in a pocket each, one apart", [][]int{{1, 1}, {1}}, three(group, car, car)},
	}
	s := newSharing()
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			near(t, "chance that all are positive", s.evidence(t, tt.items), tt.want, 1e-9)
		})
	}
}
