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

// Amount reads an amount of money as people type it, of 0 or more, and rounds it to
// whole minor units. The error has the path "sum".
func (s *Shop) Amount(text string) (money.Minor, error) {
	d, err := money.Parse(text)
	if err != nil || d.Less(money.Decimal{}) {
		return 0, &strict.Error{Path: "sum", Found: text, Expected: "an amount of money"}
	}
	m, _ := s.Rates.Currency.Round(d)
	return m, nil
}

// Cover is the share of the simulated cars that an amount would be enough for. The
// open car must have one body and one standard, and simulated cars.
func (s *Session) Cover(amount money.Minor) (float64, error) {
	if s.car == nil || len(s.car.runs) != 1 || s.car.runs[0].run.Rows() != 1 || s.car.runs[0].run.Cars() == 0 {
		return 0, &strict.Error{Path: "sum", Found: "no single range", Expected: "one body and one standard chosen first"}
	}
	return s.car.runs[0].run.Below(0, int64(amount)), nil
}

// fitsCars is how many simulated cars each way of doing the job is held against.
const fitsCars = 2048

// Fit is a scope and a standard with the share of cars that an amount is enough for.
type Fit struct {
	Scope, Standard string
	Share           float64
}

// Fits says what an amount would cover: every scope and standard, on the same
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
