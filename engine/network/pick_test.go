package network

import (
	"math"
	"testing"

	"underpaint/engine/chance"
)

// Rounding can leave a sum of chances just below 1. The largest uniform number must
// still pick the last possible state, by any of the methods.
func TestPickAtTheEdges(t *testing.T) {
	const least, most = 0x1p-53, 1 - 0x1p-53 // smallest and largest of chance.Stream.Uniform
	tests := []struct {
		weights []float64
		u       float64
		want    int
	}{
		{[]float64{0, .25, 0, .75 - 1e-12, 0}, most, 3},
		{[]float64{0, .25, 0, .75, 0}, most, 3},
		{[]float64{0, .25, 0, .75, 0}, least, 1},
		{[]float64{0, .25, 0, .75}, .25 - 0x1p-54, 1},
		{[]float64{0, .25, 0, .75}, .25, 3},
		{[]float64{1e-300, 1}, least, 1},
		{[]float64{.5, .5 + 1e-12, 0}, most, 1},
		{[]float64{1}, most, 0},
	}
	for _, tt := range tests {
		if got := pick(tt.weights, tt.u); got != tt.want {
			t.Errorf("pick(%v, %.17g) = %d, want %d", tt.weights, tt.u, got, tt.want)
		}
		if got := find(cumulative(tt.weights), tt.u); got != tt.want {
			t.Errorf("find(cumulative(%v), %.17g) = %d, want %d", tt.weights, tt.u, got, tt.want)
		}
		if got := newLadder(tt.weights).pick(tt.u); got != tt.want {
			t.Errorf("newLadder(%v).pick(%.17g) = %d, want %d", tt.weights, tt.u, got, tt.want)
		}
	}
}

// TestLadderPicksAsBisection compares the two at, just below and just above every rung
// and every running sum, and at random uniforms.
func TestLadderPicksAsBisection(t *testing.T) {
	s := chance.NewStream(7, 1)
	for n := 1; n < 120; n++ {
		weights := make([]float64, n)
		for k := range weights {
			if s.Uniform() < .8 {
				weights[k] = -chance.Log(s.Uniform())
			}
		}
		weights[n/2] = 1
		weights, _ = normalised(weights)
		cum, l := cumulative(weights), newLadder(weights)
		at := []float64{s.Uniform(), s.Uniform(), s.Uniform()}
		for k := range rungs {
			at = append(at, float64(k)/rungs)
		}
		for _, u := range append(at, cum...) {
			for _, u := range []float64{math.Nextafter(u, 0), u, math.Nextafter(u, 1)} {
				if got, want := l.pick(u), find(cum, u); u > 0 && u < 1 && got != want {
					t.Fatalf("%d states, %.17g: %d, bisection %d", n, u, got, want)
				}
			}
		}
	}
}
