package damage

import (
	"math"
	"slices"
	"testing"

	"underpaint/engine/chance"
)

// TestConditionWithoutQuantile holds the short way to the condition to the long one:
// for random uniforms and medians, for uniforms at the edges of the cells, and for
// medians that put a threshold right at the uniform drawn.
func TestConditionWithoutQuantile(t *testing.T) {
	fig, err := loadFigures()
	if err != nil {
		t.Fatal(err)
	}
	hidden := fig.logStep
	hidden[0] = fig.logStepHidden
	s, seen := chance.NewStream(11, 12), [6]int{}
	for _, threshold := range [][5]float64{fig.logStep, hidden} {
		if !slices.IsSorted(threshold[:]) {
			t.Fatalf("thresholds %v are out of order", threshold)
		}
		for _, residualSD := range []float64{0, 0.3, 0.425, 1.7} {
			l := leaf{residualSD: residualSD, threshold: &threshold}
			check := func(x, u float64) {
				y, want := x+float64(residualSD*chance.NormalQuantile(u)), int8(0)
				for int(want) < len(threshold) && y >= threshold[want] {
					want++
				}
				if got := l.condition(x, u); got != want {
					t.Fatalf("own %v, x %v, u %v: condition %d, want %d", residualSD, x, u, got, want)
				}
				seen[want]++
			}
			for n := range 20000 {
				u := s.Uniform()
				if n%4 == 0 {
					u = math.Nextafter(math.Floor(u*cells)/cells, float64(n/4%3)-0.5)
				}
				if u > 0 {
					check(float64(8*s.Uniform())-6, u)
					check(threshold[n%5]-float64(residualSD*chance.NormalQuantile(u)), u)
				}
			}
			check(0, 0x1p-53)
			check(0, 1-0x1p-53)
			check(0, 5e-324)
		}
	}
	for k, n := range seen {
		if n < 1000 {
			t.Errorf("condition %d only %d times", k, n)
		}
	}
}
