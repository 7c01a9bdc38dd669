package session

import (
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// planCars is the number of simulated cars behind the stages (assumption: an end is then
// accurate to a sixtieth of the width).
const planCars = 2048

// Plan is the job in stages: what each takes, and what the job costs by its end.
type Plan struct {
	Stages [estimate.Steps]estimate.StepPlan
	CameTo []int64            // what the finished stages cost, in order, in minor units
	Left   estimate.Quantiles // what the stages after them cost, in minor units
	Ends   *PromiseEnd        // nil where the shop promises nothing, or without an end
	ToStop money.Minor        // the price of putting the car back on its wheels or boxing it up
}

// SoFar returns what the finished stages cost together.
func (p *Plan) SoFar() (sum money.Minor) {
	for _, m := range p.CameTo {
		sum += money.Minor(m)
	}
	return sum
}

// Whole returns what the whole job costs, in minor units.
func (p *Plan) Whole() estimate.Quantiles { return p.Stages[len(p.Stages)-1].ByThen }

// Plan splits the job on a car with one body into stages. The error names the path in
// the file.
func (s *Session) Plan(c *carfile.Car) (Plan, error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return Plan{}, err
	}
	p := Plan{ToStop: s.Rates.Strip.ToStop}
	if p.CameTo, err = s.cameTo(c); err != nil {
		return Plan{}, err
	}
	t := j.priced()
	if p.Ends = promiseEnd(c, t); p.Ends == nil {
		p.Stages, p.Left, _ = estimate.Plan(now.model, t, Seed, planCars, p.CameTo)
	} else {
		p.Stages, p.Left, p.Ends.Still = estimate.Plan(now.model, t, Seed, planCars, p.CameTo)
	}
	return p, nil
}

// cameTo returns what the finished stages cost, in minor units.
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
			return nil, &strict.Error{Path: "came_to." + carfile.StepIDs[k], Found: text, Expected: "an amount with no fraction of the smallest coin"}
		}
		out = append(out, int64(m))
	}
	return out, nil
}
