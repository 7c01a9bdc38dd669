package session

import (
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/pricing"
	"underpaint/engine/strict"
)

// openCar is the open car with its simulated cars so far.
type openCar struct {
	key  string
	car  *carfile.Car
	runs []bodyRun
}

// bodyRun is one of the bodies that the car may have.
type bodyRun struct {
	conditionedModel
	standards []string
	tables    []*pricing.Table
	run       *estimate.Run
}

// newOpenCar conditions the model of every body that the car may have. It simulates no
// car yet.
func newOpenCar(s *Shop, m *models, c *carfile.Car) (*openCar, error) {
	j := &openCar{key: string(c.Text()), car: c}
	if len(c.Bodies) > 1 && len(c.Survey) > 0 {
		return nil, &strict.Error{Path: "bodies", Found: strings.Join(c.Bodies, ", "), Expected: "one body, because a survey records the parts of one body"}
	}
	histories, err := c.Histories()
	if err != nil {
		return nil, err
	}
	standards := []string{c.Standard}
	if c.Standard == carfile.NotSure {
		standards = car.Standards
	}
	for _, id := range c.Bodies {
		one := bodyRun{standards: standards}
		b, err := c.Body(id)
		if err != nil {
			return nil, err
		}
		for _, standard := range standards {
			t, err := s.table(c, b, standard)
			if err != nil {
				return nil, err
			}
			one.tables = append(one.tables, t)
		}
		if one.conditionedModel, err = m.condition(c, b, histories, c.LastStage(), s.Rates); err != nil {
			return nil, err
		}
		one.run = estimate.NewRun(one.model, one.tables, Seed)
		j.runs = append(j.runs, one)
	}
	return j, nil
}

func (j *openCar) models() (out []conditionedModel) {
	for k := range j.runs {
		out = append(out, j.runs[k].conditionedModel)
	}
	return out
}

// rough makes sure that every run has its first simulated cars.
func (j *openCar) rough() State {
	for k := range j.runs {
		j.runs[k].run.Begin()
	}
	return Rough
}

// step adds one block of simulated cars to every run that is not settled yet, and
// returns the state that this leads to.
func (j *openCar) step(a estimate.Accuracy) State {
	state := Settled
	for k := range j.runs {
		r := j.runs[k].run
		switch {
		case r.Settled(a):
		case r.Cars()+estimate.Block > a.Budget:
			if state == Settled {
				state = BudgetEnded
			}
		default:
			r.Add()
			if !r.Settled(a) {
				state = Refining
			}
		}
	}
	return state
}

// cars is the number of simulated cars behind each range, the smallest of them where the
// car may have several bodies.
func (j *openCar) cars() int {
	n := j.runs[0].run.Cars()
	for k := range j.runs {
		n = min(n, j.runs[k].run.Cars())
	}
	return n
}
