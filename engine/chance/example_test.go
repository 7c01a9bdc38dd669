package chance_test

import (
	"fmt"
	"slices"

	"underpaint/engine/chance"
)

// Low, likely and high hours become a distribution. The uniforms to draw from it come
// from a stream that the caller holds.
func Example() {
	hours, err := chance.NewThreePoint(4, 6, 12)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("one job in ten takes less than %.1f hours, half less than %.1f\n", hours.Quantile(.1), hours.Quantile(.5))

	s := chance.NewStream(1, 0)
	draws := make([]float64, 10_000)
	for n := range draws {
		draws[n] = hours.Quantile(s.Uniform())
	}
	slices.Sort(draws)
	fmt.Printf("of %d drawn, one in ten takes more than %.0f\n", len(draws), chance.Quantile(draws, .9, chance.HF7))
	// Output:
	// one job in ten takes less than 4.0 hours, half less than 6.0
	// of 10000 drawn, one in ten takes more than 12
}
