package strict_test

import (
	"fmt"

	"underpaint/engine/strict"
)

// A reader asks for everything it needs and checks Err once. The document keeps the first
// fault with its place in the file.
func Example() {
	file, err := strict.Parse([]byte(`{
  "year": 1967,
  "doors": 12
}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	file.Keys("year", "doors")
	year := file.Get("year").Whole(1900, 2026)
	doors := file.Get("doors").Whole(2, 5)
	if err := file.Err(); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(year, doors)
	// Output:
	// doors: expected a whole number from 2 to 5, found 12 (line 3)
}
