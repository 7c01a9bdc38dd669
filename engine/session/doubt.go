package session

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// doubted returns a table that draws how parts come, doubts the shop's figures as far as
// one does at a stage of a car, and takes another body where the customer accepts one. The
// doubt of chosen ways begins when a way is chosen for every damaged item: one
// choice among thirty says little about what a job costs.
func doubted(r *rates.Rates, t *pricing.Table, c *carfile.Car, b *car.Body, stage string, withChosen bool) *pricing.Table {
	t = t.Supplied(c.Supply(b, stage))
	if withChosen && len(c.Ways) > 0 && undecided(c, b) == 0 {
		stage = pricing.WaysStage
	}
	return t.Doubting(pricing.DoubtAt(r, stage)).TakingAnotherBody(c.TakesAnotherBody())
}
