package damage_test

import (
	"fmt"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
)

// One look moves the odds of the part it was made at, and of those that share its water.
func ExampleNew() {
	body, err := car.Load("two_door_unitary")
	if err != nil {
		fmt.Println(err)
		return
	}
	ages, err := exposure.MadeIn(1967, 2026)
	if err != nil {
		fmt.Println(err)
		return
	}
	histories, err := exposure.Histories(ages, []exposure.ToldPeriod{{
		Climates: []exposure.Weighted{{ID: "mild", Chance: 1}}, Kept: "driven_all_year",
	}}, exposure.Asked{Year: 2026})
	if err != nil {
		fmt.Println(err)
		return
	}
	seen, err := evidence.FromLooks(body, []evidence.Look{{Look: "bubbles", On: "outer_sill.left", Result: evidence.Yes, By: evidence.ByShop}})
	if err != nil {
		fmt.Println(err)
		return
	}
	before, err := damage.New(damage.Known{Body: body, Histories: histories}, damage.CoarseGrids)
	if err != nil {
		fmt.Println(err)
		return
	}
	after, err := damage.New(damage.Known{Body: body, Histories: histories, Seen: seen.Items}, damage.CoarseGrids)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, id := range []string{"outer_sill.left", "outer_sill.right", "inner_sill.left"} {
		i, ok := body.ItemNamed(id)
		if !ok {
			fmt.Println("no item", id)
			continue
		}
		fmt.Printf("%s holed: %.0f %%, after the look %.0f %%\n", id, 100*before.ChancesOf(i).Holed(), 100*after.ChancesOf(i).Holed())
	}
	// Output:
	// outer_sill.left holed: 66 %, after the look 82 %
	// outer_sill.right holed: 66 %, after the look 69 %
	// inner_sill.left holed: 56 %, after the look 61 %
}
