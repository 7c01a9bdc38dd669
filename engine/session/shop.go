package session

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// Shop is one shop's rates with the data that all bodies have in common. It is read-only.
type Shop struct {
	Rates  *rates.Rates
	Common *car.Common
}

// NewShop opens a shop whose rates are already decoded.
func NewShop(r *rates.Rates) (*Shop, error) {
	common, err := car.LoadCommon()
	if err != nil {
		return nil, err
	}
	return &Shop{Rates: r, Common: common}, nil
}

// OpenShop reads a shop's rates. The error names the path in the file.
func OpenShop(ratesText []byte) (*Shop, error) {
	r, err := rates.Decode(ratesText)
	if err != nil {
		return nil, err
	}
	return NewShop(r)
}

// oneBody loads the only body of the car, with a price table for it on which nothing is
// decided.
func (s *Shop) oneBody(c *carfile.Car) (*car.Body, *pricing.Table, error) {
	b, err := c.OneBody()
	if err != nil {
		return nil, nil, err
	}
	t, err := pricing.NewTable(b, s.Common, s.Rates, c.OneStandard(), c.Scope)
	return b, t, err
}

// faultless is oneBody for a car without faults; the first fault is its error.
func (s *Shop) faultless(c *carfile.Car) (*car.Body, *pricing.Table, error) {
	b, t, err := s.oneBody(c)
	if err != nil {
		return nil, nil, err
	}
	if wrong := c.Faults(b, t); len(wrong) > 0 {
		return nil, nil, wrong[0].Err
	}
	return b, t, nil
}

// table returns the price table of a body with everything recorded and chosen, and with
// what the figures may have wrong. It refuses a car with faults before anyone works out
// its odds, which takes long.
func (s *Shop) table(c *carfile.Car, b *car.Body, standard string) (*pricing.Table, error) {
	t, err := pricing.NewTable(b, s.Common, s.Rates, standard, c.Scope)
	if err != nil {
		return nil, err
	}
	if wrong := c.Faults(b, t); len(wrong) > 0 {
		return nil, wrong[0].Err
	}
	if t, err = t.With(c.Decided(b, c.LastStage(), true)); err != nil {
		return nil, err
	}
	return doubted(s.Rates, t, c, b, c.LastStage(), true), nil
}
