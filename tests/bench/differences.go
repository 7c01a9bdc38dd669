package bench

import "fmt"

// Differences returns an error that names the first of the cars that differ and counts
// them, nil if none does.
func Differences(got, want []Priced) error {
	if len(got) != len(want) {
		return fmt.Errorf("%d cars, want %d", len(got), len(want))
	}
	first, count := -1, 0
	for k := range want {
		if got[k] != want[k] {
			if count++; first < 0 {
				first = k
			}
		}
	}
	if count == 0 {
		return nil
	}
	return fmt.Errorf("%d of %d cars differ, first car %d: %+v, the engine has %+v", count, len(want), first, got[first], want[first])
}
