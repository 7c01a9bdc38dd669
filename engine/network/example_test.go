package network_test

import (
	"fmt"

	"underpaint/engine/network"
)

// Two nodes, one of them observed: Bayes' rule gives
// 0.1·0.8 ÷ (0.1·0.8 + 0.9·0.2) = 0.31.
func ExampleNet() {
	net := network.NewNet()
	if err := net.Add("holed", 2, nil, []float64{.9, .1}); err != nil {
		fmt.Println(err)
		return
	}
	if err := net.Add("bubbles", 2, []string{"holed"}, []float64{.8, .2, .2, .8}); err != nil { // a row for each level of holed
		fmt.Println(err)
		return
	}
	seen, err := net.Condition(map[string][]float64{"bubbles": {0, 1}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f\n", seen.Marginal("holed")[1])
	// Output:
	// 0.31
}
