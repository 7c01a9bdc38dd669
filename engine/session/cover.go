package session

import (
	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// Amount reads an amount of 0 or more as people type it and rounds it to whole minor
// units. The error has the path "sum".
func (s *Shop) Amount(text string) (money.Minor, error) {
	d, err := money.Parse(text)
	if err != nil || d.Less(money.Decimal{}) {
		return 0, &strict.Error{Path: "sum", Found: text, Expected: "an amount of money"}
	}
	m, _ := s.Rates.Currency.Round(d)
	return m, nil
}

// Cover returns the share of the simulated cars for which an amount would be enough. The
// open car must have one body, one standard and at least one block of simulated cars.
func (s *Session) Cover(amount money.Minor) (float64, error) {
	if s.car == nil || len(s.car.runs) != 1 || s.car.runs[0].run.Rows() != 1 || s.car.runs[0].run.Cars() == 0 {
		return 0, &strict.Error{Path: "sum", Found: "no single range", Expected: "one body and one standard chosen first"}
	}
	return s.car.runs[0].run.Below(0, int64(amount)), nil
}

// fitsCars is the number of simulated cars on which each scope and standard is priced.
const fitsCars = 2048

// Fit is a scope and a standard with the share of cars for which an amount is enough.
type Fit struct {
	Scope, Standard string
	Share           float64
}

// Fits returns, for every scope and standard, how often an amount is enough on the same
// simulated cars. The open car must have one body.
func (s *Session) Fits(amount money.Minor) (out []Fit, err error) {
	if s.car == nil || len(s.car.runs) != 1 {
		return nil, &strict.Error{Path: "sum", Found: "no single range", Expected: "one body chosen first"}
	}
	run, c := &s.car.runs[0], *s.car.car
	for _, scope := range rates.ScopeIDs {
		for _, standard := range car.Standards {
			c.Scope = scope
			t, err := s.table(&c, run.body, standard)
			if err != nil {
				return nil, err
			}
			within := 0
			estimate.Imagine(run.run.Model(), t, Seed, fitsCars, func(_ int, _ *damage.Car, b *pricing.Bill) {
				if b.Total <= amount {
					within++
				}
			})
			out = append(out, Fit{scope, standard, float64(within) / fitsCars})
		}
	}
	return out, nil
}
