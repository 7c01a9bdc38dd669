package evidence_test

import (
	"fmt"

	"underpaint/engine/car"
	"underpaint/engine/evidence"
)

// A check becomes a likelihood for each item that it is evidence on: how well each true
// condition agrees with the answer, here for an item that was not repaired or dented.
func ExampleFromLooks() {
	body, err := car.Load("two_door_unitary")
	if err != nil {
		fmt.Println(err)
		return
	}
	seen, err := evidence.FromLooks(body, []evidence.Look{
		{Look: "bubbles", On: "outer_sill.left", Result: evidence.Yes, By: evidence.ByShop},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	sill, _ := body.ItemNamed("outer_sill.left")
	for c, id := range car.ConditionIDs {
		fmt.Printf("%s %.2f\n", id, seen.Items[sill][c][0][0])
	}

	_, err = evidence.FromLooks(body, []evidence.Look{{Look: "bubbles", On: "engine", Result: evidence.Yes, By: evidence.ByShop}})
	fmt.Println(err)
	// Output:
	// sound 0.09
	// light_pitting 0.23
	// heavy_pitting 0.46
	// pinholes 0.77
	// rusted_through 0.92
	// gone 1.00
	// looks[0].on: expected an item of this body, such as fender_upper.left, found "engine"
}
