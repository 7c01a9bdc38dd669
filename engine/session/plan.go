package session

import (
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// planCars is how many simulated cars are behind the stages (assumption: an end is
// then good to a sixtieth of the width).
const planCars = 2048

// Plan is the job in stages: what each takes, and the whole job by its end.
type Plan struct {
	Stages [estimate.Steps]estimate.StepPlan
	CameTo []int64            // what the finished stages came to, the first ones in order, minor units
	Left   estimate.Quantiles // what is left after them, minor units
	ToStop money.Minor        // for putting the car back or boxing it up
}

// SoFar is what the finished stages came to together.
func (p *Plan) SoFar() (sum money.Minor) {
	for _, m := range p.CameTo {
		sum += money.Minor(m)
	}
	return sum
}

// Whole is the whole job by the end of its last stage, in minor units.
func (p *Plan) Whole() estimate.Quantiles { return p.Stages[len(p.Stages)-1].ByThen }

// Plan splits a car with one body into stages. The error names the path in the file.
func (s *Session) Plan(c *carfile.Car) (Plan, error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return Plan{}, err
	}
	p := Plan{ToStop: s.Rates.Strip.ToStop}
	if p.CameTo, err = s.cameTo(c); err != nil {
		return Plan{}, err
	}
	p.Stages, p.Left = estimate.Plan(now.model, j.priced(), Seed, planCars, p.CameTo)
	return p, nil
}

// cameTo are the finished stages in minor units.
func (s *Shop) cameTo(c *carfile.Car) (out []int64, err error) {
	for k, text := range c.CameTo {
		if text == "" {
			break
		}
		d, err := money.Parse(text)
		if err != nil {
			return nil, &strict.Error{Path: "came_to." + carfile.StepIDs[k], Found: text, Expected: "an amount of money"}
		}
		m, exact := s.Rates.Currency.Round(d)
		if !exact {
			return nil, &strict.Error{Path: "came_to." + carfile.StepIDs[k], Found: text, Expected: "an amount without parts of the smallest coin"}
		}
		out = append(out, int64(m))
	}
	return out, nil
}
