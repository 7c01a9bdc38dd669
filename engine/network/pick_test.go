package network

import "testing"

// Rounding can leave a sum of chances just below 1; the largest uniform number
// must then still fall on the last state that is possible, by either method.
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
	}
}
