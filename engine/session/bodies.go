package session

import (
	"underpaint/engine/car"
	"underpaint/engine/pricing"
)

// Body is a body that the shop prices.
type Body struct {
	*car.Body
	Places []CustomerPlace
	Strip  *pricing.Stage // its strip and survey; nil where the rates give no price
}

// Bodies returns all bodies, with the strip and survey of each to show standard.
func (s *Shop) Bodies() (out []Body) {
	for _, id := range car.BodyIDs {
		b, err := car.Load(id)
		if err != nil {
			panic("engine: internal error: " + err.Error())
		}
		one := Body{Body: b, Places: customerPlaces(b)}
		if t, err := pricing.NewTable(b, s.Common, s.Rates, "show", "whole_body"); err == nil {
			price := t.StagePrice()
			one.Strip = &price
		}
		out = append(out, one)
	}
	return out
}
