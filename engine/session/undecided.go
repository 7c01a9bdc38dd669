package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
)

// damagedItems returns the items recorded in any condition but sound, and those that are
// missing, which all need a decision.
func damagedItems(c *carfile.Car, b *car.Body) (out []int) {
	for i := range b.Items {
		if id := b.Items[i].ID; c.RecordedCondition(id) > 0 || c.RecordedMissing(id) {
			out = append(out, i)
		}
	}
	return out
}

// chosenWay returns the way chosen for an item, or nil.
func chosenWay(c *carfile.Car, on string) *carfile.Choice {
	if n := slices.IndexFunc(c.Ways, func(w carfile.Choice) bool { return w.On == on }); n >= 0 {
		return &c.Ways[n]
	}
	return nil
}

// undecided counts the damaged items for which no way is chosen.
func undecided(c *carfile.Car, b *car.Body) (n int) {
	for _, i := range damagedItems(c, b) {
		if chosenWay(c, b.Items[i].ID) == nil {
			n++
		}
	}
	return n
}
