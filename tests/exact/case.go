package exact

import (
	"errors"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// Case is one car and one shop, the whole body done at show standard.
type Case struct {
	Figures *Figures
	Known   damage.Known   // its Body must come from Bare, or the couplings are silently left out
	Rates   *rates.Rates   // from Steady
	Table   *pricing.Table // read for the amounts that are the same for every car

	// Step is the step of the level grids on the log of the depth, Reach how many
	// standard deviations they cover. Steps of 0.3 and 0.2 were compared: no quantile
	// moved by a thousandth of its value.
	Step, Reach float64
}

// Bare returns a body with the same parts and items under names that no rule knows:
// nothing is covered, opened because of a neighbour, charged for getting in, or
// credited for a seam.
func Bare(b *car.Body) *car.Body {
	return &car.Body{ID: b.ID, Name: b.Name, OnAFrame: b.OnAFrame, OpenCar: b.OpenCar, StageFactor: b.StageFactor,
		AfterSurveyFactor: b.AfterSurveyFactor, Zones: b.Zones, Groups: b.Groups, Pockets: b.Pockets, Parts: b.Parts, Items: b.Items}
}

// Steady returns rates on which wire, gas and discs always cost their likely amount.
func Steady(r *rates.Rates) *rates.Rates {
	out := *r
	likely := r.Consumables.PerMetalHour[1]
	out.Consumables.PerMetalHour = [3]float64{likely, likely, likely}
	out.OverTime = nil
	return &out
}

func (c *Case) check() error {
	wire := c.Rates.Consumables.PerMetalHour
	switch {
	case len(c.Known.Worst) > 0:
		return errors.New("known.worst: expected none")
	case c.Known.Cover.Seen != nil || c.Known.Cover.Worst != nil:
		return errors.New("known.cover: expected nothing seen that cover can hide")
	case c.Known.Independent || c.Known.Spread != 0 || c.Known.Shift != nil:
		return errors.New("known: expected the starting figures of depth")
	case c.Rates.Supplies.ShareOfLabour || c.Rates.WhatIsDone != nil:
		return errors.New("rates: expected supplies in the rate and the starting ways")
	case c.Rates.Consumables.Charged && (wire[0] != wire[1] || wire[1] != wire[2]):
		return errors.New("rates.consumables: expected one price, see Steady")
	case car.Standards[c.Table.Standard] != "show" || c.Table.Unseen != c.Table.Standard || rates.ScopeIDs[c.Table.Scope] != "whole_body":
		return errors.New("table: expected show standard and the whole body")
	}
	if slices.ContainsFunc(c.Known.Body.Parts, func(p car.Part) bool { _, named := c.Known.Body.PartNamed(p.ID); return named }) {
		return errors.New("known.body: expected one that Bare made")
	}
	if len(c.Known.Histories) == 0 || !(c.Step > 0 && c.Reach > 0) {
		return errors.New("case: expected levels of history, a step and a reach above 0")
	}
	return nil
}

// pace is the shop's hours for each hour in the data files.
func (c *Case) pace(trade int) float64 {
	return c.Rates.Labour.Trades[trade].Pace * c.Rates.Own.Hours[trade].Factor
}

func (c *Case) minorPerMajor() float64 {
	n := 1.0
	for range c.Rates.Currency.Digits {
		n *= 10
	}
	return n
}

// anHour is what an hour after the survey costs in minor units, including wire and gas.
func (c *Case) anHour(trade int) float64 {
	v := c.Rates.Labour.Trades[trade].Rate.Published.Float()
	if trade == int(car.Metal) && c.Rates.Consumables.Charged {
		v += c.Rates.Consumables.PerMetalHour[1]
	}
	return v * c.minorPerMajor()
}

// sameForAll is what every car costs alike: the fixed steps of the strip, and
// materials.
func (c *Case) sameForAll() float64 {
	sum := int64(c.Table.StagePrice().Fixed)
	for _, m := range c.Rates.Materials {
		if m.Stage == rates.AfterStage && m.Scopes[c.Table.Scope] {
			sum += int64(m.Price.Of(c.Table.Quantity(m)))
		}
	}
	return float64(sum)
}

// lastPlaces are the places where the car last lived, by level of its history.
func lastPlaces(histories []exposure.History) (out []string) {
	for _, l := range histories {
		out = append(out, l.LastClimate)
	}
	return out
}
