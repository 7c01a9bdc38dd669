package car_test

import (
	"fmt"

	"underpaint/engine/car"
)

// A body is a list of parts, each with its items: the same part on the left and right.
func Example() {
	body, err := car.Load("two_door_unitary")
	if err != nil {
		fmt.Println(err)
		return
	}
	i, ok := body.ItemNamed("outer_sill.left")
	if !ok {
		fmt.Println("no such item")
		return
	}
	part := body.PartOf(i)
	fmt.Println(len(body.Items), "items")
	fmt.Printf("%s (%s), %g mm of sheet\n", body.ItemName(i, "us"), body.ItemName(i, "uk"), part.MM)
	fmt.Println("a full panel takes", part.Ways[car.Full].Hours[car.Metal], "hours of metalwork: low, likely, high")
	// Output:
	// 91 items
	// Outer rocker, left (Outer sill, left), 1.21 mm of sheet
	// a full panel takes [14 22 34] hours of metalwork: low, likely, high
}
