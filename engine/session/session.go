package session

import (
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/rates"
)

// Session is one shop and the open car. It is not safe for use by several goroutines
// at once.
type Session struct {
	*Shop
	Accuracy estimate.Accuracy // of the range

	models   models
	car      *openCar
	stages   *stageRanges
	checks   *checkValues
	variance *varianceShares
}

// New opens a shop's rates. The error names the path in the file.
func New(ratesText []byte) (*Session, error) {
	shop, err := OpenShop(ratesText)
	if err != nil {
		return nil, err
	}
	return &Session{Shop: shop, Accuracy: estimate.StandardAccuracy}, nil
}

// Of opens a session at rates that were read.
func Of(r *rates.Rates) (*Session, error) {
	shop, err := NewShop(r)
	if err != nil {
		return nil, err
	}
	return &Session{Shop: shop, Accuracy: estimate.StandardAccuracy}, nil
}

// Open makes the car the open one, keeping the simulated cars if it already is. An
// entry that cannot stand is an error with its path in the car file, and the car
// before stays open.
func (s *Session) Open(c *carfile.Car) error {
	if s.car != nil && s.car.key == string(c.Text()) {
		return nil
	}
	j, err := newOpenCar(s.Shop, &s.models, c)
	if err != nil {
		return err
	}
	s.car, s.models.ofRange = j, j.models()
	return nil
}

// Rough makes sure of the first simulated cars in every range of the open car.
func (s *Session) Rough() State { return s.car.rough() }

// Step adds one block of simulated cars to every range that is not settled yet.
func (s *Session) Step() State { return s.car.step(s.Accuracy) }

// Settle adds cars until every range is settled or its budget is spent.
func (s *Session) Settle() State {
	for {
		if state := s.Step(); state != Refining {
			return state
		}
	}
}

// openStages lays out the stages of a car; nothing is worked out yet.
func (s *Session) openStages(c *carfile.Car) (*stageRanges, error) {
	if s.stages != nil && s.stages.key == string(c.Text()) {
		return s.stages, nil
	}
	j, err := newStageRanges(s.Shop, &s.models, c, s.stages)
	if err != nil {
		return nil, err
	}
	s.stages = j
	return j, nil
}

// openNow is a car as it is, with the model of the stage that it has reached.
func (s *Session) openNow(c *carfile.Car) (*stageRanges, *stageRun, error) {
	j, err := s.openStages(c)
	if err != nil {
		return nil, nil, err
	}
	_, now := j.lastTwo()
	return j, now, j.need(now)
}
