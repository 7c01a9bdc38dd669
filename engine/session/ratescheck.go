package session

import (
	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// RatesCheck is what a form needs to know about rates: their faults, or the decoded rates
// with warnings about likely slips and the text of the file to save.
type RatesCheck struct {
	Rates      *rates.Rates // nil with faults
	Faults     []error      // most are *strict.Error
	Warnings   []rates.Warning
	StripBelow *StripBelow // nil unless the strip and survey is priced below its hours
	Canonical  string
}

// StripBelow is a strip and survey priced below the cost of its likely hours at the
// shop's own rates, in minor units.
type StripBelow struct{ Price, Labour money.Minor }

// CheckRates checks the text of rates. today is YYYY-MM-DD.
func CheckRates(text []byte, today string) RatesCheck {
	r, faults := rates.Check(text)
	if r == nil {
		return RatesCheck{Faults: faults}
	}
	parsed, err := strict.Parse(text)
	if err != nil {
		panic("engine: internal error: rates that were read cannot be parsed")
	}
	return RatesCheck{Rates: r, Faults: faults, Warnings: append(r.Warnings(today), r.Leftovers()...), StripBelow: stripBelow(r), Canonical: string(strict.Indented(parsed))}
}

// stripBelow compares the price with the hours on the two-door, because the steps of the
// strip and survey are set for that body.
func stripBelow(r *rates.Rates) *StripBelow {
	if !r.Strip.PriceSet {
		return nil
	}
	common, err := car.LoadCommon()
	if err != nil {
		panic("engine: internal error: " + err.Error())
	}
	b, err := car.Load("two_door_unitary")
	if err != nil {
		panic("engine: internal error: " + err.Error())
	}
	t, err := pricing.NewTable(b, common, r, "show", "whole_body")
	if err != nil {
		return nil
	}
	labour := money.Minor(0)
	for _, l := range t.StagePrice().Lines {
		if l.How == rates.Fixed || l.How == rates.EachOne {
			labour += l.Likely
		}
	}
	if r.Strip.Price >= labour {
		return nil
	}
	return &StripBelow{r.Strip.Price, labour}
}
